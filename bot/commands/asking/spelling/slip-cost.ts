/** How far what was typed is from a word: what a thumb and an ear do often costs little (a vowel left out, a letter twice, "f" for "th"). */

/** Letters taken for one another by their sound. */
const ALIKE: readonly string[] = ['aeiouy', 'ckqg', 'sczx', 'mn', 'bp', 'dt', 'fv', 'gj', 'uw'];
const VOWELS = 'aeiou';
const ROWS = ['qwertyuiop', 'asdfghjkl', 'zxcvbnm'];

const isVowel = (letter: string): boolean => VOWELS.includes(letter);
const areNeighbours = (a: string, b: string): boolean =>
  ROWS.some((row) => row.includes(a) && row.includes(b) && Math.abs(row.indexOf(a) - row.indexOf(b)) === 1);

const COST = {
  doubled: 0.3,
  vowelLeftOut: 0.5,
  vowelTooMany: 0.7,
  weakLeftOut: 0.75,
  lastLeftOut: 0.8,
  vowelForVowel: 0.6,
  sameSound: 0.7,
  neighbour: 0.85,
  swapped: 0.75,
  other: 1.05,
  /** The first letter is nearly always right. */
  first: 0.5,
  /** Words that sound alike. */
  bySound: 0.3,
} as const;

/** A letter typed that the word does not have. */
const tooMany = (letter: string, before: string): number => {
  if (letter === before) return COST.doubled;
  return isVowel(letter) ? COST.vowelTooMany : COST.other;
};

/** A letter of the word that was not typed; the last is the likeliest. */
const leftOut = (letter: string, before: string, isLast = false): number => {
  if (letter === before) return COST.doubled;
  if (isVowel(letter)) return COST.vowelLeftOut;
  if (isLast) return COST.lastLeftOut;
  return 'hrlng'.includes(letter) ? COST.weakLeftOut : COST.other;
};

const wrong = (typed: string, meant: string): number => {
  if (isVowel(typed) && isVowel(meant)) return COST.vowelForVowel;
  if (ALIKE.some((group) => group.includes(typed) && group.includes(meant))) return COST.sameSound;
  return areNeighbours(typed, meant) ? COST.neighbour : COST.other;
};

const LONGEST = 24;
const rows = [new Float64Array(LONGEST + 1), new Float64Array(LONGEST + 1), new Float64Array(LONGEST + 1)] as const;

/** How many letters of the one the other does not have. */
const lettersLacking = (a: string, b: string): number => {
  let lacking = 0;
  for (const letter of a) if (!b.includes(letter)) lacking++;
  return lacking;
};

/** Each letter that one lacks costs a vowel left out at the least. */
const mayCost = (typed: string, meant: string, most: number): boolean =>
  Math.max(typed.length, meant.length) <= LONGEST &&
  Math.max(lettersLacking(typed, meant), lettersLacking(meant, typed)) * COST.vowelLeftOut <= most;

/** The least cost of making one of the other, which may cost so little; infinite where it is more than `most`. */
const lettersCost = (typed: string, meant: string, most: number): number => {
  if (!mayCost(typed, meant, most)) return Infinity;
  let [twoBefore, before, row] = rows;
  before[0] = 0;
  for (let j = 1; j <= meant.length; j++)
    before[j] = before[j - 1]! + leftOut(meant.charAt(j - 1), meant.charAt(j - 2));
  for (let i = 1; i <= typed.length; i++) {
    const a = typed.charAt(i - 1);
    const many = tooMany(a, typed.charAt(i - 2));
    row[0] = before[0]! + many + (i === 1 ? COST.first : 0);
    let least = row[0];
    for (let j = 1; j <= meant.length; j++) {
      const b = meant.charAt(j - 1);
      const isWrong = a !== b;
      const same = before[j - 1]! + (isWrong ? wrong(a, b) + (i + j === 2 ? COST.first : 0) : 0);
      const out = row[j - 1]! + leftOut(b, meant.charAt(j - 2), j === meant.length);
      const isSwap = isWrong && j > 1 && a === meant.charAt(j - 2) && b === typed.charAt(i - 2);
      const swap = isSwap ? twoBefore[j - 2]! + COST.swapped + (i + j === 4 ? COST.first : 0) : Infinity;
      row[j] = Math.min(same, out, swap, before[j]! + many);
      least = Math.min(least, row[j]!);
    }
    if (least > most + COST.swapped) return Infinity;
    [twoBefore, before, row] = [before, row, twoBefore];
  }
  return before[meant.length]!;
};

const SPELLINGS: readonly (readonly [RegExp, string])[] = [
  [/ight|(?<=.)ite(?=s?$)/gu, 'ait'],
  [/ph/gu, 'f'],
  [/wh/gu, 'w'],
  [/^(?:kn|gn)/u, 'n'],
  [/^wr/u, 'r'],
  [/[ct]ion|shun/gu, 'shn'],
  [/th/gu, 'f'],
  [/v(?!e)/gu, 'f'],
  [/qu|kw/gu, 'q'],
  [/ck|c(?![eiyh])/gu, 'k'],
  [/c(?=[eiy])/gu, 's'],
  [/x/gu, 'ks'],
  [/z/gu, 's'],
  [/(?:er|or|re|a)$/u, '@'],
  [/(?:ie|ey|i)$/u, 'y'],
  [/el$/u, 'le'],
  [/oo|ou|ew|ue|u/gu, 'u'],
  [/ee|ea|ie|ei/gu, 'i'],
  [/ai|ay|ey/gu, 'a'],
  [/(\p{L})\1/gu, '$1'],
  [/(?<=.{2})e$/u, ''],
];

/** As it sounds, roughly: "rite" and "right", "galaksy" and "galaxy" are alike. */
export const soundOf = (word: string): string =>
  SPELLINGS.reduce((heard, [pattern, sound]) => heard.replace(pattern, sound), word);

export interface Heard {
  readonly word: string;
  readonly sound: string;
}
export const heard = (word: string): Heard => ({ word, sound: soundOf(word) });

/** The cost by letters or by sound, whichever is less; infinite where both are more than `most`. */
export const slipCost = (typed: Heard, meant: Heard, most: number): number => {
  const byLetters = lettersCost(typed.word, meant.word, most);
  if (byLetters <= COST.bySound) return byLetters;
  return Math.min(byLetters, COST.bySound + lettersCost(typed.sound, meant.sound, most - COST.bySound));
};
