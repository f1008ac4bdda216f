/** "The phone is on NorthLaneGuest": a network whose name says that it is for guests keeps devices apart, whichever question is in hand. */
import type { ReadFact, Reading } from '../../reading/index.js';
import { quotedFrom } from './with-fact.js';

const ON = '(?:on|to|joined|join(?:s|ing)?|in|into|uses?|using|via|connected to|network|wi-?fi|ssid)';
/** A name that ends, or begins, so: "smith_guest", "Guest-5G"; "guest" alone is a word of the sayings. */
const GUEST_NETWORK = new RegExp(
  `\\b${ON}\\b[^.;!?]{0,18}?["\u201c'\u2018]?(?:[\\p{L}\\d]+[-_]?guests?|guests?[-_][\\p{L}\\d]+)\\b`,
  'iu',
);
/** A name with a capital inside it looks like a log's; a line of a paste is longer, or one of many. */
const LONGEST = 140;
const NOT_SO = /\b(?:not|never|no longer|isn['\u2019]?t|aren['\u2019]?t|was|were|off)\b|\?/iu;
const SURE = 0.8;
const TOLD = [
  ['guest-network', 'guest'],
  ['network-doubts', 'guest'],
] as const;
const LABEL = 'a guest network, by its name';

export const withGuestsNamed = (read: Reading, text: string): Reading => {
  if (text.length > LONGEST || text.includes('\n') || !GUEST_NETWORK.test(text) || NOT_SO.test(text)) return read;
  const facts = TOLD.filter(([check]) => !read.facts.some(({ what }) => what === check)).map(
    ([what, answer]): ReadFact => ({ what, answer, sureness: SURE, quote: quotedFrom(text), by: 'words' }),
  );
  const [first] = facts;
  if (first === undefined) return read;
  const told = new Set(facts.map(({ what }) => what));
  return {
    ...read,
    facts: [...read.facts, ...facts],
    understood: [...read.understood, { fact: first, label: LABEL }],
    perhaps: read.perhaps.filter(({ what }) => !told.has(what)),
  };
};
