/** A text as lines, each judged printed (by a system or program) or worded (by a person), and long texts cut to what is worth reading. */
import { wordCountOf } from '../ground/fold-text.js';
import { makeOwner } from './whose-line.js';

/** Characters that are read at all; a longer text is cut to its telling lines and its end. */
export const TEXT_LIMIT = 8000;
/** Beyond this a text is not even looked through. */
const LOOKED_THROUGH = 1_000_000;
const HEAD = 1500;
const LONGEST_LINE = 2000;
/** A line is judged by its beginning. */
const JUDGED_BY = 400;

const TELLING =
  /usb|tty|serial|com\d|error|fail|denied|refus|timed|timeout|disconnect|attached|brltty|modem|voltage|wlan|deauth|unreachable|loss|halt|code \d|busy|not found/iu;

/** Head (what the member says), then the lines of a log that can tell something, newest kept. */
export const cutText = (text: string): string => {
  if (text.length <= TEXT_LIMIT) return text;
  const looked = text.slice(-LOOKED_THROUGH);
  const head = text.slice(0, HEAD);
  const kept: string[] = [];
  let room = TEXT_LIMIT - HEAD;
  const lines = looked.split('\n');
  // One endless line has no lines to choose from.
  if (lines.length < 3) return text.slice(-TEXT_LIMIT);
  const plainFrom = lines.length - 40;
  for (let i = lines.length - 1; i >= 0 && room > 0; i--) {
    const line = (lines[i] ?? '').slice(0, LONGEST_LINE);
    if (i < plainFrom && !TELLING.test(line)) continue;
    kept.unshift(line.slice(0, room));
    room -= line.length + 1;
  }
  return `${head}\n${kept.join('\n')}`;
};

const PERSONAL =
  /(?:^|[^\w'’/.-])(?:i|i['’]m|im|i['’]ve|ive|my|me|we|our|us|it|its|it['’]s|they|he|she|his|her|please|plz|pls|hi|hello|hallo|thanks|anyone|somebody)(?=[\s,.!?'’]|$)/iu;
/** A program speaks to its user as a member speaks to the reader. */
const SPOKEN_TO = /(?:^|[^\w'’/.-])(?:you|u|your)(?=[\s,.!?'’]|$)/iu;
/** What a program asks its user to do. */
const INSTRUCTION =
  /(?:^|[.:;)] )(?:please (?:check|verify|make sure|ensure|connect|reconnect|restart|retry|try|contact|close|insert|unplug|select|install|update|wait|see|refer)|(?:verify|make sure|ensure|check) (?:the|your|that)|contact your)\b/iu;
const PLEASE = /\bplease\b/giu;
const STAMPED =
  /^\s*(?:\[\s*[+\d]|\w{3}\s+\d{1,2} \d\d:\d\d|\d{4}-\d\d-\d\d|\d\d:\d\d:\d\d|[$#>%] |~\$|at [\w.$<>]+[.(]|c[rw-]{9}|bus \d{3}|\|__|traceback|usb (?:usb)?\d|hub \d|file "|(?:ls|cat|stty|stat|chmod|fuser|minicom|screen|bash|zsh|modprobe|my groups|ports): |port held by [\w.-]+$|pinging \d|ping: \S+: |ping \S+ \(|reply from \d|(?:64 bytes )?from [\d.]+(?:: | icmp_seq)|request (?:timed out\b|timeout for )|ping statistics |\d+ packets transmitted|nc: |connect(?:x)? to [\d.]+ port |\d+(?:-\d+)+(?:\.\d+)* +[\da-f]{4}:[\da-f]{4} |\S+ +\d+ +\S+ +\d+[urw] +chr |standard serial over bluetooth|in [\w.]+\(|(?:process|\w+) (?:finished|exited|returned) (?:with )?|(?:[\w-]+ ){1,3}adapter [^:.]{1,40}:$|\[(?:errno|winerror) \d|[\w.]+(?:exception|error): |["“'][^"”']{1,40}["”'] would like to |allow accessory to |service [\w.-]+ runs$|no serial port(?: of a usb adapter)?$)/iu;
/** "IPv4 Address. . . : …", "RemotePort   : …", and the fields of devices, events and sockets that members do not write. */
const LABELLED =
  /^[\w() /-]{2,44}(?: ?\.){2,} ?:|^\w+ {2,}: |^(?:media state|last state|device (?:type|status)|manufacturer|location|direction|ssid|bssid|application name|(?:source|destination) (?:address|port)|connection mode|reason|protocol|packets) ?: /iu;
/** What a program says it is about to do. */
const PROGRESS =
  /^(?:connecting|opening|changing|trying|reading|sending|waiting|scanning|searching|retrying|reconnecting|probing|initiali[sz]ing|starting|loading|resetting)\b.*(?:\.\.\.|…|:|['"]\S|\/dev\/|\bcom\d)/iu;
/** The name of a device list, with its port at the end of the name. */
const LISTED_PORT = /^[^,.;!?]{4,60} \(com\d{1,3}\)(?:\s*$|\s{2,})/iu;
const NAMES_PORT = /\/dev\/\w|\bcom\d{1,3}\b|\b(?:cu|tty)\.\w/iu;
const MARKS = /[[\]{}=<>|\\/_#@;]|::|0x|-\d|\w\(|\d\)|['"]\S+['"]/gu;
/** A line without any of these has no mark. */
const MAY_MARK = /[[\]{}=<>|\\/_#@;:x()'"-]/u;
/** A port's name is a mark at most once. */
const PORT_NAMES = /\/dev\/\S+|\b(?:cu|tty)\.\w+(?:-\w+)?|\bw\/o?\b/gu;
/** Exceptions, names in mixed case (not those that members write so), codes in capitals (a member shouts AUTOGUIDER), levels of a program's log, numbers of a system's table. */
const NAMED =
  /\b\w+(?:[eE]xception|[eE]rror)\b(?=[:(.\d\s]|$)|\b(?!(?:MacBooks?|MacOS|WiFi|WhatsApp|YouTube|PayPal|PowerPoint|LiPo|LiFePO\w*)\b)[A-Z][a-z]+[A-Z]\w+|\b(?=[A-Z_]{8})[A-Z]+_[A-Z_]+\b|\bE(?:CONN|TIMED|HOST|NET|ADDR|NOT|AGAIN|ACCES)[A-Z]{2,}\b|^\s*(?:ERROR|WARN|WARNING|INFO|DEBUG|FATAL|CRITICAL)\b|\[(?:Errno|WinError) \d/u;

/** How programs begin what they have to say. */
const FORMAL =
  /^(?:error|warning|exception|fatal|failed|failure|cannot|can['’]t|could not|unable|access to|access is|unknown|connection|windows (?:has|is|was|can|could|cannot|did|does|will|needs|found|failed|encountered|must|security|update|firewall)|this device|the (?:device|drivers?|port|system|operation)|device|port|no com|init|power surge|currently|system extension|a (?:device|program|driver|request|connection)|an? \w+ attempt)\b.*(?:[.)]|:(?!\d))|\(code \d/iu;
const INFORMAL =
  /\b(?:now|but|still|yesterday|today|tonight|cant|wont|dont|since|when|gone|nothing|tried|sometimes|maybe|updated|old|new|works?|popup|closed)\b|[!?]/iu;
/** The commonest small words of the other languages that messages come in, and of English. */
const FOREIGN_WORDS =
  /(?<![\p{L}'])(?:der|die|das|ist|nicht|und|ein|eine|einer|wurde|kann|konnte|nach|auf|von|dem|den|le|la|les|des|du|une|est|pas|ne|sur|el|los|las|se|una|por|del|il|di|che|non|della|het|een|niet|van|voor|kon|wordt|nie|jest|do|przez|zosta\p{L}+|uma|foi|ao|al|acceso|accesso|denegado|negato|negado|puerto|porta|anschluss|zugriff|geweigerd|toegang|odmowa)(?![\p{L}'])/giu;
const ENGLISH_WORDS =
  /(?<![\p{L}'])(?:the|a|an|is|are|was|it|its|my|i|and|not|no|to|on|in|of|with|but|from|for|when|does|can|will|this|that|after|at|mount|scope|handset|connect|computer|laptop)(?![\p{L}'])/giu;

/** Not English: a message of a system in another language, or of a member whom the vocabulary does not understand. */
const isOtherLanguage = (line: string): boolean => {
  const foreign = line.match(FOREIGN_WORDS)?.length ?? 0;
  return foreign >= 2 && foreign > (line.match(ENGLISH_WORDS)?.length ?? 0);
};

const FOREIGN = /[^\p{ASCII}‘’“”…–—°→]/u;
const FOREIGN_WORD = /(?<!\S)\S*[^\p{ASCII}‘’“”…–—°→]\S*/gu;
const [LEAST_ENGLISH, TIMES_ENGLISH] = [3, 2];

/** Letters of another language, and not only in a greeting or a place's name: "Olá, only in the one port of the computer". */
const isInForeignLetters = (line: string): boolean => {
  if (!FOREIGN.test(line)) return false;
  const english = line.match(ENGLISH_WORDS)?.length ?? 0;
  return english < LEAST_ENGLISH || english < TIMES_ENGLISH * (line.match(FOREIGN_WORD)?.length ?? 0);
};

/** Lines of what the collecting line prints (knowledge/connection/collecting.yaml): names, tables, lists of addresses. */
const COLLECTED =
  /^(?:linux$|macos \d|name +status|interfacealias|-{4,}|\+-o |inet [\d.]+|[a-z]+\d+:$|\d+ \[[a-z ]+\]$|(?:eth|en|wl|docker|br)\w* +(?:up|down|unknown)\b|(?:wi-?fi|ethernet|loopback)\b.* {2,}\S+$)/iu;
/** A row of its table of devices. */
const COLLECTED_ROW = /\b(?:ok|error|unknown|degraded) {2,}\d{1,2}$/iu;

/** In the manner of programs, whoever is spoken to. */
const isFormal = (line: string): boolean => (FORMAL.test(line) || INSTRUCTION.test(line)) && !INFORMAL.test(line);

const isPersonal = (line: string): boolean => {
  if (!PERSONAL.test(line)) return false;
  const asked = line.replace(PLEASE, ' ');
  return asked === line || !INSTRUCTION.test(line) || INFORMAL.test(line) || PERSONAL.test(asked);
};

/** Names, lists and phrases that only programs write. */
const isProgramLike = (line: string): boolean =>
  NAMED.test(line) ||
  PROGRESS.test(line) ||
  (LISTED_PORT.test(line) && !INFORMAL.test(line)) ||
  isInForeignLetters(line) ||
  isOtherLanguage(line);

/** Judged alone; a line that speaks of "I" or "it" and has no time stamp is a person's. */
export const isPrinted = (line: string): boolean => {
  if (STAMPED.test(line) || COLLECTED.test(line) || LABELLED.test(line)) return true;
  if (line.includes('  ') && COLLECTED_ROW.test(line)) return true;
  const marks = MAY_MARK.test(line) ? (line.replace(PORT_NAMES, '#').match(MARKS)?.length ?? 0) : 0;
  const words = marks === 0 ? 1 : wordCountOf(line);
  if (isPersonal(line)) return marks > words;
  if (isFormal(line)) return true;
  if (SPOKEN_TO.test(line)) return marks > words;
  return (marks >= 2 && marks * 3 >= words) || isProgramLike(line);
};

/** A line below a printed one that names a port and nothing of a person's is what the program said next. */
const goesOn = (line: string): boolean => NAMES_PORT.test(line) && !PERSONAL.test(line) && !INFORMAL.test(line);

export interface Line {
  readonly text: string;
  /** Where it starts in the folded text. */
  readonly start: number;
  readonly printed: boolean;
  /** Of a camera, a database, a file, the internet: not of the mount. */
  readonly ofOther: boolean;
}

/** White space beyond single blanks. */
const UNEVEN = /[^\S ]| {2}/u;

/** The text with single spaces for all white space, and its lines by where they stand in it. */
export const foldLines = (text: string): { readonly folded: string; readonly lines: readonly Line[] } => {
  const lines: Line[] = [];
  let folded = '';
  const isOfOther = makeOwner(text);
  for (const raw of text.split(/\r\n|\n|\r/u)) {
    const own = (UNEVEN.test(raw) ? raw.replace(/\s+/gu, ' ') : raw).trim();
    if (own === '') continue;
    if (folded !== '') folded += ' ';
    const judged = raw.trim().slice(0, JUDGED_BY);
    const printed = isPrinted(judged) || (lines.at(-1)?.printed === true && goesOn(judged));
    const ofOther = isOfOther(own, printed);
    lines.push({ text: own, start: folded.length, printed, ofOther });
    folded += own;
  }
  return { folded, lines };
};
