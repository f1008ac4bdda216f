/** What a member's own words tell: their sentences, the sayings that stand in them, and what is set against what. */
import { isHedged } from './answers/hedged.js';
import type { Finding } from './finding.js';
import type { Line } from './lines.js';
import type { Span } from './messages/compile-pattern.js';
import type { SayingEntry, Told } from './schema.js';
import type { Vocabulary } from './vocabulary.js';
import { withSigns, type Placed } from './words/beside.js';
import { contrastsIn } from './words/contrasts.js';
import type { PhraseMatch } from './words/phrases.js';
import { readWords } from './words/read-words.js';
import { sentencesOf, type Clauses } from './words/sentences.js';

/** So few sentences of so few words together leave little else to be meant. */
const [BRIEF, SHORT] = [2, 30];

export const WORDS_SURENESS = 0.85;

interface InLine extends Placed {
  readonly line: Line;
}

interface Place {
  readonly line: Line;
  /** Which sentence of the text it is, from 1. */
  readonly number: number;
}

export interface Heard {
  /** In their order. */
  readonly sentences: readonly Clauses[];
  readonly placeOf: ReadonlyMap<Clauses, Place>;
  readonly ofLine: ReadonlyMap<Line, readonly Clauses[]>;
  /** What is said in them, where it may count. */
  readonly placed: readonly InLine[];
  /** A lone sentence, or few of few words: little else can be meant. */
  readonly isPlain: boolean;
}

/** More than the system, which another device's line tells as well. */
export const tellsOfMount = ({ answers, suggests, path }: Told): boolean =>
  answers !== undefined || suggests !== undefined || path !== undefined;

/** What is told by setting one thing against another. */
const setAgainst = ({ contrasts }: Vocabulary, { sentences, placeOf }: Omit<Heard, 'placed' | 'isPlain'>): InLine[] => {
  const placed: InLine[] = [];
  for (const { entry, sentence, match, deniedAt } of contrastsIn(sentences, contrasts)) {
    const place = placeOf.get(sentence);
    if (place !== undefined && !place.line.ofOther)
      placed.push({ entry, match, deniedAt, sentence, number: place.number, line: place.line });
  }
  return placed;
};

/** What does well under another system is not the set-up in hand. */
const OF_ANOTHER_SYSTEM: ReadonlySet<string> = new Set(['system.well', 'computer.well']);
const HOST_NAME = /^-(?:[\da-f]*\d|[\w-]+ +\.?\d)/iu;

/** Without the system, where it is another's, or a name in a router's list ("android-3fa1"). */
const withoutSystem = (one: InLine, against: readonly InLine[]): InLine => {
  const { entry, match, sentence, line } = one;
  if (entry.system === undefined) return one;
  const isOthers =
    against.some(
      (other) =>
        other.sentence === sentence &&
        OF_ANOTHER_SYSTEM.has(other.entry.contrast ?? '') &&
        other.match.start <= match.start &&
        match.start < other.match.end,
    ) || HOST_NAME.test(line.text.slice(sentence.tokens[match.end - 1]?.end ?? 0));
  return isOthers ? { ...one, entry: { ...entry, system: undefined } } : one;
};

const leavesLittle = (sentences: readonly Clauses[]): boolean =>
  sentences.length === 1 ||
  (sentences.length <= BRIEF && sentences.reduce((sum, { tokens }) => sum + tokens.length, 0) <= SHORT);

/** @param worded lines of a person */
export const hearWords = (vocabulary: Vocabulary, worded: readonly Line[]): Heard => {
  const { lexicon } = vocabulary.sayings;
  const sentences: Clauses[] = [];
  const placeOf = new Map<Clauses, Place>();
  const ofLine = new Map<Line, readonly Clauses[]>();
  for (const line of worded) {
    const own = sentencesOf(lexicon, line.text);
    ofLine.set(line, own);
    for (const sentence of own) placeOf.set(sentence, { line, number: sentences.push(sentence) });
  }
  const said: InLine[] = [];
  for (const [sentence, { line, number }] of placeOf)
    for (const { entry, match, deniedAt } of readWords(vocabulary.sayings, sentence))
      if (!line.ofOther || !tellsOfMount(entry)) said.push({ entry, match, deniedAt, sentence, number, line });
  const against = setAgainst(vocabulary, { sentences, placeOf, ofLine });
  const placed = [...said.map((one) => withoutSystem(one, against)), ...against];
  return { sentences, placeOf, ofLine, placed, isPlain: leavesLittle(sentences) };
};

const spanIn = (line: Line, { tokens }: Clauses, { start, end }: PhraseMatch): Span => ({
  start: line.start + (tokens[start]?.start ?? 0),
  end: line.start + (tokens[end - 1]?.end ?? 0),
});

/** Without its answers where it must be sure and the line only guesses. */
const firmly = (entry: SayingEntry, line: string): SayingEntry =>
  entry.firm === true && isHedged(line) ? { ...entry, answers: undefined, label: undefined } : entry;

/** A finding in words, whose entry is a saying. */
export interface FoundInWords extends Finding {
  readonly entry: SayingEntry;
  /** Two things said together tell it, each in any words; and a lone sentence or two brief ones leave little else to be meant. */
  readonly isPlain: boolean;
  /** Of a long text some is not weighed, and is what its sayings say. */
  readonly isHeard: boolean;
}

const isPlainByItself = ({ beside, alone, with: withOthers }: SayingEntry): boolean =>
  beside !== undefined || alone === true || withOthers !== undefined;

/** @param isWeighed whether likeness weighs the sentence */
export const toldInWords = (
  { sentences, placed, isPlain }: Heard,
  isWeighed: (sentence: Clauses) => boolean,
): readonly FoundInWords[] => {
  const last = sentences.at(-1);
  const inPlace = placed.filter(
    ({ entry: { closes }, sentence }) => closes !== true || (sentences.length > 1 && sentence === last),
  );
  return withSigns(inPlace).map(({ entry, match, sentence, line }) => ({
    entry: firmly(entry, line.text),
    sureness: entry.sureness ?? WORDS_SURENESS,
    span: spanIn(line, sentence, match),
    by: 'words',
    isPlain: isPlain || isPlainByItself(entry),
    isHeard: line.ofOther || isWeighed(sentence),
  }));
};
