/** Takes the night, the hour and the position off the end of what was typed: "m42 saturday 9pm", "vega 52.71,0.12". */
import { isPosition } from '../../places/index.js';
import type { UtcMs } from '../../sky/types.js';
import { namesHour, namesNight } from '../../times/index.js';

export interface WithoutTrailing {
  /** What is left, "" when nothing is. */
  readonly head: string;
  readonly night: string | null;
  readonly hour: string | null;
  readonly position: string | null;
}

/** "51 30 12 n 0 7 39 w" is the longest people type. */
const LONGEST_TAIL_WORDS = 8;

type Part = 'night' | 'hour' | 'position';

/** Two numbers about a comma, or with the letters of the compass; two bare numbers may be anything. */
const isPlainPosition = (text: string): boolean =>
  /\d\s*,\s*[-+−\d]|\d\s*[°'"′″]*\s*[ns]\b.*\d\s*[°'"′″]*\s*[ew]\b/iu.test(text) && isPosition(text);

const partOf = (text: string, nowUtcMs: UtcMs): Part | null => {
  if (isPlainPosition(text)) return 'position';
  if (namesHour(text, nowUtcMs)) return 'hour';
  return namesNight(text, nowUtcMs) ? 'night' : null;
};

const withoutPreposition = (text: string): string => text.replace(/^(?:at|on|from|for|near|@)\s+/iu, '');

/** The longest end of the words that is one part, and how many words it takes. */
const tailOf = (words: readonly string[], atLeastLeft: number, nowUtcMs: UtcMs) => {
  for (let count = Math.min(LONGEST_TAIL_WORDS, words.length - atLeastLeft); count >= 1; count--) {
    const text = withoutPreposition(words.slice(-count).join(' '));
    const part = partOf(text, nowUtcMs);
    if (part !== null) return { count, text, part };
  }
  return null;
};

/** Each part is taken once; `atLeastLeft` words stay whatever they look like. */
export const withoutTrailing = (text: string, atLeastLeft: number, nowUtcMs: UtcMs): WithoutTrailing => {
  const found: Record<Part, string | null> = { night: null, hour: null, position: null };
  let words = text.trim().split(/\s+/u);
  for (;;) {
    const tail = tailOf(words, atLeastLeft, nowUtcMs);
    if (tail === null || found[tail.part] !== null) break;
    found[tail.part] = tail.text;
    words = words.slice(0, -tail.count);
  }
  return { head: words.join(' ').replace(/[,;]$/u, ''), ...found };
};
