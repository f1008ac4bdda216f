/** Which set-ups the bench plays: every shipped fault where it can be, pairs of faults, and troubles off the list. */
import type { TriageModel } from '../../bot/triage/index.js';
import { appliesIn } from '../../bot/triage/model/context.js';
import { contextsOf, type FullContext } from '../../scripts/knowledge/contexts.js';
import { isWell } from './chain.js';
import { broken, FAULT_CHANGES } from './faults.js';
import { OFF_LIST } from './off-list.js';
import { randomFrom } from './random.js';
import { soundWorld } from './sound-world.js';
import type { ClientId, PathId, SystemId, World } from './world.js';

/**
 * The bench is drawn twice: tables and rules are tuned on one draw (its set-ups, its members' mistakes, every second trouble
 * off the list) and reported on the other, which nobody looks into while tuning.
 */
export const DRAWS = ['tuned', 'held back'] as const;
export type Draw = (typeof DRAWS)[number];

export interface Job {
  readonly kind: 'one' | 'pair' | 'off-list';
  /** Fault ids at work; empty off the list. */
  readonly truth: readonly string[];
  readonly name: string;
  readonly family: string;
  readonly world: World;
  readonly seed: string;
}

const worldIn = ({ path, system, client }: FullContext, seed: string): World =>
  soundWorld(path as PathId, system as SystemId, client as ClientId, randomFrom(seed));

const faultsIn = (model: TriageModel, context: FullContext): string[] => {
  const stages = new Set(model.path(context.path)?.stages ?? []);
  return model.faults
    .filter(({ id, stage, only }) => id in FAULT_CHANGES && stages.has(stage) && appliesIn(only, context))
    .map(({ id }) => id);
};

/** A world with these faults in which the member has something to complain of; a few seeds are tried, else null. */
const troubled = (context: FullContext, truth: readonly string[], seed: string): World | null => {
  for (let round = 0; round < 8; round++) {
    const world = broken(worldIn(context, `${seed} ${round}`), truth);
    if (!isWell(world)) return world;
  }
  return null;
};

/** `rounds` set-ups a fault, each in another context where it can be. */
export const singleJobs = (model: TriageModel, rounds: number, draw: Draw = 'tuned'): Job[] =>
  model.faults.flatMap(({ id, stage }) => {
    const contexts = contextsOf(model).filter((context) => faultsIn(model, context).includes(id));
    return Array.from({ length: Math.min(rounds, contexts.length * 4) }, (_, round): Job | null => {
      const seed = `${id}, ${draw} ${round}`;
      const context = contexts.length === 0 ? undefined : randomFrom(seed).pick(contexts);
      const world = context === undefined ? null : troubled(context, [id], seed);
      return world === null ? null : { kind: 'one', truth: [id], name: id, family: stage, world, seed };
    }).filter((job) => job !== null);
  });

export const pairJobs = (model: TriageModel, count: number, draw: Draw = 'tuned'): Job[] => {
  const contexts = contextsOf(model);
  const jobs: Job[] = [];
  for (let round = 0; jobs.length < count && round < count * 4; round++) {
    const seed = `pair, ${draw} ${round}`;
    const random = randomFrom(seed);
    const context = random.pick(contexts);
    const ids = faultsIn(model, context);
    const truth = [random.pick(ids), random.pick(ids)];
    const [first = '', second = ''] = truth;
    const stages = truth.map((id) => model.fault(id)?.stage);
    const world = first === second ? null : troubled(context, truth, seed);
    // One field cannot hold two troubles: both must be visible on their own.
    const oddities = truth.filter((id) => broken(worldIn(context, seed), [id]).oddity !== null).length;
    if (world === null || stages[0] === stages[1] || oddities > 1) continue;
    jobs.push({ kind: 'pair', truth, name: truth.join(' + '), family: 'pairs', world, seed });
  }
  return jobs;
};

export const offListJobs = (model: TriageModel, rounds: number, draw: Draw = 'tuned'): Job[] =>
  OFF_LIST.filter(
    ({ listedAs }, i) => model.fault(listedAs ?? '') === undefined && DRAWS[i % DRAWS.length] === draw,
  ).flatMap((odd) =>
    Array.from({ length: rounds }, (_, round): Job | null => {
      const seed = `${odd.name}, ${draw} ${round}`;
      const contexts = contextsOf(model).filter(
        ({ path, system }) =>
          (model.path(path)?.stages.includes(odd.link) ?? false) &&
          (odd.paths?.includes(path as PathId) ?? true) &&
          (odd.systems?.includes(system as SystemId) ?? true),
      );
      const world = { ...worldIn(randomFrom(seed).pick(contexts), seed), oddity: odd };
      if (isWell(world)) return null;
      return { kind: 'off-list', truth: [], name: odd.name, family: 'off the list', world, seed };
    }).filter((job) => job !== null),
  );

/** Walks of one club, whose faults come in shares of its own, in one kind of set-up. */
export const clubJobs = (
  model: TriageModel,
  context: FullContext,
  often: readonly string[],
  { count, seed }: { readonly count: number; readonly seed: string },
): Job[] => {
  const jobs: Job[] = [];
  const all = faultsIn(model, context);
  for (let round = 0; jobs.length < count && round < 4 * count; round++) {
    const key = `${seed} ${round}`;
    const random = randomFrom(key);
    const id = random.pick(random.chance(0.85) ? often : all);
    const world = troubled(context, [id], key);
    if (world === null) continue;
    jobs.push({ kind: 'one', truth: [id], name: id, family: model.fault(id)?.stage ?? '', world, seed: key });
  }
  return jobs;
};
