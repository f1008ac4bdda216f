/**
 * Lets pieces of heavy work begin one at a time, timers and sockets having their turn between them, so that a crowd keeps nobody's
 * first response waiting; and members by turns, so that one who asks ten things at once waits for the others and not they for them.
 */
import { setImmediate as nextRound } from 'node:timers/promises';

/** Resolves when the work of this member may begin: each member's in order, the members one after the other. */
export type TakeTurn = (memberId: string) => Promise<void>;

/** A request on its way needs several rounds of the event loop; they are given before each piece of work. */
const ROUNDS = 4;

const nextTurn = async (): Promise<void> => {
  for (let round = 0; round < ROUNDS; round++) await nextRound();
};

export const createTurns = (): TakeTurn => {
  /** Who waits, by member; the member served longest ago stands first. */
  const waiting = new Map<string, (() => void)[]>();
  let isServing = false;

  const serve = async (): Promise<void> => {
    isServing = true;
    while (waiting.size > 0) {
      await nextTurn();
      const [memberId, begins] = waiting.entries().next().value as [string, (() => void)[]];
      const [begin, ...later] = begins;
      waiting.delete(memberId);
      if (later.length > 0) waiting.set(memberId, later);
      begin?.();
    }
    isServing = false;
  };

  return (memberId) =>
    new Promise((resolve) => {
      waiting.set(memberId, [...(waiting.get(memberId) ?? []), resolve]);
      if (!isServing) void serve();
    });
};
