/** One line at a remedy that tells two things: the link stands now, and what the mount then does is wrong. */

import { whatRemains } from './what-remains.js';

const either = (words: readonly string[]): string => `(?:${words.join('|')})`;

/** The computer reaches the mount. */
const CONNECTS = new RegExp(
  either([
    '(?:connects?|connected|connecting|connection|links?(?: it)? up|linked|link|hooks? up|joins?|joined|talks?|talking|answers?|replies|responds?|logs? on)\\b',
    '(?:opens?|opened) (?:the |its |that )?(?:port|com ?\\d*)',
    '(?:port|com ?\\d+|number|address|speed|cable|lead|driver) (?:is|was|does|did) (?:right|it|ok|fine|the one|the trick|good)',
    '(?:finds?|found|sees?|reaches) (?:it|the (?:mount|scope|telescope))',
    "(?:i am|i[\u2019']?m|we[\u2019']?re|we are) (?:in|on|connected|through)\\b",
    '(?:that|the first|this) (?:bit|part|one|half|problem|trouble)(?: now)? (?:works|is (?:fine|ok|right|done|fixed|sorted|gone|cured))',
    '(?:that|it) (?:works|worked|did it|did the trick|fixed it|cured (?:it|that)|helped|is (?:fixed|sorted|solved|cured))',
    '(?:cured|fixed|sorted|solved) (?:the |my )?(?:\\w+ )?(?:connect\\w*|port|link)',
    '(?:shows|reads) (?:me )?(?:the |its |a )?(?:position|coordinates)',
    '(?:is|back) online\\b',
  ]),
  'iu',
);
/** Told not to be so, or only under a condition; "still" tells that it was so all along. */
const UNSURE_OF_IT =
  /\b(?:not|never|no|nothing|cannot|hardly|if|when|whenever|until|unless|once|still|always|every time|before|says|error|lost|loses|drops?|fails?|failed|refuses?|tries|trying|should|would|could|hope|how|why|what|does it|do i)\b|n['\u2019]?t\b/iu;

const GOES =
  '(?:go(?:es)?|going|went|gone|points?|pointed|pointing|looks?|looked|looking|lands?|landed|ends? up|ended up|moves?|moved|moving|stops?|stopped|slews?|slewed|drives?|swings?|swung|heads?|headed|turns?|turned|sends?|is|are|was|comes?|came)';
const ASTRAY =
  '(?:ground|floor|lawn|grass|roof\\w*|trees?|fence|walls?|horizon|house|garden|hedge|shed|neighbou?rs?|earth|street|road|wrong|opposite|other (?:side|way|end)|miles|degrees?|quarter|half|nowhere|somewhere|off|out|away|past|beside|beyond|below|under|underneath|backwards?|elsewhere|breadth|fist|feet|short|different)';
const MOVES =
  '(?:mov\\w*|happens?|slew\\w*|track\\w*|follow\\w*|turn\\w*|budge\\w*|stir\\w*|go(?:es)?|find\\w*|point\\w*)';
/** How far it gets then, in the order they are looked for. */
const SHOWS: readonly (readonly ['elsewhere' | 'no-move' | 'drops' | null, RegExp])[] = [
  [
    'no-move',
    /\b(?:hums?|humming|refuses?|refused|below the horizon|under the (?:horizon|earth)|stuck|stands still|stays put|sits there|do(?:es)? nothing|(?:do|does|did)(?: not|n['\u2019]?t) do (?:a thing|anything))\b/iu,
  ],
  [
    'no-move',
    new RegExp(
      `\\b(?:nothing|never|does not|will not|refuses to|do not|wont|doesnt|cant|can not|cannot|won['\u2019]t|doesn['\u2019]t|can['\u2019]t)\\b[^.!?]{0,12}\\b${MOVES}\\b`,
      'iu',
    ),
  ],
  [
    'drops',
    /\b(?:drops?|dropped|disconnects?|disconnected|(?:loses|lost) (?:it|the (?:link|connection|mount))|cuts out|dies|freezes|froze)\b/iu,
  ],
  [
    'elsewhere',
    new RegExp(
      `\\b${GOES}\\b[^.!?]{0,40}\\b${ASTRAY}\\b|\\b(?:backwards|wrong (?:way|place|star|spot|side|direction)|miles (?:off|out|away)|way (?:off|out)|all (?:off|out|wrong))\\b`,
      'iu',
    ),
  ],
  [
    null,
    /\b(?:errors?|crash\w*|grinds?|grinding|drifts?|drifting|creeps?|creeping|wanders?|trails?|runs away|stops|stopped)\b/iu,
  ],
];
/** What is no trouble any more. */
const GONE =
  /\b(?:no (?:more )?|without (?:a |any )?|instead of |used to |not )(?:drops?|errors?|trouble|problems?|longer)\b/giu;

/** Where one thing told ends and another may begin. */
const BREAK = /[,.;!?\n]+|\s-+\s|\b(?:but|only|and|then|however|though|although|yet|except|now)\b/giu;

interface Piece {
  readonly at: number;
  readonly text: string;
}

const piecesOf = (text: string): readonly Piece[] => {
  const pieces: Piece[] = [];
  let at = 0;
  for (const found of [...text.matchAll(BREAK), null]) {
    const end = found?.index ?? text.length;
    if (text.slice(at, end).trim() !== '') pieces.push({ at, text: text.slice(at, end) });
    at = end + (found?.[0].length ?? 0);
  }
  return pieces;
};

const connects = (piece: string): boolean => CONNECTS.test(piece) && !UNSURE_OF_IT.test(piece);

export interface WrongNow {
  /** The words on what is wrong now. */
  readonly rest: string;
  /** How far it gets; null where they do not say. */
  readonly shows: 'elsewhere' | 'no-move' | 'drops' | null;
}

/** @returns null where the line does not tell both */
export const connectsAndFails = (text: string): WrongNow | null => {
  const pieces = piecesOf(text);
  const first = pieces.findIndex((piece) => connects(piece.text));
  const next = first < 0 ? undefined : pieces[first + 1];
  if (next === undefined) return null;
  const rest = text.slice(next.at).trim();
  const left = rest.replace(GONE, 'well ');
  const told = SHOWS.find(([, pattern]) => pattern.test(left));
  return told === undefined ? null : { rest: whatRemains(rest) ?? rest, shows: told[0] };
};
