/** Sentences about the moons of Jupiter: how they stand at an hour, and what happens to them when. */
import { capital } from '../../../reply/wording.js';
import { instantLine, says, type Asked, type Rule } from './asked.js';

/** One of the four by its name is one of them; "Europa" and "Io" alone may be asked about as any target. */
const MOONS =
  /\b(?:jup(?:iter)?|jovian)'?s? moons?\b|\bmoons of jup(?:iter)?\b|\bgalilean(?: moons| satellites)?\b|\b(?:io|europa|ganymede|callisto)(?:'?s)?\b.*\b(?:eclipsed?|transits?|transiting|shadows?|occult\w*|events?|behind|in front|before|crosses|crossing|hidden|hides?|go(?:es)? across|across|pass(?:es)? (?:in front|across))\b|\b(?:eclipsed?|transits?|shadows?|occult\w*|events?|where|wheres|when)\b.*\b(?:io|europa|ganymede|callisto)\b|\bshadow transits?\b/u;

const MOON_EVENTS: readonly (readonly [RegExp, string])[] = [
  [/\bshadow/u, 'shadow-transit'],
  [/\btransit\w*|\bcross\w*|\bin front\b|\bacross\b/u, 'transit'],
  [/\boccult\w*|\bbehind\b|\bhidden\b|\bhides?\b/u, 'occultation'],
  [/\beclips\w*/u, 'eclipse'],
];

/** Where something is to be moved, the Sun comes first. */
const MOVES = /\bsun\b|\b(?:slew\w*|swing|go ?to|move|moving|point|aim)\b/u;

/** Before the ways past the Sun: a shadow on Jupiter is no way to it. */
export const jupiterMoonEvents: Rule = (asked) => (says(asked, MOVES) ? null : jupiterMoons(asked));

/** "Which moons can we see tonight": more than one, and of no planet that is named. */
const ANY_MOONS =
  /^(?:(?:so|and|hi|hey|ok|please|now),? )*(?:(?:which|wich|what|witch|any|how many)(?: other| planet(?:'?s|ary)?)? moons\b|(?:can|could) (?:i|we|you) see (?:any |some |the )?moons\b)/u;
const OTHER_PHASES = /\b(?:full|new|blood|blue|super) ?moons?\b|\bmoons? (?:of|round|around) (?!jup)/u;
const OTHER_MOONS = 'Of Saturn’s, Titan (mag 8 to 9) shows beside it in a small telescope. For our own Moon ask: moon.';
const isOfAnyMoons = (asked: Asked): boolean =>
  says(asked, ANY_MOONS) &&
  !says(asked, OTHER_PHASES) &&
  asked.targets.every((name) => name === 'moon' || name === 'jupiter');

/** "next io shadow transit": one moon's, or one kind's; all of a night else. */
export const jupiterMoons: Rule = (asked) => {
  if (isOfAnyMoons(asked)) return { ...instantLine('moons', '', asked), note: OTHER_MOONS };
  if (!says(asked, MOONS)) return null;
  const of = /\b(io|europa|ganymede|callisto)\b/u.exec(asked.plain)?.[1];
  const event = MOON_EVENTS.find(([pattern]) => says(asked, pattern))?.[1];
  const isNext =
    event !== undefined && says(asked, /\b(?:next|when|this week|this month|any|coming|soon|upcoming|first)\b/u);
  return instantLine('moons', '', asked, isNext ? { ...(of === undefined ? {} : { of: capital(of) }), event } : {});
};
