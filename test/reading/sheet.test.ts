/** The sheet that people judge readings on: what it asks, and that their marks are counted of what is read today. */
import { describe, expect, it } from 'vitest';
import { loadCorpus } from '../../scripts/reading/corpus.js';
import { measure } from '../../scripts/reading/measure.js';
import { judge, readSheet, sheetOf } from '../../scripts/reading/sheet.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const all = loadCorpus('test/reading/corpus')
  .slice(0, 3)
  .map((own) => measure(model, own));

describe('a judging sheet', () => {
  it('has a box for each reading and none of the labels', () => {
    const sheet = sheetOf(model, all);
    const boxes = sheet.match(/^\[ \] /gmu) ?? [];
    expect(boxes.length).toBe(all.reduce((sum, { reading }) => sum + reading.facts.length, 0));
    for (const { own } of all)
      for (const { name } of own.says) if (!name.includes('.')) expect(sheet).not.toContain(name);
  });

  it('counts the marks, and names what nobody marked', () => {
    const marks = ['[y]', '[n]'];
    const marked = sheetOf(model, all).replace(/^\[ \]/gmu, () => marks.shift() ?? '[ ]');
    const { sums, wrong, open } = judge(all, readSheet(marked));
    const counted = [...sums.values()].reduce((sum, one) => sum + one.right + one.wrong, 0);
    expect(counted).toBe(2);
    expect(wrong).toHaveLength(1);
    expect(open.length).toBeGreaterThan(0);
  });
});
