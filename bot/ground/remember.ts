/** A bounded memory of keys. */

/** Adds to a memory and forgets the oldest beyond `most`. */
export const remember = (memory: Set<string>, key: string, most: number): void => {
  memory.add(key);
  if (memory.size > most) {
    const oldest = memory.keys().next().value;
    if (oldest !== undefined) memory.delete(oldest);
  }
};
