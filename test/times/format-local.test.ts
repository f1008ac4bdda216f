import { describe, expect, it } from 'vitest';
import {
  formatClock,
  formatDate,
  formatLocalDate,
  formatLocalDateTime,
  formatLocalTime,
  localDateAt,
  zoneName,
} from '../../bot/times/index.js';

const WINTER = Date.parse('2026-11-26T06:40Z');
const SUMMER = Date.parse('2026-07-01T06:40Z');

describe('local times in words', () => {
  // Abbreviations: IANA time zone database and, for those it shares with everyday English, Unicode CLDR.
  it.each([
    ['America/Denver', WINTER, '23:40 MST'],
    ['Europe/London', WINTER, '06:40 GMT'],
    ['Europe/London', SUMMER, '07:40 BST'],
    ['Europe/Berlin', SUMMER, '08:40 CEST'],
    ['Australia/Sydney', WINTER, '17:40 AEDT'],
    ['Pacific/Auckland', SUMMER, '18:40 NZST'],
    ['Asia/Kolkata', SUMMER, '12:10 IST'],
    ['Africa/Johannesburg', SUMMER, '08:40 SAST'],
    ['Asia/Kathmandu', SUMMER, '12:25 UTC+5:45'],
    ['America/Sao_Paulo', SUMMER, '03:40 UTC−3'],
    ['America/St_Johns', WINTER, '03:10 NST'],
    ['Etc/GMT+8', SUMMER, '22:40 UTC−8'],
    ['Etc/UTC', SUMMER, '06:40 UTC'],
  ])('%s', (zone, utcMs, expected) => {
    expect(formatLocalTime(utcMs, zone)).toBe(expected);
  });

  // Reference: Intl itself, asked in every English that knows abbreviations of a part of the world (Unicode CLDR).
  it('finds every name that some English has for a zone', () => {
    const locales = ['en-US', 'en-GB', 'en-AU', 'en-CA', 'en-IN', 'en-ZA'];
    // A third of the zones, some of every part of the world: making the formats takes long.
    const zones = Intl.supportedValuesOf('timeZone').filter((_, i) => i % 3 === 0);
    const missed = zones.flatMap((zone) => {
      const asked = locales.map((locale) => new Intl.DateTimeFormat(locale, { timeZone: zone, timeZoneName: 'short' }));
      return [WINTER, SUMMER].flatMap((utcMs) => {
        const said = asked.map(
          (format) => format.formatToParts(utcMs).find(({ type }) => type === 'timeZoneName')?.value,
        );
        const name = said.find((value) => /^[A-Z]{2,5}$/u.test(value ?? ''));
        const ours = zoneName(utcMs, zone);
        return (name === undefined ? ours.startsWith('UTC') : ours === name) ? [] : [[zone, name, ours]];
      });
    });
    expect(missed).toEqual([]);
  });

  it('rounds to the nearest minute, over midnight too', () => {
    expect(formatClock(Date.parse('2026-11-26T06:59:29Z'), 'America/Denver')).toBe('23:59');
    expect(formatLocalDateTime(Date.parse('2026-11-26T06:59:30Z'), 'America/Denver')).toBe(
      'Thu 26 Nov 2026, 00:00 MST',
    );
  });

  it('gives the date on the site’s clocks, not in UTC', () => {
    expect(localDateAt(WINTER, 'America/Denver')).toEqual({ year: 2026, month: 11, day: 25 });
    expect(formatLocalDate(WINTER, 'America/Denver')).toBe('Wed 25 Nov 2026');
    expect(formatLocalDate(WINTER, 'Asia/Tokyo')).toBe('Thu 26 Nov 2026');
    expect(formatDate({ year: 2028, month: 2, day: 29 })).toBe('Tue 29 Feb 2028');
  });

  it('takes an unknown zone for UTC rather than failing', () => {
    expect(zoneName(WINTER, 'Nowhere/Here')).toBe('UTC');
    expect(formatClock(WINTER, 'Nowhere/Here')).toBe('06:40');
  });
});
