/** Twilight, darkness and moonless darkness where the Sun or the Moon does not do the usual thing. */
import { describe, expect, it } from 'vitest';
import { MOON, moonlessDark } from '../../bot/sky/moon.js';
import { nightOf } from '../../bot/sky/night.js';
import { horizontalOf } from '../../bot/sky/place.js';
import { riseTransitSet } from '../../bot/sky/rise-set.js';
import { darkness, twilights } from '../../bot/sky/twilight.js';
import type { Observer } from '../../bot/sky/types.js';

const at = (latitudeDeg: number, longitudeDeg = 15): Observer => ({ latitudeDeg, longitudeDeg, elevationM: 0 });
const nightAt = (month: number, day: number) => nightOf({ year: 2026, month, day }, 15);
const altitudeOfMoon = (observer: Observer, utcMs: number): number => horizontalOf(MOON, observer, utcMs).altitudeDeg;

describe('twilights', () => {
  it('come in order on an ordinary night', () => {
    const { startUtcMs, endUtcMs } = nightAt(3, 20);
    const t = twilights(at(45), startUtcMs, endUtcMs);
    const order = [
      startUtcMs,
      t.sunsetUtcMs,
      t.civil!.duskUtcMs,
      t.nautical!.duskUtcMs,
      t.astronomical!.duskUtcMs,
      t.astronomical!.dawnUtcMs,
      t.nautical!.dawnUtcMs,
      t.civil!.dawnUtcMs,
      t.sunriseUtcMs,
      endUtcMs,
    ] as number[];
    expect(order).toEqual([...order].sort((a, b) => a - b));
    expect(new Set(order).size).toBe(10);
  });

  it('are all absent in polar day', () => {
    const { startUtcMs, endUtcMs } = nightAt(6, 21);
    expect(twilights(at(78), startUtcMs, endUtcMs)).toEqual({
      sunsetUtcMs: null,
      sunriseUtcMs: null,
      civil: null,
      nautical: null,
      astronomical: null,
      sunAlwaysUp: true,
      sunAlwaysDown: false,
    });
    expect(darkness(at(78), startUtcMs, endUtcMs)).toBeNull();
    expect(moonlessDark(at(78), startUtcMs, endUtcMs)).toEqual([]);
  });

  it('tell a night that is dark throughout from one that never gets dark', () => {
    const { startUtcMs, endUtcMs } = nightAt(12, 21);
    const polar = twilights(at(88), startUtcMs, endUtcMs);
    expect(polar.sunAlwaysDown).toBe(true);
    expect(polar.astronomical).toEqual({ duskUtcMs: null, dawnUtcMs: null, darkAllNight: true });
    expect(darkness(at(88), startUtcMs, endUtcMs)).toEqual({ startUtcMs, endUtcMs });

    const summer = nightAt(6, 21);
    const light = twilights(at(52), summer.startUtcMs, summer.endUtcMs);
    expect(light.sunsetUtcMs).not.toBeNull();
    expect(light.nautical).not.toBeNull();
    expect(light.astronomical).toBeNull();
  });
});

describe('darkness without the Moon', () => {
  it('lies inside the darkness and has the Moon down at every hour of it', () => {
    for (let day = 1; day <= 28; day++) {
      const { startUtcMs, endUtcMs } = nightAt(11, day);
      const dark = darkness(at(45), startUtcMs, endUtcMs)!;
      let moonlessMs = 0;
      for (const span of moonlessDark(at(45), startUtcMs, endUtcMs)) {
        expect(span.startUtcMs).toBeGreaterThanOrEqual(dark.startUtcMs);
        expect(span.endUtcMs).toBeLessThanOrEqual(dark.endUtcMs);
        moonlessMs += span.endUtcMs - span.startUtcMs;
        for (let i = 0; i <= 8; i++) {
          expect(altitudeOfMoon(at(45), span.startUtcMs + (i * (span.endUtcMs - span.startUtcMs)) / 8)).toBeLessThan(
            -0.75,
          );
        }
      }
      // What is left of the darkness has the Moon up: count it in minutes.
      let upMinutes = 0;
      for (let t = dark.startUtcMs; t < dark.endUtcMs; t += 60_000) if (altitudeOfMoon(at(45), t) > -0.83) upMinutes++;
      expect(Math.abs((dark.endUtcMs - dark.startUtcMs - moonlessMs) / 60_000 - upMinutes)).toBeLessThan(3);
    }
  });

  it('is the whole night around new Moon and none of it around full Moon', () => {
    // New Moon 2026 November 9, 07:02 UTC and full Moon November 24, 14:53 UTC (values from memory; skyfield on DE421 agrees).
    const fresh = nightAt(11, 9);
    expect(moonlessDark(at(45), fresh.startUtcMs, fresh.endUtcMs)).toEqual([
      darkness(at(45), fresh.startUtcMs, fresh.endUtcMs),
    ]);
    const full = nightAt(11, 24);
    expect(moonlessDark(at(45), full.startUtcMs, full.endUtcMs)).toEqual([]);
  });
});

describe('moonrise and moonset', () => {
  it('skip a date about once a month, since the Moon is 50 minutes later each day', () => {
    let without = 0;
    for (let day = 1; day <= 28; day++) {
      const { startUtcMs, endUtcMs } = nightAt(2, day);
      if (riseTransitSet(MOON, at(45), startUtcMs, endUtcMs).riseUtcMs === null) without++;
    }
    expect(without).toBe(1);
  });
});
