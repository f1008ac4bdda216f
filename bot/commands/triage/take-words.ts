/** Takes a member's words or a paste: as the answer to the step in hand where they are one, and for all else that they tell. */
import { isProblem } from '../../ground/problem.js';
import {
  answerMeant,
  isHedged,
  readText,
  remedyOutcome,
  saysCured,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import { answerStep, assess, tellText, UNSURE, type WalkState } from '../../triage/index.js';
import { ASKED_BACK, asksOfStep } from './asks-back.js';
import { readWords, type ReadWords } from './read-notes.js';
import { answersOf } from './step-data.js';
import { changed, type Began, type Turn } from './turn.js';

const CAME_BACK =
  /\b(?:again|(?:came|comes|coming|is|it['’]s|its|went) back|stopped|stops|not any ?more|no longer|same (?:trouble|thing|problem|fault)|fail(?:s|ed)|lost it|gone|dropp?(?:s|ed)|(?:does|is|did|has)(?: not|n['’]?t))\b/iu;

/** Said of what had just been cured. */
const cameBack = (text: string): boolean => CAME_BACK.test(text);

/** The answer to the step in hand that a member's words are, beside all else they tell; the nearest one where that is unsure. */
const answerInWords = ({ context, before }: Began, text: string, read: Reading): AnswerMeant | null => {
  const { step } = before;
  const { reading } = context.model;
  const labelled = answersOf(before);
  const sure = (id: string | null | undefined): AnswerMeant | null => {
    const found = labelled.find((one) => one.id === id);
    return found === undefined ? null : { ...found, score: 1, isSure: true };
  };
  if (read.by !== 'words') return null;
  if (step.kind === 'try') return sure(remedyOutcome(reading, text));
  if (step.kind === 'done' && cameBack(text) && remedyOutcome(reading, text) !== 'works')
    return { id: 'for-now', label: 'It stopped working again', score: 1, isSure: true };
  if (step.kind !== 'ask') return null;
  const told = read.facts.findLast(({ what }) => what === step.id);
  if (told !== undefined) return step.opening ? null : sure(told.answer);
  return answerMeant(reading, text, {
    id: step.id,
    answers: labelled.filter(({ id }) => id !== UNSURE),
    good: context.model.check(step.id)?.good,
    guards: context.model.check(step.id)?.safety,
  });
};

/** The words last said, where they were said to the question in hand, past the opening, and left it in hand. */
const lastSaidToIt = ({ context, walk, before }: Began): string | null => {
  const { events } = walk.state;
  const last = events.at(-1);
  const began = events.findIndex(({ by }) => by !== null);
  if (before.step.kind !== 'ask' || last?.kind !== 'text' || events.length - 1 <= began) return null;
  const then = assess(context.model, { ...walk.state, events: events.slice(0, -1) }, context.outcomes).step;
  return then.kind === 'ask' && then.id === before.step.id ? last.words : null;
};

const YES = /^(?:(?:oh|ah|ok|okay) )?(?:yes|yeah|yep|yup|right|correct|exactly|that one|i did)\b.{0,20}$/iu;

/** The answer that was asked back of the words before. */
const nearestBefore = (began: Began): AnswerMeant | null => {
  const said = lastSaidToIt(began);
  return said === null ? null : answerInWords(began, said, readText(began.context.model.reading, said));
};

/** "Yes" to "Did you mean …?": the answer that was nearest to the words before. */
const yesToNearest = (began: Began, text: string): string | undefined =>
  YES.test(text.trim()) ? nearestBefore(began)?.id : undefined;

const NO_GUESS = 'A guess is not enough here: a wrong one can do harm. Look once more; “Not sure” is an answer too.';

/** A guess at a look that keeps gear from harm. */
const isGuessAtSafety = ({ before: { step } }: Began, text: string): boolean =>
  step.kind === 'ask' && !step.opening && step.check.safety === true && isHedged(text);

const GO_ON = 'I keep that too, and go on without this one.';

const saidOf = (began: Began, text: string, read: Reading, meant: AnswerMeant | null, isLeft: boolean): ReadWords => {
  const said = readWords(began.context.model, began.walk, read, meant);
  if (!isLeft || meant !== null || !isGuessAtSafety(began, text)) return said;
  return { ...said, notes: [...(read.understood.length > 0 ? said.notes : []), NO_GUESS] };
};

/** Words to the same question twice, of which no answer was made, or none but the one asked back already. */
const isUnheardAgain = (began: Began, meant: AnswerMeant | null): boolean =>
  lastSaidToIt(began) !== null && (meant === null || meant.id === nearestBefore(began)?.id);

/** What the words leave to be said and shown, where they are no sure answer to the step in hand. */
const takeTold = (began: Began, text: string, state: WalkState, read: Reading, meant: AnswerMeant | null): Turn => {
  const { context, before } = began;
  const isAsked = before.step.kind === 'ask' || before.step.kind === 'try';
  const asks = meant === null && asksOfStep(context.model.reading, text, read);
  if (asks && isAsked) return changed(began, state, { ...ASKED_BACK, at: before.step, asksBack: true });
  const isLeft = assess(context.model, state, context.outcomes).step.id === before.step.id;
  // A nearest answer is of no use over another question.
  const said = saidOf(began, text, read, isLeft ? meant : null, isLeft);
  // Told twice in words that were not understood, a member is not asked a third time.
  const passed =
    isLeft && isUnheardAgain(began, meant)
      ? answerStep(context.model, state, before.step.id, UNSURE, context.by)
      : null;
  if (passed === null || isProblem(passed))
    return changed(began, state, { ...said, at: before.step, nearest: isLeft ? meant?.id : undefined });
  const notes = read.understood.length > 0 ? [...said.notes, GO_ON] : [GO_ON];
  return changed(began, passed, { notes, choices: said.choices });
};

/** "It talks now!" to a question after a remedy: that remedy's cure came late; what it was can be said at the end. */
const curedLate = ({ context, walk, before }: Began, text: string, read: Reading): WalkState | null => {
  if (before.step.kind !== 'ask' || before.step.opening || read.by !== 'words') return null;
  const tried = walk.state.events.findLast((event) => event.kind === 'try');
  if (tried === undefined || !saysCured(context.model.reading, text)) return null;
  const after = answerStep(context.model, walk.state, tried.fault, 'works', context.by);
  return isProblem(after) ? null : after;
};

export const takeWords = (began: Began, text: string, how?: 'log' | 'picture'): Turn => {
  const { context, walk, before } = began;
  const answered = (state: WalkState, id: string | undefined): WalkState | null => {
    const after = id === undefined ? null : answerStep(context.model, state, before.step.id, id, context.by);
    return after === null || isProblem(after) ? null : after;
  };
  const agreed = answered(walk.state, how === undefined ? yesToNearest(began, text) : undefined);
  if (agreed !== null) return changed(began, agreed);
  const { state, read } = tellText(context.model, walk.state, text, context.by, how);
  const meant = answerInWords(began, text, read);
  const late = meant?.isSure === true ? null : curedLate(began, text, read);
  if (late !== null) return changed(began, late);
  const sure = answered(state, meant?.isSure === true ? meant.id : undefined);
  return sure === null
    ? takeTold(began, text, state, read, meant)
    : changed(began, sure, readWords(context.model, walk, read, meant));
};
