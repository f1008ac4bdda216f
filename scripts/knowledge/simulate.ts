/** Plays every fault in every context with each policy, on all cores, and adds up steps and minutes to cure. */
import { fork } from 'node:child_process';
import { availableParallelism } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { projectRoot } from '../../bot/ground/project-root.js';
import { loadTriage } from '../../bot/triage/index.js';
import type { TriageModel } from '../../bot/triage/index.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { contextsOf, type FullContext } from './contexts.js';
import type { Policy } from './evaluate-policy.js';
import { deepSearch, engine, fixedOrder } from './policies.js';
import { playWalk, remembering, type Played } from './sample-walks.js';

/** From source the worker is TypeScript too; the bundle has it as an entry of its own. */
const workerFile = (): string =>
  import.meta.url.endsWith('.ts')
    ? fileURLToPath(new URL('simulate-worker.ts', import.meta.url))
    : path.join(projectRoot(), 'dist/scripts/knowledge/simulate-worker.js');

/** One answer in so many is wrong in the noisy walks. */
export const WRONG_ANSWERS = 0.1;
const NOISY_ROUNDS = 1;

export type PolicyName = 'engine' | 'noisy' | 'fixed' | 'deep';
const POLICIES: Readonly<
  Record<PolicyName, { readonly policy: Policy; readonly wrong: number; readonly rounds: number }>
> = {
  engine: { policy: engine, wrong: 0, rounds: 1 },
  noisy: { policy: engine, wrong: WRONG_ANSWERS, rounds: NOISY_ROUNDS },
  fixed: { policy: fixedOrder, wrong: 0, rounds: 1 },
  deep: { policy: deepSearch, wrong: 0, rounds: 1 },
};

export interface WalkRecord extends Played {
  readonly policy: PolicyName;
  readonly context: FullContext;
  readonly faultId: string;
  /** The fault's prior in its context, so that averages weigh contexts alike. */
  readonly prior: number;
}

export interface Job {
  readonly context: FullContext;
  readonly policy: PolicyName;
}

export const playJob = (model: TriageModel, { context, policy: name }: Job): readonly WalkRecord[] => {
  const situation = situationFor(model, context);
  const { policy, wrong, rounds } = POLICIES[name];
  const remembered = remembering(policy);
  return situation.faults.flatMap(({ id }, f) =>
    Array.from({ length: rounds }, (_, round) => ({
      ...playWalk(situation, remembered, f, wrong, round),
      policy: name,
      context,
      faultId: id,
      prior: (situation.priors[f] ?? 0) / rounds,
    })),
  );
};

/** Which contexts are played; what is left out narrows nothing. */
export interface Narrowing {
  readonly path?: string | undefined;
  readonly system?: string | undefined;
  readonly client?: string | undefined;
  /** Our own walk, with right and with some wrong answers, without the searches it is compared with, which take four times as long. */
  readonly alone?: boolean | undefined;
}

/** The longest first, so that the cores finish together. */
export const jobsFor = (
  model: TriageModel,
  { path: wanted, system, client, alone = false }: Narrowing = {},
): readonly Job[] => {
  const contexts = contextsOf(model).filter(
    (context) =>
      context.path === (wanted ?? context.path) &&
      context.system === (system ?? context.system) &&
      context.client === (client ?? context.client),
  );
  const policies: readonly PolicyName[] = alone ? ['noisy', 'engine'] : ['deep', 'noisy', 'engine', 'fixed'];
  return policies.flatMap((policy) => contexts.map((context): Job => ({ context, policy })));
};

export interface Figures {
  readonly faults: number;
  readonly checks: number;
  readonly evidence: number;
  /** To the cure or the handing on, averaged over contexts and, by prior, over faults. */
  readonly meanSteps: number;
  /** Of the deep search, on the same walks. */
  readonly bestMeanSteps: number;
  readonly fixedOrderMeanSteps: number;
  readonly resolvedWithin10: number;
  readonly noisyResolvedWithin10: number;
}

export const meanOf = (records: readonly WalkRecord[], value: (record: WalkRecord) => number): number => {
  let sum = 0;
  let weight = 0;
  for (const record of records) {
    sum += record.prior * value(record);
    weight += record.prior;
  }
  return sum / weight;
};

const within10 = ({ end, steps }: WalkRecord): number => (end !== 'lost' && steps <= 10 ? 1 : 0);
const steps = (record: WalkRecord): number => record.steps;
const rounded = (value: number): number => Math.round(value * 1e4) / 1e4;

export const figuresFrom = (model: TriageModel, records: readonly WalkRecord[]): Figures => {
  const of = (policy: PolicyName): WalkRecord[] => records.filter((record) => record.policy === policy);
  return {
    faults: model.faults.length,
    checks: model.checks.length,
    evidence: model.evidence.length,
    meanSteps: rounded(meanOf(of('engine'), steps)),
    bestMeanSteps: rounded(meanOf(of('deep'), steps)),
    fixedOrderMeanSteps: rounded(meanOf(of('fixed'), steps)),
    resolvedWithin10: rounded(meanOf(of('engine'), within10)),
    noisyResolvedWithin10: rounded(meanOf(of('noisy'), within10)),
  };
};

/** Plays all jobs over as many child processes as there are cores. */
export const simulate = async (
  folder: string,
  overlay: string | undefined,
  onProgress: (done: number, total: number) => void,
  narrowing: Narrowing = {},
): Promise<readonly WalkRecord[]> => {
  const jobs = [...jobsFor(loadTriage(folder, overlay), narrowing)];
  const total = jobs.length;
  const records: WalkRecord[] = [];
  let done = 0;
  onProgress(0, total);
  await Promise.all(
    Array.from(
      { length: Math.max(1, availableParallelism()) },
      () =>
        new Promise<void>((resolve, reject) => {
          const child = fork(workerFile(), [folder, ...(overlay === undefined ? [] : [overlay])]);
          const next = (): void => {
            const job = jobs.shift();
            if (job === undefined) child.disconnect();
            else child.send(job);
          };
          child.on('message', (played) => {
            records.push(...(played as WalkRecord[]));
            onProgress(++done, total);
            next();
          });
          child.on('error', reject);
          child.on('exit', (code) => {
            if (code === 0) resolve();
            else reject(new Error(`a simulating process ended with code ${code}`));
          });
          next();
        }),
    ),
  );
  // Processes finish in any order; sums of floating numbers must not depend on it.
  const key = ({ policy, context, faultId }: WalkRecord): string =>
    `${policy} ${context.path} ${context.system} ${context.client} ${faultId}`;
  return records
    .map((record, i) => ({ record, i, key: key(record) }))
    .sort((a, b) => Number(a.key > b.key) - Number(a.key < b.key) || a.i - b.i)
    .map(({ record }) => record);
};
