/** What a polar axis so far off does to a picture that nobody guides: the drift, and how long a frame may be. */
import {
  allowedPolarErrorArcmin,
  greatestDeclinationDriftArcsec,
  HARDLY_SHOWS_ARCSEC,
} from '../../pointing/pole/polar-drift.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { numberIn, numbersIn } from './kit-numbers.js';
import { PIXEL, pixelArcsec, USUAL_PIXEL_UM } from './pixel-scale.js';

const OF_AXIS = /\b(?:polar|pole|misalign\w*|pa)\b|\baxis\b.{0,20}\boff\b|\boff\b.{0,12}\baxis\b/u;
const ASKS =
  /\b(?:what|how|max\w*|longest|limit|can|could|does|do|is|will|would|much|many|matter\w*|ok|okay|enough|good|fine|allow\w*|exposures?|subs?)\b/u;
const OF_PICTURE =
  /\b(?:unguided|expos\w*|subs?|frames?|drift\w*|trail\w*|seconds?|secs?|minutes?|mins?|guid\w*|imag\w*|photo\w*|\d+ ?s)\b/u;
/** A mount that does it is told of, or where the pole is asked. */
const OF_ELSE =
  /\b(?:clock|reticle|where|how (?:do|can|should|would) (?:i|we)|fix|correct|reduce|improve|connect\w*)\b/u;

const ERROR =
  /(?<![\d.])(\d{1,3}(?:\.\d+)?) ?(arc ?min(?:ute)?s?\b|minutes? of arc|['’′]|arc ?sec(?:ond)?s?\b|["″]|°|deg(?:rees?)?\b)/u;
const MOST_ARCMIN = 600;

/** In arcminutes; null where none is told. */
const errorIn = (plain: string): number | null => {
  const [, figure, unit = ''] = ERROR.exec(plain) ?? [];
  if (figure === undefined) return null;
  const isSeconds = /sec|["″]/u.test(unit);
  const isDegrees = /^(?:°|deg)/u.test(unit);
  const arcmin = Number(figure) * (isDegrees ? 60 : 1) * (isSeconds ? 1 / 60 : 1);
  return arcmin > 0 && arcmin <= MOST_ARCMIN ? arcmin : null;
};

const EXPOSURE = /(?<![\d.])(\d{1,4}(?:\.\d+)?)[ -]?(s|secs?|seconds?|m|mins?|minutes?)\b(?! of arc)/u;
const MOST_MINUTES = 240;

/** In minutes; null where none is told. */
const exposureIn = (plain: string): number | null => {
  const [, figure, unit = ''] = EXPOSURE.exec(plain.replace(ERROR, ' ')) ?? [];
  if (figure === undefined) return null;
  const minutes = Number(figure) / (unit.startsWith('s') ? 60 : 1);
  return minutes > 0 && minutes <= MOST_MINUTES ? minutes : null;
};

const short = (value: number): string => String(Number(value.toFixed(value < 10 ? 1 : 0)));
const lasting = (minutes: number): string =>
  minutes < 1.5 ? `${Math.round(minutes * 60)} s` : `${short(minutes)} min`;

const pixelWords = (plain: string, perMinuteArcsec: number): string => {
  const { focalMm } = numbersIn(plain);
  if (focalMm === null) return '';
  const pixelUm = numberIn(plain, PIXEL) ?? USUAL_PIXEL_UM;
  const arcsec = pixelArcsec(pixelUm, focalMm);
  return ` At ${Math.round(focalMm)} mm a pixel of ${short(pixelUm)} µm is ${Number(arcsec.toFixed(2))}″: it drifts across one in ${lasting(arcsec / perMinuteArcsec)}.`;
};

/** Of one frame, where none is told. */
const USUAL_MINUTES = 5;

/** @param plain in lower case; null: no such thing is asked, or how far it is off is not told */
export const polarFigures = (plain: string): Outcome | null => {
  if (!OF_AXIS.test(plain) || !ASKS.test(plain) || !OF_PICTURE.test(plain) || OF_ELSE.test(plain)) return null;
  const arcmin = errorIn(plain);
  if (arcmin === null) return null;
  const perMinuteArcsec = greatestDeclinationDriftArcsec(arcmin, 1);
  const minutes = exposureIn(plain);
  const drift = `${short(perMinuteArcsec)}″ a minute`;
  const longest = lasting(HARDLY_SHOWS_ARCSEC / perMinuteArcsec);
  const isBorne = minutes !== null && greatestDeclinationDriftArcsec(arcmin, minutes) <= HARDLY_SHOWS_ARCSEC;
  const first =
    minutes === null
      ? `At most about ${longest} unguided`
      : `${isBorne ? 'Good enough' : 'Too far off'} for ${lasting(minutes)}: up to ${short(greatestDeclinationDriftArcsec(arcmin, minutes))}″ of drift. ${longest} is the most`;
  const needed = minutes ?? USUAL_MINUTES;
  return reply({
    title: `Polar axis ${short(arcmin)}′ off`,
    summary: `${first} for ${HARDLY_SHOWS_ARCSEC}″, the drift that hardly shows: with the axis ${short(arcmin)}′ off a star drifts by up to ${drift} in declination.${pixelWords(plain, perMinuteArcsec)} For ${lasting(needed)} the axis should be within ${short(allowedPolarErrorArcmin(HARDLY_SHOWS_ARCSEC, needed))}′.`,
    notes: [
      'The worst case: 15.04″ of turn a second, times the error as an angle; at other hour angles it is less. The mount’s own periodic error often trails stars sooner.',
    ],
    choices: [
      { label: 'Where the pole star stands', run: 'pole' },
      { label: 'By the drift of a star', run: 'help drift' },
    ],
    pointsAt: NOWHERE,
  });
};
