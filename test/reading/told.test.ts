/** How far the reader gets with messages of people who knew nothing of it, and which nothing was fitted on (scripts/reading/examples). */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { decodeWeights, encodeWeights } from '../../bot/reading/examples/weights.js';
import { readText } from '../../bot/reading/index.js';
import { loadTriage } from '../../bot/triage/index.js';
import { makeModel } from '../../bot/triage/model/model.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';

interface Told {
  readonly text: string;
  readonly facts: readonly { readonly label: string }[];
}

const model = loadTriage('knowledge/connection');
/** Without what is learnt of likeness. */
const sayingsAlone = makeModel(readEntries('knowledge/connection').entries).reading;
const told = readFileSync('test/reading/corpus/told.jsonl', 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => JSON.parse(line) as Told);

const OPENING = new Set(['system', 'path', 'client']);

/** Measured on 2026-11-28: said 91 % right, 40 % found; guesses 75 % right, with them 52 % found (by sayings alone 69 and 24 %); a blind reader called 95 of 100 right or harmless. */
it('reads strangers’ messages mostly rightly, and guesses a third as much again as it reads', () => {
  let [labels, right, said, guessedRight, guessed] = [0, 0, 0, 0, 0];
  for (const { text, facts } of told) {
    const own = new Set(facts.map(({ label }) => label));
    labels += own.size;
    const read = readText(model.reading, text);
    for (const { what, answer } of read.facts) {
      if (OPENING.has(what)) continue;
      said += 1;
      right += own.has(`${what}.${answer}`) ? 1 : 0;
    }
    for (const { what, answer } of read.perhaps) {
      guessed += 1;
      guessedRight += own.has(`${what}.${answer}`) ? 1 : 0;
    }
  }
  expect(labels).toBeGreaterThan(1000);
  expect(right / said).toBeGreaterThan(0.9);
  expect(right / labels).toBeGreaterThan(0.38);
  expect(guessedRight / guessed).toBeGreaterThan(0.73);
  expect((right + guessedRight) / labels).toBeGreaterThan(0.5);
});

/** Beside the labels, which leave out what a careful listener might add: hence not 97. */
it('takes hardly anything as said by its likeness alone that was not told', () => {
  const byLikeness = told.flatMap(({ text, facts }) => {
    const labels = new Set(facts.map(({ label }) => label));
    const bySayings = new Set(readText(sayingsAlone, text).facts.map(({ what, answer }) => `${what}.${answer}`));
    const { facts: read, understood } = readText(model.reading, text);
    return read
      .filter(({ what, answer }) => !bySayings.has(`${what}.${answer}`))
      .map((fact) => ({
        isTold: labels.has(`${fact.what}.${fact.answer}`),
        isShown: understood.some((one) => one.fact === fact),
        isQuoted: text.includes(fact.quote.slice(1, -1).trim()),
        isSafety: model.check(fact.what)?.safety === true,
      }));
  });
  expect(byLikeness.length).toBeGreaterThan(140);
  expect(byLikeness.filter(({ isTold }) => isTold).length / byLikeness.length).toBeGreaterThan(0.92);
  for (const { isShown, isQuoted, isSafety } of byLikeness) {
    expect(isShown && isQuoted).toBe(true);
    expect(isSafety).toBe(false);
  }
});

it('never guesses what keeps gear from harm, nor an answer that no check has', () => {
  const guesses = told.flatMap(({ text }) => readText(model.reading, text).perhaps);
  expect(guesses.length).toBeGreaterThan(100);
  for (const { what, answer } of guesses) {
    const check = model.check(what);
    expect(check?.safety).not.toBe(true);
    expect(check?.answers.map(({ id }) => id)).toContain(answer);
  }
});

it('reads its weights back as they were written', () => {
  const weights = {
    answers: ['', 'ping.answers'],
    marks: ['ping', 'é'],
    starts: Uint32Array.from([0, 1, 3]),
    of: Uint16Array.from([1, 0, 1]),
    steps: Int8Array.from([40, -127, 127]),
  };
  expect(decodeWeights(encodeWeights(weights))).toEqual(weights);
});
