/** What every prompt of a walk offers beside its answers: the same ways out, in the same order, so that their numbers stay in mind. */
import type { Choice } from '../../ground/problem.js';
import { UNSURE, type TriageModel } from '../../triage/index.js';
import { takeBackChoices } from './read-notes.js';
import { NOT_SURE } from './step-data.js';
import { answerLine, back, doubt, hasBegun, why } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

/** What was said may be taken back once something was, and what was read doubted. */
export const waysOut = (model: TriageModel, walk: Walk): readonly Choice[] =>
  [
    why(walk),
    ...(hasBegun(walk) ? [back(walk)] : []),
    ...(takeBackChoices(model, walk).length > 0 ? [doubt(walk)] : []),
  ].map((choice) => ({ ...choice, beside: true }));

/** What came of a remedy cannot always be told at once. */
export const unclear = (walk: Walk, fault: string): Choice => ({
  label: NOT_SURE,
  run: answerLine(walk, fault, UNSURE),
});
