// node run-source.mjs FILE: runs a TypeScript program of the tests, or says how what runs it comes back after the pruning.
import { existsSync } from 'node:fs';
import path from 'node:path';
import { pathToFileURL } from 'node:url';

const [node, , file = '', ...args] = process.argv;
if (existsSync('node_modules/tsx')) {
  process.argv = [node, path.resolve(file), ...args];
  await import('tsx');
  await import(pathToFileURL(path.resolve(file)).href);
} else {
  process.stderr.write(
    'This needs the development packages, which were pruned here. Run "npm ci" (and "npm prune --omit=dev" again afterwards).\n',
  );
  process.exitCode = 2;
}
