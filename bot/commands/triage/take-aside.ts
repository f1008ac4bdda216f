/** Words to a step that are no answer to it: what is yet to be done, and what the member suspects. */
import {
  isStillToCome,
  outcomeSaid,
  suspectedCause,
  tellsFinding,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import { assess, type WalkState } from '../../triage/index.js';
import { heardIn } from './read-notes.js';
import { supposedNext, supposedStands } from './supposed.js';
import { changed, isAsked, wasShown, type Began, type Turn } from './turn.js';

const NO_HURRY = 'No hurry: try it when you can.';

/** It is yet to be done: the remedy stands. */
const takeNotYet = (began: Began, text: string, state: WalkState, { facts }: Reading): Turn | null => {
  const { context, before } = began;
  const isYet =
    facts.length === 0 && outcomeSaid(context.model.reading, text).what === 'not-yet' && !tellsFinding(text);
  return isYet && before.step.kind === 'try' ? changed(began, state, { notes: [NO_HURRY], at: before.step }) : null;
};

const ONCE_THERE = 'No hurry: try it once it is there. To look at other things till then, say “could not do it”.';
const MEANWHILE = 'Noted: that is still to come. Till then:';

/** What it wants is on its way: the remedy stands, and a question is not answered by it. */
const takeStillToCome = (began: Began, state: WalkState, { facts }: Reading): Turn | null => {
  const { step } = began.before;
  if (step.kind === 'try') return changed(began, state, { notes: [ONCE_THERE], at: step });
  return wasShown(began) && facts.length === 0
    ? changed(began, state, { notes: [MEANWHILE], at: step, few: true })
    : null;
};

const LOOKED_AT_SOON = 'What you suspect is kept, and looked at soon; this comes before it.';

/** "Could it be the wrong socket?" */
const takeSupposed = (began: Began, text: string, state: WalkState, read: Reading): Turn | null => {
  const { context, before } = began;
  const found = isAsked(began) || began.isOpening === true ? supposedNext(began, text, state, read) : null;
  if (found !== null) {
    const heard = began.isOpening === true ? heardIn(context.model, read) : [];
    if (found.note !== null)
      return changed(began, found.state, { notes: [...heard, found.note], at: before.step, few: wasShown(began) });
    const { step } = assess(context.model, found.state, context.outcomes);
    const isLooked = step.kind === 'ask' && !step.opening && step.because === 'supposed';
    return changed(began, found.state, {
      notes: isLooked ? heard : [...heard, LOOKED_AT_SOON],
      at: before.step,
      few: !isLooked && wasShown(began),
    });
  }
  const stands = isAsked(began) && read.facts.length === 0 ? supposedStands(began, text) : null;
  return stands === null ? null : changed(began, state, { notes: [stands], at: before.step, few: wasShown(began) });
};

/** What is yet to be done, or suspected: no answer to the step in hand. */
export const takeAside = (
  began: Began,
  text: string,
  state: WalkState,
  read: Reading,
  meant: AnswerMeant | null,
): Turn | null => {
  const coming = isStillToCome(text) ? takeStillToCome(began, state, read) : null;
  if (coming !== null) return coming;
  if (meant?.isSure === true) return null;
  if (meant !== null && suspectedCause(text) === null) return null;
  return (meant === null ? takeNotYet(began, text, state, read) : null) ?? takeSupposed(began, text, state, read);
};
