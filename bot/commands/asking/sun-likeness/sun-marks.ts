/**
 * What a line is known by to those who learn which lines come near the Sun: its words, words that follow one another, the kinds of things that
 * stand in it together, and the runs of letters in its words, by which slips and other languages are known. Pure.
 */
import { SHAPE } from '../../../reading/index.js';
import { EYE, SYMPTOM } from '../sentence/eyes-hurt.js';
import { AT_WINDOW, CAP_OFF, DAY, LEFT, MORNING_HOUR } from '../sentence/sun-by-day.js';
import {
  CAMERA,
  GUARD,
  LOOKS,
  MAY,
  NEAR_SUN,
  NO_FILTER,
  OF_TROUBLE,
  OTHER_ECLIPSE,
  plainHarm,
  PROJECTS,
  SAYS_DAY,
  SAYS_NIGHT,
  SUN,
  SUN_ABROAD,
  SWEEPS,
  TUBE,
} from '../sentence/sun-harm.js';
import { AN_OPTIC, BURNS, OF_CURRENT } from '../sentence/sun-now.js';

/** Kinds of things that a line speaks of, wherever they stand in it. */
const KINDS: readonly (readonly [string, RegExp])[] = [
  ['sun', SUN],
  ['sun', SUN_ABROAD],
  ['tube', TUBE],
  ['camera', CAMERA],
  ['guard', GUARD],
  ['bare', NO_FILTER],
  ['looks', LOOKS],
  ['may', MAY],
  ['sweeps', SWEEPS],
  ['projects', PROJECTS],
  ['beside', NEAR_SUN],
  ['day', SAYS_DAY],
  ['night', SAYS_NIGHT],
  ['day', DAY],
  ['day', MORNING_HOUR],
  ['left', LEFT],
  ['uncapped', CAP_OFF],
  ['window', AT_WINDOW],
  ['optic', AN_OPTIC],
  ['burns', BURNS],
  ['current', OF_CURRENT],
  ['eye', new RegExp(`\\b${EYE}\\b`, 'u')],
  ['unwell', new RegExp(`\\b${SYMPTOM}\\b`, 'u')],
  ['trouble', OF_TROUBLE],
  ['moon', OTHER_ECLIPSE],
];

/** Of a longer line the rest is not read. */
const MOST_WORDS = 60;
const RUN = 4;
const LEAST_LETTERS = 5;
/** Letters of scripts that leave no blanks between words tell by twos. */
const UNSPACED = /[\p{Script=Han}\p{Script=Hiragana}\p{Script=Katakana}]/u;
const LENGTHS = [3, 6, 10, 16] as const;

/** "9am" and "10 pm" tell by their half of the day, all other figures are one. */
const NUMBERS = /^\d+(?:am|pm)?$/u;
const nameOf = (word: string): string => (NUMBERS.test(word) ? `#${word.replace(/\d/gu, '')}` : word);

const markRuns = (word: string, mark: (name: string) => void): void => {
  const letters = UNSPACED.test(word) ? [...word] : [...`<${word}>`];
  const length = UNSPACED.test(word) ? 2 : RUN;
  if (length === RUN && word.length < LEAST_LETTERS) return;
  for (let i = 0; i + length <= letters.length; i++) mark(`~${letters.slice(i, i + length).join('')}`);
};

const markKinds = (plain: string, mark: (name: string) => void): void => {
  const kinds = [...new Set(KINDS.flatMap(([kind, pattern]) => (pattern.test(plain) ? [kind] : [])))].sort();
  for (const [i, kind] of kinds.entries()) {
    mark(`@${kind}`);
    for (const other of kinds.slice(i + 1)) mark(`@${kind}&${other}`);
  }
};

/** The words of a folded line as they are weighed, in their order. */
const wordsOf = (plain: string): readonly string[] =>
  plain
    .split(' ')
    .filter((word) => word !== '')
    .slice(0, MOST_WORDS)
    .map(nameOf);

/** Each mark once; the words stand as they are. */
export const sunMarks = (text: string): ReadonlySet<string> => {
  const plain = plainHarm(text);
  const words = wordsOf(plain);
  const marks = new Set<string>();
  const mark = (name: string): void => void marks.add(name);
  const bounded = ['^', ...words, '$'];
  for (const [i, word] of bounded.entries()) {
    const [next, third] = [bounded[i + 1], bounded[i + 2]];
    if (i > 0 && next !== undefined) mark(word);
    if (next !== undefined) mark(`${word} ${next}`);
    if (next !== undefined && third !== undefined) mark(`${word} _ ${third}`);
  }
  for (const word of words) markRuns(word, mark);
  markKinds(plain, mark);
  mark(`${SHAPE}words ${LENGTHS.findIndex((length) => words.length < length)}`);
  mark(`${SHAPE}asks ${text.trimEnd().endsWith('?')}`);
  return marks;
};
