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

/** Lines of a Mermaid flow chart. Shares are of walks whose cause the model knows. */
export const treeLines = (situation: Situation, { depth, leastShare }: TreeOptions): readonly string[] => {
  const lines = ['flowchart TD'];
  let made = 0;
  const box = (text: string, [open, close]: readonly [string, string]): string => {
    const id = `n${made++}`;
    lines.push(`  ${id}${open}${quoted(text)}${close}`);
    return id;
  };
  const percent = (share: number): string => (share < 0.01 ? 'under 1 %' : `${(share * 100).toFixed(0)} %`);

  const draw = (weights: Float64Array, evidence: Evidence, level: number): string => {
    const share = weights.reduce((sum, w) => sum + w, 0);
    if (level >= depth || share < leastShare) return box(`goes on, ${(share * 100).toFixed(1)} % of walks`, ['(', ')']);
    const choice = chooseStep(situation, evidence, beliefFrom(situation, evidence));
    if (choice.kind === 'handOn') return box('Hand on to a person', ['([', '])']);
    if (choice.kind === 'try') {
      const id = box(`Try: ${situation.faults[choice.fault]?.title ?? ''}`, ['[', ']']);
      const cured = weights[choice.fault] ?? 0;
      if (cured > 0)
        lines.push(`  ${id} -->|${quoted(`works, ${percent(cured / share)}`)}| ${box('Fixed', ['([', '])'])}`);
      const rest = Float64Array.from(weights);
      rest[choice.fault] = 0;
      if (rest.some((w) => w > 0))
        lines.push(`  ${id} -->|"no change"| ${draw(rest, withTry(evidence, choice.fault), level + 1)}`);
      return id;
    }
    const numbers = situation.checks[choice.check];
    const id = box(numbers?.entry.question ?? '', ['{{', '}}']);
    for (const [answer, { label }] of (numbers?.entry.answers ?? []).entries()) {
      const part = weights.map((w, f) => w * (numbers?.odds[answer]?.[f] ?? 0));
      const sum = part.reduce((total, w) => total + w, 0);
      if (sum <= 0) continue;
      const look = choice.again ? 'relook' : 'look';
      lines.push(
        `  ${id} -->|${quoted(`${label}, ${percent(sum / share)}`)}| ${draw(part, withObservation(evidence, { check: choice.check, answer, look }), level + 1)}`,
      );
    }
    return id;
  };
  const priors = situation.priors.slice(0, situation.unexplained);
  const total = priors.reduce((sum, p) => sum + p, 0);
  draw(
    priors.map((p) => p / total),
    EMPTY,
    0,
  );
  return lines;
};
