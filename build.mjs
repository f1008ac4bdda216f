// Bundles the two programs into dist/, so that start-up reads a few files instead of hundreds; what is loaded on demand stays apart.
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

rmSync('dist', { recursive: true, force: true });
await build({
  // The Matrix SDK may only be imported after native-crypto; as an entry of its own it keeps its place before it.
  entryPoints: ['bot/main.ts', 'bot/ask.ts', 'bot/platforms/matrix/native-crypto.ts'],
  outbase: '.',
  outdir: 'dist',
  bundle: true,
  splitting: true,
  chunkNames: 'bot/parts/[name]-[hash]',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  // Native parts and CommonJS packages are left to Node; the ES modules among the dependencies are many small files.
  external: ['@photostructure/tz-lookup', '@resvg/resvg-js', 'better-sqlite3', 'discord.js', 'matrix-bot-sdk', 'pg', 'pino', 'prom-client', 'yaml'],
  sourcemap: true,
  logLevel: 'warning',
});
