import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  completePlaces,
  loadPlaces,
  placeLabel,
  placeSpec,
  resolvePlace,
  resolveSite,
  siteProblemMessage,
  timeZoneAt,
  type PlaceRecord,
  type Spot,
} from '../../bot/places/index.js';
import { shippedPlaces } from '../shipped.js';

const places = shippedPlaces();

const place = (text: string): PlaceRecord => {
  const result = resolvePlace(places, text);
  if (isProblem(result)) throw new Error(`"${text}" gave ${result.problem}`);
  return result.place;
};

const candidates = (text: string, near: Spot | null = null): readonly string[] => {
  const result = resolvePlace(places, text, near);
  if (!isProblem(result) || result.problem !== 'ambiguous-place') throw new Error(`"${text}" is not ambiguous`);
  return result.candidates.map(placeSpec);
};

describe('the list of places', () => {
  it('has them where they are', () => {
    // Geodetic positions of well-known towns, in degrees. Source: Wikipedia's coordinates of each town (values from memory), good to some 5 km.
    const known: readonly (readonly [string, number, number, string])[] = [
      ['Calgary', 51.05, -114.06, 'America/Edmonton'],
      ['Reykjavik', 64.147, -21.94, 'Atlantic/Reykjavik'],
      ['Nairobi', -1.286, 36.817, 'Africa/Nairobi'],
      ['Ushuaia', -54.8, -68.3, 'America/Argentina/Ushuaia'],
      ['Longyearbyen', 78.22, 15.65, 'Arctic/Longyearbyen'],
      ['Alice Springs', -23.7, 133.88, 'Australia/Darwin'],
      ['Kathmandu', 27.717, 85.324, 'Asia/Kathmandu'],
      ['Dunedin, New Zealand', -45.874, 170.503, 'Pacific/Auckland'],
      ['Flagstaff', 35.198, -111.651, 'America/Phoenix'],
    ];
    for (const [name, latitude, longitude, zone] of known) {
      const { latitudeDeg, longitudeDeg, zone: found } = place(name);
      expect(
        Math.hypot(latitudeDeg - latitude, (longitudeDeg - longitude) * Math.cos((latitude * Math.PI) / 180)),
        name,
      ).toBeLessThan(0.05);
      expect(found, name).toBe(zone);
    }
  });

  it('agrees with the time zone boundaries on the zone of large towns', () => {
    // GeoNames' zone against the one from the timezone-boundary-builder shapes (through @photostructure/tz-lookup): two sources apart.
    let differing = 0;
    const offsetAt = (zone: string, month: number): string =>
      new Intl.DateTimeFormat('en', { timeZone: zone, timeZoneName: 'longOffset' })
        .format(Date.UTC(2026, month, 1))
        .replace(/.*GMT/, '');
    const count = 1000;
    for (let row = 0; row < count; row += 1) {
      const { latitudeDeg, longitudeDeg, zone, name } = places.placeAt(row);
      const looked = timeZoneAt(latitudeDeg, longitudeDeg);
      if (offsetAt(looked, 0) !== offsetAt(zone, 0) || offsetAt(looked, 6) !== offsetAt(zone, 6)) {
        differing += 1;
        console.log(`${name}: GeoNames ${zone}, boundaries ${looked}`);
      }
    }
    console.log(`${differing} of ${count} towns differ`);
    expect(differing / count).toBeLessThan(0.01);
  });
});

describe('a place by its name', () => {
  it.each([
    ['Springfield, Illinois', 'Springfield, Illinois, US'],
    ['springfield il', 'Springfield, Illinois, US'],
    ['Springfield, IL, USA', 'Springfield, Illinois, US'],
    ['Cambridge GB', 'Cambridge, England, GB'],
    ['Cambridge, England', 'Cambridge, England, GB'],
    ['cambridge united kingdom', 'Cambridge, England, GB'],
    ['Cambridge, UK', 'Cambridge, England, GB'],
    ['Cambridge Massachusetts', 'Cambridge, Massachusetts, US'],
    ['London, Ontario', 'London, Ontario, CA'],
    ['london on', 'London, Ontario, CA'],
    ['Perth WA', 'Perth, Western Australia, AU'],
    ['Perth, Scotland', 'Perth, Scotland, GB'],
    ['paris texas', 'Paris, Texas, US'],
    ['St Johns NL', "St. John's, Newfoundland and Labrador, CA"],
    ['Lodz', 'Łódź, Łódź Voivodeship, PL'],
    ['Łódź', 'Łódź, Łódź Voivodeship, PL'],
    ['sao paulo', 'São Paulo, São Paulo, BR'],
    ['Wien', 'Vienna, Vienna, AT'],
    ['München', 'Munich, Bavaria, DE'],
    ['Köln', 'Köln, North Rhine-Westphalia, DE'],
    ['Cologne', 'Köln, North Rhine-Westphalia, DE'],
    ['東京', 'Tokyo, Tokyo, JP'],
    ['Москва', 'Moscow, Moscow, RU'],
    ['CALGARY', 'Calgary, Alberta, CA'],
  ])('%s is %s', (text, spec) => {
    expect(placeSpec(place(text))).toBe(spec);
  });

  it('is shown without a region of its own name', () => {
    expect(placeLabel(place('Wien'))).toBe('Vienna, Austria');
    expect(placeLabel(place('Calgary'))).toBe('Calgary, Alberta, Canada');
  });

  it('asks which, where several are of a size', () => {
    expect(candidates('Springfield').length).toBeGreaterThan(10);
    expect(candidates('Cambridge').slice(0, 3)).toEqual([
      'Cambridge, England, GB',
      'Cambridge, Ontario, CA',
      'Cambridge, Massachusetts, US',
    ]);
    expect(candidates('Birmingham')).toContain('Birmingham, Alabama, US');
    expect(candidates('Springfield, US').length).toBeGreaterThan(10);
  });

  it('takes one at least twenty times as large as the next, and says so', () => {
    const result = resolvePlace(places, 'Paris');
    expect(!isProblem(result) && placeLabel(result.place)).toBe('Paris, Île-de-France, France');
    expect(!isProblem(result) && result.note).toMatch(/Took Paris.*next place of that name is Paris, Texas, US/);
  });

  it('takes the one near where somebody stands only where it is plainly the larger too', () => {
    const fens = { latitudeDeg: 52.71, longitudeDeg: 0.12 };
    const dallas = { latitudeDeg: 32.78, longitudeDeg: -96.8 };
    const spec = (name: string, near: typeof fens): string => {
      const result = resolvePlace(places, name, near);
      return isProblem(result) ? result.problem : placeSpec(result.place);
    };
    expect(spec('Norwich', fens)).toBe('Norwich, England, GB');
    expect(spec('Norwich', dallas)).toBe('ambiguous-place');
    expect(spec('Cambridge', fens)).toBe('ambiguous-place');
    expect(spec('Birmingham', fens)).toBe('ambiguous-place');
    expect(spec('Paris', fens)).toBe('Paris, Île-de-France, FR');
    expect(spec('Paris', dallas)).toBe('ambiguous-place');
  });

  it('offers the one near where somebody stands before larger ones', () => {
    const kielder = { latitudeDeg: 55.23, longitudeDeg: -2.58 };
    const [largest, ...smaller] = candidates('Newcastle');
    expect(largest).not.toBe('Newcastle upon Tyne, England, GB');
    const [nearest, ...others] = candidates('Newcastle', kielder);
    expect(nearest).toBe('Newcastle upon Tyne, England, GB');
    expect(others).toEqual([largest, ...smaller].filter((offered) => offered !== nearest));
  });

  it('offers the nearest names for a slip, and does not guess', () => {
    const result = resolvePlace(places, 'Calgery');
    expect(isProblem(result) && result.problem === 'unknown-place' && result.nearest.map(placeSpec)).toContain(
      'Calgary, Alberta, CA',
    );
  });

  it.each([
    '',
    '  ',
    ',',
    '???',
    'Nowhere at all',
    'x'.repeat(10_000),
    '__proto__',
    'constructor',
    '\u202eCalgery',
    '@everyone',
    ', Alberta',
  ])('says what would be right (%#)', (text) => {
    const result = resolvePlace(places, text);
    if (!isProblem(result)) throw new Error(placeLabel(result.place));
    const message = siteProblemMessage(result);
    expect(message.length).toBeGreaterThan(20);
    expect(message.length).toBeLessThanOrEqual(400);
    expect(message).not.toMatch(/[\p{Cc}\p{Cf}@]/u);
  });

  it('is found again by the text that tells it apart', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 20_000 }), (row) => {
        const wanted = places.placeAt(row);
        const result = resolvePlace(places, placeSpec(wanted));
        const offered = isProblem(result) && result.problem === 'ambiguous-place' ? result.candidates : [];
        const among = !isProblem(result) ? [result.place] : offered;
        // New Delhi is a name of Delhi as well, two kilometres off: the larger of one name stands for both.
        const isIt = (p: typeof wanted): boolean =>
          Math.hypot(p.latitudeDeg - wanted.latitudeDeg, p.longitudeDeg - wanted.longitudeDeg) <
          (p.population > wanted.population ? 0.03 : 1e-9);
        expect(among.some(isIt), placeSpec(wanted)).toBe(true);
      }),
      { numRuns: 500 },
    );
  });

  it('never throws', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 150 }), (text) => {
        const result = resolveSite(places, text);
        if (isProblem(result)) expect(siteProblemMessage(result).length).toBeLessThanOrEqual(400);
      }),
      { numRuns: 500 },
    );
  });
});

describe('completion of a place', () => {
  const values = (partial: string): readonly string[] => completePlaces(places, partial).map((c) => c.value);

  it('puts the largest first, by its own name before its other names', () => {
    expect(values('calg')[0]).toBe('Calgary, Alberta, CA');
    expect(values('lond')[0]).toBe('London, England, GB');
    expect(values('san').slice(0, 5)).not.toContain('Shanghai, CN');
    expect(values('münch')[0]).toBe('Munich, Bavaria, DE');
  });

  it('narrows by what follows the comma', () => {
    expect(values('springfield, i')).toEqual(['Springfield, Illinois, US']);
    expect(values('cambridge, g')).toContain('Cambridge, England, GB');
  });

  it('offers nothing for less than two letters, and never throws', () => {
    expect(values('c')).toEqual([]);
    fc.assert(
      fc.property(fc.string({ unit: 'binary', maxLength: 150 }), (partial) => {
        for (const { label } of completePlaces(places, partial)) expect(label.length).toBeLessThanOrEqual(100);
      }),
      { numRuns: 300 },
    );
  });

  it('offers only what resolves, to a place or to a choice that has it', () => {
    for (const partial of ['spr', 'cam', 'san jo', 'st', 'new', 'al']) {
      for (const value of values(partial)) {
        const result = resolvePlace(places, value);
        expect(!isProblem(result) || result.problem === 'ambiguous-place', value).toBe(true);
      }
    }
  });
});

describe('a site', () => {
  it('has its clocks and its height', () => {
    const site = resolveSite(places, '51.05,-114.07');
    expect(!isProblem(site) && site.site).toEqual({
      name: '51.05° N, 114.07° W',
      observer: { latitudeDeg: 51.05, longitudeDeg: -114.07, elevationM: 0 },
      zone: 'America/Edmonton',
      source: 'coordinates',
    });
    const town = resolveSite(places, 'Calgary');
    expect(!isProblem(town) && town.site).toMatchObject({
      name: 'Calgary, Alberta, Canada',
      zone: 'America/Edmonton',
      source: 'place',
    });
    expect(!isProblem(town) && town.site.observer.elevationM).toBeGreaterThan(1000);
  });

  it('takes the height from an ISO 6709 string', () => {
    const site = resolveSite(places, '+5103.0-11404.2+1045/');
    expect(!isProblem(site) && site.site.observer.elevationM).toBe(1045);
  });

  it('does not read the list for a position', () => {
    expect(resolveSite(loadPlaces('/nowhere'), '52.71,0.12')).toHaveProperty('site');
    expect(() => resolveSite(loadPlaces('/nowhere'), 'Calgary')).toThrow(/places.tsv.gz/);
  });

  it('has a zone at sea and at the poles', () => {
    for (const [lat, lon] of [
      [0, -30],
      [90, 0],
      [-90, 0],
      [0, 180],
      [-54, -37],
    ] as const) {
      expect(() => new Intl.DateTimeFormat('en', { timeZone: timeZoneAt(lat, lon) })).not.toThrow();
    }
  });
});
