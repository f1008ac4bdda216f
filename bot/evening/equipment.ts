/** With what someone looks, and under which sky: the two things besides the night that decide what can be seen. */
import { MM_PER_INCH } from '../ground/lengths.js';
import { problem, type Problem } from '../ground/problem.js';
import { tableOf } from '../ground/table-of.js';

export interface Equipment {
  /** Clear aperture in millimetres; the eye's own is 7. */
  readonly apertureMm: number;
  /** "the naked eye", "binoculars", "a 150 mm telescope". */
  readonly saidAs: string;
  /** Focal length over aperture, where it was said: "8 inch f/6". */
  readonly focalRatio?: number;
}

const EYES: Equipment = { apertureMm: 7, saidAs: 'the naked eye' };
const BINOCULARS: Equipment = { apertureMm: 50, saidAs: 'binoculars' };
/** Telescopes are made so; common practice, no source. */
const LEAST_RATIO = 2;
const MOST_RATIO = 30;
/** Of a telescope's aperture. */
export const LEAST_MM = 30;
const MOST_MM = 2000;

const telescope = (apertureMm: number): Equipment => ({
  apertureMm,
  saidAs: `${String(Math.round(apertureMm)).startsWith('8') ? 'an' : 'a'} ${Math.round(apertureMm)} mm telescope`,
});

/** What a club's member points most often; common practice, no source. */
export const USUAL_EQUIPMENT = telescope(150);

export const isEyes = ({ apertureMm }: Equipment): boolean => apertureMm < LEAST_MM;
export const isHandHeld = ({ apertureMm, saidAs }: Equipment): boolean =>
  isEyes({ apertureMm, saidAs }) || saidAs === BINOCULARS.saidAs;

const ratioIn = (words: string): Pick<Equipment, 'focalRatio'> => {
  const focalRatio = Number(/\bf ?\/? ?(\d{1,2}(?:\.\d)?)$/u.exec(words)?.[1] ?? 0);
  return focalRatio >= LEAST_RATIO && focalRatio <= MOST_RATIO ? { focalRatio } : {};
};

/** "eyes", "binoculars", "150", "150 mm", "8 inch", "8 inch f/6". */
export const readEquipment = (text: string): Equipment | Problem => {
  const words = text
    .trim()
    .toLowerCase()
    .replace(/^(?:a|an|my|the) /u, '');
  if (/^(?:eyes?|naked[ -]?eyes?|no telescope|nothing)$/u.test(words)) return EYES;
  if (/^(?:binos?|binoculars?|bins|field ?glass(?:es)?|\d{1,2} ?x ?\d{2,3}(?: binoculars?)?)$/u.test(words))
    return BINOCULARS;
  if (/^(?:telescope|scope|dobsonian|refractor|reflector)$/u.test(words)) return USUAL_EQUIPMENT;
  const size = /^(\d{1,4}(?:\.\d+)?)\s*-?(mm|cm|"|″|''|in|inch|inches)?(?: .*)?$/u.exec(words);
  const value = Number(size?.[1] ?? Number.NaN);
  const unit = size?.[2] ?? (value < LEAST_MM ? 'inch' : 'mm');
  const factors = tableOf({ mm: 1, cm: 10 });
  const apertureMm = value * (factors.get(unit) ?? MM_PER_INCH);
  return apertureMm >= LEAST_MM && apertureMm <= MOST_MM
    ? { ...telescope(apertureMm), ...ratioIn(words) }
    : problem(
        'bad-option',
        `with: takes eyes, binoculars, or a telescope's aperture, ${LEAST_MM} to ${MOST_MM} mm, such as with:150 or with:"8 inch".`,
      );
};

export const SKIES = ['city', 'suburb', 'country', 'dark'] as const;
export type Sky = (typeof SKIES)[number];

/** Other words for them. */
export const SKY_NAMES = {
  town: 'suburb',
  suburban: 'suburb',
  village: 'country',
  rural: 'country',
  urban: 'city',
} as const satisfies Readonly<Record<string, Sky>>;

/** Without Moon or twilight, at the zenith, V magnitudes a square arcsecond; common practice, no source. */
export const ZENITH_MAG_PER_ARCSEC2: Readonly<Record<Sky, number>> = {
  city: 18.3,
  suburb: 19.8,
  country: 21.2,
  dark: 21.8,
};
export const USUAL_SKY: Sky = 'country';
export const SKY_WORDS: Readonly<Record<Sky, string>> = {
  city: 'a city sky',
  suburb: 'a suburban sky',
  country: 'a country sky',
  dark: 'a dark sky',
};
