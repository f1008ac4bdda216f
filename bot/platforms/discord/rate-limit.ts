/** Bounds how often one member, and one channel, is answered: a bucket each that fills with time; memory stays bounded. */
import type { UtcMs } from '../../sky/types.js';

export interface BucketSize {
  /** Questions that may come at once. */
  readonly burst: number;
  /** Questions a second, lasting. */
  readonly perSecond: number;
}

export interface RateLimit {
  /** Takes one; or says after how many seconds one may be taken. */
  readonly take: (key: string, nowUtcMs: UtcMs) => { readonly ok: true } | { readonly ok: false; readonly waitSeconds: number };
}

const MOST_KEYS = 20_000;

export const createRateLimit = ({ burst, perSecond }: BucketSize): RateLimit => {
  const buckets = new Map<string, { level: number; atMs: UtcMs }>();
  return {
    take: (key, nowUtcMs) => {
      const bucket = buckets.get(key) ?? { level: burst, atMs: nowUtcMs };
      const level = Math.min(burst, bucket.level + Math.max(0, nowUtcMs - bucket.atMs) / 1000 * perSecond);
      // Re-inserting keeps the map in order of use, so the first key is the one unused longest.
      buckets.delete(key);
      if (level < 1) {
        buckets.set(key, { level, atMs: nowUtcMs });
        return { ok: false, waitSeconds: Math.ceil((1 - level) / perSecond) };
      }
      buckets.set(key, { level: level - 1, atMs: nowUtcMs });
      if (buckets.size > MOST_KEYS) {
        const oldest = buckets.keys().next().value;
        if (oldest !== undefined) buckets.delete(oldest);
      }
      return { ok: true };
    },
  };
};
