/** A file or picture that came with a member's question; the platform knows how to fetch it, nothing else touches its address. */
import type { Problem } from './problem.js';

/** No platform fetches more than this of a file: what a picture may have, the largest thing that is read. */
export const MOST_FILE_BYTES = 10 * 1024 * 1024;

export interface MemberFile {
  /** As the member's device named it; never trusted, never a path to open. */
  readonly name: string;
  /** What the platform says it has, where it says so. */
  readonly sizeBytes: number | null;
  /** At most MOST_FILE_BYTES. Never rejects: what could not be fetched is a Problem that says what would be right. */
  readonly load: () => Promise<Uint8Array | Problem>;
}

/** Text typed in a file's place is no file: only a platform makes one. */
export const isMemberFile = (value: unknown): value is MemberFile =>
  typeof value === 'object' && value !== null && 'load' in value && typeof value.load === 'function';
