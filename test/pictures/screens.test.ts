/** Thirty screenshots by a real browser and terminal (screens.json says what stands on each) are read by machine, and then understood. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { createPictureReader } from '../../bot/pictures/picture-reader.js';
import { isProblem } from '../../bot/ground/problem.js';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

/** Each fact is a list of alternatives, `check.answer` or `system.windows`. */
interface Screen {
  readonly file: string;
  readonly facts: readonly (readonly string[])[];
}

const folder = path.join(import.meta.dirname, 'screens');
const screens = JSON.parse(readFileSync(path.join(folder, 'screens.json'), 'utf8')) as readonly Screen[];
const { reading } = shippedModel();
const reader = createPictureReader();
afterAll(() => reader.close());

describe('thirty screenshots', () => {
  it('give at least 85 % of the facts that stand on them', { timeout: 120_000 }, async () => {
    expect(screens).toHaveLength(30);
    const missed: string[] = [];
    let all = 0;
    for (const { file, facts } of screens) {
      const picture = await reader.read(readFileSync(path.join(folder, file)));
      const text = isProblem(picture) ? '' : picture.text;
      const told = readText(reading, text, 'picture').facts.map(({ what, answer }) => `${what}.${answer}`);
      for (const alternatives of facts) {
        all += 1;
        if (!alternatives.some((one) => told.includes(one))) missed.push(`${file}: ${alternatives.join('|')}`);
      }
    }
    expect((all - missed.length) / all, missed.join('\n')).toBeGreaterThanOrEqual(0.85);
  });
});
