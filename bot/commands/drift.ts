/** `drift`: from how a star drifts to which way and how far the polar axis must be turned. */
import { isProblem, problem } from '../ground/problem.js';
import { driftFinding } from '../pointing/pole/drift-alignment.js';
import { NOWHERE, reply, type Outcome } from '../reply/reply.js';
import { rounded } from '../reply/wording.js';
import { tableOf } from '../ground/table-of.js';
import { choice, defineCommand, text } from './core/command.js';
import { siteAtTime, siteOption } from './asking/site-at-time.js';

const WHERE_WORDS = {
  meridian: 'near the meridian and the equator',
  east: 'low in the east',
  west: 'low in the west',
} as const;
const DRIFT =
  /^(n|north|s|south)(?:\s*:?\s*(\d{1,4}(?:\.\d+)?)\s*(?:″|"|arcsec(?:onds?)?)?\s*(?:(?:in|over|a|per|\/)\s*(\d{1,3}(?:\.\d+)?\s*)?(s|sec|second|min|minute|h|hour)s?)?)?$/iu;

const MINUTES_OF = tableOf({ s: 1 / 60, m: 1, h: 60 });

interface DriftRate {
  readonly isNorth: boolean;
  /** Null where only the way was said. */
  readonly arcsecPerMin: number | null;
}

/** "N 4" a minute, "N 20 in 5 min", or "N" alone; null for other words, and for a drift in no time. */
const readDrift = (text: string): DriftRate | null => {
  const [, way, size, time, unit = 'min'] = DRIFT.exec(text.trim()) ?? [];
  const minutes = Number(time ?? 1) * (MINUTES_OF.get(unit.charAt(0).toLowerCase()) ?? 1);
  if (way === undefined || minutes === 0) return null;
  const arcsecPerMin = size === undefined ? null : Number(size) / minutes;
  return { isNorth: /^n/iu.test(way), arcsecPerMin };
};

const rateWords = ({ isNorth, arcsecPerMin }: DriftRate): string => {
  const way = isNorth ? 'northwards' : 'southwards';
  return arcsecPerMin === null ? `a drift ${way}` : `${Number(arcsecPerMin.toPrecision(2))}″ a minute ${way}`;
};

const sizeWords = (arcmin: number): string => {
  if (arcmin >= 90) return `${(arcmin / 60).toFixed(1)}°`;
  return `${arcmin >= 10 ? Math.round(arcmin) : arcmin.toFixed(1)}′`;
};

const STANDS = {
  azimuth: { over: ['too far east', 'west'], under: ['too far west', 'east'], hand: 'azimuth bolts' },
  altitude: { over: ['too high', 'down'], under: ['too low', 'up'], hand: 'altitude bolt' },
} as const;

/** Which way to turn, and how far where the rate was said. */
const turnWords = (screw: keyof typeof STANDS, errorArcmin: number, isSized: boolean): string => {
  const size = Math.abs(errorArcmin);
  if (size < 0.05) return 'No drift: that adjustment is right.';
  const { over, under, hand } = STANDS[screw];
  const [is, turn] = errorArcmin > 0 ? over : under;
  const far = sizeWords(size);
  return isSized
    ? `The polar axis is about ${far} ${is}: turn its upper end ${far} ${turn} with the ${hand}, then look again.`
    : `The polar axis is ${is}: turn its upper end ${turn} with the ${hand}, a little at a time, until the drift stops.`;
};

export const drift = defineCommand({
  name: 'drift',
  summary: 'A star drifts: which way, and how far, to turn the polar axis?',
  options: {
    where: choice('Where the star stands: meridian, or low in the east or west', ['meridian', 'east', 'west']),
    by: text('Its drift in declination, in arcseconds a minute: "N 4", "N 20 in 5 min"; or "N" alone', {
      maxLength: 40,
    }),
    site: siteOption,
  },
  bare: 'where',
  sentence: /^align/iu,
  examples: ['drift meridian by:"N 4" site:52.71,0.12', 'drift east by:"S 2.5" site:"Dunedin, New Zealand"'],
  run: async (deps, request): Promise<Outcome> => {
    const { where: place, by } = request.options;
    const read = readDrift(by);
    if (read === null)
      return problem(
        'bad-drift',
        'by: takes the drift in declination, north or south, in arcseconds a minute or in the time it took: by:"N 4", by:"N 20 in 5 min", or by:N for the way alone (on the sky, not as the eyepiece shows it).',
      );
    const asked = await siteAtTime(deps, { ...request, options: { site: request.options.site } });
    if (isProblem(asked)) return asked;
    const { latitudeDeg } = asked.where.site.observer;
    const rate = read.arcsecPerMin ?? 1;
    const northwards = read.isNorth ? rate : -rate;
    const { screw, errorArcmin } = driftFinding(place, northwards, latitudeDeg);
    return reply({
      title: 'By the drift of a star',
      summary: turnWords(screw, errorArcmin, read.arcsecPerMin !== null),
      notes: [
        `Taken for ${rateWords(read)} of a star ${WHERE_WORDS[place]}; north is towards the north celestial pole, whatever the eyepiece shows. First azimuth by the meridian, then altitude by the east or west, then both once more.`,
        ...asked.notes,
      ],
      pointsAt: NOWHERE,
      data: { screw, errorArcmin: read.arcsecPerMin === null ? null : rounded(errorArcmin, 3), where: place },
    });
  },
});
