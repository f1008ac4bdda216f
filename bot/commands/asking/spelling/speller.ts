/** Mends slips of a thumb in the words that questions are made of; names of targets, sites and places are left to those who know them. */
import { makeMender, type SlipRule } from '../../../ground/mend-slips.js';
import { SHORT_FORMS } from './short-forms.js';

export interface Speller {
  /** Right as it stands. */
  readonly isKnown: (word: string) => boolean;
  /** The word meant: one slip away from a word of questions, short for it, or two of them without the gap; else the word itself. */
  readonly word: (typed: string) => string;
  /** All of a text, what stands between the words kept; `isKept` is asked of a word about to be mended, with those beside it. */
  readonly text: (typed: string, isKept?: IsKept) => string;
}

type IsKept = (word: string, before: string, after: string) => boolean;

const LEAST_LETTERS = 4;
const SLIPS: SlipRule = {
  mostIn: (letters) => (letters < 10 ? 1 : 2),
  leastForWrongLetter: 6,
  leastForSameSound: 5,
};

const withoutVowels = (word: string): string => word.replace(/[aeiou]/gu, '');

const addTo = (table: Map<string, string[]>, key: string, word: string): void => {
  const there = table.get(key);
  if (there === undefined) table.set(key, [word]);
  else there.push(word);
};

/** What a form of a word ends in. */
const ENDINGS = 's es ed er ers n en ing ings ly est ness less ful al'.split(' ');

/** The words that one may be a form of: "changes", "tries", "clipped", "making". */
const basesOf = (typed: string): readonly string[] =>
  ENDINGS.filter((ending) => typed.endsWith(ending)).flatMap((ending) => {
    const base = typed.slice(0, -ending.length);
    return [base, `${base}e`, base.replace(/i$/u, 'y'), base.replace(/(\p{L})\1$/u, '$1')];
  });

/** Half the language ends so, the parts of the day aside. */
const HAS_MANY_NEIGHBOURS = /(?<!^(?:morn|even|everyth|anyth|someth|noth))ing$|ed$/u;

/** "remindme" is "remind me", "whatstonight" is "whats tonight": words that are run on to another. */
const RUN_ON = ['me', 'us', 'up', 'tonight', 'tomorrow', 'now', 'from'];
const LEAST_JOINED = 4;

/**
 * @param meant words to mend to, in lower case
 * @param isKnown words that are right as they stand beside them: names, abbreviations
 */
export const makeSpeller = (meant: Iterable<string>, isKnown: (word: string) => boolean): Speller => {
  const words = new Set(meant);
  const plain = [...words].filter((word) => word.length >= LEAST_LETTERS && /^[a-z]+$/u.test(word));
  const bySkeleton = new Map<string, string[]>();
  for (const word of plain) addTo(bySkeleton, withoutVowels(word), word);
  const mendable = plain.filter((word) => !HAS_MANY_NEIGHBOURS.test(word));
  const nearest = makeMender(mendable, SLIPS);

  const slipOf = (typed: string): string | null => {
    if (typed.length >= LEAST_LETTERS) return nearest(typed);
    // "sav": the last letter was not hit.
    const longer = mendable.filter((word) => word.slice(0, -1) === typed);
    return longer.length === 1 ? (longer[0] ?? null) : null;
  };

  /** "drk" is "dark" where no other word has those consonants. */
  const vowelsAdded = (typed: string): string | null => {
    const found = typed.length >= 3 && withoutVowels(typed) === typed ? (bySkeleton.get(typed) ?? []) : [];
    return found.length === 1 ? (found[0] ?? null) : null;
  };

  const parted = (typed: string): string | null => {
    for (const second of RUN_ON) {
      const first = typed.endsWith(second) ? typed.slice(0, -second.length) : '';
      if (first.length >= LEAST_JOINED && words.has(first)) return `${first} ${second}`;
    }
    return null;
  };

  /** "landin" is "landing". */
  const withItsG = (typed: string): string | null =>
    typed.endsWith('in') && words.has(`${typed}g`) ? `${typed}g` : null;

  const isRight = (typed: string): boolean => words.has(typed) || isKnown(typed);
  /** A form of a word that is right, or the word that such a form is of. */
  const isForm = (typed: string): boolean =>
    basesOf(typed).some(isRight) || ['s', 'ly', 'ing'].some((ending) => words.has(`${typed}${ending}`));

  const mend = (typed: string): string => {
    const short = SHORT_FORMS.get(typed);
    if (short !== undefined) return short;
    if (isRight(typed) || !/^[a-z]{3,18}$/u.test(typed)) return typed;
    const whole = withItsG(typed);
    if (whole !== null || isForm(typed)) return whole ?? typed;
    return vowelsAdded(typed) ?? slipOf(typed) ?? parted(typed) ?? typed;
  };

  const kept = new Map<string, string>();
  const word = (typed: string): string => {
    const before = kept.get(typed);
    if (before !== undefined) return before;
    const found = mend(typed);
    if (kept.size < 5000) kept.set(typed, found);
    return found;
  };

  /** A word with its marks: what is quoted, has a colon or figures within is no word of a question. */
  const token = (typed: string, [wordBefore, wordAfter]: readonly [string, string], isKept: IsKept): string => {
    const [, before = '', core = '', after = ''] = /^([("“¿¡]*)(.*?)([)”?!.,;…]*)$/u.exec(typed) ?? [];
    const plain = core.toLowerCase().replace(/[’‘`]/gu, "'");
    // "1.2 w" is west.
    const found = plain.length === 1 && /\d$/u.test(wordBefore) ? plain : word(plain);
    return found === plain || isKept(plain, wordBefore, wordAfter) ? typed : `${before}${found}${after}`;
  };

  const text = (typed: string, isKept: IsKept = () => false): string => {
    let before = '';
    return typed.replace(/\S+/gu, (one: string, at: number) => {
      const after = /^\s+([^\s?!.,;]+)/u.exec(typed.slice(at + one.length))?.[1] ?? '';
      const found = token(one, [before, after.toLowerCase()], isKept);
      before = found.toLowerCase();
      return found;
    });
  };

  return { isKnown: isRight, word, text };
};
