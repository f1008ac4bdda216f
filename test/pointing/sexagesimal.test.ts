import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  degreesAndMinutesText,
  degreesMinutesSecondsText,
  toDegreesAndMinutes,
  toDegreesMinutesSeconds,
} from '../../bot/pointing/entering/sexagesimal.js';

describe('degrees as a controller wants them typed', () => {
  // ISO 6709:2008, annex H, writes one point in three ways: +40.20361-075.00417, +4012.22-07500.25, +401213.1-0750015.1.
  it("turn the decimal degrees of ISO 6709's example into its minutes and seconds", () => {
    expect(degreesMinutesSecondsText('latitude', 40.20361)).toBe('40° 12′ 13″ N');
    expect(degreesMinutesSecondsText('longitude', -75.00417)).toBe('075° 00′ 15″ W');
    expect(degreesAndMinutesText('latitude', 40.20361)).toBe('40° 12′ N');
    expect(degreesAndMinutesText('longitude', -75.00417)).toBe('075° 00′ W');
  });

  it('carry 60 minutes and 60 seconds over', () => {
    expect(degreesAndMinutesText('latitude', 51.9999)).toBe('52° 00′ N');
    expect(degreesMinutesSecondsText('longitude', -0.999_99)).toBe('001° 00′ 00″ W');
  });

  it('lose no more than half a unit, at any angle', () => {
    fc.assert(
      fc.property(fc.double({ min: -180, max: 180, noNaN: true }), (deg) => {
        const dm = toDegreesAndMinutes(deg);
        const dms = toDegreesMinutesSeconds(deg);
        expect(Math.abs(dm.degrees + dm.minutes / 60 - Math.abs(deg))).toBeLessThanOrEqual(0.5 / 60 + 1e-9);
        expect(Math.abs(dms.degrees + dms.minutes / 60 + dms.seconds / 3600 - Math.abs(deg))).toBeLessThanOrEqual(
          0.5 / 3600 + 1e-9,
        );
        expect(dm.minutes).toBeLessThan(60);
        expect(dms.seconds).toBeLessThan(60);
      }),
    );
  });
});
