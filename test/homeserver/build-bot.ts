/** Builds the bot once before the suite, as `npm run build` does, so that its many starts are quick and all of the same code. */
import { build } from 'esbuild';

/** Under which the built files lie as they do in the source tree. */
export const BUILT = '.cache';

export const setup = async (): Promise<void> => {
  await build({
    entryPoints: ['bot/**/*.ts', 'test/homeserver/bot-with-test-commands.ts'],
    outbase: '.',
    outdir: BUILT,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    sourcemap: true,
    logLevel: 'warning',
  });
};
