/** What is asked near the Sun and has a right answer of its own: a wedge, a filter at the eyepiece, flats, a tube left running. Pure; English. */
import type { DayAt } from './day-at.js';
import type { SunCaution } from './sun-guards.js';
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

/** In this order. */
const KINDS: readonly (readonly [SunCaution, (plain: string, day: DayAt | null) => boolean])[] = [
  ['sun-wedge', (plain) => WEDGE.test(plain)],
  ['sun-eyepiece-filter', isAtEyepiece],
  ['sun-projection', isProjected],
  ['sun-flats', isOfFlats],
  ['sun-left', isLeftRunning],
  ['sun-left', runsIntoDay],
  ['sun-filter', (plain) => ASKS_FILTER.test(plain)],
];

/**
 * @param plain folded, see plainHarm
 * @param day where the asker usually stands; null where nobody knows
 * @returns null: it is of none of these
 */
export const sunKind = (plain: string, day: DayAt | null): SunCaution | null =>
  KINDS.find(([, isOfIt]) => isOfIt(plain, day))?.[0] ?? null;
