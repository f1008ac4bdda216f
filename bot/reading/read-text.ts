/** Text in, facts out. Pure; the time it takes grows with the text, and a long text is cut to what is worth reading. */
import { answersOf } from './answers-told.js';
import { isHedged } from './answers/hedged.js';
import { asMeant } from './as-meant.js';
import { reasonTold } from './doubted-aloud.js';
import { worthHearing } from './examples/clauses.js';
import { likenessOf } from './examples/likeness.js';
import { MOST_CLAUSES } from './examples/likely.js';
import type { Finding } from './finding.js';
import { gather } from './gather.js';
import { rememberLately } from './lately.js';
import { cutText, foldLines, type Line } from './lines.js';
import { figuresApart } from './messages/figures-apart.js';
import { prepare, type Span } from './messages/compile-pattern.js';
import { readTables } from './messages/tables.js';
import { findMessages } from './messages/find-messages.js';
import { QUOTE_LIMIT, type ReadBy, type Reading } from './reading.js';
import type { SayingEntry, Told } from './schema.js';
import type { Vocabulary } from './vocabulary.js';
import type { PhraseMatch } from './words/phrases.js';
import { withSigns, type Placed } from './words/beside.js';
import { contrastsIn } from './words/contrasts.js';
import { readWords } from './words/read-words.js';
import { sentencesOf, type Clauses } from './words/sentences.js';
import { stands } from './words/stands.js';

/** So few sentences of so few words together leave little else to be meant. */
const [BRIEF, SHORT] = [2, 30];
const SURENESS = { log: 0.95, picture: 0.85, words: 0.85, mentioned: 0.8 } as const;

/** The words of a span with what stands around them, within the limit. */
const quoteOf = (text: string, { start, end }: Span): string => {
  const room = Math.max(0, QUOTE_LIMIT - (end - start));
  const from = Math.max(0, start - Math.floor(room / 2));
  return text.slice(from, from + QUOTE_LIMIT).trim();
};

/** The last line that starts at or before a place. */
const lineAt = (lines: readonly Line[], at: number): Line | undefined => {
  let [low, high] = [0, lines.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((lines[middle]?.start ?? 0) <= at) low = middle + 1;
    else high = middle;
  }
  return lines[low - 1];
};

const tellsOther = (own: string | undefined, other: string | undefined): boolean =>
  own !== undefined && other !== undefined && own !== other;

/** The lines of a list, in order, that a span touches. */
const wordedAt = (worded: readonly Line[], { start, end }: Span): readonly Line[] => {
  let [first, past] = [0, worded.length];
  while (first < past) {
    const middle = (first + past) >> 1;
    const line = worded[middle];
    if (line !== undefined && line.start + line.text.length <= start) first = middle + 1;
    else past = middle;
  }
  while ((worded[past]?.start ?? Infinity) < end) past++;
  return worded.slice(first, past);
};

const spanIn = (line: Line, { tokens }: Clauses, { start, end }: PhraseMatch): Span => ({
  start: line.start + (tokens[start]?.start ?? 0),
  end: line.start + (tokens[end - 1]?.end ?? 0),
});

/** A message found among a member's words, as if a phrase had taken all of it. */
const asMatch = ({ tokens }: Clauses, { start, end }: Span): PhraseMatch | null => {
  if ((tokens.at(-1)?.end ?? 0) <= start || (tokens[0]?.start ?? end) >= end) return null;
  const first = tokens.findIndex((token) => token.end > start);
  if (first < 0 || (tokens[first]?.start ?? end) >= end) return null;
  let last = first;
  while (last + 1 < tokens.length && (tokens[last + 1]?.start ?? end) < end) last++;
  return { start: first, end: last + 1, taken: Array.from({ length: last + 1 - first }, (_, i) => first + i) };
};

/** More than the system, which another device's line tells as well. */
const tellsOfMount = ({ answers, suggests, path }: Told): boolean =>
  answers !== undefined || suggests !== undefined || path !== undefined;

/** Whether a message says already what words over the same place say. */
const isToldBy = (message: Told, at: Span, { answers, path, system }: Told, span: Span): boolean =>
  (message.answers !== undefined && at.start <= span.start && span.end <= at.end) ||
  (answers === undefined && (tellsOther(path, message.path) || tellsOther(system, message.system))) ||
  Object.keys(answers ?? {}).some((check) => message.answers?.[check] !== undefined);

/** A message, and the sayings beside which it does not count. */
interface Message extends Finding {
  readonly unless: readonly string[];
}

/** Without its answers where it must be sure and the line only guesses. */
const firmly = (entry: SayingEntry, line: string): SayingEntry =>
  entry.firm === true && isHedged(line) ? { ...entry, answers: undefined, label: undefined } : entry;

/** A lone sentence, or few of few words. */
const leavesLittle = (sentences: number, tokens: number): boolean =>
  sentences === 1 || (sentences <= BRIEF && tokens <= SHORT);

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

interface InLine extends Placed {
  readonly line: Line;
}

/** What is told by setting one thing against another. */
const setAgainst = ({ contrasts }: Vocabulary, lineOf: ReadonlyMap<Clauses, Line>): readonly InLine[] => {
  const sentences = [...lineOf.keys()];
  return contrastsIn(sentences, contrasts).flatMap(({ sentence, ...said }) => {
    const line = lineOf.get(sentence);
    return line === undefined || line.ofOther
      ? []
      : [{ ...said, sentence, number: sentences.indexOf(sentence) + 1, line }];
  });
};

/** What does well under another system is not the set-up in hand. */
const OF_ANOTHER_SYSTEM: ReadonlySet<string> = new Set(['system.well', 'computer.well']);
const HOST_NAME = /^-(?:[\da-f]*\d|[\w-]+ +\.?\d)/iu;

/** Without the system, where it is another's, or a name in a router's list ("android-3fa1"). */
const withoutSystem = (one: InLine, against: readonly InLine[]): InLine => {
  const { entry, match, sentence, line } = one;
  if (entry.system === undefined) return one;
  const isOthers =
    against.some(
      (other) =>
        other.sentence === sentence &&
        OF_ANOTHER_SYSTEM.has(other.entry.contrast ?? '') &&
        other.match.start <= match.start &&
        match.start < other.match.end,
    ) || HOST_NAME.test(line.text.slice(sentence.tokens[match.end - 1]?.end ?? 0));
  return isOthers ? { ...one, entry: { ...entry, system: undefined } } : one;
};

/** Each time anew. */
export const readAnew = (vocabulary: Vocabulary, text: string, by?: ReadBy): Reading => {
  const { folded, lines: judged } = foldLines(reasonTold(cutText(text)));
  const lines = by === 'log' || by === 'picture' ? judged.map((line) => ({ ...line, printed: true })) : judged;
  const worded = lines.filter(({ printed }) => !printed);
  const { lexicon } = vocabulary.sayings;
  const inSayings: InLine[] = [];
  const sentences = new Map<Line, readonly Clauses[]>();
  const lineOf = new Map<Clauses, Line>();
  let number = 0;
  for (const line of worded) {
    const own = sentencesOf(lexicon, line.text);
    sentences.set(line, own);
    for (const sentence of own) {
      lineOf.set(sentence, line);
      number += 1;
      for (const { entry, match, deniedAt } of readWords(vocabulary.sayings, sentence))
        if (!line.ofOther || !tellsOfMount(entry)) inSayings.push({ entry, match, deniedAt, sentence, number, line });
    }
  }
  const against = setAgainst(vocabulary, lineOf);
  const placed = [...inSayings.map((one) => withoutSystem(one, against)), ...against];
  const tokenCount = [...lineOf.keys()].reduce((sum, { tokens }) => sum + tokens.length, 0);
  const isPlain = leavesLittle(number, tokenCount);
  const last = [...lineOf.keys()].at(-1);
  const telling = new Set(placed.map(({ sentence }) => sentence));
  const heard = worthHearing(
    [...lineOf].flatMap(([own, line]) => (line.ofOther ? [] : [own])),
    MOST_CLAUSES,
    (own) => telling.has(own),
  );
  const isHeard = new Set(heard);
  const liked = likenessOf(
    vocabulary.likeness(),
    heard,
    (own) => lineOf.get(own)?.start ?? 0,
    (span) => quoteOf(folded, span),
  );
  const isInPlace = ({ entry: { closes }, sentence }: Placed): boolean =>
    closes !== true || (number > 1 && sentence === last);
  const told = withSigns(placed.filter(isInPlace)).map(({ entry, match, sentence, line }) => ({
    entry: firmly(entry, line.text),
    sureness: entry.sureness ?? SURENESS.words,
    span: spanIn(line, sentence, match),
    by: 'words' as const,
    // Two things said together tell it, each in any words; and a lone sentence or two brief ones leave little else to be meant.
    isPlain: entry.beside !== undefined || entry.alone === true || entry.with !== undefined || isPlain,
    // Of a long text some is not weighed, and is what its sayings say.
    isHeard: isHeard.has(sentence) || line.ofOther,
  }));

  const isPrintedAt = (at: number): boolean => lineAt(lines, at)?.printed !== false;
  /** Among words, a message counts only where the words do not deny, ask or pass it on. */
  const counts = (span: Span, entry: Told): boolean => {
    if (lineAt(lines, span.start)?.ofOther === true && tellsOfMount(entry)) return false;
    if (isPrintedAt(span.start)) return true;
    const { answers, suggests } = entry;
    const leave = { mentioned: answers === undefined && suggests === undefined };
    return wordedAt(worded, span).every((line) => {
      const own = { start: span.start - line.start, end: span.end - line.start };
      return (sentences.get(line) ?? []).every((sentence) => {
        const match = asMatch(sentence, own);
        return match === null || stands(sentence, match, leave);
      });
    });
  };

  const lineLength = ({ start }: Span): number => lineAt(lines, start)?.text.length ?? 0;
  const printedBy: ReadBy = by === 'picture' ? 'picture' : 'log';
  const own = lines.filter(({ ofOther }) => !ofOther);
  const tables = [...readTables(own), ...figuresApart(own.filter(({ printed }) => !printed))];
  const prepared = prepare(folded, vocabulary.index, by === 'picture');
  const messages = findMessages(vocabulary, prepared, tables, counts).map(({ entry, span }): Message => {
    const own: ReadBy = isPrintedAt(span.start) ? printedBy : 'words';
    return {
      // A member who quotes a message in passing may do so from any system.
      entry:
        own === 'words' && entry.answers !== undefined && 2 * (span.end - span.start) < lineLength(span)
          ? { ...entry, system: undefined }
          : entry,
      unless: entry.unless ?? [],
      sureness: own === 'words' ? SURENESS.mentioned : SURENESS[own],
      span,
      by: own,
    };
  });
  /** What a message says already is not taken from its words once more; words that are all of them its own are no member's. */
  const isTold = (span: Span, told: Told): boolean => {
    for (const { entry, span: own } of messages)
      if (span.start < own.end && own.start < span.end && isToldBy(entry, own, told, span)) return true;
    return false;
  };
  const ids = new Set<string>();
  for (const { entry } of messages) ids.add(entry.id);
  for (const { entry } of told) ids.add(entry.id);
  const isMet = (id: string): boolean => ids.has(id);
  const counted = told.filter(
    ({ entry, span }) =>
      entry.with?.some(isMet) !== false && entry.unless?.some(isMet) !== true && !isTold(span, entry),
  );
  const named = counted.flatMap(({ entry: { names }, span }) =>
    names === undefined ? [] : [{ check: names, quote: quoteOf(folded, span), at: span.start }],
  );
  const worth = [
    ...counted.filter((one) => one.isPlain || !one.isHeard),
    ...liked.weighed(counted.filter((one) => !one.isPlain && one.isHeard)),
  ];
  // "Below the horizon", it says of what stands high: the words that stand set the message right.
  const stand = new Set(worth.map(({ entry }) => entry.id));
  const findings: readonly Finding[] = [
    ...messages.filter(({ unless }) => !unless.some((id) => stand.has(id))),
    ...worth,
  ].sort((a, b) => a.span.start - b.span.start);

  const found = namesOf([...messages, ...counted]);
  /** Checks that a message answers, whatever words stand around it, or what was not weighed. */
  const printed = checksOf([...messages, ...counted.filter((one) => !one.isHeard)]);
  const wordedLength = worded.reduce((sum, line) => sum + line.text.length, 0);
  const gathered = gather(findings, vocabulary, ({ span }) => quoteOf(folded, span), folded);
  return {
    by: by ?? (2 * wordedLength >= folded.length ? 'words' : 'log'),
    ...gathered,
    ...asMeant(folded, liked.judged(gathered, isPlain ? null : printed, found, quietedBy(counted))),
    named: named
      .sort((a, b) => a.at - b.at)
      .filter(({ check }, i, all) => all.findIndex((other) => other.check === check) === i)
      .map(({ check, quote }) => ({ check, quote })),
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
