/** Sentences about several nights: which of a week or a month is best, which weekends are dark, the one date or the other. */
import { MS_PER_DAY } from '../../../ground/durations.js';
import type { UtcMs } from '../../../sky/types.js';
import { MONTH_WORDS } from '../../../times/index.js';
import { commandLine } from '../question-parts.js';
import { says, type Asked, type Known, type Reading, type Rule } from './asked.js';
import { numberOf } from './words.js';

const WEEKDAY = '(?:mon|tues|wednes|thurs|fri|satur|sun)day';

/** One night of several is asked for, or what they all are. */
const NIGHT_OF =
  /\b(?:which|what|best|darkest|better|good|any)\b(?: [\w']+){0,4}? (?:nights?|evenings?|weeks?|weekends?|saturdays?|fridays?|sundays?)\b|\b(?:nights?|evenings?|weekends?|saturdays?|fridays?)\b.*\b(?:best|darkest|moonless|no moon|without (?:the |a )?moon|is dark|are dark)\b|\b(?:dark|moonless|moon[- ]free)\b(?: \w+)? (?:nights|weekends|saturdays|fridays)\b|^when (?:in|this|next|during)\b.*\bdark(?:est)?\b|\b(?:moonless|moon[- ]?free) (?:hours?|time)\b.*\b(?:week\w*|month|nights|next)\b/u;
/** "Is this weekend dark": a yes or a no of it. */
const WEEKEND_DARK =
  /^(?:is|are|will|how)\b.*\bweekend\b.*\b(?:dark|moonless|moon)\b|^(?:is|are|will|how)\b.*\b(?:dark|moonless|moon)\b.*\bweekend\b/u;
const OTHERS =
  /\b(?:remind\w*|meteors?|\w+ids|showers?|eclipses?|conjunctions?|oppositions?|transits?|weather|cloud\w*|clear)\b|^(?:which|what|any) (?:\w+ )?(?:planets|galaxies|doubles|globulars|nebulae|comets)\b/u;

const SPANS: readonly (readonly [RegExp, (found: RegExpExecArray) => string])[] = [
  [/\bnext (\w+) (weeks|nights|days)\b/u, ([, count = '', unit = '']) => `${numberOf(count) ?? 2} ${unit}`],
  [/\bnext week(?!end)\b/u, () => 'next week'],
  [/\b(?:this|of the|in the|the coming|coming|during the) week(?!end)\b/u, () => 'this week'],
  [/\bnext month\b/u, () => 'next month'],
  [/\bthis month\b/u, () => 'this month'],
  [/\b(?:of the|in a|the coming|coming|in the next|the next) month\b/u, () => '30 nights'],
  [
    new RegExp(`\\b(?:in|of|during|for|this|next) (${MONTH_WORDS})( \\d{4})?\\b`, 'u'),
    ([, month = '', year = '']) => `${month}${year}`,
  ],
  [/\bnext weekend\b/u, () => 'next weekend'],
  [/\b(?:this|the|coming) weekend\b/u, () => 'this weekend'],
];
/** Where no span is said: so many weeks hold two dark ones at least. */
const USUAL_SPAN = '9 weeks';
const OF_MANY = /\b(?:dark|moonless|moon[- ]free)(?: \w+)? (?:weekends|nights)\b/u;

/** "When can I shoot the Rosette with no Moon": which nights, not which hour. */
const WITHOUT_MOON =
  /^(?:when|which|what)\b(?!.*\b(?:tonight|time|hour)\b).*\b(?:no|without (?:the |a |any )?|free of (?:the )?) ?moon(?:light)?\b|^(?:when|which|what)\b(?!.*\b(?:tonight|time|hour)\b).*\bmoon(?:less|[- ]free)\b/u;

/** "How many hours can I get on it before the Moon is up": of one night. */
const HOURS_BEFORE_MOON =
  /\bhow (?:many hours|long|much time)\b.*\b(?:before (?:the )?moon|until (?:the )?moon|till (?:the )?moon|without (?:the |a )?moon|no moon|moon ?(?:less|free)|dark(?:ness)?)\b/u;

const spanIn = ({ plain }: Asked): string | null => {
  for (const [pattern, read] of SPANS) {
    const found = pattern.exec(plain);
    if (found !== null) return read(found);
  }
  return OF_MANY.test(plain) ? USUAL_SPAN : null;
};

const DAY = `(?:the )?(?:${WEEKDAY},? )?(?:the )?(\\d{1,2})(st|nd|rd|th)?(?: of)?(?: (${MONTH_WORDS}))?`;
const TWO_DAYS = new RegExp(
  `(?<![\\d:.] ?)\\b${DAY} or (?:on |maybe )?${DAY}(?![\\d:.]| ?(?:am|pm|inch|mm|x|degrees|o'clock))`,
  'u',
);
/** "4, 11 and 18 december". */
const DAYS_OF_MONTH = new RegExp(
  `\\b((?:\\d{1,2}(?:st|nd|rd|th)?,? )+(?:and|or|&) \\d{1,2}(?:st|nd|rd|th)?)(?: of)? (${MONTH_WORDS})\\b`,
  'u',
);
const TWO_WEEKDAYS = new RegExp(
  `\\b(tonight|tomorrow|${WEEKDAY})(?: night)? or (?:on |maybe )?(tomorrow|${WEEKDAY})\\b`,
  'u',
);
const COMPARED = /\b(?:moon\w*|dark\w*|better|best|which|darker)\b/u;

/** The next such date, by the calendar in UTC; null where there is none. */
const dateOf = (day: number, month: string | undefined, nowUtcMs: UtcMs): string | null => {
  const now = new Date(nowUtcMs);
  const wanted = month === undefined ? null : MONTH_NAMES.indexOf(month.slice(0, 3));
  for (let ahead = 0; ahead < 13; ahead++) {
    const date = new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + ahead, day));
    const isThat = date.getUTCDate() === day && (wanted === null || date.getUTCMonth() === wanted);
    if (isThat && date.getTime() + MS_PER_DAY > nowUtcMs) return date.toISOString().slice(0, 10);
  }
  return null;
};
const MONTH_NAMES = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/** "the 13th or 14th", "friday 11 or saturday 12 december", "friday or saturday". */
const datesIn = ({ plain }: Asked, nowUtcMs: UtcMs): string | null => {
  const [, days, month] = DAYS_OF_MONTH.exec(plain) ?? [];
  if (days !== undefined) {
    const dates = (days.match(/\d{1,2}/gu) ?? []).map((day) => dateOf(Number(day), month, nowUtcMs));
    return dates.includes(null) ? null : dates.join(' or ');
  }
  const [, one, oneTh, oneMonth, other, otherTh, otherMonth] = TWO_DAYS.exec(plain) ?? [];
  const isDate = [oneTh, oneMonth, otherTh, otherMonth].some((part) => part !== undefined);
  if (one !== undefined && other !== undefined && isDate) {
    const dates = [
      dateOf(Number(one), oneMonth ?? otherMonth, nowUtcMs),
      dateOf(Number(other), otherMonth ?? oneMonth, nowUtcMs),
    ];
    return dates.includes(null) ? null : dates.join(' or ');
  }
  const [, first, second] = TWO_WEEKDAYS.exec(plain) ?? [];
  return first === undefined || second === undefined ? null : `${first} or ${second}`;
};

const weekdaysIn = ({ plain }: Asked): string | undefined => {
  if (/\bweekends?\b/u.test(plain)) return 'weekends';
  return /\b(fridays?|saturdays?|sundays?)\b/u.exec(plain)?.[1]?.replace(/s?$/u, 's');
};

/** "best weekends of next month", as `over:` takes it. */
const overText = (asked: Asked, span: string): string => {
  const weekdays = weekdaysIn(asked);
  if (weekdays === undefined || /weekend/u.test(span)) return span;
  // "Which saturdays": all that are.
  const isBest = says(asked, WANTS_BEST) && !says(asked, /\bwhich (?:fri|satur|sun)days\b/u);
  return `${isBest ? 'best ' : ''}${weekdays} of ${span}`;
};
const WANTS_BEST = /\b(?:which|what|best|darkest|better)\b/u;

/** Days of a month with a comma between them are no position. */
const placeOf = ({ place, plain }: Asked): string | undefined =>
  place === null || (/^\d{1,2},\d{1,2}$/u.test(place) && DAYS_OF_MONTH.test(plain)) ? undefined : place;

const overLine = (asked: Asked, over: string): Reading => {
  const [target] = asked.targets.filter((name) => name !== 'moon');
  return { line: commandLine('dark', '', { over, for: target, site: placeOf(asked) }) };
};

/** Of one target: the hours of a night before the Moon, or the nights without it. */
const withoutMoon = (asked: Asked): Reading | null => {
  if (asked.above === null && says(asked, HOURS_BEFORE_MOON)) return overLine(asked, asked.when.night ?? 'tonight');
  return says(asked, WITHOUT_MOON) ? overLine(asked, spanIn(asked) ?? USUAL_SPAN) : null;
};

export const nightsAsked =
  ({ nowUtcMs }: Known): Rule =>
  (asked) => {
    const others = asked.targets.filter((name) => name !== 'moon');
    if (says(asked, OTHERS) || others.includes('sun') || others.length > 1) return null;
    const over = others.length === 1 ? withoutMoon(asked) : null;
    if (over !== null) return over;
    const dates = says(asked, COMPARED) ? datesIn(asked, nowUtcMs) : null;
    if (dates !== null) return overLine(asked, dates);
    const span = says(asked, NIGHT_OF) || says(asked, WEEKEND_DARK) ? spanIn(asked) : null;
    return span === null ? null : overLine(asked, overText(asked, span));
  };
