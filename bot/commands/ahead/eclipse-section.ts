/** Eclipses seen from here, what of them a beginner would notice, and the next one that only others see. */
import { MS_PER_DAY } from '../../ground/durations.js';
import type { Json } from '../../reply/reply.js';
import type { PointsAt } from '../../reply/points-at.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import { lunarEclipses, nextEclipseAnywhere, solarEclipses, type Eclipse } from '../../sky/eclipses.js';
import type { TimeSpan } from '../../sky/night.js';
import { MOON } from '../../sky/moon.js';
import { SUN } from '../../sky/twilight.js';
import { isAbout, MOST_OF_ONE_KIND, toldFrom, type Question, type Section } from './ahead-question.js';
import { dayWords, eclipseFact, eclipseName } from './ahead-words.js';

const eclipsePointsAt = (
  { observer, zone }: Question,
  { of, span, greatestUtcMs, altitudeDeg }: Eclipse,
): PointsAt[] => {
  const pointed = { observer, zone, direction: of === 'Sun' ? SUN : MOON };
  if (of === 'Sun')
    return [{ ...pointed, what: 'the Sun', when: { fromUtcMs: span.startUtcMs, untilUtcMs: span.endUtcMs } }];
  return altitudeDeg > 0 ? [{ ...pointed, what: 'the Moon', when: { utcMs: greatestUtcMs } }] : [];
};

const eclipseData = (eclipse: Eclipse): Json => ({
  what: 'eclipse',
  of: eclipse.of.toLowerCase(),
  kind: eclipse.kind,
  startUtc: isoUtc(eclipse.span.startUtcMs),
  greatestUtc: isoUtc(eclipse.greatestUtcMs),
  endUtc: isoUtc(eclipse.span.endUtcMs),
  coveredFraction: rounded(eclipse.coveredFraction, 3),
  altitudeDeg: rounded(eclipse.altitudeDeg, 2),
});

/** All that are seen from here, in order. */
export const eclipsesSeen = (question: Question): readonly Eclipse[] =>
  [
    ...solarEclipses(question.observer, question.span),
    ...lunarEclipses(question.observer, question.span).filter(({ isSeen }) => isSeen),
  ]
    .filter(({ of }) => isAbout(question, of))
    .sort((a, b) => a.greatestUtcMs - b.greatestUtcMs)
    .slice(0, MOST_OF_ONE_KIND);

/** The next on Earth, where it comes before all that are seen from here. */
const elsewhereNotes = (question: Question, seen: readonly Eclipse[]): readonly string[] => {
  const { about, zone, span } = question;
  if (about !== null) return [];
  const { of, kind, utcMs } = nextEclipseAnywhere(span.startUtcMs);
  const isHere = seen.some(({ greatestUtcMs }) => greatestUtcMs < utcMs + MS_PER_DAY);
  return isHere || utcMs >= span.endUtcMs
    ? []
    : [
        `First on Earth, but not seen from here: ${eclipseName({ of, kind })}, ${dayWords(utcMs, zone, toldFrom(question))}.`,
      ];
};

/** Who asks for the Sun's mostly hopes for a total one. */
const notTotalNotes = (seen: readonly Eclipse[]): readonly string[] => {
  const ofSun = seen.filter(({ of }) => of === 'Sun');
  return ofSun.length === 0 || ofSun.some(({ kind }) => kind === 'total')
    ? []
    : ['None of the Sun is total from here in that time: for that one has to travel.'];
};

/** Nobody goes out for the outer shadow alone. */
export const isNoticed = ({ kind }: Eclipse): boolean => kind !== 'penumbral';

export const eclipses = (seen: readonly Eclipse[], question: Question): Section => ({
  notes: question.kind === 'eclipses' ? [...notTotalNotes(seen), ...elsewhereNotes(question, seen)] : [],
  pointsAt: seen.flatMap((eclipse) => eclipsePointsAt(question, eclipse)),
  facts: seen.map((eclipse) => eclipseFact(eclipse, question.zone, toldFrom(question))),
  times: seen.map(({ greatestUtcMs }) => greatestUtcMs),
  data: seen.map(eclipseData),
});

/** A night begins at noon: the day whose evening it is. */
const isOfDay = ({ span }: Eclipse, night: TimeSpan): boolean =>
  span.endUtcMs >= night.startUtcMs - MS_PER_DAY / 2 && span.startUtcMs <= night.startUtcMs + MS_PER_DAY / 2;

const noneOfDay = (seen: readonly Eclipse[], question: Question, told: (eclipse: Eclipse) => string): string => {
  const { nowUtcMs = question.span.startUtcMs, nightSaid } = question;
  const next = seen.find((eclipse) => isNoticed(eclipse) && eclipse.span.endUtcMs > nowUtcMs);
  return `None is seen from here on ${nightSaid ?? 'that day'}.${next === undefined ? '' : ` Next after it: ${told(next)}.`}`;
};

/** "Next: Partial eclipse of the Sun, Mon 2 Aug 2027, 09:06 to 10:58 BST. Before it …"; null where none is seen. */
export const eclipseSummary = (seen: readonly Eclipse[], question: Question): string | null => {
  const { zone, wantsTotal = false } = question;
  const [first] = seen;
  const noticed = seen.find(isNoticed);
  const day = question.night ?? null;
  if (first === undefined) return null;
  const told = (eclipse: Eclipse): string => {
    const { label, value } = eclipseFact(eclipse, zone, toldFrom(question));
    return `${label}, ${value.split('; ')[0]}`;
  };
  const ofDay = day === null ? undefined : seen.find((eclipse) => isOfDay(eclipse, day));
  if (ofDay !== undefined) return `${wantsTotal && ofDay.kind !== 'total' ? 'Not total here: ' : ''}${told(ofDay)}.`;
  if (day !== null) return noneOfDay(seen, question, told);
  const total = seen.find(({ kind }) => kind === 'total');
  if (wantsTotal && total !== undefined) return `Next total one: ${told(total)}.`;
  if (wantsTotal) return `None that is total here in the years that I look ahead. Next: ${told(noticed ?? first)}.`;
  if (noticed === undefined) return `Next: ${told(first)}, a faint shading at most.`;
  if (noticed === first) return `Next: ${told(first)}.`;
  return `Next: ${told(noticed)}. Before it only a faint shading of the Moon, in the night of ${dayWords(first.span.startUtcMs, zone, toldFrom(question))}.`;
};
