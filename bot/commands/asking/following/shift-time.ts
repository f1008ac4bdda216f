/** "An hour later", "the day after": a time told by the one before it. */
import { numberOf } from '../sentence/words.js';
import type { Times } from './told-line.js';

const SHIFT =
  /^(?:(?:at|about|around) )?(?:(half an|an?|one|[a-z]+|\d{1,2}) )(hours?|hrs?|minutes?|mins?) (later|earlier|after(?: that)?|before(?: that)?)$/u;
const DAY_AFTER =
  /^(?:on |for )?(?:the )?(?:(?:day|night|evening) after(?: that)?|(?:next|following) (?:day|night|evening))$/u;
const DAY_BEFORE = /^(?:on |for )?the (?:day|night|evening) before(?: that)?$/u;
/** Right after an answer of the sky these are of it, mark or none. */
export const NAMES_PLACE_OR_DAY =
  /^(?:from|near) \p{L}{3}|^(?:on |for )?(?:tomorrow|tonight|\p{L}{3,6}day)\b|^(?:half an|an?|one|two|three|\d) (?:hours?|hrs?|minutes?) (?:later|earlier|after|before)\b/iu;
const MINUTES_A_DAY = 1440;

/** "And later?", "later tonight": so many minutes on; common practice, no source. */
const LATER =
  /^(?:(?:a )?(?:bit|little|while) |much |some ?time |any |what about )?later(?: on)?(?: (?:tonight|this evening|in the (?:night|evening)|this night))?$/u;
const LATER_MINUTES = 120;
export const saysLater = (words: string): boolean => LATER.test(words);

const WEEKDAYS = ['monday', 'tuesday', 'wednesday', 'thursday', 'friday', 'saturday', 'sunday'];

const BARE_HOUR =
  /\b(?:at|around|about|by|till|until)? ?(\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven)(?: o'?clock)?(?: then| instead| too)?$/u;
/** From when on an hour of the clock is of the morning, in minutes. */
const MORNING_FROM = 240;

/** "And at 9", after an hour of the morning: the next nine o'clock behind it. Null where it is said otherwise, or after no such hour. */
export const hourAfterMorning = (words: string, before: string | null): string | null => {
  const from = before === null ? null : minutesOf(before);
  const told = BARE_HOUR.exec(words)?.[1];
  const hour = told === undefined ? null : numberOf(told);
  if (from === null || hour === null || hour < 1 || hour > 11 || from < MORNING_FROM || from >= MINUTES_A_DAY / 2)
    return null;
  return clock(hour * 60 > from ? hour * 60 : hour * 60 + MINUTES_A_DAY / 2);
};

/** Minutes after midnight; null where the hour is no reading of a clock. */
export const minutesOf = (hour: string): number | null => {
  if (hour === 'midnight') return 0;
  const [, figures, minutes = '0', half] = /^(\d{1,2})(?:[:.](\d\d))? ?([ap]m)?$/iu.exec(hour) ?? [];
  if (figures === undefined || (minutes === '0' && half === undefined)) return null;
  const hours = half === undefined ? Number(figures) : (Number(figures) % 12) + (/p/iu.test(half) ? 12 : 0);
  return hours > 24 ? null : hours * 60 + Number(minutes);
};

const minutesSaid = (count: string, unit: string): number | null => {
  const each = unit.startsWith('h') ? 60 : 1;
  if (count === 'half an') return each / 2;
  const number = /^an?$/u.test(count) ? 1 : numberOf(count);
  return number === null ? null : number * each;
};

export const clock = (minutes: number): string =>
  `${String(Math.floor(minutes / 60)).padStart(2, '0')}:${String(minutes % 60).padStart(2, '0')}`;

/** Minutes later; earlier is less than 0. Null where the words tell no such thing. */
const minutesTold = (words: string): number | null => {
  const [, count = '', unit = '', way = ''] = SHIFT.exec(words) ?? [];
  const by = count === '' ? null : minutesSaid(count, unit);
  return by === null || by < 1 ? null : by * (/^(?:later|after)/u.test(way) ? 1 : -1);
};

const isTonight = (night: string | null): boolean => night === null || /^(?:tonight|this evening|today)$/u.test(night);

const hourShifted = (words: string, { night, hour }: Times): Times | null => {
  const by = saysLater(words) ? LATER_MINUTES : minutesTold(words);
  if (by === null) return null;
  // From now on, where no hour was said.
  if (hour === null || hour === 'now')
    return by > 0 && isTonight(night) ? { night: null, hour: `in ${by} minutes` } : null;
  const ahead = /^in (\d+) minutes$/u.exec(hour)?.[1];
  if (ahead !== undefined) return Number(ahead) + by > 0 ? { night, hour: `in ${Number(ahead) + by} minutes` } : null;
  const from = minutesOf(hour);
  if (from === null) return null;
  const to = from + by;
  // Over midnight, which night it then is is not for words to say.
  if (night !== null && (to < 0 || to >= MINUTES_A_DAY)) return null;
  return { night, hour: clock((to + MINUTES_A_DAY) % MINUTES_A_DAY) };
};

/** A night so many days from today. */
const nightIn = (days: number): string => ['yesterday', 'tonight', 'tomorrow'][days + 1] ?? `in ${days} days`;

const dayShifted = (words: string, { night, hour }: Times): Times | null => {
  const by = Number(DAY_AFTER.test(words)) - Number(DAY_BEFORE.test(words));
  if (by === 0) return null;
  if (night === null) return { night: by === 1 ? 'tomorrow' : 'yesterday', hour };
  const weekday = WEEKDAYS.indexOf(night);
  if (weekday >= 0) return { night: WEEKDAYS[(weekday + by + 7) % 7] ?? null, hour };
  const days = night === 'tomorrow' ? 1 : Number(/^in (\d{1,2}) days$/u.exec(night)?.[1] ?? Number.NaN);
  if (Number.isNaN(days)) return null;
  return { night: nightIn(days + by), hour };
};

/** @returns null where the words tell no time by another, or by one that is not known */
export const shiftedTimes = (words: string, before: Times): Times | null =>
  hourShifted(words, before) ?? dayShifted(words, before);

/** Whether they would, if the time before were known. */
export const tellsShift = (words: string): boolean =>
  SHIFT.test(words) || saysLater(words) || DAY_AFTER.test(words) || DAY_BEFORE.test(words);
