import { describe, expect, it } from 'vitest';
import {
  compassWord,
  degrees,
  degreesMinutesSeconds,
  direction,
  duration,
  hoursMinutesSeconds,
  isoUtc,
  listed,
} from '../../bot/reply/wording.js';

describe('wording', () => {
  // The sixteen points of the compass rose, 22.5° each, centred on their direction: common practice, no source.
  it.each([
    [0, 'north'],
    [11.2, 'north'],
    [11.3, 'north-north-east'],
    [90, 'east'],
    [112, 'east-south-east'],
    [202.5, 'south-south-west'],
    [348.8, 'north'],
    [359.9, 'north'],
    [-45, 'north-west'],
  ])('%f° is %s', (azimuthDeg, word) => expect(compassWord(azimuthDeg)).toBe(word));

  it('never says 360° or minus nought', () => {
    expect(direction(359.7)).toBe('north, 0°');
    expect(degrees(-0.2)).toBe('0°');
    expect(degrees(-4.26, 1)).toBe('−4.3°');
  });

  // Meeus, Astronomical Algorithms, 2nd ed., example 12.a: 13h 10m 46.3668s; chapter 1: −13°47′22″ = −13.789444°; −0°32′41″ = −0.544722°.
  it('writes hours and degrees as an almanac does, and carries when rounding', () => {
    expect(hoursMinutesSeconds(13 + 10 / 60 + 46.3668 / 3600)).toBe('13h 10m 46s');
    expect(degreesMinutesSeconds(-13.789444)).toBe('−13° 47′ 22″');
    expect(degreesMinutesSeconds(-0.544722)).toBe('−00° 32′ 41″');
    expect(hoursMinutesSeconds(23.99999)).toBe('00h 00m 00s');
    expect(degreesMinutesSeconds(59.999999)).toBe('+60° 00′ 00″');
  });

  it('says lengths of time, lists and instants', () => {
    expect([20_000, 59 * 60_000, 3_600_000, 5_430_000].map(duration)).toEqual([
      'less than a minute',
      '59 min',
      '1 h',
      '1 h 31 min',
    ]);
    expect([listed([]), listed(['a']), listed(['a', 'b']), listed(['a', 'b', 'c'], 'or')]).toEqual([
      '',
      'a',
      'a and b',
      'a, b or c',
    ]);
    expect(isoUtc(Date.UTC(2026, 10, 25, 18, 4, 4, 600))).toBe('2026-11-25T18:04:05Z');
  });
});
