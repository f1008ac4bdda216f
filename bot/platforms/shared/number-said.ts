/** A pick of what was offered by number, said with words round it: "2 maybe", "the second", "number 3 i think", "2 or 3". */
import { tableOf } from '../../ground/table-of.js';

export interface NumberSaid {
  /** From 1, each once, in the order said; more than one: which is meant has to be asked. */
  readonly numbers: readonly number[];
  /** With a word that it may be so: "2 maybe". */
  readonly isHedged: boolean;
}

const ORDINALS = 'first second third fourth fifth sixth seventh eighth ninth tenth'.split(' ');
const CARDINALS = 'one two three four five six seven eight nine ten'.split(' ');
const ORDINAL = tableOf(
  Object.fromEntries([
    ...ORDINALS.map((word, at) => [word, at + 1] as const),
    ['top', 1] as const,
    ...['1st', '2nd', '3rd', '4th', '5th', '6th', '7th', '8th', '9th', '10th'].map(
      (word, at) => [word, at + 1] as const,
    ),
  ]),
);
const CARDINAL = tableOf(Object.fromEntries(CARDINALS.map((word, at) => [word, at + 1] as const)));
/** A number in letters counts only behind one of these: "one" alone says too many things. */
const COUNTS = new Set('number num nr no option answer choice'.split(' '));
const HEDGES =
  /\b(?:may ?be|perhaps|possibly|prob(?:ably|s|ly)?|i (?:think|thought|guess|suppose|reckon|believe)|i would say|i['\u2019]?d say|(?:most )?likely|mostly|not (?:so |too |quite |really )?sure|guess(?:ing)?|could be|might be|should be|sort of|kind of|more or less|or so|dunno|think|reckon|guess|closest|nearest|like|about)\b|(?<=\d)ish\b|\?/giu;
const ROUND_IT = new Set(
  'its it is that thats the this a an please pls plz ok okay yes yeah yep well um uh erm er hm hmm so oh for me here then now thanks say pick take choose go with one ones definitely surely sure both either between bit of little some somewhere more rather but and or n und oder in my case would i mate best fits right actually again'.split(
    ' ',
  ),
);

/** "2" or "#2". */
const digitsIn = (word: string): number | undefined => {
  const digits = /^#?(\d{1,2})$/u.exec(word)?.[1];
  return digits === undefined ? undefined : Number(digits);
};

const LONGEST = 60;

/** @returns null where anything else is said */
export const numberSaid = (text: string): NumberSaid | null => {
  // A time, an address or a decimal is none.
  if (text.length > LONGEST || /\d[.,:/]\d/u.test(text)) return null;
  const bare = text.toLowerCase().replace(HEDGES, ' ');
  const words = bare
    .replace(/['\u2019]/gu, '')
    .split(/[\s,;:!.()/&+-]+/u)
    .filter((word) => word !== '');
  const numbers: number[] = [];
  for (const [at, word] of words.entries()) {
    const counted = COUNTS.has(words[at - 1] ?? '') ? CARDINAL.get(word) : undefined;
    const number = digitsIn(word) ?? ORDINAL.get(word) ?? counted;
    if (number !== undefined) numbers.push(number);
    else if (!ROUND_IT.has(word) && !COUNTS.has(word)) return null;
    // "No, 2" takes something back; "no. 2" and "no 2" count.
    if (word === 'no' && digitsIn(words[at + 1] ?? '') === undefined) return null;
  }
  return numbers.length === 0 ? null : { numbers: [...new Set(numbers)], isHedged: bare !== text.toLowerCase() };
};

/** A pick, with what is said about it behind or ahead: "2. it says cannot open", "3, the direct one". */
export interface NumberLed {
  readonly number: number;
  readonly rest: string;
}

/** What may begin a sentence behind a number: never a thing that is counted, a unit, or a place in a row of figures. */
const BEGINS_A_SENTENCE = [
  "it|its|it['\u2019]s|i|im|i['\u2019]m|the|cos|cause|because|always|as far|says|said|can['\u2019]?t|cannot|my|but",
  "nothing|none|no|not|never|both|neither|only|just|when|whenever|if|we|there(?:['\u2019]?s)?|that(?:['\u2019]?s)?|this",
  "they(?:['\u2019]?re)?|he|she|you|so|same|again|sorry|think|probably|maybe|silent",
  "(?:do|does|did|wo|is|was|has|have|are|were)(?:n['\u2019]?t)?|windows (?:thought|took|takes|thinks|says|said|sees|calls)",
].join('|');

const LED = new RegExp(
  [
    // "option 2", "its 2".
    "^[\\s#(]*(?:(?:it['\u2019]?s|it is|number|num|nr|no|option|answer|choice)[.\\s]+#?)?(\\d{1,2}|",
    ORDINALS.map((word) => `the ${word}(?: one)?`).join('|'),
    // A mark and a space; behind a space alone, words that begin a sentence of their own.
    `)(?:\\s*[.):;,!\\u2013\\u2014-]+\\s+|\\)|\\s+(?=(?:${BEGINS_A_SENTENCE})[\\s,.]))`,
    '(?=[^\\d\\s])(.*\\p{L}{2}.*)$',
  ].join(''),
  'iu',
);

/** "All is ok, it stays! 1": behind a whole sentence. */
const BEHIND = /^(?<said>.*\p{L}{2}[.!\u2026]+)\s+\(?(?<number>\d{1,2})\)?[.!]?$/u;
const isOfWords = (said: string): boolean => said.split(' ').filter((word) => /\p{L}{2}/u.test(word)).length > 1;

/** Words told with a pick: longer is a story, whatever figure it begins with. */
const LONGEST_LED = 400;

/** @returns null where the line neither begins nor ends with a pick, or is nothing else */
export const numberLed = (text: string): NumberLed | null => {
  const line = text.trim();
  if (line.length > LONGEST_LED || numberSaid(line) !== null) return null;
  const { said: ahead = '', number: behind } = BEHIND.exec(line)?.groups ?? {};
  if (behind !== undefined && isOfWords(ahead)) return { number: Number(behind), rest: ahead };
  const [, said = '', rest = ''] = LED.exec(line) ?? [];
  const number = ORDINAL.get(said.toLowerCase().replace(/^the | one$/gu, '')) ?? Number(said);
  return rest === '' || number < 1 ? null : { number, rest };
};

const ANSWERS_WALK = /^triage walk:\S+ answer:/u;
const withText = (run: string, said: string): string => `${run} text:"${said.replace(/["\\]/gu, '')}"`;

/** The line that a pick runs, with the doubt beside it: where a guess could do harm, it is not enough. */
export const runOfPick = (run: string, said: string, { isHedged }: NumberSaid): string =>
  isHedged && ANSWERS_WALK.test(run) ? withText(run, said) : run;

/** The line that a pick with words about it runs: a walk hears both. Null: it answers no walk, and the line is words. */
export const runOfLed = (run: string, { rest }: NumberLed): string | null =>
  ANSWERS_WALK.test(run) ? withText(run, rest) : null;
