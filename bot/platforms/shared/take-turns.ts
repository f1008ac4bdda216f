/**
 * Lets pieces of heavy work begin one at a time, timers and sockets having their turn between them, so that a crowd keeps nobody's
 * first response waiting; and members by turns, so that one who asks ten things at once waits for the others and not they for them.
 */
import { setImmediate as nextRound } from 'node:timers/promises';

/**
 * Resolves when the work of this member may begin: each member's in order, the members one after the other. What goes on with something
 * begun (a walk's next step) comes before what is asked anew: who is helped should not lose the thread, and steps come at people's own pace.
 */
export type TakeTurn = (memberId: string, goesOn?: boolean) => Promise<void>;

export interface Turns {
  readonly take: TakeTurn;
  /**
   * About how long what comes now would wait, in milliseconds, by how quickly the turns went lately; 0 where none waits, and
   * Infinity where so many wait that each more is only memory.
   */
  readonly waitMs: () => number;
  /** Whether there was a crowd lately: somebody waited at every moment for longer than a handful of members who ask at once can account for. */
  readonly isCrowded: () => boolean;
  /**
   * Whether more is asked than can be answered: there was a crowd lately that lasted for longer than a club that asks all at once, and
   * more than a handful wait now. Then as many must be turned away however long the queue is, and a short one serves the others best.
   */
  readonly isOverrun: () => boolean;
}

/** The share that the newest turn has in what a turn is taken to last. */
const NEWEST_SHARE = 0.2;
/** What it is taken to last before any was measured. */
const USUAL_TURN_MS = 5;
/** A machine that stood still for once says nothing of the turns to come. */
const LONGEST_TURN_MS = 250;

/** A crowd is one where somebody waits all the time for so long; it counts as one for a while after. */
const CROWD_FROM_MS = 400;
const CROWD_LASTS_MS = 10_000;
/** And one that is more than can be answered where it is so for this long; a queue shorter than a handful is never cut. */
const OVERRUN_FROM_MS = 1000;
const HANDFUL = 10;

/** Beyond this nobody is let in, however quick the turns: each holds an interaction and the way to its answer. */
const MOST_WAITING = 400;

/** A request on its way needs several rounds of the event loop; they are given before each piece of work. */
const ROUNDS = 4;

const nextTurn = async (): Promise<void> => {
  for (let round = 0; round < ROUNDS; round++) await nextRound();
};

/** @param ticksMs milliseconds by a clock that never jumps */
export const createTurns = (ticksMs: () => number = () => performance.now()): Turns => {
  /** Who waits, by member; the member served longest ago stands first. */
  const anew = new Map<string, (() => void)[]>();
  const goingOn = new Map<string, (() => void)[]>();
  let isServing = false;
  let waitingCount = 0;
  let turnMs = USUAL_TURN_MS;
  let crowdedUntilMs = Number.NEGATIVE_INFINITY;
  let overrunUntilMs = Number.NEGATIVE_INFINITY;

  const serve = async (): Promise<void> => {
    isServing = true;
    let beganMs: number | null = null;
    const waitingSinceMs = ticksMs();
    while (waitingCount > 0) {
      await nextTurn();
      const nowMs = ticksMs();
      // From one beginning to the next: the work itself, and all that had its turn between.
      if (beganMs !== null) turnMs += NEWEST_SHARE * (Math.min(nowMs - beganMs, LONGEST_TURN_MS) - turnMs);
      beganMs = nowMs;
      if (nowMs - waitingSinceMs > CROWD_FROM_MS) crowdedUntilMs = nowMs + CROWD_LASTS_MS;
      if (nowMs - waitingSinceMs > OVERRUN_FROM_MS) overrunUntilMs = nowMs + CROWD_LASTS_MS;
      const waiting = goingOn.size > 0 ? goingOn : anew;
      const [memberId, begins] = waiting.entries().next().value as [string, (() => void)[]];
      const [begin, ...later] = begins;
      waiting.delete(memberId);
      if (later.length > 0) waiting.set(memberId, later);
      waitingCount -= 1;
      begin?.();
    }
    isServing = false;
  };

  return {
    take: (memberId, goesOn = false) =>
      new Promise((resolve) => {
        const waiting = goesOn ? goingOn : anew;
        waiting.set(memberId, [...(waiting.get(memberId) ?? []), resolve]);
        waitingCount += 1;
        if (!isServing) void serve();
      }),
    waitMs: () => (waitingCount >= MOST_WAITING ? Infinity : waitingCount * turnMs),
    isCrowded: () => ticksMs() < crowdedUntilMs,
    isOverrun: () => waitingCount >= HANDFUL && ticksMs() < overrunUntilMs,
  };
};
