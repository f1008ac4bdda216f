/** No walk ends on a guess: a cure that a reader took from words which do not say it by themselves is asked, whichever reader it was. */
import { cureGrade, curedOfItself, curedUnexplained, readText, yesOrNo, type ReadFact } from '../../reading/index.js';
import { tellText, type Step, type WalkState } from '../../triage/index.js';
import { askedOnce, remedyOf } from './asks-fixed.js';
import { readWords } from './read-notes.js';
import { COMPLAINT, isSureCure } from './told-at-card.js';
import { changed, type Began, type Turn } from './turn.js';

const curesIn = ({ events }: WalkState): number =>
  events.filter((event) => event.kind === 'try' && event.outcome === 'works').length;

const takesCure = ({ walk: { state } }: Began, turn: Turn): boolean =>
  turn.isCuredElse === true || turn.whichCured !== undefined || curesIn(turn.walk.state) > curesIn(state);

/** What was asked outright is answered, or a mended walk is at its end. */
const wasAsked = ({ walk, before: { step } }: Began, text: string): boolean => {
  const { asked } = walk.state;
  if (step.kind === 'done' || asked?.kind === 'which-cured') return true;
  return asked?.kind === 'fixed' && yesOrNo(text)?.says === 'yes';
};

/** What the remedy should have set right, or how it does now, waits for the answer. */
const waits = (step: Step, { what }: ReadFact): boolean =>
  COMPLAINT.has(what) || (step.kind === 'try' && step.fault.verify.check === what);

/** The words, with all that they tell of other things. */
const withWords = ({ context, walk, before }: Began, text: string): WalkState => {
  const { state } = tellText(context.model, walk.state, text, context.by);
  const last = state.events.at(-1);
  if (last?.kind !== 'text') return state;
  const facts = last.facts.filter((fact) => !waits(before.step, fact));
  return { ...state, events: [...state.events.slice(0, -1), { ...last, facts, guesses: [] }] };
};

/** What it was is asked then, or counted for no cause. */
const isByNobody = (text: string): boolean =>
  cureGrade(text).grade !== 'none' && (curedOfItself(text) || curedUnexplained(text));

/** The turn as it was taken, or one that asks; asked before, one that keeps what else the words tell. */
export const onlySureCures = (began: Began, text: string, turn: Turn): Turn => {
  if (!takesCure(began, turn) || wasAsked(began, text) || isSureCure(began, text) || isByNobody(text)) return turn;
  const at = began.before.step;
  const told = changed(began, withWords(began, text), { at });
  const { model } = began.context;
  return (
    askedOnce(began, text, told, remedyOf(began)) ?? {
      ...told,
      notes: readWords(model, readText(model.reading, text), null),
      few: true,
    }
  );
};
