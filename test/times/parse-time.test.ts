import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatDate, formatLocalDateTime, parseDate, parseTime } from '../../bot/times/index.js';

// A zone whose rules hold in every time zone database that a supported Node carries: Alberta's changed with 2026b or c.
const ZONE = 'America/Denver';
/** Wednesday 25 November 2026, 20:00 and (the same night) Thursday 02:00, mountain standard time. */
const EVENING = Date.parse('2026-11-26T03:00Z');
const SMALL_HOURS = Date.parse('2026-11-26T09:00Z');
const MORNING = Date.parse('2026-11-26T17:00Z');

const time = (text: string, now = EVENING, zone = ZONE): string => {
  const result = parseTime(text, zone, now);
  return !isProblem(result)
    ? formatLocalDateTime(result.utcMs, zone).replace(' 2026', '').replace(/ MST$/, '')
    : result.message;
};

const date = (text: string, now = EVENING): string => {
  const result = parseDate(text, ZONE, now);
  return !isProblem(result) ? formatDate(result.date) : result.message;
};

describe('a day with a name of its own', () => {
  // Easter by python-dateutil 2.9 (dateutil.easter); the others are the calendar's.
  it.each([
    ['christmas', 'Fri 25 Dec 2026'],
    ['xmas eve', 'Thu 24 Dec 2026'],
    ['boxing day', 'Sat 26 Dec 2026'],
    ["new year's eve", 'Thu 31 Dec 2026'],
    ['new year', 'Thu 31 Dec 2026'],
    ['new years day', 'Fri 1 Jan 2027'],
    ['christmas 2028', 'Mon 25 Dec 2028'],
    ['easter', 'Sun 28 Mar 2027'],
    ['easter 2028', 'Sun 16 Apr 2028'],
    ['easter monday 2038', 'Mon 26 Apr 2038'],
    ['good friday 2030', 'Fri 19 Apr 2030'],
    ['halloween', 'Sun 31 Oct 2027'],
  ])('%s', (text, expected) => expect(date(text)).toBe(expected));

  it('begins the new year at the midnight after its eve', () =>
    expect(time('new year midnight')).toBe('Fri 1 Jan 2027, 00:00'));
});

describe('a time in plain words', () => {
  it.each([
    ['now', 'Wed 25 Nov, 20:00'],
    ['22:30', 'Wed 25 Nov, 22:30'],
    ['at 22:30', 'Wed 25 Nov, 22:30'],
    ['22.30', 'Wed 25 Nov, 22:30'],
    ['22h30', 'Wed 25 Nov, 22:30'],
    ['2230', 'Wed 25 Nov, 22:30'],
    ['10pm', 'Wed 25 Nov, 22:00'],
    ['10 PM', 'Wed 25 Nov, 22:00'],
    ['10:30 p.m.', 'Wed 25 Nov, 22:30'],
    ['22h', 'Wed 25 Nov, 22:00'],
    ['4am', 'Thu 26 Nov, 04:00'],
    ['01:30', 'Thu 26 Nov, 01:30'],
    ['12am', 'Thu 26 Nov, 00:00'],
    ['12pm', 'Wed 25 Nov, 12:00'],
    ['midnight', 'Thu 26 Nov, 00:00'],
    ['noon', 'Wed 25 Nov, 12:00'],
    ['tonight 22:30', 'Wed 25 Nov, 22:30'],
    ['tonight at 22:30', 'Wed 25 Nov, 22:30'],
    ['22:30 tonight', 'Wed 25 Nov, 22:30'],
    ['tonight 01:30', 'Thu 26 Nov, 01:30'],
    ['tonight midnight', 'Thu 26 Nov, 00:00'],
    ['tomorrow 4am', 'Thu 26 Nov, 04:00'],
    ['tomorrow 22:00', 'Thu 26 Nov, 22:00'],
    ['tomorrow night 1am', 'Fri 27 Nov, 01:00'],
    ['yesterday 23:00', 'Tue 24 Nov, 23:00'],
    ['last night 2am', 'Wed 25 Nov, 02:00'],
    ['today 15:00', 'Wed 25 Nov, 15:00'],
    ['in 2 hours', 'Wed 25 Nov, 22:00'],
    ['in 90 minutes', 'Wed 25 Nov, 21:30'],
    ['in 1h 30m', 'Wed 25 Nov, 21:30'],
    ['in 1h30', 'Wed 25 Nov, 21:30'],
    ['in half an hour', 'Wed 25 Nov, 20:30'],
    ['in an hour', 'Wed 25 Nov, 21:00'],
    ['in 1.5 hours', 'Wed 25 Nov, 21:30'],
    ['2 hours ago', 'Wed 25 Nov, 18:00'],
    ['+3h', 'Wed 25 Nov, 23:00'],
    ['friday 22:00', 'Fri 27 Nov, 22:00'],
    ['fri 10pm', 'Fri 27 Nov, 22:00'],
    ['22:00 on Friday', 'Fri 27 Nov, 22:00'],
    ['wednesday 23:00', 'Wed 25 Nov, 23:00'],
    ['next wednesday 23:00', 'Wed 2 Dec, 23:00'],
    ['friday night 1am', 'Sat 28 Nov, 01:00'],
    ['1 December 2026 21:00', 'Tue 1 Dec, 21:00'],
    ['1 Dec 9pm', 'Tue 1 Dec, 21:00'],
    ['Dec 1st, 2026 at 9pm', 'Tue 1 Dec, 21:00'],
    ['2026-12-01 21:00', 'Tue 1 Dec, 21:00'],
    ['2026-12-01T21:00', 'Tue 1 Dec, 21:00'],
    ['2026-12-01T21:00:30', 'Tue 1 Dec, 21:01'],
    ['20261201 2100', 'Tue 1 Dec, 21:00'],
    ['2026-12-02T04:00Z', 'Tue 1 Dec, 21:00'],
    ['2026-12-02T04:00:00+00:00', 'Tue 1 Dec, 21:00'],
    ['20261202T0400Z', 'Tue 1 Dec, 21:00'],
    ['2026-12-01T21:00-07:00', 'Tue 1 Dec, 21:00'],
    ['2026-12-02 04:00 UTC', 'Tue 1 Dec, 21:00'],
    ['04:00 UTC', 'Wed 25 Nov, 21:00'],
    ['22:30 MST', 'Wed 25 Nov, 22:30'],
    ['Tue 1 Dec 2026, 21:00 MST', 'Tue 1 Dec, 21:00'],
    ['Tuesday, 1 December 21:00', 'Tue 1 Dec, 21:00'],
    ['31/12/2026 21:00', 'Thu 31 Dec, 21:00'],
    ['TONIGHT   22:30', 'Wed 25 Nov, 22:30'],
    ['\u202etonight\u200b 22:30', 'Wed 25 Nov, 22:30'],
  ])('%s', (text, expected) => {
    expect(time(text)).toBe(expected);
  });

  it('takes the night in progress until six in the morning', () => {
    expect(time('22:30', SMALL_HOURS)).toBe('Thu 26 Nov, 22:30');
    expect(time('last night 22:30', SMALL_HOURS)).toBe('Wed 25 Nov, 22:30');
    expect(time('8pm last evening', SMALL_HOURS)).toBe('Wed 25 Nov, 20:00');
    expect(time('4am', SMALL_HOURS)).toBe('Thu 26 Nov, 04:00');
    expect(time('tonight 04:00', SMALL_HOURS)).toBe('Thu 26 Nov, 04:00');
    expect(time('22:30', MORNING)).toBe('Thu 26 Nov, 22:30');
    expect(time('tonight 04:00', MORNING)).toBe('Fri 27 Nov, 04:00');
  });

  it('takes tomorrow for the day to come once one has slept, in the small hours', () => {
    // Common practice, no source: as nights are counted, so are their hours.
    expect(time('tomorrow 22:00', SMALL_HOURS)).toBe('Thu 26 Nov, 22:00');
    expect(time('tomorrow', SMALL_HOURS)).toBe('Thu 26 Nov, 22:00');
    expect(time('tomorrow 10am', SMALL_HOURS)).toBe('Thu 26 Nov, 10:00');
    expect(time('tomorrow 4am', SMALL_HOURS)).toBe('Fri 27 Nov, 04:00');
    expect(time('tomorrow midnight', SMALL_HOURS)).toBe('Fri 27 Nov, 00:00');
    expect(time('tomorrow night 22:00', SMALL_HOURS)).toBe('Thu 26 Nov, 22:00');
    expect(time('tomorrow 22:00', MORNING)).toBe('Fri 27 Nov, 22:00');
  });

  it('says what it took where a day has no time', () => {
    const result = parseTime('friday', ZONE, EVENING);
    expect(!isProblem(result) && result.note).toBe('No time given: took 22:00.');
    expect(time('friday')).toBe('Fri 27 Nov, 22:00');
    expect(time('tonight', SMALL_HOURS)).toBe('Thu 26 Nov, 02:00');
  });

  it.each([
    ['', /Give a time/],
    ['soon', /Could not read “soon”/],
    ['sunset', /tonight 22:30/],
    ['25:00', /0 to 23/],
    ['22:60', /0 to 59/],
    ['24:00', /0 to 23/],
    ['13pm', /1 to 12/],
    ['0am', /1 to 12/],
    ['10', /10:00, 10am or 10pm/],
    ['tonight at 10', /morning or evening/],
    ['2026-02-30', /February 2026 has 28 days/],
    ['2026-13-01 10:00', /no month 13/],
    ['Fri 1 Dec 2026 21:00', /Tue 1 Dec 2026, another day/],
    ['31 April 2027 22:00', /April 2027 has 30 days/],
    ['03/04/2026', /Fri 3 Apr 2026 or Wed 4 Mar 2026.*2026-04-03 or 2026-03-04/],
    ['03/04/2026 21:00', /2026-04-03/],
    ['2026-12-01T25:00Z', /Could not read/],
    ['22:30 EST', /leave the zone out/],
    ['1850-01-01 22:00', /1850 .*1900 to 2100/],
    ['2500-01-01', /2500 .*1900 to 2100/],
    ['in 999999 hours', /Could not read/],
    ['tonight tonight', /Could not read/],
    ['x'.repeat(10_000), /too long/],
    ['__proto__', /Could not read/],
    ['<b>@everyone</b>', /Could not read/],
  ])('refuses case %#', (text, message) => {
    const result = parseTime(text, ZONE, EVENING);
    if (!isProblem(result)) throw new Error(new Date(result.utcMs).toISOString());
    expect(result.message).toMatch(message);
    expect(result.message.length).toBeLessThanOrEqual(400);
    expect(result.message).not.toMatch(/[@<>\p{Cc}\p{Cf}]/u);
    expect(result.problem).toBe(/^(1850|2500)/.test(text) ? 'date-out-of-range' : 'bad-time');
  });

  it('reads back the instant it shows', () => {
    const any = fc.integer({ min: Date.UTC(1972, 0, 1), max: Date.UTC(2100, 11, 30) });
    fc.assert(
      fc.property(
        any,
        fc.constantFrom('America/Denver', 'Europe/London', 'Asia/Kathmandu', 'Australia/Sydney', 'Pacific/Auckland'),
        (raw, zone) => {
          const utcMs = Math.floor(raw / 60_000) * 60_000;
          const shown = formatLocalDateTime(utcMs, zone).replace(/ \S+$/, '');
          const result = parseTime(shown, zone, EVENING);
          // A repeated hour is read as its first showing, and says so.
          if (isProblem(result)) throw new Error(`${shown}: ${result.message}`);
          if (result.note === undefined) expect(result.utcMs).toBe(utcMs);
          else expect(result.note).toMatch(/put back/);
        },
      ),
    );
  });

  it('never throws', () => {
    const words = fc.array(
      fc.constantFrom(
        'tonight',
        'tomorrow',
        'friday',
        'night',
        'in',
        'ago',
        '2',
        '22:30',
        '10pm',
        'at',
        'dec',
        '1',
        '2026',
        '03/04/2026',
        'utc',
        'z',
        'now',
        '-',
        'midnight',
        'hours',
        '2026-12-01',
      ),
      { maxLength: 6 },
    );
    fc.assert(
      fc.property(
        fc.oneof(
          words.map((w) => w.join(' ')),
          fc.string({ unit: 'binary', maxLength: 150 }),
        ),
        (text) => {
          for (const result of [parseTime(text, ZONE, EVENING), parseDate(text, ZONE, EVENING)]) {
            if (isProblem(result)) expect(result.message.length).toBeLessThanOrEqual(400);
            else if ('utcMs' in result) expect(Number.isFinite(result.utcMs)).toBe(true);
          }
        },
      ),
      { numRuns: 2000 },
    );
  });
});

describe('the date of a night', () => {
  it.each([
    ['tonight', 'Wed 25 Nov 2026'],
    ['', 'Wed 25 Nov 2026'],
    ['now', 'Wed 25 Nov 2026'],
    ['today', 'Wed 25 Nov 2026'],
    ['tomorrow', 'Thu 26 Nov 2026'],
    ['tomorrow night', 'Thu 26 Nov 2026'],
    ['yesterday', 'Tue 24 Nov 2026'],
    ['last night', 'Tue 24 Nov 2026'],
    ['friday', 'Fri 27 Nov 2026'],
    ['wed', 'Wed 25 Nov 2026'],
    ['next wednesday', 'Wed 2 Dec 2026'],
    ['last friday', 'Fri 20 Nov 2026'],
    ['in 3 days', 'Sat 28 Nov 2026'],
    ['in two weeks', 'Wed 9 Dec 2026'],
    ['2026-12-01', 'Tue 1 Dec 2026'],
    ['1 Dec', 'Tue 1 Dec 2026'],
    ['Dec 1', 'Tue 1 Dec 2026'],
    ['1st December 2026', 'Tue 1 Dec 2026'],
    ['20 Nov', 'Sat 20 Nov 2027'],
    ['29 Feb', 'Tue 29 Feb 2028'],
    ['31/12/2026', 'Thu 31 Dec 2026'],
    ['12/31/2026', 'Thu 31 Dec 2026'],
    ['05.05.2027', 'Wed 5 May 2027'],
    ['the night of 1 Dec', 'Tue 1 Dec 2026'],
  ])('%s', (text, expected) => {
    expect(date(text)).toBe(expected);
  });

  it('counts from the night in progress until six in the morning', () => {
    expect(date('tonight', SMALL_HOURS)).toBe('Wed 25 Nov 2026');
    expect(date('tomorrow', SMALL_HOURS)).toBe('Thu 26 Nov 2026');
    expect(date('last night', SMALL_HOURS)).toBe('Tue 24 Nov 2026');
    expect(date('tonight', MORNING)).toBe('Thu 26 Nov 2026');
  });

  it.each([
    ['03/04/2026', /2026-04-03 or 2026-03-04/],
    ['3 Smarch', /Could not read/],
    ['32 Dec', /December 2026 has 31 days/],
    ['2026-00-10', /no month 0/],
    ['1899-12-31', /1900 to 2100/],
    ['2101-01-01', /1900 to 2100/],
    ['x'.repeat(10_000), /too long/],
    ['22:30', /Could not read/],
  ])('refuses case %#', (text, message) => {
    expect(date(text)).toMatch(message);
  });
});
