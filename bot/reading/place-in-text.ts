/** Where spans lie among the lines of a text, and the words that are quoted of them. */
import type { Line } from './lines.js';
import type { Span } from './messages/compile-pattern.js';
import { QUOTE_LIMIT } from './reading.js';

/** The words of a span with what stands around them, within the limit. */
export const quoteOf = (text: string, { start, end }: Span): string => {
  const room = Math.max(0, QUOTE_LIMIT - (end - start));
  const from = Math.max(0, start - Math.floor(room / 2));
  return text.slice(from, from + QUOTE_LIMIT).trim();
};

/** The last line that starts at or before a place. */
export const lineAt = (lines: readonly Line[], at: number): Line | undefined => {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle]?.start ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return lines[low - 1];
};

/** The lines of a list, in order, that a span touches. */
export const wordedAt = (worded: readonly Line[], { start, end }: Span): readonly Line[] => {
  let [first, past] = [0, worded.length];
  while (first < past) {
    const middle = (first + past) >> 1;
    const line = worded[middle];
    if (line !== undefined && line.start + line.text.length <= start) first = middle + 1;
    else past = middle;
  }
  while ((worded[past]?.start ?? Infinity) < end) past++;
  return worded.slice(first, past);
};
