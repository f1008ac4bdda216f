/** `moons`: the four bright moons of Jupiter beside its disc, with a small picture in text. */
import { isProblem } from '../ground/problem.js';
import { NOWHERE } from '../reply/points-at.js';
import { reply, type Outcome } from '../reply/reply.js';
import { compassWord, degrees, isoUtc, listed, rounded } from '../reply/wording.js';
import { jupiterMoons, type JupiterMoon } from '../sky/jupiter-moons.js';
import { horizontalOf } from '../sky/place.js';
import { formatLocalDateTime } from '../times/index.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';
import { defineCommand } from './core/command.js';

const JUPITER = { kind: 'solarSystem', body: 'Jupiter' } as const;
/** Callisto goes out to 26.4 radii. */
const HALF_CELLS = 13;
const RADII_A_CELL = 2.1;

/** "E · · G · I(J)E · · C · W": east to the left, as the eye and binoculars have it from the north. */
export const moonsPicture = (moons: readonly JupiterMoon[]): string => {
  const cells = Array.from({ length: 2 * HALF_CELLS + 1 }, () => '·');
  cells[HALF_CELLS] = '●';
  for (const { name, westRadii, state } of moons) {
    if (state !== 'beside') continue;
    const cell = HALF_CELLS + Math.sign(westRadii) * Math.max(1, Math.round(Math.abs(westRadii) / RADII_A_CELL));
    const there = cells[cell];
    cells[cell] = there === undefined || there === '·' ? name.charAt(0) : `${there}${name.charAt(0)}`;
  }
  return `E ${cells.join('')} W`;
};

const moonWords = ({ westRadii, state }: JupiterMoon): string => {
  if (state === 'in-front') return 'in front of the disc';
  if (state === 'behind') return 'hidden behind the disc';
  return `${(Math.abs(westRadii) * 0.5).toFixed(1)} disc widths ${westRadii >= 0 ? 'west' : 'east'}`;
};

export const moons = defineCommand({
  name: 'moons',
  summary: 'Where are the four bright moons of Jupiter?',
  options: {
    at: atOption,
    site: siteOption,
  },
  bare: 'at',
  examples: ['moons site:52.71,0.12', 'moons at:"tonight 23:00"'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked;
    const { where, utcMs, notes } = asked;
    const { observer, zone } = where.site;
    const found = jupiterMoons(utcMs);
    const beside = found.filter(({ state }) => state === 'beside').map(({ name }) => name);
    const { altitudeDeg, azimuthDeg } = horizontalOf(JUPITER, observer, utcMs);
    return reply({
      title: `Moons of Jupiter, ${formatLocalDateTime(utcMs, zone)}`,
      summary: `${beside.length === 4 ? 'All four' : listed(beside)} beside the disc; Jupiter is ${altitudeDeg > 0 ? `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)}` : 'below the horizon'}.`,
      facts: [
        { label: 'Picture', value: moonsPicture(found) },
        ...found.map((one) => ({ label: one.name, value: moonWords(one) })),
      ],
      notes: [
        ...notes,
        'East is left, as the eye and binoculars show it from the north; a telescope may turn it. Shadows and eclipses are not told.',
      ],
      pointsAt: altitudeDeg > 0 ? [{ what: 'Jupiter', when: { utcMs }, observer, zone, direction: JUPITER }] : NOWHERE,
      data: {
        utc: isoUtc(utcMs),
        jupiterAltitudeDeg: rounded(altitudeDeg, 4),
        moons: found.map(({ name, westRadii, northRadii, state }) => ({
          name,
          westRadii: rounded(westRadii, 3),
          northRadii: rounded(northRadii, 3),
          state,
        })),
      },
    });
  },
});
