/** Bounds how often one member is answered: a bucket of questions that fills with time; memory stays bounded. */
import type { UtcMs } from '../../sky/types.js';
import { putNewest } from '../../ground/remember.js';

export interface BucketSize {
  /** Questions that may come at once. */
  readonly burst: number;
  /** Questions a second, lasting. */
  readonly perSecond: number;
}

export interface TooMany {
  readonly problem: 'too-many';
  readonly waitSeconds: number;
  /** Not the first refusal in a row, so it may be met with silence. */
  readonly again: boolean;
}

export interface RateLimit {
  /** Null: one was taken, so answer. */
  readonly take: (key: string, nowUtcMs: UtcMs) => TooMany | null;
}

interface Bucket {
  stock: number;
  atUtcMs: UtcMs;
  refused: boolean;
}

const MOST_KEYS = 20_000;

/** Keys unused longest are forgotten first. */
export const createRateLimit = ({ burst, perSecond }: BucketSize): RateLimit => {
  const buckets = new Map<string, Bucket>();
  return {
    take: (key, nowUtcMs) => {
      const bucket = buckets.get(key) ?? { stock: burst, atUtcMs: nowUtcMs, refused: false };
      bucket.stock = Math.min(burst, bucket.stock + (Math.max(0, nowUtcMs - bucket.atUtcMs) / 1000) * perSecond);
      bucket.atUtcMs = Math.max(bucket.atUtcMs, nowUtcMs);
      putNewest(buckets, key, bucket, MOST_KEYS);
      const again = bucket.refused;
      bucket.refused = bucket.stock < 1;
      if (bucket.refused) {
        return { problem: 'too-many', waitSeconds: Math.ceil((1 - bucket.stock) / perSecond), again };
      }
      bucket.stock -= 1;
      return null;
    },
  };
};
