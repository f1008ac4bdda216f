/** Text in, facts out. Pure; the time it takes grows with the text, and a long text is cut to what is worth reading. */
import { answersOf } from './answers-told.js';
import { asMeant } from './as-meant.js';
import { reasonTold } from './doubted-aloud.js';
import { worthHearing } from './examples/clauses.js';
import { likenessOf } from './examples/likeness.js';
import { MOST_CLAUSES } from './examples/likely.js';
import type { Finding } from './finding.js';
import { gather } from './gather.js';
import { hearWords, toldInWords, type FoundInWords, type Heard } from './hear-words.js';
import { rememberLately } from './lately.js';
import { cutText, foldLines } from './lines.js';
import { isToldByAny, meetMessages, type LinesOfText, type Message } from './meet-messages.js';
import { quoteOf } from './place-in-text.js';
import type { Named, ReadBy, Reading } from './reading.js';
import type { SayingEntry, Told } from './schema.js';
import type { Vocabulary } from './vocabulary.js';
import type { Clauses } from './words/sentences.js';

/** Each once, of entries that are met again and again. */
const answersIn = (all: readonly { readonly entry: Told }[]): ReadonlySet<Readonly<Record<string, string>>> => {
  const met = new Set<Readonly<Record<string, string>>>();
  for (const { entry } of all) if (entry.answers !== undefined) met.add(entry.answers);
  return met;
};

/** "check.answer" of all that is told. */
const namesOf = (all: readonly { readonly entry: Told }[]): ReadonlySet<string> => {
  const names = new Set<string>();
  for (const answers of answersIn(all)) for (const { name } of answersOf(answers)) names.add(name);
  return names;
};

const checksOf = (all: readonly { readonly entry: Told }[]): ReadonlySet<string> => {
  const checks = new Set<string>();
  for (const answers of answersIn(all)) for (const { check } of answersOf(answers)) checks.add(check);
  return checks;
};

/** Checks and answers of which likeness says nothing beside what is told. */
const quietedBy = (all: readonly { readonly entry: Pick<SayingEntry, 'quiets'> }[]): ReadonlySet<string> =>
  new Set(all.flatMap(({ entry }) => entry.quiets ?? []));

const linesOf = (text: string, by: ReadBy | undefined): LinesOfText => {
  const { folded, lines: judged } = foldLines(reasonTold(cutText(text)));
  const lines = by === 'log' || by === 'picture' ? judged.map((line) => ({ ...line, printed: true })) : judged;
  return { folded, lines, worded: lines.filter(({ printed }) => !printed) };
};

/** The sentences that likeness weighs: of a long text some alone. */
const sentencesToWeigh = ({ sentences, placeOf, placed }: Heard): readonly Clauses[] => {
  const telling = new Set(placed.map(({ sentence }) => sentence));
  const own = sentences.filter((sentence) => placeOf.get(sentence)?.line.ofOther === false);
  return worthHearing(own, MOST_CLAUSES, (sentence) => telling.has(sentence));
};

const idsOf = (messages: readonly Message[], told: readonly FoundInWords[]): ReadonlySet<string> => {
  const ids = new Set<string>();
  for (const { entry } of messages) ids.add(entry.id);
  for (const { entry } of told) ids.add(entry.id);
  return ids;
};

/** What counts in words beside the messages, and beside what else is told. */
const countedBeside = (messages: readonly Message[], told: readonly FoundInWords[]): readonly FoundInWords[] => {
  const ids = idsOf(messages, told);
  const isMet = (id: string): boolean => ids.has(id);
  return told.filter(
    ({ entry, span }) =>
      entry.with?.some(isMet) !== false && entry.unless?.some(isMet) !== true && !isToldByAny(messages, span, entry),
  );
};

/** Each check once, in the order it is named. */
const namedIn = (counted: readonly FoundInWords[], folded: string): readonly Named[] => {
  const naming = counted.filter(({ entry }) => entry.names !== undefined).sort((a, b) => a.span.start - b.span.start);
  const named = new Map<string, Named>();
  for (const { entry, span } of naming) {
    const check = entry.names ?? '';
    if (!named.has(check)) named.set(check, { check, quote: quoteOf(folded, span) });
  }
  return [...named.values()];
};

/** "Below the horizon", it says of what stands high: the words that stand set the message right. */
const findingsOf = (messages: readonly Message[], worth: readonly Finding[]): readonly Finding[] => {
  const stand = new Set(worth.map(({ entry }) => entry.id));
  const standing = messages.filter(({ unless }) => !unless.some((id) => stand.has(id)));
  return [...standing, ...worth].sort((a, b) => a.span.start - b.span.start);
};

/** Each time anew. */
export const readAnew = (vocabulary: Vocabulary, text: string, by?: ReadBy): Reading => {
  const lines = linesOf(text, by);
  const { folded, worded } = lines;
  const heard = hearWords(vocabulary, worded);
  const weighable = sentencesToWeigh(heard);
  const isWeighed = new Set(weighable);
  const liked = likenessOf(
    vocabulary.likeness(),
    weighable,
    (own) => heard.placeOf.get(own)?.line.start ?? 0,
    (span) => quoteOf(folded, span),
  );
  const told = toldInWords(heard, (sentence) => isWeighed.has(sentence));
  const messages = meetMessages(vocabulary, lines, heard, by === 'picture' ? by : 'log');
  const counted = countedBeside(messages, told);
  const findings = findingsOf(messages, [
    ...counted.filter((one) => one.isPlain || !one.isHeard),
    ...liked.weighed(counted.filter((one) => !one.isPlain && one.isHeard)),
  ]);
  const found = namesOf([...messages, ...counted]);
  /** Checks that a message answers, whatever words stand around it, or what was not weighed. */
  const printed = checksOf([...messages, ...counted.filter((one) => !one.isHeard)]);
  const wordedLength = worded.reduce((sum, line) => sum + line.text.length, 0);
  const gathered = gather(findings, vocabulary, ({ span }) => quoteOf(folded, span), folded);
  return {
    by: by ?? (2 * wordedLength >= folded.length ? 'words' : 'log'),
    ...gathered,
    ...asMeant(folded, liked.judged(gathered, heard.isPlain ? null : printed, found, quietedBy(counted))),
    named: namedIn(counted, folded),
    says: [...new Set(messages.flatMap(({ entry }) => entry.says ?? []))],
    met: [...new Set(findings.map(({ entry }) => entry.id))],
  };
};

const readAsItIs = rememberLately((vocabulary: Vocabulary, text) => readAnew(vocabulary, text));

/**
 * @param by how the text came, where the caller knows it; else each line is judged by itself
 */
export const readText = (vocabulary: Vocabulary, text: string, by?: ReadBy): Reading =>
  by === undefined ? readAsItIs(vocabulary, text) : readAnew(vocabulary, text, by);
