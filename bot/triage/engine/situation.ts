/**
 * The fault model narrowed to one context and laid out as numbers: who can be at fault, how likely beforehand, and what
 * each check answers under each fault. One fault is taken to be at work, or something
 * that no list holds, in one link of the chain.
 */
import { onceOf } from '../../ground/once.js';
import { createKept, type Kept } from '../../ground/kept.js';
import { canBeIn, contextKey, isAllThere, type WalkContext } from '../model/context.js';
import { wordedForPhone } from './worded-for-phone.js';
import type { TriageModel } from '../model/model.js';
import { NO_CLIENT, type CheckEntry, type FaultEntry } from '../model/schema.js';
import { boundedOdds } from './bounded-odds.js';
import { oddsOfUnknown, oddsUnder, type Suspect } from './answer-odds.js';

/** The share of walks whose cause the model does not hold; of members' stories written apart from it, one in five to ten. */
export const UNEXPLAINED_PRIOR = 0.06;
/** What a turn costs besides its own minutes: reading, going to the mount and back, typing. */
export const TURN_MINUTES = 3;
/** What it costs when the walk gives up and a person has to come and look. */
export const HAND_ON_MINUTES = 75;
/** How many walks of the shipped weights one confirmed outcome is weighed against. */
const PSEUDO_WALKS = 60;
/**
 * How common a fault is stands in the tables by judgement: what is called rare may well be less so, and what is called common,
 * too. The weights are drawn together by this power.
 */
export const SURENESS_OF_WEIGHTS = 0.55;
const USUAL_UNSURE = 0.05;
/** How often a first look is wrong where the check does not say. A guess, held against the bench of set-ups. */
export const DEFAULT_SLIP = 0.06;

export interface CheckNumbers {
  readonly entry: CheckEntry;
  readonly answers: readonly string[];
  readonly minutes: number;
  readonly unsure: number;
  /** How often a member's first look is wrong. */
  readonly slip: number;
  /** Index of the answer that a member gives when nothing seems wrong. */
  readonly good: number;
  /** [answer][hypothesis]: probability of the answer before mistakes; the hypotheses from `unexplained` on are the unknowns. */
  readonly odds: readonly Float64Array[];
}

export interface Situation {
  readonly context: WalkContext;
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckNumbers[];
  /** Index of the first unknown in every array over hypotheses: faults come before it, one unknown a link from it on. */
  readonly unexplained: number;
  /** The link of each unknown, in order; [null] where the path names no links. */
  readonly unknownLinks: readonly (string | null)[];
  /** The link of each hypothesis. */
  readonly links: readonly (string | null)[];
  readonly priors: Float64Array;
  /** Minutes to try the remedy of each fault and see whether it worked, the turn included. */
  readonly tryMinutes: Float64Array;
  readonly handOnMinutes: number;
  readonly faultIndex: ReadonlyMap<string, number>;
  readonly checkIndex: ReadonlyMap<string, number>;
  /** Position of a stage along the path; `stageCount` for one that the path has not. */
  readonly stagePosition: (stageId: string) => number;
  readonly stageCount: number;
  /** Whether a remedy or a look touches the computer's settings alone. */
  readonly isInComputer: (entry: Pick<FaultEntry | CheckEntry, 'stage' | 'inComputer'>) => boolean;
  /** The position of each hypothesis' stage. */
  readonly positions: readonly number[];
}

/** A safety look at one way's lead is for those who said that they have that lead: it only alarms the others. */
export const isTheirs = ({ context }: Situation, { entry: { safety, only } }: CheckNumbers): boolean =>
  safety !== true || only?.paths === undefined || context.path !== null;

const weightIn = (fault: FaultEntry, context: WalkContext): number =>
  (fault.weightOn ?? []).reduce(
    (weight, { path, system, client, factor }) =>
      (path === undefined || path === context.path) &&
      (system === undefined || system === context.system) &&
      (client === undefined || client === context.client)
        ? weight * factor
        : weight,
    fault.weight,
  );

const linkOf = (model: TriageModel, fault: FaultEntry): string | null =>
  fault.link ?? model.stage(fault.stage)?.link ?? null;

/** The links of the path (of every path, where it is not known), each with the first stage at which it can fail. */
const unknownsOf = (model: TriageModel, context: WalkContext, order: readonly string[]): readonly Suspect[] => {
  const links = new Set(
    model.paths
      .filter(({ id }) => (context.path === null ? (context.paths?.includes(id) ?? true) : id === context.path))
      .flatMap((path) => path.links ?? [])
      .filter((link) => isAllThere(model.link(link)?.needs, context)),
  );
  const stageOf = (link: string): string =>
    order.find((stage) => model.stage(stage)?.link === link) ??
    order.find((stage) => model.faults.some((fault) => fault.link === link && fault.stage === stage)) ??
    order.at(-1) ??
    '';
  const located = [...links].map((link): Suspect => ({ fault: null, stage: stageOf(link), link }));
  return located.length > 0 ? located : [{ fault: null, stage: '', link: null }];
};

/** What no list holds in a link shows itself much as the known faults of that link do, all of them together. */
const LIKE_ITS_KIN = 0.6;
const likeItsKin = (own: readonly number[], kin: readonly (readonly number[])[]): number[] =>
  own.map(
    (p, a) => (1 - LIKE_ITS_KIN) * p + (LIKE_ITS_KIN * kin.reduce((sum, odds) => sum + (odds[a] ?? 0), 0)) / kin.length,
  );

/** All of a situation that no outcome counted in a club changes. */
type Frame = Omit<Situation, 'priors'>;

const priorsIn = (
  model: TriageModel,
  { faults, context, unknownLinks }: Frame,
  outcomes: Readonly<Record<string, number>>,
): Float64Array => {
  const allWeights = model.faults.reduce((sum, { weight }) => sum + weight ** SURENESS_OF_WEIGHTS, 0);
  const weights = faults.map((fault) => {
    const pseudoCount = (PSEUDO_WALKS * fault.weight ** SURENESS_OF_WEIGHTS) / allWeights;
    const here = weightIn(fault, context) ** SURENESS_OF_WEIGHTS;
    return (here * (pseudoCount + (outcomes[fault.id] ?? 0))) / pseudoCount;
  });
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return Float64Array.from([
    ...weights.map((weight) => ((1 - UNEXPLAINED_PRIOR) * weight) / total),
    ...unknownLinks.map(() => UNEXPLAINED_PRIOR / unknownLinks.length),
  ]);
};

const buildFrame = (model: TriageModel, context: WalkContext): Frame => {
  const path = context.path === null ? undefined : model.path(context.path);
  const order = path?.stages ?? model.stages.map(({ id }) => id);
  const positions = new Map(order.map((stage, i) => [stage, i]));
  const stagePosition = (stage: string): number => positions.get(stage) ?? order.length;
  const isThere = ({ needs, stage }: Pick<FaultEntry, 'needs' | 'stage'>): boolean =>
    isAllThere(needs, context, model.stage(stage)?.needs);
  const worded = <T>(entry: T): T => (context.system === 'phone' ? wordedForPhone(entry) : entry);
  const faults = model.faults
    .filter((fault) => positions.has(fault.stage) && isThere(fault) && canBeIn(fault, fault.remedy.steps, context))
    .map(worded);
  const unexplained = faults.length;
  const suspects = faults.map((fault): Suspect => ({ fault, stage: fault.stage, link: linkOf(model, fault) }));
  const unknowns = unknownsOf(model, context, order).filter(
    // Without a computer there are no links of one.
    ({ link }) => context.client !== NO_CLIENT || suspects.some((known) => known.link === link),
  );
  const oddsContext = { model, position: stagePosition };
  const kinOf = unknowns.map(({ link }): readonly number[] =>
    link === null ? [] : suspects.flatMap((suspect, f) => (suspect.link === link ? [f] : [])),
  );

  const looks = model.checks
    .filter((check) => positions.has(check.stage) && isThere(check) && canBeIn(check, check.how, context))
    .map(worded)
    .map((entry): CheckNumbers => {
      const answers = entry.answers.map(({ id }) => id);
      const known = suspects.map((suspect) => oddsUnder(suspect, entry, oddsContext));
      const columns = [
        ...known,
        ...unknowns.map((suspect, u) => {
          const own = oddsOfUnknown(suspect, entry, oddsContext);
          const kin = (kinOf[u] ?? []).map((f) => known[f] ?? []);
          return kin.length === 0 ? own : likeItsKin(own, kin);
        }),
      ];
      return {
        entry,
        answers,
        minutes: entry.minutes + TURN_MINUTES,
        unsure: entry.unsure ?? USUAL_UNSURE,
        slip: entry.slip ?? DEFAULT_SLIP,
        good: answers.indexOf(entry.good),
        odds: answers.map((_, a) => Float64Array.from(columns, (column) => column[a] ?? 0)),
      };
    });
  const byId = new Map(looks.map((look) => [look.entry.id, look]));
  const checks = looks.map((look): CheckNumbers => ({ ...look, odds: boundedOdds(look, byId) }));

  return {
    context,
    faults,
    checks,
    unexplained,
    unknownLinks: unknowns.map(({ link }) => link),
    links: [...suspects, ...unknowns].map(({ link }) => link),
    stagePosition,
    stageCount: order.length,
    isInComputer: ({ stage, inComputer }) => inComputer ?? model.stage(stage)?.inComputer === true,
    positions: [...suspects, ...unknowns].map(({ stage }) => stagePosition(stage)),
    tryMinutes: Float64Array.from(faults, ({ remedy }) => remedy.minutes + TURN_MINUTES),
    handOnMinutes: HAND_ON_MINUTES,
    faultIndex: new Map(faults.map(({ id }, i) => [id, i])),
    checkIndex: new Map(checks.map(({ entry }, i) => [entry.id, i])),
  };
};

interface Memory {
  readonly frames: Kept<string, Frame>;
  readonly situations: Kept<string, Situation>;
}

/** A frame takes some 300 kB, and clubs whose outcomes differ share it. */
const FRAMES_KEPT = 60;
const SITUATIONS_KEPT = 200;

const memoryOf = onceOf((_: TriageModel): Memory => ({
  frames: createKept(FRAMES_KEPT),
  situations: createKept(SITUATIONS_KEPT),
}));

/**
 * @param outcomes causes confirmed in this club, by fault id; they join the shipped weights as counts join a Dirichlet prior
 */
export const situationFor = (
  model: TriageModel,
  context: WalkContext,
  outcomes: Readonly<Record<string, number>> = {},
): Situation => {
  const key = `${contextKey(context)} ${Object.entries(outcomes)
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([id, n]) => `${id}=${n}`)
    .join(' ')}`;
  const { frames, situations } = memoryOf(model);
  return situations(key, () => {
    const frame = frames(contextKey(context), () => buildFrame(model, context));
    return { ...frame, priors: priorsIn(model, frame, outcomes) };
  });
};
