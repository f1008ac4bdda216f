/** How a club's entry is laid over the shipped one of its id. */

type Value = Readonly<Record<string, unknown>>;

export interface LaidOver {
  readonly value: Record<string, unknown>;
  /** What `without` names that the entry does not have, by its place in that list. */
  readonly notThere: readonly { readonly at: number; readonly name: string }[];
}

const isPlainObject = (value: unknown): value is Value =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Fields made of named parts: the club's parts replace those of their name, the others stay. */
const OF_PARTS = [
  'answers',
  'suggests',
  'verify',
  'remedy',
  'byStage',
  'usual',
  'under',
  'leans',
  'adds',
  'texts',
  'said',
] as const;

/** Lists of words, names and answers, in an entry or in a part of it: the club's join those that ship. A remedy's steps are a text: they replace. */
const LISTS: ReadonlySet<string> = new Set([
  'words',
  'typed',
  'phrases',
  'examples',
  'nonExamples',
  'paths',
  'answers',
  'cautions',
  'sameAs',
]);
/** Fields whose every part is such a list. */
const OF_LISTS: ReadonlySet<string> = new Set(['texts', 'said']);

const nameOf = (item: unknown): unknown => (isPlainObject(item) ? item['id'] : item);

const joined = (below: readonly unknown[], above: readonly unknown[]): readonly unknown[] => {
  const changed = below.map((item) => {
    const over = isPlainObject(item) ? above.find((other) => nameOf(other) === nameOf(item)) : undefined;
    return isPlainObject(item) && isPlainObject(over) ? { ...item, ...over } : item;
  });
  const known = new Set(below.map(nameOf));
  return [...changed, ...above.filter((item) => !known.has(nameOf(item)))];
};

const fieldOver = (key: string, below: unknown, above: unknown, isList: boolean): unknown => {
  if (isList && Array.isArray(below) && Array.isArray(above)) return joined(below, above);
  const isOfParts = OF_PARTS.some((known) => known === key) && isPlainObject(below) && isPlainObject(above);
  if (!isOfParts) return above;
  return {
    ...below,
    ...Object.fromEntries(
      Object.entries(above).map(([part, value]) => [
        part,
        fieldOver('', below[part], value, LISTS.has(part) || OF_LISTS.has(key)),
      ]),
    ),
  };
};

/** A value without these names in any of its lists, and which of them it had. */
const withoutNames = (value: unknown, names: ReadonlySet<unknown>, met: Set<unknown>): unknown => {
  if (Array.isArray(value))
    return value.filter((item) => {
      const name = nameOf(item);
      if (names.has(name)) met.add(name);
      return !names.has(name);
    });
  if (!isPlainObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, withoutNames(part, names, met)]));
};

/**
 * Fields that the club gives replace; of fields made of named parts (`answers`, `remedy`) part by part; words and names
 * join the lists that ship, and `without` takes some out. All else stays.
 */
export const layOver = (base: Value, { without, ...over }: Value): LaidOver => {
  const value = Object.fromEntries([
    ...Object.entries(base),
    ...Object.entries(over).map(([key, above]) => [key, fieldOver(key, base[key], above, LISTS.has(key))] as const),
  ]);
  if (!Array.isArray(without)) return { value: without === undefined ? value : { ...value, without }, notThere: [] };
  const names: readonly unknown[] = without;
  const met = new Set<unknown>();
  const left = withoutNames(value, new Set(names), met) as Record<string, unknown>;
  const notThere = names.flatMap((name, at) => (met.has(name) ? [] : [{ at, name: String(name) }]));
  return { value: left, notThere };
};
