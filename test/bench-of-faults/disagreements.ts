/** Where the knowledge's tables and the bench's set-ups disagree about what a check answers under a fault. */
import type { TriageModel } from '../../bot/triage/index.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { contextsOf } from '../../scripts/knowledge/contexts.js';
import { seenAs } from './member.js';
import { singleJobs } from './jobs.js';

export interface Disagreement {
  readonly fault: string;
  readonly check: string;
  readonly answer: string;
  /** How often the bench shows it, and how likely the tables hold it. */
  readonly bench: number;
  readonly table: number;
  readonly worlds: number;
}

interface Tally {
  worlds: number;
  readonly seen: Map<string, number>;
  readonly table: Map<string, number>;
}

const ROUNDS = 24;

/** Worst first: answers the bench shows often and the tables hold unlikely, by what one such answer costs in log odds. */
export const disagreementsOf = (model: TriageModel, rounds = ROUNDS): Disagreement[] => {
  const tallies = new Map<string, Tally>();
  const contexts = contextsOf(model);
  for (const { truth, world } of singleJobs(model, rounds)) {
    const context = contexts.find(
      ({ path, system, client }) => path === world.path && system === world.system && client === world.client,
    );
    if (context === undefined) continue;
    const situation = situationFor(model, context);
    const fault = situation.faultIndex.get(truth[0] ?? '');
    if (fault === undefined) continue;
    for (const { entry, answers, odds } of situation.checks) {
      const seen = seenAs(model, world, entry.id);
      if (seen === null) continue;
      const key = `${truth[0] ?? ''} ${entry.id}`;
      const tally = tallies.get(key) ?? {
        worlds: 0,
        seen: new Map<string, number>(),
        table: new Map<string, number>(),
      };
      tallies.set(key, tally);
      tally.worlds++;
      tally.seen.set(seen, (tally.seen.get(seen) ?? 0) + 1);
      answers.forEach((answer, a) => tally.table.set(answer, (tally.table.get(answer) ?? 0) + (odds[a]?.[fault] ?? 0)));
    }
  }
  const cost = ({ bench, table }: Disagreement): number => bench * Math.log(bench / Math.max(table, 0.02));
  return [...tallies]
    .flatMap(([key, { worlds, seen, table }]) => {
      const [fault = '', check = ''] = key.split(' ');
      return [...seen].map(([answer, count]) => ({
        fault,
        check,
        answer,
        bench: count / worlds,
        table: (table.get(answer) ?? 0) / worlds,
        worlds,
      }));
    })
    .filter((one) => one.bench >= 0.15 && one.bench - one.table >= 0.15)
    .sort((a, b) => cost(b) - cost(a));
};

export const disagreements = (model: TriageModel, count: number): string[] => {
  const all = disagreementsOf(model);
  return [
    `Where tables and bench disagree: ${all.length} answers; the worst ${Math.min(count, all.length)} (fault, check, answer: bench, table)`,
    ...all
      .slice(0, count)
      .map(
        ({ fault, check, answer, bench, table }) =>
          `  ${fault}, ${check}, ${answer}: ${bench.toFixed(2)}, ${table.toFixed(2)}`,
      ),
  ];
};
