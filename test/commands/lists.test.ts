/** Lists with several limits: each is kept, and what is not is said. */
import { describe, expect, it } from 'vitest';
import { constellationName, resolveTarget } from '../../bot/catalogue/index.js';
import { isProblem } from '../../bot/ground/problem.js';
import { answer, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 26, 19, 42);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });

interface Row {
  readonly name: string;
  readonly type: string;
  readonly magnitude: number | null;
  readonly bestUtc: string;
  readonly bestAltitudeDeg: number;
}

const listed = async (line: string) => {
  const { title, notes, data } = await answer(deps, line, NOW);
  return { title, notes: notes.join(' '), picks: (data as unknown as { readonly picks: readonly Row[] }).picks };
};

describe('a list', () => {
  it('takes two kinds, Messier alone, a height, a magnitude and an hour', async () => {
    const { picks } = await listed('Messier globulars or galaxies above 40 degrees at 22:00, brighter than mag 9');
    expect(picks.length).toBeGreaterThan(1);
    for (const { name, type, magnitude, bestUtc, bestAltitudeDeg } of picks) {
      expect(name).toMatch(/^M \d+$/u);
      expect(type).toMatch(/galaxy|globular/u);
      expect(magnitude).toBeLessThanOrEqual(9);
      expect(bestAltitudeDeg).toBeGreaterThanOrEqual(40);
      expect(bestUtc).toMatch(/T22:[01]/u);
    }
  });

  // IAU constellation borders (E. Delporte, 1930), as the catalogue has them.
  it.each([
    ['doubles in cas and her', 'Cassiopeia and Hercules'],
    ['open clusters in Auriga or Gemini', 'Auriga and Gemini'],
    ['Messier objects in Taurus, Auriga and Perseus', 'Taurus, Auriga and Perseus'],
  ])('%s', async (line, names) => {
    const { title, picks } = await listed(line);
    expect(title).toContain(`in ${names}`);
    const within = picks.map(({ name }) => {
      const found = resolveTarget(deps.catalogue, name);
      return isProblem(found) ? null : constellationName(found.target.constellation ?? '');
    });
    expect(new Set(within).size).toBeGreaterThan(1);
    for (const name of within) expect(names).toContain(name);
  });

  it('stays between two heights on one side of the sky', async () => {
    const { title, picks } = await listed('everything brighter than mag 8 between 30 and 60 degrees in the south-east');
    expect(title).toContain('in the south-east');
    for (const { bestAltitudeDeg } of picks) {
      expect(bestAltitudeDeg).toBeGreaterThanOrEqual(30);
      expect(bestAltitudeDeg).toBeLessThanOrEqual(60.5);
    }
  });

  it('keeps to a size, and says which kind or hour it leaves out', async () => {
    const { picks, notes } = await listed('galaxies larger than 10 arcmin above 30° after moonset');
    expect(notes).toContain('Not used: the hour of the Moon');
    // M 31, 33, 81, 101, NGC 2403, NGC 253, IC 342 and the like: RC3 diameters over 10′.
    for (const { name } of picks) expect(name).toMatch(/^(?:M|NGC|IC) \d+$/u);
    expect((await listed('clusters, galaxies and nebulae tonight')).notes).toContain('not nebulae');
  });
});
