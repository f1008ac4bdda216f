/**
 * The shape of the fault model's YAML entries: one zod schema a kind of entry, with what each field means to the walk.
 * Every file is a YAML list of entries. Cross-references between entries are held by check-references.ts, not here.
 */
import * as z from 'zod';
import { CLIENTS, entryParts, SYSTEMS } from '../../reading/index.js';
import { answerOdds, answersOf, needs, only, systemSteps, systemText, words } from './schema-parts.js';

export { CLIENTS, NO_CLIENT, SYSTEMS, type Client, type System } from '../../reading/index.js';

const { answerId, id, line, source } = entryParts;

/** paths.yaml: one way for a computer to reach a mount. */
export const pathSchema = z.strictObject({
  id,
  /** Shown as a choice: ≤ 70 characters. */
  title: line(70),
  description: line(300),
  /** Stage ids in the order the signal goes. */
  stages: z.array(id).min(2),
  systems: z.array(z.enum(SYSTEMS)).min(1),
  clients: z.array(z.enum(CLIENTS)).min(1),
  /** Link ids (links.yaml) that this way uses; each has an unknown of its own. Without any there is one unknown in all. */
  links: z.array(id).optional(),
  /** What must be there for this to be the way. */
  needs,
  /** A club's own way: like this one that ships, with its stages, faults and questions (see like-paths.ts). */
  like: id.optional(),
  words,
  source: source.optional(),
});

/**
 * stages.yaml, in order. Where a member does not know the path, this order holds. `link`: where its faults lie. `needs`: of its
 * faults and checks that do not say it themselves. `inComputer`: its remedies touch the computer's settings alone, no lead and no plug.
 */
export const stageSchema = z.strictObject({
  id,
  title: line(60),
  link: id.optional(),
  needs,
  inComputer: z.boolean().optional(),
});

/** links.yaml: a part of the chain as a helper names it ("the leads between computer and mount"). */
export const linkSchema = z.strictObject({ id, title: line(80), needs });

/** faults/*.yaml: one thing that can be wrong. */
export const faultSchema = z.strictObject({
  id,
  stage: id,
  /** The link it lies in; default: its stage's. */
  link: id.optional(),
  title: line(90),
  /** Why it happens and what it looks like. */
  why: line(400),
  words,
  /** How common it is beside the others; 1 is usual, 3 often, 0.2 rare. */
  weight: z.number().positive().max(100),
  /** Every entry whose conditions all hold multiplies the weight. */
  weightOn: z
    .array(
      z.strictObject({
        path: id.optional(),
        system: z.enum(SYSTEMS).optional(),
        client: z.enum(CLIENTS).optional(),
        factor: z.number().positive().max(100),
      }),
    )
    .optional(),
  only: only.optional(),
  /** What must be there for it to be the cause, instead of what its stage says. */
  needs,
  /** Its remedy touches the computer's settings alone, instead of what its stage says. */
  inComputer: z.boolean().optional(),
  /** Means nothing to one who controls the mount from a phone or tablet. */
  notOnPhone: z.boolean().optional(),
  /** What checks answer if this is the fault, where it differs from the default (see `checkSchema.scope`). */
  answers: z.record(id, answerOdds).optional(),
  remedy: z.strictObject({
    steps: systemSteps,
    minutes: z.number().positive().max(600),
    /** What a club adds to a remedy that ships; shown under its lines, whichever way they are. */
    note: line(240).optional(),
    cautions: z.array(id).optional(),
    /** Another way to the same cure, where the first could not be done or did nothing. */
    otherwise: systemSteps.optional(),
    /** The cause whose remedy ends what this one began: it comes next where this one was done and changed nothing. */
    followedBy: id.optional(),
    /** What makes the cure last, for one who was helped and has the trouble back; without it a second cause is looked for. */
    lasting: systemSteps.optional(),
    /** A look that costs nothing and shows the cause: it comes first, however likely the cause is. */
    confirm: id.optional(),
    /** Answers that say it was done already and changed nothing: then only its other way is offered, where `otherwise` is true. */
    already: z
      .strictObject({ check: id, answers: z.array(answerId).min(1), otherwise: z.boolean().default(false) })
      .optional(),
    /** As of a check: by its first steps no other lead is plugged in or made. */
    sameLeads: z.boolean().optional(),
    /** The chance that the right remedy shows no cure: done by halves, or seen wrongly (default 0.08). */
    misses: z.number().min(0).max(0.9).optional(),
  }),
  /** What the member sees when the remedy worked; `check` with `answer` where one of the checks shows it. */
  verify: z.strictObject({ text: line(240), check: id.optional(), answer: answerId.optional() }),
  /** The command that takes over for this kind of fault. */
  handsOverTo: z.literal('astray').optional(),
  /** The cause ids of that command which confirm this fault. */
  astrayCauses: z.array(id).optional(),
  /** Faults that no check tells apart from this one, on purpose; their remedies are tried in turn. */
  sameAs: z.array(id).optional(),
  source,
});

const settled = z.strictObject({
  when: z.array(answerId).min(1),
  then: z.record(id, answerId).refine((then) => Object.keys(then).length > 0, 'name at least one check'),
});

/** checks/*.yaml: one thing a member can look at, and what it may answer. "Not sure" is added to every check by the engine. */
export const checkSchema = z.strictObject({
  id,
  stage: id,
  /** One short question, clear on a phone. */
  question: line(160),
  /** What it looks at, for a line of the hand-on: "Handset shows". */
  brief: line(26).optional(),
  how: systemText,
  /** What a club adds to it: where the thing hangs. */
  note: line(240).optional(),
  /** Two to fourteen; labels are button texts. */
  answers: z
    .array(
      z.strictObject({
        id: answerId,
        label: line(70),
        words,
        /** Picked, it says that this is not there (see `needs`). */
        lacks: answerId.optional(),
      }),
    )
    .min(2)
    .max(14),
  /** The answer when nothing is wrong: the default for every fault that neither names this check nor makes it fail. */
  good: answerId,
  /**
   * `part` (default): looks at one thing, so it answers `good` under every fault that does not name it (a setting, a plug).
   * `chain`: passes only when everything before it works (a device shows up, the mount replies), so it answers not-good
   * under every fault at an earlier stage that does not name it, and `good` under faults at its own or a later stage.
   */
  scope: z.enum(['part', 'chain']).default('part'),
  /** For `chain`: the answer given when something earlier is broken (default: any answer but `good`, equally). */
  bad: answerId.optional(),
  /** What it answers for faults of a whole stage that do not name it; goes before `scope`. For "how far do you get?". */
  byStage: z.record(id, answerOdds).optional(),
  /** A base rate: what it answers for a fault that does not name it and whose stage is not listed, where `good` is far from certain. */
  usual: answerOdds.optional(),
  /** What it answers under single faults, written beside the check; a fault's own `answers` go before it. */
  under: z.record(id, answerOdds).optional(),
  /** Answer → fault → how many times likelier that fault makes the answer. Then all answers are scaled to 1 again. */
  leans: z.record(answerId, z.record(id, z.number().positive().max(100))).optional(),
  /** Answer → fault → a share added to the answer's probability under that fault, before scaling to 1. */
  adds: z.record(answerId, z.record(id, z.number().positive().max(10))).optional(),
  /** Another way to reach or move the mount: which links each answer clears or charges (see contrast.ts). */
  contrast: z
    .strictObject({
      works: z.record(answerId, z.array(id)).optional(),
      fails: z.record(answerId, z.array(id)).optional(),
      silent: z.array(answerId).optional(),
      partly: z.array(id).optional(),
    })
    .optional(),
  /** Splits each answer of a coarser check into several, by weight; once this one is answered the coarser one no longer counts. */
  refines: z
    .strictObject({ check: id, answers: z.record(answerId, z.record(answerId, z.number().positive())) })
    .optional(),
  /** Asked only once another check has been answered in one of these ways: what the mount does, of one that connects. */
  after: z.strictObject({ check: id, answers: z.array(answerId).min(1) }).optional(),
  /** Not asked once one of these was answered so: what they say leaves nothing for it to tell. */
  barredBy: answersOf.optional(),
  /**
   * One of the answers `when` answers other checks as well (check → its answer): they are not asked, and it weighs for them a
   * little. Only what is certain in the trade, never a look that keeps gear from harm.
   */
  settles: z.array(settled).min(1).optional(),
  /** Answer → the stage at which the signal then stops: what lies beyond is not asked while that is likely (see where-it-stops.ts). */
  stops: z.record(answerId, id).optional(),
  /** A look at the bare link: what lies beyond the stage at which it `stops` waits for it while the cause may lie that near. */
  linkFirst: z.boolean().optional(),
  /** The stage the signal must come to for it to tell anything; default: its own. The first stage: it bears wherever it stops. */
  reach: id.optional(),
  /** How often a member's answer to it is wrong (default: see belief.ts). */
  slip: z.number().min(0).max(0.5).optional(),
  /** What the button says in place of "Not sure". */
  unsureLabel: line(40).optional(),
  /** Things, in one word, without which nobody can tell: "there is no light on it" is not "it stays dark". */
  noneIsUnsure: z.array(line(20)).min(1).optional(),
  /** History or a contrast: it stays true when a remedy has changed something. */
  lasting: z.boolean().optional(),
  /** Minutes it takes. */
  minutes: z.number().positive().max(120),
  /** The share of members who cannot tell (default 0.05). */
  unsure: z.number().min(0).max(0.9).optional(),
  /** Asked before anything else on its paths, whatever it is worth (a wrong answer could hurt someone or the gear). Sparingly. */
  safety: z.boolean().optional(),
  /** Of a look that keeps gear from harm. `proved`: long in use here without harm, not urgent. `anew`: put to use for the first time, waits for nothing. */
  inUse: z.strictObject({ proved: answersOf, anew: answersOf }).optional(),
  /**
   * A look of another kind at what another `safety` look left open, by one of these answers or by "not sure": as urgent as that
   * one. `alone`: urgent by these answers alone, whatever the first look was for; and who cannot tell is as badly off as by a bad answer.
   * `also`: answers to further checks that leave the same open.
   */
  secondLook: z
    .strictObject({
      of: id,
      answers: z.array(answerId).min(1),
      alone: z.literal(true).optional(),
      also: z.record(id, z.array(answerId).min(1)).optional(),
    })
    .optional(),
  /** Asked only as such a second look: for itself it is too much trouble. */
  onlySecond: z.boolean().optional(),
  /** Found in order where it is not, it lets the wrong volts or pins be put to use: only plain words to the question itself say so. */
  plainly: z.boolean().optional(),
  powerOffFirst: z.boolean().optional(),
  /** Every lead stays the one that was in: the warnings of a lead that may be there are of no use. */
  sameLeads: z.boolean().optional(),
  cautions: z.array(id).optional(),
  only: only.optional(),
  /** What must be there to look at, instead of what its stage says. */
  needs,
  /** The look handles the computer alone, instead of what its stage says. */
  inComputer: z.boolean().optional(),
  /** Means nothing to one who controls the mount from a phone or tablet. */
  notOnPhone: z.boolean().optional(),
  source,
});

export type PathEntry = z.infer<typeof pathSchema>;
export type StageEntry = z.infer<typeof stageSchema>;
export type LinkEntry = z.infer<typeof linkSchema>;
export type FaultEntry = z.infer<typeof faultSchema>;
export type CheckEntry = z.infer<typeof checkSchema>;
export type Only = z.infer<typeof only>;
export type AnswerOdds = z.infer<typeof answerOdds>;
