/** Lets pieces of heavy work begin one at a time, timers and sockets having their turn between them, so that a crowd keeps nobody's first response waiting. */
import { setImmediate as nextRound } from 'node:timers/promises';

/** Resolves when the caller may begin, first come first served. */
export type TakeTurn = () => Promise<void>;

/** A request on its way needs several rounds of the event loop; they are given before each piece of work. */
const ROUNDS = 4;

const nextTurn = async (): Promise<void> => {
  for (let round = 0; round < ROUNDS; round++) await nextRound();
};

export const createTurns = (): TakeTurn => {
  let last: Promise<void> = Promise.resolve();
  return () => (last = last.then(nextTurn));
};
