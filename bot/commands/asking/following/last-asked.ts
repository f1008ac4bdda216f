/**
 * What each member asked of the sky last, by where they asked it, so that "and tomorrow?" has something to follow. In this process's memory
 * alone, bounded, for some minutes, and never told to anybody but the one who asked, in the same place.
 */
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import { onceOf } from '../../../ground/once.js';
import type { UtcMs } from '../../../sky/types.js';
import type { Store } from '../../../store/store.js';
import type { Asker } from '../../core/command.js';

/** As long as a talk goes on by itself, and one evening's telescope is the same; common practice, no source. */
const LASTS_MS = { line: 10 * MS_PER_MINUTE, figures: 10 * MS_PER_MINUTE, kit: 60 * MS_PER_MINUTE } as const;
const MOST_KEPT = 1000;

interface LastAsked {
  readonly memberId: string;
  readonly line: string;
  readonly atUtcMs: UtcMs;
}

type Where = Pick<Asker, 'memberId' | 'clubId' | 'channelId'>;

/** By the part of the store that keeps walks, as each request has a store of its own around it. */
const memoryIn = onceOf((_: Store['walks']) => new Map<string, LastAsked>());

/** A question of the sky, one of an eyepiece's numbers, or what one looks with. */
export type Kept = 'line' | 'figures' | 'kit';

const keyOf = ({ memberId, clubId, channelId }: Where, kept: Kept): string =>
  JSON.stringify([memberId, clubId, channelId, kept]);

/** Null forgets: the talk has gone on to something else. */
export const keepLastAsked = (
  { walks }: Store,
  asker: Where,
  line: string | null,
  nowUtcMs: UtcMs,
  kept: Kept = 'line',
): void => {
  const memory = memoryIn(walks);
  const key = keyOf(asker, kept);
  // The newest stand last.
  memory.delete(key);
  if (line !== null) memory.set(key, { memberId: asker.memberId, line, atUtcMs: nowUtcMs });
  if (memory.size > MOST_KEPT) memory.delete(memory.keys().next().value ?? '');
};

/** The line asked last, while it is fresh. */
export const lastAsked = ({ walks }: Store, asker: Where, nowUtcMs: UtcMs, kept: Kept = 'line'): string | null => {
  const found = memoryIn(walks).get(keyOf(asker, kept));
  return found === undefined || nowUtcMs - found.atUtcMs > LASTS_MS[kept] || nowUtcMs < found.atUtcMs
    ? null
    : found.line;
};

/** Wherever they asked. */
export const forgetLastAsked = ({ walks }: Store, memberId: string): void => {
  const memory = memoryIn(walks);
  for (const [key, kept] of memory) if (kept.memberId === memberId) memory.delete(key);
};
