/**
 * Takes a pattern apart: the words a text must hold before the pattern is worth trying, and the pattern as a machine may
 * have read it from a picture (0 for O, 1 for l, rn for m). Knows the part of RE2 syntax that patterns here use.
 */

export interface PatternParts {
  /** Lower case; a text without any of these cannot match. Null: no such words. */
  readonly needs: readonly string[] | null;
  /** The pattern with each letter or digit that is easily misread allowed to be its look-alikes. */
  readonly blurred: string;
}

/** What machines take for each other in screen type, both ways. */
const LOOK_ALIKES: Readonly<Record<string, string>> = {
  o: '[o0]',
  '0': '[0o]',
  l: '[l1i|!]',
  i: '[i1l|!]',
  '1': '[1li|!]',
  '5': '[5s]',
  s: '[s5]',
  '8': '[8b]',
  b: '[b8]',
  m: '(?:m|rn)',
  ' ': ' ?',
};
const BLURRED_CLASS: Readonly<Record<string, string>> = { d: '[\\dolisb]', b: '' };

/** Texts and words brought to one form in which look-alikes are equal. */
export const skeleton = (text: string): string =>
  text
    .toLowerCase()
    .replace(/rn/gu, 'm')
    .replace(/[1i|!]/gu, 'l')
    .replace(/0/gu, 'o')
    .replace(/5/gu, 's')
    .replace(/8/gu, 'b')
    .replace(/ /gu, '');

interface Piece {
  readonly blurred: string;
  /** The letter it stands for, where it is exactly one. */
  readonly literal: string | null;
  readonly needs: readonly string[] | null;
}

const shortest = (needs: readonly string[] | null): number =>
  needs === null ? 0 : Math.min(...needs.map((need) => need.length));
const better = (a: readonly string[] | null, b: readonly string[] | null): readonly string[] | null =>
  shortest(b) > shortest(a) ? b : a;

interface Cursor {
  readonly text: string;
  at: number;
}
const peek = (cursor: Cursor): string | undefined => cursor.text[cursor.at];
const take = (cursor: Cursor): string => {
  const char = cursor.text[cursor.at] ?? '';
  cursor.at += 1;
  return char;
};

const readClass = (cursor: Cursor): string => {
  let raw = take(cursor);
  while (peek(cursor) !== undefined && peek(cursor) !== ']') {
    if (peek(cursor) === '\\') raw += take(cursor);
    raw += take(cursor);
  }
  return raw + take(cursor);
};

const readEscape = (cursor: Cursor): Piece => {
  take(cursor);
  const char = take(cursor);
  if (/[a-z]/iu.test(char)) return { blurred: BLURRED_CLASS[char] ?? `\\${char}`, literal: null, needs: null };
  return { blurred: `\\${char}`, literal: char, needs: null };
};

const readGroup = (cursor: Cursor): Piece => {
  take(cursor);
  let open = '(';
  if (peek(cursor) === '?') while (!open.endsWith(':')) open += take(cursor);
  const inner = readAlternatives(cursor);
  take(cursor);
  return { blurred: `${open}${inner.blurred})`, literal: null, needs: inner.needs };
};

const readPiece = (cursor: Cursor): Piece => {
  const char = peek(cursor);
  if (char === '(') return readGroup(cursor);
  if (char === '[') return { blurred: readClass(cursor), literal: null, needs: null };
  if (char === '\\') return readEscape(cursor);
  const own = take(cursor);
  if (own === '.') return { blurred: '.', literal: null, needs: null };
  return { blurred: LOOK_ALIKES[own.toLowerCase()] ?? own, literal: own, needs: null };
};

const readQuantifier = (cursor: Cursor): string => {
  let raw = '';
  const first = peek(cursor);
  if (first === '?' || first === '*' || first === '+') raw += take(cursor);
  else if (first === '{') while (!raw.endsWith('}')) raw += take(cursor);
  if (raw !== '' && peek(cursor) === '?') raw += take(cursor);
  return raw;
};

const readSequence = (cursor: Cursor): PatternParts => {
  let blurred = '';
  let run = '';
  let needs: readonly string[] | null = null;
  const endRun = (): void => {
    if (run !== '') needs = better(needs, [run.toLowerCase()]);
    run = '';
  };
  while (peek(cursor) !== undefined && peek(cursor) !== '|' && peek(cursor) !== ')') {
    const piece = readPiece(cursor);
    const times = readQuantifier(cursor);
    const optional = /^(?:\?|\*|\{0)/u.test(times);
    // A blurred blank may already be missing; it takes no second sign.
    blurred += piece.blurred === ' ?' && times !== '' ? ` ${times}` : piece.blurred + times;
    if (piece.literal !== null && times === '') run += piece.literal;
    else {
      endRun();
      if (!optional) needs = better(needs, piece.needs);
    }
  }
  endRun();
  return { needs, blurred };
};

const readAlternatives = (cursor: Cursor): PatternParts => {
  const parts = [readSequence(cursor)];
  while (peek(cursor) === '|') {
    take(cursor);
    parts.push(readSequence(cursor));
  }
  const every = parts.every(({ needs }) => needs !== null);
  return {
    needs: every ? parts.flatMap(({ needs }) => needs ?? []) : null,
    blurred: parts.map((part) => part.blurred).join('|'),
  };
};

export const patternParts = (pattern: string): PatternParts => {
  const { needs, blurred } = readAlternatives({ text: pattern, at: 0 });
  return { needs: shortest(needs) >= 3 ? needs : null, blurred };
};
