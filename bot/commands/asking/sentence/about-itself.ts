/** Sentences about a target itself: its magnitude and size, what it is, which filter, whether a telescope splits it; and its best hour. */
import { nightLine, says, type Asked, type Rule } from './asked.js';
import { powerNote } from './split-at-power.js';

const SPLITS = 'split\\w*|resolv\\w*|separat(?:e|es|ing)|divid(?:e|es)|double|two|pair|companion';
const GLASS =
  'apertures?|telescopes?|scopes?|dobs?|dobsonians?|refractors?|reflectors?|newtonians?|binoculars|inch(?:es)?|mm';

/** A yes or a no. */
const ASKS =
  /(?:^|[,.;:] )(?:(?:hi|hello|hey|so|and|but|ok|please|sorry)[, ]+)*(?:is|are|was|will|would|does|do|can|could|should|might|may|any chance)\b|\b(?:whether|if) (?:i|my|a|an|the|it)\b/u;

/** What is asked, and the words for it; the first that fits. */
const FIGURES: readonly (readonly [RegExp, string])[] = [
  [/\bfilters?\b|\bo ?-?iii\b|\bh ?-?beta\b/u, 'filter'],
  [/\b(?:time of (?:the )?year|which month|what month|best months?|which season|what season|best season)\b/u, 'season'],
  [/\b(?:catalog(?:ue)?|messier|ngc|other) (?:numbers?|no|names?|designations?)\b|\balso (?:known|called)\b/u, 'names'],
  [
    new RegExp(
      `\\b(?:what|which|how (?:big|large|much|small)|smallest|least|minimum)\\b.*\\b(?:${GLASS})\\b.*\\b(?:${SPLITS}|need\\w*|takes?|required?|for|see|show\\w*)\\b|\\b(?:need|require)(?: (?:an?|any|my|the|some))?(?: (?:big|bigger|large|larger|proper|good))? (?:${GLASS}|bin[os]+)\\b|\\b(?:aperture|telescope|scope) (?:needed|required|to (?:split|resolve|separate))\\b`,
      'u',
    ),
    'aperture',
  ],
  [
    /\bhow far apart\b|\bseparation\b|(?<!\d )(?<!\bin )\bsep\b(?! \d)|\bposition angle\b|\bhow (?:close|wide|tight)\b.*\b(?:pair|components?|stars of)\b/u,
    'separation',
  ],
  [
    /\brings?(?:'s?)? (?:tilt\w*|opening|angle|inclination)\b|\b(?:tilt|opening|inclination) of (?:the |its |saturn'?s? )*rings?\b|\bhow (?:open|tilted|wide open)\b.*\brings?\b/u,
    'rings',
  ],
  [/\bmag(?:nitude)?s?\b(?! \d)|\bhow (?:bright|faint|dim)\b|\bbrightness of\b/u, 'magnitude'],
  [
    /\bsuper ?moon\b|\bmoon\b.*\b(?:bigger|larger|smaller|closer|biggest|largest|closest)\b|\bhow (?:big|large|wide|small)\b|\b(?:apparent|angular) (?:size|diameter)\b|\bsize of\b|\bwhat(?:'s| is)? (?:the )?size\b/u,
    'size',
  ],
  [
    /\bhow far(?: away| off| out)? (?:is|are|from (?:us|earth|here))\b|\bdistance (?:of|to)\b|\bhow (?:many )?light years\b/u,
    'distance',
  ],
  [
    /\bwhat (?:does|do|would) (?:the )?.{2,30} look like\b|\bwhat (?:type|kind|sort|class|manner) of\b|^(?:is|are) (?:the )?\S+(?: \S+){0,2} an? (?:\w+ )?(?:star|planet|galaxy|double|nebula|cluster|globular|binary|constellation|asterism|comet)\b/u,
    'kind',
  ],
];

/** "is a 4 inch enough for …", "can i split …", "would it show … as two". */
const SPLIT = new RegExp(
  `\\b(?:split\\w*|resolv\\w*|separate|divide)\\b|\\b(?:show|see|make)\\b.*\\b(?:as (?:two|a double|a pair)|both (?:stars|components)|the companion)\\b|\\b(?:enough|big enough|do)\\b`,
  'u',
);
/** "Albireo split at 40x". */
const AT_POWER = /\b\d{2,3} ?(?:x|×)(?![ \d])/u;
const IS_ENOUGH = /\b(?:big |large )?enough (?:for|to)\b|\bdo (?:the )?/u;

/** Other questions in which the same words stand. */
const NOT_OURS =
  /\b(?:sun|solar|remind\w*|align\w*|drift\w*|flips?|meridian|slew\w*|goto|track\w*|camera|sensor|field of view|fits?|eyepieces?|brighter|fainter|bigger|smaller|minim\w*|dips?|dipping|variable|list|show me|doubles|galaxies|nebulae|clusters|when)\b|\bhow far (?:up|above|over|north|south|east|west)\b/u;

const WHERE_IT_IS = /\b(?:azimuth|altitude|height|elevation|bearing|direction|position|coordinates|hour angle)\b/u;

/** "what is m 57": nothing else is said. */
const WHAT_IS = /^(?:what's|whats|what (?:is|are|was)) (?!(?:up|on|in|at|near|next)\b)/u;

const oneTarget = ({ targets, kind, plain }: Asked): string | null => {
  const [target, ...others] = targets;
  const isMoonBeside = target !== 'moon' && /\bmoon(?:light)?\b/u.test(plain);
  if (target === undefined || target === 'sun' || others.length > 0 || isMoonBeside) return null;
  return kind === null ||
    target.includes(kind) ||
    /\b(?:type|kind|sort) of\b/u.test(plain) ||
    /\bis\b.*\ban? (?:\w+ )?\w+$/u.test(plain)
    ? target
    : null;
};

/** Without its place: Split is a town as well. */
const withoutPlace = (asked: Asked): Asked =>
  asked.place === null ? asked : { ...asked, plain: asked.plain.replace(asked.place, ' ') };

const firstOf = (asked: Asked): string | null => {
  const found = FIGURES.find(([pattern]) => says(asked, pattern))?.[1];
  if (found !== undefined) return found;
  const isSplit =
    says(asked, /\b(?:split\w*|resolv\w*|separate|divide|companion|as two)\b/u) ||
    (asked.kit !== null && says(asked, IS_ENOUGH));
  const isAsked = says(asked, ASKS) || asked.original.trim().endsWith('?') || says(asked, AT_POWER);
  if (isSplit && isAsked && says(asked, SPLIT)) return 'split';
  const { when, place, kit, sky, left } = asked;
  const isAlone = [when.night, when.hour, place, kit, sky].every((part) => part === null) && left.length === 0;
  return isAlone && says(asked, WHAT_IS) && !says(asked, WHERE_IT_IS) ? 'kind' : null;
};

/** Of the Moon its phase and hours are asked, by other rules; which filter is not. */
const isOfMoon = (target: string, first: string): boolean =>
  target === 'moon' && !['aperture', 'filter', 'distance', 'size'].includes(first);

export const ofItself: Rule = (asked) => {
  const target = says(asked, NOT_OURS) ? null : oneTarget(asked);
  const first = target === null ? null : firstOf(withoutPlace(asked));
  if (target === null || first === null || isOfMoon(target, first)) return null;
  const read = nightLine('up', target, inYear(asked, first), { first });
  const note = first === 'split' ? powerNote(asked.plain) : null;
  return note === null ? read : { ...read, note, usesAll: true };
};

/** "Separation in 2030": in the middle of that year, as pairs move slowly. */
const inYear = (asked: Asked, first: string): Asked => {
  const year = first === 'separation' && asked.when.night === null ? /\b(20\d\d)\b/u.exec(asked.plain)?.[1] : undefined;
  return year === undefined ? asked : { ...asked, when: { ...asked.when, night: `1 jul ${year}`, hour: null } };
};

const BEST_HOUR =
  /\b(?:best|ideal|good|nicest|right|optimal|prime|perfect) (?:time|hour|moment|point)\b|^(?:at )?(?:when|what time|what hour)\b.*\b(?:best|split|resolve|observe|image|photograph|look at|see|catch|bag|spot|view|shoot)\b/u;
const OTHER_HOURS =
  /\b(?:rise\w*|rising|sets?|setting|transits?|flip|meridian|above|opposition|closest|minim\w*|next|visible)\b/u;

/** The hour alone is asked for: the answer opens with it. */
export const bestHour: Rule = (asked) => {
  const [target, ...others] = asked.targets;
  if (target === undefined || target === 'sun' || target === 'moon' || others.length > 0) return null;
  if (asked.kind !== null || asked.when.hour !== null || !says(asked, BEST_HOUR) || says(asked, OTHER_HOURS))
    return null;
  return nightLine('up', target, asked, { first: 'best' });
};
