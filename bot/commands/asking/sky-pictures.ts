/**
 * Pictures of the sky: how long a frame may be on a tripod, by the lens, the sensor and the target's declination; for the rest what
 * knowledge/pictures.yaml says. Never the walk's: "without tracking" is how one photographs here, and no fault. In plain words of five languages
 * (from memory).
 */
import { isProblem } from '../../ground/problem.js';
import { resolveTarget, type Catalogue } from '../../catalogue/index.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { numberIn } from './kit-numbers.js';
import { pixelArcsec, USUAL_PIXEL_UM } from './pixel-scale.js';
import { shippedTopics, topicAmong } from './topics.js';

const PICTURE =
  /\b(?:(?:astro)?photo\w*|(?:astro)?foto\w*|pics?|pictures?|snap\w*|shoot(?:ing)?|imag(?:e|ing)|expos\w*|shutter|belicht\w*|aufnehmen|aufnahmen?|exponer|pose|posa|posar|star ?trails?|strichspur\w*|(?:500|300|npf) (?:rule|regel|regla|regle)|(?:rule|regel|regla|regle|regola) (?:of |de |des |del )?(?:500|300|npf)|npf|regola (?:dei? )?500|(?:camera|lens) settings?|iso)\b/u;
/** What tells of a mount or a link, of a cure, or of a picture that is shown to people. */
const OF_ELSE =
  /\b(?:connect\w*|disconnect\w*|usb|com ?ports?|ports?|cables?|drivers?|errors?|wi-?fi|bluetooth|hand ?set|controller|firmware|crash\w*|fr[eo]ez\w*|mount (?:does|will|won|is|stops?|keeps?)|not working|stopped|since|slew\w*|go ?to|drift\w*|guid(?:e|es|ing|er)|align\w*|polar|dith\w*|remind\w*|took|taken|shot|posted|sent|send|attach\w*|screenshot\w*|iss|satellites?|space station|sun|solar|sunset|sunrise|eclips\w*|occult\w*|fit|fits|field|fov|scale|per pixel|sampling)\b/u;
/** A list of what to photograph. */
const CHOOSES =
  /\b(?:what|which|any\w*|something|good|best|nice|objects?|targets?)(?: \w+){0,4} (?:can|could|should|shall|to|for)(?: (?:i|we))? (?:photograph\w*|imag\w*|shoot\w*|capture|astrophoto\w*)\b(?!.*\b(?:settings?|exposure|iso|lens|mm)\b)/u;
const ASKS =
  /\b(?:how|what|which|can|could|should|may|possible|best|settings?|exposures?|expose|long|longest|max\w*|many|rule|npf|untracked|wie|kann|welche|como|puedo|cual|cuanto|comment|peut|puis|quel\w*|combien|come|posso|quale|quanto|hoe|kan|wat|tips?|need)\b|^(?:photo|foto|pic|picture|photograph|iso)\w*\b|\?\s*$/u;

const EXPOSURE =
  /\b(?:how long|how many (?:secs?|seconds?)|longest|max\w*|expos\w*|shutter|seconds?|secs?|settings?|iso|rule|regel|regla|regle|regola|npf|wie ?lang\w*|belicht\w*|cuanto|combien|quanto|trail\w*|photo\w*|foto\w*|pics?|pictures?)\b/u;
const FIXED =
  /\b(?:tripod|stativ|tripode|trepied|treppiede|untracked|static|fixed|trail\w*|lens|objektiv|objectif|objetivo|obiettivo|dslr|mirrorless|full ?frame|aps ?-?c|crop|rule|regel|regla|regle|regola|npf|f ?\/? ?[12]\.\d)\b|\b(?:no|without|w\/o|ohne|sin|sans|senza|zonder) (?:a |an |any |star |un |eine? )?(?:track\w*|nachfuhrung|seguimiento|suivi|inseguimento|mount|montierung|montura|volg\w*)\b/u;
const FOLLOWS = /\b(?:with|on|using) (?:a |an |my )?(?:\w+ )?(?:tracker|tracking|eq mount|equatorial)\b|\btracked\b/u;

const LENS_MM = /(?<![\d./x×])(\d{1,3}) ?mm\b/u;
const LEAST_LENS_MM = 6;
const F_NUMBER = /\bf ?\/? ?(\d{1,2}(?:\.\d)?)\b(?! ?mm)/u;
const PIXEL_UM = /(?<![\d.])(\d{1,2}(?:\.\d+)?) ?(?:um|µm|μm|microns?|mikron|micras?)(?![a-z])/u;
/** The sky's turn in a second of time, a sidereal day of 86,164.1 s having 360°. */
const ARCSEC_A_SECOND = 15.041;

/** How many times smaller than 36 mm a sensor's width is, by its name; common practice, no source. */
const CROPS: readonly (readonly [RegExp, string, number])[] = [
  [/\bfull ?-?(?:frame|format)\b|\bvollformat\b|\bplein format\b/u, 'a full-frame camera', 1],
  [/\baps ?-?c\b|\bcrop(?:ped)?\b/u, 'an APS-C camera', 1.5],
  [/\b(?:micro )?four ?-?thirds\b|\bmft\b|\bm43\b/u, 'a four-thirds camera', 2],
];

const short = (seconds: number): string => String(Number(seconds.toFixed(seconds < 10 ? 1 : 0)));

/** Where it stands, for the pace of its stars: a target that the words name, and Orion's Belt for Orion. */
const declinationIn = (
  plain: string,
  catalogue: Catalogue,
): { readonly name: string; readonly decDeg: number } | null => {
  const name =
    / (?:of|from|for|de|d|von|vom|del|der|du) (?:the |la |le |el |il |den )?((?:(?:m|ngc|ic) ?\d+)|\p{L}+(?: (?:nebula|galaxy|cluster))?)/u.exec(
      plain,
    )?.[1];
  if (name === undefined) return null;
  const found = resolveTarget(catalogue, name === 'orion' ? 'alnilam' : name);
  if (isProblem(found) || found.isSlip === true || found.target.body.kind !== 'fixed') return null;
  return { name: name === 'orion' ? "Orion's Belt" : found.target.name, decDeg: found.target.body.decDegJ2000 };
};

const FAR_FROM_EQUATOR_DEG = 25;

/** The lens that is told, where the camera stands still; null otherwise. */
const lensOnTripod = (plain: string): number | null => {
  const focalMm = numberIn(plain.replace(/\b35 ?mm (?:sensor|film|camera)\b/u, ' full frame '), LENS_MM) ?? 0;
  const isAsked = EXPOSURE.test(plain) && FIXED.test(plain) && !FOLLOWS.test(plain);
  return isAsked && focalMm >= LEAST_LENS_MM ? focalMm : null;
};

/** The rule of photographers, for the sensor that is named or the two that are usual. */
const byRule = (plain: string, focalMm: number): string => {
  const [, name = '', crop = 1] = CROPS.find(([pattern]) => pattern.test(plain)) ?? [];
  const full = 500 / focalMm;
  return name === ''
    ? `${short(full)} s on a full-frame camera, ${short(full / 1.5)} s on an APS-C one (500 over the focal length, and that over 1.5)`
    : `${short(full / crop)} s on ${name} (500 over the focal length${crop === 1 ? '' : `, and that over ${crop}`})`;
};

/** By the rule of 500, by the pixel, and by the NPF rule (F. Michaud, Société astronomique du Havre) where its numbers are told. */
const onTripod = (plain: string, catalogue: Catalogue): Outcome | null => {
  const focalMm = lensOnTripod(plain);
  if (focalMm === null) return null;
  const pixelUm = numberIn(plain, PIXEL_UM) ?? USUAL_PIXEL_UM;
  const ratio = numberIn(plain, F_NUMBER);
  const target = declinationIn(plain, catalogue);
  const slower = Math.cos(((target?.decDeg ?? 0) * Math.PI) / 180);
  const arcsec = pixelArcsec(pixelUm, focalMm);
  const where = target === null ? 'Near the celestial equator' : `At ${target.name}`;
  const pace =
    target === null || Math.abs(target.decDeg) < FAR_FROM_EQUATOR_DEG
      ? ''
      : `, ${short(1 / slower)} times slower than at the celestial equator,`;
  const npf =
    ratio === null
      ? ''
      : ` By the NPF rule, (35 × ${ratio} + 30 × ${pixelUm}) over ${focalMm}: ${short((35 * ratio + 30 * pixelUm) / focalMm / slower)} s.`;
  return reply({
    title: 'Before stars trail',
    summary: `On a tripod with ${focalMm} mm about ${byRule(plain, focalMm)}; for sharp stars a third of it.${npf} ${where}${pace} a star crosses a pixel of ${pixelUm} µm in ${short(arcsec / (ARCSEC_A_SECOND * slower))} s. Then take many such frames and stack them.`,
    choices: [
      { label: "What's up tonight?", run: 'tonight' },
      { label: 'When is it dark?', run: 'dark' },
    ],
    pointsAt: NOWHERE,
  });
};

const pictures = shippedTopics('pictures');

const folded = (text: string): string =>
  text
    .toLowerCase()
    .replace(/ß/gu, 'ss')
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .replace(/\bm(?=\d{1,3}\b)/gu, 'm ');

/** "Can I see a shooting star" shoots nothing. */
const SHOOTING_STAR = /\bshooting (?=stars?\b)/gu;
const asksOfPicture = (plain: string): boolean => PICTURE.test(plain.replace(SHOOTING_STAR, ''));

/** Costs next to nothing: every line comes this way. */
export const isOfPicture = (text: string): boolean => asksOfPicture(folded(text));

/** Of a mount that follows ill, which is a fault; "star trails" are wished for. */
const TRAIL_UNWISHED =
  /\bstars? (?:are |is |all |look |looks |get |getting |become |come out )*(?:trail\w*|streak\w*|elongated|not round|egg\w*|oval)\b(?<!\bstar trails?)|\b(?:egg(?: ?-?shaped)?|oval|elongated|streaky|trailed|trailing|bloated) stars?\b/u;

/** Told of a mount, trails are a fault of it. */
const ON_MOUNT = /\b(?:mount|eq|equatorial|tracker|tracks|tracking|motors?|drive)\b/u;

/** @returns null where no picture of the sky is asked for */
export const skyPicture = (text: string, catalogue: Catalogue): Outcome | null => {
  const plain = folded(text);
  if (!asksOfPicture(plain) || OF_ELSE.test(plain) || CHOOSES.test(plain)) return null;
  const untracked = onTripod(plain, catalogue);
  const isAsked = ASKS.test(plain) || (untracked !== null && !ON_MOUNT.test(plain));
  if (!isAsked) return null;
  if (untracked !== null || TRAIL_UNWISHED.test(plain)) return untracked;
  return topicAmong(pictures(), plain.replace(/[^\p{L}\p{N}'-]+/gu, ' '));
};
