/**
 * What follows from the numbers on a telescope, an eyepiece or a camera's lens: power, field, whether a target fits, the faintest star, how
 * long a picture on a tripod may be. Null where nothing of that is asked, or its numbers are not told.
 */
import { isProblem } from '../../ground/problem.js';
import { isNamed, resolveTarget, type Catalogue } from '../../catalogue/index.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { runsOf, sentenceOf } from './sentence/words.js';

const MM_PER_INCH = 25.4;
const LEAST_TELESCOPE_FOCAL_MM = 200;
const MOST_EYEPIECE_MM = 60;
/** Of a plain eyepiece; common practice, no source. */
const PLAIN_FIELD_DEG = 50;
/** The width of the eye's own dark pupil; common practice, no source. */
const EYE_PUPIL_MM = 7;

const ASKS =
  /\b(?:what|which|how|does|will|would|can|is|fit|fits|magnification|power|mag|field|fov|tfov|exit pupil|eyepiece)\b/u;

interface Numbers {
  readonly apertureMm: number | null;
  readonly focalMm: number | null;
  readonly eyepieceMm: number | null;
  readonly apparentDeg: number | null;
  readonly power: number | null;
}

const numberIn = (plain: string, pattern: RegExp): number | null => {
  const found = pattern.exec(plain)?.[1];
  return found === undefined ? null : Number(found);
};

const numbersIn = (plain: string): Numbers => {
  const lengthsMm = [...plain.matchAll(/(?<![\d./])(\d{1,4}(?:\.\d)?) ?mm\b/gu)].map(([, mm]) => Number(mm));
  const inches = numberIn(plain, /(?<![\d./])(\d{1,2}(?:\.\d)?)[ -]?(?:inch(?:es)?|in|"|″)(?![\w])/u);
  const ratio = numberIn(plain, /\bf\/? ?(\d{1,2}(?:\.\d)?)\b(?! ?mm)/u);
  const asAperture = numberIn(
    plain,
    /(?<![\d./])(\d{2,3}) ?mm (?:dob\w*|scope|telescope|refractor|reflector|newt\w*|mak\w*|aperture)\b/u,
  );
  const apertureMm = inches === null ? asAperture : inches * MM_PER_INCH;
  const told = lengthsMm.find((mm) => mm >= LEAST_TELESCOPE_FOCAL_MM && mm !== apertureMm) ?? null;
  return {
    apertureMm,
    focalMm: told ?? (ratio !== null && apertureMm !== null ? ratio * apertureMm : null),
    eyepieceMm: lengthsMm.find((mm) => mm >= 2 && mm <= MOST_EYEPIECE_MM) ?? null,
    apparentDeg: numberIn(plain, /(?<![\d./])(\d{2,3}) ?(?:°|deg(?:rees?)?\b)/u),
    power: numberIn(plain, /(?<![\d./])(\d{2,3}) ?(?:x|×|times)(?! ?\d)/u),
  };
};

const rounded = (value: number, digits = 0): string => String(Number(value.toFixed(digits)));
const short = (value: number): string => rounded(value, value < 10 ? 1 : 0);

const said = (title: string, summary: string): Outcome =>
  reply({ title, summary, choices: [{ label: "What's up tonight?", run: 'tonight' }], pointsAt: NOWHERE });

/** An object of known size that the words name. */
const sizedTarget = (
  catalogue: Catalogue,
  plain: string,
): { readonly name: string; readonly sizeDeg: number } | null => {
  for (const run of runsOf(sentenceOf(plain), 3)) {
    const found = resolveTarget(catalogue, run.plain);
    if (isProblem(found) || !isNamed(found)) continue;
    const { name, sizeArcmin } = found.target;
    if (sizeArcmin !== null) return { name, sizeDeg: sizeArcmin / 60 };
  }
  return null;
};

/** "field of view 25mm 52 deg eyepiece 1200mm scope", "what magnification does 10mm give on 1200mm". */
const powerAndField = (plain: string, catalogue: Catalogue): Outcome | null => {
  const { apertureMm, focalMm, eyepieceMm, apparentDeg, power } = numbersIn(plain);
  if (focalMm === null) return null;
  if (eyepieceMm === null) {
    if (power === null) return null;
    return said(
      `${rounded(power)}×`,
      `An eyepiece of ${short(focalMm / power)} mm: ${rounded(focalMm)} over ${rounded(power)}. More than twice the aperture in millimetres shows nothing more.`,
    );
  }
  const times = focalMm / eyepieceMm;
  const fieldDeg = (apparentDeg ?? PLAIN_FIELD_DEG) / times;
  const target = /\b(?:fit|fits|whole|all of|too big|too large)\b/u.test(plain) ? sizedTarget(catalogue, plain) : null;
  const fits = target === null ? '' : fitWords(target, fieldDeg);
  const pupilMm = apertureMm === null ? null : apertureMm / times;
  const pupil =
    pupilMm === null
      ? ''
      : ` Exit pupil ${rounded(pupilMm, 1)} mm${pupilMm > EYE_PUPIL_MM ? ', more than an eye takes in' : ''}.`;
  const field = `Field ${rounded(fieldDeg, 1)}°, ${apparentDeg === null ? `for a plain eyepiece of ${PLAIN_FIELD_DEG}° apparent field` : `its ${rounded(apparentDeg)}° over the power`}.`;
  return said(
    `${short(times)}×`,
    `${fits}${fits === '' ? '' : ' '}Power ${short(times)}×: ${rounded(focalMm)} over ${rounded(eyepieceMm, 1)}. ${field}${pupil}`,
  );
};

const fitWords = ({ name, sizeDeg }: { readonly name: string; readonly sizeDeg: number }, fieldDeg: number): string =>
  sizeDeg <= fieldDeg
    ? `Yes: ${name} is ${rounded(sizeDeg, 1)}° long.`
    : `No: ${name} is ${rounded(sizeDeg, 1)}° long, ${rounded(sizeDeg / fieldDeg, 1)} times the field.`;

const FAINTEST =
  /\bhow faint\b|\bfaintest (?:star|magnitude|thing|object)\b|\blimiting mag\w*|\bmagnitude limit\b|\bhow deep (?:can|does|will)\b/u;

/** "how faint can my 10 inch dob go". */
const faintest = (plain: string): Outcome | null => {
  if (!FAINTEST.test(plain)) return null;
  const apertureMm = numbersIn(plain).apertureMm ?? numberIn(plain, /(?<![\d./])(\d{2,3}) ?mm\b/u);
  if (apertureMm === null) return null;
  return said(
    'Faintest stars',
    `About magnitude ${rounded(2 + 5 * Math.log10(apertureMm), 1)} in ${rounded(apertureMm)} mm, under a dark sky and at high power: 2 and five times the logarithm of the aperture in millimetres. City light, moonlight and little height take one to three.`,
  );
};

const EXPOSES = /\b(?:how long|longest|max\w*|what) .{0,25}\b(?:exposures?|expose|shutter|sub|subs|picture)\b/u;
const UNGUIDED = /\b(?:trail\w*|tripod|untracked|no tracking|without tracking|fixed|static|lens)\b/u;

/** "how long can i expose before trailing, 50mm": the rule of photographers on a tripod. */
const longestExposure = (plain: string): Outcome | null => {
  if (!EXPOSES.test(plain) || !UNGUIDED.test(plain)) return null;
  const focalMm = numberIn(plain, /(?<![\d./])(\d{1,3}) ?mm\b/u);
  if (focalMm === null || focalMm < 6) return null;
  return said(
    'Before stars trail',
    `On a tripod with ${rounded(focalMm)} mm about ${short(500 / focalMm)} s on a full-frame camera, ${short(330 / focalMm)} s on a small one (500 over the focal length, and that over 1.5); for sharp stars a third of it. Towards the pole longer. On a mount that follows, minutes.`,
  );
};

/** @param plain in lower case */
export const eyepieceFigures = (plain: string, catalogue: Catalogue): Outcome | null =>
  ASKS.test(plain) && /\d/u.test(plain)
    ? (faintest(plain) ?? longestExposure(plain) ?? powerAndField(plain, catalogue))
    : null;
