/** A month or a year as the span of what is asked: "meteor showers of 2028", "eclipses next year", "a shower in december". */
import { MONTH_WORDS } from '../../../times/index.js';

/** "May" and "march" are words as well. */
const OF_MONTH = new RegExp(
  `\\b(?:in|for|of|during|this|next|through(?:out)?) (${MONTH_WORDS})( 20\\d\\d)?\\b(?! \\d)`,
  'u',
);
const MONTH_AND_YEAR = new RegExp(`(?<!\\d(?:st|nd|rd|th)?(?: of)? )\\b(${MONTH_WORDS}) (20\\d\\d)\\b`, 'u');
const MONTH_ALONE =
  /(?<!\d(?:st|nd|rd|th)?(?: of)? )\b(january|february|april|june|july|august|september|october|november|december)\b(?! \d)/u;
/** "At 2030" is an hour. */
const YEAR = /(?<!(?:\bat|\bby|\buntil|\btill|\bfrom|\baround|\babout|@) ?)\b(20[2-9]\d)\b(?![-:.]\d)/u;
const OF_NOW = /\b(?:this|next) (?:year|month)\b/u;

/** As the time rooms read it; null: none is said. A day of a month is no span. @param plain in lower case */
export const periodSaid = (plain: string): string | null => {
  const [, month, year = ''] = OF_MONTH.exec(plain) ?? MONTH_AND_YEAR.exec(plain) ?? MONTH_ALONE.exec(plain) ?? [];
  if (month !== undefined) return `${month} ${year.trim()}`.trim();
  return YEAR.exec(plain)?.[1] ?? OF_NOW.exec(plain)?.[0] ?? null;
};
