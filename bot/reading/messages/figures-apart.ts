/**
 * Two figures in a member's sentence that should be one: the speed that the manual gives and the one that is set, the address that a box
 * has now and the one that is typed. What they tell is an entry of evidence/tables.yaml.
 */
import type { FoundTable, TableLine } from './tables.js';

interface Part {
  readonly text: string;
  readonly start: number;
  readonly figure: string;
}

/** What follows opens a part of its own. */
const PARTING = /[,;:()]|\.(?= |$)|[!?]| (?:and|but|while|whereas|yet|though|so) | - /giu;

/** The parts that hold just one such figure. */
const partsOf = (text: string, figures: RegExp): readonly Part[] => {
  const parts: Part[] = [];
  let start = 0;
  for (const end of [...[...text.matchAll(PARTING)].map(({ index }) => index), text.length]) {
    const own = text.slice(start, end);
    const [only, more] = own.match(figures) ?? [];
    if (only !== undefined && more === undefined) parts.push({ text: own, start, figure: only });
    start = end;
  }
  return parts;
};

const GIVEN =
  /\b(?:manual|handbook|book|sheet|leaflet|label|sticker)\b|\b(?:mount|handset|hand ?controller|controller|scope|telescope|bridge|board)\b.{0,24}\b(?:wants?|needs?|expects?|talks?|speaks?|runs?|listens?|uses)\b|\b(?:should|ought|supposed)\b/iu;
const SET =
  /\b(?:driver|program|programme|software|app|client|laptop|pc|com ?\d+)\b|\b(?:i|we|i've|i'd) (?:\w+ ){0,2}?(?:have|had|set|use|typed|put|chose|picked|entered)\b|\bi've\b|\b(?:is|are|was|it's) (?:set|at|on)\b/iu;
/** It has been put right, or was tried: the two are no longer apart. */
const MENDED = /\b(?:changed|corrected|switched|moved|tried|now|both|same|either|used to|before)\b/iu;
const OTHER = /\b(?:printer|camera|webcam|focus+er|phone|tv|television|scanner|not|never|no|isn't|doesn't)\b/iu;
const HAS_NOW =
  /\b(?:box|bridge|mount|module|adapter|scope|telescope|it|router|address|list)\b.*\b(?:is|now|has|got|shows?|changed|today|became)\b|\bnow\b/iu;
const STILL_TYPED =
  /\b(?:i|we|i've|i'd|program|app|software|driver|client|laptop|settings?)\b.*\b(?:still|type|typed|typing|have|had|enter|entered|uses?|points?|set|goes)\b/iu;

interface Kind {
  readonly id: string;
  readonly figures: RegExp;
  /** A line without this tells nothing of it. */
  readonly may: RegExp;
  readonly differ: (a: Part, b: Part) => boolean;
}

const isEither = (a: Part, b: Part, one: (part: Part) => boolean, other: (part: Part) => boolean): boolean =>
  (one(a) && other(b)) || (one(b) && other(a));

const isGiven = ({ text }: Part): boolean => GIVEN.test(text) && !MENDED.test(text);
const isSet = ({ text }: Part): boolean => SET.test(text) && !GIVEN.test(text) && !MENDED.test(text);
const areSetApart = (a: Part, b: Part): boolean => isEither(a, b, isGiven, isSet);

/** Addresses of different networks are another matter. */
const areOfOneNetwork = (a: string, b: string): boolean =>
  a.startsWith('.') || b.startsWith('.') || a.slice(0, a.lastIndexOf('.')) === b.slice(0, b.lastIndexOf('.'));
const lastOf = (address: string): string => address.slice(address.lastIndexOf('.'));

const KINDS: readonly Kind[] = [
  {
    id: 'figures-speed-apart',
    figures: /\b(?:1200|2400|4800|9600|14400|19200|38400|57600|115200)\b/gu,
    may: /\b(?:1200|2400|4800|9600|14400|19200|38400|57600|115200)\b/u,
    differ: areSetApart,
  },
  {
    id: 'figures-port-apart',
    figures: /\b(?!(?:19|20)\d\d\b|1200\b|2400\b|4800\b|9600\b|14400\b|19200\b|38400\b|57600\b)[1-9]\d{3,4}\b/gu,
    may: /\bport(?: number)?\b.{0,40}\b\d{4,5}\b/iu,
    differ: areSetApart,
  },
  {
    id: 'figures-address-apart',
    figures: /(?<![\d.])(?:\d{1,3}\.){3}\d{1,3}(?![\d.]*\d)|(?<![\w.])\.\d{1,3}\b(?!\.\d)/gu,
    may: /(?:^| |\d)\.\d{1,3}\b/u,
    differ: (a, b) =>
      areOfOneNetwork(a.figure, b.figure) &&
      lastOf(a.figure) !== lastOf(b.figure) &&
      HAS_NOW.test(a.text) &&
      STILL_TYPED.test(b.text),
  },
];

/** How far apart the two may stand, in parts. */
const NEAR = 2;

const apartIn = ({ text, start }: TableLine, { id, figures, differ }: Kind): FoundTable | null => {
  const parts = partsOf(text, figures).filter((part) => !OTHER.test(part.text));
  for (const [i, a] of parts.entries())
    for (const b of parts.slice(i + 1, i + 1 + NEAR))
      if (a.figure !== b.figure && differ(a, b))
        return { id, span: { start: start + a.start, end: start + b.start + b.text.length } };
  return null;
};

const MOST_LETTERS = 2000;
/** As few lines have as tell of a figure. */
const DIGIT = /\d/u;

export const figuresApart = (lines: readonly TableLine[]): readonly FoundTable[] =>
  lines.flatMap((line) =>
    line.text.length > MOST_LETTERS || !DIGIT.test(line.text)
      ? []
      : KINDS.flatMap((kind) => (kind.may.test(line.text) ? (apartIn(line, kind) ?? []) : [])),
  );
