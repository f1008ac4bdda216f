/** The answers that an entry tells, each with its name: written out once for each entry, however often it is met. */
import { onceOf } from '../ground/once.js';

export interface Answer {
  readonly check: string;
  readonly answer: string;
  /** "check.answer" */
  readonly name: string;
}

export const answersOf = onceOf((answers: Readonly<Record<string, string>>): readonly Answer[] =>
  Object.entries(answers).map(([check, answer]) => ({ check, answer, name: `${check}.${answer}` })),
);
