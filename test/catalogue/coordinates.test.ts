import { isProblem } from '../../bot/ground/problem.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { formatCoordinates, readCoordinates } from '../../bot/catalogue/coordinates.js';
import { resolveTarget, targetProblemMessage } from '../../bot/catalogue/index.js';
import { catalogue, found, placeDeg, separationDeg } from './loaded.js';

// α Lyrae, J2000: 18h36m56.336s +38°47′01.28″ (Hipparcos, HIP 91262).
const RA_DEG = 279.23473;
const DEC_DEG = 38.78369;

describe('coordinates in the usual notations', () => {
  it.each([
    '18h36m56.3s +38d47m01s',
    '18h 36m 56.3s +38° 47′ 01″',
    '18:36:56.3 +38:47:01',
    '18 36 56.3 +38 47 01',
    '18:36:56.3, 38:47:01',
    '18:36:56.3 38:47:01',
    '18h36m56.3s 38°47\'01"',
    "18h36.938m +38°47.02'",
    '18.615650h +38.78369°',
    '18.615650h, 38.78369',
    '279.23473° +38.78369°',
    '279.23473d 38.78369d',
    '279.23473, 38.78369',
    'RA 18h36m56.3s Dec +38°47′01″',
    'ra=18:36:56.3 dec=+38:47:01',
    'R.A. 18:36:56.3 Decl. +38:47:01',
    'α 18h36m56.3s δ +38°47′01″',
    '18h36m56.3s +38°47′01″ J2000',
    // IAU "Specifications concerning designations for astronomical radiation sources": JHHMMSS.s+DDMMSS.
    'J183656.3+384701',
    '183656.3+384701',
    '18:36:56.3;+38:47:01',
  ])('reads %s', (text) => {
    expect(separationDeg(...placeDeg(found(text)), RA_DEG, DEC_DEG) * 3600).toBeLessThan(2);
  });

  it.each([
    ['05h34m32s −00°30′00″', -0.5],
    ['05h34m32s -0 30 0', -0.5],
    ['5 34 32 -0 30 0', -0.5],
    ['05h34m32s –22°', -22],
    ['J053432-003000', -0.5],
  ])('keeps the sign of a small southern declination: %s', (text, decDeg) => {
    expect(placeDeg(found(text))[1]).toBeCloseTo(decDeg, 6);
  });

  it('says so when it took a number for degrees', () => {
    const result = resolveTarget(catalogue, '279.23 38.78');
    expect(!isProblem(result) && result.note).toMatch(/degrees/);
  });

  it.each([
    ['18.615 38.78', 'hours-or-degrees', /18.615h or 18.615° first/],
    ['5 22', 'hours-or-degrees', /hours or with degrees/],
    ['25:00:00 +10:00:00', 'right-ascension-range', /25 .*0 up to 24 hours/],
    ['24h00m00s +10d', 'right-ascension-range', /0 up to 24/],
    ['361° +10°', 'right-ascension-range', /360/],
    ['-3h +10d', 'right-ascension-range', /0 up to 24/],
    ['12:00:00 +95:00:00', 'declination-range', /95° .*−90° to \+90°/],
    ['12h -90.5d', 'declination-range', /-90.5/],
    ['12:60:00 +10:00:00', 'sixtieths-range', /60 is too large/],
    ['12:00:00 +10:00:75', 'sixtieths-range', /75 is too large/],
    ['12h 13h', 'unreadable', /declination/],
    ['1 2 3', 'unreadable', /J2000/],
    ['1,2,3,4', 'unreadable', /J2000/],
    ['12.5 30 10 +10 20 30', 'unreadable', /J2000/],
  ])('refuses %s', (text, fault, message) => {
    const result = resolveTarget(catalogue, text);
    if (!isProblem(result) || result.problem !== 'bad-coordinates')
      throw new Error(`"${text}" gave ${!isProblem(result) ? result.target.name : result.problem}`);
    expect(result.fault).toBe(fault);
    expect(targetProblemMessage(result)).toMatch(message);
    expect(targetProblemMessage(result).length).toBeLessThanOrEqual(400);
  });

  it('takes names with numbers in them for names', () => {
    expect(readCoordinates('61 Cyg')).toBeNull();
    expect(readCoordinates('M 31')).toBeNull();
    expect(readCoordinates('NGC 7331')).toBeNull();
    expect(found('47 Tuc').id).toBe('ngc104');
  });

  it('come back from what is shown, to 0.1 s and 1″', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 23.99999, noNaN: true }),
        fc.double({ min: -90, max: 90, noNaN: true }),
        (raHours, decDeg) => {
          const shown = formatCoordinates(raHours, decDeg);
          const back = readCoordinates(shown);
          if (back === null || isProblem(back)) throw new Error(shown);
          expect(separationDeg(back.raHours * 15, back.decDeg, raHours * 15, decDeg) * 3600).toBeLessThan(1);
          expect(found(shown).name).toBe(shown);
        },
      ),
    );
  });
});
