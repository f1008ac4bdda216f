/**
 * A table looked up by words that members type: a Map, since a record would answer "constructor" and "toString" too.
 * @param entries keys as they are looked up, mostly in lower case
 */
export const tableOf = <T>(entries: Readonly<Record<string, T>>): ReadonlyMap<string, T> =>
  new Map(Object.entries(entries));
