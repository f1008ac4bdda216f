/** A message in another language as plain text with gaps: found by its words in order, without a pattern engine. */
import type { Prepared, Span } from './compile-pattern.js';

const GAP = 60;

export interface Translation {
  /** The evidence entry it stands for. */
  readonly of: string;
  /** A text without it cannot hold the message: its longest part. */
  readonly needs: string;
  readonly find: (text: Prepared) => Span | null;
}

/** Typographic marks as pasted and as remembered differ; they are made one. */
export const plainMarks = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[’‘`´]/gu, "'")
    .replace(/[“”„«»「」]/gu, '"')
    .replace(/\u00a0/gu, ' ');

/** The last place where the parts follow one another, each within GAP characters of the one before. */
const findParts = (text: string, parts: readonly string[]): Span | null => {
  const [first, ...rest] = parts;
  if (first === undefined || first === '') return null;
  let found: Span | null = null;
  for (let start = text.indexOf(first); start >= 0; start = text.indexOf(first, start + first.length)) {
    let end = start + first.length;
    const fits = rest.every((part) => {
      const at = text.slice(end, end + GAP + part.length).indexOf(part);
      if (at < 0) return false;
      end += at + part.length;
      return true;
    });
    if (fits) found = { start, end };
  }
  return found;
};

export const makeTranslation = (of: string, text: string): Translation => {
  const parts = plainMarks(text)
    .split('…')
    .map((part) => part.trim());
  const needs = parts.reduce((longest, part) => (part.length > longest.length ? part : longest), '');
  return { of, needs, find: ({ lower, places }) => (places(needs).length > 0 ? findParts(lower, parts) : null) };
};
