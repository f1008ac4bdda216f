import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { formatLocalDateTime, parseTime } from '../../bot/times/index.js';
import { localToUtc, offsetMinutes } from '../../bot/times/local-to-utc.js';

const NOW = Date.UTC(2026, 0, 15, 12);

const utcOf = (text: string, zone: string): { utc: string; note: string | undefined } => {
  const result = parseTime(text, zone, NOW);
  if (isProblem(result)) throw new Error(result.message);
  return { utc: new Date(result.utcMs).toISOString().slice(0, 16), note: result.note };
};

/**
 * Zone, local time as typed, UTC taken, what the clocks do. Source: IANA time zone database (files northamerica, europe, australasia):
 * US second Sunday of March and first of November at 2:00; EU last Sundays of March and October at 1:00 UTC; Sydney first Sundays of
 * October at 2:00 and April at 3:00 standard; Lord Howe by half an hour; Chatham at 2:45 standard; Troll by two hours.
 */
const CHANGES: readonly (readonly [string, string, string, 'plain' | 'skipped' | 'repeated'])[] = [
  ['America/New_York', '2026-03-08 01:59', '2026-03-08T06:59', 'plain'],
  ['America/New_York', '2026-03-08 02:00', '2026-03-08T07:00', 'skipped'],
  ['America/New_York', '2026-03-08 02:30', '2026-03-08T07:30', 'skipped'],
  ['America/New_York', '2026-03-08 03:00', '2026-03-08T07:00', 'plain'],
  ['America/New_York', '2026-11-01 00:59', '2026-11-01T04:59', 'plain'],
  ['America/New_York', '2026-11-01 01:00', '2026-11-01T05:00', 'repeated'],
  ['America/New_York', '2026-11-01 01:59', '2026-11-01T05:59', 'repeated'],
  ['America/New_York', '2026-11-01 02:00', '2026-11-01T07:00', 'plain'],
  ['Europe/London', '2026-03-29 00:59', '2026-03-29T00:59', 'plain'],
  ['Europe/London', '2026-03-29 01:30', '2026-03-29T01:30', 'skipped'],
  ['Europe/London', '2026-10-25 01:30', '2026-10-25T00:30', 'repeated'],
  ['Europe/Berlin', '2026-03-29 02:30', '2026-03-29T01:30', 'skipped'],
  ['Europe/Berlin', '2026-10-25 02:30', '2026-10-25T00:30', 'repeated'],
  ['Europe/Berlin', '2026-10-25 03:00', '2026-10-25T02:00', 'plain'],
  ['Australia/Sydney', '2026-04-05 02:30', '2026-04-04T15:30', 'repeated'],
  ['Australia/Sydney', '2026-10-04 02:30', '2026-10-03T16:30', 'skipped'],
  ['Australia/Lord_Howe', '2026-04-05 01:45', '2026-04-04T14:45', 'repeated'],
  ['Australia/Lord_Howe', '2026-10-04 02:15', '2026-10-03T15:45', 'skipped'],
  ['Pacific/Chatham', '2026-09-27 03:00', '2026-09-26T14:15', 'skipped'],
  ['Antarctica/Troll', '2026-03-29 02:00', '2026-03-29T02:00', 'skipped'],
  ['Asia/Kathmandu', '2026-03-29 02:30', '2026-03-28T20:45', 'plain'],
  ['America/Phoenix', '2026-03-08 02:30', '2026-03-08T09:30', 'plain'],
  ['Etc/UTC', '2026-03-29 01:30', '2026-03-29T01:30', 'plain'],
  // Samoa left out 30 December 2011 altogether when it crossed the date line.
  ['Pacific/Apia', '2011-12-30 12:00', '2011-12-30T22:00', 'skipped'],
];

describe('daylight saving', () => {
  it.each(CHANGES)('%s %s is %s UTC, %s', (zone, text, utc, clocks) => {
    const read = utcOf(text, zone);
    expect(read.utc).toBe(utc);
    if (clocks === 'plain') expect(read.note).toBeUndefined();
    if (clocks === 'skipped') expect(read.note).toMatch(/put forward.*took/);
    if (clocks === 'repeated') expect(read.note).toMatch(/put back.*took the first/);
  });

  it('names the second showing of a repeated time, and reads it back', () => {
    const { note } = utcOf('2026-11-01 01:30', 'America/Denver');
    const offer = /such as (\S+)\./.exec(note ?? '')?.[1] ?? '';
    expect(offer).toBe('2026-11-01T01:30-07:00');
    expect(utcOf(offer, 'America/Denver').utc).toBe('2026-11-01T08:30');
  });

  it('shows the very clocks it read, all around the year and the world', () => {
    for (const zone of [
      'America/St_Johns',
      'Europe/Dublin',
      'Australia/Adelaide',
      'Asia/Kolkata',
      'Pacific/Auckland',
      'America/Sao_Paulo',
    ]) {
      for (let day = 0; day < 365; day += 1) {
        const date = new Date(Date.UTC(2026, 0, 1 + day));
        const local = { year: 2026, month: date.getUTCMonth() + 1, day: date.getUTCDate() };
        const { utcMs } = localToUtc(local, { hour: 21, minute: 17, second: 0 }, zone);
        expect(formatLocalDateTime(utcMs, zone)).toContain(', 21:17 ');
        expect(formatLocalDateTime(utcMs, zone)).toContain(` ${local.day} `);
      }
    }
  });
});

// Reference: the platform's own calendar (Intl), asked for each instant.
it('gives every zone the offset it has at any hour, on days of a change too', () => {
  const HOUR = 3_600_000;
  const WEEKS_OF_CHANGE = [Date.UTC(2026, 2, 5), Date.UTC(2026, 2, 26), Date.UTC(2026, 9, 22), Date.UTC(2026, 10, 1)];
  const zones = Intl.supportedValuesOf('timeZone').filter((_, i) => i % 2 === 0);
  const wrong = zones.flatMap((zone) => {
    const shown = new Intl.DateTimeFormat('en-US', { timeZone: zone, timeZoneName: 'longOffset' });
    return WEEKS_OF_CHANGE.flatMap((start) =>
      Array.from({ length: 20 }, (_, i) => start + i * 5 * HOUR + 61_000),
    ).filter((utcMs) => {
      const [, sign = '+', hours = '0', minutes = '0'] = /GMT([+-])(\d+):(\d+)/u.exec(shown.format(utcMs)) ?? [];
      return offsetMinutes(zone, utcMs) !== (Number(hours) * 60 + Number(minutes)) * (sign === '-' ? -1 : 1);
    });
  });
  expect(wrong).toEqual([]);
});
