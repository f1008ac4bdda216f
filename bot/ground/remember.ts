/** Bounded memories, in the order in which things came. */

const withoutOldest = (memory: Map<string, unknown> | Set<string>, most: number): void => {
  if (memory.size <= most) return;
  const oldest = memory.keys().next().value;
  if (oldest !== undefined) memory.delete(oldest);
};

/** Adds to a memory and forgets the oldest beyond `most`. */
export const remember = (memory: Set<string>, key: string, most: number): void => {
  memory.add(key);
  withoutOldest(memory, most);
};

/** Puts the value last, as the newest, and forgets the oldest beyond `most`. */
export const putNewest = <Value>(memory: Map<string, Value>, key: string, value: Value, most: number): void => {
  memory.delete(key);
  memory.set(key, value);
  withoutOldest(memory, most);
};
