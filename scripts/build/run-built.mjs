// node run-built.mjs PROGRAM ARGUMENTS…: runs a program of dist/, or says how it is built where nothing was.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [node, , program = '', ...args] = process.argv;
const file = path.resolve('dist', program);
if (existsSync(file)) {
  process.argv = [node, file, ...args];
  await import(pathToFileURL(file).href);
} else {
  const first = existsSync('node_modules/esbuild') ? 'npm run build' : 'npm ci';
  process.stderr.write(`Nothing is built here yet. Run "${first}" in ${process.cwd()}, then this again.\n`);
  process.exitCode = 2;
}
