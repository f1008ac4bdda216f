/** How a target stands at an hour, as a yes or a no: up, or down by then. */
import { leastAltitudeDegOf } from '../../evening/pick.js';
import { isTowards, towardsWords } from '../../evening/towards.js';
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { horizonAltitudeDegAt } from '../../pointing/horizon/horizon-profile.js';
import { degrees } from '../../reply/wording.js';
import { horizontalOf, placeOf } from '../../sky/place.js';
import { riseTransitSet, SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { sunSeparationDeg } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { Place, UtcMs } from '../../sky/types.js';
import {
  alone,
  best,
  isOfNow,
  momentOf,
  standWords,
  timeText,
  type SaidWhether,
  type WhetherQuestion,
} from './whether-question.js';

const SOON_MS = 4 * MS_PER_HOUR;

const eventsAround = ({ asked: { target, where } }: WhetherQuestion, utcMs: UtcMs) => {
  const { observer } = where.site;
  const before = riseTransitSet(target.body, observer, utcMs - MS_PER_DAY, utcMs);
  const after = riseTransitSet(target.body, observer, utcMs, utcMs + MS_PER_DAY);
  return { before, after };
};

const NOT_YET = 'not yet: ';

const isDayAt = ({ asked }: WhetherQuestion, utcMs: UtcMs): boolean =>
  horizontalOf(SUN, asked.where.site.observer, utcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;

/** Where it is down: that it has gone, or is yet to come. What set by day was not seen this night: it is yet to come, if it comes. */
const downWords = (question: WhetherQuestion, utcMs: UtcMs): string => {
  const { night } = question;
  const { before, after } = eventsAround(question, utcMs);
  if (after.riseUtcMs === null) return 'it does not rise here';
  const rises = timeText(after.riseUtcMs, question);
  const { setUtcMs } = before;
  return setUtcMs !== null &&
    setUtcMs > night.startUtcMs &&
    (after.riseUtcMs > night.endUtcMs || !isDayAt(question, setUtcMs))
    ? `it set at ${timeText(setUtcMs, question)} and rises again ${rises}`
    : `${NOT_YET}it rises at ${rises}`;
};

export const atText = (question: WhetherQuestion, utcMs: UtcMs): string =>
  isOfNow(question) ? 'now' : `at ${timeText(utcMs, question)}`;

const BESIDE_BEST_MS = 10 * MS_PER_MINUTE;

/** Why it is not to be seen where it stands, or does not stand, as the whole sentence; null where nothing hides it. */
const whyNot = (question: WhetherQuestion, utcMs: UtcMs, place: Place): string | null => {
  const { facing, outlookQuestion } = question;
  const at = atText(question, utcMs);
  if (place.apparentAltitudeDeg <= 0) {
    const why = downWords(question, utcMs);
    return `No, ${isOfNow(question) || why.startsWith('it ') ? why : `${at} it is down; ${why.slice(NOT_YET.length)}`}.`;
  }
  const stands = `${standWords(place)} ${at}`;
  if (horizonAltitudeDegAt(outlookQuestion.horizon, place.azimuthDeg) >= place.altitudeDeg)
    return `No, behind your horizon: ${stands}.`;
  return facing !== undefined && !isTowards(facing, place) ? `No, not ${towardsWords(facing)}: ${stands}.` : null;
};

/** By day what is so near the Sun is nothing to look for by hand; common practice, no source. */
const NEAR_SUN_DEG = 60;
const BY_HAND_NEVER = 'Never by hand: only with a mount that goes there by itself, the caps on until it has stopped.';

/** Clocks, hills and refraction are some minutes out: so long before sunrise the search ends; common practice, no source. */
const STOP_BEFORE_MS = 20 * MS_PER_MINUTE;

/** What stands near the Sun when it is up or about to rise: how far from it, and what makes it safe, before any Yes; null elsewhere. */
const nearSunWords = (question: WhetherQuestion, utcMs: UtcMs, place: Place): string | null => {
  const { target, where } = question.asked;
  const { observer } = where.site;
  if (target.id === 'sun' || target.id === 'moon') return null;
  const fromSunDeg = sunSeparationDeg(target.body, observer, utcMs);
  if (fromSunDeg > NEAR_SUN_DEG) return null;
  const fromIt = `${degrees(fromSunDeg)} from it`;
  const stands = `It stands ${standWords(place)} ${atText(question, utcMs)}.`;
  if (isDayAt(question, utcMs))
    return `The Sun is up ${isOfNow(question) ? 'now' : 'then'}, ${fromIt}. ${BY_HAND_NEVER} ${stands}`;
  const { riseUtcMs } = riseTransitSet(SUN, observer, utcMs, utcMs + STOP_BEFORE_MS);
  if (riseUtcMs === null) return null;
  const stop = timeText(riseUtcMs - STOP_BEFORE_MS, question);
  return `No, too near sunrise: the Sun rises at ${timeText(riseUtcMs, question)}, ${fromIt}. Stop searching by ${stop}, caps on. ${stands}`;
};

/** ", but by day: ", ", but low: ". */
const butWords = (question: WhetherQuestion, utcMs: UtcMs, { altitudeDeg }: Place): string => {
  const { target } = question.asked;
  if (isDayAt(question, utcMs) && target.id !== 'sun') return ', but by day: ';
  return altitudeDeg < leastAltitudeDegOf(target.body) ? ', but low: ' : ', ';
};

/** How it stands at the hour, or now. */
export const upThen = (question: WhetherQuestion): SaidWhether => {
  const { asked, found } = question;
  const utcMs = momentOf(question);
  const place = placeOf(asked.target.body, asked.where.site.observer, utcMs);
  const not = whyNot(question, utcMs, place);
  if (not !== null) return best(not);
  const nearSun = nearSunWords(question, utcMs, place);
  if (nearSun !== null) return best(nearSun);
  const { setUtcMs } = eventsAround(question, utcMs).after;
  const sets = setUtcMs !== null && setUtcMs - utcMs < SOON_MS ? `; it sets at ${timeText(setUtcMs, question)}` : '';
  const words = `Yes${butWords(question, utcMs, place)}${standWords(place)} ${atText(question, utcMs)}${sets}.`;
  return Math.abs(found.best.utcMs - utcMs) < BESIDE_BEST_MS && found.verdict === 'up' ? alone(words) : best(words);
};

/** Whether it is gone by the hour, or now. */
export const down = (question: WhetherQuestion): SaidWhether => {
  const { asked, outlookQuestion, night } = question;
  const utcMs = momentOf(question);
  const at = atText(question, utcMs);
  const place = placeOf(asked.target.body, asked.where.site.observer, utcMs);
  const { before, after } = eventsAround(question, utcMs);
  if (place.apparentAltitudeDeg > 0) {
    const sets = after.setUtcMs === null ? 'it does not set here' : `it sets at ${timeText(after.setUtcMs, question)}`;
    return best(`No, ${sets}; ${standWords(place)} ${at}.`);
  }
  const setUtcMs = before.setUtcMs;
  const fromUtcMs = Math.max(night.startUtcMs, outlookQuestion.nowUtcMs);
  const isOfNight = setUtcMs !== null && setUtcMs >= Math.min(fromUtcMs, night.startUtcMs);
  if (!isOfNight) return best(`It is down ${at}: ${downWords(question, utcMs).replace(NOT_YET, '')}.`);
  const did = setUtcMs > outlookQuestion.nowUtcMs ? 'sets' : 'set';
  return best(`Yes, it ${did} at ${timeText(setUtcMs, question)}.`);
};
