/** Seeded chance, so that every walk can be played again. */
export interface Random {
  /** In [0, 1). */
  readonly next: () => number;
  readonly chance: (probability: number) => boolean;
  readonly pick: <T>(from: readonly T[]) => T;
}

/** mulberry32 over an FNV-1a hash of the seed's text. */
export const randomFrom = (seed: string): Random => {
  let state = 2166136261;
  for (const letter of seed) state = Math.imul(state ^ (letter.codePointAt(0) ?? 0), 16777619);
  const next = (): number => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  return {
    next,
    chance: (probability) => next() < probability,
    pick: (from) => {
      const found = from[Math.floor(next() * from.length)];
      if (found === undefined) throw new Error('nothing to pick from');
      return found;
    },
  };
};
