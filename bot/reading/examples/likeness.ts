/** What the clauses of a text are like, beside what the sayings read in it: doubts about the latter, and guesses at what they do not know. */
import type { Finding } from '../finding.js';
import { holdsSeveral, keyOf, type ReadFact } from '../reading.js';
import type { Clauses } from '../words/sentences.js';
import type { Span } from '../messages/compile-pattern.js';
import type { Clause } from './clauses.js';
import { stands } from '../words/stands.js';
import { likelyIn, type Likely } from './likely.js';
import type { Weights } from './weights.js';

export interface Likeness {
  readonly weights: Weights;
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
/** A guess is worth telling from here on. */
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

const NONE: Liked = { weighed: (findings) => findings, guesses: () => [] };

const partsOf = (answer: string): readonly [string, string] => {
  const dot = answer.indexOf('.');
  return [answer.slice(0, dot), answer.slice(dot + 1)];
};

export interface Best extends Likely {
  readonly check: string;
  readonly answer: string;
}

/** Check (or, where it holds several, check and answer) → its likeliest answer. */
export const bestByCheck = (likely: ReadonlyMap<string, Likely>): ReadonlyMap<string, Best> => {
  const best = new Map<string, Best>();
  for (const [name, own] of likely) {
    const [check, answer] = partsOf(name);
    const key = keyOf(check, answer);
    if (own.probability > (best.get(key)?.probability ?? 0)) best.set(key, { check, answer, ...own });
  }
  return best;
};

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
  const { weights, isOpen } = likeness;
  const likely = likelyIn(weights, sentences);
  const best = bestByCheck(likely);
  const isRivalled = (check: string, own: number): boolean => {
    const rival = holdsSeveral(check) ? undefined : best.get(check)?.probability;
    return rival !== undefined && rival >= RIVAL && rival >= TIMES * own;
  };
  const isUnlike = (check: string, answer: string): boolean => {
    const own = likely.get(`${check}.${answer}`)?.probability ?? 0;
    return isOpen(`${check}.${answer}`) && (own < UNLIKE || isRivalled(check, own));
  };
  const weigh = (finding: Finding): readonly Finding[] => {
    const told = Object.entries(finding.entry.answers ?? {});
    const kept = told.filter(([check, answer]) => !isUnlike(check, answer));
    if (kept.length === told.length) return [finding];
    const { system, client, path } = finding.entry;
    if (kept.length === 0 && [system, client, path].every((part) => part === undefined)) return [];
    return [{ ...finding, entry: { ...finding.entry, answers: Object.fromEntries(kept), label: undefined } }];
  };
  const spanOf = (clauses: readonly Clause[]): Span => {
    const [first, last] = [clauses[0], clauses.at(-1)];
    const start = first === undefined ? 0 : startOf(first.sentence) + (first.sentence.tokens[first.from]?.start ?? 0);
    const end = last === undefined ? start : startOf(last.sentence) + (last.sentence.tokens[last.to - 1]?.end ?? 0);
    return { start, end };
  };
  return {
    weighed: (findings) => findings.flatMap(weigh),
    guesses: (facts) => {
      const known = new Set(facts.map(({ what, answer }) => keyOf(what, answer)));
      return [...best]
        .filter(([key, { probability, clauses }]) => probability >= WORTH_TELLING && !known.has(key) && isOwn(clauses))
        .map(([, own]) => own)
        .filter(({ check, answer }) => isOpen(`${check}.${answer}`))
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
