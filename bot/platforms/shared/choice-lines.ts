/** Choices as numbered text: a line each, and in one line the ways out that follow one another. */
import type { Choice } from '../../ground/problem.js';

export interface NumberedLine {
  /** Of the first choice in it, from 1. */
  readonly number: number;
  readonly labels: readonly string[];
  /** Ways out that share the line. */
  readonly beside: boolean;
}

/** @param labelOf the label as it is to be shown */
export const numberedLines = (
  choices: readonly Choice[],
  labelOf: (choice: Choice) => string,
): readonly NumberedLine[] => {
  const made: NumberedLine[] = [];
  for (const [index, choice] of choices.entries()) {
    const last = made.at(-1);
    const beside = choice.beside === true;
    if (beside && last?.beside === true) made.splice(-1, 1, { ...last, labels: [...last.labels, labelOf(choice)] });
    else made.push({ number: index + 1, labels: [labelOf(choice)], beside });
  }
  return made;
};

/** "9. Why this?", or "9 Why this? · 10 Back a step". */
export const numberedText = ({ number, labels, beside }: NumberedLine): string =>
  beside ? labels.map((label, at) => `${number + at} ${label}`).join(' · ') : `${number}. ${labels.join('')}`;
