/**
 * What each member asked of the sky last, by where they asked it, so that "and tomorrow?" has something to follow. In this process's memory
 * alone, bounded, for some minutes, and never told to anybody but the one who asked, in the same place.
 */
import { MS_PER_HOUR, MS_PER_MINUTE } from '../../../ground/durations.js';
import { onceOf } from '../../../ground/once.js';
import type { UtcMs } from '../../../sky/types.js';
import type { Store } from '../../../store/store.js';
import type { Asker } from '../../core/command.js';
import { putNewest } from '../../../ground/remember.js';

/** As long as a talk goes on by itself, and one evening's telescope is the same; common practice, no source. */
const LASTS_MS = {
  /** A question of the sky, and the one before it of another target. */
  line: 10 * MS_PER_MINUTE,
  earlier: 10 * MS_PER_MINUTE,
  /** A reminder, to be changed. */
  reminder: 10 * MS_PER_MINUTE,
  /** A question of an eyepiece's numbers. */
  figures: 10 * MS_PER_MINUTE,
  /** A camera's and a telescope's numbers, told one after the other. */
  optics: 10 * MS_PER_MINUTE,
  /** What one looks with, as it was asked. */
  kit: 60 * MS_PER_MINUTE,
  /** That of the Sun was warned. */
  sun: 10 * MS_PER_MINUTE,
  /** What was told to be one's own. */
  scope: 8 * MS_PER_HOUR,
  sky: 8 * MS_PER_HOUR,
} as const;
export type Kept = keyof typeof LASTS_MS;
const MOST_KEPT = 1000;

interface LastAsked {
  readonly memberId: string;
  readonly line: string;
  readonly atUtcMs: UtcMs;
}

type Where = Pick<Asker, 'memberId' | 'clubId' | 'channelId'>;

/** By the part of the store that keeps walks, as each request has a store of its own around it. */
const memoryIn = onceOf((_: Store['walks']) => new Map<string, LastAsked>());

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
  if (line === null) memory.delete(key);
  else putNewest(memory, key, { memberId: asker.memberId, line, atUtcMs: nowUtcMs }, MOST_KEPT);
};

/** The line asked last, while it is fresh. */
export const lastAsked = ({ walks }: Store, asker: Where, nowUtcMs: UtcMs, kept: Kept = 'line'): string | null => {
  const found = memoryIn(walks).get(keyOf(asker, kept));
  return found === undefined || nowUtcMs - found.atUtcMs > LASTS_MS[kept] || nowUtcMs < found.atUtcMs
    ? null
    : found.line;
};

/** Whether of two that are fresh the one was asked last. */
export const isNewer = (store: Store, asker: Where, nowUtcMs: UtcMs, one: Kept, other: Kept): boolean => {
  if (lastAsked(store, asker, nowUtcMs, one) === null) return false;
  if (lastAsked(store, asker, nowUtcMs, other) === null) return true;
  const memory = memoryIn(store.walks);
  const timeOf = (kept: Kept): UtcMs => memory.get(keyOf(asker, kept))?.atUtcMs ?? 0;
  return timeOf(one) >= timeOf(other);
};

interface LastPlace {
  readonly memberId: string;
  readonly siteText: string;
  readonly atUtcMs: UtcMs;
}

const placesIn = onceOf((_: Store['walks']) => new Map<string, LastPlace>());

/** From where a question was asked, as it was named: what is asked next without a place is meant for there, where no other is known. */
export const keepLastPlace = ({ walks }: Store, asker: Where, siteText: string, nowUtcMs: UtcMs): void => {
  const place = { memberId: asker.memberId, siteText, atUtcMs: nowUtcMs };
  putNewest(placesIn(walks), keyOf(asker, 'line'), place, MOST_KEPT);
};

/** The place named last, while it is fresh; to be asked for it again keeps it so. */
export const lastPlace = (store: Store, asker: Where, nowUtcMs: UtcMs): string | null => {
  const found = placesIn(store.walks).get(keyOf(asker, 'line'));
  if (found === undefined || nowUtcMs - found.atUtcMs > LASTS_MS.line || nowUtcMs < found.atUtcMs) return null;
  keepLastPlace(store, asker, found.siteText, nowUtcMs);
  return found.siteText;
};

/** A talk is over after so long; common practice, no source. */
const TALK_MS = 12 * MS_PER_HOUR;

const hintsIn = onceOf(
  (_: Store['walks']) => new Map<string, { readonly memberId: string; readonly atUtcMs: UtcMs }>(),
);

/** Whether the asker is still to be told here how to keep a place: once in a talk, and in all of one answer. */
export const hintDue = ({ walks }: Store, asker: Where, nowUtcMs: UtcMs): boolean => {
  const memory = hintsIn(walks);
  const key = keyOf(asker, 'line');
  const told = memory.get(key)?.atUtcMs;
  if (told !== undefined && told !== nowUtcMs && nowUtcMs - told < TALK_MS) return false;
  putNewest(memory, key, { memberId: asker.memberId, atUtcMs: nowUtcMs }, MOST_KEPT);
  return true;
};

/** Wherever they asked. */
export const forgetLastAsked = ({ walks }: Store, memberId: string): void => {
  for (const memory of [memoryIn(walks), placesIn(walks), hintsIn(walks)])
    for (const [key, kept] of memory) if (kept.memberId === memberId) memory.delete(key);
};
