/** The numbers of a telescope and its eyepiece in a question: aperture, focal lengths, apparent field, power, focal ratio. */
import { MM_PER_INCH } from '../../ground/lengths.js';

const LEAST_TELESCOPE_FOCAL_MM = 200;
const MOST_EYEPIECE_MM = 60;
export const MOST_APERTURE_MM = 450;

export interface Numbers {
  readonly apertureMm: number | null;
  readonly focalMm: number | null;
  readonly eyepieceMm: number | null;
  readonly apparentDeg: number | null;
  readonly power: number | null;
  /** "f/6". */
  readonly ratio: number | null;
}

export const numberIn = (plain: string, pattern: RegExp): number | null => {
  const found = pattern.exec(plain)?.[1];
  return found === undefined ? null : Number(found);
};

/** "130/650", where both go together. */
const TUBE = /(?<![\d./])(\d{2,3}) ?\/ ?(\d{3,4})(?![\d./])/u;
/** "200mm f/6": of a telescope so fast a length is a lens's, one so slow an aperture. */
const APERTURE_AT_RATIO = /(?<![\d./])([5-9]\d|[1-3]\d{2}) ?mm,? (?:at )?f ?\/? ?(?:[4-9]|1[0-5])(?:\.\d)?\b/u;
/** "1200 focal", "900 de focale", "1000 mm Brennweite"; "focal length of 650", "Brennweite 1000". */
const FOCAL =
  '(?:focal(?: ?length)?|focale|fl|brennweite|distan(?:cia|za) focal[e]?|longueur focale|lunghezza focale|brandpuntsafstand)';
const BEFORE_FOCAL = new RegExp(`(?<![\\d./])(\\d{3,4}) ?(?:mm )?(?:de |di |von |of |d')?${FOCAL}\\b`, 'u');
const AFTER_FOCAL = new RegExp(`\\b${FOCAL} ?(?:is |of |de |di |von |=|: ?)?(?:a )?(\\d{3,4})(?![\\d./])`, 'u');

export const numbersIn = (plain: string): Numbers => {
  const lengthsMm = [...plain.matchAll(/(?<![\d./])(\d{1,4}(?:\.\d)?) ?mm\b/gu)].map(([, mm]) => Number(mm));
  const tube = TUBE.exec(plain);
  const inches = numberIn(plain, /(?<![\d./])(\d{1,2}(?:\.\d)?)[ -]?(?:inch(?:es)?|in|"|″)(?![\w])/u);
  const ratio = numberIn(plain, /\bf\/? ?(\d{1,2}(?:\.\d)?)\b(?! ?mm)/u);
  const before = numberIn(
    plain,
    /(?<![\d./])(\d{2,3}) ?mm (?:dob\w*|scope|telescope|refractor|reflector|newt\w*|mak\w*|aperture)\b/u,
  );
  // "My 750mm newt": so long is a telescope more often than it is wide.
  const asAperture = before !== null && before > MOST_APERTURE_MM ? null : before;
  const ofTube = tube === null ? asAperture : Number(tube[1]);
  const apertureMm = inches === null ? (ofTube ?? numberIn(plain, APERTURE_AT_RATIO)) : inches * MM_PER_INCH;
  const ofFocal = tube === null ? (numberIn(plain, BEFORE_FOCAL) ?? numberIn(plain, AFTER_FOCAL)) : Number(tube[2]);
  const told = ofFocal ?? lengthsMm.find((mm) => mm >= LEAST_TELESCOPE_FOCAL_MM && mm !== apertureMm) ?? null;
  return {
    apertureMm,
    focalMm: told ?? (ratio !== null && apertureMm !== null ? ratio * apertureMm : null),
    eyepieceMm: lengthsMm.find((mm) => mm >= 2 && mm <= MOST_EYEPIECE_MM) ?? null,
    apparentDeg: numberIn(plain, /(?<![\d./])(\d{2,3}) ?(?:°|deg(?:rees?)?\b)/u),
    power: numberIn(plain, /(?<![\d./])(\d{2,3}) ?(?:x|×|times)(?! ?\d)/u),
    ratio,
  };
};

/** "2x barlow", "0.63 reducer", as it was said; null: none was. */
export const lensIn = (plain: string): string | null =>
  /(?<![\d.])\d(?:\.\d+)? ?(?:x|×) ?barlow\b|\bbarlow\D{0,8}(?<![\d.])\d(?:\.\d+)? ?(?:x|×)|\bbarlow\b|(?<!\d)0?\.\d+ ?(?:x|×)? ?(?:focal )?reducer\b/u.exec(
    plain,
  )?.[0] ?? null;

/** What was told before with what is told now in its place, as a question of power and field. */
export const withNumbers = (beforeText: string, nowText: string): string | null => {
  const before = numbersIn(beforeText);
  const now = numbersIn(nowText);
  const lens = lensIn(nowText);
  const lensBefore = lens === null ? lensIn(beforeText) : null;
  const apertureMm = now.apertureMm ?? before.apertureMm;
  const focalMm = now.focalMm ?? before.focalMm;
  const eyepieceMm = now.eyepieceMm ?? before.eyepieceMm;
  const apparentDeg = now.apparentDeg ?? (now.eyepieceMm === null ? before.apparentDeg : null);
  if (focalMm === null || eyepieceMm === null) return null;
  return [
    `what power and field does a ${eyepieceMm}mm eyepiece`,
    ...(apparentDeg === null ? [] : [`of ${apparentDeg} degrees`]),
    `give on a ${focalMm}mm focal length`,
    ...(apertureMm === null ? [] : [`${Math.round(apertureMm)}mm aperture`]),
    ...(lens === null ? [] : [`with the ${lens}`]),
    // Whether it is still in is not said: both are told.
    ...(lensBefore === null ? [] : [`and with the ${lensBefore}`]),
  ].join(' ');
};
