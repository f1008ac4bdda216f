/** `moons`: the four bright moons of Jupiter beside its disc, with a small picture in text, and what they do in the night. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../ground/durations.js';
import { isProblem } from '../ground/problem.js';
import { NOWHERE } from '../reply/points-at.js';
import { reply, type Outcome } from '../reply/reply.js';
import { compassWord, degrees, isoUtc, listed, rounded } from '../reply/wording.js';
import { jupiterMoonEvents, jupiterMoons, type JupiterMoon, type MoonEvent } from '../sky/jupiter-moons.js';
import type { TimeSpan } from '../sky/night.js';
import { horizontalOf } from '../sky/place.js';
import { riseTransitSet } from '../sky/rise-set.js';
import { SUN } from '../sky/twilight.js';
import type { Observer } from '../sky/types.js';
import { formatClock, formatLocalDateTime, nightAround, tonightAt } from '../times/index.js';
import { atOption, siteAtTime, siteOption } from './asking/site-at-time.js';
import { choice, defineCommand, optional } from './core/command.js';

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

const moonWords = ({ westRadii, state, shadow }: JupiterMoon): string => {
  if (shadow === 'eclipsed' && state === 'beside') return "dark in Jupiter's shadow";
  if (state === 'in-front') return 'in front of the disc';
  if (state === 'behind') return 'hidden behind the disc';
  return `${(Math.abs(westRadii) * 0.5).toFixed(1)} disc widths ${westRadii >= 0 ? 'west' : 'east'}`;
};

const EVENT_WORDS: Readonly<Record<MoonEvent['kind'], readonly [begins: string, ends: string]>> = {
  transit: ['comes before the disc', 'leaves the disc'],
  'shadow-transit': ["'s shadow comes onto the disc", "'s shadow leaves the disc"],
  occultation: ['goes behind the disc', 'comes out from behind the disc'],
  eclipse: ["goes dark in Jupiter's shadow", "comes out of Jupiter's shadow"],
};

const eventWords = ({ name, kind, isBeginning }: MoonEvent): string =>
  `${name} ${EVENT_WORDS[kind][isBeginning ? 0 : 1]}`.replace(" 's", "'s");

/** Lower than this a disc boils; with the Sun so far down it shows as at night. Common practice, no source. */
const LEAST_JUPITER_DEG = 8;
const MOST_SUN_DEG = -6;

const isUpInDark = (observer: Observer, utcMs: number): boolean =>
  horizontalOf(JUPITER, observer, utcMs).altitudeDeg >= LEAST_JUPITER_DEG &&
  horizontalOf(SUN, observer, utcMs).altitudeDeg <= MOST_SUN_DEG;

/** Of the night, those with Jupiter up in a sky dark enough. */
const eventsSeen = (observer: Observer, night: TimeSpan): readonly MoonEvent[] =>
  jupiterMoonEvents(night).filter(({ utcMs }) => isUpInDark(observer, utcMs));

/** "51° high in the south", "below the horizon until 22:16". */
const jupiterWords = (observer: Observer, zone: string, utcMs: number, night: TimeSpan): string => {
  const { altitudeDeg, azimuthDeg } = horizontalOf(JUPITER, observer, utcMs);
  if (altitudeDeg > 0) return `${degrees(altitudeDeg)} high in the ${compassWord(azimuthDeg)}`;
  const { riseUtcMs } = riseTransitSet(JUPITER, observer, night.startUtcMs, night.endUtcMs);
  return `below the horizon${riseUtcMs !== null && riseUtcMs > utcMs ? ` until ${formatClock(riseUtcMs, zone)}` : ''}`;
};

const HALF_DAY_MS = MS_PER_DAY / 2;
const JUST_PAST_MS = 15 * MS_PER_MINUTE;
/** "At 6", asked at eight in the evening: of the morning to come, where the one past had no Jupiter. */
const hourMeant = (
  observer: Observer,
  zone: string,
  utcMs: number,
  nowUtcMs: number,
): { readonly utcMs: number; readonly notes: readonly string[] } => {
  const next = utcMs + HALF_DAY_MS;
  const isPast = utcMs < nowUtcMs - JUST_PAST_MS && next > nowUtcMs;
  if (!isPast || isUpInDark(observer, utcMs) || !isUpInDark(observer, next)) return { utcMs, notes: [] };
  return {
    utcMs: next,
    notes: [`${formatClock(utcMs, zone)} is past, and Jupiter was not up then: took ${formatClock(next, zone)}.`],
  };
};

const EVENT_KINDS = ['transit', 'shadow-transit', 'occultation', 'eclipse'] as const;
const NIGHTS_AHEAD = 40;
const MOST_NEXT = 3;

interface Wanted {
  readonly of?: string | undefined;
  readonly event?: string | undefined;
}

/** The next ones of a moon or a kind that are seen from here, night by night. */
const nextSeen = (observer: Observer, night: TimeSpan, fromUtcMs: number, wanted: Wanted): readonly MoonEvent[] => {
  const found: MoonEvent[] = [];
  for (let ahead = 0; ahead < NIGHTS_AHEAD && found.length < MOST_NEXT; ahead++) {
    const shiftMs = ahead * MS_PER_DAY;
    const span = { startUtcMs: night.startUtcMs + shiftMs, endUtcMs: night.endUtcMs + shiftMs };
    found.push(
      ...eventsSeen(observer, span).filter(
        ({ name, kind, utcMs }) =>
          utcMs >= fromUtcMs && name === (wanted.of ?? name) && kind === (wanted.event ?? kind),
      ),
    );
  }
  return found.slice(0, MOST_NEXT);
};

const nextWords = (zone: string, next: readonly MoonEvent[]): string =>
  next.length === 0
    ? `Nothing of the kind is seen from here in the next ${NIGHTS_AHEAD} nights.`
    : `Next seen from here: ${next.map((event) => `${formatLocalDateTime(event.utcMs, zone)}, ${eventWords(event)}`).join('; ')}.`;

const tonightWords = (next: MoonEvent | undefined, count: number, night: string, zone: string): string =>
  next === undefined
    ? `Nothing ${count === 0 ? '' : 'more '}happens to them that is seen from here in the night of ${night}.`
    : `Next: ${formatClock(next.utcMs, zone)} ${eventWords(next)}.`;

export const moons = defineCommand({
  name: 'moons',
  summary: 'Where are the four bright moons of Jupiter?',
  options: {
    at: atOption,
    site: siteOption,
    of: optional(choice('The next that is seen of this moon', ['Io', 'Europa', 'Ganymede', 'Callisto'])),
    event: optional(choice('The next that is seen of this kind', EVENT_KINDS)),
  },
  bare: 'at',
  examples: ['moons site:52.71,0.12', 'moons at:"tonight 23:00"', 'moons event:shadow-transit site:52.71,0.12'],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtTime(deps, request);
    if (isProblem(asked)) return asked;
    const { where, notes: siteAndTime } = asked;
    const { observer, zone } = where.site;
    const { utcMs, notes: taken } = hourMeant(observer, zone, asked.utcMs, request.nowUtcMs);
    const notes = [...taken, ...siteAndTime];
    const found = jupiterMoons(utcMs);
    const night = request.options.at === undefined ? tonightAt(where.site, utcMs) : nightAround(utcMs, where.site);
    const events = eventsSeen(observer, night);
    const next = events.find((event) => event.utcMs >= utcMs);
    const { of, event: kind } = request.options;
    const isOfSome = of !== undefined || kind !== undefined;
    const wanted = isOfSome ? nextSeen(observer, night, utcMs, { of, event: kind }) : [];
    const isSeen = ({ state, shadow }: JupiterMoon): boolean => state === 'beside' && shadow !== 'eclipsed';
    const beside = found.filter(isSeen).map(({ name }) => name);
    const { altitudeDeg } = horizontalOf(JUPITER, observer, utcMs);
    const pointed = { what: 'Jupiter', observer, zone, direction: JUPITER };
    return reply({
      title: `Moons of Jupiter, ${formatLocalDateTime(utcMs, zone)}`,
      summary:
        `${isOfSome ? `${nextWords(zone, wanted)} Now: ` : ''}${beside.length === 4 ? 'All four' : listed(beside)} beside the disc; Jupiter is ${jupiterWords(observer, zone, utcMs, night)}. ${isOfSome ? '' : tonightWords(next, events.length, night.said, zone)}`.trim(),
      facts: [
        { label: 'Picture', value: moonsPicture(found) },
        ...found.map((one) => ({ label: one.name, value: moonWords(one) })),
        ...events.map((event) => ({ label: formatClock(event.utcMs, zone), value: eventWords(event) })),
      ],
      notes: [
        ...notes,
        ...(events.length === 0
          ? []
          : [
              `Each takes some minutes; the times are of its middle, night of ${night.said}, while Jupiter is up and it is dark.`,
            ]),
        'East is left, as the eye and binoculars show it from the north; a telescope may turn it.',
      ],
      pointsAt: [
        ...(altitudeDeg > 0 ? [{ ...pointed, when: { utcMs } }] : NOWHERE),
        ...[...events, ...wanted].map((event) => ({ ...pointed, when: { utcMs: event.utcMs } })),
      ],
      data: {
        utc: isoUtc(utcMs),
        jupiterAltitudeDeg: rounded(altitudeDeg, 4),
        moons: found.map(({ name, westRadii, northRadii, state }) => ({
          name,
          westRadii: rounded(westRadii, 3),
          northRadii: rounded(northRadii, 3),
          state,
        })),
        events: events.map((event) => ({
          moon: event.name,
          kind: event.kind,
          isBeginning: event.isBeginning,
          utc: isoUtc(event.utcMs),
        })),
      },
    });
  },
});
