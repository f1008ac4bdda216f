/**
 * Contrasts as logic: another way to reach or move the mount uses some links of the chain. Where it works those links are
 * cleared, where it fails they are charged (model-based diagnosis: Reiter, "A theory of diagnosis from first principles", and
 * de Kleer and Williams, "Diagnosing multiple faults", both Artificial Intelligence 32, 1987). With noise: a link may fail now
 * and hold a minute later.
 */
import type { CheckEntry } from '../model/schema.js';

export type Contrast = NonNullable<CheckEntry['contrast']>;

/** How often a way works although a link that it uses is at fault, and fails although none is. */
const NOISE = 0.06;
/** What a contrast that says nothing of the links ("there is none here") takes of the answers. */
const SILENT = 0.25;

const weightOf = (contrast: Contrast, answer: string, link: string | null): number => {
  const partly = link !== null && (contrast.partly ?? []).includes(link);
  const cleared = contrast.works?.[answer];
  const charged = contrast.fails?.[answer];
  if (cleared === undefined && charged === undefined) return 0;
  if (partly || link === null) return 0.5;
  if (cleared !== undefined) return cleared.includes(link) ? NOISE : 1;
  return charged?.includes(link) === true ? 1 : NOISE;
};

/** Probability of each answer, beside `answers`, when the fault lies in `link` (null: anywhere). Sums to 1. */
export const contrastOdds = (contrast: Contrast, answers: readonly string[], link: string | null): number[] => {
  const silent = answers.filter((answer) => (contrast.silent ?? []).includes(answer));
  const weights = answers.map((answer) => (silent.includes(answer) ? 0 : weightOf(contrast, answer, link)));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const spoken = silent.length === 0 ? 1 : 1 - SILENT;
  return answers.map((answer, i) =>
    silent.includes(answer) ? SILENT / silent.length : (spoken * (weights[i] ?? 0)) / total,
  );
};
