/** How a target fares in a night, as the sentence that opens the answer and the line on how well it shows. */
import type { Target } from '../../catalogue/index.js';
import { easeOf } from '../../evening/ease.js';
import { isEyes, isHandHeld, SKY_WORDS, type Equipment, type Sky } from '../../evening/equipment.js';
import type { Outlook } from '../../evening/outlook.js';
import { compassWord, degrees } from '../../reply/wording.js';
import { formatLocalTime } from '../../times/index.js';
import { filterFor, needsHBeta } from './filter-words.js';
import { bestMonth } from './season.js';
import { splitWords } from './split-words.js';

export interface Circumstances {
  readonly target: Target;
  readonly found: Outlook;
  readonly zone: string;
  readonly equipment: Equipment;
  readonly sky: Sky;
  readonly sunAlwaysUp: boolean;
  readonly hasDark: boolean;
  /** Greatest altitude of the night, wherever in it; negative below the horizon. */
  readonly topDeg: () => number;
}

const bestWords = ({ found: { best, azimuthDeg, isMoonAvoided }, zone }: Circumstances): string =>
  `${formatLocalTime(best.utcMs, zone)}, ${degrees(best.altitudeDeg)} high in the ${compassWord(azimuthDeg)}${isMoonAvoided ? ', with the Moon down' : ''}`;

/** The dark hours are over, or the target's own are. */
const pastWords = ({ found: { missed }, zone }: Circumstances): string =>
  `${
    missed === null
      ? 'The dark hours of this night are over'
      : `Past its best for this night: that was at ${formatLocalTime(missed.utcMs, zone)}, ${degrees(missed.altitudeDeg)} high in the ${compassWord(missed.azimuthDeg)}`
  }. Ask again with on:tomorrow.`;

const lowWords = (all: Circumstances): string => {
  const { culminationDeg } = all.found;
  const words = `Up but low, best at ${bestWords(all)}`;
  if (culminationDeg === null) return `${words}.`;
  return culminationDeg < 20
    ? `${words}. From this latitude it never gets above ${degrees(Math.max(0, culminationDeg))}.`
    : `${words}. At another time of year it reaches ${degrees(Math.min(90, culminationDeg))}.`;
};

const seasonWords = (target: Target): string => {
  const month = bestMonth(target);
  return month === null ? '' : ` It is highest at midnight in ${month}.`;
};

const dayWords = ({ target, sunAlwaysUp, hasDark, found: { best } }: Circumstances): string => {
  if (sunAlwaysUp && best.altitudeDeg > 0) return 'Up, but in full daylight: the Sun does not set.';
  return hasDark
    ? `Not up in the dark hours: it is above the horizon only by day or in twilight.${seasonWords(target)}`
    : 'Not up while the Sun is down.';
};

const neverWords = ({ found: { culminationDeg }, topDeg }: Circumstances): string =>
  culminationDeg !== null && culminationDeg < 0
    ? `Not up from here, ever: at this latitude it stays ${degrees(-culminationDeg)} or more below the horizon.`
    : `Not up from here this night: at best ${degrees(Math.abs(topDeg()))} below the horizon.`;

/** Where the hour asked about, or now, is told first, what follows is of the rest of the night. */
export const bestAfter = (all: Circumstances): string =>
  all.found.verdict === 'up' ? `Best at ${bestWords(all)}${skyWords(all)}.` : verdictWords(all);

const skyWords = ({ found: { sky } }: Circumstances): string =>
  sky === 'dark' || sky === 'daylight' ? '' : `, in ${sky}`;

export const verdictWords = (all: Circumstances): string => {
  const { found, equipment, sky, zone } = all;
  switch (found.verdict) {
    case 'up':
      return `Up, best at ${bestWords(all)}${skyWords(all)}.`;
    case 'low':
      return lowWords(all);
    case 'washed-out':
      return `Up, best at ${bestWords(all)}, but drowned in moonlight.`;
    case 'too-faint':
      return `Up, best at ${bestWords(all)}, but too faint for ${equipment.saidAs} under ${SKY_WORDS[sky]}.`;
    case 'twilight-only':
      return `Up only in ${found.sky}, best at ${bestWords(all)}.`;
    case 'lost-in-sun':
      return `Lost in the Sun's glare: only ${degrees(found.sunSeparationDeg)} from it.`;
    case 'behind-horizon':
      return `Behind your horizon all the dark hours; it reaches ${degrees(found.best.altitudeDeg)} at ${formatLocalTime(found.best.utcMs, zone)}.`;
    case 'day-only':
      return dayWords(all);
    case 'never-up':
      return neverWords(all);
    case 'past':
      return pastWords(all);
  }
};

const MOONLIGHT_TELLS_MAG = 0.5;
const MOONLIGHT_HIDES_MAG = 1.5;
const STRONG_MOONLIGHT_MAG = 2.5;

/** Far wider than a telescope's view, it is the eye's to see; common practice, no source. */
const WIDE_ARCMIN = 240;

const isForEyes = ({ equipment, target: { kind, sizeArcmin } }: Circumstances): boolean =>
  isEyes(equipment) || (kind === 'galaxy' && (sizeArcmin ?? 0) >= WIDE_ARCMIN);

/** "faint in a 150 mm telescope under a country sky, look beside it", "plain to the naked eye under a country sky". */
const easeWords = (all: Circumstances, marginMag: number): string => {
  const { target, equipment, sky } = all;
  const isToEyes = isForEyes(all);
  const under = `under ${SKY_WORDS[sky]}`;
  const where = isToEyes ? `to the naked eye ${under}` : `in ${equipment.saidAs} ${under}`;
  const parts = isToEyes && !isHandHeld(equipment) ? '; wider than a telescope’s view, which shows its parts' : '';
  switch (easeOf(target, marginMag)) {
    case 'plain':
      return `plain ${isToEyes ? '' : 'to see '}${where}${parts}`;
    case 'easy':
      return `easy ${where}${parts}`;
    case 'faint':
      return `faint ${where}, look beside it${parts}`;
    case 'hidden':
      return `not to be seen ${isToEyes ? `with the naked eye ${under}` : where}${parts}`;
  }
};

const moonlightWords = (lostMag: number): string => {
  if (lostMag < MOONLIGHT_TELLS_MAG) return '';
  if (lostMag < MOONLIGHT_HIDES_MAG) return '; moonlight dims it';
  return lostMag < STRONG_MOONLIGHT_MAG ? '; moonlight hides much of it' : '; moonlight hides most of it';
};

/** For what is bright by its gas and not plain as it is; null where no filter helps. */
const filterWords = ({ target, equipment, found: { marginMag } }: Circumstances): string | null => {
  if (isHandHeld(equipment) || (marginMag !== null && easeOf(target, marginMag) === 'plain')) return null;
  return filterFor(target);
};

/** "easy in a 150 mm telescope under a country sky; moonlight dims it"; null where it need not or cannot be said. */
export const showsWords = (all: Circumstances): string | null => {
  const { found, equipment, target } = all;
  const { marginMag, lostToMoonMag, verdict } = found;
  const isPoint = ['star', 'planet', 'moon', 'sun', 'coordinates'].includes(target.kind);
  if (isPoint || verdict === 'never-up') return null;
  // Whether a pair is split does not hang on the night.
  if (target.double !== null) return splitWords(target.double, equipment);
  if (['day-only', 'past', 'lost-in-sun'].includes(verdict)) return null;
  const filter = filterWords(all);
  // That it is drowned, or too faint, is said before.
  if (marginMag === null || verdict === 'washed-out' || verdict === 'too-faint') return filter;
  const shown = needsHBeta(target) ? '' : `${easeWords(all, marginMag)}${moonlightWords(lostToMoonMag)}`;
  return [shown, filter].filter((part) => part !== null && part !== '').join('; ');
};
