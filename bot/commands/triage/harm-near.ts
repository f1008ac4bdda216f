/** What hurts people or gear, told or asked of in passing: said before all else, whatever is in hand. Common practice, no source. */
import { cautionText } from '../../cautions/cautions.js';
import { withBodiesInEnglish } from '../asking/bodies-abroad.js';
import { sunCautionIn } from '../asking/sentence/looking-at-sun.js';

interface Harm {
  readonly words: RegExp;
  /** Each of these stands somewhere in the text too. */
  readonly also?: readonly RegExp[];
  /** Anywhere: it is none then. */
  readonly over?: RegExp;
  /** In the same sentences: it is none then. */
  readonly unless?: RegExp;
  readonly says: string;
}

const GEAR =
  'plugs?|sockets?|contacts?|connectors?|adapter|charger|brick|board|box|battery|supply|psu|mount|lead|cable|power';
const LEADS = 'leads?|cables?|cords?|wires?|plugs?|connectors?|sockets?|extension';
const HOUSED =
  'mount|motors?|board|box|housing|casing|controller|handset|hand ?pad|adapt[eo]r|charger|brick|supply|psu|battery|head|electronics';
const IS = String.raw`(?:is|are|gets?|got|getting|feels?|felt|runs?|goes|went|becomes?|became|['’]s)`;
const RATHER =
  '(?:(?:so|too|very|really|quite|rather|pretty|a|bit|little|slightly|burning|that|almost|also|and) ){0,3}';
const NONE = String.raw`(?:\b(?:not|never|no|without|nor|neither|any)|\b(?:is|are|was|do|does|did|has|wo)n['’]?t)\b`;
const OTHER_HEAT = String.raw`\b(?:heater|heating|heated|warmer|laptop|computer|phone|tablet|tea|cocoa|coffee|pixels?)\b|\bhot (?:on|pink|outside|out|day|days|weather|summer|night|here|in)\b`;

/** The member has put an end to it. */
const SOLVED = /\b(?:solved|sorted|cured) (?:that|it|this)\b|\bre-?routed\b/u;

const LOOK_ALIKE =
  'Pull that lead out and leave the mount off. Sockets that look alike are wired differently: some carry the mount’s own volts, which a computer, an adapter or a board does not bear. Only what the manual names for that socket goes in. If the mount stays dark with its own leads alone, or smells, do not try again: have the board looked at.';

/** The most urgent first; only one is said. */
const HARMS: readonly Harm[] = [
  {
    words:
      /\bsmok(?:e|es|ed|ing)\b|\bsmell\w*\b.{0,20}\b(?:burn\w*|hot|electric\w*|plastic|fishy|funny|odd|strange|weird|wrong|bad|sharp)\b|\b(?:burn\w*|burnt)\b.{0,12}\b(?:smell\w*|plastic)\b|\b(?:there(?:['’]s| is| was) an?|an?|some|that) (?:(?:funny|odd|strange|weird|bad|new|sharp|hot|slight|faint|electric\w*|chemical) )*smell\b|\b(?:is|was|it['’]?s|something) (?:burning|burnt|glowing|melting)\b|\bspark(?:s|ed|ing)?\b|\bmelted\b|\b(?:swollen|bulging|hissing)\b.{0,20}\b(?:battery|pack|tank|cell)\b|\b(?:battery|pack|tank|cell)\b.{0,20}\b(?:swollen|bulging|hissing)\b/gu,
    unless:
      /\b(?:no|not|never|without|nor)\b[^.!?]{0,16}\b(?:smok|smell|burn|spark)|\bsmoked (?:glass|filter)|\bsmoke\b[^.!?]{0,24}\b(?:fire|bonfire|barbecue|chimney)|\b(?:quit|stop\w*|gave up|i) smok|\b(?:house|kitchen|garden|field|farm|dog|cat|car|tent|grass|air)\b[^.!?]{0,16}\bsmell|\bsmell\w*\b[^.!?]{0,12}\b(?:curry|coffee|tea|food|dinner|cooking|barbecue|paint|grass|hay|dog|cow|cows)\b|\b(?:burning|glowing) hot\b/u,
    says: 'Stop: take the power off now, at the wall or at the battery, if that is safe, and touch nothing hot. It stays off: do not try it again to see. A board that smoked or smelt burnt is for its maker or an electronics workshop; a swollen or hot battery goes outdoors, away from all that burns.',
  },
  {
    words:
      /\b(?:swapped|reversed?|mixed up|crossed|wrong way (?:a?round)|back to front|backwards)\b.{0,40}\b(?:plus|minus|polarity|positive|negative|red and black|black and red|\+ ?(?:and|\/|&) ?-)|\b(?:plus|minus|polarity|positive|negative|red and black)\b.{0,40}\b(?:swapped|revers\w*|mixed up|crossed|wrong way|back to front|the wrong (?:way|sides?|poles?|pins?|ends?))\b/gu,
    unless:
      /\b(?:not|never|n['’]t|no)\b[^.!?]{0,16}\b(?:swapped|revers|mixed|crossed|wrong)|\?|\b(?:latitude|longitude|degrees?)\b/u,
    says: 'Take that supply off at once and leave it off. The wrong way round, plus and minus can kill a board in a moment. Measure the plug with a meter against the mark on the mount (mostly plus inside), look at the fuse, and if it stays dark or smells, have the board looked at before it gets power again.',
  },
  {
    words: new RegExp(
      String.raw`(?<![.,\d])(?:1[6-9]|2\d|3[0-6]|48)(?:[.,]\d+)? ?(?:v|volts?)\b.{0,80}\b(?:${GEAR}|laptop|12 ?(?:v|volts?))\b|\b(?:${GEAR}|laptop|12 ?(?:v|volts?))\b.{0,80}(?<![.,\d])\b(?:1[6-9]|2\d|3[0-6]|48)(?:[.,]\d+)? ?(?:v|volts?)\b`,
      'gu',
    ),
    unless:
      /\b(?:label|sheet|manual|plate|mount) (?:says?|wants?|needs?|is for|takes?) (?:1[6-9]|2\d|3[0-6]|48)\b|\b0 ?(?:to|-) ?(?:1[6-9]|2\d)/u,
    says: 'If more volts are in than the mount’s own label says, unplug it now. Most mounts take 12 V (some 15 at the most); a laptop’s 19 V or a 24 V supply can kill the board. Use the volts on the label, at least its amps, plus and minus as drawn there. If it had the higher one and stays dark, do not try again: have the board looked at.',
  },
  {
    words:
      /\bfuse\b.{0,80}\b(?:bigger|larger|stronger|higher|more amps?|next size|another size|foil|wire|nail|bridge|bypass|leave out)\b|\b(?:bigger|larger|stronger|higher|foil|wire|nail|bridge|bypass)\b.{0,80}\bfuse\b|\bwithout (?:the |a |any )?fuse\b/gu,
    says: 'No. Never a bigger fuse, nor foil or wire in its place: it guards the lead, which else burns. A second one that goes tells of a short: take the supply off, and look for damp, bent pins and a crushed lead before the next.',
  },
  {
    words: new RegExp(
      String.raw`\b(?:${HOUSED})\b[^.!?]{0,30}(?:\b${IS} ${RATHER}|\b(?:burning|boiling|scalding|piping|red|awfully|really|very|too|so) )hot\b|\btoo hot (?:to (?:touch|hold)|for (?:a|my|the) (?:hand|finger))\b|\b(?:can['’]?t|cannot|can not|couldn['’]?t|could not) (?:keep|hold|put|leave|bear) (?:my|a|your|the) (?:hand|finger|thumb)s? on\b|\bburn(?:t|ed)? my (?:hand|finger|thumb)|\boverheat`,
      'gu',
    ),
    unless: new RegExp(String.raw`${NONE}[^.!?]{0,12}\b(?:hot|warm|overheat)|${OTHER_HEAT}`, 'u'),
    says: 'Switch it off and let it cool. Warm is usual, too hot for a hand is not. Before it runs again: the volts, amps, plus and minus that its label asks for, and both axes light to turn by hand, power off, tube held. If it gets so hot once more, leave it off: that is for a workshop.',
  },
  {
    words: new RegExp(String.raw`\b(?:${LEADS})\b[^.!?]{0,40}\b${IS} ${RATHER}(?:warm|hot)\b`, 'gu'),
    unless: new RegExp(String.raw`${NONE}[^.!?]{0,12}\b(?:hot|warm)|${OTHER_HEAT}`, 'u'),
    says: 'Switch off, and do not use that lead again: one that gets warm is too thin, too long, or has a bad plug, and it loses the mount’s volts on the way. Take a short, thick one with firm plugs, and a fuse of the right size at the battery’s end; never coil it up in use.',
  },
  {
    words: new RegExp(
      String.raw`\b(?:wet|damp|dripping|soaked|moist)\b.{0,80}\b(?:${GEAR})\b|\b(?:${GEAR})\b.{0,80}\b(?:wet|damp|dripping|soaked|moist)\b|\b(?:rain|water|a shower|dew) (?:has |had )?(?:got|came|ran|went|is|gets|comes) (?:in|into|inside|under)\b|\bwater inside\b|\brained on\b`,
      'gu',
    ),
    // Grass is wet most nights.
    unless:
      /\b(?:not|never|isn['’]?t|aren['’]?t|nothing|neither|no)\b[^.!?]{0,14}\b(?:wet|damp|moist)\b|\b(?:grass|ground|lawn|air|night|field|weather|towel|cloth)\b[^.!?]{0,14}\b(?:wet|damp|moist)|\b(?:wet|damp|moist) (?:grass|ground|lawn|air|night|field|weather|cloth)\b/u,
    says: 'What is wet stays off: take the supply away at its dry end, mains first at the wall, let plugs and sockets dry for a day in a warm room, and clean green or black contacts before they are joined again.',
  },
  {
    words:
      /\b(?:plug\w*|put|stuck|pushed|went|goes|shoved|joined)\b.{0,120}\b(?:in|into|to)\b.{0,30}\b(?:holes?|sockets?|ports?|jacks?|rj ?-?\d\d?)\b/gu,
    also: [
      /\b(?:ticks?|clicks?|pop(?:ped|s)?|snap|crackled?|bang|fizz\w*|by mistake|by accident|wrong (?:hole|socket|jack)|oops)\b/u,
      /\b(?:light|led)s?(?:['’]s| is| are| went| goes| stays)? (?:off|out|dark|gone|dead)\b|\bno (?:more )?(?:light|led)s?\b|\b(?:dark|dead)\b/u,
    ],
    unless: /\b(?:laptop|computer|pc|hub)(?:['’]s)? (?:usb )?(?:ports?|sockets?)\b/u,
    says: LOOK_ALIKE,
  },
  {
    words:
      /\b(?:not|even|really|perhaps|maybe) (?:be )?(?:an? )?(?:ethernet|network|lan)(?: (?:port|socket|jack|hole|one))?(?: at all| i (?:think|guess|fear))?\s*(?:[?.!,;)]|$)/gu,
    also: [
      /\b(?:network|ethernet|patch|lan|cat ?-?[5-7]e?) (?:lead|cable|cord|wire)\b/u,
      /\b(?:rj ?-?\d\d?|sockets?|jacks?|holes?|ports?)\b/u,
    ],
    says: LOOK_ALIKE,
  },
  {
    words:
      /\b(?:releas\w+|let(?:ting)? go|lift\w*|finger\w* (?:is |are )?(?:off|slips))\b[^.!?]{0,60}\b(?:keeps? (?:on )?(?:going|moving|slewing|turning|running)|(?:does|do|will|wo)(?:n['’]?t| not) stop|runs? on|carries on|goes on|still (?:runs|moves|goes|turns|slews))\b|\b(?:keeps? (?:on )?(?:going|moving|slewing|turning|running)|(?:does|do|will|wo)(?:n['’]?t| not) stop|runs? on|carries on)\b[^.!?]{0,40}\b(?:let go|releas\w+|finger\w* off)\b|\b(?:un)?til+ i (?:have to )?(?:pull|cut|switch off|turn off|kill|unplug) (?:the |its )?(?:plug|power|supply|battery|mains)\b|\b(?:drives?|drove|goes|went|runs?|ran|takes?|took|shoots?|shot|races?|raced|slews?) (?:off|away)\b[^.!?]{0,30}\bfull (?:speed|tilt|pelt|rate)\b|\bfull (?:speed|tilt|pelt)\b[^.!?]{0,30}\b(?:(?:does|do|did|will|wo)(?:n['’]?t| not)|never) stops?\b/gu,
    unless: /\b(?:un)?(?:til+|less) (?:i|you) (?:let go|release)\b|\bstops? (?:at once|immediately|right away|dead)\b/u,
    over: SOLVED,
    says: 'Not safe like that. Be at the power switch whenever it moves, and cut the power if it does not stop at once; nobody’s hand or face near, tube capped, roof open, slow rates alone. A stop sent over a busy wireless network comes late: move by the hand controller or a cable, or over the mount’s own network, until it stops as you let go.',
  },
  {
    words:
      /\b(?:hits?|smack\w*|crash\w*|struck|rammed|drove|ran|banged|bumped)\b[^.!?]{0,30}\b(?:into |on |against )?(?:the |its |a |my )?(?:tripod|pier|pillar|legs?|roof|wall)\b|\bwraps?\b[^.!?]{0,12}\b(?:cables?|leads?|cords?)\b|\b(?:cables?|leads?|cords?)\b[^.!?]{0,20}\b(?:wrap(?:s|ped|ping)? (?:a?round|itself|up)|(?:nearly |almost |got |get )+(?:ripped|torn|yanked|pulled|dragged) (?:out|off))\b/gu,
    unless:
      /\b(?:i|we|he|she|dog|kids?|someone|somebody|foot|car|meteor|hail)(?: \w+)? (?:hit|hits|ran|drove|bumped|banged)\b|\b(?:old|former) (?:issue|trouble|problem)\b|\bprotection\b|\b(?:cables?|leads?|power|wire|network)\b[^.!?]{0,20}\b(?:ran|drove|runs)\b/u,
    over: SOLVED,
    says: 'Before it slews again: be at the power switch and stop it before tube or leads touch anything. Tube capped, leads loose and clear, slow rates, until it goes the right way. Look first that nothing is bent and no lead is torn.',
  },
];

/** A paste of many lines holds such words by chance. */
const LONGEST = 700;
const MOST_LINES = 6;

const LONG_AGO =
  /\b(?:years?|months?|weeks|ages) ago\b|\blast (?:year|spring|summer|autumn|winter|season|month)\b|\b(?:in|was) (?:spring|summer|autumn|winter|january|february|march|april|june|july|august|september|october|november|december)\b/u;
const MENDED =
  /\b(?:replaced|repaired|mended|swapped|(?:this|the new|new) (?:one|board|mount|battery|supply|lead|cable|motor)|since then)\b/u;
const STILL = /\b(?:again|still (?:smok|smell|hot|warm)|smells? now|tonight too)\b/u;

/** Of what was long ago and another thing's nothing is to be said. */
const isPast = (said: string): boolean => LONG_AGO.test(said) && MENDED.test(said) && !STILL.test(said);

const SENTENCE_ENDS = /[.!?\n](?=\s|$)/gu;

/** The sentences that a span touches. */
const sentencesAt = (said: string, start: number, end: number): string => {
  let [from, to] = [0, said.length];
  for (const { index } of said.matchAll(SENTENCE_ENDS)) {
    if (index < start) from = index + 1;
    else if (index >= end - 1) {
      to = index + 1;
      break;
    }
  }
  return said.slice(from, to);
};

const isTold = ({ words, also = [], over, unless }: Harm, said: string): boolean => {
  if (over?.test(said) === true || !also.every((one) => one.test(said))) return false;
  for (const { 0: match, index } of said.matchAll(words))
    if (unless?.test(sentencesAt(said, index, index + match.length)) !== true) return true;
  return false;
};

/** @returns what is to be said of the harm that the words come near; null where they come near none */
export const harmNear = (text: string): string | null => {
  const said = text.trim().toLowerCase();
  if (said.length > LONGEST || said.split('\n').length > MOST_LINES) return null;
  const harm = HARMS.find((one) => isTold(one, said));
  return harm === undefined || isPast(said) ? null : harm.says;
};

/** A line, and no account. */
const LONGEST_LINE = 300;

/** @returns the caution of the Sun, where a line that a walk was given outright (in a form) comes near it; null elsewhere */
export const sunHarmNear = (text: string): string | null => {
  if (text.length > LONGEST_LINE) return null;
  const near = (said: string) => sunCautionIn(said.toLowerCase(), null);
  const caution = near(text) ?? near(withBodiesInEnglish(text));
  return caution === null ? null : cautionText(caution);
};
