/** A cure told by the way, in whatever words: where they are not plain enough to end the walk, it is asked outright, and one press ends it. */
import { isProblem } from '../../ground/problem.js';
import { allWell, mayBeCured, readText, remedyOutcome, saysCured, soundsCured, yesOrNo } from '../../reading/index.js';
import { answerStep } from '../../triage/index.js';
import { answerInWords } from './take-words.js';
import { answersOf } from './step-data.js';
import { COMPLAINT } from './told-at-card.js';
import { keptWords } from './kept-words.js';
import { answerLine, doLine } from './walk-words.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';

/** The remedy in hand, or the one done last: what a cure is put down to. */
const remedyOf = ({ walk, before: { step } }: Began): string | undefined => {
  if (step.kind === 'try') return step.id;
  const tried = walk.state.events.findLast((event) => event.kind === 'try');
  return tried?.kind === 'try' ? tried.fault : undefined;
};

/** A right doing of the mount alone is asked about after a remedy only: to a question it is an answer. */
const sounds = ({ context, before: { step } }: Began, text: string): boolean =>
  soundsCured(text) ||
  saysCured(context.model.reading, text) ||
  (step.kind === 'try' && mayBeCured(context.model.reading, text));

/** "Yes, it works there": the question's own answer, and no cure. */
const isAnswer = (began: Began, text: string): boolean => {
  const meant = answerInWords(began, text, readText(began.context.model.reading, text));
  if (meant?.isSure !== true) return false;
  const good = began.context.model.check(began.before.step.id)?.good;
  // "All good" of the lines that were to be looked at.
  if (allWell(text, answersOf(began.before), good) !== null) return true;
  return /\b(?:works?|connects?|answers)\b/iu.test(meant.label);
};

/** @returns null where the words do not sound so, or are plain enough by themselves */
export const takeSoundsCured = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  const { step } = before;
  if (!isAsked(began) || !sounds(began, text)) return null;
  if (step.kind === 'try' && remedyOutcome(context.model.reading, text) !== null) return null;
  if (step.kind === 'ask' && isAnswer(began, text) && !(COMPLAINT.has(step.id) && soundsCured(text))) return null;
  const remedy = remedyOf(began);
  // Plainly cured after a remedy: that one's cure came late.
  if (step.kind === 'ask' && remedy !== undefined && saysCured(context.model.reading, text)) return null;
  return changed(began, keptWords(context.by, walk.state, text), {
    at: step,
    ifFixed: remedy === undefined ? doLine(walk, 'end') : answerLine(walk, remedy, 'works'),
  });
};

/** Said a moment ago, and answered by "Is it fixed?". */
const wasAsked = (began: Began): boolean => {
  const last = began.walk.state.events.at(-1);
  return last?.kind === 'text' && last.facts.length === 0 && sounds(began, last.words);
};

export const STILL_GOOD = 'Good to hear; the walk ends here. Clear skies.';

/** A yes or a no to "Is it fixed?"; `end`: it is, without a remedy of this walk. */
export const takeFixedReply = (began: Began, text: string): Turn | 'end' | null => {
  const { context, walk } = began;
  const reply = isAsked(began) ? yesOrNo(text) : null;
  if (reply === null || (reply.rest !== '' && reply.says === 'no') || !wasAsked(began)) return null;
  if (reply.says === 'no')
    return changed(began, keptWords(context.by, walk.state, text), { notes: ['Then on with it.'] });
  const remedy = remedyOf(began);
  if (remedy === undefined) return 'end';
  const state = answerStep(context.model, walk.state, remedy, 'works', context.by);
  return isProblem(state) ? null : changed(began, state);
};
