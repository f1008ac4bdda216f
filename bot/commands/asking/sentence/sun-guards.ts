/**
 * What is held before the Sun and how one aims at it: a filter with a hole, welding glass, the Sun that does not come into the eyepiece. Pure;
 * words in lower case, with or without their marks.
 */

/** The caution in knowledge/cautions.yaml that answers first. */
export type SunCaution =
  | 'eyes'
  | 'sun-now'
  | 'sun-filter'
  | 'sun-wedge'
  | 'sun-eyepiece-filter'
  | 'sun-left'
  | 'sun-flats'
  | 'sun-guards'
  | 'sun-cap'
  | 'sun-still-yours'
  | 'sun-caps'
  | 'sun-projection'
  | 'sun-looking'
  | 'sun-how'
  | 'sun-guarded'
  | 'sun-aim'
  | 'sun-pinhole'
  | 'sun-hole'
  | 'sun-welding'
  | 'sun-camera'
  | 'sun-glasses'
  | 'sun-glasses-bare'
  | 'sun-totality'
  | 'sun-totality-filter'
  | 'sun-sweep'
  | 'sun-halo'
  | 'sun-hidden'
  | 'sun-open'
  | 'sun-day-work'
  | 'sun-new-moon'
  | 'sun-small-hole';

const HURT =
  /\b(?:pin ?-?holes?|holes?|holed|pin ?-?pricks?|scratch\w*|tears?|tore|torn|rip|rips|ripped|crack(?:s|ed)?|split|punctur\w*)\b/u;
const FILTER = /\b(?:filters?|film|foil)\b/u;
/** A pinhole in a card is what needs no filter, and a hole in a cap is another question. */
const OTHER_HOLE = /\b(?:card|cardboard|paper|project\w*|camera|deep ?sky|cap|caps|lid|mask|dew|mirror)\b/u;

/** "How to test a solar filter for holes": it has none yet. */
const TRIES_FOR_HOLES =
  /^(?:(?:so|and|ok|hi|hey|please),? )*(?:how|is there|what|whats|best way|any|a)\b.*\b(?:test\w*|check\w*|inspect\w*|look(?:ing)? for|try(?:ing)?)\b/u;

/** "My filter has a pinhole", "tiny hole in my film, still ok?" */
export const isFilterHurt = (plain: string): boolean =>
  HURT.test(plain) && FILTER.test(plain) && !OTHER_HOLE.test(plain) && !TRIES_FOR_HOLES.test(plain);

const IN_A_CARD =
  /\bpin ?-?holes?\b.*\b(?:card\w*|paper|box|plate|foil)\b|\b(?:card\w*|paper|box)\b.*\bpin ?-?holes?\b/u;
const WITH_A_LENS =
  /\b(?:telescop\w*|scopes?|binos?|binoculars|bins|finder\w*|camera|phone|lens\w*|dob\w*|eye ?pieces?|filters?|film|tube|through|thru|into)\b/u;
/** The old box of card: the picture of the Sun on paper, and nobody looks at the Sun. */
export const isPinholeInCard = (plain: string): boolean => IN_A_CARD.test(plain) && !WITH_A_LENS.test(plain);

const WELDING =
  /\bwelding (?:glass\w*|filters?|masks?|goggles|shades?|hoods?|helmets?|shields?|lens\w*)\b|\bwelders?(?:'? ?s)? (?:glass\w*|filters?|masks?|goggles|shades?|hoods?|helmets?|shields?)\b|\b(?:shade|number|no|nr|din) ?\d{1,2} (?:welding|welders?|glass)\b/u;
export const isOfWelding = (plain: string): boolean => WELDING.test(plain);

const SUN = /\bsun(?:'?s)?\b/u;
const ASKS_HOW =
  /\bhow\b|\b(?:best|right|proper|easiest|safest?|good|a|any) way\b|\b(?:can ?'?not|can ?'? ?t|couldn ?'? ?t|unable to|failed to) (?:find|get|see|locate|point|aim|cent(?:er|re))\b|\b(?:won|doesn|does|will|isn|is) ?(?:'? ?t|not) (?:show\w*|come|appear\w*|in)\b|\bwont (?:show|come|appear)\b|\b(?:trouble|struggl\w+|tips?|help|trick)\b/u;
const AIMS =
  /\b(?:find\w*|get\w*|got|point\w*|aim\w*|locat\w+|cent(?:er|re)\w*|line|lining|show\w*|appear\w*|come|see|put|sight\w*|slew\w*|turn|swing)\b/u;
/** Beside it stands another thing, or it is of no telescope. */
const OTHER =
  /\b(?:near|beside|next to|close to|around|away from|past|avoid\w*|keep|venus|mercury|comet|moon|planets?|stars?|remind\w*|laptop|screen|high|old|big|hot|far|long|low)\b/u;
const UNFILTERED =
  /\b(?:no|without|with ?out|w ?\/? ?o|lost|forgot|un) ?(?:an? |the |any |my |solar |sun )*filt\w*|\bunfiltered\b|\b(?:sun ?)?glasses\b/u;
const BY_FINDER =
  /(?<!\b(?:not?|never|without|no) (?:\w+ ){0,2})\b(?:with|through|thru|in|using|use|by|look\w*) (?:the |my |a |an |its )?(?:red dot |optical )?finder/u;

/** How it is brought into the telescope, not whether. */
export const asksToAim = (plain: string): boolean =>
  SUN.test(plain) &&
  ASKS_HOW.test(plain) &&
  AIMS.test(plain) &&
  !OTHER.test(plain) &&
  !UNFILTERED.test(plain) &&
  !BY_FINDER.test(plain);

/** "Do I need glasses for the eclipse": those for bare eyes, unless a lens is named. */
const NEEDS_GLASSES =
  /\b(?:need|have to|must|should|got to|gotta|supposed to|wear\w*|required?)\b.*(?<!\bsun )\b(?:glasses|goggles|specs)\b/u;
const ECLIPSE_GLASSES = /\b(?:eclipse|solar) (?:glasses|viewers?|goggles|shades|specs)\b|\biso ?12312\b/u;
const BARE_EYES =
  /\b(?:(?:naked|bare|own|just|only)(?: my| our| your)? eyes?|wear\w*|(?:look|watch|view|see|stare)\w* (?:(?:up|directly|straight|it|at|the|a|an|partial|annular|solar|my) )*(?:eclipse|sun))\b/u;
/** Any other lens before the eye, or a guard before another. */
const BEFORE_LENS =
  /\b(?:finder\w*|eye ?pieces?|lens\w*|zoom|magnif\w*|viewfinder|over (?:the|my|our)|front of|with it)\b/u;
const WITHOUT_TUBE = /\bwithout (?:an? |any |the )?(?:telescope|scope|binoculars|lens)\b/gu;

/**
 * Eclipse glasses are right for bare eyes and wrong before a lens.
 * @param tubes what has a lens
 * @returns null: none are spoken of
 */
export const eclipseGlasses = (plain: string, tubes: readonly RegExp[]): SunCaution | null => {
  const isNeed = NEEDS_GLASSES.test(plain);
  if (!ECLIPSE_GLASSES.test(plain) && !isNeed) return null;
  const rest = plain.replace(WITHOUT_TUBE, ' ');
  const isBare = isNeed || BARE_EYES.test(rest) || rest !== plain;
  return isBare && ![...tubes, BEFORE_LENS].some((lens) => lens.test(rest)) ? 'sun-glasses-bare' : 'sun-glasses';
};
