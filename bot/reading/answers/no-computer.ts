/** Whether a member uses no computer at all but steers by the hand controller, and whether words speak of a computer that there is. */

const COMPUTER = '(?:computers?|laptops?|pcs?|notebooks?|macs?|programs?|programmes?|software|apps?)';
const HANDSET =
  '(?:hand ?sets?|hand ?controllers?|hand ?controls?|hand ?box|handunit|hand unit|keypads?|pads?|paddles?|remotes?|controllers?|buttons|keys)';
const NONE = [
  `\\bno (?:other )?${COMPUTER}\\b`,
  `\\bwithout (?:an? |any |the |my )?${COMPUTER}\\b`,
  `\\b(?:do not|don['\u2019]?t|not|never|nor) (?:\\w+ )?(?:use|own|have|using|got|bring|run|connect) (?:an? |any |the |my )?${COMPUTER}\\b`,
].join('|');
const SAYS_NONE = new RegExp(NONE, 'iu');
const ALL_NONE = new RegExp(NONE, 'giu');
const HAND_ALONE = new RegExp(
  [
    `\\b(?:only|just|all|purely|simply|it['\u2019]?s all|everything) (?:\\w+ ){0,3}?(?:the |my |a |its )?${HANDSET}\\b`,
    `\\b${HANDSET} (?:only|alone|and (?:nothing|no) (?:else|more))\\b`,
    '\\bstand ?-?alone\\b',
  ].join('|'),
  'iu',
);
const ANY_ONE = new RegExp(
  `\\b(?:${COMPUTER}|drivers?|phones?|tablets?|i-?pads?|iphones?|android|usb|wi-?fi|bluetooth)\\b`,
  'iu',
);
/** Another one, or none to spare. */
const OF_ANOTHER = /\b(?:other|another|second|spare|different|more|windows|linux)\b/iu;
/** "Just through the hand controller's socket" is how a computer reaches the mount. */
const OF_A_WAY = /\b(?:through|via|into|to|sockets?|ports?|cables?|leads?|plug\w*|adapters?|serial|rs-?232|board)\b/iu;
/** How it does so is told beside the computer in hand: "with the hand controller alone it is perfect". */
const HOW_IT_DOES =
  /\b(?:works?|worked|working|perfect\w*|fine|flawless\w*|well|moves?|moved|ok|okay|good|no (?:problems?|troubles?|drop\w*|faults?)|all night|tracks?|steers?)\b/iu;
const LONGEST = 120;

/** A computer is spoken of that is not denied. */
export const speaksOfComputer = (text: string): boolean => ANY_ONE.test(text.replace(ALL_NONE, ' '));

/** To a question that only one with a computer can answer: "no laptop, handset only", "just the keypad". */
export const saysNoComputer = (text: string): boolean => {
  const said = text.trim();
  if (said.length > LONGEST || said.includes('?') || OF_ANOTHER.test(said) || speaksOfComputer(said)) return false;
  return SAYS_NONE.test(said) || (HAND_ALONE.test(said) && !OF_A_WAY.test(said) && !HOW_IT_DOES.test(said));
};

const OUTRIGHT = /\bat all\b|\binvolved\b|\bwhatsoever\b|\b(?:i|we) (?:do not|don['\u2019]?t|never) (?:use|own)\b/iu;

/** Said to any question: that there is none, and what there is instead. */
export const saysNoComputerOutright = (text: string): boolean =>
  saysNoComputer(text) && SAYS_NONE.test(text) && (HAND_ALONE.test(text) || OUTRIGHT.test(text));
