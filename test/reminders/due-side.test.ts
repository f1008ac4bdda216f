/**
 * Due south, west and the like. In the prime vertical (due east or west) the height is given by sin h = sin δ / sin φ, and due south of the
 * zenith by h = 90° − φ + δ: spherical trigonometry, Meeus, Astronomical Algorithms, 2nd ed., ch. 13.
 */
import { describe, expect, it } from 'vitest';
import { whenDue } from '../../bot/reminders/find-moment.js';
import { horizontalOf } from '../../bot/sky/place.js';
import type { SkyBody } from '../../bot/sky/types.js';

const WARSAW = { latitudeDeg: 52.23, longitudeDeg: 21.01, elevationM: 100 };
/** Vega and Rigel, J2000 (Hipparcos catalogue). */
const VEGA: SkyBody = { kind: 'fixed', raHoursJ2000: 279.234 / 15, decDegJ2000: 38.784 };
const RIGEL: SkyBody = { kind: 'fixed', raHoursJ2000: 78.634 / 15, decDegJ2000: -8.202 };
const NIGHT = { startUtcMs: Date.UTC(2026, 10, 27, 11), endUtcMs: Date.UTC(2026, 10, 28, 11) };
const DEG = Math.PI / 180;

const heightWhenDue = (body: SkyBody, side: 'north' | 'east' | 'south' | 'west'): number | null => {
  const search = whenDue(body, WARSAW, side, NIGHT, NIGHT.startUtcMs);
  return 'found' in search ? horizontalOf(body, WARSAW, search.found.utcMs).altitudeDeg : null;
};

describe('a target due in one of four directions', () => {
  it('stands there at the height that geometry gives', () => {
    expect(heightWhenDue(RIGEL, 'south')).toBeCloseTo(90 - 52.23 - 8.2, 0);
    expect(heightWhenDue(VEGA, 'west')).toBeCloseTo(Math.asin(Math.sin(38.784 * DEG) / Math.sin(52.23 * DEG)) / DEG, 0);
  });

  it('is never there where its path does not lead', () => {
    expect(heightWhenDue(RIGEL, 'north')).toBeNull();
  });
});
