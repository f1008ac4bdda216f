// Bundles the two programs into dist/, so that start-up reads a few files instead of hundreds; what is loaded on demand stays apart.
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import path from 'node:path';

const builder = await import('esbuild').catch(() => null);
if (builder === null) {
  process.stderr.write('The builder is a development package that is not here: "npm ci" brings it and builds.\n');
  process.exit(2);
}

/** What is built is told by its commit, where the folder is a clone or the image's maker says it. */
const commit = () => {
  if (process.env.SOURCE_COMMIT) return process.env.SOURCE_COMMIT.slice(0, 8);
  if (!existsSync('.git')) return '';
  const { status, stdout } = spawnSync('git', ['rev-parse', '--short=8', 'HEAD'], { encoding: 'utf8' });
  return status === 0 ? stdout.trim() : '';
};

/**
 * A program text with one character beyond Latin-1 is kept in memory by two bytes a character. The builder escapes those in strings, but not
 * those in regular expressions and raw templates (which are all made into expressions), where the escape means the same.
 */
const asciiSource = {
  name: 'ascii-source',
  setup: ({ onLoad }) =>
    onLoad({ filter: new RegExp('[/\\\\](?:bot|scripts)[/\\\\].*[.]ts$') }, ({ path: file }) => ({
      contents: readFileSync(file, 'utf8').replace(
        /[^\0-\u007f]/g,
        (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, '0')}`,
      ),
      loader: 'ts',
    })),
};

const { metafile } = await builder.build({
  // The Matrix SDK may only be imported after native-crypto, and everything after small-heap: entries of their own keep their place.
  entryPoints: [
    'bot/app/small-heap.ts',
    'bot/main.ts',
    'bot/ask.ts',
    'bot/try.ts',
    'bot/backup.ts',
    ...(existsSync('scripts/knowledge/main.ts')
      ? ['scripts/knowledge/main.ts', 'scripts/knowledge/compile.ts', 'scripts/knowledge/simulate-worker.ts']
      : []),
    'bot/platforms/matrix/connect/native-crypto.ts',
    'bot/pictures/picture-process.ts',
  ],
  outbase: '.',
  outdir: 'dist',
  bundle: true,
  splitting: true,
  chunkNames: 'bot/parts/[name]-[hash]',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  // Native parts and CommonJS packages are left to Node; the ES modules among the dependencies are many small files.
  external: [
    '@photostructure/tz-lookup',
    '@resvg/resvg-js',
    '@photostructure/sqlite',
    'discord.js',
    'matrix-bot-sdk',
    'pg',
    'pino',
    'prom-client',
    'tesseract.js',
    'yaml',
  ],
  plugins: [asciiSource],
  // The program's text stays in memory: without comments and spaces it is half as long. Names stay, so that a stack can be read.
  minifyWhitespace: true,
  minifySyntax: true,
  lineLimit: 160,
  sourcemap: true,
  define: { BUILT_FROM: JSON.stringify(commit()) },
  metafile: true,
  logLevel: 'warning',
});

// What an earlier build left goes last, so that there is a whole program at every moment.
const made = new Set(
  [...Object.keys(metafile.outputs), 'dist/knowledge/connection.json'].map((file) => path.normalize(file)),
);
for (const entry of readdirSync('dist', { recursive: true, withFileTypes: true })) {
  const file = path.join(entry.parentPath, entry.name);
  if (!entry.isDirectory() && !made.has(file)) rmSync(file, { force: true });
}

// A start reads the fault model from one checked file; without it, it reads the YAML.
const compiler = 'dist/scripts/knowledge/compile.js';
if (existsSync(compiler) && existsSync('knowledge/connection')) {
  process.exitCode = spawnSync(process.execPath, [compiler], { stdio: 'inherit' }).status ?? 1;
}
