/** Patterns run on text from strangers, so they run on RE2's linear-time engine alone, and only where their words stand. */
import { RE2JS } from 're2js';
import { patternParts, skeleton } from './pattern-parts.js';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A text made ready to be matched; `folded` has single spaces for all white space. */
export interface Prepared {
  readonly folded: string;
  readonly lower: string;
  /** For texts read from a picture: look-alike letters made equal. Null: a typed or pasted text. */
  readonly skeleton: string | null;
}

export interface Pattern {
  readonly matches: (text: string) => boolean;
  /** Where it matches, in order, at most MOST_SPANS; empty where it does not. */
  readonly find: (text: Prepared) => readonly Span[];
}

const MOST_SPANS = 60;

/** White space folded to single spaces, as platforms may already have done; patterns and texts are compared in this form. */
export const foldText = (text: string): string => text.replace(/\s+/gu, ' ').trim();

/** @param text folded */
export const prepare = (folded: string, picture = false): Prepared => ({
  folded,
  lower: folded.toLowerCase(),
  skeleton: picture ? skeleton(folded) : null,
});

/** How far around its words a pattern can reach: its own length and its gaps. */
const reachOf = (pattern: string): number =>
  [...pattern.matchAll(/\{0?,?(\d+)\}/gu)].reduce((sum, [, most]) => sum + Number(most), pattern.length + 40);

/** The stretches of a text around the places where one of the words stands, cut at spaces and joined where they overlap. */
const stretchesOf = (text: string, words: string, needs: readonly string[], reach: number): readonly Span[] => {
  const places = needs
    .flatMap((need) => {
      const at: number[] = [];
      for (let i = words.indexOf(need); i >= 0 && at.length < MOST_SPANS; i = words.indexOf(need, i + need.length))
        at.push(i);
      return at;
    })
    .sort((a, b) => a - b);
  const stretches: { start: number; end: number }[] = [];
  for (const place of places) {
    const start = place <= reach ? 0 : text.lastIndexOf(' ', place - reach) + 1;
    const space = text.indexOf(' ', place + reach);
    const end = space < 0 ? text.length : space;
    const before = stretches.at(-1);
    if (before !== undefined && start <= before.end) before.end = Math.max(before.end, end);
    else stretches.push({ start, end });
  }
  return stretches;
};

const known = new Map<string, Pattern>();

const spansOf = (compiled: RE2JS, text: string): readonly Span[] => {
  // `test` runs on the library's automaton, ten times as fast as a matcher that also finds where.
  if (!compiled.test(text)) return [];
  const matcher = compiled.matcher(text);
  const spans: Span[] = [];
  while (spans.length < MOST_SPANS && matcher.find()) spans.push({ start: matcher.start(), end: matcher.end() });
  return spans;
};

/** Throws where the pattern is not RE2 syntax (look-around and back references are not). Compiles each pattern once. */
export const compilePattern = (pattern: string): Pattern => {
  const before = known.get(pattern);
  if (before !== undefined) return before;
  const compiled = RE2JS.compile(pattern, RE2JS.CASE_INSENSITIVE);
  const { needs, blurred } = patternParts(pattern);
  const reach = reachOf(pattern);
  const blurredNeeds = needs?.map(skeleton) ?? null;
  let forPictures: RE2JS | null = null;
  const find = ({ folded, lower, skeleton: bones }: Prepared): readonly Span[] => {
    if (bones === null) {
      if (needs === null || lower.length !== folded.length) return spansOf(compiled, folded);
      return stretchesOf(folded, lower, needs, reach).flatMap(({ start, end }) =>
        spansOf(compiled, folded.slice(start, end)).map((span) => ({
          start: start + span.start,
          end: start + span.end,
        })),
      );
    }
    if (blurredNeeds !== null && !blurredNeeds.some((need) => bones.includes(need))) return [];
    forPictures ??= RE2JS.compile(blurred, RE2JS.CASE_INSENSITIVE);
    return spansOf(forPictures, folded);
  };
  const made: Pattern = { matches: (text) => compiled.test(text), find };
  known.set(pattern, made);
  return made;
};
