/** Words of the trade that a question takes for granted, each explained in a line with the place to look; asked for in a walk. */
import { wordCountOf } from '../../ground/fold-text.js';
import { SUMMER_TIME_RULE } from '../asking/summer-time-rule.js';

/** "So which plug do I need?" */
const ASKS_PLUG =
  /\b(?:which|what) (?:size |kind |sort |type |of |power |barrel |dc |right )*plug\b.*\b(?:need|buy|get|fits?|take|want|order|right|for)\b|\b(?:which|what) (?:plug )?size\b.*\bplug\b|\b(?:which|what) plug size\b/iu;

const TERMS: readonly (readonly [RegExp, string])[] = [
  [
    /\bpass(?:ed)?[ -]?through\b|\b(?:pc|computer) (?:direct|mode)\b|\bdirect mode\b/iu,
    'Pass-through is a mode in the hand controller’s own menu: it then hands on what the computer says to the motors and answers nothing itself.',
  ],
  [
    /\bhemisphere\b/iu,
    'The hemisphere is north or south of the equator: it decides which way the mount follows the stars. It stands in the mount’s menu and in the driver’s own settings.',
  ],
  [
    /\b(?:ttl|logic level|5 ?v logic|rs-?232)\b/iu,
    'These are two kinds of volts on a data lead: logic is 0 to 5 V, RS-232 goes up to 15 V either way. The lead’s label or order says which; look only, plug nothing in.',
  ],
  [/\b(?:daylight[ -]?sav\w*|summer ?time|dst)\b/iu, SUMMER_TIME_RULE],
  [
    /\butc(?: offset)?\b|\btime ?zone\b/iu,
    'The UTC offset is how many hours your clocks are ahead of Greenwich in winter. Summer time is one hour more, and often a line of its own.',
  ],
  [
    /\bsidereal\b/iu,
    'Sidereal is the pace of the stars, four minutes a day faster than the clock. As a tracking rate it follows the stars.',
  ],
  [
    /\bclutch(?:es)?\b/iu,
    'A clutch is the lever or knob on an axis that grips it: tight, the motor turns the tube; loose, you can swing it by hand. Hold the tube first.',
  ],
  [
    /\bpings?\b/iu,
    'A ping is a short call over the network: you type the word ping and an address, and lines with a time in ms mean that something answers.',
  ],
  [
    /\bvpn\b/iu,
    'A VPN is a tunnel to the office or abroad that many work computers open by themselves. Look for a key, shield or padlock beside the clock.',
  ],
  [
    /\b(?:baud|bits? per second)\b/iu,
    'Baud is the speed of a serial port, a number such as 9,600. It stands where you chose the port in the program.',
  ],
  [
    /\b(?:parity|stop bits?|data bits?|flow control|handshake)\b/iu,
    'These are small settings of a serial port, beside its speed where you chose the port. 8, none, 1 and no flow control is usual.',
  ],
  [
    /\b(?:usb[ -])?(?:serial )?adapter\b|\bconverter\b|\bdongle\b/iu,
    'The adapter is the piece that turns USB into a serial port: a small box, a thick plug or a bulge in the lead near the computer.',
  ],
  [
    /\bcom ?ports?\b|\bserial port\b/iu,
    'A COM port is the name under which the computer knows a serial lead, such as COM4. It stands in the Device Manager under Ports.',
  ],
  [
    /\b(?:network )?bridge\b/iu,
    'The bridge is the box or stick on the mount that speaks wireless or network to the computer, and serial to the mount.',
  ],
  [
    /\bfirewall\b/iu,
    'A firewall is a guard in the computer that lets programs out to the network or not. It is part of the system, or of a security program.',
  ],
  [
    /\bfirmware\b/iu,
    'Firmware is the program inside the mount or hand controller. Its version shows in a menu, often under About or at switching on.',
  ],
  [
    /\bdrivers?\b|\bdriver platform\b/iu,
    'A driver is the piece of software that lets the computer use a device. You chose one from a list, or the system took its own.',
  ],
  [
    /\bhubs?\b|\bdock\b/iu,
    'A hub is a box with several USB sockets between computer and lead; a dock or a screen with sockets is one too.',
  ],
  [
    /\blatency\b/iu,
    'Latency is how long the adapter waits before it passes letters on. It stands in the adapter’s own settings, in the Device Manager.',
  ],
  [
    /\bproxy\b/iu,
    'A proxy is another computer through which this one goes to the network; work machines have one. It stands in the network settings.',
  ],
  [
    /\b(?:tcp|udp)\b/iu,
    'TCP and UDP are two ways to send over a network. The program has a choice of the two beside the address; the bridge’s sheet says which.',
  ],
  [
    /\bip address\b|\baddress\b/iu,
    'The address is four numbers with dots, such as 192.168.4.1. It stands on the bridge’s label or sheet, or in the router’s list of devices.',
  ],
  [
    ASKS_PLUG,
    'Round power plugs are named by two widths in mm, outside and the hole for the pin: 5.5/2.1 and 5.5/2.5 look alike, and the wider hole sits loose on the thinner pin. The mount’s sheet says which, and whether plus is inside; volts and polarity stay as they were.',
  ],
  [
    /\bsheet\b|\bmanual\b/iu,
    'The sheet is the paper or page that came with that part; the maker’s pages have it as well. The label on the part often says the same.',
  ],
  [
    /\bterminal\b|\bcommand (?:line|prompt)\b|\bshell\b/iu,
    'A terminal is a window where commands are typed. On Linux Ctrl+Alt+T often opens one; on a Mac search for Terminal; on Windows right-click Start, then Terminal.',
  ],
  [
    /\b(?:dialout|uucp|plugdev)\b|\b(?:the|that|a|this|which) group\b/iu,
    'It is a group of accounts on Linux: who belongs to it may open serial ports. A new member has to log out and in again.',
  ],
  [
    /\b(?:sudo|root)\b/iu,
    'Root is the account that may do anything; sudo in front of a command runs that one as root and asks for your own password.',
  ],
  [
    /\bbrltty\b|\bbraille\b/iu,
    'It is a service for Braille displays that some Linux systems bring along. It takes certain adapters for such a display and grabs the port. Who uses one must keep it.',
  ],
  [
    /\bvirtual machine\b|\bvm\b/iu,
    'A virtual machine is a computer inside the computer, such as Windows in a window on a Mac. It can take a USB device for itself.',
  ],
  [
    /\bdevice manager\b/iu,
    'The Device Manager lists all that is plugged into a Windows computer: right-click Start, and it is in that menu.',
  ],
  [
    /\bmeridian flip\b|\bflip\b/iu,
    'As a target crosses the meridian, due south or due north, a mount on a pier turns round to follow it from the other side: that is the flip.',
  ],
  [
    /\bplate[- ]?solv\w*\b|\bsolv(?:e|ing) (?:the )?(?:picture|image|field)\b/iu,
    'To solve a picture is to find from its stars where the telescope really points.',
  ],
  [
    /\bhome (?:position|mark)\b|\bpark(?:ed| position)?\b/iu,
    'Parked, a mount holds still at a known place until it is told to go on; home is the place that it counts from, often with marks on the axes.',
  ],
];

const ASKS =
  /^\W*(?:(?:sorry|um+|er+m?|and|but|so|well|ok|please|mate)[,. ]+)*(?:what(?:['\u2019]?s| is| are| does| do you mean by| kind of| sort of)?|which|i (?:do not|don['\u2019]?t|dont) (?:know|understand|get) what|(?:i(?:['\u2019]?ve)? (?:have )?)?(?:no|not an?) (?:idea|clue) what|never heard of|not sure what|unsure what|explain|how do i (?:do (?:a|that|the) )?|where (?:do|would|can|is|are|could|should) (?:i )?(?:find|get|see|read|look)?)\b/iu;
/** "What it says is a driver error" answers. */
const TELLS = /\b(?:it|he|she|they) (?:says?|said|shows?|does|did|tells?)\b/iu;
const LONGEST = 70;
/** "Should daylight saving be yes or no in November", "I put yes, is that ok?" */
const ASKS_SUMMER =
  /\b(?:daylight[ -]?sav\w*|summer ?time|dst)\b.*\b(?:yes or no|on or off|is (?:that|this|it) (?:ok|okay|right|good|correct|fine))\b|\b(?:should|shall|must|do i|is it)\b.*\b(?:daylight[ -]?sav\w*|summer ?time|dst)\b/iu;

/** The explanation of the summer time setting, where the words ask how it should stand. */
export const explainedSummer = (text: string): string | null =>
  text.length <= 2 * LONGEST && ASKS_SUMMER.test(text) ? SUMMER_TIME_RULE : null;

/** "Granddad says what's that": the question is another's. */
const FOR_ANOTHER =
  /^\W*(?:(?:my|the|our) )?\w+ (?:says|asks|wants to know|is asking|wonders)[,:]? (?=(?:what|where|how|which|who)['\u2019]?s?\b)/iu;
/** "I don't understand. What is sidereal?" */
const SENTENCES = /(?<=[.!?])\s+/u;

const termIn = (sentence: string): string | null => {
  const said = sentence.trim().replace(FOR_ANOTHER, '');
  if (said.length > LONGEST || !ASKS.test(said) || TELLS.test(said)) return null;
  return TERMS.find(([term]) => term.test(said))?.[1] ?? null;
};

/** "What is sidereal?": so few words ask for nothing but the term. */
const OF_TERM_ALONE = 7;
/** So few words beside it tell nothing. */
const LITTLE = 4;

/** A term asked for in a sentence of its own, and what else the words say; null where nothing else is said. */
export const explainedBeside = (text: string): { readonly says: string; readonly rest: string } | null => {
  const sentences = text.split(SENTENCES);
  if (sentences.length === 1) return null;
  const isOfTerm = (one: string): boolean =>
    one.endsWith('?') && wordCountOf(one) <= OF_TERM_ALONE && termIn(one) !== null;
  const asks = sentences.find(isOfTerm);
  const says = asks === undefined ? null : termIn(asks);
  const rest = sentences.filter((one) => one !== asks).join(' ');
  return says === null || wordCountOf(rest) < LITTLE ? null : { says, rest };
};

/** @returns the explanation where the words ask what such a word means or where the thing is; null otherwise */
export const explained = (text: string): string | null => {
  const own = termIn(text);
  const sentences = own === null && text.includes('?') ? text.split(SENTENCES) : [];
  return (
    own ??
    sentences
      .filter((one) => one.includes('?'))
      .map(termIn)
      .find((one) => one !== null) ??
    null
  );
};
