/**
 * What follows from the numbers on a telescope and an eyepiece: power, field, whether a target fits, the faintest star. Null where nothing of that is asked, or its numbers are not told.
 */
import type { Catalogue } from '../../catalogue/index.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { inFieldWords } from './in-field.js';
import { MOST_APERTURE_MM, numberIn, numbersIn } from './kit-numbers.js';

/** Of a plain eyepiece; common practice, no source. */
const PLAIN_FIELD_DEG = 50;
/** The width of the eye's own dark pupil; common practice, no source. */
const EYE_PUPIL_MM = 7;

const ASKS =
  /\b(?:what|what's|whats|which|how|does|will|would|can|is|fit|fits|magnification|power|mag|field|fov|tfov|focal|ratio|exit pupil|eyepiece|barlow|highest|useful|limiting|faintest|smallest|tiniest|resol\w*|dawes|rayleigh|times|zoom|vergr(?:ö|oe|o)(?:ß|ss)erung|grossissement|aumentos?|ingrandiment\w*|vergroting)\b/u;

const rounded = (value: number, digits = 0): string => String(Number(value.toFixed(digits)));
const short = (value: number): string => rounded(value, value < 10 ? 1 : 0);

const said = (title: string, summary: string): Outcome =>
  reply({ title, summary, choices: [{ label: "What's up tonight?", run: 'tonight' }], pointsAt: NOWHERE });

/** "And with the 2x barlow": the one and the other. */
const WITH_AND_WITHOUT =
  /\b(?:and|or|then|also|plus|both)(?: (?:what|then|again|also))? (?:with|w|in|using|without|by)\b.{0,30}\b(?:barlow|reducer)\b|\bwith(?:out)? (?:and|or) with(?:out)?\b/u;

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
  const isBoth = WITH_AND_WITHOUT.test(plain);
  const barlow = lensBetween(plain);
  const lens = isBoth ? { factor: 1, words: '' } : barlow;
  const times = (focalMm * lens.factor) / eyepieceMm;
  const fieldDeg = (apparentDeg ?? PLAIN_FIELD_DEG) / times;
  const fits = inFieldWords(plain, catalogue, fieldDeg);
  const pupilMm = apertureMm === null ? null : apertureMm / times;
  const pupil =
    pupilMm === null
      ? ''
      : ` Exit pupil ${rounded(pupilMm, 1)} mm${pupilMm > EYE_PUPIL_MM ? ', more than an eye takes in' : ''}.`;
  const alsoBarlow = isBoth
    ? ` With the lens between ${short(times * barlow.factor)}×, and ${rounded(fieldDeg / barlow.factor, 1)}°.`
    : '';
  const field = `Field ${rounded(fieldDeg, 1)}°, ${apparentDeg === null ? `for a plain eyepiece of ${PLAIN_FIELD_DEG}° apparent field` : `its ${rounded(apparentDeg)}° over the power`}.`;
  return said(
    `${short(times)}×`,
    `${fits}Power ${short(times)}×: ${rounded(focalMm)} over ${rounded(eyepieceMm, 1)}${lens.words}. ${field}${pupil}${alsoBarlow}`,
  );
};

/** "2x barlow", "barlow 3x", "0.63 reducer": what a lens before the eyepiece makes of the focal length; a Barlow without a figure doubles it. */
const lensBetween = (plain: string): { readonly factor: number; readonly words: string } => {
  if (/\bbarlow\b/u.test(plain)) {
    const told = /(?<![\d.])(\d(?:\.\d+)?) ?(?:x|×) ?barlow|\bbarlow\D{0,8}(?<![\d.])(\d(?:\.\d+)?) ?(?:x|×)/u.exec(
      plain,
    );
    const factor = Number(told?.[1] ?? told?.[2] ?? 2);
    return { factor, words: `, times ${rounded(factor, 1)} for the Barlow` };
  }
  const reduced = Number(/(?<!\d)0?(\.\d+) ?(?:x|×)? ?(?:focal )?reducer/u.exec(plain)?.[1] ?? 1);
  return reduced === 1
    ? { factor: 1, words: '' }
    : { factor: reduced, words: `, times ${rounded(reduced, 2)} for the reducer` };
};

const FAINTEST =
  /\b(?:what|which) (?:mags?|magnitudes?)(?: (?:of )?stars?)? (?:can|could|will|does|do|would|should)\b|\b(?:mag|magnitude) (?:stars? )?(?:limit|reach\w*)\b|\bhow faint\b|\bfaintest (?:star|magnitude|thing|object)\b|\blimiting mag\w*|\bmagnitude limit\b|\bhow deep (?:can|does|will)\b/u;

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

/** W. R. Dawes's limit, 116″ over the aperture in millimetres (4.56″ over inches, 1867), and Lord Rayleigh's, 138″ for 550 nm. */
const DAWES_ARCSEC_MM = 116;
const RAYLEIGH_ARCSEC_MM = 138;
/** A second of arc at the Moon's mean distance, 384,400 km. */
const KM_AN_ARCSEC = 384_400 / 206_265;
/** A crater is seen as one, with its shadow, from about twice what the limit tells apart: common practice, no source. */
const CRATER_LIMITS = 2;
const CRATER = /\bcrater(?:s|let|lets)?\b/u;
const SMALLEST = /\b(?:smallest|tiniest|tiny|how (?:small|tiny|big|fine)|min\w*|size|resol\w*)\b/u;
/** "Can my 6 inch resolve M 13" is asked of M 13. */
const RESOLVES =
  /\b(?:dawes|rayleigh|resolving power|resolution)\b|\b(?:split|separate)\b.*\d ?(?:arc ?sec\w*|″|"|'')|\b(?:how many|smallest|closest) (?:arc ?sec\w*|seconds of arc|double)\b|\b(?:what|how (?:fine|small|close))\b.*\bresolve\W*$/u;
const SAMPLES_MM = [100, 150, 200, 300];

const craterKm = (apertureMm: number): number => (CRATER_LIMITS * DAWES_ARCSEC_MM * KM_AN_ARCSEC) / apertureMm;

const cratersOfSamples = (): Outcome =>
  said(
    'Smallest craters',
    `Near the terminator, at high power in steady air: ${SAMPLES_MM.map((mm) => `${rounded(craterKm(mm), 1)} km across in ${mm} mm`).join(', ')}. That is about twice Dawes' limit, 116″ over the aperture in millimetres.`,
  );

/** "smallest crater in 8 inch", "how many arcsec can 80mm resolve". */
const finest = (plain: string): Outcome | null => {
  const isOfCraters = CRATER.test(plain) && SMALLEST.test(plain);
  if (!isOfCraters && !RESOLVES.test(plain)) return null;
  const { apertureMm: told, focalMm } = numbersIn(plain);
  const apertureMm =
    told ?? (focalMm === null || focalMm < MOST_APERTURE_MM ? numberIn(plain, /(?<![\d./])(\d{2,3}) ?mm\b/u) : null);
  if (apertureMm === null) return isOfCraters ? cratersOfSamples() : null;
  const dawesArcsec = DAWES_ARCSEC_MM / apertureMm;
  const limit = `Dawes' limit for ${rounded(apertureMm)} mm is ${rounded(dawesArcsec, 2)}″ (116 over the aperture in millimetres)`;
  if (!isOfCraters)
    return said(
      'What it resolves',
      `${limit}: two equal stars so close show as two in steady air. Rayleigh's, for a dark gap between them, is ${rounded(RAYLEIGH_ARCSEC_MM / apertureMm, 2)}″. Most nights the air blurs to 2″ or so.`,
    );
  const km = craterKm(apertureMm) / CRATER_LIMITS;
  return said(
    'Smallest craters',
    `About ${rounded(craterKm(apertureMm), 1)} km across near the terminator, where shadows are long, at high power in steady air. ${limit}, ${rounded(km, 1)} km on the Moon; a crater is seen as one from about twice that.`,
  );
};

const MOST_POWER =
  /\b(?:highest|max\w*|most|top|biggest|useful|usable)\b.*\b(?:magnification|power|mag)\b|\b(?:magnification|power) limit\b|\btoo (?:much|high|strong|powerful)\b.*\b(?:for|on|in|with)\b|\btoo (?:much|high) (?:power|magnification)\b/u;
/** Twice the aperture in millimetres; on most nights the air allows less: common practice, no source. */
const POWER_A_MM = 2;
const USUAL_MOST_POWER = 250;

/** Whether a power that was named is too much. */
const powerVerdict = (power: number, most: number): string =>
  power > most
    ? `Yes, ${rounded(power)}× is too much. `
    : `No, ${rounded(power)}× is within it${power > USUAL_MOST_POWER ? ', on steady nights' : ''}. `;

/** Without a number: of the telescope that is spoken of, else of any. */
export const asksMostPower = (plain: string): boolean => MOST_POWER.test(plain) && !/\d/u.test(plain);

export const mostPowerOfAny = (): Outcome =>
  said(
    'Highest power',
    `Twice the aperture in millimetres: 260× in 130 mm, 400× in 200 mm. On most nights the air allows some ${USUAL_MOST_POWER}× at best, and more shows nothing more.`,
  );

/** "highest useful magnification 130mm". */
const mostPower = (plain: string): Outcome | null => {
  if (!MOST_POWER.test(plain)) return null;
  const { apertureMm: told, focalMm, eyepieceMm } = numbersIn(plain);
  const apertureMm =
    told ?? (focalMm === null && eyepieceMm === null ? numberIn(plain, /(?<![\d./])(\d{2,3}) ?mm\b/u) : null);
  if (apertureMm === null) return null;
  const most = POWER_A_MM * apertureMm;
  const { power } = numbersIn(plain);
  const verdict = power === null ? '' : powerVerdict(power, most);
  return said(
    `${rounded(most)}×`,
    `${verdict}About ${rounded(most)}× in ${rounded(apertureMm)} mm: twice the aperture in millimetres, an exit pupil of 0.5 mm.${most > USUAL_MOST_POWER ? ` On most nights the air allows some ${USUAL_MOST_POWER}× at best.` : ''} More shows nothing more.`,
  );
};

/** "Focal ratio of 200mm 1000mm": the longer over the wider. */
const focalRatio = (plain: string): Outcome | null => {
  if (!/\b(?:focal ?ratio|f[- ]?ratio|f[- ]?number|how fast)\b/u.test(plain)) return null;
  const lengthsMm = [...plain.matchAll(/(?<![\d./])(\d{2,4}) ?(?:mm\b|(?=\/)|(?= focal))|(?<=\d\/)(\d{3,4})/gu)].map(
    ([, one, two]) => Number(one ?? two),
  );
  const { apertureMm: inches } = numbersIn(plain);
  const focalMm = Math.max(...lengthsMm, 0);
  const apertureMm = lengthsMm.find((mm) => mm < focalMm) ?? inches;
  if (apertureMm === null || focalMm <= apertureMm) return null;
  return said(
    `f/${rounded(focalMm / apertureMm, 1)}`,
    `f/${rounded(focalMm / apertureMm, 1)}: ${rounded(focalMm)} mm of focal length over ${rounded(apertureMm)} mm of aperture. The smaller the figure, the wider the field and the shorter the exposures.`,
  );
};

const USUAL_RATIOS = [5, 6, 8, 10];

/** "exit pupil of a 25mm eyepiece in f/6": no focal length is wanted. */
const exitPupil = (plain: string): Outcome | null => {
  const { eyepieceMm, ratio } = numbersIn(plain);
  if (!/\bexit pupil\b/u.test(plain) || eyepieceMm === null) return null;
  if (ratio === null)
    return said(
      'Exit pupil',
      `The ${rounded(eyepieceMm, 1)} mm over the focal ratio: ${USUAL_RATIOS.map((each) => `${rounded(eyepieceMm / each, 1)} mm at f/${each}`).join(', ')}. Faint wide things like 4 to 6 mm, planets 0.5 to 1 mm; more than your own pupil opens is lost.`,
    );
  const pupilMm = eyepieceMm / (ratio * lensBetween(plain).factor);
  const wide = pupilMm > EYE_PUPIL_MM ? ' More than an eye takes in: the rest of the light is lost.' : '';
  return said(
    'Exit pupil',
    `${rounded(pupilMm, 1)} mm: ${rounded(eyepieceMm, 1)} mm over f/${rounded(ratio, 1)}${lensBetween(plain).words}.${wide} Faint wide things like 4 to 6 mm, planets 0.5 to 1 mm.`,
  );
};

/** @param plain in lower case */
export const eyepieceFigures = (plain: string, catalogue: Catalogue): Outcome | null =>
  ASKS.test(plain) && (/\d/u.test(plain) || CRATER.test(plain))
    ? (faintest(plain) ??
      finest(plain) ??
      mostPower(plain) ??
      focalRatio(plain) ??
      powerAndField(plain, catalogue) ??
      exitPupil(plain))
    : null;
