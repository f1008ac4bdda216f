/** The stretch of a text that leads up to a place, or goes on from it: of its sentence, or of a part of it. */

/** Signs that end a stretch of any kind: quicker looked for than the words that may do so. */
const ALWAYS_ENDS = '.;!?\n';

const isEnd = new Uint8Array(128);
for (const sign of ALWAYS_ENDS) isEnd[sign.charCodeAt(0)] = 1;

const afterLastSign = (text: string, from: number, at: number): number => {
  let start = at;
  while (start > from && isEnd[text.charCodeAt(start - 1)] !== 1) start--;
  return start;
};

const firstSign = (text: string, at: number, to: number): number => {
  let end = at;
  while (end < to && isEnd[text.charCodeAt(end)] !== 1) end++;
  return end;
};

/**
 * @param reach so many characters at most
 * @param ends what parts one stretch from the next; the signs that always do may be left out
 */
export const stretchBefore = (text: string, at: number, reach: number, ends?: RegExp): string => {
  const own = text.slice(afterLastSign(text, Math.max(0, at - reach), at), at);
  return ends === undefined ? own : (own.split(ends).at(-1) ?? '');
};

/** The same from a place on. */
export const stretchAfter = (text: string, at: number, reach: number, ends?: RegExp): string => {
  const own = text.slice(at, firstSign(text, at, Math.min(text.length, at + reach)));
  return ends === undefined ? own : (own.split(ends, 1)[0] ?? '');
};
