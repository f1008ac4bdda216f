/** Members' stories through the real command: what holds, as floors to be raised. */
import { beforeAll, describe, expect, it } from 'vitest';
import { realDeps } from '../commands/real-deps.js';
import { FAULT_CHANGES } from '../bench-of-faults/faults.js';
import { tell, totalsOf, type Told, type Totals } from './told-figures.js';
import { loadStories } from './told-story.js';

describe('the stories', { timeout: 180_000 }, () => {
  const stories = loadStories();
  let told: Told[] = [];
  let totals: Totals;
  beforeAll(async () => {
    const deps = await realDeps();
    told = [];
    for (const story of stories) told.push(await tell(deps, story));
    totals = totalsOf(told);
    console.log(`stories: ${JSON.stringify(totals)}`);
  }, 180_000);

  it('are each told once, with causes the bench can put in', () => {
    expect(new Set(stories.map(({ id }) => id)).size).toBe(stories.length);
    expect(stories.length).toBeGreaterThanOrEqual(60);
    for (const { id, causes } of stories)
      for (const { any, state } of causes) {
        const put = state === undefined ? any[0] : state;
        if (put !== null) expect(FAULT_CHANGES, id).toHaveProperty(put ?? '');
      }
  });

  it('are told in words and answers the knowledge knows', () => {
    const heard = new Set(told.flatMap(({ played }) => played.turns.map(({ id }) => id)));
    expect(heard.size).toBeGreaterThan(40);
    expect(told.flatMap(({ unknown }) => unknown)).toEqual([]);
  });

  it('end in a cure, or in a hand-on that names the cause first', () => {
    expect(totals.listedGood / totals.listed).toBeGreaterThanOrEqual(0.82);
    expect(told.filter(({ verdict }) => verdict === 'named wrongly').length).toBeLessThanOrEqual(2);
  });

  it('take few steps', () => {
    expect(totals.meanSteps).toBeLessThanOrEqual(8.5);
  });
});
