/** Which messages of systems and programs stand in a text, where, and which of them still hold at its end. */
import type { EvidenceEntry } from '../schema.js';
import type { Pattern, Prepared, Span } from './compile-pattern.js';
import { findNumbers } from './numbers.js';
import type { FoundTable } from './tables.js';
import type { Translation } from './translation.js';
import { plainMarks } from './translation.js';
import type { WordIndex } from './word-places.js';

export interface Messages {
  readonly evidence: readonly (EvidenceEntry & { readonly compiled: Pattern })[];
  readonly translations: readonly Translation[];
  /** Finds what patterns and translations need. */
  readonly index: WordIndex;
}

export interface Hit {
  readonly entry: EvidenceEntry;
  /** The last place it stands. */
  readonly span: Span;
}

/** Whether a place counts. */
type Counts = (span: Span, entry: EvidenceEntry) => boolean;

const isLater = (a: Span, b: Span): boolean => a.start > b.start || (a.start === b.start && a.end > b.end);

/** The last of the spans that counts. */
const lastThat = (spans: readonly Span[], counts: (span: Span) => boolean): Span | undefined =>
  (spans.length < 2 ? spans : [...spans].sort((a, b) => (isLater(a, b) ? -1 : 1))).find(counts);

const NOWHERE: readonly Span[] = [];

/** Everything met, in the order it stands. `counts` says whether a place counts (the words around it may deny it). */
const findAll = (messages: Messages, text: Prepared, tables: readonly FoundTable[], counts: Counts): readonly Hit[] => {
  const numbers = findNumbers(text);
  const plain = plainMarks(text.folded);
  const marked: Prepared = plain === text.lower ? text : { ...text, lower: plain, places: messages.index(plain) };
  const translated = new Map<string, Span[]>();
  for (const { of, find } of messages.translations) {
    const span = find(marked);
    if (span !== null) translated.set(of, [...(translated.get(of) ?? []), span]);
  }
  const hits: Hit[] = [];
  for (const entry of messages.evidence) {
    const { id, numbers: own, table, compiled } = entry;
    const byPattern = compiled.find(text);
    const rows = table === true ? tables.filter((one) => one.id === id).map(({ span }) => span) : NOWHERE;
    const byNumber =
      own === undefined ? NOWHERE : numbers.filter(({ kind, value }) => own[kind]?.includes(value) === true);
    const inOthers = translated.get(id) ?? NOWHERE;
    // Most entries are nowhere in a text.
    if (byPattern.length + rows.length + byNumber.length + inOthers.length === 0) continue;
    const span = lastThat([...rows, ...byPattern, ...byNumber, ...inOthers], (one) => counts(one, entry));
    if (span !== undefined) hits.push({ entry, span });
  }
  return hits.sort((a, b) => a.span.start - b.span.start || a.span.end - b.span.end);
};

/** Of messages about one changing thing the last holds, unless one of them says why. */
const settle = (hits: readonly Hit[]): readonly Hit[] => {
  const ids = new Set(hits.map(({ entry }) => entry.id));
  const standing = hits.filter(
    ({ entry }) =>
      (entry.with === undefined || entry.with.some((id) => ids.has(id))) &&
      (entry.unless === undefined || !entry.unless.some((id) => ids.has(id))),
  );
  return standing.filter((hit) => {
    const { state, settles } = hit.entry;
    if (state === undefined) return true;
    const rivals = standing.filter(({ entry }) => entry.state === state);
    if (rivals.some(({ entry }) => entry.settles === true)) return settles === true;
    return rivals.at(-1) === hit;
  });
};

/** What a table tells row by row holds against what a pattern takes from the same text. */
const withoutRivals = (hits: readonly Hit[]): readonly Hit[] => {
  const tabled = new Map(
    hits.flatMap(({ entry }) => (entry.table === true ? Object.entries(entry.answers ?? {}) : [])),
  );
  if (tabled.size === 0) return hits;
  return hits.filter(({ entry }) =>
    Object.entries(entry.answers ?? {}).every(([check, answer]) => (tabled.get(check) ?? answer) === answer),
  );
};

export const findMessages = (
  messages: Messages,
  text: Prepared,
  tables: readonly FoundTable[],
  counts: Counts,
): readonly Hit[] => withoutRivals(settle(findAll(messages, text, tables, counts)));
