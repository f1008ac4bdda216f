import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { SHOWERS, showersHere, zenithalRateAt } from '../../bot/ahead/showers.js';
import { meetingsHere } from '../../bot/ahead/meetings.js';
import { darkNights } from '../../bot/ahead/moonless.js';
import { lunarEclipses, solarEclipses } from '../../bot/sky/eclipses.js';
import { jupiterMoons } from '../../bot/sky/jupiter-moons.js';
import { moonAgeDays, moonLibration, moonPhaseName } from '../../bot/sky/moon-details.js';
import { nextMoonPhase } from '../../bot/sky/moon-phase.js';
import { planetEvents } from '../../bot/sky/planet-events.js';

interface Reference {
  readonly phases: readonly { readonly quarter: number; readonly utcMs: number }[];
  readonly lunarEclipses: readonly { readonly kind: string; readonly utcMs: number }[];
  readonly oppositions: readonly { readonly planet: string; readonly utcMs: number }[];
  readonly solarEclipses: readonly {
    readonly site: string;
    readonly latitudeDeg: number;
    readonly longitudeDeg: number;
    readonly startUtcMs: number;
    readonly endUtcMs: number;
    readonly greatestUtcMs: number;
    readonly coveredFraction: number;
    readonly altitudeDeg: number;
  }[];
  readonly meetings: readonly { readonly utcMs: number; readonly separationDeg: number }[];
}
const reference = JSON.parse(readFileSync('test/reference/ahead.json', 'utf8')) as Reference;
const FENWOLD = { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 0 };
const START = Date.UTC(2026, 10, 25);
const UNTIL_2030 = { startUtcMs: START, endUtcMs: Date.UTC(2030, 0, 1) };
const MINUTE = 60_000;

describe('events against skyfield (test/reference/ahead.json)', () => {
  it('has every quarter of the Moon to a minute', () => {
    for (const { quarter, utcMs } of reference.phases)
      expect(Math.abs(nextMoonPhase(quarter * 90, utcMs - 86_400_000) - utcMs)).toBeLessThan(MINUTE);
    expect(reference.phases.length).toBeGreaterThan(150);
  });

  it('has every eclipse of the Moon, its kind and its time to a minute', () => {
    const ours = lunarEclipses(FENWOLD, UNTIL_2030);
    expect(ours.map(({ kind }) => kind)).toEqual(reference.lunarEclipses.map(({ kind }) => kind));
    ours.forEach(({ greatestUtcMs }, i) =>
      expect(Math.abs(greatestUtcMs - (reference.lunarEclipses[i]?.utcMs ?? 0))).toBeLessThan(MINUTE),
    );
  });

  it('has the eclipses of the Sun as each place sees them: times to a minute, the part covered to a hundredth', () => {
    expect(reference.solarEclipses.length).toBeGreaterThanOrEqual(5);
    for (const theirs of reference.solarEclipses) {
      const observer = { ...theirs, elevationM: 0 };
      const span = {
        startUtcMs: theirs.greatestUtcMs - 10 * 86_400_000,
        endUtcMs: theirs.greatestUtcMs + 10 * 86_400_000,
      };
      const [ours, ...others] = solarEclipses(observer, span);
      if (ours === undefined) throw new Error(`none at ${theirs.site}`);
      expect(others).toEqual([]);
      expect(Math.abs(ours.greatestUtcMs - theirs.greatestUtcMs), theirs.site).toBeLessThan(MINUTE);
      expect(Math.abs(ours.span.startUtcMs - theirs.startUtcMs), theirs.site).toBeLessThan(MINUTE);
      expect(Math.abs(ours.span.endUtcMs - theirs.endUtcMs), theirs.site).toBeLessThan(MINUTE);
      expect(Math.abs(ours.coveredFraction - theirs.coveredFraction), theirs.site).toBeLessThan(0.01);
      expect(Math.abs(ours.altitudeDeg - theirs.altitudeDeg), theirs.site).toBeLessThan(0.2);
    }
  });

  it('leaves out an eclipse of the Sun that does not reach a place', () => {
    // The eclipse of 6 February 2027 runs over South America and Africa (NASA's canon of solar eclipses, from memory).
    const span = { startUtcMs: Date.UTC(2027, 0, 15), endUtcMs: Date.UTC(2027, 2, 1) };
    expect(solarEclipses(FENWOLD, span)).toEqual([]);
  });

  it('has the oppositions to two hours', () => {
    for (const { planet, utcMs } of reference.oppositions) {
      const span = { startUtcMs: utcMs - 5 * 86_400_000, endUtcMs: utcMs + 5 * 86_400_000 };
      const found = planetEvents(span).find((e) => e.planet === planet && e.what === 'opposition');
      expect(Math.abs((found?.utcMs ?? 0) - utcMs), planet).toBeLessThan(120 * MINUTE);
    }
    expect(reference.oppositions.length).toBeGreaterThan(10);
  });

  it('has the meetings of Moon and Jupiter of the next weeks, as far apart as skyfield has them that hour', () => {
    const found = meetingsHere(FENWOLD, { startUtcMs: START, endUtcMs: START + 42 * 86_400_000 }).filter(
      ({ names }) => names[1] === 'Jupiter' && names[0] === 'Moon',
    );
    expect(found.map(({ utcMs }) => utcMs)).toEqual(reference.meetings.map(({ utcMs }) => utcMs));
    found.forEach(({ separationDeg }, i) =>
      expect(Math.abs(separationDeg - (reference.meetings[i]?.separationDeg ?? 0))).toBeLessThan(0.02),
    );
  });
});

describe('the Moon', () => {
  // J. Meeus, Astronomical Algorithms, 2nd ed., example 53.a: 1992 April 12, 0 h TD, optical libration l′ = −1.206°, b′ = +4.194° (from memory).
  it('tips as the worked example says', () => {
    const { latitudeDeg, longitudeDeg, distanceKm } = moonLibration(Date.UTC(1992, 3, 12) - 58_000);
    expect(Math.abs(longitudeDeg - -1.206)).toBeLessThan(0.05);
    expect(Math.abs(latitudeDeg - 4.194)).toBeLessThan(0.05);
    expect(Math.abs(distanceKm - 368_409.7)).toBeLessThan(50);
  });

  it('is named as almanacs name it', () => {
    expect([1, 45, 90, 130, 182, 220, 271, 300, 359].map(moonPhaseName)).toEqual([
      'new Moon',
      'waxing crescent',
      'first quarter',
      'waxing gibbous',
      'full Moon',
      'waning gibbous',
      'last quarter',
      'waning crescent',
      'new Moon',
    ]);
  });

  it('is as old as the days since the new Moon of skyfield', () => {
    const newMoon = reference.phases.find(({ quarter }) => quarter === 0)?.utcMs ?? 0;
    expect(moonAgeDays(newMoon + 5 * 86_400_000)).toBeCloseTo(5, 2);
  });

  it('leaves the Saturdays about new Moon dark', () => {
    const from = { year: 2026, month: 11, day: 25 };
    const nights = darkNights(FENWOLD, { from, days: 42, utcOffsetMinutes: 0, weekdays: [6], most: 12 });
    // New Moon on 9 December 2026 (skyfield): the Saturdays before and after it are dark for most of the night.
    const hours = new Map(
      nights.map(({ date, span }) => [`${date.month}-${date.day}`, (span.endUtcMs - span.startUtcMs) / 3_600_000]),
    );
    expect(hours.get('12-5')).toBeGreaterThan(8);
    expect(hours.get('12-12')).toBeGreaterThan(8);
    expect(hours.get('12-26')).toBeUndefined();
  });
});

describe('meteor showers', () => {
  // Dates of maximum as the International Meteor Organization's calendars have them in an ordinary year (from memory), to a day.
  it.each([
    ['GEM', 12, 14],
    ['QUA', 1, 4],
    ['LYR', 4, 22],
    ['ETA', 5, 6],
    ['PER', 8, 13],
    ['ORI', 10, 21],
    ['LEO', 11, 17],
    ['URS', 12, 22],
  ])('%s is at its most about %d/%d', (code, month, day) => {
    const found = showersHere(
      { ...FENWOLD, latitudeDeg: 30 },
      { startUtcMs: START, endUtcMs: START + 364 * 86_400_000 },
    );
    const at = found.find(({ shower }) => shower.code === code)?.maximumUtcMs ?? 0;
    const year = new Date(at).getUTCFullYear();
    expect(Math.abs(at - Date.UTC(year, month - 1, day, 12)) / 86_400_000).toBeLessThan(1.5);
  });

  it('has the Geminids’ radiant nearly overhead at two in the morning at 33° north, and leaves the Ursids to the north', () => {
    const span = { startUtcMs: START, endUtcMs: START + 60 * 86_400_000 };
    // At the date line two in the morning is 14 h UT, the hour of the maximum in 2026.
    const at33 = showersHere({ latitudeDeg: 33, longitudeDeg: 180, elevationM: 0 }, span);
    const geminids = at33.find(({ shower }) => shower.code === 'GEM');
    expect(geminids?.radiantAltitudeDeg).toBeGreaterThan(87);
    // The radiant (7 h 28 m) passes the meridian near 2 h local time in mid-December (IMO's calendar).
    expect(Math.abs(((geminids?.bestUtcMs ?? 0) % 86_400_000) / 3_600_000 - 14)).toBeLessThan(0.7);
    const south = showersHere({ latitudeDeg: -34, longitudeDeg: 0, elevationM: 0 }, span);
    expect(south.map(({ shower }) => shower.code)).not.toContain('URS');
    expect(new Set(SHOWERS.map(({ code }) => code)).size).toBe(SHOWERS.length);
  });
});

describe('the moons of Jupiter', () => {
  // J. Meeus, Astronomical Algorithms, 2nd ed., example 44.b: 1992 December 16, 0 h UT, in Jupiter's equatorial radii, west positive (from memory).
  it.each([
    ['Io', -3.45, 0.21],
    ['Europa', 7.44, 0.28],
    ['Ganymede', 1.2, 0.59],
    ['Callisto', 7.07, 1.03],
  ])('%s stands where the worked example has it', (name, westRadii, northRadii) => {
    const moon = jupiterMoons(Date.UTC(1992, 11, 16)).find((m) => m.name === name);
    expect(Math.abs((moon?.westRadii ?? 99) - westRadii)).toBeLessThan(0.03);
    expect(Math.abs((moon?.northRadii ?? 99) - northRadii)).toBeLessThan(0.03);
  });
});

describe('the rate of a shower away from its peak', () => {
  const OF = (code: string) => SHOWERS.find((shower) => shower.code === code);
  const rateAfter = (code: string, hours: number): number => {
    const shower = OF(code);
    return shower === undefined ? NaN : zenithalRateAt(shower, 0, hours * 3_600_000);
  };

  it('falls to half within hours for the Quadrantids and within days for the Orionids', () => {
    // The Quadrantids' half-width is some 3 to 4 hours, the Orionids' days (International Meteor Organization's calendars, from memory).
    expect(rateAfter('QUA', 2)).toBeGreaterThan(40);
    expect(rateAfter('QUA', 5)).toBeLessThan(40);
    expect(rateAfter('QUA', -11)).toBeLessThan(20);
    expect(rateAfter('ORI', 24)).toBeGreaterThan(12);
  });

  it('falls faster after the Geminids’ peak than it rose before (IMO’s counts, from memory)', () => {
    expect(rateAfter('GEM', 12)).toBeLessThan(rateAfter('GEM', -12));
  });

  it('chooses the night before the peak where that is nearer', () => {
    // The Geminids' peak of 2026 is about 14 h UT on 14 December: for Lisbon the night that ends that morning.
    const lisbon = { latitudeDeg: 38.72, longitudeDeg: -9.14, elevationM: 0 };
    const span = { startUtcMs: Date.UTC(2026, 10, 27), endUtcMs: Date.UTC(2027, 0, 20) };
    const geminids = showersHere(lisbon, span).find(({ shower }) => shower.code === 'GEM');
    expect(new Date(geminids?.bestUtcMs ?? 0).toISOString()).toMatch(/^2026-12-14T0[1-5]/u);
    // For Calgary the Quadrantids are over by the dark of the morning: some 10 to 20 an hour.
    const calgary = { latitudeDeg: 51.05, longitudeDeg: -114.07, elevationM: 1045 };
    const quadrantids = showersHere(calgary, span).find(({ shower }) => shower.code === 'QUA');
    expect(quadrantids?.hourlyRate).toBeGreaterThan(8);
    expect(quadrantids?.hourlyRate).toBeLessThan(22);
  });
});
