import { describe, expect, it } from 'vitest';
import { eyepieceFigures } from '../../bot/commands/asking/eyepiece-figures.js';
import { isProblem } from '../../bot/ground/problem.js';
import { shippedCatalogue } from '../shipped.js';

const answer = (plain: string): string | null => {
  const said = eyepieceFigures(plain, shippedCatalogue());
  return said === null || isProblem(said) ? null : said.summary;
};

describe('what follows from the numbers on telescope and eyepiece (power = focal length over focal length, field = apparent field over power: any textbook)', () => {
  it.each([
    ['what magnification does 10mm give on 1200mm', /^Power 120×/u],
    ['field of view 25mm 52 deg eyepiece 1200mm scope', /^Power 48×.*Field 1\.1°, its 52°/u],
    ['what power is a 25mm in a 10 inch f/4.7', /^Power 48×.*Exit pupil 5\.3 mm/u],
    ['what mag for 200x on a 1200mm scope', /^An eyepiece of 6 mm/u],
    ['which eyepiece gives 50x in my 8 inch f6', /^An eyepiece of 24 mm/u],
    // M 31 is some 3° long (NGC catalogues: 178′).
    ['does m31 fit in my 25mm eyepiece, 1200mm scope', /^No: (?:M 31|NGC 224) is 3/u],
    ['will m 13 fit in a 25mm eyepiece on 1200mm', /^Yes: (?:M 13|NGC 6205)/u],
    // 2 + 5 log10(254) = 14.02.
    ['how faint can my 10 inch dob go', /^About magnitude 14 in 254 mm/u],
    ['what mag stars can my 8 inch show', /^About magnitude 13\.5 in 203 mm/u],
    // A Barlow multiplies the focal length by its figure, twice where none is told; a reducer likewise.
    ['what does a 2x barlow do to my 25mm in a 1200mm scope', /^Power 96×.*times 2 for the Barlow/u],
    ['barlow 3x with 10mm on my 750mm newt whats magnification', /^Power 225×/u],
    ['0.63 reducer on 2032mm with 25mm eyepiece what power', /^Power 51×/u],
    // Dawes, 1867: 4.56″ over the aperture in inches; the Moon's mean distance of 384,400 km makes 1.86 km of 1″.
    ['how many arcsec can 80mm resolve', /limit for 80 mm is 1\.45″/u],
    ['whats the smallest crater in 8 inch', /^About 2\.1 km across.*0\.57″.*1\.1 km on the Moon/u],
    ['smallest crater i can see', /^Near the terminator.*2\.2 km across in 200 mm/u],
  ])('%s', (plain, expected) => {
    expect(answer(plain)).toMatch(expected);
  });

  it.each([
    'what is up tonight with 200mm',
    'what can i see in 10x50 binoculars',
    'how high is m 13 at 23:00',
    'my mount drops after 25 minutes at 9600',
    'can my 6 inch resolve epsilon lyrae',
    'is 200mm enough to resolve m13',
    'can i split porrima with an 80mm refractor',
    'how long is jupiter up with a 25mm eyepiece',
  ])('is silent for: %s', (plain) => {
    expect(answer(plain)).toBeNull();
  });
});
