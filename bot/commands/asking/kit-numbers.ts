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

export const numbersIn = (plain: string): Numbers => {
  const lengthsMm = [...plain.matchAll(/(?<![\d./])(\d{1,4}(?:\.\d)?) ?mm\b/gu)].map(([, mm]) => Number(mm));
  const inches = numberIn(plain, /(?<![\d./])(\d{1,2}(?:\.\d)?)[ -]?(?:inch(?:es)?|in|"|″)(?![\w])/u);
  const ratio = numberIn(plain, /\bf\/? ?(\d{1,2}(?:\.\d)?)\b(?! ?mm)/u);
  const before = numberIn(
    plain,
    /(?<![\d./])(\d{2,3}) ?mm (?:dob\w*|scope|telescope|refractor|reflector|newt\w*|mak\w*|aperture)\b/u,
  );
  // "My 750mm newt": so long is a telescope more often than it is wide.
  const asAperture = before !== null && before > MOST_APERTURE_MM ? null : before;
  const apertureMm = inches === null ? asAperture : inches * MM_PER_INCH;
  const told = lengthsMm.find((mm) => mm >= LEAST_TELESCOPE_FOCAL_MM && mm !== apertureMm) ?? null;
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
