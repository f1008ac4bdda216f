/** What members say by the way: what they tried and what came of it, what works, what changed, what feeds it, what a screen shows. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

/** All invented, as many strangers would type them, and written before the vocabulary was: what of each is heard today. */
const TOLD = readFileSync('test/reading/corpus/by-the-way.jsonl', 'utf8')
  .split('\n')
  .filter(Boolean)
  .map((row) => JSON.parse(row) as { readonly line: string; readonly tells: readonly string[] });

describe('what is told by the way', () => {
  it.each(TOLD)('$line', ({ line, tells }) => {
    const told = readText(reading, line).facts.flatMap(({ what, answer, or = [] }) =>
      [answer, ...or].map((one) => `${what}.${one}`),
    );
    expect(told).toEqual(expect.arrayContaining([...tells]));
  });
});
