/** The vocabulary as the reader uses it: patterns compiled, phrases parsed, words looked up. Read-only once made. */
import { once } from '../ground/once.js';
import { countPhrases, type PhraseCounts } from './answers/speaks-of.js';
import { saidText, type SaidWord } from './answers/said-words.js';
import { compilePattern, NO_PATTERN } from './messages/compile-pattern.js';
import { evidenceLaidOut, sayingLaidOut } from './laid-out-alike.js';
import type { Likeness } from './examples/likeness.js';
import type { Weights } from './examples/weights.js';
import type { Messages } from './messages/find-messages.js';
import { NUMBER_NEEDS } from './messages/numbers.js';
import { makeTranslation } from './messages/translation.js';
import { indexWords } from './messages/word-places.js';
import type { FamilyEntry, VocabularyEntries } from './schema.js';
import type { Contrasts } from './words/contrasts.js';
import { makeLexicon } from './words/lexicon.js';
import { keysOf, parsePhrase } from './words/phrases.js';
import { indexSayings, type Sayings } from './words/index-sayings.js';

export interface Vocabulary extends Messages {
  readonly sayings: Sayings;
  /** What sets another thing against the one in hand → the saying of it. */
  readonly contrasts: Contrasts;
  readonly families: readonly FamilyEntry[];
  /** null: nothing is told by likeness. */
  readonly likeness: () => Likeness | null;
  /** null: what came of a remedy is told by sayings alone. */
  readonly outcomes: () => Weights | null;
  /** null: what is said of the talk itself is told by plain forms alone. */
  readonly talk: () => Weights | null;
  /** Texts of which all kinds are read, a thousand characters or so each: a process that has read them reads as fast as it ever will. */
  readonly examples: readonly string[];
  /** The path ids of a family, or of a path: itself. */
  readonly family: (id: string) => readonly string[];
  /** The phrases that members put an answer of a check in. */
  readonly wordedAnswers: (check: string, answer: string) => readonly (readonly SaidWord[])[];
  /** The phrases that members put the remedy of a fault in, once it is done. */
  readonly deeds: (fault: string) => readonly string[];
  /** How often each word stands in all phrases, and in those of each check. */
  readonly phraseCounts: () => PhraseCounts;
}

/** Counted when first asked for: most processes meet no walk. The words themselves are not kept. */
const phraseCountsOf = (
  entries: VocabularyEntries['wordedAnswers'],
  lexicon: Sayings['lexicon'],
): Vocabulary['phraseCounts'] =>
  once(() =>
    countPhrases(
      entries.map(({ id, said }) => ({
        id,
        phrases: Object.values(said).flatMap((phrases) => phrases.map((phrase) => saidText(lexicon, phrase).words)),
      })),
    ),
  );

const EXAMPLE_LENGTH = 1000;

/** Lines joined to texts of about EXAMPLE_LENGTH. */
const inTexts = (lines: readonly string[]): readonly string[] => {
  const texts: string[] = [];
  let text = '';
  for (const line of lines) {
    text += `${line}\n`;
    if (text.length < EXAMPLE_LENGTH) continue;
    texts.push(text);
    text = '';
  }
  return text === '' ? texts : [...texts, text];
};

const wordedBy = (
  entries: VocabularyEntries['wordedAnswers'],
  lexicon: Sayings['lexicon'],
): Vocabulary['wordedAnswers'] => {
  const phrases = new Map(entries.map(({ id, said }) => [id, new Map(Object.entries(said))]));
  // A walk meets few of the questions, and most processes no walk at all.
  const read = new Map<string, readonly (readonly SaidWord[])[]>();
  return (check, answer) => {
    const key = `${check}.${answer}`;
    const known = read.get(key);
    if (known !== undefined) return known;
    const made = (phrases.get(check)?.get(answer) ?? []).map((phrase) => saidText(lexicon, phrase).words);
    read.set(key, made);
    return made;
  };
};

/** @throws where a pattern is not RE2 syntax or a phrase cannot be parsed; the knowledge checker finds those first. */
export const makeVocabulary = (
  entries: VocabularyEntries,
  {
    likeness = () => null,
    outcomes = () => null,
    talk = () => null,
  }: Partial<Pick<Vocabulary, 'likeness' | 'outcomes' | 'talk'>> = {},
): Vocabulary => {
  const sayings = entries.sayings.map((entry) => ({
    entry: sayingLaidOut(entry),
    phrases: entry.phrases.map(parsePhrase),
  }));
  const lexicon = makeLexicon(
    entries.words,
    sayings.flatMap(({ phrases }) => phrases.flatMap(keysOf)),
  );
  const deeds = new Map(entries.deeds.map(({ id, done }) => [id, done]));
  const families = new Map(entries.families.map(({ id, paths }) => [id, paths]));
  const evidence = entries.evidence.map((entry) =>
    evidenceLaidOut(entry, entry.pattern === undefined ? NO_PATTERN : compilePattern(entry.pattern)),
  );
  const translations = entries.translations.flatMap(({ of, texts }) =>
    Object.values(texts).flatMap((list) => list.map((text) => makeTranslation(of, text))),
  );
  return {
    evidence,
    translations,
    index: indexWords([
      ...evidence.flatMap(({ compiled }) => compiled.needs),
      ...translations.map(({ needs }) => needs),
      ...NUMBER_NEEDS,
    ]),
    sayings: indexSayings(lexicon, sayings),
    contrasts: new Map(
      entries.sayings.flatMap((entry) => (entry.contrast === undefined ? [] : [[entry.contrast, entry] as const])),
    ),
    families: entries.families,
    likeness,
    outcomes,
    talk,
    examples: inTexts([
      ...entries.evidence.map(({ example }) => example),
      ...entries.sayings.flatMap(({ examples, nonExamples }) => [...examples, ...(nonExamples ?? [])]),
    ]),
    family: (id) => families.get(id) ?? [id],
    deeds: (fault) => deeds.get(fault) ?? [],
    wordedAnswers: wordedBy(entries.wordedAnswers, lexicon),
    phraseCounts: phraseCountsOf(entries.wordedAnswers, lexicon),
  };
};
