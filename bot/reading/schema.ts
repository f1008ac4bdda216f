/** The shape of the reading vocabulary's YAML entries, and what each field means. Ids of other rooms are held by their checker. */
import * as z from 'zod';
import { answerId, id, line, source } from './entry-parts.js';

/** `phone`: a phone or tablet of any make; what is worded for computers is not for it. */
export const SYSTEMS = ['windows', 'macos', 'linux', 'phone'] as const;
export type System = (typeof SYSTEMS)[number];

/** `direct`: the client program opens the port itself; `platform`: it talks through a driver platform. */
export const CLIENTS = ['direct', 'platform'] as const;
/** No computer and no program: the hand controller alone. */
export const NO_CLIENT = 'none';
export type Client = (typeof CLIENTS)[number] | typeof NO_CLIENT;

/** What an entry that is met tells. */
const told = {
  /** Check id → answer id. */
  answers: z.record(id, answerId).optional(),
  /** Check id → further answers: the text tells that one or one of these, not which. */
  or: z.record(id, z.array(answerId).min(1)).optional(),
  /** Fault id → how many times likelier the text makes it (below 1: less likely). */
  suggests: z.record(id, z.number().positive().max(1000)).optional(),
  /** The system this text can only come from. */
  system: z.enum(SYSTEMS).optional(),
  client: z.enum([...CLIENTS, NO_CLIENT]).optional(),
  /** The path, or the family of paths, that this text can only be about. */
  path: id.optional(),
};

const NUMBER_KINDS = ['device', 'errno', 'windows', 'socket'] as const;
export type NumberKind = (typeof NUMBER_KINDS)[number];

/** evidence/*.yaml: what a message of a system or program says. */
export const evidenceSchema = z.strictObject({
  id,
  /**
   * RE2 syntax; letter case is ignored. Platforms may fold pasted lines into one and put words around them, so `^` and `$`
   * have no use here, and a space in the pattern stands for any white space.
   */
  pattern: line(600).optional(),
  /** Instead of a pattern: the readers of tables (bot/reading/messages/tables.ts) find it, by its id. */
  table: z.boolean().optional(),
  /** Numbers that say the same, each of its own table: `device` Device Manager's codes, `errno`, `windows` error codes, `socket` Winsock. */
  numbers: z.partialRecord(z.enum(NUMBER_KINDS), z.array(z.number().int().min(0).max(99_999)).min(1)).optional(),
  /** A text that must match. */
  example: line(500),
  /** A text that must not. */
  nonExample: line(500).optional(),
  ...told,
  /** Messages about one thing that changes: of those with the same word here, only the one that stands last in the text counts … */
  state: id.optional(),
  /** … unless one of them says why, and then that one counts wherever it stands. */
  settles: z.boolean().optional(),
  /** Counts only when one of these (entry ids) is met too. */
  with: z.array(id).min(1).optional(),
  /** Does not count when one of these, or one of these sayings, is met too. */
  unless: z.array(id).min(1).optional(),
  /** It tells nothing itself: it is here for others that do not count beside it. */
  aside: z.boolean().optional(),
  /** What it means, one line for the member; left out where it tells no more than a system or a path. */
  says: line(200).optional(),
  source,
});

/** translations.yaml: how a message reads in other languages. */
export const translationSchema = z.strictObject({
  id,
  /** The evidence entry that it is a translation of. */
  of: id,
  /** Language code → the message; `…` stands for up to 60 characters of anything. */
  texts: z.record(z.string().regex(/^[a-z]{2}$/u, 'a language is two letters'), z.array(line(160)).min(1)),
  /** Languages of which the texts are from memory, not from a published text. */
  fromMemory: z.array(z.string()).optional(),
  source,
});

/** What may be set against the set-up in hand: another of a kind that does well or badly, a place, or the want of a thing. */
const CONTRASTS = [
  'computer.well',
  'computer.badly',
  'phone.well',
  'program.well',
  'program.badly',
  'cable.well',
  'cable.badly',
  'adapter.well',
  'adapter.badly',
  'supply.well',
  'supply.badly',
  'socket.well',
  'socket.badly',
  'restart.well',
  'restart.badly',
  'system.well',
  'network.well',
  'handset.well',
  'at-home.well',
  'device.without',
  'vpn.without',
  'suite.without',
] as const;
export type Contrast = (typeof CONTRASTS)[number];

/** words.yaml: words that mean the same in a saying. */
export const wordSchema = z.strictObject({
  id,
  /** Lower case; more than one word is allowed; a `~` at the end stands for the usual endings (drop~: drops, dropped, dropping). */
  words: z.array(line(60)).min(1),
  /** Misspellings and phone typing too far off to be mended by themselves. */
  typed: z.array(line(60)).optional(),
  /** Words of other things, parted by blanks, that are as they should be: none is mended to a word that it comes near. */
  correct: z
    .string()
    .regex(/^[a-z\s]+$/u)
    .optional(),
});

/** sayings/*.yaml: how members put a thing in words. */
export const sayingSchema = z.strictObject({
  id,
  /**
   * Words in order. `<word>` is an entry of words.yaml, `a|b` either, `x?` may be missing, `..` up to three words between,
   * `...` up to eight; small words (the, my, just) are stepped over; nothing reaches over the end of a clause.
   */
  phrases: z.array(line(200)).default([]),
  /** Instead of phrases: what another thing than the one in hand does ("on her laptop it works"), by kinds of words (bot/reading/words/contrasts.ts). */
  contrast: z.enum(CONTRASTS).optional(),
  examples: z.array(line(240)).min(1),
  nonExamples: z.array(line(240)).optional(),
  ...told,
  /** Sets sayings about these (check ids, path, system) aside where they take no more of its words: "a power adapter" is no USB adapter. */
  hides: z.array(id).min(1).optional(),
  /** Checks, or answers of them ("check.answer"), of which the text's likeness says nothing beside it: "tracks like a dream" is like what tells of drift. */
  quiets: z
    .array(z.string().regex(/^[a-z0-9-]+(?:\.[a-z0-9-]+)?$/u))
    .min(1)
    .optional(),
  /** Only as the last words of a message, as a sentence of its own: "… it lands elsewhere. handset". */
  closes: z.boolean().optional(),
  /** Also taken from a question or an "if" ("is it bad that my hub has no supply?"). */
  asked: z.boolean().optional(),
  /** Also taken from an "if" that tells what happens ("if I close the lid it drops"), where nothing is asked. */
  habit: z.boolean().optional(),
  /** Also taken of the past: what changed last week changed. */
  past: z.boolean().optional(),
  /** Also taken when denied: the phrase holds its own "not". Denial words before it are then no concern. */
  denied: z.boolean().optional(),
  /** Also taken when it speaks of other gear or of other people: the phrase says itself whose. */
  others: z.boolean().optional(),
  /** Only where it is all that stands between two marks, as in a list: "date ok, clutches tight, other lead same". */
  alone: z.boolean().optional(),
  /** It keeps gear from harm: from a line that hedges ("i think", "probably") its answers are not taken. */
  firm: z.boolean().optional(),
  /** The check that looks at the cause these words name, supposed or asked about as well: it comes at once, and nothing is taken as said. */
  names: id.optional(),
  /** What it is a sign of, for sayings that count only beside such a sign ("the link is lost", "something happened"). */
  sign: id.optional(),
  /** Counts only beside a sign of this: in the same sentence, joined to it in time. */
  beside: id.optional(),
  /** … or in the sentence before or after: it tells of an event, not of a state. */
  event: z.boolean().optional(),
  /** Counts only when one of these sayings or messages is met too. */
  with: z.array(id).min(1).optional(),
  /** Does not count when one of these sayings or messages is met too. */
  unless: z.array(id).min(1).optional(),
  /** Not taken when said of these (entries of words.yaml). */
  notOf: z.array(id).min(1).optional(),
  /** 0 to 1, default 0.85. */
  sureness: z.number().min(0.3).max(0.98).optional(),
  /** Fits after "I take it:", such as "it connects, then drops". */
  label: line(90).optional(),
  source,
});

/** families.yaml: paths that a text may speak of without saying which. */
export const familySchema = z.strictObject({ id, label: line(60), paths: z.array(id).min(1) });

/** answers/*.yaml: how members put an answer to a question; `id` is the check's, or `path` for the way to the mount. */
export const wordedAnswersSchema = z.strictObject({
  id,
  /** Answer id → phrases as typed, each of which tells that answer apart from the others of the question. */
  said: z.record(answerId, z.array(line(80)).min(1)),
});

/** deeds/*.yaml: how members put what they did, or what it turned out to be, once the trouble is over; `id` is the fault's. */
export const deedsSchema = z.strictObject({
  id,
  /** As typed, without the cure itself: each tells this fault's remedy apart from the others'. */
  done: z.array(line(80)).min(1),
});

export type EvidenceEntry = z.infer<typeof evidenceSchema>;
export type TranslationEntry = z.infer<typeof translationSchema>;
export type WordEntry = z.infer<typeof wordSchema>;
export type SayingEntry = z.infer<typeof sayingSchema>;
export type FamilyEntry = z.infer<typeof familySchema>;
export type WordedAnswersEntry = z.infer<typeof wordedAnswersSchema>;
export type DeedsEntry = z.infer<typeof deedsSchema>;
/** What evidence and sayings have in common. */
export type Told = Pick<EvidenceEntry, 'id' | 'answers' | 'or' | 'suggests' | 'system' | 'client' | 'path'>;

export interface VocabularyEntries {
  readonly evidence: readonly EvidenceEntry[];
  readonly translations: readonly TranslationEntry[];
  readonly words: readonly WordEntry[];
  readonly sayings: readonly SayingEntry[];
  readonly families: readonly FamilyEntry[];
  readonly wordedAnswers: readonly WordedAnswersEntry[];
  readonly deeds: readonly DeedsEntry[];
}
