/** Lets pieces of heavy work begin one at a time, timers and sockets having their turn between them, so that a crowd keeps nobody's first response waiting. */
import { setImmediate as nextRound } from 'node:timers/promises';

export interface Turns {
  /** Resolves when the caller may begin, first come first served. */
  readonly take: () => Promise<void>;
  /** How many are waiting to begin. */
  readonly waiting: () => number;
}

/** A request on its way needs several rounds of the event loop; they are given before each piece of work. */
const ROUNDS = 4;

export const createTurns = (): Turns => {
  let last: Promise<void> = Promise.resolve();
  let waiting = 0;
  const nextTurn = async (): Promise<void> => {
    for (let round = 0; round < ROUNDS; round++) await nextRound();
    waiting--;
  };
  return {
    take: () => {
      waiting++;
      return (last = last.then(nextTurn));
    },
    waiting: () => waiting,
  };
};
