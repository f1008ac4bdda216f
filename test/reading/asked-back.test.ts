/**
 * Words at a question that are not plainly one of its answers: what is asked back is mostly what was meant. The sentences are ours, in members'
 * voices, each with the answer that a helper would tick, or null for words that are no answer (invented; no source); they were written before
 * the weights were fitted, and are none of the phrases these were fitted to.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerMeant } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const SAID = JSON.parse(readFileSync('test/reading/corpus/answers/said.json', 'utf8')) as readonly (readonly [
  string,
  string,
  string | null,
])[];

const heard = SAID.map(([check, text, wanted]) => {
  const { answers = [], good, safety: guards } = model.check(check) ?? {};
  const meant = answerMeant(model.reading, text, { id: check, answers, good, guards });
  return { check, text, wanted, meant, isAnswer: answers.some(({ id }) => id === wanted) };
});
const answersSaid = heard.filter(({ wanted }) => wanted !== null);
const idle = heard.filter(({ wanted }) => wanted === null);

describe('words at a question', () => {
  it('are of answers that the questions have', () => {
    for (const { check, text, isAnswer } of answersSaid) expect(isAnswer, `${check}: ${text}`).toBe(true);
  });

  it('are taken for no other answer than the one meant', () => {
    const taken = answersSaid.filter(({ meant }) => meant?.isSure === true);
    expect(taken.filter(({ meant, wanted }) => meant?.id !== wanted).map(({ text }) => text)).toEqual([]);
    expect(taken.length).toBeGreaterThanOrEqual(70);
  });

  it('are asked back as what was meant three times in four, where they are asked back', () => {
    const asked = answersSaid.filter(({ meant }) => meant?.isSure === false);
    const right = asked.filter(({ meant, wanted }) => meant?.id === wanted);
    console.log(
      `asked back ${asked.length}, right ${right.length}; not understood ${answersSaid.filter(({ meant }) => meant === null).length} of ${answersSaid.length}`,
    );
    expect(right.length).toBeGreaterThanOrEqual(16);
    expect(right.length / asked.length).toBeGreaterThanOrEqual(0.75);
  });

  it('are neither taken nor asked back where they are no answer', () => {
    expect(idle.length).toBeGreaterThanOrEqual(16);
    expect(idle.filter(({ meant }) => meant !== null).length).toBeLessThanOrEqual(3);
  });
});
