/** What the clauses of a text are like, beside what the sayings read in it: doubts about the latter, and guesses at what they do not know. */
import { onceOf } from '../../ground/once.js';
import type { Finding } from '../finding.js';
import { holdsSeveral, keyOf, type ReadFact } from '../reading.js';
import type { Clauses } from '../words/sentences.js';
import type { Span } from '../messages/compile-pattern.js';
import type { Clause } from './clauses.js';
import { stands } from '../words/stands.js';
import type { WeighClauses } from './likely.js';

export interface Likeness {
  readonly weighClauses: WeighClauses;
  /** Whether an answer ("check.answer") may be doubted or guessed: it is one of today's, and its check keeps no gear from harm. */
  readonly isOpen: (answer: string) => boolean;
}

export interface Liked {
  /** What sayings found, without what the text is nothing like. */
  readonly weighed: (findings: readonly Finding[]) => readonly Finding[];
  /** What the text is likely to tell of checks that have no answer yet, at most one a check: guesses, never taken as said. */
  readonly guesses: (facts: readonly ReadFact[]) => readonly ReadFact[];
}

/** A saying whose words are less like what tells it is none. */
const UNLIKE = 0.02;
/** Another answer so likely, and so many times likelier, sets a saying's own aside. */
const [RIVAL, TIMES] = [0.6, 5];
/** A guess is worth telling from here on; less than RIVAL. */
const WORTH_TELLING = 0.55;
const MOST_GUESSES = 8;

/** The clauses' own denials, pasts and habits are part of what they are like; whose mount they speak of is not. */
const SAID_OF_OTHERS = { denied: true, past: true, habit: true } as const;

const isOwn = (clauses: readonly Clause[]): boolean =>
  clauses.every(({ sentence, from, to }) =>
    stands(
      sentence,
      { start: from, end: to, taken: [...Array(to - from).keys()].map((i) => from + i) },
      SAID_OF_OTHERS,
    ),
  );

type Entry = Finding['entry'];

interface Answer {
  readonly check: string;
  readonly answer: string;
  /** "check.answer" */
  readonly name: string;
}

const answersOf = onceOf((answers: Readonly<Record<string, string>>): readonly Answer[] =>
  Object.entries(answers).map(([check, answer]) => ({ check, answer, name: `${check}.${answer}` })),
);

const NONE: Liked = { weighed: (findings) => findings, guesses: () => [] };

/**
 * @param startOf where a sentence's line starts in the text
 * @param quoteOf the words of a span
 */
export const likenessOf = (
  likeness: Likeness | null,
  sentences: readonly Clauses[],
  startOf: (sentence: Clauses) => number,
  quoteOf: (span: Span) => string,
): Liked => {
  if (likeness === null || sentences.length === 0) return NONE;
  const { weighClauses, isOpen } = likeness;
  const { probabilityOf, likeliest } = weighClauses(sentences);
  const likely = likeliest(WORTH_TELLING);
  const rivals = new Map(likely.map(({ check, probability }) => [check, probability]));
  const isRivalled = (check: string, own: number): boolean => {
    const rival = holdsSeveral(check) ? 0 : (rivals.get(check) ?? 0);
    return rival >= RIVAL && rival >= TIMES * own;
  };
  const isUnlike = ({ check, name }: Answer): boolean => {
    if (!isOpen(name)) return false;
    const own = probabilityOf(name);
    return own < UNLIKE || isRivalled(check, own);
  };
  const weigh = (entry: Entry): Entry | null => {
    const told = entry.answers === undefined ? [] : answersOf(entry.answers);
    const unlike = told.filter(isUnlike);
    if (unlike.length === 0) return entry;
    const { system, client, path } = entry;
    if (unlike.length === told.length && [system, client, path].every((part) => part === undefined)) return null;
    const kept = told.filter((one) => !unlike.includes(one)).map(({ check, answer }) => [check, answer] as const);
    return { ...entry, answers: Object.fromEntries(kept), label: undefined };
  };
  // The same sayings come again and again.
  const known = new Map<Entry, Entry | null>();
  const weighed = (finding: Finding): readonly Finding[] => {
    const before = known.get(finding.entry);
    const entry = before === undefined ? weigh(finding.entry) : before;
    if (before === undefined) known.set(finding.entry, entry);
    if (entry === null) return [];
    return [entry === finding.entry ? finding : { ...finding, entry }];
  };
  const spanOf = (clauses: readonly Clause[]): Span => {
    const [first, last] = [clauses[0], clauses.at(-1)];
    const start = first === undefined ? 0 : startOf(first.sentence) + (first.sentence.tokens[first.from]?.start ?? 0);
    const end = last === undefined ? start : startOf(last.sentence) + (last.sentence.tokens[last.to - 1]?.end ?? 0);
    return { start, end };
  };
  return {
    weighed: (findings) => findings.flatMap(weighed),
    guesses: (facts) => {
      const known = new Set(facts.map(({ what, answer }) => keyOf(what, answer)));
      return likely
        .filter(({ check, answer }) => !known.has(keyOf(check, answer)) && isOpen(`${check}.${answer}`))
        .filter(({ clauses }) => isOwn(clauses))
        .sort((a, b) => b.probability - a.probability)
        .slice(0, MOST_GUESSES)
        .map(({ check, answer, probability, clauses }) => ({
          what: check,
          answer,
          sureness: Math.round(90 * probability) / 100,
          quote: quoteOf(spanOf(clauses)),
          by: 'words',
        }));
    },
  };
};
