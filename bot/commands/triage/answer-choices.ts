/** The answers of a step as choices: the six likeliest of a long list first, the rest behind one line; before all, one asked back. */
import type { Choice } from '../../ground/problem.js';
import { UNSURE, whatEachAnswerSays, type Assessment } from '../../triage/index.js';
import { answersOf } from './step-data.js';
import { answerLine, doLine } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

/** So many answers fit a phone; with one more, a line for the rest would save nothing. */
const SHOWN_AT_FIRST = 6;

export interface AnswersShown {
  /** Every answer of a long list. */
  readonly whole?: boolean | undefined;
  /** The answer that the member is asked back: "Did you mean …?" */
  readonly nearest?: string | undefined;
}

/** The likeliest answers of a long list, in the list's order; all of it where it is short or was asked for. */
export const answerChoices = (
  walk: Walk,
  assessment: Assessment,
  { whole, nearest }: AnswersShown = {},
): readonly Choice[] => {
  const listed = answersOf(assessment);
  const choice = ({ id, label }: (typeof listed)[number]): Choice => ({
    label,
    run: answerLine(walk, assessment.step.id, id),
  });
  const first = listed.filter(({ id }) => id === nearest);
  const all = [...first, ...listed.filter(({ id }) => id !== nearest)];
  const proper = listed.filter(({ id }) => id !== UNSURE);
  if (whole === true || proper.length <= SHOWN_AT_FIRST + 1) return all.map(choice);
  const likely = whatEachAnswerSays(assessment).map(({ probability }) => probability);
  const likeliest = [...proper.keys()].sort((a, b) => (likely[b] ?? 0) - (likely[a] ?? 0) || a - b);
  const shown = new Set([...first, ...likeliest.map((i) => proper[i])].slice(0, SHOWN_AT_FIRST));
  return [
    ...all.filter((one) => one.id !== UNSURE && shown.has(one)).map(choice),
    { label: 'Another…', run: doLine(walk, 'more') },
    ...all.filter(({ id }) => id === UNSURE).map(choice),
  ];
};
