/** Which bright star stands where; heights and directions from ephem 4.2.1 for 52.71° N, 0.12° E, airless. */
import { describe, expect, it } from 'vitest';
import { answer, realDeps } from './real-deps.js';

// Thursday 26 November 2026, 12:58 UTC.
const NOW = Date.UTC(2026, 10, 26, 12, 58);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });

interface Seen {
  readonly name: string;
  readonly altitudeDeg: number;
}
const seenBy = async (line: string): Promise<readonly Seen[]> =>
  (await answer(deps, line, NOW)).data['seen'] as unknown as readonly Seen[];

describe('bright', () => {
  it('names the brightest in the east at eight, the Moon beside it', async () => {
    const told = await answer(deps, 'bright star in the east at 8', NOW);
    expect(told.summary).toMatch(/^Most likely Capella .*44° high/u);
    const seen = await seenBy('bright star in the east at 8');
    const heightOf = (name: string): number => seen.find((one) => one.name === name)?.altitudeDeg ?? NaN;
    expect(Math.abs(heightOf('Capella') - 44)).toBeLessThan(1);
    expect(Math.abs(heightOf('Aldebaran') - 29)).toBeLessThan(1);
    expect(seen.map(({ name }) => name)).toContain('Moon');
  });

  it('names Rigel low in the south-east at ten', async () => {
    const seen = await seenBy('brite star low in south east at ten');
    expect(seen[0]?.name === 'Moon' ? seen[1]?.name : seen[0]?.name).toBe('Rigel');
  });

  it('names by day only what daylight does not hide', async () => {
    const told = await answer(deps, 'bright towards:north', NOW);
    expect(told.summary).toContain('daylight');
    expect(told.facts).toEqual([]);
  });
});
