/** How much a member's words tell that no sign was read from, and the clauses of them that tell most. */
import { isLittle } from '../asking/sentence/words.js';
import { wordsWithin } from './fitted.js';

/** Where, when and with what it is so and not so: what a helper asks first. */
const CONTRAST =
  /\b(?:only|never|same|friends?|always|alone|perfect\w*|fine|without|until|since|after|before|every|once an?|by day|at night|daytime|dusk|dark|dawn|cold|sun|rain|neighbou?rs?|other|another|else|when(?:ever)?|except|but)\b/giu;
/** What is set against what: "works at home, not at the field", "fine on the old router, since the new one it drops". */
const WELL =
  '(?:works?|worked|fine|ok(?:ay)?|good|well|perfect\\w*|connects?|connected|holds?|no (?:trouble|problems?))';
const PLACED = '(?:on|at|in|with|from|without|by|over|under|indoors|outside|until|before|when|alone)';
const ILL = "(?:not|never|n['\u2019]t|fails?|drops?|dies|dead|refuses|but|only|nothing|loses?|since|except)";
const SET_AGAINST = new RegExp(
  `\\b${WELL}\\b[^.;!?]{0,60}?\\b${PLACED}\\b[^.;!?]{0,80}\\b${ILL}\\b|${ILL}\\b[^.;!?]{0,60}?\\b${PLACED}\\b[^.;!?]{0,80}\\b${WELL}\\b`,
  'iu',
);

/** Whether it sets one way, place or time against another. */
export const setsAgainst = (words: string): boolean => SET_AGAINST.test(words);

const LEAST_LETTERS = 4;
const MOST_COUNTED = 12;
const CONTRASTS_COUNT = 2;

/** The words of it that carry something and of which no sign was read, contrasts counted with them. */
export const telling = (words: string, quotes: readonly string[]): number => {
  const own = words.toLowerCase();
  const unread = quotes
    .map((quote) => quote.toLowerCase())
    .reduce((left, quote) => (quote.length > 1 ? left.split(quote).join(' ') : left), own);
  const carried = new Set(
    unread.match(/[\p{L}\d]+/gu)?.filter((word) => word.length >= LEAST_LETTERS && !isLittle(word)),
  );
  return Math.min(MOST_COUNTED, carried.size + CONTRASTS_COUNT * (own.match(CONTRAST)?.length ?? 0));
};

const GAP = ' … ';

const betweenOf = (one: number, next: number): string => (one === next - 1 ? ' ' : GAP);

/** The clauses that tell most, within so many characters; the first one stays where it is wanted. */
export const piecesOf = (one: string, quotes: readonly string[], limit: number, keepsFirst: boolean): string => {
  // Two halves that are set against each other say nothing apart.
  const pieces = one
    .split(/(?<=[.;!?])\s+/u)
    .flatMap((sentence) =>
      setsAgainst(sentence) && sentence.length <= limit ? [sentence] : sentence.split(/(?<=,)\s+/u),
    );
  if (pieces.length === 1) return wordsWithin(one, limit);
  // A long clause holds more of any words.
  const worthOf = (at: number): number =>
    telling(pieces[at] ?? '', quotes) / Math.sqrt(pieces[at]?.length ?? 1) + (setsAgainst(pieces[at] ?? '') ? 1 : 0);
  const order = [...pieces.keys()].sort(
    (i, j) => Number(keepsFirst && j === 0) - Number(keepsFirst && i === 0) || worthOf(j) - worthOf(i) || i - j,
  );
  const kept = new Map<number, string>();
  let room = limit;
  for (const at of order) {
    const piece = pieces[at] ?? '';
    const part = kept.size === 0 ? wordsWithin(piece, limit) : piece;
    if (part.length + GAP.length > room && kept.size > 0) continue;
    kept.set(at, part);
    room -= part.length + GAP.length;
  }
  const shown = [...kept.keys()].sort((i, j) => i - j);
  const joined = shown.reduce(
    (text, at, i) => `${text}${i > 0 ? betweenOf(shown[i - 1] ?? 0, at) : ''}${kept.get(at) ?? ''}`,
    shown[0] === 0 ? '' : '…',
  );
  const isCut = shown.at(-1) !== pieces.length - 1 && !joined.endsWith('…');
  return isCut ? `${joined.replace(/[\s,;:.]+$/u, '')}…` : joined;
};
