/**
 * Which night is meant. The dates are worked by hand: from the zones' offsets (IANA tz database: Tromsø UTC+1 in winter, Kiritimati
 * UTC+14 at 157.4° W, Apia UTC+13 at 171.8° W, Urumqi's official clocks UTC+8 at 87.6° E) and local mean noon, 12:00 − longitude/15°.
 */
import { isProblem } from '../../bot/ground/problem.js';
import { describe, expect, it } from 'vitest';
import { nightAround, nightOn, nightsFrom, parseDate, tonightAt } from '../../bot/times/index.js';

const place = (zone: string, longitudeDeg: number) => ({ zone, observer: { longitudeDeg } });
const FENWOLD = place('Europe/London', 0.12);
const TROMSO = place('Europe/Oslo', 18.96);
const KIRITIMATI = place('Pacific/Kiritimati', -157.4);
const APIA = place('Pacific/Apia', -171.77);
const URUMQI = place('Asia/Shanghai', 87.6);
const at = (iso: string): number => Date.parse(iso);
const day = ({ date: { year, month, day } }: { date: { year: number; month: number; day: number } }) =>
  [year, month, day].map((n) => String(n).padStart(2, '0')).join('-');

describe('tonight', () => {
  it.each([
    ['05:59 on the clocks is still the night in progress', FENWOLD, '2026-11-25T05:59:59.999Z', '2026-11-24'],
    ['06:00 is the coming night', FENWOLD, '2026-11-25T06:00:00Z', '2026-11-25'],
    ['06:01 is the coming night', FENWOLD, '2026-11-25T06:01:00Z', '2026-11-25'],
    ['by summer time in summer', FENWOLD, '2026-07-25T04:59:00Z', '2026-07-24'],
    ['from 05:00 UTC in summer', FENWOLD, '2026-07-25T05:01:00Z', '2026-07-25'],
    ['in the polar night by the clocks too', TROMSO, '2026-12-21T04:59:00Z', '2026-12-20'],
    ['in the polar night, 06:01', TROMSO, '2026-12-21T05:01:00Z', '2026-12-21'],
    ['beyond the bent date line', KIRITIMATI, '2026-11-24T15:59:00Z', '2026-11-24'],
    ['beyond the bent date line, 06:01', KIRITIMATI, '2026-11-24T16:01:00Z', '2026-11-25'],
    ['in Samoa', APIA, '2026-11-24T16:59:00Z', '2026-11-24'],
    ['in Samoa, 06:01', APIA, '2026-11-24T17:01:00Z', '2026-11-25'],
  ])('%s', (_name, where, iso, evening) => {
    expect(day(tonightAt(where, at(iso)))).toBe(evening);
    const asked = parseDate('tonight', where.zone, at(iso));
    expect(!isProblem(asked) && day(asked)).toBe(evening);
  });
});

describe('the night that an instant lies in', () => {
  it.each([
    ['at 09:00 is still the one that ended with the dawn', FENWOLD, '2026-11-25T09:00:00Z', '2026-11-24'],
    ['ends at mean noon', FENWOLD, '2026-11-25T11:59:00Z', '2026-11-24'],
    ['begins at mean noon', FENWOLD, '2026-11-25T12:00:00Z', '2026-11-25'],
    ['by the Sun, not by clocks two hours ahead of it', URUMQI, '2026-11-25T06:00:00Z', '2026-11-24'],
    ['from 14:10 on those clocks', URUMQI, '2026-11-25T06:10:00Z', '2026-11-25'],
    ['has the date of the clocks beyond the date line', KIRITIMATI, '2026-11-25T06:00:00Z', '2026-11-25'],
    ['has the date of the clocks in Samoa', APIA, '2026-11-25T06:00:00Z', '2026-11-25'],
  ])('%s', (_name, where, iso, evening) => {
    const night = nightAround(at(iso), where);
    expect(day(night)).toBe(evening);
    expect(night.startUtcMs).toBeLessThanOrEqual(at(iso));
    expect(night.endUtcMs).toBeGreaterThan(at(iso));
    expect(nightOn(night.date, where)).toEqual(night);
  });

  it('is followed by the next without a gap', () => {
    for (const where of [FENWOLD, TROMSO, KIRITIMATI, APIA, URUMQI]) {
      const [first, next] = nightsFrom(at('2026-03-28T20:00:00Z'), where);
      expect(next.startUtcMs).toBe(first.endUtcMs);
    }
  });

  it('is tonight from noon until 06:00 wherever the clocks go with the Sun', () => {
    for (const iso of ['2026-11-25T12:10:00Z', '2026-11-25T23:59:00Z', '2026-11-26T00:01:00Z', '2026-11-26T05:59:00Z'])
      expect(nightAround(at(iso), FENWOLD)).toEqual(tonightAt(FENWOLD, at(iso)));
  });
});
