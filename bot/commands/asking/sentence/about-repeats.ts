/** What of a reminder comes again, and what of the sky's calendar it waits for: "every friday at 7", "when the Geminids peak". */
import { says, type Asked } from './asked.js';

const WEEKDAYS = 'mon|tues?|wed(?:nes)?|thu(?:rs?)?|fri|sat(?:ur)?|sun';
const DAY = `(?:${WEEKDAYS})(?:day)?s?`;
const EACH_DAYS = new RegExp(`\\b(?:every|each|on) ((?:${DAY})(?:(?:,| and|, and|,? or) (?:${DAY}))*)\\b`, 'u');
const EACH =
  /\b(?:every|each)\b|\b(?:weekly|nightly|daily|monthly)\b|\bon (?:mon|tues|wednes|thurs|fri|satur|sun)days\b/u;
const ALL_DAYS = /\b(?:every|each) (?:night|evening|day|morning)\b|\b(?:nightly|daily)\b/u;
const WORKING = /\b(?:every|each) weekday\b/u;
const WEEKENDS = /\b(?:every|each) weekend\b/u;

/** "Every other friday", "every 2 weeks": not what days of the week can say. */
const LESS_OFTEN = /\b(?:every|each) (?:other|second|\d+|two|three|four)\b|\b(?:fortnight\w*|biweekly)\b/u;
export const isLessOften = (asked: Asked): boolean => says(asked, LESS_OFTEN);

/** Whether it is to come again and again. */
export const isRepeated = (asked: Asked): boolean => says(asked, EACH);

/** As `nights:` takes them: "every", "fri sat"; undefined where no day of the week is said. */
export const daysIn = (asked: Asked): string | undefined => {
  if (!isRepeated(asked) || isLessOften(asked)) return undefined;
  if (says(asked, ALL_DAYS)) return 'every';
  if (says(asked, WORKING)) return 'mon tue wed thu fri';
  if (says(asked, WEEKENDS)) return 'fri sat';
  const named = EACH_DAYS.exec(asked.plain)?.[1]?.match(new RegExp(`\\b(?:${WEEKDAYS})`, 'gu')) ?? [];
  return named.length === 0 ? undefined : named.map((day) => day.slice(0, 3)).join(' ');
};

const SHOWER = /\b(perseid|geminid|leonid|orionid|quadrantid|lyrid|taurid|ursid|draconid|eta aquarii?d|aquarii?d)s?\b/u;

/** As `event:` takes it; undefined where nothing of the kind is waited for. */
export const eventIn = ({ plain }: Pick<Asked, 'plain'>): string | undefined => {
  const shower = SHOWER.exec(plain)?.[1];
  if (shower !== undefined) return `${shower}s`;
  if (!/\beclipses?\b/u.test(plain)) return undefined;
  return /\b(?:solar|sun)\b/u.test(plain) ? 'solar eclipse' : 'lunar eclipse';
};
