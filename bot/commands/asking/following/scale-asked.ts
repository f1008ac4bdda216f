/** A camera's scale whose numbers are told line by line: "what scale do i get", "800mm", "3.76um". What is missing is asked for. */
import { wordCountOf } from '../../../ground/fold-text.js';
import { NOWHERE, reply, type Outcome } from '../../../reply/reply.js';
import type { Deps, SaidWords } from '../../core/command.js';
import { scaleOf } from '../camera-figures.js';
import { numberIn, numbersIn } from '../kit-numbers.js';
import { PIXEL } from '../pixel-scale.js';
import { keepLastAsked, lastAsked } from './last-asked.js';

const ASKS =
  /\b(?:image|pixel|plate|picture) ?scale\b|\barc ?sec\w*(?: per|\/| a) ?pix\w*|\bsampling\b|\b(?:over|under)sampl\w*|\b(?:what|whats|what's|which|how (?:big|fine)|work out|calculate|give me|tell me)\b.*\bscale\b/u;
/** Scales of other things. */
const OTHERS =
  /\b(?:model|map|kitchen|bathroom|weigh\w*|antoniadi|bortle|richter|magnitude|seeing scale|kelvin|celsius|fahrenheit|wind|beaufort|time ?scale|setting circles?|dec scale|ra scale|latitude scale|drawing|solar system)\b/u;
const MOST_WORDS = 14;

/** What a line holds that tells nothing but numbers; any other word says something else. */
const OF_NUMBERS =
  /^(?:[\d.,/]+|[\d.]+ ?(?:mm|um|µm|μm|microns?)|mm|um|µm|μm|microns?|micrometers?|micrometres?|and|with|on|in|at|or|what|about|if|its|it's|it|is|are|a|an|the|my|our|i|we|have|got|use|using|has|scope|telescope|camera|cam|sensor|ccd|cmos|pixels?|px|focal|length|fl|size|of|newt\w*|refractor|reflector|sct|mak\w*|apo|triplet|f\/?[\d.]+|each|ones?|so|ok|then|now|that's|thats|for|tube|lens|inch|")$/u;
const isNumbersAlone = (plain: string): boolean =>
  /\d/u.test(plain) &&
  plain
    .replace(/[,;:?!]+/gu, ' ')
    .trim()
    .split(/\s+/u)
    .every((word) => OF_NUMBERS.test(word));

const LEAST_FOCAL_MM = 50;
const MOST_FOCAL_MM = 6000;

interface Optics {
  readonly focalMm: number | null;
  readonly pixelUm: number | null;
  /** The scale was asked for: the next numbers are for it. */
  readonly isAsked: boolean;
}
const NOTHING: Optics = { focalMm: null, pixelUm: null, isAsked: false };

const inRange = (mm: number | null): number | null =>
  mm !== null && mm >= LEAST_FOCAL_MM && mm <= MOST_FOCAL_MM ? mm : null;

/** @param isBare a number without its unit may stand for either */
const opticsIn = (plain: string, isBare: boolean): Pick<Optics, 'focalMm' | 'pixelUm'> => {
  const rest = plain.replace(PIXEL, ' ');
  const { focalMm, apertureMm, ratio } = numbersIn(rest);
  const anyMm = numberIn(rest, /(?<![\d.x×])(\d{2,4}) ?mm\b/u);
  const bare = isBare ? numberIn(plain, /^\D*(?<![\d.])(\d{3,4})(?![\d.])\D*$/u) : null;
  const barePixel = isBare ? numberIn(plain, /^\D*(?<![\d.])(\d{1,2}\.\d{1,2})(?![\d.])\D*$/u) : null;
  const isAperture = apertureMm !== null && ratio === null && apertureMm === anyMm;
  return {
    focalMm: inRange(focalMm ?? (isAperture ? null : anyMm) ?? bare),
    pixelUm: numberIn(plain, PIXEL) ?? (/mm/u.test(plain) ? null : barePixel),
  };
};

const keptOptics = ({ store }: Deps, { asker, nowUtcMs }: SaidWords): Optics => {
  const kept = lastAsked(store, asker, nowUtcMs, 'optics');
  return kept === null ? NOTHING : (JSON.parse(kept) as Optics);
};

const wanted = ({ focalMm, pixelUm }: Optics): string => {
  if (focalMm !== null) return "the camera's pixel size, such as: 3.76um";
  if (pixelUm !== null) return "the telescope's focal length, such as: 800mm";
  return "the telescope's focal length and the camera's pixel size, such as: 800mm 3.76um";
};

const missing = (optics: Optics): Outcome =>
  reply({
    title: 'The scale of a picture',
    summary: `It is 206.265 times the pixel in µm over the focal length in mm. Tell me ${wanted(optics)}.`,
    pointsAt: NOWHERE,
  });

const OF_OWN = /\b(?:my|our|i have|i've|ive|got|i use|using|camera|scope|telescope)\b/u;

/** What a line tells, laid over what was told before; null where it tells and asks nothing of it. */
const opticsAfter = (before: Optics, plain: string): Optics | null => {
  const isAsked = ASKS.test(plain);
  if (!isAsked && !isNumbersAlone(plain)) return null;
  const { focalMm, pixelUm } = opticsIn(plain, before.isAsked);
  if (!isAsked && focalMm === null && pixelUm === null) return null;
  return {
    focalMm: focalMm ?? before.focalMm,
    pixelUm: pixelUm ?? before.pixelUm,
    isAsked: isAsked || before.isAsked || pixelUm !== null,
  };
};

/** @returns null where no scale is asked for, nor were its numbers */
export const scaleAsked = (deps: Deps, said: SaidWords, plain: string): Outcome | null => {
  if (plain === '' || wordCountOf(plain) > MOST_WORDS || OTHERS.test(plain)) return null;
  const optics = opticsAfter(keptOptics(deps, said), plain);
  if (optics === null) return null;
  if (optics.isAsked || OF_OWN.test(plain))
    keepLastAsked(deps.store, said.asker, JSON.stringify(optics), said.nowUtcMs, 'optics');
  const { focalMm, pixelUm, isAsked } = optics;
  if (!isAsked) return null;
  return focalMm !== null && pixelUm !== null ? scaleOf(pixelUm, focalMm) : missing(optics);
};
