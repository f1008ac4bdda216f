/** What entries of the knowledge files have in common, whichever room they are for. */
import * as z from 'zod';

export const line = (limit: number) => z.string().trim().min(1).max(limit);

// A choice runs `triage walk:ABCDEF answer:CHECK.ANSWER` and may have 90 characters at most.
export const id = z
  .string()
  .max(36)
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/u, 'an id is lower-case words joined by hyphens, starting with a letter');
export const answerId = z
  .string()
  .max(24)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/u, 'an answer id is lower-case letters, digits and hyphens');

/** Where the entry came from: a document with its address, or the words "common practice, no source". */
export const source = line(300);
