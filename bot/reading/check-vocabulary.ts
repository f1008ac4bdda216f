/** What is wrong in a vocabulary: phrases that cannot be parsed, words that are nowhere, examples that are not read as their entry says. */
import { foldText, compilePattern, prepare } from './messages/compile-pattern.js';
import { findNumbers } from './messages/numbers.js';
import { figuresApart } from './messages/figures-apart.js';
import { readTables, type TableLine } from './messages/tables.js';
import { placesBySearch } from './messages/word-places.js';
import { readText } from './read-text.js';
import type { EvidenceEntry, SayingEntry, Told, VocabularyEntries, WordedAnswersEntry } from './schema.js';
import { makeVocabulary, type Vocabulary } from './vocabulary.js';
import { idsOf, parsePhrase } from './words/phrases.js';
import { tellsAnything } from './words/index-sayings.js';
import { SHAPE_IDS } from './words/shapes.js';

export interface VocabularyProblem {
  readonly kind: keyof VocabularyEntries;
  readonly id: string;
  readonly path: readonly (string | number)[];
  readonly message: string;
}

type Complain = (id: string, path: readonly (string | number)[], message: string) => void;

const textOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));

const checkSaying = (entry: SayingEntry, words: ReadonlySet<string>, complain: Complain): void => {
  for (const [i, phrase] of entry.phrases.entries()) {
    try {
      for (const id of idsOf(parsePhrase(phrase)))
        if (!words.has(id)) complain(entry.id, ['phrases', i], `words.yaml has no entry "${id}"`);
    } catch (error) {
      complain(entry.id, ['phrases', i], textOf(error));
    }
  }
  for (const id of entry.notOf ?? [])
    if (!words.has(id)) complain(entry.id, ['notOf'], `words.yaml has no entry "${id}"`);
};

const tableLines = (text: string): readonly TableLine[] => text.split('\n').map((line) => ({ text: line, start: 0 }));

const checkTable = ({ id, example, nonExample = '' }: EvidenceEntry, complain: Complain): void => {
  const isFound = (text: string): boolean =>
    [readTables, figuresApart].some((read) => read(tableLines(text)).some((one) => one.id === id));
  if (!isFound(example)) complain(id, ['example'], 'no reader of tables finds this entry in it');
  if (isFound(nonExample)) complain(id, ['nonExample'], 'a reader of tables finds this entry in it');
};

const checkEvidence = (entry: EvidenceEntry, complain: Complain): void => {
  if (entry.table === true) return checkTable(entry, complain);
  if (entry.pattern === undefined) return complain(entry.id, ['pattern'], 'it has neither a pattern nor a table');
  try {
    const pattern = compilePattern(entry.pattern);
    // Text arrives folded into one line with other words around it.
    const example = prepare(foldText(`it said ${entry.example} and then stopped`), placesBySearch);
    const numbered = findNumbers(example).some(({ kind, value }) => entry.numbers?.[kind]?.includes(value) === true);
    if (!numbered && pattern.find(example).length === 0)
      complain(
        entry.id,
        ['pattern'],
        'it does not match its example once that stands in one line with words around it',
      );
    if (entry.nonExample !== undefined && pattern.matches(foldText(entry.nonExample)))
      complain(entry.id, ['nonExample'], 'the pattern matches it');
  } catch (error) {
    complain(entry.id, ['pattern'], `not RE2 syntax: ${textOf(error)}`);
  }
};

const checkWordedAnswers = ({ id, said }: WordedAnswersEntry, complain: Complain): void => {
  const answerOf = new Map<string, string>();
  for (const [answer, phrases] of Object.entries(said))
    for (const [i, phrase] of phrases.entries()) {
      const folded = foldText(phrase).trim();
      const other = answerOf.get(folded);
      if (other === answer) complain(id, ['said', answer, i], 'it stands here twice');
      else if (other !== undefined)
        complain(id, ['said', answer, i], `"${other}" has the same phrase, so it tells neither`);
      answerOf.set(folded, answer);
    }
};

/** Whether a text is read as the entry says: by the entry itself, or by a message that tells the same. */
const isRead = (vocabulary: Vocabulary, { id, answers }: Told, text: string): boolean => {
  const { met, facts } = readText(vocabulary, text);
  return met.includes(id) || facts.some(({ what, answer }) => answers?.[what] === answer);
};

const checkSayingExamples = (vocabulary: Vocabulary, entry: SayingEntry, complain: Complain): void => {
  for (const [i, example] of entry.examples.entries())
    if (tellsAnything(entry) && !isRead(vocabulary, entry, example))
      complain(entry.id, ['examples', i], `this saying is not read of “${example}”`);
  for (const [i, example] of (entry.nonExamples ?? []).entries())
    if (readText(vocabulary, example).met.includes(entry.id))
      complain(entry.id, ['nonExamples', i], 'this saying is read of it');
};

/** The entries of words.yaml that some phrase has, or that something is not said of. */
const wordsUsed = ({ sayings }: VocabularyEntries): ReadonlySet<string> => {
  const used = new Set<string>();
  for (const { phrases, notOf = [] } of sayings) {
    for (const id of notOf) used.add(id);
    for (const phrase of phrases) for (const [, id = ''] of phrase.matchAll(/<([a-z0-9-]+)>/gu)) used.add(id);
  }
  return used;
};

const checkWordsUsed = (entries: VocabularyEntries, isOwn: (id: string) => boolean, complain: Complain): void => {
  const used = wordsUsed(entries);
  for (const { id } of entries.words)
    if (isOwn(id) && !used.has(id))
      complain(
        id,
        ['id'],
        `no phrase has <${id}>, so these words tell nothing. Another name for a thing that ships goes under that thing's id`,
      );
};

/** What an entry counts beside: other messages; and what it does not count beside, sayings too. */
const checkBesides = (
  { id: own, with: beside = [], unless = [] }: EvidenceEntry,
  { evidence, met }: { readonly evidence: ReadonlySet<string>; readonly met: ReadonlySet<string> },
  complain: Complain,
): void => {
  for (const id of beside) if (!evidence.has(id)) complain(own, ['with'], `there is no evidence "${id}"`);
  for (const id of unless) if (!met.has(id)) complain(own, ['unless'], `there is no saying or evidence "${id}"`);
};

/**
 * Ids of checks, faults and paths are the caller's business.
 * @param isOwn whether an entry of words.yaml is the club's alone: of those that ship, some are for the reader itself
 */
export const checkVocabulary = (
  entries: VocabularyEntries,
  isOwn: (id: string) => boolean = () => false,
): readonly VocabularyProblem[] => {
  const problems: VocabularyProblem[] = [];
  const about =
    (kind: keyof VocabularyEntries): Complain =>
    (id, path, message) =>
      problems.push({ kind, id, path, message });
  const words = new Set([...entries.words.map(({ id }) => id), ...SHAPE_IDS]);
  const evidence = new Set(entries.evidence.map(({ id }) => id));
  const met = new Set([...evidence, ...entries.sayings.map(({ id }) => id)]);
  for (const entry of entries.evidence) {
    checkEvidence(entry, about('evidence'));
    checkBesides(entry, { evidence, met }, about('evidence'));
  }
  for (const { id, of } of entries.translations)
    if (!evidence.has(of)) about('translations')(id, ['of'], `there is no evidence "${of}"`);
  for (const entry of entries.sayings) {
    checkSaying(entry, words, about('sayings'));
    for (const id of [...(entry.with ?? []), ...(entry.unless ?? [])])
      if (!met.has(id)) about('sayings')(entry.id, ['with'], `there is no saying or evidence "${id}"`);
  }
  checkWordsUsed(entries, isOwn, about('words'));
  for (const entry of entries.wordedAnswers) checkWordedAnswers(entry, about('wordedAnswers'));
  return problems;
};

/** Whether every saying is read of its examples and not of its non-examples; for reviewers, since it reads every one of them. */
export const checkExamples = (entries: VocabularyEntries): readonly VocabularyProblem[] => {
  const problems: VocabularyProblem[] = [];
  const vocabulary = makeVocabulary(entries);
  for (const entry of entries.sayings)
    checkSayingExamples(vocabulary, entry, (id, path, message) =>
      problems.push({ kind: 'sayings', id, path, message }),
    );
  return problems;
};
