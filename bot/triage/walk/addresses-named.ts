/**
 * The network addresses that a member gave, in one breath or several: the mount's, the one the program calls, and the computer's own.
 * Whether they are of one network is as good as seen, whichever question is in hand.
 */
import type { ReadFact, Reading, Suggestion } from '../../reading/index.js';
import { quotedFrom } from './with-fact.js';

/** Private or link-local, RFC 1918 and RFC 3927; others are versions, or the internet's. */
const ADDRESS = /(?<![\d.])(?:10|172\.(?:1[6-9]|2\d|3[01])|192\.168|169\.254)(?:\.\d{1,3}){2,3}(?![\d.]*\d)/gu;
const NEITHER =
  /\b(?:gateway|passerelle|dns|(?:net|subnet)?mask|broadcast|used to|was|before|old|last (?:week|month|year)|yesterday|should|would|maybe|perhaps|if|friend\w*|hotspot)\b/iu;
const CALLED = /\b(?:programm?e?|software|app|typed?|put|entered|calls?|dials?|ping\w*|asks? for|tries)\b/iu;
const MOUNTS = /\b(?:mount|telescope|scope|bridge|handset)\b/iu;
const LISTED = /\b(?:router|lists?|listed)\b/iu;
const COMPUTERS =
  /\b(?:laptop|(?:mini ?)?pc|computer|notebook|phone|tablet|i ?pad|i ?phone|mac(?:book)?|mine|my (?:own )?(?:ip|address)|ipv4|ip(?:v4)?-?adresse?|ipconfig|ifconfig|inet|(?:i|we) (?:have|got|get))\b/iu;

const PIECES = /\n|[;!?,]|\.(?=\s|$)|\b(?:and|but|while|whereas)\b/u;

type Whose = 'called' | 'mount' | 'computer';

interface Named {
  readonly address: string;
  /** The router's list has it so. */
  readonly isListed: boolean;
}

const whoseIs = (words: string): Whose | null => {
  if (NEITHER.test(words)) return null;
  if (CALLED.test(words)) return 'called';
  if (MOUNTS.test(words)) return 'mount';
  if (COMPUTERS.test(words)) return 'computer';
  // What is looked up in the router's list is the mount's.
  return LISTED.test(words) ? 'mount' : null;
};

/** "Had .23 in the app": the end of an address, behind a dot or the number before it. */
const ENDING = /(?<![\d.])(?:\d{1,3})?\.\d{1,3}(?![\d.]*\d)/gu;

/** The endings in a text that gives one address in full, each made whole. */
const madeWhole = (text: string): string => {
  const [full] = text.match(ADDRESS) ?? [];
  if (full === undefined) return text;
  const parts = full.split('.');
  return text.replace(ENDING, (ending) => {
    const own = ending.split('.').filter((part) => part !== '');
    return [...parts.slice(0, parts.length - own.length), ...own].join('.');
  });
};

/** What stands before an address tells whose it is, else what stands behind it: "192.168.1.7 is the laptop". */
const takePiece = (named: Map<Whose, Named>, piece: string): void => {
  const found = [...piece.matchAll(ADDRESS)];
  for (const [i, match] of found.entries()) {
    const [address] = match;
    const end = match.index + address.length;
    const earlier = found[i - 1];
    const before = piece.slice(earlier === undefined ? 0 : earlier.index + earlier[0].length, match.index);
    const behind = piece.slice(end, found[i + 1]?.index);
    if (NEITHER.test(before)) continue;
    const whose = whoseIs(before) ?? whoseIs(behind);
    if (whose !== null) named.set(whose, { address, isListed: LISTED.test(before + behind) });
  }
};

/** House routers and bridges hand out /24 networks in 192.168 and wider ones elsewhere; common practice, no source. */
const networkOf = (address: string): string =>
  address
    .split('.')
    .slice(0, address.startsWith('192.168.') ? 3 : 2)
    .join('.');

const SURE = 0.85;

interface Compared {
  readonly facts: readonly (readonly [what: string, answer: string])[];
  readonly suggested: readonly Suggestion[];
  readonly label: string;
}

const NEW_ADDRESS: Compared['facts'] = [
  ['router-list', 'new-address'],
  ['bridge-entry', 'other-address'],
];

const comparedIn = (texts: readonly string[]): Compared | null => {
  const named = new Map<Whose, Named>();
  for (const piece of texts.flatMap((text) => madeWhole(text).split(PIECES))) takePiece(named, piece);
  const [called, mount, computer] = [named.get('called'), named.get('mount'), named.get('computer')];
  if (called !== undefined && mount !== undefined && called.address !== mount.address)
    return {
      facts: NEW_ADDRESS,
      suggested: [],
      label: `the program calls ${called.address} and the mount has ${mount.address}`,
    };
  const other = mount ?? called;
  if (computer === undefined || other === undefined) return null;
  const isOne = networkOf(other.address) === networkOf(computer.address);
  if (isOne)
    return mount === undefined
      ? null
      : {
          facts: [
            ['joined-network', 'mounts'],
            ['guest-network', 'main'],
          ],
          suggested: [],
          label: 'mount and computer are in the same network',
        };
  return {
    facts: [['joined-network', 'other']],
    suggested: [
      { faultId: 'network-isolation', weight: other.isListed ? 8 : 4 },
      { faultId: 'bridge-address-changed', weight: other.isListed ? 1 : 4 },
    ],
    label: `the mount and the computer are in different networks, ${other.address} and ${computer.address}`,
  };
};

export const ADDRESSES_NAMED = 'addresses-named';

/**
 * Adds to what was read of the last of these texts what the addresses tell.
 * @param texts all of the walk, the one just read last
 */
export const withAddressesCompared = (read: Reading, texts: readonly string[]): Reading => {
  const last = texts.at(-1) ?? '';
  const found = last.search(ADDRESS) < 0 ? null : comparedIn(texts);
  // Known before these words: nothing of it is new.
  if (found === null || comparedIn(texts.slice(0, -1))?.label === found.label) return read;
  const facts = found.facts.map(([what, answer]): ReadFact => ({
    what,
    answer,
    sureness: SURE,
    quote: quotedFrom(last),
    by: 'words',
  }));
  const told = new Set(facts.map(({ what }) => what));
  const [first] = facts;
  if (first === undefined) return read;
  return {
    ...read,
    facts: [...read.facts.filter(({ what }) => !told.has(what)), ...facts],
    understood: [...read.understood.filter(({ fact }) => !told.has(fact.what)), { fact: first, label: found.label }],
    perhaps: read.perhaps.filter(({ what }) => !told.has(what)),
    suggested: [
      ...read.suggested.filter(({ faultId }) => !found.suggested.some((own) => own.faultId === faultId)),
      ...found.suggested,
    ],
    met: [...read.met, ADDRESSES_NAMED],
  };
};
