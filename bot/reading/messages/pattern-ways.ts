/**
 * In how many ways a backtracking engine can try a pattern from one place of a text, at most. Where that is few, the
 * platform's own engine takes bounded time whatever the text; where it is not, the linear-time engine has to do it.
 */
import type { Item, PatternTree, Sequence, Sign } from './pattern-tree.js';

/** More than this is as good as without end. */
const MANY = 1e9;

const PRINTABLE = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));

const known = new Map<string, ReadonlySet<string>>();

/** Printable ASCII that the sign can be; "*" besides for whatever lies outside it. */
const charactersOf = ({ raw, literal }: Sign): ReadonlySet<string> => {
  const before = known.get(raw);
  if (before !== undefined) return before;
  const fits = (char: string): boolean =>
    literal === null ? new RegExp(`^(?:${raw})$`, 'iu').test(char) : char.toLowerCase() === literal.toLowerCase();
  const made = new Set(PRINTABLE.filter(fits));
  if (literal === null ? fits('é') || fits('中') : !/[ -~]/u.test(literal)) made.add('*');
  known.set(raw, made);
  return made;
};

/** What can come first in the items from `at` on; null: anything. */
const firstsOf = (items: Sequence, at: number): ReadonlySet<string> | null => {
  const item = items[at];
  if (item === undefined) return null;
  const { node, repeat } = item;
  if (node.kind === 'sign' && node.place) return firstsOf(items, at + 1);
  const own = node.kind === 'sign' ? [charactersOf(node)] : node.options.map((option) => firstsOf(option, 0));
  const later = repeat.least === 0 ? [firstsOf(items, at + 1)] : [];
  const all = new Set<string>();
  for (const some of [...own, ...later]) {
    if (some === null) return null;
    for (const char of some) all.add(char);
  }
  return all;
};

const areApart = (a: ReadonlySet<string>, b: ReadonlySet<string> | null): boolean =>
  b !== null && ![...a].some((char) => b.has(char));

const waysOfItem = ({ node, repeat: { least, most } }: Item, next: ReadonlySet<string> | null): number => {
  if (node.kind === 'sign') return node.place || areApart(charactersOf(node), next) ? 1 : most - least + 1;
  const once = waysOfOptions(node.options);
  if (least === most) return once ** most;
  let sum = 0;
  for (let times = least; times <= most && sum < MANY; times++) sum += once ** times;
  return sum;
};

const waysOfSequence = (items: Sequence): number =>
  items.reduce((ways, item, at) => Math.min(MANY, ways * waysOfItem(item, firstsOf(items, at + 1))), 1);

const waysOfOptions = (options: readonly Sequence[]): number =>
  Math.min(
    MANY,
    options.reduce((sum, items) => sum + waysOfSequence(items), 0),
  );

export const waysOf = ({ options, plain }: PatternTree): number => (plain ? waysOfOptions(options) : MANY);
