/** How far the walks of the shipped fault model are from the best policy that deep search finds, by the simulation's own code. */
import path from 'node:path';
import { loadTriage } from '../../bot/triage/index.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import { figuresFrom, simulate } from '../../scripts/knowledge/simulate.js';
import { single, type BenchRow } from './measure.js';

/** Above the best policy's mean, in hundredths. */
const TARGET_PERCENT = 15;

export const triageRows = async (): Promise<BenchRow[]> => {
  const folder = path.join(projectRoot(), 'knowledge/connection');
  const figures = figuresFrom(loadTriage(folder), await simulate(folder, undefined, () => undefined));
  const { faults, meanSteps, bestMeanSteps, fixedOrderMeanSteps, resolvedWithin10, noisyResolvedWithin10 } = figures;
  return [
    single(
      `triage over the model's own ${faults} faults: mean steps above the best policy of deep search`,
      '%',
      100 * (meanSteps / bestMeanSteps - 1),
      TARGET_PERCENT,
    ),
    single('triage: cured or handed on within 10 steps', '%', 100 * resolvedWithin10, 95, 'more'),
    single('triage: the same with one answer in ten wrong', '%', 100 * noisyResolvedWithin10, null),
    single('triage: mean steps', 'steps', meanSteps, null),
    single('triage: mean steps of a fixed checklist', 'steps', fixedOrderMeanSteps, null),
  ];
};
