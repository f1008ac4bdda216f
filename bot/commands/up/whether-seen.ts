/** Whether a target can be seen in a night, from when and until when; whether it is too late or too early for it. */
import { isHandHeld } from '../../evening/equipment.js';
import { SHOWS_MAG } from '../../evening/ease.js';
import type { Outlook } from '../../evening/outlook.js';
import { leastAltitudeDegOf } from '../../evening/pick.js';
import { isTowards, towardsWords } from '../../evening/towards.js';
import { windowsOf } from '../../evening/windows.js';
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { horizonAltitudeDegAt } from '../../pointing/horizon/horizon-profile.js';
import { capital, magnitudeText } from '../../reply/wording.js';
import { intervalsBelow, type Interval } from '../../sky/crossings.js';
import type { TimeSpan } from '../../sky/night.js';
import { horizontalOf } from '../../sky/place.js';
import { skyTrack } from '../../sky/sky-track.js';
import type { UtcMs } from '../../sky/types.js';
import {
  best,
  isUnderWay,
  nowIn,
  timeText,
  verdict,
  type SaidWhether,
  type WhetherQuestion,
} from './whether-question.js';

/** Hours that count: high enough, clear of the site's own horizon, on the side that is looked to, in the sky that it needs; none that is past. */
export const usableSpans = (
  question: WhetherQuestion,
): { readonly window: TimeSpan; readonly spans: readonly Interval[] } => {
  const { outlookQuestion, found, facing } = question;
  const { target, observer, horizon } = outlookQuestion;
  const window = windowsOf(outlookQuestion, found.magnitude).at(-1) ?? outlookQuestion.night;
  const leastDeg = leastAltitudeDegOf(target.body);
  const track = skyTrack(target.body, observer);
  const short = (utcMs: UtcMs): number => {
    if (horizon === null && facing === undefined) return leastDeg - track.altitudeDegAt(utcMs);
    const stand = horizontalOf(target.body, observer, utcMs);
    const hiddenDeg = Math.max(leastDeg, horizonAltitudeDegAt(horizon, stand.azimuthDeg)) - stand.altitudeDeg;
    return facing === undefined || isTowards(facing, stand) ? hiddenDeg : Math.max(1, hiddenDeg);
  };
  const spans = intervalsBelow(short, window.startUtcMs, window.endUtcMs);
  return { window, spans: spans.filter((span) => span.endUtcMs - span.startUtcMs >= MS_PER_MINUTE) };
};

/** "with binoculars", and the magnitude that decides it; null where a telescope is taken. */
const kitOf = ({ outlookQuestion: { equipment, target }, found: { magnitude } }: WhetherQuestion) => {
  if (!isHandHeld(equipment)) return null;
  const how = equipment.saidAs.replace(/^the /u, '');
  const isPoint = ['star', 'planet'].includes(target.kind);
  return {
    how: `with ${how === 'naked eye' ? 'the naked eye' : how}`,
    mag: isPoint && magnitude !== null ? `: mag ${magnitudeText(magnitude)}` : '',
  };
};

const SOON_MS = 2 * MS_PER_HOUR;

const NOT_UP: Readonly<Partial<Record<Outlook['verdict'], string>>> = {
  'washed-out': 'No, not well:',
  'twilight-only': 'No, hardly:',
  past: 'No, not well any more:',
};

/** Lower than this the air swallows all but the brightest; common practice, no source. */
const LEAST_SEEN_DEG = 4;
const isFaint = ({ marginMag }: Outlook): boolean => marginMag !== null && marginMag < SHOWS_MAG;

const notUp = (question: WhetherQuestion): SaidWhether => {
  const { found } = question;
  if (found.verdict === 'low')
    return verdict(found.best.altitudeDeg < LEAST_SEEN_DEG || isFaint(found) ? 'No, hardly:' : 'Yes, but not well:');
  const kit = found.verdict === 'too-faint' ? kitOf(question) : null;
  return verdict(kit === null ? (NOT_UP[found.verdict] ?? 'No:') : `No, not ${kit.how}${kit.mag};`);
};

export const seen = (question: WhetherQuestion): SaidWhether => {
  const { found, facing } = question;
  if (found.verdict !== 'up') return notUp(question);
  const { window, spans } = usableSpans(question);
  const [span] = spans;
  const side = facing === undefined ? '' : ` ${towardsWords(facing)}`;
  if (span === undefined) return best(`No, it is not high enough${side} in the dark hours to come.`);
  const kit = kitOf(question);
  const hours = `${hoursWords(question, span, window)}${side}`;
  if (kit !== null) return best(`Yes, ${kit.how}${kit.mag}${hours === '' ? '' : `, ${hours.trim()}`}.`);
  if (/^(?:only|from \S+(?: \S+)? on)/u.test(hours)) return best(`${capital(hours)}.`);
  return best(`Yes${hours === '' ? '' : `, ${hours.trim()}`}.`);
};

/** "only until 21:40", "from 23:10 on", "from 17:56 to 00:10"; "" where it is all the hours to come. */
const hoursWords = (question: WhetherQuestion, span: Interval, window: TimeSpan): string => {
  const startUtcMs = nowIn(question);
  const isNow = span.startUtcMs <= startUtcMs + MS_PER_MINUTE && isUnderWay(question);
  const ends = span.endsByCrossing && span.endUtcMs < window.endUtcMs;
  const until = `until ${timeText(span.endUtcMs, question)}`;
  if (isNow && !ends) return '';
  if (isNow) return span.endUtcMs - startUtcMs < SOON_MS ? `only ${until}` : until;
  const from = `from ${timeText(span.startUtcMs, question)}`;
  if (span.startsByCrossing && isUnderWay(question)) return `${from} on${riseWords(question, span.startUtcMs)}`;
  return `${from} to ${timeText(span.endUtcMs, question)}`;
};

/** " (it rises at 22:16)" where that is still to come, before it is high enough. */
const riseWords = (question: WhetherQuestion, untilUtcMs: UtcMs): string => {
  const { riseUtcMs } = question.found.times;
  const { nowUtcMs } = question.outlookQuestion;
  return riseUtcMs === null || riseUtcMs < nowUtcMs || riseUtcMs > untilUtcMs
    ? ''
    : ` (it rises at ${timeText(riseUtcMs, question)})`;
};

/** Too late, or too early: how its hours lie about the moment. */
export const hoursAround = (question: WhetherQuestion, asks: 'late' | 'early'): SaidWhether => {
  const { found } = question;
  const utcMs = nowIn(question);
  const { spans } = usableSpans(question);
  const inside = spans.find(({ startUtcMs, endUtcMs }) => startUtcMs <= utcMs + MS_PER_MINUTE && endUtcMs > utcMs);
  const next = spans.find(({ startUtcMs }) => startUtcMs > utcMs);
  if (found.verdict !== 'up')
    return verdict(asks === 'late' && found.verdict === 'past' ? 'Yes:' : 'Not a good night:');
  if (inside !== undefined)
    return best(
      `No${inside.endsByCrossing ? `, it is high enough until ${timeText(inside.endUtcMs, question)}` : ''}.`,
    );
  if (next === undefined) return asks === 'late' ? verdict('Yes:') : best('No, it is past.');
  const from = `from ${timeText(next.startUtcMs, question)} on`;
  const rise = riseWords(question, next.startUtcMs);
  return best(asks === 'late' ? `No, it is still to come: ${from}${rise}.` : `Yes: ${from}${rise}.`);
};
