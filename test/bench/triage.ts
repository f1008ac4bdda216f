/** How long a step of a walk takes; and how far the walks are from the best policy that deep search finds, by the simulation's own code. */
import path from 'node:path';
import { loadTriage } from '../../bot/triage/index.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { figuresFrom, simulate } from '../../scripts/knowledge/simulate.js';
import { toldMember } from '../stories/told-member.js';
import { playWalk } from '../stories/told-player.js';
import { loadStories } from '../stories/told-story.js';
import { nowMs, single, spread, type BenchRow } from './measure.js';

/** A step is waited for by somebody at the mount. */
const STEP_MS = 60;

/** How long each line of members' stories is waited for, from the opening to the end; told twice, the first time to warm up. */
export const stepRows = async (deps: Deps): Promise<BenchRow[]> => {
  const model = deps.triage();
  const tell = async (round: string, took: (ms: number) => void): Promise<void> => {
    for (const story of loadStories()) {
      const memberId = `console:${story.id}-${round}`;
      const asker = { platform: 'console', memberId, displayName: story.member, channelId: 'console' } as const;
      const own = { ...asker, clubId: `console:${round}`, isManager: false, isPrivate: true };
      await playWalk(deps, own, toldMember(model, story).speaker, { nowMs, took });
    }
  };
  await tell('warm', () => undefined);
  const times: number[] = [];
  await tell('timed', (ms) => times.push(ms));
  return [spread(`triage: one step of ${times.length} in members' stories`, 'ms', times, STEP_MS)];
};

/** Above the best policy's mean, in hundredths. */
const TARGET_PERCENT = 15;

export const simulationRows = async (): Promise<BenchRow[]> => {
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
