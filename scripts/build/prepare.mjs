// npm runs this after `npm ci`: builds dist/, or says how to where the builder was left out.
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';

if (existsSync('node_modules/esbuild')) {
  process.exitCode = spawnSync(process.execPath, ['build.mjs'], { stdio: 'inherit' }).status ?? 1;
} else if (!existsSync('dist/bot/main.js')) {
  process.stderr.write(
    'Nothing was built: the builder is a development package. Run "npm ci", then "npm prune --omit=dev" to be rid of it.\n',
  );
}
