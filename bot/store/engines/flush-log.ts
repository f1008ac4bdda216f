/**
 * Brings SQLite's write-ahead log to the disk while other work goes on. SQLite would do so itself within the statement, and all members
 * would wait for the disk with it.
 */
import { open } from 'node:fs/promises';

const flushFile = async (file: string): Promise<void> => {
  const log = await open(file, 'r+');
  try {
    await log.datasync();
  } finally {
    await log.close();
  }
};

/** Gives what resolves when all that was written before it was asked is on the disk; many who ask at once share one flush. */
export const makeFlush = (file: string): (() => Promise<void>) => {
  let running: Promise<void> | null = null;
  let next: Promise<void> | null = null;
  const start = async (): Promise<void> => {
    running = flushFile(file).finally(() => {
      running = null;
    });
    await running;
  };
  const startAfter = async (before: Promise<void>): Promise<void> => {
    // Whoever asked for it is told that it failed.
    await before.catch(() => undefined);
    next = null;
    await start();
  };
  return () => {
    // One under way may miss what was written since it began.
    if (running !== null) return (next ??= startAfter(running));
    return start();
  };
};
