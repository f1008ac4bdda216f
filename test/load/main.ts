/** Load and faults together, on loopback, ended by itself within five minutes: `npm run test:load`. Exit code 1 where something broke. */
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { machineLines } from '../bench/machine.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import { setup } from '../homeserver/build-bot.js';
import { discordEvening, type Report } from './discord-evening.js';
import { matrixEvening } from './matrix-evening.js';

const only = process.argv[2];
for (const line of machineLines()) console.log(line);
execFileSync(process.execPath, [path.join(projectRoot(), 'build.mjs')], {
  cwd: projectRoot(),
  stdio: ['ignore', 'ignore', 'inherit'],
});
await setup();
const failures: string[] = [];
const parts: readonly (readonly [string, () => Promise<Report>])[] = [
  ['discord', discordEvening],
  ['matrix', matrixEvening],
];
for (const [name, run] of parts) {
  if (only !== undefined && only !== name) continue;
  const report = await run();
  for (const line of report.lines) console.log(line);
  failures.push(...report.failures);
}
for (const failure of failures) console.log(`FAILED: ${failure}`);
console.log(failures.length === 0 ? 'nothing broke' : `${failures.length} failures`);
process.exit(failures.length === 0 ? 0 : 1);
