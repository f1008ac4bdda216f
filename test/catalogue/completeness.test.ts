import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { resolveTarget } from '../../bot/catalogue/index.js';
import { catalogue, found } from './loaded.js';

/**
 * Messier's numbers → NGC, IC or other designation, M 1 first. Source: the Messier catalogue with the identifications of
 * the Revised New General Catalogue (values from memory). M 102 is left open, since its identity is disputed.
 */
const MESSIER =
  `NGC1952 NGC7089 NGC5272 NGC6121 NGC5904 NGC6405 NGC6475 NGC6523 NGC6333 NGC6254 NGC6705 NGC6218 NGC6205 NGC6402
NGC7078 NGC6611 NGC6618 NGC6613 NGC6273 NGC6514 NGC6531 NGC6656 NGC6494 IC4715 IC4725 NGC6694 NGC6853 NGC6626 NGC6913 NGC7099
NGC224 NGC221 NGC598 NGC1039 NGC2168 NGC1960 NGC2099 NGC1912 NGC7092 M40 NGC2287 NGC1976 NGC1982 NGC2632 Mel22 NGC2437 NGC2422
NGC2548 NGC4472 NGC2323 NGC5194 NGC7654 NGC5024 NGC6715 NGC6809 NGC6779 NGC6720 NGC4579 NGC4621 NGC4649 NGC4303 NGC6266 NGC5055
NGC4826 NGC3623 NGC3627 NGC2682 NGC4590 NGC6637 NGC6681 NGC6838 NGC6981 NGC6994 NGC628 NGC6864 NGC650 NGC1068 NGC2068 NGC1904
NGC6093 NGC3031 NGC3034 NGC5236 NGC4374 NGC4382 NGC4406 NGC4486 NGC4501 NGC4552 NGC4569 NGC4548 NGC6341 NGC2447 NGC4736 NGC3351
NGC3368 NGC3587 NGC4192 NGC4254 NGC4321 NGC5457 ? NGC581 NGC4594 NGC3379 NGC4258 NGC6171 NGC3556 NGC3992 NGC205`.split(
    /\s+/,
  );

/**
 * A spread of Caldwell's numbers, among them all that are not in NGC or IC.
 * Source: P. Moore, "Beyond Messier: The Caldwell Catalog", Sky & Telescope 90(6), 1995 (values from memory).
 */
const CALDWELL: Readonly<Record<number, string>> = {
  1: 'NGC188',
  2: 'NGC40',
  4: 'NGC7023',
  5: 'IC342',
  6: 'NGC6543',
  9: 'Sh2-155',
  11: 'NGC7635',
  12: 'NGC6946',
  13: 'NGC457',
  20: 'NGC7000',
  22: 'NGC7662',
  23: 'NGC891',
  27: 'NGC6888',
  30: 'NGC7331',
  31: 'IC405',
  33: 'NGC6992',
  34: 'NGC6960',
  38: 'NGC4565',
  39: 'NGC2392',
  41: 'Mel25',
  46: 'NGC2261',
  50: 'NGC2244',
  53: 'NGC3115',
  55: 'NGC7009',
  63: 'NGC7293',
  65: 'NGC253',
  69: 'NGC6302',
  77: 'NGC5128',
  80: 'NGC5139',
  86: 'NGC6397',
  92: 'NGC3372',
  93: 'NGC6752',
  94: 'NGC4755',
  103: 'NGC2070',
  106: 'NGC104',
  109: 'NGC3195',
};

describe('the catalogue is whole', () => {
  it('has all 110 of Messier, each the object it is known to be', () => {
    expect(MESSIER).toHaveLength(110);
    MESSIER.forEach((designation, i) => {
      if (designation !== '?') expect(found(`M ${i + 1}`).id, `M ${i + 1}`).toBe(found(designation).id);
    });
  });

  it('asks which galaxy is meant by M 102, whose identity is disputed', () => {
    const result = resolveTarget(catalogue, 'M102');
    expect(
      !isProblem(result) ? [] : result.problem === 'ambiguous-target' && result.candidates.map((c) => c.id),
    ).toEqual(['ngc5457', 'ngc5866']);
  });

  it('has all 109 of Caldwell, those checked being the right ones', () => {
    const ids = Array.from({ length: 109 }, (_, i) => found(`Caldwell ${i + 1}`).id);
    expect(new Set(ids).size).toBe(109);
    for (const [number, designation] of Object.entries(CALDWELL))
      expect(found(`C${number}`).id, `C ${number}`).toBe(found(designation).id);
  });

  // Dreyer's catalogues end at NGC 7840 (1888) and IC 5386 (1908).
  it.each([
    ['NGC', 7840],
    ['IC', 5386],
  ] as const)('knows every number of %s to %d, or says that nothing is there', (name, last) => {
    const lacking: string[] = [];
    const nonexistent: string[] = [];
    for (let number = 1; number <= last; number += 1) {
      const result = resolveTarget(catalogue, `${name} ${number}`);
      if (!isProblem(result) || result.problem === 'ambiguous-target') continue;
      if (result.problem === 'unknown-target' && result.reason === 'listed-as-nonexistent')
        nonexistent.push(`${name} ${number}`);
      else lacking.push(`${name} ${number}`);
    }
    console.log(`${name}: ${nonexistent.length} listed as nonexistent`);
    expect(lacking).toEqual([]);
  });

  it('has more stars to magnitude 5 than the naked-eye count of the Bright Star Catalogue (about 1,600)', () => {
    let bright = 0;
    let named = 0;
    for (let i = 0; i < catalogue.sweep.length; i += 1) {
      const target = catalogue.targetAt(i);
      if (!target.id.startsWith('hip')) continue;
      if ((target.magnitude ?? 99) <= 5) bright += 1;
      if (!target.name.startsWith('HIP')) named += 1;
    }
    console.log(`${bright} stars to magnitude 5; ${named} with a name, letter or number`);
    expect(bright).toBeGreaterThan(1580);
    expect(bright).toBeLessThan(1720);
  });

  it('keeps its arrays and its targets in step', () => {
    const { sweep } = catalogue;
    for (let i = 0; i < sweep.length; i += 97) {
      const { body, magnitude } = catalogue.targetAt(i);
      if (body.kind !== 'fixed') throw new Error('not fixed');
      expect(Math.asin(sweep.unitZ[i] ?? 9) * (180 / Math.PI)).toBeCloseTo(body.decDegJ2000, 8);
      const hours = (Math.atan2(sweep.unitY[i] ?? 9, sweep.unitX[i] ?? 9) * 12) / Math.PI;
      expect((hours + 24) % 24).toBeCloseTo(body.raHoursJ2000, 8);
      if (magnitude === null) expect(sweep.magnitude[i]).toBeNaN();
      else expect(sweep.magnitude[i]).toBeCloseTo(magnitude, 4);
    }
    expect(() => catalogue.targetAt(sweep.length)).toThrow(RangeError);
  });
});
