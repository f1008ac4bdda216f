/** "Could it be the wrong socket?": what the member wonders about is looked at next, where a check of this walk looks at it. */
import { supposedChecks, supposition, type Reading } from '../../reading/index.js';
import { supposeCheck, type CheckEntry, type WalkState } from '../../triage/index.js';
import { isLittle } from '../asking/sentence/words.js';
import type { Began } from './turn.js';

const LEAST_LETTERS = 3;
/** A word that so many checks speak of names none of them. */
const MOST_CHECKS = 5;

const wordsIn = (text: string): readonly string[] =>
  [...text.toLowerCase().matchAll(/[\p{L}\d]+/gu)].map(([word]) => word.replace(/(?<=\p{L}{3})(?:e?s|ed|ing)$/u, ''));

/** Told of the past and of the complaint itself: no look at anything. */
const NO_LOOK: readonly string[] = [
  'tried-already',
  'changed-last',
  'worked-before',
  'how-far',
  'message',
  'when-drops',
];

interface Spoken {
  readonly id: string;
  /** In what is asked, and in the answers. */
  readonly asked: ReadonlySet<string>;
  readonly answers: ReadonlySet<string>;
}

const spokenOf = ({ id, brief, question, answers }: CheckEntry): Spoken => ({
  id,
  asked: new Set(wordsIn(`${id} ${brief ?? ''} ${question}`)),
  answers: new Set(wordsIn(answers.map(({ label }) => label).join(' '))),
});

/** By the names of things alone: "my VPN", "the clutches". */
const byName = (checks: readonly CheckEntry[], cause: string): readonly string[] => {
  const spoken = checks.map(spokenOf);
  const named = wordsIn(cause).filter((word) => {
    if (word.length < LEAST_LETTERS || isLittle(word)) return false;
    const count = spoken.filter(({ asked, answers }) => asked.has(word) || answers.has(word)).length;
    return count > 0 && count <= MOST_CHECKS;
  });
  const scoreOf = ({ asked, answers }: Spoken): number =>
    named.reduce((sum, word) => sum + (asked.has(word) ? 2 : 0) + (answers.has(word) ? 1 : 0), 0);
  return spoken
    .map((one) => ({ id: one.id, score: scoreOf(one) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .map(({ id }) => id);
};

/** The record with that look next; null where nothing is supposed, or it was looked at. */
export const supposedNext = (
  began: Began,
  text: string,
  state: WalkState,
  { by, facts }: Reading,
): WalkState | null => {
  const { context, before } = began;
  const { model } = context;
  if (by !== 'words' || facts.some(({ what }) => model.check(what) !== undefined)) return null;
  const cause = supposition(text);
  if (cause === null) return null;
  const open = before.situation.checks.map(({ entry }) => entry);
  const firstOf = (checks: readonly string[]): WalkState | null => {
    for (const check of checks) {
      const next = NO_LOOK.includes(check) ? null : supposeCheck(before, state, check, context.by);
      if (next !== null) return next;
    }
    return null;
  };
  return firstOf(supposedChecks(model.reading, cause)) ?? firstOf(byName(open, cause));
};
