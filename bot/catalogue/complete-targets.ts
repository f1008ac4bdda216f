/** Suggestions as a member types a target's name: what begins with it first, best known first, within a few milliseconds. */
import { createKept } from '../ground/kept.js';
import { onceOf } from '../ground/once.js';
import type { Catalogue } from './catalogue.js';
import { constellationOf, greekName } from './designation.js';
import { cleanText, foldKey, foldWords, LONGEST_TEXT } from '../ground/fold-text.js';
import { namesBeginningNearly } from './nearest-names.js';
import type { Target, TargetCompletion } from './target.js';
import { targetLabel } from './wording.js';

/** Sun, Moon and planets come before everything; negative positions count into `catalogue.solarSystem`. */
interface CompletionTable {
  /** Folded keys in code-unit order, several a target. */
  readonly keys: readonly string[];
  readonly positions: Int32Array;
  /**
   * What a key is worth to one who types its beginning; lower comes first: a name's beginning before a later word's, the best known
   * first in each. A key typed whole is worth `WHOLE` less.
   */
  readonly values: Float64Array;
  /** The best known of all, for an empty text. */
  readonly best: readonly number[];
}

const WHOLE = 10_000;
const INSIDE = 100_000;

/** Every key a target completes under: its name and aliases whole, and later words of common names. */
const keysOf = (target: Target): { key: string; inside: boolean }[] => {
  const keys: { key: string; inside: boolean }[] = [];
  for (const name of [target.name, ...target.aliases]) {
    const words = foldWords(name).split(' ');
    keys.push({ key: words.join(''), inside: false });
    if (words.length > 1 && /^[a-z]+$/.test(words.at(-1) ?? '')) {
      for (let i = 1; i < words.length; i += 1) keys.push({ key: words.slice(i).join(''), inside: true });
    }
  }
  return keys;
};

const tableOf = onceOf((catalogue: Catalogue): CompletionTable => {
  const entries: { key: string; position: number; inside: boolean }[] = [];
  catalogue.solarSystem.forEach((target, i) => {
    for (const { key, inside } of keysOf(target)) entries.push({ key, position: -1 - i, inside });
  });
  for (let position = 0; position < catalogue.sweep.length; position += 1) {
    for (const { key, inside } of keysOf(catalogue.targetAt(position))) entries.push({ key, position, inside });
  }
  entries.sort((a, b) => Number(a.key > b.key) - Number(a.key < b.key));
  const { rank } = catalogue.index;
  const known = (position: number): number => (position < 0 ? -1000 - position : (rank[position] ?? 9999));
  const best = Array.from({ length: catalogue.sweep.length }, (_, i) => i)
    .filter((i) => catalogue.sweep.wellKnown[i] === 1)
    .sort((a, b) => (rank[a] ?? 0) - (rank[b] ?? 0));
  return {
    keys: entries.map((e) => e.key),
    positions: Int32Array.from(entries, (e) => e.position),
    values: Float64Array.from(entries, (e) => WHOLE + (e.inside ? INSIDE : 0) + known(e.position)),
    best: [...catalogue.solarSystem.map((_, i) => -1 - i), ...best].slice(0, 100),
  };
});

/** Beyond every letter and figure that a key is made of. */
const LAST_UNIT = '\uffff';

const lowerBound = (keys: readonly string[], key: string): number => {
  let low = 0;
  let high = keys.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((keys[middle] ?? '') < key) low = middle + 1;
    else high = middle;
  }
  return low;
};

/** Other ways to begin: "messier 3" as "m3", "alf lyr" as "alphalyr", "61 cygni" as "61cyg". */
const prefixes = (partial: string): readonly string[] => {
  const words = foldWords(partial).replace(/^the (?=.)/, '');
  const key = words.replaceAll(' ', '');
  const found = new Set([key]);
  const numbered = /^(messier|caldwell|collinder|melotte)(?=\d|$)0*(\d*)$/.exec(key);
  if (numbered)
    found.add(
      `${{ messier: 'm', caldwell: 'c', collinder: 'cr', melotte: 'mel' }[numbered[1] ?? ''] ?? ''}${numbered[2]}`,
    );
  const padded = /^([a-z]+)0+(\d+)$/.exec(key);
  if (padded) found.add(`${padded[1]}${padded[2]}`);
  const parts = words.split(' ');
  const greek = greekName(/^[a-z]+/.exec(parts[0] ?? '')?.[0] ?? '');
  if (greek !== undefined && parts.length > 1) {
    parts[0] = (parts[0] ?? '').replace(/^[a-z]+/, greek);
    found.add(parts.join(''));
  }
  for (let i = 1; i < parts.length; i += 1) {
    const constellation = constellationOf(parts.slice(i).join(' '));
    if (constellation !== undefined) found.add(parts.slice(0, i).join('') + foldKey(constellation));
  }
  return [...found].filter((k) => k !== '');
};

/** Keeps the few positions of least value out of many offered, each once: a beginning such as "ngc" is met by thousands. */
const bestOf = (
  most: number,
): { offer: (position: number, value: number) => void; inOrder: () => readonly number[] } => {
  const kept: { position: number; value: number }[] = [];
  return {
    offer: (position, value) => {
      if (kept.length >= most && value >= (kept.at(-1)?.value ?? -Infinity)) return;
      const same = kept.findIndex((k) => k.position === position);
      if (same >= 0) {
        if ((kept[same]?.value ?? 0) <= value) return;
        kept.splice(same, 1);
      }
      const at = kept.findIndex((k) => k.value > value);
      kept.splice(at < 0 ? kept.length : at, 0, { position, value });
      if (kept.length > most) kept.pop();
    },
    inOrder: () => kept.map((k) => k.position),
  };
};

const suggestion = (catalogue: Catalogue, position: number, typed: readonly string[]): TargetCompletion => {
  const target = position < 0 ? catalogue.solarSystem[-1 - position] : catalogue.targetAt(position);
  if (!target) throw new RangeError(`No target at ${position}.`);
  const matched = typed.some((t) => foldKey(target.name).startsWith(t))
    ? undefined
    : target.aliases.find((alias) => typed.some((t) => foldKey(alias).includes(t)));
  return {
    value: target.name,
    label: targetLabel(target, matched ?? target.aliases.find((alias) => !/^(?:NGC|IC|C|HIP) ?\d/.test(alias))),
  };
};

/** The positions under keys that begin with one of `typed`, best first. */
const beginningWith = (catalogue: Catalogue, typed: readonly string[], most: number): readonly number[] => {
  const { keys, positions, values } = tableOf(catalogue);
  const best = bestOf(most);
  for (const prefix of typed) {
    const end = lowerBound(keys, `${prefix}${LAST_UNIT}`);
    for (let i = lowerBound(keys, prefix); i < end; i += 1) {
      const whole = keys[i]?.length === prefix.length ? WHOLE : 0;
      best.offer(positions[i] ?? 0, (values[i] ?? 0) - whole);
    }
  }
  return best.inOrder();
};

/** Many who type a name begin alike, and each letter is asked for. Some 4 kB each. */
const LATELY_TYPED = 100;
const latelyOf = onceOf(() => ({
  beginning: createKept<string, readonly TargetCompletion[]>(LATELY_TYPED),
  near: createKept<string, readonly TargetCompletion[]>(LATELY_TYPED),
}));

/** Fewer letters than these are near to too many names. */
const LEAST_FOR_NEAR = 4;

/**
 * Suggestions for a partly typed name, best first; an empty text suggests what is best known. Never throws.
 * Order: the whole name, then names that begin so, then names with a later word that begins so, then near spellings;
 * within each the best known (Sun, Moon, planets, Messier, named stars, brightness) first.
 */
export const completeTargets = (catalogue: Catalogue, partial: string, limit = 25): readonly TargetCompletion[] => {
  const most = Math.max(0, Math.min(limit, 100));
  if (partial.length > LONGEST_TEXT) return [];
  const typed = prefixes(cleanText(partial));
  if (typed.length === 0)
    return tableOf(catalogue)
      .best.slice(0, most)
      .map((position) => suggestion(catalogue, position, []));
  const moving = catalogue.moving?.complete(cleanText(partial), most) ?? [];
  const { beginning, near } = latelyOf(catalogue);
  const key = `${most} ${typed.join(' ')}`;
  const suggested = (order: readonly number[]): readonly TargetCompletion[] =>
    order.map((position) => suggestion(catalogue, position, typed));
  const found = beginning(key, () => suggested(beginningWith(catalogue, typed, most)));
  const [first = ''] = typed;
  const isStranger = found.length === 0 && moving.length === 0 && first.length >= LEAST_FOR_NEAR;
  const fixed = isStranger
    ? near(key, () => suggested(namesBeginningNearly(catalogue, first, Math.min(most, 5))))
    : found;
  return [...fixed, ...moving].slice(0, most);
};

/** Builds the table now, so that the first member to type does not wait for it. */
export const warmCompletion = (catalogue: Catalogue): void => {
  tableOf(catalogue);
};
