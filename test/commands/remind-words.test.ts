/** Reminders at an hour, at setting, and with nothing said but the target; times against `up` and the clocks. */
import { describe, expect, it } from 'vitest';
import { answer, ODALYS, realDeps, refusal } from './real-deps.js';

// Wednesday 25 November 2026, 20:41 UTC, as the clocks at the site show.
const NOW = Date.UTC(2026, 10, 25, 20, 41);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const asker = (id: string) => ({ ...ODALYS, memberId: `console:${id}`, channelId: id });

describe('reminders in words', () => {
  it('come at the hour asked for, with where the target then stands', async () => {
    const { data, summary } = await answer(deps, 'remind me to look at m42 at 11', NOW, asker('hour'));
    expect(data).toMatchObject({ kind: 'hour', dueUtc: '2026-11-25T23:00:00Z' });
    expect(summary).toMatch(/M 42 is \d+° high/u);
  });

  it('come at an hour without a target, and of the night named', async () => {
    expect((await answer(deps, 'remind me at 9pm', NOW, asker('bare'))).data).toMatchObject({
      dueUtc: '2026-11-25T21:00:00Z',
    });
    expect((await answer(deps, 'remind me about m31 tomorrow at 10pm', NOW, asker('day'))).data).toMatchObject({
      dueUtc: '2026-11-26T22:00:00Z',
    });
  });

  it('keep the words of the one who asked, which stand in the list and cancel it', async () => {
    const own = asker('words');
    const { data } = await answer(deps, 'remind me in twenny mins to check the dew heater', NOW, own);
    expect(data).toMatchObject({
      dueUtc: '2026-11-25T21:01:00Z',
      text: 'Check the dew heater. It is 21:01 GMT, as you asked.',
    });
    expect(JSON.stringify((await answer(deps, 'remind list', NOW, own)).facts)).toContain('dew heater');
    expect((await refusal(deps, 'cancel the charge battery one', NOW, own)).message).toContain('charge battery');
    expect((await answer(deps, 'cancel the dew heater one', NOW, own)).title).toBe('Reminder cancelled');
  });

  it('call nobody by what they are to say', async () => {
    const { data } = await answer(deps, 'remind me at 11 to tell @everyone', NOW, asker('call'));
    expect(data['text']).not.toContain('@everyone');
  });

  it('are refused for an hour that is past, with what would be right', async () => {
    const { message } = await refusal(deps, 'remind m42 at:20:00', NOW, asker('past'));
    expect(message).toContain('on:tomorrow');
  });

  it('come when a target sets, at the minute that up names', async () => {
    const { data } = await answer(deps, 'remind saturn when:set', NOW, asker('set'));
    const told = await answer(deps, 'up saturn', NOW, asker('up'));
    const utcMs = (value: unknown): number => Date.parse(value as string);
    expect(Math.abs(utcMs(data['dueUtc']) - utcMs(told.data['setUtc']))).toBeLessThan(5000);
  });

  it('offer tomorrow where it is so already, and ask what to wait for where nothing is said', async () => {
    const dark = await refusal(deps, 'remind me when it gets dark', NOW, asker('dark'));
    expect(dark.problem).toBe('already');
    expect(dark.choices?.map(({ run }) => run)).toEqual(['remind when:dark on:tomorrow']);
    const { message } = await refusal(deps, 'remind me to check focus', NOW, asker('focus'));
    expect(message).toContain('At what hour?');
  });

  it('take a height when none is said, and say which', async () => {
    const { data, notes } = await answer(deps, 'remind jupiter', NOW, asker('usual'));
    expect(data).toMatchObject({ kind: 'altitude' });
    expect(notes.join()).toContain('20°');
  });
});
