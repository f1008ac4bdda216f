/** Numbers of an eyepiece and a telescope: asked at once, beside a walk as well, and followed by "and with a 10mm" or "the field with that". */
import { cleanText, wordCountOf } from '../../../ground/fold-text.js';
import { NOWHERE, reply, type Outcome } from '../../../reply/reply.js';
import type { Deps, SaidWords, WordsReader } from '../../core/command.js';
import { cameraFigures } from '../camera-figures.js';
import { asksMostPower, eyepieceFigures, mostPowerOfAny } from '../eyepiece-figures.js';
import { numbersIn, withNumbers } from '../kit-numbers.js';
import { keepLastAsked, lastAsked } from './last-asked.js';
import { polarFigures } from '../polar-figures.js';
import { isOfPicture, skyPicture } from '../sky-pictures.js';
import { scaleAsked } from './scale-asked.js';
import { toldLine } from './told-line.js';

const MAY_BE = /\b(?:mm|eye ?pieces?|ep|field|fov|power|ratio|magnif\w*|exit pupil|barlow)\b|\d ?mm\b/iu;
const MOST_WORDS = 12;
/** What of the same telescope is asked, or another eyepiece in it. */
const FOLLOWS =
  /^(?:(?:and|ok|so|or|what about|how about|then|but)\b.*\b\d{1,2}(?:\.\d)? ?mm\b.*|(?:and )?(?:w|with|in|through) (?:a |my |the )?\d{1,2}(?:\.\d)? ?mm\b.*|.*\b(?:field(?: of view)?|fov|tfov|exit pupil|power|magnification)\b.*)$/iu;
/** Of another telescope than the one before. */
const NAMES_TARGET =
  /\b(?:m ?\d|ngc|jupiter|saturn|mars|venus|moon|sun|tonight|usb|power (?:supply|cable|lead)|volt\w*|amps?|battery)\b/iu;

/** "Does the Rosette fit", after a field: in it. */
const FITS =
  /^(?:(?:and|so|ok|but|then|what about) )*(?:does|do|did|will|would|can|could|is|are)\b.*\b(?:fit|fits|fill|fills|too (?:big|large|wide|long)|whole)\b/u;

const fitsBefore = ({ store }: Deps, { asker, nowUtcMs }: SaidWords, text: string): string | null => {
  if (!FITS.test(text) || wordCountOf(text) > MOST_WORDS || /\d ?(?:mm|deg\w*|°)/u.test(text)) return null;
  const before = lastAsked(store, asker, nowUtcMs, 'figures');
  return before === null ? null : `${withNumbers(before, '') ?? before} ${text} fits`;
};

const askedBefore = ({ store }: Deps, { asker, nowUtcMs }: SaidWords, text: string): string | null => {
  if (!FOLLOWS.test(text) || wordCountOf(text) > MOST_WORDS || NAMES_TARGET.test(text)) return null;
  const before = lastAsked(store, asker, nowUtcMs, 'figures');
  return before === null ? null : withNumbers(before, text);
};

/** "And w a 10mm", where no telescope was told: what it is divided into is asked for. */
const EYEPIECE_ALONE =
  /^(?:and|or|so|ok|what about|how about|then)?,? ?(?:w|with|in|through|using) (?:a |my |the )?(\d{1,2}(?:\.\d)?) ?mm(?: eye ?piece| ep)?\W*$/u;
const MOST_EYEPIECE_MM = 42;
const FOCAL_LENGTHS_MM = [650, 1000, 1500];

/** "What's the magnification with a 10mm". */
const ITS_POWER =
  /\b(?:magnif\w*|power|how many times|zoom)\b.*?(?<![\d./])(\d{1,2}(?:\.\d)?) ?mm\b(?! ?(?:f|socket|plug|jack|thread))/u;
const OF_CURRENT = /\b(?:supply|cable|lead|volt\w*|amps?|batter\w+|socket|plug|jack|usb|adapter|tank|brick)\b/u;

const eyepieceAlone = (text: string): { readonly outcome: Outcome } | null => {
  const asked = OF_CURRENT.test(text) ? null : ITS_POWER.exec(text)?.[1];
  const mm = Number(EYEPIECE_ALONE.exec(text)?.[1] ?? asked ?? 0);
  if (mm < 2 || mm > MOST_EYEPIECE_MM) return null;
  const powers = FOCAL_LENGTHS_MM.map((focal) => `${Math.round(focal / mm)}× on ${focal} mm`);
  return {
    outcome: reply({
      title: `A ${mm} mm eyepiece`,
      summary: `The telescope's focal length over ${mm}: ${powers.join(', ')}. Which is yours? Say it as: ${mm}mm eyepiece on 1000mm.`,
      pointsAt: NOWHERE,
    }),
  };
};

const plainOf = (text: string): string => cleanText(text).toLowerCase();

const OF_IT = /\b(?:it|them|this one|that one)\b/u;

/** "How do I take a picture of it": of what was asked about last. */
const pictureAsked = (deps: Deps, { asker, nowUtcMs }: SaidWords, text: string): Outcome | null => {
  if (!isOfPicture(text)) return null;
  const before = OF_IT.test(text) ? lastAsked(deps.store, asker, nowUtcMs) : null;
  const name = before === null ? null : (toldLine(before, deps.commands)?.values['target'] ?? null);
  return skyPicture(name === null ? text : text.replace(OF_IT, name), deps.catalogue);
};

/** "What's the most it can magnify", after other figures: by the aperture that was told, with them or as one's own. */
const mostPowerAsked = ({ store, catalogue }: Deps, { asker, nowUtcMs }: SaidWords, text: string): Outcome | null => {
  if (!asksMostPower(text) || wordCountOf(text) > MOST_WORDS || NAMES_TARGET.test(text)) return null;
  const figures = lastAsked(store, asker, nowUtcMs, 'figures');
  const { apertureMm } = numbersIn(figures ?? '');
  const told = apertureMm === null ? lastAsked(store, asker, nowUtcMs, 'scope') : `${Math.round(apertureMm)} mm`;
  if (figures === null && told === null) return null;
  const ofIt = told === null ? null : eyepieceFigures(`highest useful power of a ${told} telescope`, catalogue);
  return ofIt ?? mostPowerOfAny();
};

/** "Does it fit in that", of an eyepiece asked about before. */
const fitsAsked = (...[deps, said, text]: Parameters<typeof fitsBefore>): Outcome | null => {
  const fitting = fitsBefore(deps, said, text);
  return fitting === null ? null : eyepieceFigures(fitting, deps.catalogue);
};

export const figuresAsked: WordsReader = {
  name: 'the numbers of an eyepiece',
  read: (deps, said) => {
    const { asker, nowUtcMs } = said;
    const text = said.text.length > 200 ? '' : plainOf(said.text);
    const first =
      pictureAsked(deps, said, text) ??
      mostPowerAsked(deps, said, text) ??
      polarFigures(text) ??
      fitsAsked(deps, said, text) ??
      cameraFigures(text) ??
      scaleAsked(deps, said, text);
    if (first !== null) return Promise.resolve({ outcome: first });
    if (!MAY_BE.test(text)) return Promise.resolve(null);
    const whole = eyepieceFigures(text, deps.catalogue);
    const asked = whole === null ? askedBefore(deps, said, text) : text;
    if (asked === null) return Promise.resolve(eyepieceAlone(text));
    const outcome = whole ?? eyepieceFigures(asked, deps.catalogue);
    if (outcome !== null && numbersIn(asked).focalMm !== null)
      keepLastAsked(deps.store, asker, asked, nowUtcMs, 'figures');
    return Promise.resolve(outcome === null ? null : { outcome });
  },
};
