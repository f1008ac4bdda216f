/** The answers of a step as choices: the six likeliest of a long list first, the rest behind one line. */
import type { Choice } from '../../ground/problem.js';
import { UNSURE, whatEachAnswerSays, type Assessment } from '../../triage/index.js';
import { answersOf } from './step-data.js';
import { answerLine, doLine } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

/** So many answers fit a phone; with one more, a line for the rest would save nothing. */
const SHOWN_AT_FIRST = 6;

/** The likeliest answers of a long list, in the list's order; all of it where it is short or was asked for. */
export const answerChoices = (walk: Walk, assessment: Assessment, whole = false): readonly Choice[] => {
  const all = answersOf(assessment);
  const choice = ({ id, label }: (typeof all)[number]): Choice => ({
    label,
    run: answerLine(walk, assessment.step.id, id),
  });
  const proper = all.filter(({ id }) => id !== UNSURE);
  if (whole || proper.length <= SHOWN_AT_FIRST + 1) return all.map(choice);
  const likely = whatEachAnswerSays(assessment).map(({ probability }) => probability);
  const shown = new Set(
    [...proper.keys()].sort((a, b) => (likely[b] ?? 0) - (likely[a] ?? 0) || a - b).slice(0, SHOWN_AT_FIRST),
  );
  return [
    ...proper.filter((_, i) => shown.has(i)).map(choice),
    { label: 'Another…', run: doLine(walk, 'more') },
    ...all.filter(({ id }) => id === UNSURE).map(choice),
  ];
};
