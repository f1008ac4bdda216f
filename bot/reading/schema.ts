/** The shape of the reading vocabulary's YAML entries, and what each field means. Ids of other rooms are held by their checker. */
import { z } from 'zod';

export const SYSTEMS = ['windows', 'macos', 'linux'] as const;
export type System = (typeof SYSTEMS)[number];

/** `direct`: the client program opens the port itself; `platform`: it talks through a driver platform. */
export const CLIENTS = ['direct', 'platform'] as const;
export type Client = (typeof CLIENTS)[number];

const line = (limit: number) => z.string().trim().min(1).max(limit);
const id = z
  .string()
  .max(36)
  .regex(/^[a-z][a-z0-9]*(-[a-z0-9]+)*$/u, 'an id is lower-case words joined by hyphens, starting with a letter');
const answerId = z
  .string()
  .max(24)
  .regex(/^[a-z0-9]+(-[a-z0-9]+)*$/u, 'an answer id is lower-case letters, digits and hyphens');

/** evidence.yaml: what a message of a system or program says. */
export const evidenceSchema = z.strictObject({
  id,
  /**
   * RE2 syntax; letter case is ignored. Platforms may fold pasted lines into one and put words around them, so `^` and `$`
   * have no use here, and a space in the pattern stands for any white space.
   */
  pattern: line(300),
  /** A text that must match. */
  example: line(500),
  /** A text that must not. */
  nonExample: line(500).optional(),
  answers: z.record(id, answerId).optional(),
  /** Fault id → how many times likelier the text makes it (below 1: less likely). */
  suggests: z.record(id, z.number().positive().max(1000)).optional(),
  /** The system this text can only come from. */
  system: z.enum(SYSTEMS).optional(),
  /** What it means, one line for the member. */
  says: line(200),
  /** A document with its address, or the words "common practice, no source". */
  source: line(300),
});
export type EvidenceEntry = z.infer<typeof evidenceSchema>;
