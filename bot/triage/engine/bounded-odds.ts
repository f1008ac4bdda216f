/** The odds of an answer that settles other checks: under a cause that would not show what it settles, it is the less likely. */
import type { CheckEntry } from '../model/schema.js';

interface Look {
  readonly entry: CheckEntry;
  readonly answers: readonly string[];
  /** [answer][hypothesis] */
  readonly odds: readonly Float64Array[];
}

/** So much of an answer's probability is left at least: what it settles weighs less than if it had been looked at. */
const LEFT_AT_LEAST = 0.5;

/** What one answer to a check settles: other checks' answers, by check id. */
export const settledIn = ({ entry }: Pick<Look, 'entry'>, answer: string): readonly (readonly [string, string])[] =>
  (entry.settles ?? []).flatMap(({ when, then }) => (when.includes(answer) ? Object.entries(then) : []));

/** @param looks all checks of the situation, by id */
export const boundedOdds = (look: Look, looks: ReadonlyMap<string, Look>): readonly Float64Array[] => {
  if (look.entry.settles === undefined) return look.odds;
  const bounded = look.odds.map((odds, a) => {
    const others = settledIn(look, look.answers[a] ?? '').flatMap(([id, answer]) => {
      const other = looks.get(id);
      return other?.odds[other.answers.indexOf(answer)] ?? [];
    });
    return odds.map((p, h) => Math.max(LEFT_AT_LEAST * p, Math.min(p, ...others.map((other) => other[h] ?? p))));
  });
  // What an answer loses goes to all in proportion.
  const sums = look.odds[0]?.map((_, h) => bounded.reduce((sum, odds) => sum + (odds[h] ?? 0), 0));
  return bounded.map((odds) => odds.map((p, h) => p / (sums?.[h] || 1)));
};
