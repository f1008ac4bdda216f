/**
 * The answers of a step as choices: the likeliest of a long list, the rest behind one line. Asked again, the list stands as it stood,
 * under its numbers, whatever is likelier by now; what is asked back and was not in it comes behind it.
 */
import type { Choice } from '../../ground/problem.js';
import { UNSURE, whatEachAnswerSays, type Assessment } from '../../triage/index.js';
import { answersOf } from './step-data.js';
import { answerLine, doLine } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

/** So many answers fit a phone; with one more, a line for the rest would save nothing. */
const SHOWN_AT_FIRST = 7;
/** Stands in the record for the line that shows the rest; no answer's id is so. */
const MORE = '…';

export interface AnswersShown {
  /** Every answer of a long list. */
  readonly whole?: boolean | undefined;
  /** Answers that the member is asked back, likeliest first: "Did you mean …?" */
  readonly first?: readonly string[] | undefined;
}

/** The likeliest answers of a long list, in the list's order; all of it where it is short or was asked for. */
const likeliest = (assessment: Assessment, whole: boolean): readonly string[] => {
  const listed = answersOf(assessment);
  const proper = listed.filter(({ id }) => id !== UNSURE);
  if (whole || proper.length <= SHOWN_AT_FIRST + 1) return listed.map(({ id }) => id);
  const likely = new Map(whatEachAnswerSays(assessment).map(({ label, probability }) => [label, probability]));
  // Sorting keeps the list's order among equals.
  const best = [...proper].sort((a, b) => (likely.get(b.label) ?? 0) - (likely.get(a.label) ?? 0));
  const shown = new Set(best.slice(0, SHOWN_AT_FIRST));
  return [
    ...proper.filter((one) => shown.has(one)).map(({ id }) => id),
    MORE,
    ...listed.filter(({ id }) => id === UNSURE).map(({ id }) => id),
  ];
};

/** As the same step's list stood a moment ago; null where another stood, or some of it can no longer be. */
const asItStood = (
  { state: { shown } }: Walk,
  { step }: Assessment,
  ids: ReadonlySet<string>,
): readonly string[] | null =>
  shown?.step === step.id && shown.answers.every((id) => id === MORE || ids.has(id)) ? shown.answers : null;

/** The answers that a reply shows, in their order; kept with the walk, so that they stand so again. */
export const answersShown = (
  walk: Walk,
  assessment: Assessment,
  { whole = false, first = [] }: AnswersShown = {},
): readonly string[] => {
  const ids = new Set(answersOf(assessment).map(({ id }) => id));
  const list = (whole ? null : asItStood(walk, assessment, ids)) ?? likeliest(assessment, whole);
  return [...list, ...first.filter((id) => ids.has(id) && !list.includes(id))];
};

export const answerChoices = (walk: Walk, assessment: Assessment, shown: AnswersShown = {}): readonly Choice[] => {
  const listed = answersOf(assessment);
  return answersShown(walk, assessment, shown).flatMap((shownId): readonly Choice[] => {
    const found = listed.find(({ id }) => id === shownId);
    if (found !== undefined) return [{ label: found.label, run: answerLine(walk, assessment.step.id, found.id) }];
    return shownId === MORE ? [{ label: 'Another…', run: doLine(walk, 'more') }] : [];
  });
};
