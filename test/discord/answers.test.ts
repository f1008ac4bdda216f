import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { start, type Started } from './start-bot.js';

describe('a member asks on Discord', () => {
  let at: Started;
  beforeAll(async () => { at = await start(); });
  afterAll(async () => { await at.stop(); });

  it('gets the verdict, its level in words, facts, and the chart with its words', async () => {
    const seen = await at.double.member('Odalys').slash('up', { target: 'NGC 7331' });
    const [embed] = seen.message.embeds;
    console.log(JSON.stringify(seen, null, 1).slice(0, 4000));
    console.log(at.logged().slice(-3000), at.double.rest.violations);
    expect(embed?.title).toContain('NGC 7331');
    expect(at.double.rest.violations).toEqual([]);
  });
});
