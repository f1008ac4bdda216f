/** The record of a walk: what was said, in order, as plain JSON that survives a restart. Beliefs are computed from it each time. */
import { z } from 'zod';
import { CLIENTS, SYSTEMS } from '../model/schema.js';

/** `member`: whose mount it is; `helper`: who started the walk for them. */
const speaker = z.enum(['member', 'helper']);
const short = z.string().max(80);

export const UNSURE = 'unsure';
export const TRY_OUTCOMES = ['works', 'same', 'changed', 'could-not'] as const;
/** `changed`: something is different, still not right; `could-not`: the remedy could not be done. */
export type TryOutcome = (typeof TRY_OUTCOMES)[number];

const event = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('path'), value: short.nullable(), by: speaker.nullable() }),
  z.object({ kind: z.literal('system'), value: z.enum(SYSTEMS).nullable(), by: speaker.nullable() }),
  z.object({ kind: z.literal('client'), value: z.enum(CLIENTS).nullable(), by: speaker.nullable() }),
  /** Pasted text or a symptom in words: which patterns it matched. The text itself is not kept. */
  z.object({ kind: z.literal('text'), evidence: z.array(short).max(60), by: speaker }),
  z.object({ kind: z.literal('answer'), check: short, answer: short, by: speaker }),
  z.object({ kind: z.literal('try'), fault: short, outcome: z.enum(TRY_OUTCOMES), by: speaker }),
  /** What the command that took over found. */
  z.object({ kind: z.literal('found'), cause: short, by: speaker }),
]);
export type WalkEvent = z.infer<typeof event>;
export type Speaker = z.infer<typeof speaker>;

export const walkStateSchema = z.object({
  version: z.literal(1),
  /** Display names, for "who said what". */
  names: z.object({ member: short.nullable(), helper: short.nullable() }),
  events: z.array(event).max(400),
});
export type WalkState = z.infer<typeof walkStateSchema>;

/** Reads what the store kept; null where it is not a walk of this version. */
export const readWalkState = (json: unknown): WalkState | null => {
  const read = walkStateSchema.safeParse(json);
  return read.success ? read.data : null;
};
