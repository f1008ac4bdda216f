/** Sentences that ask for one figure: when something rises, its hour angle, the constellation it is in, which eyepiece, how far the air lifts it. */
import { numbersIn } from '../kit-numbers.js';
import { commandLine } from '../question-parts.js';
import { nightLine, says, type Asked, type Reading, type Rule } from './asked.js';

const ASKS_WHEN =
  "when|when's|whens|what time|what hour|time of|how long (?:until|till|before)|which hour|what date|what day|at what time";

/** In which direction it rises stands beside the hour. */
const ASKS_WHERE = 'where (?:does|do|will|did)|(?:in )?(?:which|what) (?:direction|way|side) (?:does|do|will|did)';

/** What is asked for, and the words for it; the first that fits. */
const FIGURES: readonly (readonly [RegExp, string])[] = [
  // What is asked of the culmination stands in its answer.
  [
    /\b(?:air ?mass|altitude|height|how high|elevation|time)\b.*\b(?:culminat\w*|transits?|at its highest|(?:on|at|crosses|crossing) the meridian|meridian (?:passage|transit))\b|\b(?:culminat\w*|transits?)\b.*\b(?:air ?mass|altitude|height|how high|elevation)\b/u,
    'transit',
  ],
  [
    /\bhour[- ]?angles?\b|\bha of\b|\b(?:past|over|beyond|crossed|(?:east|west) of|reached|(?:short|away|far) (?:of|from)) (?:the )?meridian\b|\bhow long ago\b.*\b(?:meridian|transit\w*|culminat\w*)\b/u,
    'hour-angle',
  ],
  // "NGC 253 transit"; those of Mercury and Venus are across the Sun.
  [/^(?!mercury|venus)(?:the )?\S+(?: \S+){0,2} (?:transits?|culminat\w+)(?: tonight| time)?$/u, 'transit'],
  [/\bmerid\b/u, 'hour-angle'],
  [/\bparallactic\b/u, 'parallactic-angle'],
  [/\bair ?mass\b/u, 'airmass'],
  [
    /\b(?:which|what|wat) constellation\b|\bconstellation\b.*\b(?:is|does|lies?)\b.*\b(?:in|belong)\b|\bconstellation of\b/u,
    'constellation',
  ],
  [
    /\b(?:which|what|best|right|good|recommend\w*|suggest\w*|how much|how many|choose|use)\b.*\b(?:eye ?pieces?|oculars?|magnification|magnify|power|exit pupil)\b|\beye ?pieces? (?:for|to use|should)\b|\b(?:magnification|power|exit pupil) (?:for|on)\b/u,
    'eyepiece',
  ],
  [
    /\bminim(?:um|a)\b|\balgol'?s? (?:next )?mins?\b|\bmins? of algol\b|\beclips\w*\b|\b(?:faintest|dimmest)\b|\b(?:will|does|did|when|next)\b.*\bdips?\b(?! below)/u,
    'minimum',
  ],
  [
    new RegExp(`\\b(?:${ASKS_WHEN})\\b.*\\b(?:highest|high point|maximum altitude|top of its (?:arc|path))\\b`, 'u'),
    'transit',
  ],
  [/^(?:has|have|did|is|was)\b.*\bculminat\w*\b/u, 'transit'],
  [
    /\bhow long\b.*\bmoon\b.*\b(?:up|visible|in the sky|above)\b(?!.*\b(?:until|till|before|degrees?)\b)|\brises? and sets?\b|\brising and setting\b|\bsets? and rises?\b/u,
    'rise-and-set',
  ],
  [new RegExp(`\\b(?:${ASKS_WHEN}|next)\\b.*\\b(?:fad(?:es?|ing)|dims?|dimming)\\b`, 'u'), 'minimum'],
  [new RegExp(`\\b(?:${ASKS_WHEN})\\b.*\\b(?:transits?|culminat\\w*|souths?|due south)\\b`, 'u'), 'transit'],
  [
    /\b(?:cross(?:es)?|reach(?:es)?|hits?|gets? to) (?:the )?meridian\b|\b(?:on|at|in) the meridian\b|\btransit (?:time|altitude|height)|\bmeridian (?:passage|transit)\b|\btransits? (?:time|at what)\b/u,
    'transit',
  ],
  [
    new RegExp(
      `\\b(?:${ASKS_WHEN}|${ASKS_WHERE})\\b.*\\b(?:moon ?rise|rises?|rising|risen|rose|comes?\\b.*\\bup|came up|come over the horizon|up from|gets? up|goes up)\\b`,
      'u',
    ),
    'rise',
  ],
  [
    new RegExp(
      `\\b(?:${ASKS_WHEN}|${ASKS_WHERE})\\b.*\\b(?:moon ?set|sets?|setting|gone|went (?:down|under|below)|go(?:es|ing)?\\b.*\\b(?:down|under|below))\\b`,
      'u',
    ),
    'set',
  ],
  [/\bwhen\b.*\bmoon\b.*\bup\b/u, 'rise'],
  [/\bmoon ?rise\b|^(?:the )?\S+(?: \S+)? (?:rises?|rising)(?: time)?\b|\brise time\b|\brising time\b/u, 'rise'],
  [/\bmoon ?set\b|^(?:the )?\S+(?: \S+)? (?:sets?|setting)(?: time)?\b|\bset(?:ting)? time\b/u, 'set'],
];
/** Figures of an event, for which no hour is given. */
const OF_EVENTS: readonly string[] = [
  'rise',
  'set',
  'rise-and-set',
  'transit',
  'minimum',
  'last-rise',
  'last-set',
  'last-transit',
];
/** Other questions in which the same words stand. */
const NOT_OURS =
  /\b(?:flips?|after (?:the )?(?:moon ?set|moon ?rise|moon (?:sets|rises|has))|before (?:the )?(?:moon ?rise|moon ?set|moon (?:rises|sets)|it sets|sun)|align\w*|drift\w*)\b/u;

const isEclipseOfOthers = (asked: Asked, first: string): boolean =>
  first === 'minimum' && asked.targets.every((name) => name === 'moon' || name === 'sun');

/** Where a focal length alone is told; common practice, no source. */
const USUAL_APERTURE_MM = 150;
const LEAST_FOCAL_MM = 400;

/** "Which eyepiece for Saturn in 1200mm f6": the aperture is the one over the other; of a focal length alone a usual one is taken. */
const withAperture = (asked: Asked, first: string): Asked & { readonly taken?: string } => {
  const { focalMm, ratio, apertureMm } = numbersIn(asked.plain);
  if (first !== 'eyepiece' || asked.kit !== null || apertureMm !== null || focalMm === null) return asked;
  if (ratio !== null) return { ...asked, kit: `${Math.round(focalMm / ratio)}mm`, unread: [] };
  if (focalMm < LEAST_FOCAL_MM) return asked;
  const usual = Number((focalMm / USUAL_APERTURE_MM).toFixed(1));
  return {
    ...asked,
    kit: `${USUAL_APERTURE_MM}mm f/${usual}`,
    unread: [],
    taken: `Took ${focalMm} mm as the focal length and ${USUAL_APERTURE_MM} mm as the aperture; say with: and yours.`,
  };
};

const figureLine = (asked: Asked & { readonly taken?: string }, target: string, first: string): Reading => {
  const read = nightLine('up', target, asked, { first, ...(first === 'minimum' ? { above: asked.above } : {}) });
  return asked.taken === undefined ? read : { ...read, note: asked.taken, usesAll: true };
};

/** "When did Mars rise", "what time was the Moon up this morning": it has been. */
const HAS_BEEN =
  /\b(?:did|was|were)\b|\brose\b|\bhas (?:it )?been\b|\b(?:last|previous|latest) (?:moon)?(?:rise|rising|set|setting|transit|culmination)\b/u;
/** Of a day that is told otherwise the almanac's own answer stands. */
const OF_NOW = /^(?:today|tonight|this (?:evening|morning|afternoon)|earlier|now)$/u;
const ofPast = (asked: Asked, first: string): string => {
  const { night } = asked.when;
  const isPast = says(asked, HAS_BEEN) && (night === null || OF_NOW.test(night));
  return isPast && LASTS.includes(first) ? `last-${first}` : first;
};
const LASTS: readonly string[] = ['rise', 'set', 'transit'];

/** The figure comes first in the target's answer. */
export const figure: Rule = (asked) => {
  const target =
    asked.targets[0] ?? (says(asked, /\bmoon ?(?:rise|set)s?\b|\bmoon (?:goes )?under\b/u) ? 'moon' : undefined);
  if (target === undefined || target === 'sun' || asked.targets.length > 1 || says(asked, NOT_OURS)) return null;
  const found = FIGURES.find(([pattern]) => says(asked, pattern))?.[1];
  if (found === undefined) return aboveOf(asked, target);
  const first = ofPast(asked, found);
  const isEvent = OF_EVENTS.includes(first);
  if (isEclipseOfOthers(asked, first) || (isEvent && asked.when.hour !== null)) return aboveOf(asked, target);
  return isEvent && target === 'moon'
    ? figureLine({ ...asked, kit: null, sky: null }, target, first)
    : figureLine(withAperture(asked, first), target, first);
};

/** "when is m33 above 45". */
const aboveOf = (asked: Asked, target: string): Reading | null =>
  asked.above === null ? null : nightLine('up', target, asked, { above: asked.above });

const AIR =
  /\brefract(?:ion|s|ed|ive)?\b|\bhow much (?:air|atmosphere)\b|\b(?:air|atmosphere)\b.*\b(?:lifts?|bends?|raises?|dims?)\b|\b(?:lift|bend|raise|dim)(?:s|ed)?\b.*\b(?:air|atmosphere)\b|\bair ?mass\b|\bextinction\b/u;
const HEIGHT = /(\d{1,2}(?:\.\d)?) ?(?:°|deg\b|degrees?\b)|\b(?:altitude|height|at) (?:of )?(\d{1,2})\b/u;
const USUAL_HEIGHT = '10';

/** "-3 C", "minus 3 celsius", "40 F", "20C"; a bare figure is none. */
const TEMPERATURE =
  /(?<![\d.])(minus |[-−])?(\d{1,3}(?:\.\d+)?) ?(?:° ?|deg(?:rees?)? ?)?(c|celsius|centigrade|f|fahrenheit)\b/u;
const temperatureIn = (plain: string): string | undefined => {
  const [, minus, figure, unit = ''] = TEMPERATURE.exec(plain) ?? [];
  if (figure === undefined) return undefined;
  const degrees = Number(figure) * (minus === undefined ? 1 : -1);
  return String(Number((unit.startsWith('f') ? ((degrees - 32) * 5) / 9 : degrees).toFixed(1)));
};

const HPA_PER_INCH = 33.8639;
const HPA_PER_MM = 1.33322;
const PRESSURE =
  /(\d{2,4}(?:\.\d+)?) ?(hpa|mb|mbar|millibars?|hectopascals?|in ?hg|inches of mercury|mm ?hg|torr|kpa)\b/u;
const pressureIn = (plain: string): string | undefined => {
  const [, figure, unit = ''] = PRESSURE.exec(plain) ?? [];
  if (figure === undefined) return undefined;
  const ofInches = unit.startsWith('in') ? HPA_PER_INCH : 1;
  const ofMm = /^(?:mm|torr)/u.test(unit) ? HPA_PER_MM : 1;
  return String(Number((Number(figure) * ofInches * ofMm * (unit === 'kpa' ? 10 : 1)).toFixed(1)));
};

/** Of the air at a height, where no target is named. */
export const air: Rule = (asked) => {
  if (asked.targets.length > 0 || !says(asked, AIR)) return null;
  const air = { temperature: temperatureIn(asked.plain), pressure: pressureIn(asked.plain) };
  // "5 degrees C" is no height.
  const found = HEIGHT.exec(asked.plain.replace(TEMPERATURE, ' ').replace(PRESSURE, ' '));
  const height = found?.[1] ?? found?.[2];
  return height === undefined
    ? { line: commandLine('refraction', USUAL_HEIGHT, air), note: 'No height was said: say refraction 30 for another.' }
    : { line: commandLine('refraction', height, air) };
};
