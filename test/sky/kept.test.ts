import { describe, expect, it } from 'vitest';
import { createKept } from '../../bot/ground/kept.js';
import { horizontalOf } from '../../bot/sky/place.js';
import { skyTrack } from '../../bot/sky/sky-track.js';

describe('a bounded memory of what is dear to work out', () => {
  it('works a thing out once while it is asked for, and forgets what nobody asks for', () => {
    const kept = createKept<number, string>(10);
    const made: number[] = [];
    const ask = (key: number): string =>
      kept(key, () => {
        made.push(key);
        return `value ${key}`;
      });
    for (let i = 0; i < 100; i++) {
      expect(ask(0)).toBe('value 0');
      expect(ask(i)).toBe(`value ${i}`);
    }
    expect(made.filter((key) => key === 0)).toHaveLength(1);
    expect(made).toHaveLength(100);
    expect(ask(1)).toBe('value 1');
    expect(made).toHaveLength(101);
  });

  it('changes no figure: the same to the last bit whatever was asked for before', () => {
    const observer = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 4 };
    const moon = { kind: 'solarSystem', body: 'Moon' } as const;
    const utcMs = Date.UTC(2026, 10, 26, 21, 7, 3);
    const figures = (): readonly number[] => [
      horizontalOf(moon, observer, utcMs).altitudeDeg,
      horizontalOf({ kind: 'fixed', raHoursJ2000: 5.6, decDegJ2000: -5.4 }, observer, utcMs).azimuthDeg,
      skyTrack(moon, observer).hourAngleDegAt(utcMs),
    ];
    const first = figures();
    // More days and instants than are kept.
    for (let day = 1; day < 500; day++) {
      skyTrack(moon, observer).altitudeDegAt(utcMs + day * 86_400_000);
      horizontalOf(moon, { ...observer, latitudeDeg: -30 }, utcMs + day * 1000);
    }
    expect(figures()).toEqual(first);
  });
});
