/** What follows from a camera's numbers and a focal length: how much sky a pixel takes, and how much the sensor. */
import { numberIn, numbersIn } from './kit-numbers.js';
import { PIXEL, pixelArcsec } from './pixel-scale.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';

const DEG_PER_RADIAN = 57.295_78;
const LEAST_FOCAL_MM = 10;

const SCALE =
  /\b(?:image|pixel|plate|picture) scale\b|\barc ?sec\w*(?: per|\/) ?pix\w*|\bsampling\b|\b(?:over|under)sampl\w*|\bpixel size\b/u;
/** Told of a camera and its telescope, with nothing asked: what follows from both. */
const TOLD = /\b(?:pixels?|camera|sensor|ccd|cmos)\b/u;
const FIELD =
  /\b(?:fov|field(?: of view)?|how much (?:sky|of the sky)|how (?:big|wide|large) a field)\b|\b(?:fit|fits)\b/u;
const SENSOR = /(?<![\d.])(\d{1,2}(?:\.\d+)?) ?(?:mm)? ?(?:x|×|by) ?(\d{1,2}(?:\.\d+)?) ?mm?\b/u;
const FOCAL = /(?<![\d.x×])(\d{2,4}) ?mm\b/gu;

/** Widths and heights in millimetres, of formats by their names; common practice, no source. */
const FORMATS: readonly (readonly [RegExp, readonly [number, number]])[] = [
  [/\bfull[- ]?frame\b|\b35 ?mm sensor\b/u, [36, 24]],
  [/\baps[- ]?c\b|\bcrop(?:ped)?(?: sensor)?\b/u, [23.5, 15.6]],
  [/\b(?:micro )?four[- ]thirds\b|\bmft\b/u, [17.3, 13]],
  [/\b(?:1|one)[- ]?(?:inch|") sensor\b/u, [13.2, 8.8]],
];

const rounded = (value: number, digits: number): string => String(Number(value.toFixed(digits)));

const focalIn = (plain: string): number | null => {
  const rest = plain
    .replace(SENSOR, ' ')
    .replace(PIXEL, ' ')
    .replace(/\b35 ?mm sensor\b/u, ' ');
  const found = [...rest.matchAll(FOCAL)].map(([, mm]) => Number(mm)).filter((mm) => mm >= LEAST_FOCAL_MM);
  if (found.length !== 1) return null;
  // "80mm f/6": of a telescope, but a lens bears its focal length.
  const { apertureMm, ratio, focalMm } = numbersIn(rest);
  const isTelescope = apertureMm === found[0] && ratio !== null && !/\blens\b|\bobje[ck]ti[vf]\b/u.test(plain);
  return isTelescope ? focalMm : (found[0] ?? null);
};

const said = (title: string, summary: string): Outcome =>
  reply({ title, summary, choices: [{ label: "What's up tonight?", run: 'tonight' }], pointsAt: NOWHERE });

const scale = (plain: string, focalMm: number): Outcome | null => {
  const pixelUm = numberIn(plain, PIXEL) ?? 0;
  return pixelUm === 0 || !(SCALE.test(plain) || TOLD.test(plain)) ? null : scaleOf(pixelUm, focalMm);
};

/** How much sky a pixel of so many micrometres takes at that focal length in millimetres. */
export const scaleOf = (pixelUm: number, focalMm: number): Outcome => {
  const arcsec = pixelArcsec(pixelUm, focalMm);
  return said(
    `${rounded(arcsec, 2)}″ a pixel`,
    `${rounded(arcsec, 2)}″ a pixel: 206.265 times ${rounded(pixelUm, 2)} µm over ${rounded(focalMm, 0)} mm. Under common seeing of 2 to 4″ about 1 to 2″ suits deep sky; planets want 0.1 to 0.3″.`,
  );
};

const sensorIn = (plain: string): readonly [number, number] | null => {
  const [, width, height] = SENSOR.exec(plain) ?? [];
  if (width !== undefined && height !== undefined) return [Number(width), Number(height)];
  return FORMATS.find(([pattern]) => pattern.test(plain))?.[1] ?? null;
};

const degreesOf = (mm: number, focalMm: number): number => 2 * Math.atan(mm / (2 * focalMm)) * DEG_PER_RADIAN;

const field = (plain: string, focalMm: number): Outcome | null => {
  const sensor = FIELD.test(plain) ? sensorIn(plain) : null;
  if (sensor === null) return null;
  const [wide, high] = sensor.map((mm) => degreesOf(mm, focalMm));
  const sides = `${rounded(wide ?? 0, 2)}° × ${rounded(high ?? 0, 2)}°`;
  return said(
    sides,
    `${sides}: a sensor of ${rounded(sensor[0], 1)} × ${rounded(sensor[1], 1)} mm at ${rounded(focalMm, 0)} mm. The Moon is 0.5° wide, M 31 3° long.`,
  );
};

/** @param plain in lower case; null: nothing of it is asked, or its numbers are not told */
export const cameraFigures = (plain: string): Outcome | null => {
  if (!/\d ?mm\b/u.test(plain)) return null;
  const focalMm = focalIn(plain);
  return focalMm === null ? null : (scale(plain, focalMm) ?? field(plain, focalMm));
};
