/** What is asked of a target itself and hangs on no place: how bright, how large, what it is, which filter, and whether a pair is split. */
import { constellationName, nameWithAlias, type Target } from '../../catalogue/index.js';
import { USUAL_EQUIPMENT, type Equipment } from '../../evening/equipment.js';
import { NOWHERE, reply, type Reply } from '../../reply/reply.js';
import { listed, magnitudeText } from '../../reply/wording.js';
import { apparentMagnitude } from '../../sky/brightness.js';
import { ANYWHERE } from '../../sky/anywhere.js';
import { constellationAt } from '../../sky/constellation.js';
import { placeOf } from '../../sky/place.js';
import { planetLook } from '../../sky/planet-look.js';
import { skyTrack } from '../../sky/sky-track.js';
import type { UtcMs } from '../../sky/types.js';
import { eyepieceWords } from './eyepiece-words.js';
import { filterNeeded } from './filter-words.js';
import { moonDistanceWords } from './moon-distance.js';
import { moonSize } from './moon-size.js';
import { moonsWords } from './moons-words.js';
import { bestMonth } from './season.js';
import { apertureNeeded, splitAnswer } from './split-words.js';
import { BINOCULAR_MAG, EYE_MAG, telescopeNeeded } from './telescope-needed.js';
import { apartWords, sizeWords, whatItIs } from './what-it-is.js';

export const OF_ITSELF = [
  'magnitude',
  'size',
  'kind',
  'constellation',
  'separation',
  'distance',
  'rings',
  'moons',
  'filter',
  'split',
  'aperture',
  'season',
  'names',
  'eyepiece',
] as const;
export type OfItself = (typeof OF_ITSELF)[number];
const ALL: readonly string[] = OF_ITSELF;
export const isOfItself = (first: string | undefined): first is OfItself => first !== undefined && ALL.includes(first);

/** A target, with what, and at which instant. */
export interface ItselfQuestion {
  readonly first: OfItself;
  readonly target: Target;
  /** Null: none was said. */
  readonly equipment: Equipment | null;
  readonly utcMs: UtcMs;
}

const magnitudeAt = ({ body, magnitude }: Target, utcMs: UtcMs): number | null =>
  body.kind === 'solarSystem' ? apparentMagnitude(body.body, utcMs) : magnitude;

const shownIn = (magnitude: number): string => {
  if (magnitude <= EYE_MAG.anywhere) return 'plain to the naked eye';
  if (magnitude <= EYE_MAG.dark) return 'for the naked eye in a dark sky';
  return magnitude <= BINOCULAR_MAG ? 'for binoculars' : 'for a telescope';
};

const brightness = ({ target, utcMs }: ItselfQuestion): string => {
  const { name, double, variable } = target;
  if (variable !== null)
    return `${name} varies from mag ${magnitudeText(variable.brightestMagnitude)} to ${magnitudeText(variable.faintestMagnitude)}.`;
  if (double !== null)
    return `${name}: mag ${magnitudeText(double.magnitudes[0])}, and its companion ${magnitudeText(double.magnitudes[1])}.`;
  const magnitude = magnitudeAt(target, utcMs);
  if (magnitude === null) return `I hold no magnitude of ${name}.`;
  const size = target.body.kind === 'solarSystem' ? null : sizeWords(target);
  return size === null
    ? `${name}: mag ${magnitudeText(magnitude)}, ${shownIn(magnitude)}.`
    : `${name}: mag ${magnitudeText(magnitude)} in all, spread over ${size.replace(/ across$/u, '')}, so it looks fainter than a star of that magnitude.`;
};

/** The full Moon's breadth on an average; common practice, no source. */
const MOON_ARCMIN = 31;
const beside = (sizeArcmin: number): string => {
  const moons = sizeArcmin / MOON_ARCMIN;
  if (moons >= 1.5) return `, ${moons.toFixed(moons < 3 ? 1 : 0)} times as wide as the full Moon`;
  return moons >= 0.7 ? ', about as wide as the full Moon' : '';
};

const size = ({ target, utcMs }: ItselfQuestion): string => {
  const { name, body, sizeArcmin, double } = target;
  const look = body.kind === 'solarSystem' ? planetLook(body.body, utcMs) : null;
  if (look !== null) return `${name} is ${look.diameterArcsec.toFixed(1)}″ across now.`;
  if (target.kind === 'moon') return moonSize(utcMs);
  if (target.kind === 'sun') return `The ${name} is about half a degree across.`;
  if (double !== null) return `${name}: two stars ${apartWords(double)}; each is a point in any telescope.`;
  if (target.kind === 'star') return `${name} is a star: a point in any telescope.`;
  const words = sizeWords(target);
  return words === null || sizeArcmin === null
    ? `I hold no size of ${name}.`
    : `${name} is ${words}${beside(sizeArcmin)}.`;
};

const rings = ({ target: { name, body }, utcMs }: ItselfQuestion): string | null => {
  const tiltDeg = body.kind === 'solarSystem' ? (planetLook(body.body, utcMs)?.ringTiltDeg ?? null) : null;
  return tiltDeg === null ? null : `${name}'s rings are tilted ${tiltDeg.toFixed(1)}° towards us now.`;
};

const article = (words: string): string => `${/^[aeiou]/iu.test(words) ? 'an' : 'a'} ${words}`;

const kind = ({ name, kindText, kind: of, constellation }: Target): string | null => {
  if (of === 'moon' || of === 'sun' || of === 'coordinates') return null;
  return `${name} is ${article(kindText)}${constellation === null ? '' : ` in ${constellationName(constellation)}`}.`;
};

const separation = ({ name, kind: of, double }: Target): string | null => {
  if (double !== null) return `${name}: ${apartWords(double)}.`;
  return of === 'star' ? `I know no companion of ${name}.` : null;
};

/** The astronomical unit over the speed of light (IAU 2012; CODATA): 499.0 s. */
const LIGHT_MINUTES_PER_AU = 8.3168;

/** The parsec, 3.26156 light years (IAU 2015, resolution B2), of a parallax of 1000 mas. */
const LIGHT_YEARS_AT_1_MAS = 3261.56;
/** The catalogue's own errors are some tenths of a milliarcsecond, so a smaller parallax tells little. */
const LEAST_PARALLAX_MAS = 3;

/** "25", "8.6"; a few hundred to two figures, as no more is known. */
const lightYears = (years: number): string => {
  if (years < 20) return years.toFixed(1);
  return years < 100 ? years.toFixed(0) : `some ${Number(years.toPrecision(2))}`;
};

const starDistance = (name: string, parallaxMas: number): string =>
  parallaxMas < LEAST_PARALLAX_MAS
    ? `${name} is some 1,000 light years away or more, too far for the parallax I hold to tell how far.`
    : `${name} is ${lightYears(LIGHT_YEARS_AT_1_MAS / parallaxMas)} light years away, by its parallax.`;

const distance = ({ target: { name, body }, utcMs }: ItselfQuestion): string => {
  if (body.kind === 'fixed' && (body.parallaxMas ?? 0) > 0) return starDistance(name, body.parallaxMas ?? 0);
  if (body.kind === 'fixed')
    return `How far ${name} is I do not keep: I have distances of stars near us, of the Moon and the planets alone.`;
  if (body.kind === 'solarSystem' && body.body === 'Moon') return moonDistanceWords(utcMs);
  const au = skyTrack(body, ANYWHERE).distanceAuAt(utcMs);
  const what = name === 'Sun' ? 'The Sun' : name;
  return `${what} is ${au.toFixed(2)} astronomical units from the Earth now, ${Math.round((au * KM_PER_AU) / MILLION).toLocaleString('en')} million km; its light takes ${Math.round(au * LIGHT_MINUTES_PER_AU)} minutes.`;
};
const KM_PER_AU = 149_597_870.7;
const MILLION = 1_000_000;

const constellationOf = ({ target, utcMs }: ItselfQuestion): string =>
  constellationAt(placeOf(target.body, ANYWHERE, utcMs).j2000);

const season = (target: Target): string | null => {
  const month = bestMonth(target);
  return month === null
    ? null
    : `${target.name} is best about ${month}: it is highest at midnight then, and in the evening a month or two later.`;
};

const MOST_NAMES = 6;
const names = ({ name, aliases }: Target): string =>
  aliases.length === 0
    ? `I know no other name of ${name}.`
    : `${name} is also ${listed(aliases.slice(0, MOST_NAMES))}.`;

const split = ({ name, kind: of, double }: Target, equipment: Equipment | null): string | null => {
  if (double !== null) return equipment === null ? apertureNeeded(double, true) : splitAnswer(double, equipment);
  return of === 'star' ? `I hold no figures of a companion of ${name}, so whether it is split I cannot say.` : null;
};

/** What hangs on the target alone. */
const OF_TARGET = {
  kind,
  separation,
  filter: filterNeeded,
  season,
  names,
  moons: ({ name }: Target) => moonsWords(name),
};

/** Null where it is to be asked otherwise: what is no pair is not split, and the Sun has answers of its own. */
export const itselfWords = (question: ItselfQuestion): string | null => {
  const { first, target, equipment, utcMs } = question;
  if (target.kind === 'sun' && first !== 'distance') return null;
  switch (first) {
    case 'magnitude':
      return brightness(question);
    case 'size':
      return size(question);
    case 'constellation':
      return `${target.name} is in ${constellationName(target.constellation ?? constellationOf(question))}.`;
    case 'rings':
      return rings(question);
    case 'distance':
      return distance(question);
    case 'split':
      return split(target, equipment);
    case 'eyepiece':
      return eyepieceWords(target, equipment ?? USUAL_EQUIPMENT);
    case 'aperture':
      return target.double === null
        ? telescopeNeeded(target, magnitudeAt(target, utcMs))
        : apertureNeeded(target.double, false);
    default:
      return OF_TARGET[first](target);
  }
};

/** The answer for one whose site is not known. */
export const itselfReply = (question: ItselfQuestion, words: string): Reply => {
  const { target, utcMs } = question;
  return reply({
    title: nameWithAlias(target),
    summary: words,
    facts: [{ label: 'It is', value: whatItIs(target, magnitudeAt(target, utcMs), 'UTC', utcMs) }],
    notes: [`Name a place to hear when it is up: up ${target.name} site:"Ely, England".`],
    pointsAt: NOWHERE,
    data: { target: { name: target.name } },
  });
};
