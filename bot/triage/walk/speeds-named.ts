/**
 * Two speeds of the port that a member gave, in one breath or two, as a fact or a question: the one set and the one the paper gives.
 * Whichever question is in hand, they tell whether the settings differ.
 */
import type { ReadFact, Reading } from '../../reading/index.js';
import { withFact } from './with-fact.js';

/** Those in use at mounts, in baud. */
const SPEED = String.raw`(?<![\d.:])(4,?800|9,?600|19,?200|38,?400|57,?600|115,?200)(?![\d.])`;
const SPEEDS = new RegExp(SPEED, 'giu');
const WANTED =
  /\b(?:sheet|manual|hand ?book|book(?:let)?|leaflet|paper|guide|instructions?|label|sticker|box|card|should(?: ?n[o']?t)?|supposed|ought|meant|(?:mount|scope|it) (?:wants|needs|expects))\b/iu;
/** Neither what is set nor what is wanted. */
const TRIED = /\b(?:tri(?:ed|es)|try(?:ing)?|both|may|might|could|can|or)\b/iu;
const OF_SPEED = /\b(?:set|speed|baud|rate|at|mine|here|uses?|on|right|wrong|correct)\b/iu;

const piecesOf = (text: string): readonly string[] =>
  text.split(/\n|[.;!?](?=\s|$)|,(?=\s)|\b(?:but|and|while|whereas)\b/u);

interface Speeds {
  readonly set: string | null;
  readonly wanted: string | null;
}

/** What was said last counts. */
const speedsNamed = (texts: readonly string[]): Speeds => {
  let set: string | null = null;
  let wanted: string | null = null;
  for (const piece of texts.flatMap(piecesOf)) {
    const [speed, ...more] = [...piece.matchAll(SPEEDS)].map(([said]) => said.replace(',', ''));
    if (speed === undefined || more.length > 0 || TRIED.test(piece)) continue;
    if (WANTED.test(piece)) wanted = speed;
    else if (OF_SPEED.test(piece)) set = speed;
  }
  return { set, wanted };
};

/** "9600 in the program and 9600 in the handset": told of both ends at once. */
const sameAtBoth = (text: string): string | null => {
  const speeds = [...text.matchAll(SPEEDS)].map(([said]) => said.replace(',', ''));
  const [first] = speeds;
  return first === undefined || speeds.length < 2 || TRIED.test(text) || speeds.some((speed) => speed !== first)
    ? null
    : first;
};

const CHECK = 'port-settings';
const SURE = 0.85;

/**
 * Adds to what was read of the last of these texts that the speed set is, or is not, the one wanted.
 * @param texts all of the walk, the one just read last
 */
export const withSpeedsCompared = (read: Reading, texts: readonly string[]): Reading => {
  const both = sameAtBoth(texts.at(-1) ?? '');
  const { set, wanted } = both === null ? speedsNamed(texts) : { set: both, wanted: both };
  if (set === null || wanted === null || (texts.at(-1) ?? '').search(SPEEDS) < 0) return read;
  const answer = set === wanted ? 'match' : 'other-speed';
  const fact: ReadFact = { what: CHECK, answer, sureness: SURE, quote: `${set}, ${wanted}`, by: 'words' };
  const label = set === wanted ? `the speed is ${set}, as it should be` : `the speed is ${set} and should be ${wanted}`;
  return withFact(read, { fact, label });
};
