/** Draws the walk of one path as a Mermaid flow chart, for people to review. */
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import type { Evidence } from '../../bot/triage/engine/evidence.js';
import { chooseStep } from '../../bot/triage/engine/choose-step.js';
import type { Situation } from '../../bot/triage/engine/situation.js';
import { EMPTY, withObservation, withTry } from './evaluate-policy.js';

export interface TreeOptions {
  /** Steps drawn before the rest is cut off with a count. */
  readonly depth: number;
  /** Branches that fewer walks than this share take are cut off. */
  readonly leastShare: number;
}

const quoted = (text: string): string => `"${text.replace(/"/gu, '#quot;').replace(/[<>]/gu, ' ')}"`;

const percent = (share: number): string => (share < 0.01 ? 'under 1 %' : `${(share * 100).toFixed(0)} %`);

const sumOf = (weights: Float64Array): number => weights.reduce((sum, w) => sum + w, 0);

/** How many walks, by their cause, come to a point of the chart. */
interface Point {
  readonly weights: Float64Array;
  readonly evidence: Evidence;
  readonly level: number;
}

/** Lines of a Mermaid flow chart. Shares are of walks whose cause the model knows. */
export const treeLines = (situation: Situation, { depth, leastShare }: TreeOptions): readonly string[] => {
  const lines = ['flowchart TD'];
  let made = 0;
  const box = (text: string, [open, close]: readonly [string, string]): string => {
    const id = `n${made++}`;
    lines.push(`  ${id}${open}${quoted(text)}${close}`);
    return id;
  };
  const arrow = (from: string, label: string, to: string): void => void lines.push(`  ${from} -->|${label}| ${to}`);

  const drawTry = ({ weights, evidence, level }: Point, fault: number): string => {
    const id = box(`Try: ${situation.faults[fault]?.title ?? ''}`, ['[', ']']);
    const cured = weights[fault] ?? 0;
    if (cured > 0) arrow(id, quoted(`works, ${percent(cured / sumOf(weights))}`), box('Fixed', ['([', '])']));
    const rest = Float64Array.from(weights);
    rest[fault] = 0;
    if (rest.some((w) => w > 0))
      arrow(id, '"no change"', draw({ weights: rest, evidence: withTry(evidence, fault), level: level + 1 }));
    return id;
  };

  const drawAsk = ({ weights, evidence, level }: Point, check: number, look: 'look' | 'relook'): string => {
    const numbers = situation.checks[check];
    const id = box(numbers?.entry.question ?? '', ['{{', '}}']);
    for (const [answer, { label }] of (numbers?.entry.answers ?? []).entries()) {
      const part = weights.map((w, f) => w * (numbers?.odds[answer]?.[f] ?? 0));
      const sum = sumOf(part);
      if (sum <= 0) continue;
      const after = withObservation(evidence, { check, answer, look });
      const next = draw({ weights: part, evidence: after, level: level + 1 });
      arrow(id, quoted(`${label}, ${percent(sum / sumOf(weights))}`), next);
    }
    return id;
  };

  const draw = (point: Point): string => {
    const share = sumOf(point.weights);
    if (point.level >= depth || share < leastShare)
      return box(`goes on, ${(share * 100).toFixed(1)} % of walks`, ['(', ')']);
    const choice = chooseStep(situation, point.evidence, beliefFrom(situation, point.evidence));
    switch (choice.kind) {
      case 'handOn':
        return box('Hand on to a person', ['([', '])']);
      case 'try':
        return drawTry(point, choice.fault);
      case 'ask':
        return drawAsk(point, choice.check, choice.again ? 'relook' : 'look');
    }
  };

  const priors = situation.priors.slice(0, situation.unexplained);
  const total = sumOf(priors);
  draw({ weights: priors.map((p) => p / total), evidence: EMPTY, level: 0 });
  return lines;
};
