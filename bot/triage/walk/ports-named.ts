/**
 * Two port names that a member gave, in one breath or two: the one that a program asks for in vain and the one that the system
 * has. Where they differ, the cause is as good as seen, whichever question is in hand.
 */
import type { ReadFact, Reading } from '../../reading/index.js';

const PORT = String.raw`(?:COM\d{1,3}|(?:/dev/)?tty(?:USB|ACM)\d{1,3}|(?:/dev/)?(?:cu|tty)\.[\w.-]{2,40})`;
const IN_VAIN =
  /\b(?:(?:does|do|did) ?n[o']?t exist|no such (?:file|port|device)|not (?:be )?(?:found|there|exist|available)|(?:can|could) ?n[o']?t (?:be )?(?:find|found|open(?:ed)?)|fail(?:s|ed)? to open|error opening|unable to open|cannot (?:be )?(?:find|found|open(?:ed)?)|missing|is gone)\b/iu;
/** It is there then, whoever has it. */
const HELD = /denied|permission|in use|busy|refused|already open/iu;
const SHOWN = new RegExp(
  String.raw`\((?<bracketed>COM\d{1,3})\)|\battached to (?<attached>tty(?:USB|ACM)\d{1,3})|->\s*\S*?(?<linked>tty(?:USB|ACM)\d{1,3})|\b(?:lists?|shows?|there is|there's|has|got|sees?|says|appears? as|came up as|comes up as|it is|it's|is now|now|only)\b[^.;\n]{0,40}?(?<said>${PORT})(?![\w])`,
  'giu',
);
const ANY = new RegExp(String.raw`(?<![\w])${PORT}(?![\w])`, 'giu');
/** Ports that every system of its kind has, and no mount. */
const OF_THE_SYSTEM = /bluetooth|debug|wlan/iu;

const nameOf = (port: string): string =>
  port
    .toLowerCase()
    .replace(/^\/dev\//u, '')
    .replace(/^(?:cu|tty)\./u, 'cu.')
    .replace(/[.-]+$/u, '');
const kindOf = (name: string): string => /^(?:com|tty|cu)/u.exec(name)?.[0] ?? name;

/** The pieces of a text that say one thing each; the full stop within a port's name parts nothing. */
const piecesOf = (text: string): readonly string[] => text.split(/\n|[.;!?,](?=\s|$)|\b(?:but|and|while|whereas)\b/u);

interface Named {
  readonly wanted: ReadonlyMap<string, string>;
  readonly shown: ReadonlyMap<string, string>;
}

const portsNamed = (texts: readonly string[]): Named => {
  const wanted = new Map<string, string>();
  const shown = new Map<string, string>();
  for (const piece of texts.flatMap(piecesOf)) {
    const isVain = IN_VAIN.test(piece) && !HELD.test(piece);
    if (isVain) for (const [port] of piece.matchAll(ANY)) wanted.set(nameOf(port), port);
    else
      for (const { groups } of piece.matchAll(SHOWN)) {
        const port = groups?.['bracketed'] ?? groups?.['attached'] ?? groups?.['linked'] ?? groups?.['said'] ?? '';
        if (!OF_THE_SYSTEM.test(port)) shown.set(nameOf(port), port);
      }
  }
  return { wanted, shown };
};

const CHECK = 'port-match';
const SURE = 0.95;

/** Adds to what was read of the last of these texts that the program asks for a port which the system does not have. */
export const withPortsCompared = (read: Reading, texts: readonly string[]): Reading => {
  const { wanted, shown } = portsNamed(texts);
  for (const [name, port] of wanted) {
    const other = [...shown].find(([own]) => own !== name && kindOf(own) === kindOf(name));
    if (other === undefined || shown.has(name)) continue;
    const fact: ReadFact = {
      what: CHECK,
      answer: 'another',
      sureness: SURE,
      quote: `${port}, ${other[1]}`,
      by: 'words',
    };
    // What of it is there is known now: how far that gets was guessed from "not found".
    const rest = (what: string): boolean => what !== CHECK && what !== 'how-far';
    return {
      ...read,
      facts: [...read.facts.filter(({ what }) => rest(what)), fact],
      understood: [
        ...read.understood.filter(({ fact: { what } }) => rest(what)),
        { fact, label: `the program asks for ${port} and the system has ${other[1]}` },
      ],
    };
  }
  return read;
};
