/** Eclipses seen from here, what of them a beginner would notice, and the next one that only others see. */
import { MS_PER_DAY } from '../../ground/durations.js';
import type { Json } from '../../reply/reply.js';
import type { PointsAt } from '../../reply/points-at.js';
import { isoUtc, rounded } from '../../reply/wording.js';
import { isNoticed, nextEclipseAnywhere, type Eclipse } from '../../sky/eclipses.js';
import type { TimeSpan } from '../../sky/night.js';
import { MOON } from '../../sky/moon.js';
import { SUN } from '../../sky/twilight.js';
import { toldFrom, type Question, type Section } from './ahead-question.js';
import { dayWords, eclipseFact, eclipseName } from './ahead-words.js';
import { contactWords, countedOf } from './eclipse-chosen.js';

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

/** The next on Earth, where it comes before all that are seen from here. */
const elsewhereNotes = (question: Question, seen: readonly Eclipse[]): readonly string[] => {
  const { about, zone, span, shape = null } = question;
  // Of one kind, the others that come before are not counted.
  if (about !== null || shape !== null) return [];
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

export const eclipses = (seen: readonly Eclipse[], question: Question): Section => ({
  notes: question.kind === 'eclipses' ? [...notTotalNotes(seen), ...elsewhereNotes(question, seen)] : [],
  pointsAt: seen.flatMap((eclipse) => eclipsePointsAt(question, eclipse)),
  facts: seen.map((eclipse) => eclipseFact(eclipse, question.zone, toldFrom(question))),
  times: seen.map(({ greatestUtcMs }) => greatestUtcMs),
  data: seen.map(eclipseData),
});

/** The one that is told first: of the day that is named, else as counted; what is only shaded where there is no other. */
const chosenOf = (seen: readonly Eclipse[], question: Question): Eclipse | undefined => {
  const { later = 0, night: day = null } = question;
  if (day !== null) return seen.find((eclipse) => isOfDay(eclipse, day)) ?? seen.find(isNoticed);
  const counted = countedOf(question, seen)[later];
  if (counted !== undefined || later > 0) return counted;
  return seen.find(isNoticed) ?? seen[0];
};

/** That one and no other, where one alone is asked for. */
export const eclipsesShown = (seen: readonly Eclipse[], question: Question): readonly Eclipse[] => {
  if (question.kind !== 'eclipses' || (question.first ?? null) === null) return seen;
  const chosen = chosenOf(seen, question);
  return chosen === undefined ? [] : [chosen];
};

/** A night begins at noon: the day whose evening it is. */
const isOfDay = ({ span }: Eclipse, night: TimeSpan): boolean =>
  span.endUtcMs >= night.startUtcMs - MS_PER_DAY / 2 && span.startUtcMs <= night.startUtcMs + MS_PER_DAY / 2;

const noneOfDay = (seen: readonly Eclipse[], question: Question, told: (eclipse: Eclipse) => string): string => {
  const { nowUtcMs = question.span.startUtcMs, nightSaid } = question;
  const next = seen.find((eclipse) => isNoticed(eclipse) && eclipse.span.endUtcMs > nowUtcMs);
  return `None is seen from here on ${nightSaid ?? 'that day'}.${next === undefined ? '' : ` Next after it: ${told(next)}.`}`;
};

const SHAPE_WORDS = { total: 'total', annular: 'a ring', partial: 'partial' } as const;

/** One that comes after so many others. */
const laterSummary = (seen: readonly Eclipse[], question: Question, told: (eclipse: Eclipse) => string): string => {
  const { later = 0, shape = null } = question;
  const then = countedOf(question, seen)[later];
  if (then === undefined)
    return `No more ${shape === null ? 'of them' : `${shape} ones`} are seen from here in the years that I look ahead.`;
  const next = shape === null ? 'the next' : `the next ${shape} one`;
  const others = shape === null ? `${later} others` : `${later} other ${shape} ones`;
  return `After ${later === 1 ? next : others}: ${told(then)}.`;
};

/** The next of a shape, and where none is, the next of any. */
const shapedSummary = (
  seen: readonly Eclipse[],
  first: Eclipse,
  question: Question & { readonly shape: NonNullable<Question['shape']> },
  told: (eclipse: Eclipse) => string,
): string => {
  const { shape } = question;
  const [ofShape] = countedOf(question, seen);
  const other = seen.find(isNoticed) ?? first;
  const called = shape === 'annular' ? 'one that is a ring here' : `${shape} one`;
  if (ofShape !== undefined) return `Next ${called}: ${told(ofShape)}.`;
  return `None that is ${SHAPE_WORDS[shape]} here in the years that I look ahead. Next: ${told(other)}.`;
};

/** The next that anybody notices, and what only shades the Moon before it. */
const nextSummary = (
  seen: readonly Eclipse[],
  first: Eclipse,
  question: Question,
  told: (eclipse: Eclipse) => string,
): string => {
  const noticed = seen.find(isNoticed);
  if (noticed === undefined) return `Next: ${told(first)}, a faint shading at most.`;
  if (noticed === first) return `Next: ${told(first)}.`;
  const night = dayWords(first.span.startUtcMs, question.zone, toldFrom(question));
  return `Next: ${told(noticed)}. Before it only a faint shading of the Moon, in the night of ${night}.`;
};

/** Of one day. */
const daySummary = (
  seen: readonly Eclipse[],
  question: Question & { readonly night: TimeSpan },
  told: (eclipse: Eclipse) => string,
): string => {
  const { night, shape = null } = question;
  const ofDay = seen.find((eclipse) => isOfDay(eclipse, night));
  if (ofDay === undefined) return noneOfDay(seen, question, told);
  return `${shape !== null && ofDay.kind !== shape ? `Not ${SHAPE_WORDS[shape]} here: ` : ''}${told(ofDay)}.`;
};

/** "Next: Partial eclipse of the Sun, Mon 2 Aug 2027, 09:06 to 10:58 BST. Before it …"; null where none is seen. */
export const eclipseSummary = (seen: readonly Eclipse[], question: Question): string | null => {
  const { zone, shape = null, later = 0, night = null } = question;
  const [first] = seen;
  if (first === undefined) return null;
  const chosen = question.first === 'contacts' ? chosenOf(seen, question) : undefined;
  if (chosen !== undefined) return contactWords(chosen, question);
  const told = (eclipse: Eclipse): string => {
    const { label, value } = eclipseFact(eclipse, zone, toldFrom(question));
    return `${label}, ${value.split('; ')[0]}`;
  };
  if (night !== null) return daySummary(seen, { ...question, night }, told);
  if (later > 0) return laterSummary(seen, question, told);
  return shape === null
    ? nextSummary(seen, first, question, told)
    : shapedSummary(seen, first, { ...question, shape }, told);
};
