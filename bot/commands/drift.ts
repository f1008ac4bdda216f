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
  /^(n|north|s|south)\s*:?\s*(\d{1,4}(?:\.\d+)?)\s*(?:″|"|arcsec(?:onds?)?)?\s*(?:(?:in|over|a|per|\/)\s*(\d{1,3}(?:\.\d+)?\s*)?(s|sec|second|min|minute|h|hour)s?)?$/iu;

const MINUTES_OF = tableOf({ s: 1 / 60, m: 1, h: 60 });

interface DriftRate {
  readonly isNorth: boolean;
  readonly arcsecPerMin: number;
}

/** "N 4" a minute, or "N 20 in 5 min"; null for other words, and for a drift in no time. */
const readDrift = (text: string): DriftRate | null => {
  const [, way, size, time, unit = 'min'] = DRIFT.exec(text.trim()) ?? [];
  const minutes = Number(time ?? 1) * (MINUTES_OF.get(unit.charAt(0).toLowerCase()) ?? 1);
  if (way === undefined || minutes === 0) return null;
  return { isNorth: /^n/iu.test(way), arcsecPerMin: Number(size) / minutes };
};

const rateWords = ({ isNorth, arcsecPerMin }: DriftRate): string =>
  `${Number(arcsecPerMin.toPrecision(2))}″ a minute ${isNorth ? 'northwards' : 'southwards'}`;

export const drift = defineCommand({
  name: 'drift',
  summary: 'A star drifts: which way, and how far, to turn the polar axis?',
  options: {
    where: choice('Where the star stands: meridian, or low in the east or west', ['meridian', 'east', 'west']),
    by: text('Its drift in declination, in arcseconds a minute: "N 4", or "N 20 in 5 min"', { maxLength: 40 }),
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
        'by: takes the drift in declination, north or south, in arcseconds a minute or in the time it took: by:"N 4", by:"N 20 in 5 min" (on the sky, not as the eyepiece shows it).',
      );
    const asked = await siteAtTime(deps, { ...request, options: { site: request.options.site } });
    if (isProblem(asked)) return asked;
    const { latitudeDeg } = asked.where.site.observer;
    const northwards = read.isNorth ? read.arcsecPerMin : -read.arcsecPerMin;
    const { screw, errorArcmin } = driftFinding(place, northwards, latitudeDeg);
    const size = Math.abs(errorArcmin);
    const sizeText = size >= 90 ? `${(size / 60).toFixed(1)}°` : `${size >= 10 ? Math.round(size) : size.toFixed(1)}′`;
    const [is, turn] =
      screw === 'azimuth'
        ? [errorArcmin > 0 ? 'too far east' : 'too far west', errorArcmin > 0 ? 'west' : 'east']
        : [errorArcmin > 0 ? 'too high' : 'too low', errorArcmin > 0 ? 'down' : 'up'];
    const hand = screw === 'azimuth' ? 'azimuth bolts' : 'altitude bolt';
    return reply({
      title: 'By the drift of a star',
      summary:
        size < 0.05
          ? 'No drift: that adjustment is right.'
          : `The polar axis is about ${sizeText} ${is}: turn its upper end ${sizeText} ${turn} with the ${hand}, then look again.`,
      notes: [
        `Taken for ${rateWords(read)} of a star ${WHERE_WORDS[place]}; north is towards the north celestial pole, whatever the eyepiece shows. First azimuth by the meridian, then altitude by the east or west, then both once more.`,
        ...asked.notes,
      ],
      pointsAt: NOWHERE,
      data: { screw, errorArcmin: rounded(errorArcmin, 3), where: place },
    });
  },
});
