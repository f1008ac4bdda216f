/** Choices as numbered text: a line each, and in one line those of a kind that may share it. */
import type { Choice } from '../../ground/problem.js';

export interface NumberedLine {
  /** Of the first choice in it, from 1. */
  readonly number: number;
  readonly labels: readonly string[];
  /** The kind of those that share the line; false: one that has it alone. */
  readonly beside: false | 'way out' | 'answer';
}

const kindOf = ({ beside }: Choice): NumberedLine['beside'] => {
  if (beside === 'answer') return 'answer';
  return beside === true ? 'way out' : false;
};

/** @param labelOf the label as it is to be shown */
export const numberedLines = (
  choices: readonly Choice[],
  labelOf: (choice: Choice) => string,
): readonly NumberedLine[] => {
  const made: NumberedLine[] = [];
  for (const [index, choice] of choices.entries()) {
    const last = made.at(-1);
    const beside = kindOf(choice);
    if (beside !== false && last?.beside === beside)
      made.splice(-1, 1, { ...last, labels: [...last.labels, labelOf(choice)] });
    else made.push({ number: index + 1, labels: [labelOf(choice)], beside });
  }
  return made;
};

/** "9. Why this?", or "9 Why this? · 10 Back a step". */
export const numberedText = ({ number, labels, beside }: NumberedLine): string =>
  beside !== false ? labels.map((label, at) => `${number + at} ${label}`).join(' · ') : `${number}. ${labels.join('')}`;
