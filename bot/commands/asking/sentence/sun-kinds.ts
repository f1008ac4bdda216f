/** What is asked near the Sun and has a right answer of its own: a wedge, a filter at the eyepiece, flats, a tube left running. Pure; English. */
import type { DayAt } from './day-at.js';
import { isSpokenAgainst } from './guarded-in-front.js';
import { isFilterHurt, type SunCaution } from './sun-guards.js';
import { OF_TROUBLE, SUN, TUBE } from './sun-harm.js';

const WEDGE = /\bherschel\w* (?:wedge|prism)\b|\b(?:solar|sun) (?:wedge|prism)\b/u;
const AT_EYEPIECE = new RegExp(
  `\\bfilters?\\b.*\\b(?:screw\\w*|thread\\w*|fits?|goes|in|into|on|onto|at|for|behind)\\b.*\\b(?:eye ?pieces?|ep|diagonal)\\b|\\b(?:eye ?pieces?|ep)\\b (?:\\w+ ){0,2}(?:solar |sun )?filters?\\b`,
  'u',
);
const IN_FRONT = /\b(?:front|aperture|over the (?:tube|telescope|scope|lens|end))\b/u;
const PROJECTED =
  /\beye ?piece projection\b|\bproject\w* (?:\w+ ){0,3}(?:through|with|from|by) (?:\w+ ){0,3}eye ?piece\b/u;
const OTHER_SIGHTS =
  /\b(?:moon|lunar|jupiter|saturn|mars|planets?|planetary|dso|deep sky|stars?|nebula\w*|galax\w*)\b/u;
/** Which filter, and no more: how to look is not asked. */
const ASKS_FILTER =
  /^(?:(?:which|what|any|a|need|want|looking for|recommend|best|good|kind of|sort of|type of|i need) ?(?:a |an )?)*(?:solar|sun) filters? (?:for|do i|should i|is (?:best|right)|fits?|to (?:use|buy|get))\b/u;

const FLATS = /\b(?:flats|flat (?:fields?|frames?))\b/u;
const BY_TWILIGHT = /\b(?:dusk|dawn|twilight|evening|morning|sun ?set|sun ?rise|sky)\b/u;
const WHERE_TO = /\b(?:how far|where|which way|point\w*|aim\w*|away|opposite|turn\w*)\b/u;

const NOBODY_THERE =
  /\b(?:go(?:ing|nna)?(?: \w+)? (?:to )?(?:bed|sleep)|off to bed|asleep|unattended|by itself|on its own|overnight|all night|through the night|while (?:i|we) sleep)\b/u;
export const RUNS = /\b(?:track\w*|imaging|image|running|run|runs|shoot\w*|guid\w*|slew\w*|following|exposing)\b/u;
const LEAVE = /\b(?:can|may|could|ok|okay|safe|fine|should|is it|im|i am|i m|we are|leave|leaving|left)\b/u;
const A_MOUNT = /\b(?:mount|rig|set ?up|it|camera)\b/u;
/** Told of a night that was, or asked of the batteries: no leave is asked. */
const TOLD_OF_NIGHT =
  /\b(?:last night|yesterday|went|woke|stops|failed|fails|lost|drift\w*|batter(?:y|ies)|memory|dew|how (?:long|many|do|can)|what|which|when|why|cover\w*)\b/u;
/** The tube will be left to itself until it is day. */
const isLeftRunning = (plain: string): boolean =>
  NOBODY_THERE.test(plain) &&
  RUNS.test(plain) &&
  LEAVE.test(plain) &&
  (TUBE.test(plain) || A_MOUNT.test(plain)) &&
  !OF_TROUBLE.test(plain) &&
  !TOLD_OF_NIGHT.test(plain);

const UNTIL = '(?:till?|until|through to|up to|bis|jusqu ?a|hasta|fino al?(?:le)?|tot)';
const UNTIL_DAY = new RegExp(
  `\\b${UNTIL} (?:after |the |about )*(?:lunch\\w*|noon|mid ?day|breakfast|afternoon)\\b`,
  'u',
);
const UNTIL_HOUR = new RegExp(
  `\\b${UNTIL} (?:at |about |around )?(\\d{1,2})(?: (\\d{2}))? ?(am|pm|in the morning|o clock in the morning)\\b`,
  'u',
);
const ASKED = /\b(?:how|what|which|when|why|where|remind\w*)\b/u;
/** "Image mars till 10 in the morning": by then the Sun is up. While it is up already, the way is reckoned instead. */
const runsIntoDay = (plain: string, day: DayAt | null): boolean => {
  if (!RUNS.test(plain) || OF_TROUBLE.test(plain) || ASKED.test(plain) || day?.isSunUp('now') === true) return false;
  if (UNTIL_DAY.test(plain)) return true;
  const [, hour, minute = '00', half] = UNTIL_HOUR.exec(plain) ?? [];
  return hour !== undefined && day?.isSunUp(`${hour}:${minute}${half === 'pm' ? 'pm' : 'am'}`) === true;
};

const isAtEyepiece = (plain: string): boolean => SUN.test(plain) && AT_EYEPIECE.test(plain) && !IN_FRONT.test(plain);

/** Of a planet it is how one photographs. */
const isProjected = (plain: string, day: DayAt | null): boolean =>
  PROJECTED.test(plain) &&
  !OTHER_SIGHTS.test(plain) &&
  (day?.isSunUp('now') === true || SUN.test(plain) || !TUBE.test(plain));

const isOfFlats = (plain: string): boolean =>
  FLATS.test(plain) && SUN.test(plain) && BY_TWILIGHT.test(plain) && WHERE_TO.test(plain);

/** Film sold for the Sun, in a cell of one's own making, over all of the front: the right way. */
const FILM_IN_FRONT =
  /\b(?:(?:solar|sun|safety) (?:filter )?|filter )?(?:film|foil|filter (?:sheet|film))\b.*\b(?:over|on|across|in front of|covering) (?:the |my |its |our )?(?:whole |full |entire )?(?:front|aperture|objective|opening|end)\b/u;
const isFilmInFront = (plain: string, day: DayAt | null): boolean =>
  FILM_IN_FRONT.test(plain) &&
  !isFilterHurt(plain) &&
  !isSpokenAgainst(plain) &&
  !NOT_FOR_SUN.test(plain) &&
  (SUN.test(plain) || day?.isSunUp('now') === true);
const NOT_FOR_SUN =
  /\b(?:tin|kitchen|cling|alumin\w*|emergency|survival|space|rescue|crisp|chip|mylar|food|camera|roll|exposed|x ?ray|finder|eye ?piece|no|without|not|nd ?\d*)\b/u;

/** What shops sell for other things. */
const STAND_IN =
  /\b(?:(?:crisp|chip|sweet|coffee|chocolate) (?:packet|bag|wrapper)s?|cds?|dvds?|floppy|x ?-?rays?|negatives?|(?:tin|kitchen|alumin\w*) ?foil|bin (?:bag|liner)s?|balloons?|sun ?glass(?:es)?|shades|tinted \w+|smoked glass|candle|mylar)\b.*\b(?:as|for|instead of|make|makes|made|like) (?:an? |the |my |a good )?(?:solar |sun |front |home ?made )?filt\w*/u;

/** "Should I cap it", by day. */
const ASKS_TO_CAP =
  /^(?:(?:so|and|ok|then|but|well|also) )*(?:should|shall|must|do|does|need|ought) (?:i|we|it|the \w+)(?: need)?(?: to)?(?: be)? (?:cap|cover|put (?:the |a |its )?(?:cap|lid|cover) (?:back )?on|capped|covered)\b(?!.*\b(?:dew|rain|dust|night|camera lens)\b)/u;

/** By day, with a glass in hand, at what is not said: "he points his binoculars up at it", "can I look now". */
const UP_AT_IT = new RegExp(
  `(?:${TUBE.source}).{0,16}\\b(?:up )?at (?:it|that)$|\\b(?:point|aim|star|gaz|look)\\w* .{0,24}(?:${TUBE.source}) (?:up )?at (?:it|that)\\b`,
  'u',
);
const LOOK_NOW =
  /^(?:.{0,24} )?(?:can|may|could|should|is it (?:ok|okay|safe|alright)(?: for (?:me|us|them|the kids))? to) ?(?:i|we|they|he|she|the kids)? look (?:now|yet|up|at it(?: now| yet)?)$/u;
const isUpByDay = (plain: string, day: DayAt | null): boolean =>
  day?.isSunUp('now') === true && (UP_AT_IT.test(plain) || LOOK_NOW.test(plain)) && !OTHER_SIGHTS.test(plain);

/** In this order. */
const KINDS: readonly (readonly [SunCaution, (plain: string, day: DayAt | null) => boolean])[] = [
  ['sun-wedge', (plain) => WEDGE.test(plain)],
  ['sun-eyepiece-filter', isAtEyepiece],
  ['sun-projection', isProjected],
  ['sun-flats', isOfFlats],
  ['sun-left', isLeftRunning],
  ['sun-left', runsIntoDay],
  ['sun-still-yours', isFilmInFront],
  ['sun-looking', (plain) => STAND_IN.test(plain)],
  ['sun-cap', (plain, day) => ASKS_TO_CAP.test(plain) && day?.isSunUp('now') === true],
  ['sun-looking', isUpByDay],
  ['sun-filter', (plain) => ASKS_FILTER.test(plain)],
];

/**
 * @param plain folded, see plainHarm
 * @param day where the asker usually stands; null where nobody knows
 * @returns null: it is of none of these
 */
export const sunKind = (plain: string, day: DayAt | null): SunCaution | null =>
  KINDS.find(([, isOfIt]) => isOfIt(plain, day))?.[0] ?? null;
