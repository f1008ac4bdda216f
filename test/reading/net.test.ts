/** The net beside the marks, held to sums worked out by hand from its own definition (bot/reading/examples/net.ts); no source beyond it. */
import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { clausesOf } from '../../bot/reading/examples/clauses.js';
import { makeNet, type NetParts } from '../../bot/reading/examples/net.js';
import { decodeNet } from '../../bot/reading/examples/net-file.js';
import { sentencesOf } from '../../bot/reading/words/sentences.js';
import { loadTriage } from '../../bot/triage/index.js';

const model = loadTriage('knowledge/connection');
const clausesIn = (text: string) => clausesOf(sentencesOf(model.reading.sayings.lexicon, text));

/** Two words of four numbers; the first filter looks for `handset` and then `moves`, the others for nothing. */
const parts: NetParts = {
  answers: ['works-with-handset.moves'],
  words: ['handset', 'moves', 'number0'],
  size: 4,
  filters: 4,
  vectors: Int8Array.from([10, 0, 0, 0, 0, 10, 0, 0, 0, 0, 10, 0]),
  vectorSteps: Float32Array.from([0.1, 0.1, 0.1]),
  // Filter by filter: the word before, itself, after.
  taps: Float32Array.from([1, 0, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0, ...new Array<number>(36).fill(0)]),
  tapStarts: Float32Array.from([-0.5, 0, 0, 0]),
  // The filters, then the vectors' sum.
  speaks: Float32Array.from([8, 0, 0, 0, 1, 1, 1, 0]),
  speakStarts: Float32Array.from([0.25]),
  slope: 2,
  leans: Float32Array.from([-1]),
};
const net = makeNet(parts, ['works-with-handset.moves', 'ping.answers']);

const spoken = (text: string, answer = 0): number => {
  const [first, ...others] = clausesIn(text).map(net.poolOf);
  if (first === undefined) throw new Error('no clause');
  for (const other of others) net.join(first, other);
  return net.weigher(first)(answer);
};

it('hears words in their order', () => {
  // 8 × (1 + 2 − 0.5), (1 + 1) / √3 and 0.25.
  expect(spoken('handset moves')).toBeCloseTo(20 + 2 / Math.sqrt(3) + 0.25, 4);
  // The pattern is there but for the word before: 8 × (2 − 0.5).
  expect(spoken('moves handset')).toBeCloseTo(12 + 2 / Math.sqrt(3) + 0.25, 4);
});

it('takes clauses together by the most of each pattern, never across a comma', () => {
  expect(spoken('handset, moves')).toBeCloseTo(12 + 2 / Math.sqrt(3) + 0.25, 4);
  expect(spoken('handset moves, handset')).toBeCloseTo(20 + 3 / 2 + 0.25, 4);
});

it('knows a number only as one, and nothing of other words and answers', () => {
  expect(spoken('number7')).toBeCloseTo(1 / Math.sqrt(2) + 0.25, 4);
  expect(spoken('kettle')).toBeCloseTo(0.25, 4);
  expect(spoken('handset moves', 1)).toBeNaN();
});

it('says how often what seems likely was told', () => {
  // Log of the odds: 2 × ln 4 − 1.
  expect(net.soberly(0, 0.8)).toBeCloseTo(1 / (1 + Math.exp(1 - 2 * Math.log(4))), 6);
  expect(net.soberly(1, 0.8)).toBe(0.8);
  expect([net.soberly(0, 0), net.soberly(0, 1)]).toEqual([0, 1]);
});

it('ships whole, for answers that there are', () => {
  const shipped = decodeNet(readFileSync('knowledge/connection/reading/net.bin'));
  const { answers, words, size, filters } = shipped;
  expect(words.length).toBeGreaterThan(20_000);
  expect(shipped.vectors.length).toBe(words.length * size);
  expect(shipped.taps.length).toBe(3 * size * filters);
  expect(shipped.speaks.length).toBe(answers.length * (size + filters));
  expect(shipped.leans.every(Number.isFinite) && shipped.speaks.every(Number.isFinite)).toBe(true);
  const today = answers.filter((label) => {
    const [check = '', answer = ''] = label.split('.');
    return model.check(check)?.answers.some(({ id }) => id === answer) === true;
  });
  expect(today.length / answers.length).toBeGreaterThan(0.9);
});
