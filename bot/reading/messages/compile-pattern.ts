/**
 * Patterns run on text from strangers. One that can be tried in few ways from any place runs on the platform's own engine,
 * only around the words it needs; any other runs on RE2's linear-time engine.
 */
import { RE2JS } from 're2js';
import { blurred, needsOf, reachOf, skeleton } from './pattern-parts.js';
import { patternTree, writeTree, type PatternTree } from './pattern-tree.js';
import { waysOf } from './pattern-ways.js';
import { mayHold, runsOf, trigramsOf, type Trigrams } from './trigrams.js';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A text made ready to be matched; `folded` has single spaces for all white space. */
export interface Prepared {
  readonly folded: string;
  readonly lower: string;
  /** Of `lower`. */
  readonly trigrams: Trigrams;
  /** For texts read from a picture: look-alike letters made equal. Null: a typed or pasted text. */
  readonly skeleton: string | null;
}

export interface Pattern {
  readonly matches: (text: string) => boolean;
  /** Where it matches, in order, the last MOST_SPANS of them; empty where it does not. */
  readonly find: (text: Prepared) => readonly Span[];
}

const MOST_SPANS = 40;
/** What a pattern may cost from one place of a text, in ways of trying it, to run on the platform's own engine. */
export const MOST_WAYS = 20_000;

/** White space folded to single spaces, as platforms may already have done; patterns and texts are compared in this form. */
export const foldText = (text: string): string => text.replace(/\s+/gu, ' ').trim();

/** @param text folded */
export const prepare = (folded: string, picture = false): Prepared => {
  const small = folded.toLowerCase();
  // A letter whose small form has another length would put every place after it wrong.
  const lower = small.length === folded.length ? small : folded;
  return { folded, lower, trigrams: trigramsOf(lower), skeleton: picture ? skeleton(folded) : null };
};

interface Engine {
  readonly test: (text: string) => boolean;
  readonly spans: (text: string) => readonly Span[];
}

/** As RE2 writes it, every repeat bounded. */
const bounded = (tree: PatternTree): string =>
  writeTree(
    tree.options,
    ({ raw, literal }) => (literal !== null && /[{}\]]/u.test(raw) && raw.length === 1 ? `\\${raw}` : raw),
    ({ least, most, raw }, written) => (/^[*+]|,\}/u.test(raw) ? `${written}{${least},${most}}` : written + raw),
  );

const platformEngine = (tree: PatternTree): Engine => {
  const once = new RegExp(bounded(tree), 'i');
  const all = new RegExp(once.source, 'gi');
  return {
    test: (text) => once.test(text),
    spans: (text) => {
      const spans: Span[] = [];
      all.lastIndex = 0;
      for (let found = all.exec(text); found !== null; found = all.exec(text)) {
        spans.push({ start: found.index, end: all.lastIndex });
        if (found[0] === '') all.lastIndex += 1;
      }
      return spans;
    },
  };
};

const linearEngine = (pattern: string): Engine => {
  const compiled = RE2JS.compile(pattern, RE2JS.CASE_INSENSITIVE);
  return {
    test: (text) => compiled.test(text),
    spans: (text) => {
      if (!compiled.test(text)) return [];
      const matcher = compiled.matcher(text);
      const spans: Span[] = [];
      while (matcher.find()) spans.push({ start: matcher.start(), end: matcher.end() });
      return spans;
    },
  };
};

const engineFor = (pattern: string, tree: PatternTree): Engine =>
  waysOf(tree) <= MOST_WAYS ? platformEngine(tree) : linearEngine(pattern);

interface Need {
  readonly word: string;
  readonly runs: readonly number[];
}

/** The last places of any of the words. */
const placesOf = ({ lower, trigrams }: Prepared, needs: readonly Need[]): readonly number[] => {
  const places: number[] = [];
  for (const { word, runs } of needs) {
    if (!mayHold(trigrams, runs)) continue;
    const own: number[] = [];
    for (let i = lower.indexOf(word); i >= 0; i = lower.indexOf(word, i + word.length)) own.push(i);
    for (const place of own.length > MOST_SPANS ? own.slice(-MOST_SPANS) : own) places.push(place);
  }
  return places.sort((a, b) => a - b);
};

/** The stretches of a text around the places where one of the words stands, cut at spaces and joined where they overlap. */
const stretchesOf = (text: string, places: readonly number[], reach: number): readonly Span[] => {
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

/** Throws where the pattern is not RE2 syntax (look-around and back references are not). Compiles each pattern once. */
export const compilePattern = (pattern: string): Pattern => {
  const before = known.get(pattern);
  if (before !== undefined) return before;
  const tree = patternTree(pattern);
  const { options } = tree;
  const engine = engineFor(pattern, tree);
  const words = needsOf(options);
  const needs = words?.map((word): Need => ({ word, runs: runsOf(word) })) ?? null;
  const reach = reachOf(options) + 1;
  const blurredNeeds = words?.map(skeleton) ?? null;
  let forPictures: Engine | null = null;
  const blurredEngine = (): Engine => {
    const seen = blurred(options);
    return engineFor(seen, patternTree(seen));
  };
  const find = (text: Prepared): readonly Span[] => {
    const { folded, skeleton: bones } = text;
    if (bones !== null) {
      if (blurredNeeds !== null && !blurredNeeds.some((need) => bones.includes(need))) return [];
      forPictures ??= blurredEngine();
      return forPictures.spans(folded).slice(-MOST_SPANS);
    }
    if (needs === null) return engine.spans(folded).slice(-MOST_SPANS);
    const places = placesOf(text, needs);
    if (places.length === 0) return [];
    return stretchesOf(folded, places, reach)
      .flatMap(({ start, end }) =>
        engine.spans(folded.slice(start, end)).map((span) => ({ start: start + span.start, end: start + span.end })),
      )
      .slice(-MOST_SPANS);
  };
  const made: Pattern = { matches: engine.test, find };
  known.set(pattern, made);
  return made;
};
