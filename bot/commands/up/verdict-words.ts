/** How a target fares in a night, as the sentence that opens the answer and the line on how well it shows. */
import type { Target } from '../../catalogue/index.js';
import { SKY_WORDS, type Equipment, type Sky } from '../../evening/equipment.js';
import type { Outlook } from '../../evening/outlook.js';
import { compassWord, degrees } from '../../reply/wording.js';
import { formatLocalTime } from '../../times/index.js';

export interface Circumstances {
  readonly target: Target;
  readonly found: Outlook;
  readonly zone: string;
  readonly equipment: Equipment;
  readonly sky: Sky;
  readonly sunAlwaysUp: boolean;
  readonly hasDark: boolean;
  /** Greatest altitude of the night, wherever in it; negative below the horizon. */
  readonly topDeg: number;
}

const bestWords = ({ found: { best, azimuthDeg }, zone }: Circumstances): string =>
  `${formatLocalTime(best.utcMs, zone)}, ${degrees(best.altitudeDeg)} high in the ${compassWord(azimuthDeg)}`;

const lowWords = (all: Circumstances): string => {
  const { culminationDeg } = all.found;
  const words = `Up but low, best at ${bestWords(all)}`;
  if (culminationDeg === null) return `${words}.`;
  return culminationDeg < 20
    ? `${words}. From this latitude it never gets above ${degrees(Math.max(0, culminationDeg))}.`
    : `${words}. At another time of year it reaches ${degrees(Math.min(90, culminationDeg))}.`;
};

const dayWords = ({ sunAlwaysUp, hasDark, found: { best } }: Circumstances): string => {
  if (sunAlwaysUp && best.altitudeDeg > 0) return 'Up, but in full daylight: the Sun does not set.';
  return hasDark
    ? 'Not up in the dark hours: it is above the horizon only by day or in twilight.'
    : 'Not up while the Sun is down.';
};

const neverWords = ({ found: { culminationDeg }, topDeg }: Circumstances): string =>
  culminationDeg !== null && culminationDeg < 0
    ? `Not up from here, ever: at this latitude it stays ${degrees(-culminationDeg)} or more below the horizon.`
    : `Not up from here this night: at best ${degrees(Math.abs(topDeg))} below the horizon.`;

export const verdictWords = (all: Circumstances): string => {
  const { found, equipment, sky, zone } = all;
  switch (found.verdict) {
    case 'up':
      return `Up, best at ${bestWords(all)}${found.sky === 'dark' || found.sky === 'daylight' ? '' : `, in ${found.sky}`}.`;
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
      return 'The dark hours of this night are over. Ask again with on:tomorrow.';
  }
};

const PLAIN_MAG = 2.5;
const EASY_MAG = 1.2;
const SHOWS_MAG = 0.2;
const MOONLIGHT_TELLS_MAG = 0.4;

const ease = (marginMag: number): string => {
  if (marginMag >= PLAIN_MAG) return 'plain to see';
  if (marginMag >= EASY_MAG) return 'easy';
  return marginMag >= SHOWS_MAG ? 'faint, look beside it' : 'not to be seen';
};

/** "easy in a 150 mm telescope under a country sky; moonlight takes 1.1 mag"; null where it need not or cannot be said. */
export const showsWords = ({ found, equipment, sky, target }: Circumstances): string | null => {
  const { marginMag, lostToMoonMag, verdict } = found;
  const isPoint = ['star', 'planet', 'moon', 'sun', 'coordinates'].includes(target.kind);
  if (marginMag === null || isPoint || ['never-up', 'day-only', 'past', 'lost-in-sun'].includes(verdict)) return null;
  const moonlight = lostToMoonMag >= MOONLIGHT_TELLS_MAG ? `; moonlight takes ${lostToMoonMag.toFixed(1)} mag` : '';
  return `${ease(marginMag)} in ${equipment.saidAs} under ${SKY_WORDS[sky]}${moonlight}`;
};
