/* eslint-disable max-lines -- one property for each kind of value, over one set of nasty texts */
import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { completeTargets, resolveTarget, targetProblemMessage } from '../../bot/catalogue/index.js';
import { completePlaces, parsePosition, resolveSite, siteProblemMessage } from '../../bot/places/index.js';
import { parseHorizonProfile } from '../../bot/pointing/horizon/horizon-profile.js';
import { parseDate, parseTime } from '../../bot/times/index.js';
import { textTroubles } from './harmless.js';
import { anyText, counted, fragments } from './inputs.js';
import { shippedCatalogue, shippedPlaces } from '../shipped.js';

const catalogue = shippedCatalogue();
const places = shippedPlaces();
const ZONES = [
  'Europe/London',
  'America/Edmonton',
  'Asia/Kathmandu',
  'Australia/Lord_Howe',
  'Pacific/Apia',
  'Etc/GMT+12',
  'Africa/Casablanca',
  'America/St_Johns',
];
const message = (text: string): void => {
  expect(textTroubles(text)).toEqual([]);
  expect(text.length).toBeLessThanOrEqual(400);
  expect(text.trim()).not.toBe('');
};
const LONG = 240_000;

describe('whatever is typed as a value', () => {
  it(
    'a target is found, or the message says what would be right',
    () => {
      const targets = fc.oneof(
        anyText,
        fragments([
          'NGC',
          'M',
          'α',
          'alp2',
          'Cap',
          '61',
          'Cyg',
          'Orion',
          'nebula',
          'Betelgeux',
          '05h34m32s',
          '+22°00′52″',
          '5.5',
          '-95',
          '24h',
          '12 34 56',
          'J2000',
          'RA',
          'Dec',
        ]),
      );
      fc.assert(
        fc.property(targets, (text) => {
          const found = resolveTarget(catalogue, text);
          if (isProblem(found)) return message(targetProblemMessage(found));
          expect(found.target.name).not.toBe('');
          if (found.note !== undefined) message(found.note);
          const { body } = found.target;
          if (body.kind === 'fixed') {
            expect(body.raHoursJ2000).toBeGreaterThanOrEqual(0);
            expect(body.raHoursJ2000).toBeLessThan(24);
            expect(Math.abs(body.decDegJ2000)).toBeLessThanOrEqual(90);
          }
        }),
        counted('target look-up', 50_000),
      );
    },
    LONG,
  );

  it(
    'every suggestion of a target leads to a target, and fits',
    () => {
      fc.assert(
        fc.property(
          fc.oneof(anyText, fragments(['N', 'NG', 'ngc 7', 'al', 'alph', 'm 1', 'the', 'whirl', 'ß', 'α'], 2)),
          (text) => {
            const found = completeTargets(catalogue, text, 25);
            expect(found.length).toBeLessThanOrEqual(25);
            for (const { value, label } of found) {
              expect(label.length).toBeLessThanOrEqual(100);
              expect(value.length).toBeLessThanOrEqual(100);
              expect(textTroubles(label)).toEqual([]);
            }
            const first = found[0];
            if (first !== undefined) expect(isProblem(resolveTarget(catalogue, first.value)), first.value).toBe(false);
          },
        ),
        counted('target suggestions', 50_000),
      );
    },
    LONG,
  );

  it(
    'a position is on the Earth, or the message says what would be right',
    () => {
      const positions = fc.oneof(
        anyText,
        fragments(
          [
            '51.05',
            '-114.07',
            '52',
            '42',
            '36',
            '90',
            '180',
            '91',
            '-0',
            'N',
            'S',
            'W',
            'E',
            '°',
            '′',
            '″',
            'geo:',
            '+',
            'lat',
            'lon',
            ',',
            '/',
          ],
          8,
        ),
      );
      fc.assert(
        fc.property(positions, (text) => {
          const found = parsePosition(text);
          if (found === null) return;
          if (isProblem(found)) return message(siteProblemMessage(found));
          expect(Math.abs(found.position.latitudeDeg)).toBeLessThanOrEqual(90);
          expect(Math.abs(found.position.longitudeDeg)).toBeLessThanOrEqual(180);
          expect(Number.isNaN(found.position.elevationM)).toBe(false);
        }),
        counted('positions', 150_000),
      );
    },
    LONG,
  );

  it(
    'a site has a zone that clocks know, or the message says what would be right',
    () => {
      fc.assert(
        fc.property(
          fc.oneof(
            anyText,
            fragments(
              [
                'Calgary',
                'York',
                'New',
                'Springfield',
                'Illinois',
                'US',
                'St',
                "John's",
                '東京',
                'München',
                'Łódź',
                'Ely',
              ],
              4,
            ),
          ),
          (text) => {
            const found = resolveSite(places, text);
            if (isProblem(found)) return message(siteProblemMessage(found));
            expect(() => new Intl.DateTimeFormat('en', { timeZone: found.site.zone })).not.toThrow();
            expect(textTroubles(found.site.name + (found.site.note ?? ''))).toEqual([]);
          },
        ),
        counted('sites', 20_000),
      );
      fc.assert(
        fc.property(anyText, (text) => {
          for (const { value, label } of completePlaces(places, text, 25)) {
            expect(label.length).toBeLessThanOrEqual(100);
            expect(textTroubles(label + value)).toEqual([]);
          }
        }),
        counted('place suggestions', 20_000),
      );
    },
    LONG,
  );

  it(
    'a time is an instant the ephemeris covers, or the message says what would be right',
    () => {
      const times = fc.oneof(
        anyText,
        fragments(
          [
            'tonight',
            'tomorrow',
            'friday',
            'night',
            'in',
            '2',
            'hours',
            '30',
            'minutes',
            'ago',
            '22:30',
            '25',
            '24:00',
            '12am',
            '13',
            'pm',
            "o'clock",
            'noon',
            'midnight',
            '2026-03-29',
            '01:30',
            '02:30',
            '2026-10-25',
            'utc',
            'z',
            'BST',
            '+05:45',
            'at',
            '1 Dec',
            '29 feb',
          ],
          5,
        ),
      );
      fc.assert(
        fc.property(
          times,
          fc.constantFrom(...ZONES),
          fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2050, 0, 1) }),
          (text, zone, nowUtcMs) => {
            const found = parseTime(text, zone, nowUtcMs);
            if (isProblem(found)) return message(found.message);
            expect(Number.isFinite(found.utcMs)).toBe(true);
            expect(Number.isNaN(new Date(found.utcMs).getTime())).toBe(false);
            if (found.note !== undefined) message(found.note);
          },
        ),
        counted('times', 180_000),
      );
    },
    LONG,
  );

  it(
    'a date is one of the calendar, or the message says what would be right',
    () => {
      const dates = fc.oneof(
        anyText,
        fragments(
          [
            'tonight',
            'tomorrow',
            'next',
            'last',
            'friday',
            'sept',
            '31',
            '2027',
            '2026-02-29',
            '1',
            'Dec',
            '29 feb',
            '5/6/2027',
            'in 3',
            'weeks',
            'yesterday',
            'night',
            'the night of',
            'on',
          ],
          4,
        ),
      );
      fc.assert(
        fc.property(
          dates,
          fc.constantFrom(...ZONES),
          fc.integer({ min: Date.UTC(1990, 0, 1), max: Date.UTC(2050, 0, 1) }),
          (text, zone, nowUtcMs) => {
            const found = parseDate(text, zone, nowUtcMs);
            if (isProblem(found)) return message(found.message);
            const { year, month, day } = found.date;
            const there = new Date(Date.UTC(year, month - 1, day));
            expect([there.getUTCFullYear(), there.getUTCMonth() + 1, there.getUTCDate()]).toEqual([year, month, day]);
          },
        ),
        counted('dates', 150_000),
      );
    },
    LONG,
  );

  it(
    'a horizon profile is in order and in range, or says why not',
    () => {
      fc.assert(
        fc.property(
          fc.oneof(anyText, fragments(['90:20', '120', '15', 'ESE', 'n', '#', '\n', '360:5', '-10', '91', ','], 12)),
          (text) => {
            const found = parseHorizonProfile(text);
            if (isProblem(found)) return;
            found.points.forEach(({ azimuthDeg, altitudeDeg }, i) => {
              expect(azimuthDeg).toBeGreaterThan(i === 0 ? -1 : (found.points[i - 1]?.azimuthDeg ?? 0));
              expect(azimuthDeg).toBeLessThan(360);
              expect(altitudeDeg).toBeGreaterThanOrEqual(-10);
              expect(altitudeDeg).toBeLessThanOrEqual(90);
            });
          },
        ),
        counted('horizon profiles', 60_000),
      );
    },
    LONG,
  );
});
