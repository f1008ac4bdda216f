/**
 * The port names that a member gave, in one breath or several: the one the program has, or asks for in vain, and those the system
 * has. Whether they are the same is as good as seen, whichever question is in hand.
 */
import type { ReadFact, Reading } from '../../reading/index.js';
import { withFact } from './with-fact.js';

const PORT = String.raw`(?:COM ?\d{1,3}|(?:/dev/)?tty(?:USB|ACM)\d{1,3}|(?:/dev/)?(?:cu|tty)\.[\w.-]{2,40})`;
const IN_VAIN =
  /\b(?:(?:does|do|did) ?n[o']?t exist|no such (?:file|port|device)|not (?:be )?(?:found|there|exist|available)|(?:ca|could)n['\u2019]?t (?:be )?(?:find|found|open(?:ed)?)|fail(?:s|ed)? to open|error opening|unable to open|(?:can|could) ?not (?:be )?(?:find|found|open(?:ed)?)|missing|is gone)\b/iu;
/** It is there then, whoever has it. */
const HELD = /denied|permission|in use|busy|refused|already open/iu;
/** A line of the system's log names a port twice, and no program has it. */
const OF_LOG =
  /\b(?:converter|cdc_acm|kernel|usb \d+-\d)|\b(?:at|dis)tached\b|\bdisconnected from\b|^\s*\[ *\d+\.\d+\]/iu;
const SHOWN = new RegExp(
  String.raw`\((?<bracketed>COM\d{1,3})\)|\battached to (?<attached>tty(?:USB|ACM)\d{1,3})|->\s*\S*?(?<linked>tty(?:USB|ACM)\d{1,3})|\b(?:lists?|shows?|there is|there's|has|got|sees?|says|appears? as|came up as|comes up as|it is|it's|is now|now|only|(?:mount|scope|telescope|adapter) (?:is|was|becomes|gets))\b[^.;\n]{0,40}?(?<said>${PORT})(?![\w])`,
  'giu',
);
const ANY = new RegExp(String.raw`(?<![\w])${PORT}(?![\w])`, 'giu');
/** "COM5 is in the list": what the system shows. */
const IN_A_LIST =
  /\b(?:is|stands|appears|shows up|comes up) (?:in|under|there in) (?:the )?(?:list|ports|device manager|windows)\b/iu;
/** Ports that every system of its kind has, and no mount. */
const OF_THE_SYSTEM = /bluetooth|debug|wlan/iu;
/** "COM1 Communications Port and COM7 USB Serial Port": as they stand in the list, and the second is an adapter's. */
const AS_LISTED =
  /(?<ahead>COM\d{1,3})\W{0,3}usb|usb[- ]serial (?:port|device|adapter)?\W{0,3}(?<behind>COM\d{1,3})/giu;
const PROGRAM =
  /\b(?:programm?e?|software|app|planetarium|client|driver'?s? (?:has|is|says|set|uses?)|(?:port )?settings?|i (?:use|used|chose|choose|picked|pick|set|selected|select|have chosen|put))\b|\b(?:chose|picked|selected|choose|set (?:it )?(?:to|on)|changed (?:it )?to|what i use)\b/iu;
/** A list to pick from is neither what it has nor what the system has. */
const OFFERS = /\b(?:lists?|offers?|shows? me|drop ?down|to choose from|can (?:choose|pick))\b/iu;
/** "Both X and Y" names two, and "on the same machine" says nothing of ports. */
const BOTH =
  /\bboth\b(?! (?:\/dev|tty|cu))|\bthe same(?! (?:machine|computer|laptop|pc|system|cable|lead|time|night|day|error|problem)\b)|\bsame (?:in|on|number|one|port|com)\b|\beach\b/iu;
const TOO = /\b(?:too|also|as well)\b/iu;
const GUESSED = /\b(?:should|shall|would|could|might|maybe|try|trying|tried|or)\b|\?/iu;

const nameOf = (port: string): string =>
  port
    .toLowerCase()
    .replace(/\s+/gu, '')
    .replace(/^\/dev\//u, '')
    .replace(/^(?:cu|tty)\./u, 'cu.')
    .replace(/[.-]+$/u, '');
const kindOf = (name: string): string => /^(?:com|tty|cu)/u.exec(name)?.[0] ?? name;

/** "COM3 and COM4 are both there" says one thing of two ports; "I see it there, COM6" one of one. */
const PARTS = new RegExp(
  String.raw`\n|[.;!?,](?=\s|$)(?!\s*${PORT}\W*$)|\b(?:but|while|whereas|and(?! ${PORT}(?: (?:are|were|is))? both\b))\b`,
  'iu',
);

/** The pieces of a text that say one thing each; the full stop within a port's name parts nothing. */
const piecesOf = (text: string): readonly string[] => text.split(PARTS);

interface Port {
  readonly name: string;
  /** As it was written. */
  readonly port: string;
}

interface Named {
  /** What the program has, by what was said last. */
  chosen: Port | null;
  /** It asks for it and does not find it. */
  isInVain: boolean;
  readonly shown: Map<string, string>;
}

const portsIn = (piece: string): readonly Port[] =>
  [...piece.matchAll(ANY)].map(([port]) => ({ name: nameOf(port), port }));

/** A Mac's tty and cu are two of one port, and no program has both. */
const writtenAs = ({ port }: Port): string => (/\btty\./iu.test(port) ? 'tty' : 'other');

/** "It's COM5 in both", "com5 n com5", "the program has COM5 too". */
const saysSame = (piece: string, ports: readonly Port[]): boolean => {
  const isOne = new Set(ports.map(({ name }) => name)).size === 1 && new Set(ports.map(writtenAs)).size === 1;
  return (
    isOne && !OF_LOG.test(piece) && (ports.length > 1 || BOTH.test(piece) || (TOO.test(piece) && PROGRAM.test(piece)))
  );
};

const takeShown = (named: Named, piece: string): void => {
  for (const { groups } of piece.matchAll(SHOWN)) {
    const port = groups?.['bracketed'] ?? groups?.['attached'] ?? groups?.['linked'] ?? groups?.['said'] ?? '';
    if (!OF_THE_SYSTEM.test(port)) named.shown.set(nameOf(port), port);
  }
};

/** What the system's list says of each: the mount's is the adapter's. */
const takeListed = (named: Named, piece: string): boolean => {
  const found = [...piece.matchAll(AS_LISTED)].flatMap(({ groups = {} }) => groups['ahead'] ?? groups['behind'] ?? []);
  const [own, second] = found;
  if (own === undefined || second !== undefined) return false;
  named.shown.clear();
  named.shown.set(nameOf(own), own);
  return true;
};

const takePiece = (named: Named, piece: string): void => {
  const ports = portsIn(piece);
  const [first] = ports;
  if (first === undefined || HELD.test(piece) || takeListed(named, piece)) return;
  if (IN_VAIN.test(piece)) {
    named.chosen = first;
    named.isInVain = true;
  } else if (saysSame(piece, ports) && !GUESSED.test(piece)) {
    named.chosen = first;
    named.isInVain = false;
    named.shown.set(first.name, first.port);
  } else if (PROGRAM.test(piece)) {
    if (OFFERS.test(piece) || ports.length > 1 || GUESSED.test(piece)) return;
    named.chosen = first;
    named.isInVain = false;
  } else if (IN_A_LIST.test(piece) && ports.length === 1) named.shown.set(first.name, first.port);
  else takeShown(named, piece);
};

const CHECK = 'port-match';
const SURE = 0.95;

interface Compared {
  readonly answer: 'same' | 'another';
  readonly quote: string;
  readonly label: string;
}

/** "Device manager has 5, program was on 3": there numbers alone are ports'. */
const OF_BOTH =
  /\b(?:device manager|the system|windows)\b.*\b(?:programm?e?|software|app|driver)\b|\b(?:programm?e?|software|app|driver)\b.*\b(?:device manager|the system|windows)\b/isu;
const BARE =
  /(?<=\b(?:has|have|had|says?|shows?|is|was|on|at|got|reads?|to|wants|uses|number|thinks) )(\d{1,2})(?![\d.:]|\s*(?:bit|v\b|volts?))/giu;
const withNumbersNamed = (text: string): string =>
  OF_BOTH.test(text) && text.search(ANY) < 0
    ? text.replace(BARE, 'COM$1').replace(/\b(program|app|driver|software) was on\b/giu, '$1 is on')
    : text;

const isOfKind = (name: string, { name: own }: Port): boolean => kindOf(name) === kindOf(own);

const compared = (texts: readonly string[]): Compared | null => {
  const named: Named = { chosen: null, isInVain: false, shown: new Map() };
  for (const piece of texts.flatMap(piecesOf)) takePiece(named, piece);
  const { chosen, isInVain, shown } = named;
  if (chosen === null) return null;
  if (shown.has(chosen.name))
    // "Plugged in first it is ttyUSB1, else ttyUSB0": it changes.
    return isInVain || [...shown.keys()].some((other) => isOfKind(other, chosen) && other !== chosen.name)
      ? null
      : { answer: 'same', quote: chosen.port, label: `the program and the system have the same port, ${chosen.port}` };
  const other = [...shown].find(([own]) => kindOf(own) === kindOf(chosen.name))?.[1];
  return other === undefined
    ? null
    : {
        answer: 'another',
        quote: `${chosen.port}, ${other}`,
        label: `the program asks for ${chosen.port} and the system has ${other}`,
      };
};

/**
 * Adds to what was read of the last of these texts whether the program has a port that the system has.
 * @param texts all of the walk, the one just read last
 */
export const withPortsCompared = (read: Reading, texts: readonly string[]): Reading => {
  const named = texts.map(withNumbersNamed);
  const last = named.at(-1) ?? '';
  const found = last.search(ANY) < 0 ? null : compared(named);
  // Known before these words: nothing of it is new.
  if (found === null || compared(named.slice(0, -1))?.label === found.label) return read;
  const fact: ReadFact = { what: CHECK, answer: found.answer, sureness: SURE, quote: found.quote, by: 'words' };
  // What of it is there is known now: how far that gets was guessed from "not found".
  const isReplaced = (what: string): boolean => what === CHECK || (what === 'how-far' && found.answer !== 'same');
  return withFact(read, { fact, label: found.label }, isReplaced);
};
