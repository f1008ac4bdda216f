// node run-built.mjs PROGRAM ARGUMENTS…: runs a program of dist/, or says how it is built where nothing was.
import { existsSync, readdirSync, statSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [node, , program = '', ...args] = process.argv;
const file = path.resolve('dist', program);

/** The first source written after what was built; undefined where there is none, or no source at all. */
const writtenSince = (builtMs) =>
  (existsSync('bot') ? readdirSync('bot', { recursive: true }) : []).find(
    (name) => name.endsWith('.ts') && statSync(path.join('bot', name)).mtimeMs > builtMs,
  );

if (existsSync(file)) {
  const newer = writtenSince(statSync(file).mtimeMs);
  if (newer !== undefined)
    process.stderr.write(`bot/${newer} is newer than what was built; to run it too: npm run build\n`);
  process.argv = [node, file, ...args];
  await import(pathToFileURL(file).href);
} else {
  const first = existsSync('node_modules/esbuild') ? 'npm run build' : 'npm ci';
  process.stderr.write(`Nothing is built here yet. Run "${first}" in ${process.cwd()}, then this again.\n`);
  process.exitCode = 2;
}
