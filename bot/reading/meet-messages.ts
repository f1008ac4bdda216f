/** The messages of systems and programs in a text, printed by themselves or repeated in a member's words, and what they say already. */
import type { Finding } from './finding.js';
import { tellsOfMount, type Heard } from './hear-words.js';
import type { Line } from './lines.js';
import { prepare, type Span } from './messages/compile-pattern.js';
import { figuresApart } from './messages/figures-apart.js';
import { findMessages } from './messages/find-messages.js';
import { readTables } from './messages/tables.js';
import { lineAt, wordedAt } from './place-in-text.js';
import type { ReadBy } from './reading.js';
import type { Told } from './schema.js';
import type { Vocabulary } from './vocabulary.js';
import type { PhraseMatch } from './words/phrases.js';
import type { Clauses } from './words/sentences.js';
import { stands } from './words/stands.js';

const SURENESS = { log: 0.95, picture: 0.85, mentioned: 0.8 } as const;

/** A message, and the sayings beside which it does not count. */
export interface Message extends Finding {
  readonly unless: readonly string[];
}

/** A message found among a member's words, as if a phrase had taken all of it. */
const asMatch = ({ tokens }: Clauses, { start, end }: Span): PhraseMatch | null => {
  if ((tokens.at(-1)?.end ?? 0) <= start || (tokens[0]?.start ?? end) >= end) return null;
  const first = tokens.findIndex((token) => token.end > start);
  if (first < 0 || (tokens[first]?.start ?? end) >= end) return null;
  let last = first;
  while (last + 1 < tokens.length && (tokens[last + 1]?.start ?? end) < end) last++;
  return { start: first, end: last + 1, taken: Array.from({ length: last + 1 - first }, (_, i) => first + i) };
};

export interface LinesOfText {
  readonly folded: string;
  readonly lines: readonly Line[];
  /** Those of them that a person wrote. */
  readonly worded: readonly Line[];
}

/** Among words, a message counts only where the words do not deny, ask or pass it on. */
const makeCounts =
  ({ lines, worded }: LinesOfText, { ofLine }: Heard) =>
  (span: Span, entry: Told): boolean => {
    const line = lineAt(lines, span.start);
    if (line?.ofOther === true && tellsOfMount(entry)) return false;
    if (line?.printed !== false) return true;
    const { answers, suggests } = entry;
    const leave = { mentioned: answers === undefined && suggests === undefined };
    return wordedAt(worded, span).every((touched) => {
      const own = { start: span.start - touched.start, end: span.end - touched.start };
      return (ofLine.get(touched) ?? []).every((sentence) => {
        const match = asMatch(sentence, own);
        return match === null || stands(sentence, match, leave);
      });
    });
  };

/** @param printedBy how what is printed came */
export const meetMessages = (
  vocabulary: Vocabulary,
  text: LinesOfText,
  heard: Heard,
  printedBy: 'log' | 'picture',
): readonly Message[] => {
  const { folded, lines } = text;
  const own = lines.filter(({ ofOther }) => !ofOther);
  const tables = [...readTables(own), ...figuresApart(own.filter(({ printed }) => !printed))];
  const prepared = prepare(folded, vocabulary.index, printedBy === 'picture');
  return findMessages(vocabulary, prepared, tables, makeCounts(text, heard)).map(({ entry, span }): Message => {
    const line = lineAt(lines, span.start);
    const by: ReadBy = line?.printed === false ? 'words' : printedBy;
    // A member who quotes a message in passing may do so from any system.
    const isInPassing =
      by === 'words' && entry.answers !== undefined && 2 * (span.end - span.start) < (line?.text.length ?? 0);
    return {
      entry: isInPassing ? { ...entry, system: undefined } : entry,
      unless: entry.unless ?? [],
      sureness: SURENESS[by === 'words' ? 'mentioned' : by],
      span,
      by,
    };
  });
};

const tellsOther = (own: string | undefined, other: string | undefined): boolean =>
  own !== undefined && other !== undefined && own !== other;

/** Whether a message says already what words over the same place say. */
const isToldBy = (message: Told, at: Span, { answers, path, system }: Told, span: Span): boolean =>
  (message.answers !== undefined && at.start <= span.start && span.end <= at.end) ||
  (answers === undefined && (tellsOther(path, message.path) || tellsOther(system, message.system))) ||
  Object.keys(answers ?? {}).some((check) => message.answers?.[check] !== undefined);

/** What a message says already is not taken from its words once more; words that are all of them its own are no member's. */
export const isToldByAny = (messages: readonly Message[], span: Span, told: Told): boolean => {
  for (const { entry, span: own } of messages)
    if (span.start < own.end && own.start < span.end && isToldBy(entry, own, told, span)) return true;
  return false;
};
