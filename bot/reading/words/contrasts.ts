/**
 * What another thing, another place or the want of a thing does: "on her laptop it works", "indoors fine, in the garden nothing",
 * "without the hub not one drop". Read from the parts of sentences by kinds of words, not by phrases.
 */
import type { Said } from './read-words.js';
import type { Clauses } from './sentences.js';
import { IS } from './asked.js';
import { has } from './clause.js';
import { partsOf, type Part } from './contrast-parts.js';
import type { Named } from './contrast-things.js';
import type { Verdict } from './contrast-verdict.js';
import { plays, ROLE, thingAt, type Thing } from './contrast-words.js';
import { isOwnedMount, stands } from './stands.js';
import type { Contrast, SayingEntry } from '../schema.js';

/** "computer.well" and so on → the saying that tells what it means. */
export type Contrasts = ReadonlyMap<Contrast, SayingEntry>;

export interface Contrasted extends Said {
  readonly sentence: Clauses;
}

/** Told by the one other thing alone; of all else two are set against each other. */
const ALONE: ReadonlySet<Thing> = new Set(['computer', 'program', 'cable', 'adapter', 'supply', 'socket', 'restart']);
/** Two of them may be set against each other. */
const PAIRS: ReadonlySet<Thing> = new Set([
  'computer',
  'phone',
  'program',
  'cable',
  'adapter',
  'system',
  'network',
  'socket',
]);
/** What may do badly where this one does well. */
const PARTNERS: ReadonlyMap<Thing, readonly Thing[]> = new Map([
  ['computer', ['phone']],
  ['phone', ['computer', 'program']],
]);
const LEFT_OUT: ReadonlySet<Thing> = new Set(['device', 'vpn', 'suite']);

/** Leads of another kind, and sockets that are none of the computer's. */
const OTHER_LEAD = /^(?:power|mains|guide|motor|hdmi|12v|car|wall|lighter|cigarette|guider|audio|extension|charging)$/u;

/** Closed, taken over for good, or told by another: no trial of it. */
const NO_TRIAL =
  /^(?:closed|close|closing|shut|quit|ended|opened|opening|switched|moved|someone|somebody|anyone|anybody|who|says|said|tells|told|suggests|thinks|reckons|buy|bought|ordered|need)$/u;
/** Another's own trouble, another's account, what is only asked. */
const OF_ANOTHER = /^(?:him|them|whether|account|profile|ping|pings|party)$/u;

const UNSAID = IS.plan | IS.guess | IS.hearsay | IS.unmeant;
/** They are named beside other gear. */
const BESIDE_GEAR: ReadonlySet<Thing> = new Set(['device', 'at-home', 'away']);
const RESTARTED_BESIDE = /^(?:router|handset|bridge|hub|phone)$/u;

/** "His mount", "Piet's mount". */
const isOthersMount = ({ sentence, kinds }: Part, at: number): boolean =>
  isOwnedMount(sentence, at) || (has(sentence, at, IS.mount) && plays(kinds, at - 1, ROLE.other));

const saysOfAnother = ({ tokens }: Part, i: number): boolean => {
  const word = tokens[i]?.word ?? '';
  return OF_ANOTHER.test(word) || (word === 'used' && tokens[i + 1]?.word === 'to');
};

/** What is said is not of such a thing, or is no trial of it. */
const isOfAnother = (part: Part, { thing, which, at }: Named, i: number): boolean => {
  const word = part.tokens[i]?.word ?? '';
  if (i < at && which !== 'absent' && NO_TRIAL.test(word)) return true;
  switch (thing) {
    case 'program':
      return thingAt(part.kinds, i) === 'phone';
    case 'restart':
      return has(part.sentence, i, IS.mount) || RESTARTED_BESIDE.test(word);
    // "Pairing works on the tablet": it is paired, and no more.
    case 'phone':
      return i < at && /^(?:pairing|paired)$/u.test(word);
    case 'cable':
    case 'socket':
      return i !== at && OTHER_LEAD.test(word);
    default:
      return false;
  }
};

/** Someone else's mount, another thing's trouble, or only planned. */
const isBeside = (part: Part, named: Named): boolean => {
  const { sentence, from, to } = part;
  const unwanted = BESIDE_GEAR.has(named.thing) ? UNSAID : UNSAID | IS['other-gear'];
  for (let i = from; i < to; i++)
    if (has(sentence, i, unwanted) || isOthersMount(part, i) || saysOfAnother(part, i) || isOfAnother(part, named, i))
      return true;
  return false;
};

/** A question, an "if" that asks, a wish: not said. */
const isSaid = ({ sentence, to }: Part, { at }: Named): boolean =>
  stands(
    sentence,
    { start: at, end: to, taken: [at] },
    { denied: true, past: true, others: true, habit: true, mentioned: true },
  );

const LEADS = /^(?:on|under|in|with|from)$/u;
/** So few words say only how it went. */
const BRIEF = 8;
const MOST_ASIDE = 1;
/** So many parts on, what came of it may be said. */
const WITHIN = 4;

interface Told {
  readonly part: Part;
  /** Which part of the text it is. */
  readonly number: number;
  readonly named: Named;
  readonly verdict: Verdict;
}

/** "And now nothing", "ever since": it came of it. */
const SINCE = /^(?:since|now|such)$/u;
const saysSince = ({ tokens, from, to }: Part): boolean => tokens.slice(from, to).some(({ word }) => SINCE.test(word));

/** "Firewall off, ping good" is a list; "hub off, it connects" is not. */
const OF_IT = /^(?:it|works|connects|everything|mount|found|finds|since|then|now|not|yes)$/u;

/** "On the mini pc: access denied". */
const MOST_LED = 5;
const isLed = ({ tokens, from, to }: Part): boolean => to - from <= MOST_LED && LEADS.test(tokens[from]?.word ?? '');

const SAID_BY_PLACE: ReadonlySet<Thing> = new Set(['at-home', 'away', 'system']);

/** Whether a part that names no thing says how it went with one named `k` parts before it. */
const isOutcomeOf = (
  { thing, which }: Named,
  own: Part,
  { verdict, isOfAll, isAsEver, ...one }: Part,
  k: number,
): boolean => {
  switch (which) {
    case 'own':
      return k === 0 && (SAID_BY_PLACE.has(thing) || isLed(own));
    case 'absent':
      return k === 0 && OF_IT.test(one.tokens[one.from]?.word ?? '');
    default:
      if (verdict === 'well') return k === 0 || isOfAll || (k === 1 && which === 'tried');
      return isAsEver && (k === 0 || isOfAll || which === 'tried');
  }
};

/** Whether a part some way on says how it went with a thing of which its own says nothing: "tried her laptop, my old one: both connect". */
const saysHowItWent = (named: Named, own: Part, part: Part, k: number): boolean => {
  const { verdict, things, from, to } = part;
  if (verdict === null || to - from > BRIEF || (verdict === 'badly' && saysSince(part))) return false;
  if (things.length === 0) return isOutcomeOf(named, own, part, k);
  return part.isOfAll || (named.which === 'tried' && part.isAsEver);
};

/** "… connects, then drops as well". */
const turnsBad = (next: Part | undefined): boolean =>
  next?.verdict === 'badly' &&
  (next.sentence.tokens[next.from]?.word === 'then' ||
    (next.things.length === 0 && plays(next.kinds, next.from, ROLE.badly)));

/** "(32)": a word in between that tells nothing. */
const isAside = ({ from, to, things, verdict }: Part): boolean =>
  verdict === null && things.length === 0 && to - from <= MOST_ASIDE;

/** What each thing named does, by its own part or by one that follows and names none. */
const toldBy = (parts: readonly Part[]): readonly Told[] => {
  const told: Told[] = [];
  for (const [i, part] of parts.entries()) {
    const { things, verdict } = part;
    if (things.length === 0 || (verdict === 'well' && turnsBad(parts[i + 1]))) continue;
    if (verdict !== null) {
      for (const named of things) told.push({ part, number: i, named, verdict });
      continue;
    }
    const later = parts.slice(i + 1, i + 1 + WITHIN).filter((one) => !isAside(one));
    for (const named of things) {
      const after = later.find((one, k) => saysHowItWent(named, part, one, k));
      if (after !== undefined && after.verdict !== null) told.push({ part, number: i, named, verdict: after.verdict });
    }
  }
  return told;
};

/** Two that are set against each other stand no further apart. */
const APART = 8;

/** Whether one that is told near this one fits. */
const isNear = (told: readonly Told[], { number }: Told, fits: (other: Told) => boolean): boolean =>
  told.some((other) => Math.abs(other.number - number) <= APART && fits(other));

const isAnother = (a: Named, b: Named): boolean => (a.which === 'other') !== (b.which === 'other') || a.name !== b.name;

/** It does badly, and this one, which does well, is set against it. */
const isAgainst = ({ thing, ...named }: Named, other: Told): boolean =>
  other.verdict === 'badly' &&
  other.named.which !== 'other' &&
  (other.named.thing === thing
    ? PAIRS.has(thing) && isAnother({ thing, ...named }, other.named)
    : (PARTNERS.get(thing) ?? []).includes(other.named.thing));

const DRIVES: ReadonlySet<Thing> = new Set(['computer', 'program']);

/** What does badly near it, so that it is told of one that does well. */
const setsOff = (named: Named, other: Told): boolean => {
  switch (named.thing) {
    case 'at-home':
      return other.named.thing === 'away' && other.verdict === 'badly';
    case 'handset':
      return DRIVES.has(other.named.thing) && other.verdict === 'badly';
    default:
      return isAgainst(named, other);
  }
};

const saysSame = ({ kinds, tokens, from, to }: Part): boolean => {
  if (!LEADS.test(tokens[from]?.word ?? '')) return false;
  for (let at = from; at < to; at++) if (plays(kinds, at, ROLE.same)) return true;
  return false;
};

const TERMINAL = /^(?:terminal|console)$/u;

/** One of `Contrast`; null: it tells of none. */
const kindOf = (one: Told, told: readonly Told[]): string | null => {
  const { named, verdict } = one;
  const { thing, which } = named;
  if (LEFT_OUT.has(thing)) return which === 'absent' && verdict === 'well' ? `${thing}.without` : null;
  if (which === 'absent') return null;
  if (ALONE.has(thing) && which !== 'own') {
    // "The first program works, the second refuses": the second is the one in hand.
    const isTurned =
      verdict === 'badly' &&
      which === 'other' &&
      isNear(told, one, (own) => own.named.thing === thing && own.named.which === 'own' && own.verdict === 'well');
    return `${thing}.${isTurned ? 'well' : verdict}`;
  }
  if (verdict === 'badly') return null;
  // "On windows the same cable works": that is not where it fails.
  if (thing === 'system' && saysSame(one.part)) return 'system.well';
  // A terminal is never the program in hand.
  if (TERMINAL.test(named.name)) return 'program.well';
  return isNear(told, one, (other) => setsOff(named, other)) ? `${thing}.well` : null;
};

const NONE: readonly Contrasted[] = [];

export const contrastsIn = (sentences: readonly Clauses[], contrasts: Contrasts): readonly Contrasted[] => {
  const parts = partsOf(sentences);
  if (parts.length === 0) return NONE;
  const told = toldBy(parts).filter(({ part, named }) => !isBeside(part, named) && isSaid(part, named));
  return told.flatMap((one) => {
    const entry = contrasts.get((kindOf(one, told) ?? '') as Contrast);
    if (entry === undefined) return [];
    const { part, named } = one;
    return [
      { entry, sentence: part.sentence, match: { start: part.from, end: part.to, taken: [named.at] }, deniedAt: -1 },
    ];
  });
};
