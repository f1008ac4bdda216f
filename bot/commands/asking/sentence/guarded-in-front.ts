/**
 * Whether a filter made for the Sun is said to stand over the whole front: then one may look, and a plain No would send people to the bad filters.
 * Whatever speaks against it, and whatever is not plain, keeps the No. Pure; English, words in lower case.
 */

const FULL_APERTURE = /\bfull[- ]?aperture\b.*\b(?:filter\w*|film)\b|\b(?:filter\w*|film)\b.*\bfull[- ]?aperture\b/u;
const FOR_THE_SUN =
  /\b(?:solar|sun|white[- ]?light)[- ]?(?:\w+ ){0,2}?(?:filter\w*|film)\b|\b(?:proper|certified|real|right|purpose[- ]?made|dedicated|approved|rated|safe) (?:\w+ ){0,2}?(?:filter\w*|film)\b|\b(?:filter\w*|film) (?:that is |that s |which is )?(?:made|meant|rated|certified|approved|sold) for (?:it|this|the sun|solar\b)/u;
const FRONT_END =
  '(?:front(?:s| end)?|aperture|objectives?|(?:top|open|sky|front|far|big) end|end of the (?:tube|scope|telescope|dob)|tube|whole (?:scope|telescope|opening)|front (?:lens|element)(?:es|s)?)';
const IN_FRONT = new RegExp(
  `\\b(?:over|across|covering|on|onto|at|in|up|of) (?:the |its |my |our |both |each )?(?:whole |entire |full )?${FRONT_END}\\b|\\bover (?:the |my |our |both )?(?:\\w+ )?(?:scope|telescope|dob\\w*|refractor|newt\\w*|reflector|sct|mak|binos?|binoculars|bins)\\b|\\bfront[- ](?:mounted|fitted)\\b|\\bfront (?:solar |sun )?(?:filter\\w*|film)\\b`,
  'u',
);

/** The finder is seen to. */
const FINDER_SEEN_TO =
  /\bfinder\w*(?: scope)?(?: is| was| has been| and all)? (?:capped|covered|off|removed|taken off|cap on|closed)\b|\b(?:capped|covered|removed|took off|no|without(?: a| the| my)?|cap on (?:the |my )?) ?(?:the |my )?finder\w*\b/gu;
/** "Is it ok or not", "the partial phase". */
const NOTHING_SAID = /\bor not\b|\bpartial (?:phases?|eclipse|bit|part)\b/gu;

/** Not there, not whole, not in front, not for the Sun, or not before all that one looks through. */
const AGAINST: readonly RegExp[] = [
  /\b(?:no|not|without|never|forgot\w*|lost|missing|instead|unfiltered|except|unless|until|nor)\b|\b(?:do|does|did|is|are|was|were|has|have|had|ca|can|could|would|should|wo|won|need)(?:n ?'?t|n t| ?'t| t)\b/u,
  /\b(?:off|remov\w*|tak(?:e|es|ing)|took|lift\w*|slip\w*|fell|fall\w*|loose|blow\w*|blew|wind\w*|before|after|swap\w*|drop\w*)\b/u,
  /\b(?:pin ?-?holes?|holes?|scratch\w*|crack\w*|torn|tears?|creas\w*|wrinkl\w*|old|dent\w*|damag\w*|broken|bent|home ?-?made|diy|cheap|dusty|worn|leak\w*|gaps?|light gets)\b/u,
  /\b(?:smoked?|soot\w*|cds?|dvds?|floppy|x ?-?rays?|negatives?|blanket|tint\w*|weld\w*|polari\w*|nd ?\d*|moon filter|lunar|u ?v|ir|green|red|blue|yellow|orange|colou?r\w*|variable|(?:sun ?|eclipse |solar )glass\w*|shades|goggles|specs|emergency|space)\b/u,
  /\b(?:screw\w*|thread\w*)\b|\b(?:eye ?-?pieces?|ep|ocular|diagonal) (?:solar |sun )?filter|\bfilter\w*(?: \w+){0,3}? (?:at|in|into|on|onto|over|behind|to) (?:the |my |an? |each )?(?:\d+ ?mm )?(?:eye ?-?piece\w*|ep|diagonal|eye end|back|rear|barlow|focus\w+|draw ?tube|camera|nose ?piece)\b/u,
  /\b(?:front|end) of (?:the |my |an? |our |his |her |their |each )?(?:eyes?|eye ?-?pieces?|ep|diagonal|sensor|face|barlow)\b/u,
  /\bfinder\w*|\bguide ?-?scope\b|\bred dot\b|\bother (?:scope|telescope|tube|binos?|one|lens|side)\b|\b(?:second|another|next) (?:scope|telescope|tube|one)\b|\bmy (?:friend|neighbou?r|son|daughter|wife|husband)\w*('?s)? (?:\w+ )?(?:scope|telescope|binos?|binoculars)\b/u,
  /\b(?:one (?:side|lens|half|barrel|tube|eye)|half|only one|single|partly|partial\w*|too small|smaller|just the|most of)\b/u,
];

/** Without what says nothing for or against. */
const weighed = (plain: string): string =>
  plain.replace(/[’‘`]/gu, "'").replace(FINDER_SEEN_TO, ' ').replace(NOTHING_SAID, ' ');

/** Whether anything speaks against what is said to stand in front. */
export const isSpokenAgainst = (plain: string): boolean => AGAINST.some((one) => one.test(weighed(plain)));

export const isGuardedInFront = (plain: string): boolean => {
  const rest = weighed(plain);
  return (FULL_APERTURE.test(rest) || (FOR_THE_SUN.test(rest) && IN_FRONT.test(rest))) && !isSpokenAgainst(plain);
};

/** Asked for a way, or for what may happen: a Yes is no answer to it. */
const NO_YES =
  /\b(?:how|what|which|why|when|where|who|dangerous|danger|unsafe|harm\w*|hurt\w*|burn\w*|blind\w*|risk\w*|bad|wrong|explode|fire|hot|melt\w*)\b/u;
export const takesNoYes = (plain: string): boolean => NO_YES.test(plain);

const A_GUARD =
  /\b(?:solar|sun|front|white[- ]?light|full[- ]?aperture)[- ]?(?:\w+ )?(?:filter\w*|film|foil)\b|\bsonnenfilter\w*|\bzonnefilter\w*|\bfiltros? solar(?:es)?\b|\bfiltres? solaires?\b|\bfiltr[io] solar[ei]\b|\beclipse (?:glass\w*|viewers?|specs|shades|goggles)\b/u;
const TENDS =
  '(?:test|check|inspect|clean|wipe|fix|fit|mount|attach|tape|hold|store|keep|make|build|cut|tell|choose|pick|buy|know|wash|look after)';
const ASKS_OF_GUARD = new RegExp(
  '^(?:(?:so|and|ok|hi|hey|please|um|but|well),? )*(?:' +
    `(?:which|what|whats|what's|welche\\w*|quel\\w*|welk\\w*|que|che|quale)\\b|how (?:to|do (?:i|you|we)|can (?:i|you|we)|should (?:i|we)|often (?:do|should) (?:i|we)) ${TENDS}\\b|` +
    `where (?:to|can (?:i|we)|do (?:i|we)) (?:buy|get|find|keep|store)\\b|is there (?:an? )?(?:test|list|check|way|trick|norm|standard)\\b|how (?:do|does|are|many|long do(?:es)?)\\b.*\\b(?:cert\\w*|mark\\w*|label\\w*|norms?|standards?|last|viewers?|genuine|real)\\b)`,
  'u',
);
/** Somebody would look all the same, or it is none for the Sun. */
const BUT_LOOKS =
  /\b(?:no|without|instead|stand in|substitute|happens?|damage\w*|can i look|may i look|i look\w*|eye ?-?piece filter|(?:moon|lunar|nd\d*|polari\w*) filter)\b/u;

/** Which filter, how it is tried, cleaned or fixed, what stands on the glasses: asked of the guard, and of no look without it. */
export const asksOfGuard = (plain: string): boolean =>
  A_GUARD.test(plain) && ASKS_OF_GUARD.test(plain) && !BUT_LOOKS.test(plain);
