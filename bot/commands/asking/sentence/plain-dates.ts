/** Days in words and figures that the time rooms do not read, made into dates that they do: "12/01", "the day after xmas". */
import { timeZoneAt, type Spot } from '../../../places/index.js';
import { MS_PER_DAY } from '../../../ground/durations.js';
import { MONTHS } from '../../../times/index.js';

/** Zones of the United States, where the month is written first; the other countries write the day first, or the year. */
const MONTH_FIRST =
  /^(?:US\/|America\/(?:New_York|Chicago|Denver|Phoenix|Los_Angeles|Anchorage|Juneau|Sitka|Nome|Adak|Detroit|Boise|Menominee|Metlakatla|Yakutat|Indiana\/|Kentucky\/|North_Dakota\/)|Pacific\/Honolulu$)/u;

export interface PlainDates {
  readonly text: string;
  /** Which way a date was taken that may be read in two; null: none may. */
  readonly note: string | null;
}

/** With its month and day in figures; the year where one is written. Not "24/7", "1/4 wave" or "130/650". */
const SLASHED =
  /(?<![\d./,:])(\d{1,2})\/(\d{1,2})(?:\/(\d{4}|\d{2}))?(?![\d./]|\s?(?:inch|in\b|"|mm|wave|lambda|power|moon|lit|full|s\b|sec))/u;
const LEADS = /\b(?:on|for|from|till|until|by|of|date|the|night|after|before)\s*$/iu;

const isDay = (day: number): boolean => day >= 1 && day <= 31;
const isMonth = (month: number): boolean => month >= 1 && month <= MONTHS.length;

const dateText = ({ day, month }: DayAndMonth, year: string | undefined): string => {
  const name = MONTHS[month - 1] ?? '';
  if (year === undefined) return `${day} ${name}`;
  return `${day} ${name} ${year.length === 2 ? `20${year}` : year}`;
};

const writesMonthFirst = (usual: Spot | null | undefined): boolean =>
  usual != null && MONTH_FIRST.test(timeZoneAt(usual.latitudeDeg, usual.longitudeDeg));

/** The first date in figures; null where none stands, or none that can be. */
const slashed = (text: string, usual: Spot | null | undefined): PlainDates | null => {
  const found = SLASHED.exec(text);
  if (found === null) return null;
  const [whole, first = '', second = '', year] = found;
  // "1/2" alone is a half.
  if (year === undefined && second.length < 2 && !LEADS.test(text.slice(0, found.index))) return null;
  const read = dayAndMonth(Number(first), Number(second), usual);
  if (read === null) return null;
  const said = dateText(read, year);
  const other = dateText({ day: read.month, month: read.day }, year);
  return {
    text: text.replace(whole, said),
    note: read.isEither
      ? `Took ${whole} to be ${said}, the ${read.isMonthFirst ? 'month' : 'day'} first; for ${other} write the month by its name.`
      : null,
  };
};

/** "2911": four figures that are no hour of a clock, and behind no list's name. */
const COMPACT = /(?<![\w./:,+-])(\d{2})(\d{2})(?![\w./:,-]| ?(?:mm|m|km|ft|x|hz|px|ly|s|years?)\b)/u;
const OF_LISTS =
  /\b(?:ngc|ic|m|c|hd|hr|hip|sao|ugc|pgc|eso|arp|abell|cr|mel|mrk|gc|asteroid|number|no|pin|port|code|room|channel|at|for|of)\s*$/iu;
const LAST_HOUR = 23;
const compact = (text: string): PlainDates | null => {
  const found = COMPACT.exec(text);
  const [whole = '', day = '', month = ''] = found ?? [];
  if (found === null || Number(day) <= LAST_HOUR || !isDay(Number(day)) || !isMonth(Number(month))) return null;
  if (OF_LISTS.test(text.slice(0, found.index))) return null;
  return { text: text.replace(whole, dateText({ day: Number(day), month: Number(month) }, undefined)), note: null };
};

interface DayAndMonth {
  readonly day: number;
  readonly month: number;
}

/** Null where no date is so written. */
const dayAndMonth = (
  a: number,
  b: number,
  usual: Spot | null | undefined,
): (DayAndMonth & { readonly isEither: boolean; readonly isMonthFirst: boolean }) | null => {
  const dayFirst = isDay(a) && isMonth(b);
  const monthFirst = isDay(b) && isMonth(a);
  if (!dayFirst && !monthFirst) return null;
  const isEither = dayFirst && monthFirst && a !== b;
  const isMonthFirst = isEither ? writesMonthFirst(usual) : !dayFirst;
  return { day: isMonthFirst ? b : a, month: isMonthFirst ? a : b, isEither, isMonthFirst };
};

/** Days with names of their own, as month and day. */
const NAMED: readonly (readonly [RegExp, readonly [number, number]])[] = [
  [/^(?:christmas|xmas|x-mas) eve$/u, [12, 24]],
  [/^(?:christmas|xmas|x-mas)(?: day)?$/u, [12, 25]],
  [/^boxing day$/u, [12, 26]],
  [/^(?:new year'?s?'? eve|nye)$/u, [12, 31]],
  [/^new year'?s?'?(?: day)?$/u, [1, 1]],
  [/^hallowe'?en$/u, [10, 31]],
];
const BESIDE_DAY =
  /\b(?:the |a )?(day|night|evening) (after|before|following) ((?:christmas|xmas|x-mas)(?: day| eve)?|boxing day|new year'?s?'?(?: day| eve)?|nye|hallowe'?en|tomorrow)\b/iu;
/** Any year but a leap one will do. */
const SOME_YEAR = 2027;

/** "the day after xmas": its date. */
const besideNamed = (text: string): string => {
  const [whole, , word = '', name = ''] = BESIDE_DAY.exec(text) ?? [];
  if (whole === undefined) return text;
  const isBefore = /before/iu.test(word);
  if (/^tomorrow$/iu.test(name)) return text.replace(whole, isBefore ? 'today' : 'in 2 days');
  const [month, day] = NAMED.find(([pattern]) => pattern.test(name.toLowerCase()))?.[1] ?? [];
  if (month === undefined || day === undefined) return text;
  const date = new Date(Date.UTC(SOME_YEAR, month - 1, day) + (isBefore ? -MS_PER_DAY : MS_PER_DAY));
  return text.replace(whole, dateText({ day: date.getUTCDate(), month: date.getUTCMonth() + 1 }, undefined));
};

/** @param usual where the asker stands: whether the day or the month comes first there */
export const withPlainDates = (text: string, usual: Spot | null | undefined): PlainDates => {
  const named = besideNamed(text);
  return slashed(named, usual) ?? compact(named) ?? { text: named, note: null };
};
