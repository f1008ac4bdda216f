/**
 * "There is COM8 in the list, working properly", "it hums now", "tracking says on": a sign on the way is seen, and nothing is told of what
 * the mount does. Like a setting that was made, it is no cure yet.
 */

const SIGN =
  '(?:usb|adapter|plug-?in|start-?up|connect\\w*|little|red|green|blue|amber|power|status|tx|rx|activity)? ?(?:sounds?|chimes?|lights?|leds?|lamps?|hum|noises?|buzz|beeps?|clicks?|pings?|ports?|com ?\\d+|devices?|icons?|ticks?|wi-?fi|signal|networks?|web ?page|menus?|plate ?solv\\w*|plate ?solver|solving|terminal|cameras?|guider|handset|hand controller|device manager|motors? (?:sound|noise|hum)|motors?)';
const LEADS =
  '(?:(?:ok(?:ay)?|yes|yep|and|so|now|well|then|i (?:can )?(?:see|hear|get|have)|there (?:is|are)|the|a|an|its|my|this|that|again|just|also) )*';
const SEEN =
  '(?:works?|working|comes?|came|goes|is|are|on|up|there|here|back|lit|flashes|flashing|blinks?|blinking|flickers?|shows?|appears?|listed|found|seen|ok(?:ay)?|fine|good|right|properly|correctly|now|again|too|in|the|list|under|device manager|answers?|answered|replies|joined|connected|turns?|runs?|hums?|sounds?|installed|says?|with|no|yellow|mark|when|i|plug|it|press|connect|takes|pictures)';
const OF_A_SIGN = new RegExp(`^${LEADS}${SIGN}(?: ${SEEN})+$`, 'u');
const THERE = new RegExp(`^${LEADS}(?:there (?:is|are) )?${SIGN}(?: ${SEEN})*$`, 'u');
/** Windows' own word for a device, and what a screen says of itself. */
const SAYS =
  /^(?:(?:ok(?:ay)?|yes|and|so|now|it|tracking|the|screen|handset|app|my|program|status|that|unparked|there|is|are) )*(?:(?:is |it is |it )?working properly|(?:says|shows|reads|is set to) (?:it is )?(?:on|off|ready|tracking|not parked|unparked|parked|sidereal|online|ok|allowed|private|public|working properly|com ?\d+)(?: .{0,24})?|hums?(?: now| again)?|sidereal is chosen|(?:tracking|rate|mode|speed|limit|align\w*) (?:is |went |was )?(?:on|off|sidereal|lunar|solar|through|ok|done|finished)(?: ok| fine| now)*|(?:driver|program|update|firmware|app|software) (?:is |was |got |has )?(?:installed|updated|loaded|downloaded)(?: (?:without|with no|fine|ok|well|successfully|again|now|an?|any|errors?|trouble|problems?))*)$/u;
/** What was done for it to be seen. */
const DEED =
  /^(?:(?:i|we|ok|just|have|then|and) )*(?:\w+ed|put|set|made|took|did|chose)\b(?!.*\b(?:works?|connects?|moves?|slews?|goes|finds?|lands?|tracks?|talks?|answers?|stays|holds?|good|fine|well|fixed|solved|sorted|cured|now)\b)/u;

const BREATHS = /[,.;!\u2026\n]+(?!\d)|\s-+\s/u;

const plain = (breath: string): string =>
  breath
    .toLowerCase()
    .replace(/['\u2019]s\b/gu, ' is')
    .replace(/[^\p{L}\d]+/gu, ' ')
    .trim();

/** @returns whether all that the words tell is that some sign is there */
export const isOnlyASign = (text: string): boolean => {
  if (text.includes('?')) return false;
  const breaths = text
    .split(BREATHS)
    .map(plain)
    .filter((breath) => breath !== '');
  const isSign = (breath: string): boolean => OF_A_SIGN.test(breath) || SAYS.test(breath);
  return (
    breaths.some(isSign) &&
    breaths.every(
      (breath) => isSign(breath) || DEED.test(breath) || THERE.test(breath) || /^no \w+(?: \w+)?$/u.test(breath),
    )
  );
};
