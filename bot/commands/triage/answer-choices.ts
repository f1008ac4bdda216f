/** The answers of a step as choices: the six likeliest of a long list first, the rest behind one line; before all, one asked back. */
import type { Choice } from '../../ground/problem.js';
import { UNSURE, whatEachAnswerSays, type Assessment } from '../../triage/index.js';
import { answersOf } from './step-data.js';
import { answerLine, doLine } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

/** So many answers fit a phone; with one more, a line for the rest would save nothing. */
const SHOWN_AT_FIRST = 6;
/** Beside words that were no answer, so many. */
const SHOWN_AGAIN = 3;

export interface AnswersShown {
  /** Every answer of a long list. */
  readonly whole?: boolean | undefined;
  /** Answers that the member is asked back, likeliest first: "Did you mean …?" */
  readonly first?: readonly string[] | undefined;
  /** An answer just refused. */
  readonly refused?: string | undefined;
  /** The list was shown before: only what is likeliest of it. */
  readonly few?: boolean | undefined;
}

/** The likeliest answers of a long list, in the list's order; all of it where it is short or was asked for. */
export const answerChoices = (
  walk: Walk,
  assessment: Assessment,
  { whole, first = [], few = false, refused }: AnswersShown = {},
): readonly Choice[] => {
  const listed = answersOf(assessment).filter(({ id }) => id !== refused);
  const choice = ({ id, label }: (typeof listed)[number]): Choice => ({
    label,
    run: answerLine(walk, assessment.step.id, id),
  });
  const asked = first.flatMap((id) => listed.filter((one) => one.id === id));
  const all = [...asked, ...listed.filter((one) => !asked.includes(one))];
  const proper = listed.filter(({ id }) => id !== UNSURE);
  const most = few ? Math.max(SHOWN_AGAIN, asked.length) : SHOWN_AT_FIRST;
  if (whole === true || proper.length <= most + 1) return all.map(choice);
  const likely = new Map(whatEachAnswerSays(assessment).map(({ label, probability }) => [label, probability]));
  // Sorting keeps the list's order among equals.
  const likeliest = [...proper].sort((a, b) => (likely.get(b.label) ?? 0) - (likely.get(a.label) ?? 0));
  const shown = new Set([...asked, ...likeliest].slice(0, most));
  return [
    ...all.filter((one) => one.id !== UNSURE && shown.has(one)).map(choice),
    { label: 'Another…', run: doLine(walk, 'more') },
    ...all.filter(({ id }) => id === UNSURE).map(choice),
  ];
};
