/** The record of a walk: what was said, in order, as plain JSON that survives a restart. Beliefs are computed from it each time. */
import * as z from 'zod';
import { onceOf } from '../../ground/once.js';
import type { ReadFact } from '../../reading/index.js';
import { CLIENTS, NO_CLIENT, SYSTEMS } from '../model/schema.js';

/** `member`: whose mount it is; `helper`: who started the walk for them. */
const speaker = z.enum(['member', 'helper']);
const short = z.string().max(80);

export const UNSURE = 'unsure';
export const TRY_OUTCOMES = ['works', 'same', 'changed', 'could-not', 'for-now', UNSURE] as const;
/**
 * `changed`: something is different, still not right; `could-not`: it could not be done; `for-now`: it worked, and stopped working again;
 * `unsure`: what came of it cannot be told yet.
 */
export type TryOutcome = (typeof TRY_OUTCOMES)[number];

/** So much of a text is kept in the words it came in; the newest lines of a log stand last. */
export const WORDS_LIMIT = 1200;

/** A record holds no more. */
export const EVENT_LIMIT = 300;

/** Answers told beside the first. */
const MOST_BESIDE = 4;

const readFact = z.object({
  what: short,
  answer: short,
  /** Answers that hold as well, or in its place. */
  or: z.array(short).max(MOST_BESIDE).exactOptional(),
  sureness: z.number().min(0).max(1),
  quote: z.string().max(200),
  by: z.enum(['words', 'log', 'picture']),
});

const event = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('path'), value: short.nullable(), by: speaker.nullable() }),
  z.object({ kind: z.literal('system'), value: z.enum(SYSTEMS).nullable(), by: speaker.nullable() }),
  z.object({ kind: z.literal('client'), value: z.enum([...CLIENTS, NO_CLIENT]).nullable(), by: speaker.nullable() }),
  /** The member's own words or a paste: what was read from it, and the text itself, bounded. */
  z.object({
    kind: z.literal('text'),
    words: z.string().max(WORDS_LIMIT).default(''),
    facts: z.array(readFact).max(60).default([]),
    /** What the words are only like. */
    guesses: z.array(readFact).max(20).default([]),
    suggests: z
      .array(z.object({ faultId: short, weight: z.number().positive() }))
      .max(40)
      .default([]),
    by: speaker,
  }),
  /** Takes back what was read about one thing. */
  z.object({ kind: z.literal('not-so'), what: short, by: speaker }),
  /** Confirms what was read so far. */
  z.object({ kind: z.literal('right'), by: speaker }),
  z.object({ kind: z.literal('answer'), check: short, answer: short, by: speaker }),
  /** Words to this question were no answer, twice: it is left for now, and may come once more. */
  z.object({ kind: z.literal('passed'), check: short, by: speaker }),
  /** What was said of this check before was a slip. */
  z.object({ kind: z.literal('slip'), check: short, by: speaker }),
  /** The member names, or wonders about, what this check looks at; `said`: in these words. Without: words only touch on it. */
  z.object({ kind: z.literal('supposed'), check: short, said: z.string().max(200).exactOptional(), by: speaker }),
  z.object({ kind: z.literal('try'), fault: short, outcome: z.enum(TRY_OUTCOMES), by: speaker }),
  /** What the numbers of a miss say: the command that explains misses gave these causes; `said` is the line they came from. */
  z.object({
    kind: z.literal('found'),
    cause: short,
    causes: z
      .array(z.object({ id: short, probability: z.number().min(0).max(1) }))
      .max(8)
      .default([]),
    said: z.string().max(300).default(''),
    by: speaker,
  }),
]);
export type WalkEvent = z.infer<typeof event>;
export type Speaker = z.infer<typeof speaker>;
export type KeptFact = z.infer<typeof readFact>;

/** What was read, within what a record keeps. */
export const keptFact = ({ or, ...fact }: ReadFact): KeptFact => ({
  ...fact,
  ...(or === undefined ? {} : { or: or.slice(0, MOST_BESIDE) }),
  quote: fact.quote.slice(0, 200),
});

/** What the last reply asked beside its step, or instead of it: what a yes, or a line's own words, answer first. */
const asked = z.discriminatedUnion('kind', [
  /** Which of what was read is not so. */
  z.object({ kind: z.literal('doubt') }),
  /** Answers that were guessed, and shown to be agreed to or denied. */
  z.object({
    kind: z.literal('guessed'),
    guesses: z.array(z.object({ what: short, answer: short })).max(4),
  }),
  /** Whether the trouble is over, and by which remedy: null where none of this walk. */
  z.object({ kind: z.literal('fixed'), remedy: short.nullable().exactOptional() }),
  /** Which of these was the cure. */
  z.object({ kind: z.literal('which-cured'), faults: z.array(short).max(6) }),
]);
export type Asked = z.infer<typeof asked>;

export const walkStateSchema = z.object({
  version: z.literal(1),
  /** Display names, for "who said what". */
  names: z.object({ member: short.nullable(), helper: short.nullable() }),
  events: z.array(event).max(400),
  /** How many events there were before each turn, so that a turn is counted, and taken back, as one. */
  turns: z.array(z.number().int().min(0)).max(400).default([]),
  asked: asked.exactOptional(),
  /** Whose mount it is, where that is no member: "Bob", "your friend". */
  about: z.string().max(40).exactOptional(),
  /** Mended, and talked on since: words that tell nothing of it are for others. */
  rests: z.literal(true).exactOptional(),
  /** The answers that the last reply listed, in their order: asked again, they stand so again. */
  shown: z.object({ step: short, answers: z.array(short).max(40) }).exactOptional(),
  /** How often each question was put. */
  put: z.record(short, z.number().int().min(0).max(99)).exactOptional(),
  /** Cautions that a reply of this walk gave: from then on they are only named. */
  cautioned: z.array(short).max(60).exactOptional(),
});
export type WalkState = z.infer<typeof walkStateSchema>;

/** All that was written or pasted in it, in order. */
export const wordsIn = ({ events }: Pick<WalkState, 'events'>): readonly string[] =>
  events.flatMap((event) => (event.kind === 'text' ? [event.words] : []));

/** What these events take back of what was read. */
export const takenBackIn = (events: readonly WalkEvent[]): ReadonlySet<string> =>
  new Set(events.flatMap((event) => (event.kind === 'not-so' ? [event.what] : [])));

/** For each event, what the events after it take back of what was read. */
export const takenBackAfter = onceOf((events: readonly WalkEvent[]): readonly ReadonlySet<string>[] => {
  const after: ReadonlySet<string>[] = [];
  let denied: ReadonlySet<string> = new Set();
  for (let at = events.length - 1; at >= 0; at--) {
    after[at] = denied;
    const event = events[at];
    if (event?.kind === 'not-so') denied = new Set([...denied, event.what]);
  }
  return after;
});

/** Reads what the store kept; null where it is not a walk of this version. */
export const readWalkState = (json: unknown): WalkState | null => {
  const read = walkStateSchema.safeParse(json);
  return read.success ? read.data : null;
};
