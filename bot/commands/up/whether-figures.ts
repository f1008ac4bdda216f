/** A yes or a no that hangs on a figure: so high, bright, never setting, dimmed by the Moon. */
import { SHOWS_MAG } from '../../evening/ease.js';
import { MS_PER_DAY } from '../../ground/durations.js';
import { degrees, magnitudeText } from '../../reply/wording.js';
import { placeOf } from '../../sky/place.js';
import { riseTransitSet } from '../../sky/rise-set.js';
import type { UtcMs } from '../../sky/types.js';
import { formatLocalTime } from '../../times/index.js';
import { bestMonth } from './season.js';
import {
  alone,
  best,
  nowIn,
  standWords,
  timeText,
  verdict,
  type SaidWhether,
  type WhetherQuestion,
} from './whether-question.js';
import { atText, upThen } from './whether-stand.js';

export const reaches = (question: WhetherQuestion, aboveWords: (aboveDeg: number) => string): SaidWhether => {
  const { asked, aboveDeg = 0, utcMs } = question;
  const { target, where } = asked;
  const words = aboveWords(aboveDeg);
  const lower = `${words.charAt(0).toLowerCase()}${words.slice(1)}`;
  if (utcMs === null) return best(`${words.startsWith('Never') ? 'No' : 'Yes'}, ${lower}`);
  const place = placeOf(target.body, where.site.observer, utcMs);
  const isAbove = place.apparentAltitudeDeg > aboveDeg;
  const at = timeText(utcMs, question);
  const stands = place.apparentAltitudeDeg > 0 ? `${degrees(place.apparentAltitudeDeg)} at ${at}` : `down at ${at}`;
  return best(`${isAbove ? 'Yes' : 'No'}, ${stands}: ${lower}`);
};

/** Common practice, no source. */
const HIGH_DEG = 40;
const LOW_DEG = 20;
export const highOrLow = (question: WhetherQuestion, asks: 'high' | 'low'): SaidWhether => {
  const utcMs = nowIn(question);
  const place = placeOf(question.asked.target.body, question.asked.where.site.observer, utcMs);
  const heightDeg = place.apparentAltitudeDeg;
  if (heightDeg <= 0) return upThen(question);
  const isSo = asks === 'high' ? heightDeg >= HIGH_DEG : heightDeg < LOW_DEG;
  const isMiddling = heightDeg >= LOW_DEG && heightDeg < HIGH_DEG;
  const no = isMiddling ? 'No, middling' : 'No';
  return best(`${isSo ? 'Yes' : no}: ${standWords(place)} ${atText(question, utcMs)}.`);
};

/** Brighter than this it is among the first that one sees; to this the naked eye has it in a dark sky. Common practice, no source. */
const BRIGHT_MAG = 1.5;
const FAIR_MAG = 4;
const EYE_MAG = 6;
const BINOCULAR_MAG = 9;
export const bright = ({ found: { magnitude }, asked: { target } }: WhetherQuestion): SaidWhether => {
  if (magnitude === null) return best(`No figure of its brightness is listed for ${target.name}.`);
  const mag = `mag ${magnitudeText(magnitude)}`;
  const isPoint = ['star', 'planet', 'moon', 'sun', 'double-star'].includes(target.kind);
  const spread = isPoint ? '' : ' in all, but spread out';
  if (magnitude <= BRIGHT_MAG) return best(`Yes, very: ${mag}${spread}.`);
  if (magnitude <= FAIR_MAG) return best(`Yes, fairly: ${mag}${spread}, plain to the naked eye in a dark sky.`);
  if (magnitude <= EYE_MAG) return best(`No: ${mag}${spread}, for the naked eye only in a dark sky.`);
  return best(`No: ${mag}${spread}, ${magnitude <= BINOCULAR_MAG ? 'binoculars show it' : 'it takes a telescope'}.`);
};

/** Whether it never sets, or never rises, from here. */
export const circumpolar = (question: WhetherQuestion, asks: 'circumpolar' | 'sets-here'): SaidWhether => {
  const [stays, goes] = asks === 'circumpolar' ? ['Yes', 'No'] : ['No', 'Yes'];
  const { target, where } = question.asked;
  const { observer } = where.site;
  const utcMs = nowIn(question);
  const { riseUtcMs, setUtcMs, transitUtcMs, alwaysUp, neverUp } = riseTransitSet(
    target.body,
    observer,
    utcMs,
    utcMs + MS_PER_DAY,
  );
  if (neverUp) return alone('No, it never rises here.');
  const clock = (eventUtcMs: UtcMs): string => formatLocalTime(eventUtcMs, where.site.zone);
  const dec = placeOf(target.body, observer, utcMs).ofDate.decDeg;
  const leastDeg = Math.abs(observer.latitudeDeg + dec) - 90;
  if (alwaysUp || transitUtcMs === null)
    return best(
      `${stays}, it never sets here: at its lowest ${degrees(leastDeg)} high${target.body.kind === 'fixed' ? '' : ' in these days'}.`,
    );
  const times = [
    riseUtcMs === null ? null : `rises ${clock(riseUtcMs)}`,
    setUtcMs === null ? null : `sets ${clock(setUtcMs)}`,
  ].filter((part) => part !== null);
  return best(`${goes}, it ${times.join(' and ')}.`);
};

/** Whether it is ever seen from here, how high, and in which months; null for what moves. */
export const ever = ({ asked: { target, where }, found: { culminationDeg } }: WhetherQuestion): SaidWhether | null => {
  const month = bestMonth(target);
  if (culminationDeg === null || month === null) return null;
  if (culminationDeg <= 0) return alone('No, it never rises here.');
  const { latitudeDeg } = where.site.observer;
  const { decDeg } = placeOf(target.body, where.site.observer, 0).j2000;
  if (Math.abs(latitudeDeg + decDeg) > 90) return best('Yes, on every dark night: it never sets here.');
  const side = decDeg > latitudeDeg ? 'north' : 'south';
  const low = culminationDeg < LOW_DEG ? ', so it takes a free horizon and clear air' : '';
  return alone(
    `Yes, it climbs to ${degrees(culminationDeg)} in the ${side}${low}: highest at midnight in ${month}, in the evening a month or two later.`,
  );
};

const LITTLE_MAG = 0.5;
const MUCH_MAG = 1.5;
/** What the Moon takes from it at its best hour. */
export const moonlight = ({ found }: WhetherQuestion): SaidWhether => {
  const { lostToMoonMag, marginMag } = found;
  if (marginMag === null || found.verdict === 'never-up') return verdict('No figure for that:');
  if (lostToMoonMag < LITTLE_MAG) return best('No, hardly at all.');
  if (marginMag < SHOWS_MAG) return best(`Yes, it drowns it: ${lostToMoonMag.toFixed(1)} mag are lost in moonlight.`);
  return lostToMoonMag < MUCH_MAG
    ? best('Only a little: moonlight dims it, and it still shows.')
    : best(`Yes, it takes much of it: ${lostToMoonMag.toFixed(1)} mag; the brightest part still shows.`);
};
