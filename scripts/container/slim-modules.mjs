// Takes out of node_modules what a running bot never loads: sources, maps, and parts for other systems. Run after
// `npm prune --omit=dev`, as the Dockerfile does: node scripts/container/slim-modules.mjs
import { existsSync, readdirSync, rmSync } from 'node:fs';
import path from 'node:path';

const modules = path.resolve('node_modules');
if (!existsSync(modules)) throw new Error('there is no node_modules here');

const remove = (...parts) => rmSync(path.join(modules, ...parts), { recursive: true, force: true });
const within = (...parts) => {
  const folder = path.join(modules, ...parts);
  return existsSync(folder) ? readdirSync(folder) : [];
};

remove('@photostructure', 'sqlite', 'src');
for (const system of within('@photostructure', 'sqlite', 'prebuilds')) {
  if (system !== `${process.platform}-${process.arch}`) remove('@photostructure', 'sqlite', 'prebuilds', system);
}
// Pictures are read with the small trained data; under Node the package loads its whole engine, whatever kind of data it reads.
remove('@tesseract.js-data', 'eng', '4.0.0');
remove('tesseract.js', 'dist');
for (const file of within('tesseract.js-core')) {
  if (file.endsWith('.wasm.js') || file.includes('-lstm.')) remove('tesseract.js-core', file);
}
for (const file of readdirSync(modules, { recursive: true })) {
  if (/\.(?:map|d\.ts|d\.mts|d\.cts|md|markdown)$/u.test(file)) remove(file);
}
console.log('node_modules: what a running bot never loads is taken out.');
