/** Mends slips of a thumb, and words written by their sound, in what questions are made of and in the names that everybody knows. */
import { heard, slipCost, type Heard } from './slip-cost.js';
import { SHORT_FORMS } from './short-forms.js';
import { inContext } from './in-context.js';

export interface Speller {
  /** Right as it stands. */
  readonly isKnown: (word: string) => boolean;
  /** The word meant: near a word of questions, short for it, or two of them without the gap; else the word itself. */
  readonly word: (typed: string) => string;
  /** Whether it is a name that a slip was mended to, and no word of questions. */
  readonly isName: (word: string) => boolean;
  /** All of a text, what stands between the words kept; `isKept` is asked of a word about to be mended, and what it would be. */
  readonly text: (typed: string, isKept?: IsKept) => string;
}

/** A word about to be mended, in lower case but for `isCapital`, and what stands beside it. */
export interface Mending {
  readonly typed: string;
  readonly found: string;
  readonly before: string;
  readonly after: string;
  readonly isCapital: boolean;
}

type IsKept = (mending: Mending) => boolean;

/** The most that a slip may cost in a word of so many letters; in a name less, since another word may stand there. */
const MOST_COST: readonly (readonly [letters: number, most: number])[] = [
  [3, 0.55],
  [4, 0.9],
  [5, 1.1],
  [6, 1.4],
  [8, 1.75],
];
const MOST_COST_OF_LONG = 2.2;
const NAME_SHARE = 0.85;
/** A form of many words: "pointing" is near to "painting". */
const FORM_SHARE = 0.7;
const mostCost = (letters: number): number => MOST_COST.find(([most]) => letters <= most)?.[1] ?? MOST_COST_OF_LONG;

/** Words that stand in most questions: of two as near, they are meant. */
const COMMON = new Set(
  `the what when where how is are does can will see look get up right now tonight night dark moon high still which before best good bright
  rise rises set sets time tomorrow should there about with`.split(/\s+/u),
);
const COMMON_GAIN = 0.35;
/** So near a word is meant rather than two without their gap. */
const SURE_COST = 0.7;

/** What a form of a word ends in. */
const ENDINGS = 's es ed er ers n en ing ings ly est ness less ful al'.split(' ');

const LEAST_IN_BASE = 3;

/** The words that one may be a form of: "changes", "tries", "clipped", "making". */
const basesOf = (typed: string): readonly string[] =>
  ENDINGS.filter((ending) => typed.endsWith(ending) && typed.length - ending.length >= LEAST_IN_BASE).flatMap(
    (ending) => {
      const base = typed.slice(0, -ending.length);
      return [base, `${base}e`, base.replace(/i$/u, 'y'), base.replace(/([^aeiou])\1$/u, '$1')];
    },
  );

/** Half the language ends so, the parts of the day aside. */
const HAS_MANY_NEIGHBOURS = /(?<!^(?:morn|even|everyth|anyth|someth|noth))ing$|ed$/u;

/** "remindme" is "remind me", "highis" "high is": so many letters, and in the longer of the two, before two words are seen in one. */
const LEAST_RUN_ON = 6;
const LEAST_JOINED = 4;

const shareOf = (word: string, isName: boolean): number => {
  if (isName) return NAME_SHARE;
  return HAS_MANY_NEIGHBOURS.test(word) ? FORM_SHARE : 1;
};

const MOST_LEFT_OUT = 4;
const MOST_TOO_MANY = 2;

interface Meant extends Heard {
  readonly most: number;
  readonly gain: number;
}

/**
 * @param meant words to mend to, in lower case
 * @param names to mend to as well
 * @param isKnown words that are right as they stand beside them: names, abbreviations
 */
export const makeSpeller = (
  meant: Iterable<string>,
  names: Iterable<string>,
  isKnown: (word: string) => boolean,
): Speller => {
  const words = new Set(meant);
  const known = new Set([...words, ...names]);
  // The first letter, or the first sound, is as a rule right; a swap of the first two is looked for as well.
  const byFirst = new Map<string, Meant[]>();
  for (const word of known) {
    const isName = !words.has(word);
    if (!/^[a-z]{3,}$/u.test(word)) continue;
    const most = mostCost(word.length) * shareOf(word, isName);
    const one = { ...heard(word), most, gain: COMMON.has(word) ? COMMON_GAIN : 0 };
    for (const first of new Set([word.charAt(0), one.sound.charAt(0), word.charAt(1)])) {
      const alike = byFirst.get(first) ?? [];
      alike.push(one);
      byFirst.set(first, alike);
    }
  }

  /** The nearest word that is near enough; of two as near the one met first. */
  const slipOf = (typed: string): { readonly word: string; readonly cost: number } | null => {
    const as = heard(typed);
    let found: { readonly word: string; readonly cost: number } | null = null;
    let least = Infinity;
    const firsts = new Set([typed.charAt(0), as.sound.charAt(0)]);
    for (const first of firsts)
      for (const one of byFirst.get(first) ?? []) {
        const longer = one.word.length - typed.length;
        if (longer > MOST_LEFT_OUT || longer < -MOST_TOO_MANY) continue;
        const cost = slipCost(as, one, one.most);
        if (cost > one.most || cost - one.gain >= least) continue;
        least = cost - one.gain;
        found = { word: one.word, cost };
      }
    return found;
  };

  /** Two words that are right, or short for one, without the gap: the longer of them as long as may be. */
  const parted = (typed: string): string | null => {
    if (typed.length < LEAST_RUN_ON) return null;
    const rightOf = (part: string): string | null => {
      const short = SHORT_FORMS.get(part);
      if (short !== undefined && part.length > 2) return short;
      return known.has(part) ? part : null;
    };
    let found: string | null = null;
    let longest = LEAST_JOINED - 1;
    for (let at = 2; at <= typed.length - 2; at++) {
      const [first, second] = [rightOf(typed.slice(0, at)), rightOf(typed.slice(at))];
      const most = Math.max(at, typed.length - at);
      if (first === null || second === null || most <= longest) continue;
      longest = most;
      found = `${first} ${second}`;
    }
    return found;
  };

  /** "landin" is "landing". */
  const withItsG = (typed: string): string | null =>
    typed.endsWith('in') && words.has(`${typed}g`) ? `${typed}g` : null;

  const isRight = (typed: string): boolean => known.has(typed) || isKnown(typed);
  /** A form of a word that is right, or the word that such a form is of. */
  const isForm = (typed: string): boolean =>
    basesOf(typed).some(isRight) ||
    (typed.length > LEAST_IN_BASE && ['s', 'ly', 'ing'].some((ending) => words.has(`${typed}${ending}`)));

  const mend = (typed: string): string => {
    const short = SHORT_FORMS.get(typed);
    if (short !== undefined) return short;
    if (isRight(typed) || !/^[a-z]{3,18}$/u.test(typed)) return typed;
    const whole = withItsG(typed);
    if (whole !== null || isForm(typed)) return whole ?? typed;
    const slip = slipOf(typed);
    return (slip !== null && slip.cost <= SURE_COST ? slip.word : null) ?? parted(typed) ?? slip?.word ?? typed;
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
    const short = inContext(plain, wordBefore, wordAfter);
    if (short !== null) return `${before}${short}${after}`;
    // "1.2 w" is west.
    const found = plain.length === 1 && /\d$/u.test(wordBefore) ? plain : word(plain);
    const isCapital = /^\p{Lu}\p{Ll}/u.test(core);
    const mending = { typed: plain, found, before: wordBefore, after: wordAfter, isCapital };
    return found === plain || isKept(mending) ? typed : `${before}${found}${after}`;
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

  const isName = (one: string): boolean => known.has(one) && !words.has(one);
  return { isKnown: isRight, isName, word, text };
};
