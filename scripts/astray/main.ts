/** `npm run astray:simulate [-- COUNT SEED]`: prints how often `astray` names the true cause of simulated misses, and what it confuses. */
import path from 'node:path';
import { loadCatalogue } from '../../bot/catalogue/index.js';
import { brightNamedStars } from '../../bot/catalogue/bright-stars.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import type { Observation } from '../../bot/pointing/miss/astray-types.js';
import { simulate, type SimulationOptions } from './simulate-misses.js';

const count = Number(process.argv[2] ?? 2000);
const seed = Number(process.argv[3] ?? 20261125);
const stars = brightNamedStars(loadCatalogue(path.join(projectRoot(), 'knowledge', 'catalogue'))).map(
  ({ name, magnitude, body }) => ({
    name,
    magnitude: magnitude ?? 9,
    raHoursJ2000: body.raHoursJ2000,
    decDegJ2000: body.decDegJ2000,
  }),
);

// A reader that has seen enough (`| head`) is no error.
process.stdout.on('error', (error: NodeJS.ErrnoException) => process.exit(error.code === 'EPIPE' ? 0 : 1));

const percent = (part: number, whole: number): string => `${((100 * part) / whole).toFixed(1)} %`;
const all: readonly Observation['kind'][] = ['lst', 'shown', 'landed'];
const runs: readonly (readonly [string, SimulationOptions, number])[] = [
  ['One target: sidereal time, display and landing', { kinds: all, targets: 1 }, 0],
  ['The same, misses of 0.75° and more alone', { kinds: all, targets: 1 }, 0.75],
  ['Two targets: sidereal time, displays and landings', { kinds: all, targets: 2 }, 0],
  ['One target: landing alone', { kinds: ['landed'], targets: 1 }, 0.75],
  ['Sidereal time alone', { kinds: ['lst'], targets: 1 }, 0.75],
];
process.stdout.write(`${count} misses a table, seed ${seed}, noise 0.5° and 20 s.\n`);
for (const [title, options, leastEffectDeg] of runs) {
  const result = simulate(seed, count, stars, options, leastEffectDeg);
  process.stdout.write(
    `\n${title}: true cause first in ${percent(result.first, count)}, in the first three in ${percent(result.firstThree, count)}\n`,
  );
  for (const [cause, row] of result.byCause) {
    const mixed = [...result.confusions]
      .filter(([pair]) => pair.startsWith(`${cause} → `))
      .sort((a, b) => b[1] - a[1])
      .map(([pair, times]) => `${pair.slice(cause.length + 3)} ${times}`);
    process.stdout.write(
      `  ${cause.padEnd(28)}${percent(row.first, row.count).padStart(8)}${percent(row.firstThree, row.count).padStart(9)}  ${mixed.join(', ')}\n`,
    );
  }
}

process.stdout.write(`
Alike, whatever is read on one target:
  utc-as-local and daylight-saving where the offset is the daylight hour itself (central Europe in winter);
  utc-offset-sign and twelve-hours at UTC+6 and UTC-6, utc-offset-sign and date-off-by-one at UTC+12;
  a wrong UTC offset that comes to the same shift as one of these (counted under their name);
  not-at-home and polar-axis, each two unknowns for one landing: a second target tells them apart;
  epoch, minutes-as-decimals at few minutes of arc, and a polar axis off by less than the noise.
Alike until the display is read: latitude-sign and hemisphere-mode on equatorial mounts. Alike until the sidereal time is read: mirrored-axis
and twelve-hours for some targets, date-off-by-one and a miss of a degree by anything else.
`);
