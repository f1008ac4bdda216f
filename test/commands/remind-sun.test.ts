/** Reminders of the Sun itself and of what stands beside it: the caution that every answer has, and the day that was asked for. */
import { describe, expect, it } from 'vitest';
import { answer, ODALYS, realDeps, refusal } from './real-deps.js';

const deps = await realDeps({ clubSiteText: '52.71,0.12' });
const FEN = 'site:52.71,0.12';
// Thursday 26 November 2026, by day and before dawn.
const BY_DAY = Date.UTC(2026, 10, 26, 12, 30);
const BEFORE_DAWN = Date.UTC(2026, 10, 26, 4, 24);
let count = 0;
const asker = () => ({ ...ODALYS, memberId: `console:sun-${(count += 1)}` });

describe('a reminder of the Sun', () => {
  it.each([
    'remind Sun above:10',
    'remind target:Sun above:10',
    'remind the sun above:10',
    'remind me when the sun is above 10 degrees',
    'remind me when the sun comes up at 10°',
    'remind me when the sun is 10 degrees high',
    'remind target:Sun when:set',
    'remind target:Sun when:transit',
    'remind target:Sun at:12:00',
  ])('says beside which danger it sends someone out: %s', async (line) => {
    const { level, cautions, data } = await answer(deps, line, BEFORE_DAWN, asker());
    expect(level).toBe('danger');
    expect(cautions.join()).toContain('ISO 12312-2');
    expect(data['text']).toContain('ISO 12312-2');
    expect(data['momentUtc']).toMatch(/^2026-11-26/u);
  });

  it('is of the day asked for, whatever the Sun does now', async () => {
    const { data } = await answer(deps, `remind target:Sun above:10 on:tomorrow ${FEN}`, BY_DAY, asker());
    // 10° is passed at 09:25:39 UTC (skyfield 1.55 with DE421, apparent altitude without refraction).
    expect(Math.abs(Date.parse(data['momentUtc'] as string) - Date.UTC(2026, 10, 27, 9, 25, 39))).toBeLessThan(5000);
    expect(
      (await answer(deps, `remind target:Sun when:transit on:tomorrow ${FEN}`, BY_DAY, asker())).data['momentUtc'],
    ).toMatch(/^2026-11-27T11:4[78]/u);
  });

  it('says "already" only of the day that it is', async () => {
    const { message, choices } = await refusal(deps, `remind target:Sun above:10 ${FEN}`, BY_DAY, asker());
    expect(message).toContain('already, until 14:1');
    expect(choices?.[0]?.run).toContain('on:tomorrow');
  });

  it('says why there is none in words of the day', async () => {
    const { message } = await refusal(deps, `remind target:Sun above:50 ${FEN}`, BEFORE_DAWN, asker());
    expect(message).toMatch(/that day \(highest: 1[56]°\)/u);
  });

  it('leaves a sunrise warning where sunrise is what was asked', async () => {
    for (const line of ['remind sunrise', 'remind me when the sun rises', 'remind me before the sun comes up'])
      expect((await answer(deps, line, BEFORE_DAWN, asker())).data['kind']).toBe('sunrise');
  });
});

describe('a reminder of a night to come', () => {
  it('is not refused because all of that night is dark', async () => {
    // Capella never sets at 78° N, and the Sun stays down from late October to February.
    const { data } = await answer(deps, 'remind Capella above:20 on:tomorrow site:78.2,15.6', BY_DAY, asker());
    expect(data['momentUtc']).toMatch(/^2026-11-27T1[01]:/u);
  });

  it('has the caution when its target sets beside the Sun', async () => {
    const { level } = await answer(deps, `remind Venus when:set ${FEN}`, BY_DAY, asker());
    expect(level).toBe('caution');
  });
});
