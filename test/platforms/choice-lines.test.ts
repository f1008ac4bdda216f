/** Choices as numbered text. The rule is the program's own: an answer a line, the ways out behind them in one. */
import { expect, test } from 'vitest';
import { numberedLines, numberedText } from '../../bot/platforms/shared/choice-lines.js';

const choice = (label: string, beside: boolean | 'answer' = false) => ({
  label,
  run: `pick ${label}`,
  ...(beside === false ? {} : { beside }),
});
const shown = (...choices: readonly ReturnType<typeof choice>[]): readonly string[] =>
  numberedLines(choices, ({ label }) => label).map(numberedText);

test('ways out that follow one another share a line and keep their numbers', () => {
  expect(
    shown(choice('Yes'), choice('No'), choice('Why this?', true), choice('Back a step', true), choice('Entries')),
  ).toEqual(['1. Yes', '2. No', '3 Why this? · 4 Back a step', '5. Entries']);
});

test('parted ways out are two lines, and every number stands once', () => {
  const lines = shown(choice('Why this?', true), choice('Yes'), choice('Back a step', true));
  expect(lines).toEqual(['1 Why this?', '2. Yes', '3 Back a step']);
});

test('answers that are the same on every card share a line of their own', () => {
  const lines = shown(choice('Works', 'answer'), choice('No change', 'answer'), choice('Why this?', true));
  expect(lines).toEqual(['1 Works · 2 No change', '3 Why this?']);
});
