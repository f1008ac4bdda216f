/** Sayings made of the `words` that stand beside a way, a fault or an answer: how members call the thing, in plain words. */
import type { SayingEntry, VocabularyEntries } from '../../reading/index.js';
import type { CheckEntry, FaultEntry, PathEntry } from './schema.js';

interface Worded {
  readonly paths: readonly PathEntry[];
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckEntry[];
}

/** Whose words a saying was made of. */
export interface WordsOf {
  readonly kind: keyof Worded;
  readonly id: string;
}

export interface OwnWords extends Pick<VocabularyEntries, 'sayings' | 'families'> {
  /** Saying's id → whose words it holds. */
  readonly of: ReadonlyMap<string, WordsOf>;
}

/** Surer than what is said of ways in general: the club's name for a mount decides. */
const NAMES_A_WAY = 0.98;
/** How many times likelier a fault is of which a member uses the club's words. */
const SUGGESTS = 6;

const ARTICLES = new Set(['the', 'a', 'an', 'our', 'my', 'your', 'this', 'that']);
const HAS_SIGNS = /[<>|~?]|\.\./u;

/** Plain words as a phrase: their usual endings at the last, and nothing that is stepped over before any of them. */
const phraseOf = (words: string): string => {
  const hasSigns = HAS_SIGNS.test(words);
  const parts = words
    .toLowerCase()
    .split(hasSigns ? /\s+/u : /[^\p{L}\d°%]+/u)
    .filter((part) => part !== '' && !ARTICLES.has(part));
  const last = parts.at(-1) ?? '';
  return [...parts.slice(0, -1), !hasSigns && /^[a-z]{3,}$/u.test(last) ? `${last}~` : last].join(' ');
};

const sayingOf = (id: string, words: readonly string[], told: Partial<SayingEntry>, source: string): SayingEntry => ({
  id,
  phrases: words.map(phraseOf),
  examples: words.filter((one) => !HAS_SIGNS.test(one)),
  asked: true,
  habit: true,
  ...told,
  source,
});

/** Words that several ways have leave those open: a family of their own. */
const waysByWord = (
  paths: readonly PathEntry[],
): readonly (readonly [ways: readonly PathEntry[], words: readonly string[]])[] => {
  const waysOf = new Map<string, { readonly words: string; readonly ways: PathEntry[] }>();
  for (const path of paths)
    for (const words of path.words ?? []) {
      const own = waysOf.get(phraseOf(words)) ?? { words, ways: [] };
      own.ways.push(path);
      waysOf.set(phraseOf(words), own);
    }
  const grouped = new Map<string, readonly [readonly PathEntry[], string[]]>();
  for (const { words, ways } of waysOf.values()) {
    const key = ways.map(({ id }) => id).join(' ');
    const group = grouped.get(key) ?? [ways, []];
    group[1].push(words);
    grouped.set(key, group);
  }
  return [...grouped.values()];
};

const NO_SOURCE = "the club's own words";

export const ownWords = ({ paths, faults, checks }: Worded): OwnWords => {
  const sayings: SayingEntry[] = [];
  const families: VocabularyEntries['families'][number][] = [];
  const of = new Map<string, WordsOf>();
  const add = (owner: WordsOf, saying: SayingEntry): void => {
    sayings.push(saying);
    of.set(saying.id, owner);
  };
  for (const [at, [ways, words]] of waysByWord(paths).entries()) {
    const [first] = ways;
    if (first === undefined) continue;
    const id = `${first.id}.words${at === 0 ? '' : at}`;
    const label = words[0] ?? '';
    if (ways.length > 1) families.push({ id, label, paths: ways.map((way) => way.id) });
    const told = ways.length > 1 ? { path: id, label } : { path: first.id };
    add(
      { kind: 'paths', id: first.id },
      sayingOf(id, words, { ...told, sureness: NAMES_A_WAY }, first.source ?? NO_SOURCE),
    );
  }
  for (const { id, words, source } of faults)
    if (words !== undefined)
      add(
        { kind: 'faults', id },
        sayingOf(`${id}.words`, words, { suggests: { [id]: SUGGESTS }, past: true, others: true }, source),
      );
  for (const { id, answers, source } of checks)
    for (const { id: answer, words, label } of answers)
      if (words !== undefined)
        add(
          { kind: 'checks', id },
          sayingOf(`${id}.words.${answer}`, words, { answers: { [id]: answer }, label: words[0] ?? label }, source),
        );
  return { sayings, families, of };
};
