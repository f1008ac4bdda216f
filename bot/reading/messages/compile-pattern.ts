/**
 * Patterns run on text from strangers. One that can be tried in few ways from any place runs on the platform's own engine,
 * only around the words it needs; any other runs on RE2's linear-time engine.
 */
import { RE2JS } from 're2js';
import { blurred, needsOf, reachOf, skeleton } from './pattern-parts.js';
import { patternTree, writeTree, type PatternTree } from './pattern-tree.js';
import { waysOf } from './pattern-ways.js';
import type { Places } from './word-places.js';

export interface Span {
  readonly start: number;
  readonly end: number;
}

/** A text made ready to be matched; `folded` has single spaces for all white space. */
export interface Prepared {
  readonly folded: string;
  readonly lower: string;
  /** In `lower`. */
  readonly places: Places;
  /** For texts read from a picture: look-alike letters made equal. Null: a typed or pasted text. */
  readonly skeleton: string | null;
}

export interface Pattern {
  /** A text without any of these, in lower case, cannot match; empty: not known. */
  readonly needs: readonly string[];
  readonly matches: (text: string) => boolean;
  /** Where it matches, in order, the last MOST_SPANS of them; empty where it does not. */
  readonly find: (text: Prepared) => readonly Span[];
}

const NOWHERE: readonly Span[] = [];

/** Of what is found in another way: it matches nothing. */
export const NO_PATTERN: Pattern = { needs: [], matches: () => false, find: () => NOWHERE };

const MOST_SPANS = 40;
/** What a pattern may cost from one place of a text, in ways of trying it, to run on the platform's own engine. */
export const MOST_WAYS = 20_000;

/** White space folded to single spaces, as platforms may already have done; patterns and texts are compared in this form. */
export const foldText = (text: string): string => text.replace(/\s+/gu, ' ').trim();

/** A letter whose small form has another length would put every place after it wrong, and stays as it is. */
const lowerCase = (text: string): string => {
  const lower = text.toLowerCase();
  if (lower.length === text.length) return lower;
  return Array.from(text, (char) => (char.toLowerCase().length === char.length ? char.toLowerCase() : char)).join('');
};

export const prepare = (folded: string, placesIn: (text: string) => Places, picture = false): Prepared => {
  const lower = lowerCase(folded);
  return { folded, lower, places: placesIn(lower), skeleton: picture ? skeleton(folded) : null };
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

/** The last places of any of the words, so many of each at most. */
const placesOf = ({ places }: Prepared, needs: readonly string[], most: number): readonly number[] => {
  const all: number[] = [];
  for (const need of needs) {
    const own = places(need);
    for (let i = Math.max(0, own.length - most); i < own.length; i++) all.push(own[i] ?? 0);
  }
  return all.length < 2 ? all : all.sort((a, b) => a - b);
};

/**
 * The stretches of a folded text around the places where one of the words stands, cut at spaces and joined where they overlap.
 * @param reach more characters than what is looked for can have
 * @param most of the places of a word, the last so many are looked at
 */
export const stretchesAround = (
  prepared: Prepared,
  needs: readonly string[],
  reach: number,
  most = Infinity,
): readonly Span[] => {
  const { folded: text } = prepared;
  const places = placesOf(prepared, needs, most);
  if (places.length === 0) return NOWHERE;
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
  const needs = needsOf(options);
  const reach = reachOf(options) + 1;
  const blurredNeeds = needs?.map(skeleton) ?? null;
  let forPictures: Engine | null = null;
  const blurredEngine = (): Engine => {
    const seen = blurred(options);
    return engineFor(seen, patternTree(seen));
  };
  const find = (text: Prepared): readonly Span[] => {
    const { folded, skeleton: bones } = text;
    if (bones !== null) {
      if (blurredNeeds !== null && !blurredNeeds.some((need) => bones.includes(need))) return NOWHERE;
      forPictures ??= blurredEngine();
      return forPictures.spans(folded).slice(-MOST_SPANS);
    }
    if (needs === null) return engine.spans(folded).slice(-MOST_SPANS);
    const stretches = stretchesAround(text, needs, reach, MOST_SPANS);
    if (stretches.length === 0) return NOWHERE;
    return stretches
      .flatMap(({ start, end }) =>
        engine.spans(folded.slice(start, end)).map((span) => ({ start: start + span.start, end: start + span.end })),
      )
      .slice(-MOST_SPANS);
  };
  const made: Pattern = { needs: needs ?? [], matches: engine.test, find };
  known.set(pattern, made);
  return made;
};
