// Turns bot/**/*.ts into dist/bot/**/*.js, file for file, so that start-up pays for no compiler.
import { rmSync } from 'node:fs';
import { build } from 'esbuild';

rmSync('dist', { recursive: true, force: true });
await build({
  entryPoints: ['bot/**/*.ts'],
  outbase: '.',
  outdir: 'dist',
  platform: 'node',
  format: 'esm',
  target: 'node20',
  sourcemap: true,
  logLevel: 'warning',
});
