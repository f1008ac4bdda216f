/**
 * Brings SQLite's write-ahead log to the disk while other work goes on. SQLite would do so itself within the statement, and all members
 * would wait for the disk with it.
 */
import { open, stat, type FileHandle } from 'node:fs/promises';

export interface LogFlush {
  /** Resolves when all that was written before it was asked is on the disk; many who ask at once share one flush. */
  readonly flush: () => Promise<void>;
  readonly close: () => Promise<void>;
}

interface OpenLog {
  readonly handle: FileHandle;
  readonly inode: number;
}

export const makeFlush = (file: string): LogFlush => {
  let log: OpenLog | null = null;
  const close = async (): Promise<void> => {
    const { handle } = log ?? {};
    log = null;
    await handle?.close();
  };
  /** Kept open from one flush to the next, as long as it is the one that has the name. */
  const opened = async (): Promise<FileHandle> => {
    const { ino } = await stat(file);
    if (log?.inode === ino) return log.handle;
    await close();
    const handle = await open(file, 'r+');
    log = { handle, inode: (await handle.stat()).ino };
    return handle;
  };
  const flushNow = async (): Promise<void> => (await opened()).datasync();

  let running: Promise<void> | null = null;
  let next: Promise<void> | null = null;
  const start = async (): Promise<void> => {
    running = flushNow().finally(() => {
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
  const flush = (): Promise<void> => {
    // One under way may miss what was written since it began.
    if (running !== null) return (next ??= startAfter(running));
    return start();
  };
  return { flush, close };
};
