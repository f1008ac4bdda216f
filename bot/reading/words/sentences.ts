/** A text as sentences, each knowing where its words stand, which entries of words.yaml they are, and where its clauses end. */
import { onceOf } from '../../ground/once.js';
import { bitsOfEntry, IS } from './asked.js';
import type { Met } from './known.js';
import type { Lexicon } from './lexicon.js';
import type { Sentence } from './phrases.js';
import { tokensOf, type Token } from './tokens.js';
import { unmeantIn, type Unmeant } from './unmeant.js';

/** Of each token, and of the end, where the clause begins and ends that it stands in. */
interface Bounds {
  /** "And" parts clauses. */
  readonly from: readonly number[];
  /** "And" parts none. */
  readonly fromJoined: readonly number[];
  readonly to: readonly number[];
}

export interface Clauses extends Sentence {
  /** For each token, the ids of all entries that cover it. */
  readonly covers: readonly ReadonlySet<string>[];
  /** All of those ids. */
  readonly ids: () => ReadonlySet<string>;
  /** The bits of all tokens. */
  readonly allBits: number;
  readonly bounds: () => Bounds;
  /** Tokens of small words that go together: "no response needed" holds no "no response". */
  readonly fixed: ReadonlySet<number>;
  /** It ended with a question mark. */
  readonly asks: boolean;
}

/** A longer sentence without a stop is cut. */
const MOST_WORDS = 90;

const NOTHING: ReadonlySet<string> = new Set();
const NOWHERE: ReadonlySet<number> = new Set();
const NO_ENTRIES: readonly Met[] = [];

/** What covers a token → what covers it beside one entry more; words' own sets are few and used again and again. */
const wider = onceOf((_: ReadonlySet<string>) => new Map<string, ReadonlySet<string>>());

const withEntry = (covers: ReadonlySet<string>, id: string): ReadonlySet<string> => {
  if (covers.has(id)) return covers;
  const known = wider(covers);
  const before = known.get(id);
  if (before !== undefined) return before;
  const made = new Set(covers).add(id);
  known.set(id, made);
  return made;
};

const idsOf = (covers: readonly ReadonlySet<string>[]): ReadonlySet<string> => {
  const ids = new Set<string>();
  for (const own of covers) for (const id of own) ids.add(id);
  return ids;
};

/** "Not yet tried", "tried it not yet" turn to nothing. */
const isTurn = (tokens: readonly Token[], bits: readonly number[], at: number): boolean =>
  ((bits[at] ?? 0) & IS.turn) !== 0 && !(tokens[at]?.word === 'yet' && ((bits[at - 1] ?? 0) & IS.not) !== 0);

const boundsOf = (tokens: readonly Token[], bits: readonly number[]): Bounds => {
  const blank = (): number[] => new Array<number>(tokens.length + 1).fill(0);
  const [from, fromJoined, to] = [blank(), blank(), blank()];
  let [start, startJoined, open] = [0, 0, 0];
  for (let at = 0; at <= tokens.length; at++) {
    from[at] = start;
    fromJoined[at] = startJoined;
    const token = tokens[at];
    const ends = token === undefined || token.kind === 'pause' || isTurn(tokens, bits, at);
    if (ends) {
      for (; open <= at; open++) to[open] = at;
      startJoined = at + 1;
    }
    if (ends || token.word === 'and') start = at + 1;
  }
  return { from, fromJoined, to };
};

const markUnmeant = (tokens: readonly Token[], unmeant: readonly Unmeant[], bits: number[]): void => {
  for (const span of unmeant)
    for (const [at, { start }] of tokens.entries())
      if (span.start <= start && start < span.end) bits[at] = (bits[at] ?? 0) | IS.unmeant;
};

const sentence = (lexicon: Lexicon, tokens: readonly Token[], asks: boolean, unmeant: readonly Unmeant[]): Clauses => {
  const covers: ReadonlySet<string>[] = [];
  const bits: number[] = [];
  for (const { known } of tokens) {
    covers.push(known === null ? NOTHING : known.covers);
    bits.push(known === null ? 0 : known.bits);
  }
  const met: (readonly Met[])[] = [];
  let fixed: Set<number> | null = null;
  const cover = (at: number, { id, length }: Met): void => {
    for (let i = at; i < at + length; i++) {
      covers[i] = withEntry(covers[i] ?? NOTHING, id);
      bits[i] = (bits[i] ?? 0) | bitsOfEntry(id);
      if (id === 'small') fixed = (fixed ?? new Set<number>()).add(i);
    }
  };
  for (let at = 0; at < tokens.length; at++) {
    const known = tokens[at]?.known;
    const own = known?.met ?? NO_ENTRIES;
    const longer = known?.opens ? lexicon.longerAt(tokens, at) : NO_ENTRIES;
    for (const one of longer) cover(at, one);
    met.push(longer.length === 0 ? own : [...longer, ...own]);
  }
  markUnmeant(tokens, unmeant, bits);
  let allBits = 0;
  for (const own of bits) allBits |= own;
  // Few sentences are asked for them.
  let ids: ReadonlySet<string> | null = null;
  let bounds: Bounds | null = null;
  return {
    tokens,
    met,
    covers,
    ids: () => (ids ??= idsOf(covers)),
    bits,
    allBits,
    bounds: () => (bounds ??= boundsOf(tokens, bits)),
    fixed: fixed ?? NOWHERE,
    asks,
  };
};

const TRIED = new Set(['tried', 'swapped', 'changed', 'replaced', 'with']);
const DONE = new Set([
  ...TRIED,
  ...'wiggled jiggled moved reinstalled restarted rebooted closed new another different other'.split(' '),
]);
const ANOTHER =
  /^(?:another|other|different|new|two|three|four|several|all|both|every|restart|restarting|reboot|rebooting|reinstall|reinstalling|\d)$/u;
/** How far back the word stands that a list of trials opens with; a colon follows it closely. */
const LIST_REACH = 8;
const COLON_REACH = 3;

/** "I tried three cables, another laptop", "tried: other cable, restart": the mark goes on with the list. */
const isInList = (tokens: readonly Token[], { word: mark }: Token, next: Token | undefined): boolean =>
  (mark === ',' || mark === ':') &&
  next?.kind === 'word' &&
  ANOTHER.test(next.word) &&
  tokens.slice(mark === ':' ? -COLON_REACH : -LIST_REACH).some(({ word }) => TRIED.has(word));

const OUTCOME = /^(?:works|worked|same|nothing|helps|helped|cures|cured|fixes|fixed|still)$/u;
/** … with a word more: "no difference", "same timeout", "nothing changes". */
const OUTCOME_BEGINS = /^(?:no|same|nothing|made|makes)$/u;
const OUTCOME_ENDS =
  /^(?:no|change|changes|changed|difference|effect|luck|joy|happens|happened|helps|helped|works|worked|result|thing|story|error|errors|message|timeout|timeouts|problem|trouble|again)$/u;

/** "…, now it's fine", ": it works": the trial cured it. */
const CURED =
  /^(?:and )?(?:hooray |hurray |hurrah |bingo |yay |presto |voila |tada )?(?:now )?(?:it |that |everything |all )?(?:is |has )?(?:been )?(?:now )?(?:works|worked|fine|good|ok|okay|gone|cured|solved|fixed|perfect|connects|talks|stable)(?: |$)/u;
const MOST_OF_CURE = 6;

const isCure = (all: readonly Token[], from: number): boolean => {
  const words: string[] = [];
  for (let at = from; at < from + MOST_OF_CURE && all[at]?.kind === 'word'; at++) words.push(all[at]?.word ?? '');
  return CURED.test(words.join(' '));
};

/** "Swapped in another lead: works", "reinstalled the driver - same": what was tried, and after a mark what came of it. */
const isOutcome = (tokens: readonly Token[], all: readonly Token[], at: number): boolean => {
  const [next, after] = [all[at + 1], all[at + 2]];
  if (next?.kind !== 'word' || !tokens.slice(0, LIST_REACH).some(({ word }) => DONE.has(word))) return false;
  const says =
    after?.kind === 'word' ? OUTCOME_BEGINS.test(next.word) && OUTCOME_ENDS.test(after.word) : OUTCOME.test(next.word);
  return says || isCure(all, at + 1);
};

const QUOTE = /^["“”]$/u;
/** Quotes round so few words part nothing: it says "simulator". */
const MOST_QUOTED = 2;

/** Where the quotes that open here close round a word or two; -1: they do not. */
const quotedShortly = (all: readonly Token[], at: number): number => {
  if (!QUOTE.test(all[at]?.word ?? '')) return -1;
  for (let i = at + 1; i <= at + MOST_QUOTED + 1; i++) {
    if (QUOTE.test(all[i]?.word ?? '')) return i > at + 1 ? i : -1;
    if (all[i]?.kind !== 'word') return -1;
  }
  return -1;
};

const EXCEPTS = /^(?:except|excepting|apart|aside|only|besides|bar)$/u;
const NONE = /^(?:nothing|anything|none|not|never|no)$/u;
const EXCEPTION_REACH = 5;
const MOST_OF_EXCEPTION = 4;
/** What makes a clause of what follows "but". */
const IS_CLAUSE =
  /^(?:i|it|they|we|you|he|she|is|are|was|were|do|does|did|has|have|had|will|wont|can|cannot|not|no|never|still|now|then|when|since|there|\w+ed|fails|drops|says|hangs|stops|keeps|loses|gives)$/u;

const deniesJustBefore = (tokens: readonly Token[]): boolean =>
  tokens.slice(-EXCEPTION_REACH).some(({ word }) => NONE.test(word));

/** "Nothing changed, only the cable": the mark goes on with the exception. */
const opensException = (tokens: readonly Token[], next: Token | undefined): boolean =>
  next?.kind === 'word' && EXCEPTS.test(next.word) && deniesJustBefore(tokens);

/** "Nothing changed but the cable", as against "nothing changed but it does not connect". */
const isExceptingBut = (tokens: readonly Token[], all: readonly Token[], at: number): boolean => {
  if (all[at]?.word !== 'but' || !deniesJustBefore(tokens)) return false;
  for (let to = at + 1; to <= at + MOST_OF_EXCEPTION; to++) {
    const token = all[to];
    if (token?.kind !== 'word' || token.word === 'and') return to > at + 1;
    if (IS_CLAUSE.test(token.word)) return false;
  }
  return all[at + MOST_OF_EXCEPTION + 1]?.kind !== 'word';
};

const ARROW = /^(?:→|->)$/u;
const CHAINED_WITHIN = 2;
const PART_OF_CHAIN = /^(?:usb|usbc|serial|rs232|hub|port|bluetooth|wifi|router|bridge|board|pi)$/u;
const THING = IS.thing & ~IS.pronoun;

const isPartOfChain = (token: Token | undefined): boolean =>
  token?.known != null && ((token.known.bits & THING) !== 0 || PART_OF_CHAIN.test(token.word));

/** "Laptop → adapter → handset": one way from thing to thing. */
const isInChain = (own: readonly Token[], { word }: Token, all: readonly Token[], at: number): boolean =>
  ARROW.test(word) &&
  own.slice(-CHAINED_WITHIN).some(isPartOfChain) &&
  all.slice(at + 1, at + 1 + CHAINED_WITHIN).some(isPartOfChain);

/** Marks that part nothing. */
const goesOn = (own: readonly Token[], mark: Token, all: readonly Token[], at: number): boolean =>
  isInChain(own, mark, all, at) ||
  isInList(own, mark, all[at + 1]) ||
  isOutcome(own, all, at) ||
  opensException(own, all[at + 1]);

/** "It says Unpark scope? Y/N": what a screen asks is told, and asked of nobody here. It begins with a look ahead, as looking back from each letter is slow. */
const ASKED_BY_A_SCREEN =
  /(?=it|screen|display|hand|controller|keypad|mount|scope|telescope|program|app|software|box|window|line|message)(?<!\b(?:what|where|how|why|when|which|if|does|do|should|when) (?:\w+ ){0,3})\b(?:it|screen|display|hand ?set|controller|keypad|mount|scope|telescope|program|app|software|box|window|line|message)(?: just| then| now| always| only)* (?:says?|said|reads?|shows?|asks?(?: me)?|is asking(?: me)?|displays?|wants to know|comes up with)[:,]? [^.?!]*\?/giu;

/** "Target below horizon? Proceed? Y/N": typed as it stands there. */
const WITH_ITS_KEYS = /\?(?=[^\n]{0,40}\b(?:Y ?\/ ?N|yes ?\/ ?no|press (?:enter|\d|any))\b)/giu;

const withoutScreensQuestions = (text: string): string =>
  text.includes('?')
    ? text.replace(ASKED_BY_A_SCREEN, (told) => told.replaceAll('?', ' ')).replace(WITH_ITS_KEYS, ' ')
    : text;

export const sentencesOf = (lexicon: Lexicon, text: string): readonly Clauses[] => {
  const sentences: Clauses[] = [];
  let own: Token[] = [];
  const end = (asks: boolean): void => {
    if (own.length === 0) return;
    sentences.push(sentence(lexicon, own, asks, unmeant));
    own = [];
  };
  const all = tokensOf(withoutScreensQuestions(text), lexicon.knowAt);
  const unmeant = unmeantIn(text);
  let closing = -1;
  for (let at = 0; at < all.length; at++) {
    const token = all[at];
    if (token === undefined) break;
    if (token.kind === 'pause') {
      if (at === closing) continue;
      closing = quotedShortly(all, at);
      if (closing >= 0) continue;
    }
    if (token.kind === 'pause' && goesOn(own, token, all, at)) continue;
    if (isExceptingBut(own, all, at)) own.push({ ...token, word: 'except', known: lexicon.know('except')[0] ?? null });
    else if (token.kind === 'word' || token.kind === 'pause') own.push(token);
    else end(token.kind === 'ask');
    if (own.length >= MOST_WORDS) end(false);
  }
  end(false);
  return sentences;
};
