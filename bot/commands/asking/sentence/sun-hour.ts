/** For which hour a sentence about the Sun is reckoned: the one it says, now, or the coming noon; and whether it asks of a distance alone. */
import { BEFORE_SUNRISE, FROM_SUNRISE, saysByDay, THIS_AFTERNOON } from './sun-words.js';
import type { When } from './when.js';

export const LOOKS =
  /\b(?:look|looking|see|view|observ\w*|imag\w*|photograph\w*|point\w*|aim|find|finding|visible|slew|go ?to|watch|spot|up|safe|ok|okay|track|catch)\b/u;
export const GOES = /\b(?:way|slew\w*|go|goes|going|move|moving|path|cross\w*|between|then|route|sweep\w*)\b/u;
/** Said of the Sun as it stands now; all else that says by day means some day, and at night the coming one. */
const SUN_NOW =
  /^(?!.*\b(?:while|when|with)\b).*\bsun(?:'s| is|s)? (?:still )?up\b|\b(?:it'?s|it is|being|as it'?s) (?:still |now )?(?:a )?(?:broad |bright |full )?(?:day ?light|day ?time|sunny|sunshine|light out|light outside)\b/u;
const NOW = /^(?:right )?now$/u;
const AT_NOON = /\b(?:noon|mid ?day|lunch\w*|afternoon|arvo)\b/u;

export interface HourParts {
  readonly when: When;
  /** It is afternoon where it is asked for. */
  readonly isAfternoon: boolean;
  /** The Sun is down there now; false where nobody knows. */
  readonly isNight: boolean;
}

const isSomeDay = (plain: string): boolean =>
  saysByDay(plain) && (LOOKS.test(plain) || GOES.test(plain)) && !SUN_NOW.test(plain);

/** Before the sunrise of a day said there is no hour safer to reckon for than it. */
const isOfSunrise = (plain: string, isTonight: boolean): boolean =>
  FROM_SUNRISE.test(plain) || (BEFORE_SUNRISE.test(plain) && !isTonight);

/** The hour said, noon of the day said, the coming noon where some day is meant; else now. */
export const hourOf = (plain: string, { when: { night, hour }, isAfternoon, isNight }: HourParts): string => {
  const isTonight = night === null || /^(?:tonight|today|this evening)$/u.test(night);
  if (hour !== null && NOW.test(hour)) {
    // "Now in daylight" is now while the Sun is up, and at night the coming day.
    if (!isSomeDay(plain) || !(isNight || AT_NOON.test(plain))) return hour;
  } else if (hour !== null) return night === null ? hour : `${night} ${hour}`;
  if (isOfSunrise(plain, isTonight)) return isTonight ? 'sunrise' : `${night} sunrise`;
  if (!isTonight) return `${night} noon`;
  if (THIS_AFTERNOON.test(plain)) return isAfternoon ? 'now' : '3pm';
  return isSomeDay(plain) ? 'next noon' : 'now';
};

/** How far it stands from the Sun, and of no move, look or danger. */
const APART =
  /\b(?:how (?:close|near|far|many degrees|much)|distance|elongation|separation|separated|angle|apart|degrees from)\b/u;
const NOT_APART =
  /\b(?:safe\w*|danger\w*|risk\w*|ok|okay|slew\w*|go ?to|goto|point\w*|aim|way|path|route|move\w*|swing|look\w*|see|view\w*|observ\w*|imag\w*|can|may|too close|tube|scope|telescope|mount)\b/u;
export const asksApart = (plain: string): boolean => APART.test(plain) && !NOT_APART.test(plain);
