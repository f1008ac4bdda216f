/** Airmass against another author's formula, and its ends. */
import { describe, expect, it } from 'vitest';
import { airmass } from '../../bot/sky/airmass.js';

/** F. Kasten and A. T. Young, "Revised optical air mass tables and approximation formula", Applied Optics 28, 4735 (1989). Here the altitude is the apparent one too. */
const kastenYoung = (altitudeDeg: number): number =>
  1 / (Math.sin((altitudeDeg * Math.PI) / 180) + 0.50572 * (altitudeDeg + 6.07995) ** -1.6364);

describe('airmass', () => {
  it('agrees with Kasten and Young within 3 % from the horizon to the zenith', () => {
    for (let altitude = 0; altitude <= 90; altitude += 0.5) {
      expect(Math.abs(airmass(altitude)! / kastenYoung(altitude) - 1)).toBeLessThan(0.03);
    }
  });

  it('is 1 at the zenith, grows downwards, and is not given below the horizon', () => {
    expect(airmass(90)).toBeCloseTo(1, 6);
    for (let altitude = 0; altitude < 90; altitude++)
      expect(airmass(altitude)!).toBeGreaterThan(airmass(altitude + 1)!);
    expect(airmass(-0.001)).toBeNull();
    expect(airmass(NaN)).toBeNull();
  });
});
