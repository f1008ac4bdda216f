/** Sun warnings: the levels of the design, which are common practice, no source. */
import { describe, expect, it } from 'vitest';
import { sunLevel, sunLimits, sunSafety, type SunCircumstances } from '../../bot/sky/sun-safety.js';
import { SUN } from '../../bot/sky/twilight.js';
import type { FixedBody, Observer } from '../../bot/sky/types.js';

const day: SunCircumstances = { separationDeg: 90, sunAltitudeDeg: 30, isSun: false, secondsToSunrise: 60_000 };
const night: SunCircumstances = { separationDeg: 5, sunAltitudeDeg: -10, isSun: false, secondsToSunrise: 20_000 };

describe('the level of warning', () => {
  it.each([
    [0, 'danger'],
    [14.99, 'danger'],
    [15, 'caution'],
    [44.99, 'caution'],
    [45, 'clear'],
    [180, 'clear'],
  ] as const)('%d° from a Sun that is up: %s', (separationDeg, level) => {
    expect(sunLevel({ ...day, separationDeg })).toBe(level);
  });

  it('counts the Sun as up until its upper edge is below the horizon', () => {
    expect(sunLevel({ ...day, separationDeg: 10, sunAltitudeDeg: -0.83 })).toBe('danger');
    expect(sunLevel({ ...day, separationDeg: 10, sunAltitudeDeg: -0.84 })).toBe('clear');
  });

  it('is clear by night wherever one points, until an hour before sunrise', () => {
    expect(sunLevel(night)).toBe('clear');
    expect(sunLevel({ ...night, secondsToSunrise: null })).toBe('clear');
    expect(sunLevel({ ...night, secondsToSunrise: 3601 })).toBe('clear');
    expect(sunLevel({ ...night, secondsToSunrise: 3600, separationDeg: 170 })).toBe('caution');
  });

  it('is always danger for the Sun itself', () => {
    expect(sunLevel({ ...night, isSun: true })).toBe('danger');
  });

  it('takes a number it does not have for the worst', () => {
    expect(sunLevel({ ...day, separationDeg: NaN })).toBe('danger');
    expect(sunLevel({ ...night, sunAltitudeDeg: NaN })).toBe('danger');
  });

  it('lets a club widen the limits and never narrow them', () => {
    expect(sunLevel({ ...day, separationDeg: 20, limits: { dangerDeg: 25 } })).toBe('danger');
    expect(sunLevel({ ...day, separationDeg: 50, limits: { cautionDeg: 60 } })).toBe('caution');
    expect(sunLevel({ ...day, separationDeg: 10, limits: { dangerDeg: 2, cautionDeg: 3 } })).toBe('danger');
    expect(sunLimits({ dangerDeg: 1, cautionDeg: 1 })).toEqual({ dangerDeg: 15, cautionDeg: 45 });
    expect(sunLimits({ dangerDeg: 60 })).toEqual({ dangerDeg: 60, cautionDeg: 60 });
  });
});

describe('a target by the Sun', () => {
  const common: Observer = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 10 };
  // Regulus stands 0.5° from the ecliptic; the Sun passes it about 23 August (common knowledge of the trade; ecliptic longitude 150°).
  const regulus: FixedBody = { kind: 'fixed', raHoursJ2000: 10.1395, decDegJ2000: 11.9672 };

  it('is dangerous by day when the Sun stands next to it, and says when the Sun sets and rises', () => {
    const utcMs = Date.UTC(2026, 7, 23, 12);
    const safety = sunSafety(regulus, common, utcMs);
    expect(safety.level).toBe('danger');
    expect(safety.separationDeg).toBeLessThan(2);
    expect(safety.sunAltitudeDeg).toBeGreaterThan(40);
    expect(safety.nextSunsetUtcMs! - utcMs).toBeGreaterThan(6 * 3_600_000);
    expect(safety.nextSunriseUtcMs!).toBeGreaterThan(safety.nextSunsetUtcMs!);
  });

  it('is clear at midnight and called to caution as sunrise comes near', () => {
    const { nextSunriseUtcMs } = sunSafety(regulus, common, Date.UTC(2026, 1, 20));
    expect(sunSafety(regulus, common, nextSunriseUtcMs! - 3_700_000).level).toBe('clear');
    expect(sunSafety(regulus, common, nextSunriseUtcMs! - 3_500_000).level).toBe('caution');
  });

  it('is danger for the Sun, with no separation, even at night', () => {
    const safety = sunSafety(SUN, common, Date.UTC(2026, 1, 20));
    expect(safety).toMatchObject({ level: 'danger', separationDeg: 0 });
  });

  it('has no sunrise to name deep in polar night', () => {
    const safety = sunSafety(regulus, { latitudeDeg: 78, longitudeDeg: 15, elevationM: 0 }, Date.UTC(2026, 11, 21));
    expect(safety).toMatchObject({ level: 'clear', nextSunriseUtcMs: null, nextSunsetUtcMs: null });
  });
});
