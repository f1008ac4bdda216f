/** The night and the hour in a sentence, wherever they stand: "in march", "on friday at half past ten", "3 in the morning". */
import type { UtcMs } from '../../../sky/types.js';
import { isOfThatDate, MONTH_WORDS, namesHour, namesNight } from '../../../times/index.js';
import { numberOf, take, takeFirst, type Run, type Sentence } from './words.js';
import { hourInFigures } from './hour-figures.js';
import { MS_PER_DAY } from '../../../ground/durations.js';
import { tableOf } from '../../../ground/table-of.js';

export interface When {
  /** Which hour was taken, where an hour without am or pm is past; left out: nothing is to be said. */
  readonly hourNote?: string;
  /** As the time rooms read it. */
  readonly night: string | null;
  readonly hour: string | null;
  /** Night and hour are one instant ("3am tomorrow"): the hour is not of the night that begins on that date. */
  readonly isOneInstant: boolean;
  /** The morning of that day, no hour said: "tomorrow morning" ends tonight. */
  readonly isMorning: boolean;
  /** Whether the hour ends what is asked about ("till ten"). */
  readonly isUntil: boolean;
  /** How it was taken, where that is not plain. */
  readonly note: string | null;
}

const MONTH = new RegExp(
  `^(?:in (?:(early|mid|late) )?(${MONTH_WORDS})( \\d{4})?|(?:(early|mid|late) )?(${MONTH_WORDS})( 20[2-9]\\d))$`,
  'u',
);
/** The middle of a season as the north has it; the note says which day was taken. */
const SEASONS = tableOf({
  'in spring': '15 apr',
  'in the spring': '15 apr',
  'in summer': '15 jul',
  'in the summer': '15 jul',
  'in autumn': '15 oct',
  'in the autumn': '15 oct',
  'in the fall': '15 oct',
  'in winter': '15 jan',
  'in the winter': '15 jan',
});
const DAY_OF = tableOf({ early: '5', mid: '15', late: '25' });
const PREPOSITION = /^(?:on|for|at|around|about|by|till|til|until|from|after|before|@|during|this)$/u;
const UNTIL = /^(?:till|til|until|before|by)$/u;

/** Days with names of their own. */
const NAMED_DAYS = tableOf({
  weekend: 'saturday',
  'this weekend': 'saturday',
  'the weekend': 'saturday',
  'next week': 'in 7 days',
});

/** Weekdays so short that they are another word as well. */
const SHORT_DAY = /^(?:sun|mon)$/u;
/** "it sat outside" is no Saturday. */
const SITS = /^(?:it|that|which|i|we|has|have|mount|scope|telescope|cat)$/u;

/** "the 12th of december" as the time rooms read it. */
const plainDate = (words: string): string =>
  words
    .replace(/^the /u, '')
    .replace(/(\d)(?:st|nd|rd|th) of /u, '$1 ')
    .replace(/(\d) of /u, '$1 ')
    .replace(/'s$/u, '')
    .replace(/^((?:mon|tues|wednes|thurs|fri|satur|sun)day)s$/u, '$1');

/** "Drift in dec", "backlash of the dec axis": declination, and no month. */
const OF_AXIS = /\b(?:drift\w*|guid\w+|backlash|axis|axes|ra|motor|gears?|pulses?|balanc\w*|star)\b/u;
const isDeclination = ({ plain }: Run, { words }: Sentence): boolean =>
  /^(?:in )?dec$/u.test(plain) && words.some((word) => OF_AXIS.test(word.plain));

/** The 15th of a month, a season's middle, a day with a name of its own. */
const roughNight = ({ plain }: Run): string | null => {
  const month = MONTH.exec(plain);
  if (month !== null) {
    const [, part, name, year, loosePart, looseName = '', looseYear = ''] = month;
    return `${DAY_OF.get(part ?? loosePart ?? 'mid') ?? '15'} ${name ?? looseName}${year ?? looseYear}`;
  }
  const season = SEASONS.get(plain);
  if (season !== undefined) return season;
  return NAMED_DAYS.get(plain) ?? null;
};

/** Words that are a night as they stand; the Sun is not Sunday, and "the new moon" is asked for as often as it is a night. */
const mayBeNight = (words: string, before: string): boolean => {
  if (/^(?:on|for|at|in \D)/u.test(words) && !/^in (?:a|one|two|three) /u.test(words)) return false;
  if (SHORT_DAY.test(words)) return /^(?:on|this|next)$/u.test(before);
  if (words === 'sat' && SITS.test(before)) return false;
  return !/moon|quarter/u.test(words) || /^(?:at|on|around|by|until|during|under)$/u.test(before);
};

/** The Saturday after the one that comes; on a weekend the one that comes. */
const nextWeekend = ({ plain }: Run, nowUtcMs: UtcMs): string | null => {
  if (plain !== 'next weekend' && plain !== 'the next weekend') return null;
  const weekday = new Date(nowUtcMs).getUTCDay();
  const toSaturday = (SATURDAY - weekday + DAYS_A_WEEK) % DAYS_A_WEEK;
  return `in ${weekday === 0 || weekday === SATURDAY ? toSaturday || DAYS_A_WEEK : toSaturday + DAYS_A_WEEK} days`;
};
const SATURDAY = 6;

/** "On the 20th": the next such day, by the calendar in UTC. */
const dayOfMonth = ({ plain }: Run, before: string, nowUtcMs: UtcMs): string | null => {
  const day = Number(/^(?:the )?(\d{1,2})(?:st|nd|rd|th)$/u.exec(plain)?.[1] ?? 0);
  if (day < 1 || day > 31 || !/^(?:on|for)$/u.test(before)) return null;
  const now = new Date(nowUtcMs);
  for (let ahead = 0; ahead < 3; ahead++) {
    const date = new Date(Date.UTC(now.getUTCFullYear(), now.getUTCMonth() + ahead, day));
    // "The 31st" is of no June, and one that is past is of the next month.
    if (date.getUTCDate() === day && date.getTime() + MS_PER_DAY > nowUtcMs) return date.toISOString().slice(0, 10);
  }
  return null;
};
const DAYS_A_WEEK = 7;

const nightIn = (run: Run, before: string, nowUtcMs: UtcMs): string | null => {
  const rough = roughNight(run) ?? nextWeekend(run, nowUtcMs) ?? dayOfMonth(run, before, nowUtcMs);
  if (rough !== null) return rough;
  if (run.plain === 'the sun') return null;
  const words = plainDate(run.plain);
  return mayBeNight(words, before) && namesNight(words, nowUtcMs) ? words : null;
};

const FULL_HOUR = 12;
/** An hour without am or pm is one of the dark: five to eleven in the evening, one to four in the morning. */
const darkHour = (hour: number, minute: number, half: string): string | null => {
  if (hour < 0 || hour > 24 || minute < 0 || minute > 59) return null;
  const isMorning = half === '' ? hour === FULL_HOUR || hour < 5 : half.startsWith('a');
  const inTwelve = hour > FULL_HOUR ? hour : (hour % FULL_HOUR) + (isMorning ? 0 : FULL_HOUR);
  return `${String(inTwelve % 24).padStart(2, '0')}:${String(minute).padStart(2, '0')}`;
};

const minutesBack = (hour: number, minute: number): readonly [number, number] =>
  minute < 0 ? [hour === 1 ? FULL_HOUR : hour - 1, 60 + minute] : [hour, minute];

const PAST = /^(half|quarter|twenty|ten|five|\d{1,2})(?: (past|to|after))? (\w+)(?: ?(am|pm))?$/u;

/** "half past ten", "half ten", "quarter to nine". */
const pastHour = (words: string): string | null => {
  const past = PAST.exec(words);
  if (past === null || (past[2] === undefined && past[1] !== 'half')) return null;
  const share = { half: 30, quarter: 15 }[past[1] ?? ''] ?? numberOf(past[1] ?? '') ?? 0;
  const hour = numberOf(past[3] ?? '');
  if (hour === null || hour > FULL_HOUR) return null;
  const [h, m] = minutesBack(hour, past[2] === 'to' ? -share : share);
  return darkHour(h, m, past[4] ?? '');
};

/** "21.30", "930", where a word before says it is an hour. */
const figuresHour = (words: string): string | null => {
  const figures = /^(\d{1,2})[.:]?(\d{2})(?:h|hrs)?$/u.exec(words);
  return figures === null ? null : darkHour(Number(figures[1]), Number(figures[2]), '');
};

/** "half past ten", "ten o'clock"; "ten" and "10" only where a word before says it is an hour. */
const spokenHour = (words: string, isHour: boolean): string | null => {
  const past = pastHour(words);
  if (past !== null) return past;
  const clock = /^(\w+?)( ?o'?clock)?$/u.exec(words);
  const hour = numberOf(clock?.[1] ?? '');
  const isSaid = isHour || clock?.[2] !== undefined;
  if (isSaid && hour !== null && hour <= 23 && Number.isInteger(hour)) return darkHour(hour, 0, '');
  return isHour ? figuresHour(words) : null;
};

const OF_DAY = /^(.+?) (?:in the|at|of the) (morning|afternoon|evening|night)$/u;
const DAWN_HOUR = 6;
/** "2 in the night" is before dawn, "11 at night" before midnight; "12 at night" is midnight itself. */
const halfOfDay = (hour: number, part: string): 'am' | 'pm' => {
  const isSmall = hour < DAWN_HOUR || hour === FULL_HOUR;
  return part === 'morning' || (part === 'night' && isSmall) ? 'am' : 'pm';
};

const FROM_NOW = /^in (an?|half an|[\w-]+|(?:twenty|thirty|forty|fifty) five) (hours?|minutes?|mins?)$/u;

/** "in an hour", "in two hours", as the time rooms read it. */
const fromNow = (words: string): string | null => {
  const [, count = '', unit = ''] = FROM_NOW.exec(words) ?? [];
  if (count === 'half an') return 'in 30 minutes';
  const [tens = '', ones = ''] = count.split(' ');
  const spoken = ones === '' ? numberOf(tens) : (numberOf(tens) ?? 0) + (numberOf(ones) ?? 0);
  const number = /^an?$/u.test(count) ? 1 : spoken;
  return number === null || unit === '' ? null : `in ${number} ${unit}`;
};

/** "Now" in other words; what an event may follow ("immediately after sunset") is none. */
const NOW =
  /^(?:at the moment|currently|just now|right away|straight away|this (?:very )?(?:minute|second|moment|instant)|at this (?:minute|moment|instant))$/u;

const hourIn = (run: Run, before: string, nowUtcMs: UtcMs): string | null => {
  const ahead = fromNow(run.plain);
  if (ahead !== null) return ahead;
  if (NOW.test(run.plain)) return 'now';
  const ofDay = OF_DAY.exec(run.plain);
  const told = ofDay === null ? null : numberOf(ofDay[1] ?? '');
  if (told !== null && told <= FULL_HOUR) return `${told}${halfOfDay(told, ofDay?.[2] ?? '')}`;
  const isAfterPreposition = /^(?:at|around|about|by|till|til|until|from|after|before|@)$/u.test(before);
  const spoken = /:\d\d$/u.test(run.plain) ? null : spokenHour(run.plain, isAfterPreposition);
  if (spoken !== null) return spoken;
  return !/^(?:at|on|in \D)/u.test(run.plain) && namesHour(run.plain, nowUtcMs) ? run.plain : null;
};

const LONGEST = 5;

/** "good morning" is none. */
const saysMorning = ({ words }: Sentence): boolean =>
  words.some(({ plain }, i) => /^mornings?$/u.test(plain) && words[i - 1]?.plain !== 'good');

/** An hour taken for one of the evening, where the words say morning. */
const inTheMorning = (hour: string): string => {
  const [, figures, minutes] = /^(1[3-9]|2[0-3]):(\d\d)$/u.exec(hour) ?? [];
  return figures === undefined ? hour : `${String(Number(figures) - 12).padStart(2, '0')}:${minutes}`;
};

/** While the Sun is up: "venus in daylight at 11", "by day at 2". */
const BY_DAY =
  /\b(?:by|in|during) (?:the |full |broad |bright )?(?:day|daytime|daylight|afternoon|day ?light hours)\b/u;
/** The words say which half of the day, by the 24-hour clock or by name. */
const SAYS_HALF =
  /\b(?:1[3-9]|2[0-3])(?:[:.h]?[0-5]\d)?\b|\b0\d[:.h]?\d\d\b|\d ?[ap]\.?m\b|\b(?:night|midnight|morning|evening)\b/u;

/** An hour taken for one of the dark, where the words say that it is of the day: 07:00 to 18:00. */
const inDaylight = (hour: string): string => {
  const [, figures, minutes = ''] = /^(\d{1,2}):(\d\d)$/u.exec(hour) ?? [];
  if (figures === undefined) return hour;
  const inTwelve = Number(figures) % FULL_HOUR;
  return `${String(inTwelve <= DAWN_HOUR ? inTwelve + FULL_HOUR : inTwelve).padStart(2, '0')}:${minutes}`;
};

const UNIVERSAL = /^(?:utc?|z|zulu)$/u;
/** "03:20 UT": not of the site's clocks. */
const takeUniversal = (sentence: Sentence, from: number): boolean => {
  const { words, taken } = sentence;
  const next = words.findIndex((_, i) => i >= from && taken[i] !== true);
  if (!UNIVERSAL.test(words[next]?.plain ?? '')) return false;
  take(sentence, { at: next, count: 1 });
  return true;
};

const AMOUNT =
  /^\S* \d{1,2}(?:\.\d)? ?(?:h|hrs?|hours?) of$|^(?:about|around|by) \d{1,2} (?:degrees?|degs?|°|arc ?min\w*|arc ?sec\w*|fists?|fingers?)$/u;
/** "3h of subs", "about 15 degrees": how long or how far, and no hour. */
const isAmount = ({ words }: Sentence, { plain, at, count }: Run, before: string): boolean =>
  AMOUNT.test(`${before} ${plain} ${words[at + count]?.plain ?? ''}`);

const takeHour = (sentence: Sentence, isMorning: boolean, nowUtcMs: UtcMs): ReturnType<typeof takeFirst> => {
  const hour = (run: Run, before: string): string | null => hourIn(run, before, nowUtcMs);
  const figures = (run: Run, before: string): string | null => hourInFigures(sentence, run, before);
  const of = (read: typeof hour) => (run: Run, before: string) =>
    isAmount(sentence, run, before) ? null : read(run, before);
  // "Now, 1900": the hour that is named.
  const said =
    takeFirst(sentence, LONGEST, of(figures), PREPOSITION) ?? takeFirst(sentence, LONGEST, of(hour), PREPOSITION);
  if (said === null) return null;
  if (/\d/u.test(said.text) && takeUniversal(sentence, said.at)) return { ...said, text: `${said.text} utc` };
  if (isMorning) return { ...said, text: inTheMorning(said.text) };
  const plain = sentence.words.map((word) => word.plain).join(' ');
  return BY_DAY.test(plain) && !SAYS_HALF.test(plain) ? { ...said, text: inDaylight(said.text) } : said;
};

const isOneDate = (night: string, hour: string, nowUtcMs: UtcMs): boolean =>
  / utc$/u.test(hour) || isOfThatDate(night, hour, nowUtcMs);

/** "christmas tree cluster" is a target, and "easter" may be a place's. */
const beginsName = (plain: string, next: string): boolean =>
  (/christmas$/u.test(plain) && next === 'tree') || (/easter$/u.test(plain) && next === 'island');

/** Above all, "10 degrees", "10 inch" and "10x50" are no hours; those are taken first. */
export const takeWhen = (sentence: Sentence, nowUtcMs: UtcMs): When => {
  const wasMonth = (run: Run): boolean => MONTH.test(run.plain) || SEASONS.has(run.plain);
  let month = false;
  const readNight = (run: Run, before: string): string | null => {
    const next = sentence.words[run.at + run.count]?.plain ?? '';
    const found = beginsName(run.plain, next) || isDeclination(run, sentence) ? null : nightIn(run, before, nowUtcMs);
    month = found !== null && wasMonth(run);
    return found;
  };
  const night = takeFirst(sentence, LONGEST, readNight, PREPOSITION);
  // "tonight, friday": a second night says no more.
  const isNight = /night|evening/u.test(night?.text ?? '');
  const isMorning = !isNight && saysMorning(sentence);
  const hour = takeHour(sentence, isMorning, nowUtcMs);
  return {
    night: night?.text ?? null,
    hour: hour?.text ?? null,
    isOneInstant: night !== null && hour !== null && isOneDate(night.text, hour.text, nowUtcMs),
    isMorning: hour === null && isMorning,
    isUntil: hour !== null && UNTIL.test(hour.before),
    note: month ? `Took the middle of it, ${night?.text ?? ''}; name a day for another.` : null,
  };
};

/** Of the evening, in whichever night; "this evening" is tonight. */
const IN_EVENING = /\b(?:in|of|during) (?:the |an? )?evenings?\b|\bevening (?:sky|star)\b|\beve(?:nings)?\b/u;

/** Of one target the evening or the morning of a night may be asked about, and no hour of it. */
export const partOfNight = ({ night, hour, isMorning }: When, plain: string): Pick<When, 'night' | 'hour'> | null => {
  if (hour !== null || /^(?:tonight|today|this evening)$/u.test(night ?? '')) return null;
  if (isMorning) return { night: null, hour: night === null || night === 'tomorrow' ? 'morning' : `${night} morning` };
  return IN_EVENING.test(plain) ? { night, hour: 'evening' } : null;
};
