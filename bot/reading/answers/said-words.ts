/** A short text as the words that carry it: mended, stemmed, each knowing whether it is denied. */
import { rememberLately } from '../lately.js';
import type { Lexicon } from '../words/lexicon.js';
import { sentencesOf, type Clauses } from '../words/sentences.js';
import { asksBackOf, type AsksBack } from './asks-back.js';

export interface SaidWord {
  readonly word: string;
  readonly stem: string;
  /** It tells what is meant, by itself. */
  readonly isTelling: boolean;
  /** Entries of words.yaml it belongs to, those of grammar aside. */
  readonly entries: ReadonlySet<string>;
  readonly denied: boolean;
  /** Counts up at each comma, "but" and full stop. */
  readonly clause: number;
}

/** What says how a thing is meant rather than what. */
const GRAMMAR = new Set(
  'small not turn pronoun stranger hearsay asker condition wish past excepted approved'.split(' '),
);
/** How many words a denial reaches. */
const DENIAL_REACH = 5;
const STOP_WORDS = new Set(
  (
    'a an the it is are am was were be been of to in on at by for with or and that this these those its his her do does did ' +
    'has have had as from there they them i we my our me us you your what when which if so too one ones will would could can now just only ' +
    'also then than very really quite im says say said shows show get gets got goes go see saw seen think yes no not none never ' +
    'neither nothing without yep yeah nope ok okay well all any some still thing things'
  ).split(' '),
);

const stemOf = (word: string): string => {
  if (word.length <= 4 || !/^[a-z]+$/u.test(word)) return word.length === 4 ? word.replace(/(?<=[^s])s$/u, '') : word;
  return word.replace(/(?:ings?|ed|es|s|ly|e)$/u, '').replace(/([^aeiouls])\1$/u, '$1');
};

export const carries = (word: string): boolean => !STOP_WORDS.has(word) && /[\p{L}\d]/u.test(word);

const wordsOfSentence = (own: Clauses, firstClause: number): { words: SaidWord[]; clause: number } => {
  const words: SaidWord[] = [];
  let clause = firstClause;
  let deniedAt = Number.NEGATIVE_INFINITY;
  for (const [at, { word, kind }] of own.tokens.entries()) {
    const covers = own.covers[at] ?? new Set<string>();
    if (kind === 'pause' || covers.has('turn')) {
      clause += 1;
      deniedAt = Number.NEGATIVE_INFINITY;
    }
    if (kind !== 'word') continue;
    const denies = covers.has('not') || word === 'without' || word === 'neither';
    words.push({
      word,
      stem: stemOf(word),
      isTelling: carries(word),
      entries: new Set([...covers].filter((id) => !GRAMMAR.has(id))),
      denied: at - deniedAt <= DENIAL_REACH,
      clause,
    });
    if (denies) deniedAt = at;
  }
  return { words, clause: clause + 1 };
};

export interface SaidText {
  /** Every word, in order. */
  readonly words: readonly SaidWord[];
  readonly asks: AsksBack;
}

export const saidText = rememberLately((lexicon: Lexicon, text): SaidText => {
  // "5v" is said of "5 V", "rs232" of "RS-232".
  const apart = text.replace(/(\d)(?=[a-z]{1,3}\b)|([a-z])(?=\d)/giu, '$& ');
  const sentences = sentencesOf(lexicon, apart);
  const words: SaidWord[] = [];
  let clause = 0;
  for (const sentence of sentences) {
    const made = wordsOfSentence(sentence, clause);
    words.push(...made.words);
    clause = made.clause;
  }
  const spoken = words.map(({ word }) => word);
  return { words, asks: asksBackOf(spoken, sentences) };
});

/** Where the words hold no answer: whether they ask something back. */
export const asksBack = (lexicon: Lexicon, text: string): boolean => saidText(lexicon, text).asks !== 'no';

/** Whether a word that carries something is said in both. */
export const sharesWords = (lexicon: Lexicon, one: string, other: string): boolean => {
  const stems = new Set(saidText(lexicon, one).words.flatMap(({ stem, isTelling }) => (isTelling ? [stem] : [])));
  return saidText(lexicon, other).words.some(({ stem }) => stems.has(stem));
};
