/**
 * Part of an option, typed as it stands there: "a leg slipped" of “It was knocked, or a leg slipped”. It is that option where no other
 * has the same words in a row, and where no “not” or “nothing” of the option was left out before them.
 */
import { onceOf } from '../../ground/once.js';
import type { AnswerLabel } from './question-in-hand.js';
import { carries } from './said-words.js';

const wordsOf = (text: string): readonly string[] =>
  text
    .toLowerCase()
    .replace(/['\u2019]/gu, '')
    .replace(/\bjust\b/gu, 'only')
    .split(/[^\p{L}\p{N}+\u2212°]+/u)
    .filter((word) => word !== '');

/** Before and behind an option, these change nothing. */
const ROUND = new Set(
  'well um uh ok okay oh i think its is it the a an that this so then and but answer option one please thanks mate sorry here there now'.split(
    ' ',
  ),
);
const DENIES = new Set('not no nothing none neither never without dont doesnt isnt cannot'.split(' '));
const LONGEST_WORDS = 12;

const trimmed = (words: readonly string[]): readonly string[] => {
  const from = words.findIndex((word) => !ROUND.has(word));
  return from < 0 ? [] : words.slice(from, words.findLastIndex((word) => !ROUND.has(word)) + 1);
};

/** Each piece of a label between commas, "or" and the like, and the label whole. */
const piecesOf = onceOf((answer: AnswerLabel): readonly (readonly string[])[] =>
  [answer.label, ...answer.label.split(/,? or |[,;:]/u)].map(wordsOf),
);

const startIn = (piece: readonly string[], run: readonly string[]): number =>
  piece.findIndex((_, at) => run.every((word, i) => piece[at + i] === word));

/** The run is all of a piece but for small words before it, or stands in it behind no denial. */
const isPartOf = (answer: AnswerLabel, run: readonly string[]): boolean =>
  piecesOf(answer).some((piece) => {
    const at = startIn(piece, run);
    return at >= 0 && !piece.slice(0, at).some((word) => DENIES.has(word));
  });

const BEFORE = /^(?:(?:well|um+|uh|ok(?:ay)?|oh|i think|its|so|but|and|then),? )+/iu;
const YES_OR_NO = new Set(['yes', 'no']);

/** All of one piece, however small its words: "only this one", "there is one". */
const wholePiece = (text: string, answers: readonly AnswerLabel[]): AnswerLabel | null => {
  const said = wordsOf(text.trim().replace(BEFORE, '')).join(' ');
  const [only, second] = answers.filter((answer) => piecesOf(answer).some((piece) => piece.join(' ') === said));
  return only !== undefined && second === undefined && said !== '' && !YES_OR_NO.has(said) ? only : null;
};

/** @returns null where it is no part of any option, or of more than one */
export const labelHalf = (text: string, answers: readonly AnswerLabel[]): AnswerLabel | null => {
  if (text.includes('?')) return null;
  const whole = wholePiece(text, answers);
  if (whole !== null) return whole;
  const run = trimmed(wordsOf(text));
  if (run.length === 0 || run.length > LONGEST_WORDS || !run.some(carries)) return null;
  const holding = answers.filter((answer) => startIn(wordsOf(answer.label), run) >= 0);
  const [only, second] = holding;
  return only !== undefined && second === undefined && isPartOf(only, run) ? only : null;
};
