/** Which eclipse is asked about: the next of its shape, or the one after; and its contacts as they are here. */
import { MS_PER_YEAR } from '../../ground/durations.js';
import { isNoticed, lunarEclipses, solarEclipses, type Eclipse } from '../../sky/eclipses.js';
import type { TimeSpan } from '../../sky/night.js';
import { formatClock, formatLocalTime, zoneName } from '../../times/index.js';
import { isAbout, MOST_OF_ONE_KIND, toldFrom, type Question } from './ahead-question.js';
import { dayWords, eclipseName } from './ahead-words.js';

/** So far one of a rarer shape is looked for: of the Moon no place waits longer for a total one than some years. */
const RARE_YEARS = 12;

const seenIn = (question: Question, span: TimeSpan): readonly Eclipse[] =>
  [
    ...(isAbout(question, 'Sun') ? solarEclipses(question.observer, span) : []),
    ...(isAbout(question, 'Moon') ? lunarEclipses(question.observer, span).filter(({ isSeen }) => isSeen) : []),
  ].sort((a, b) => a.greatestUtcMs - b.greatestUtcMs);

/** Those that are counted: of the shape that is asked for, else all that anybody notices. */
export const countedOf = ({ shape = null }: Question, seen: readonly Eclipse[]): readonly Eclipse[] =>
  seen.filter((eclipse) => (shape === null ? isNoticed(eclipse) : eclipse.kind === shape));

/** All that are seen from here, in order; further ahead where the one that is asked for does not come before. */
export const eclipsesSeen = (question: Question): readonly Eclipse[] => {
  const { span, later = 0, shape = null, kind, night = null, spanSaid = null } = question;
  const near = seenIn(question, span);
  const isEnough = countedOf(question, near).length > later || (shape === null && later === 0);
  if (isEnough || kind !== 'eclipses' || night !== null || spanSaid !== null) return near.slice(0, MOST_OF_ONE_KIND);
  const far = seenIn(question, { startUtcMs: span.endUtcMs, endUtcMs: span.startUtcMs + RARE_YEARS * MS_PER_YEAR });
  const chosen = countedOf(question, [...near, ...far]).slice(0, later + 1);
  return [...near, ...far.filter((eclipse) => chosen.includes(eclipse))].slice(-MOST_OF_ONE_KIND);
};

/** "C1 15:07, C2 16:16, C3 17:28, C4 18:37 GMT", and what they are good for. */
export const contactWords = (eclipse: Eclipse, question: Question): string => {
  const { zone } = question;
  const { span, wholeSpan, of, kind } = eclipse;
  const day = `${eclipseName(eclipse)}, ${dayWords(span.startUtcMs, zone, toldFrom(question))}`;
  const ends = [`begins ${formatClock(span.startUtcMs, zone)}`, `ends ${formatLocalTime(span.endUtcMs, zone)}`];
  if (of === 'Moon')
    return `${day}: the shadow ${ends[0]}${wholeSpan === null ? '' : `, covers all from ${formatClock(wholeSpan.startUtcMs, zone)} to ${formatClock(wholeSpan.endUtcMs, zone)}`}, ${ends[1]}. C1 to C4 are the Sun's.`;
  if (wholeSpan === null)
    return `${day}: C1 ${formatClock(span.startUtcMs, zone)}, C4 ${formatLocalTime(span.endUtcMs, zone)}. It is partial here, so there is no C2 and no C3, and the filter stays on throughout.`;
  const times = [span.startUtcMs, wholeSpan.startUtcMs, wholeSpan.endUtcMs, span.endUtcMs].map(
    (utcMs, i) => `C${i + 1} ${formatClock(utcMs, zone)}`,
  );
  const filter =
    kind === 'total'
      ? 'The filter is off only between C2 and C3, and back before the first bead of light.'
      : 'Between C2 and C3 it is a ring: the filter stays on throughout.';
  return `${day}: ${times.join(', ')} ${zoneName(span.startUtcMs, zone)}. ${filter}`;
};
