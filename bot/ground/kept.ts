/** A bounded memory of what is dear to work out and always comes out the same. */

/** What `make` gives for the key, or gave for it lately. It must depend on the key alone; undefined is not kept. */
export type Kept<Key, Value> = (key: Key, make: () => Value) => Value;

/** Keeps `most` values and at times up to twice as many; those asked for lately outlive the others. */
export const createKept = <Key, Value>(most: number): Kept<Key, Value> => {
  let young = new Map<Key, Value>();
  let old = new Map<Key, Value>();
  return (key, make) => {
    const known = young.get(key);
    if (known !== undefined) return known;
    const value = old.get(key) ?? make();
    young.set(key, value);
    if (young.size >= most) {
      old = young;
      young = new Map();
    }
    return value;
  };
};
