/** A short answer to what was asked in one breath with the outcome of a remedy: "same. so is it the clutch or the gears?" */
import { eitherAsked, outcomeSaid, tellingMarks } from '../../reading/index.js';
import { assess, type WalkState } from '../../triage/index.js';
import type { Began } from './turn.js';

const GOES_ON = 'That I cannot tell yet; the next step narrows it down.';
/** So much likelier one of two must be to be named. */
const AHEAD = 1.3;

/** @returns nothing where nothing was asked, or the walk is over */
export const answeredBeside = (
  { context: { model, outcomes } }: Began,
  state: WalkState,
  text: string,
): readonly string[] => {
  const { asks } = outcomeSaid(model.reading, text);
  if (asks === undefined) return [];
  const { step, situation, belief } = assess(model, state, outcomes);
  if (step.kind === 'done') return [];
  const { lexicon } = model.reading.sayings;
  /** Of all causes that bear a word of it in their names. */
  const likelihoodOf = (words: string): number => {
    const marks = tellingMarks(lexicon, words);
    return situation.faults.reduce((sum, { title }, f) => {
      const isNamed = [...tellingMarks(lexicon, title)].some((mark) => !mark.startsWith('<') && marks.has(mark));
      return isNamed ? sum + (belief.probabilities[f] ?? 0) : sum;
    }, 0);
  };
  const two = (eitherAsked(asks) ?? []).map((words) => ({ words, likely: likelihoodOf(words) }));
  const [first, second] = two.sort((one, other) => other.likely - one.likely);
  if (first === undefined || second === undefined || first.likely < AHEAD * second.likely) return [GOES_ON];
  return [`Of the two rather “${first.words}”, by what you told me; the next step tells.`];
};
