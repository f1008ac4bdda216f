/** No question is put more than twice: after that it is left, and the walk goes on with what else bears on it. */
import { isProblem } from '../../ground/problem.js';
import { yesOrNo } from '../../reading/index.js';
import {
  answerStep,
  assess,
  NUMBERS,
  passStep,
  UNSURE,
  wantsPlainWords,
  type Step,
  type TriageModel,
  type WalkState,
} from '../../triage/index.js';
import { GO_ON } from './take-words.js';
import type { Turn, TurnContext } from './turn.js';

const MOST_TIMES = 2;
/** More questions in a row than this are not left at once. */
const MOST_LEFT = 3;

/** A question that may be left: no look that keeps gear from harm, and none of the opening, which the rest hangs on. */
const mayLeave = (model: TriageModel, step: Step): boolean => {
  if (step.kind === NUMBERS) return true;
  return step.kind === 'ask' && !step.opening && model.check(step.id) !== undefined && !wantsPlainWords(step.check);
};

/** Passed over twice it stays away. */
const left = ({ model, by }: TurnContext, state: WalkState, step: Step): WalkState | null => {
  if (step.kind === NUMBERS) {
    const none = answerStep(model, state, NUMBERS, UNSURE, by);
    return isProblem(none) ? null : none;
  }
  const once = passStep(model, state, step.id, by);
  const twice = isProblem(once) ? once : passStep(model, once, step.id, by);
  return isProblem(twice) ? null : twice;
};

const timesPut = ({ put = {} }: WalkState, step: Step): number => put[step.id] ?? 0;

const noted = (turn: Turn, step: Step, times: number): Turn => ({
  ...turn,
  walk: { ...turn.walk, state: { ...turn.walk.state, put: { ...turn.walk.state.put, [step.id]: times } } },
});

/** The question stands before the member in this reply, and not something asked beside it. */
const putsItsStep = ({ show, asksBack, isTold, ifFixed, whichCured }: Turn): boolean =>
  show === 'step' && asksBack === undefined && isTold !== true && ifFixed === undefined && whichCured === undefined;

/** A bare yes to what was said back: the question behind it is still to be answered. */
const isNodded = ({ walk: { state } }: Turn): boolean => {
  const last = state.events.at(-1);
  return last?.kind === 'text' && yesOrNo(last.words)?.rest === '';
};

/** Something was told that the walk did not know: whoever tells more is not answering the question in hand, and has not refused it. */
const tellsMore = ({ walk: { state } }: Turn, before: WalkState): boolean => {
  const last = state.events.at(-1);
  if (last?.kind !== 'text' || state.events.length <= before.events.length) return false;
  const known = before.events.flatMap((event) => (event.kind === 'text' ? event.facts : []));
  return last.facts.some(({ what, answer }) => !known.some((one) => one.what === what && one.answer === answer));
};

/** Put often enough, it stands all the same: more was told beside it, or what was said is asked back. */
const standsAllTheSame = (turn: Turn, before: WalkState): boolean =>
  (turn.first ?? []).length > 0 || tellsMore(turn, before);

/**
 * The turn with a question that was put twice left, and with what it puts counted.
 * @param before how much was said before this turn
 */
export const withoutThirdAsking = (context: TurnContext, turn: Turn, before: WalkState): Turn => {
  if (!putsItsStep(turn) || turn.walk.endedUtcMs !== null || isNodded(turn)) return turn;
  let now = turn;
  for (let i = 0; i <= MOST_LEFT; i++) {
    const { state } = now.walk;
    const { step } = assess(context.model, state, context.outcomes);
    if (!mayLeave(context.model, step)) return now;
    // Gone back to it, it is wanted.
    if (state.events.length < before.events.length) return noted(now, step, 1);
    if (state.events.length === before.events.length) return now;
    const times = timesPut(state, step);
    if (times >= MOST_TIMES && standsAllTheSame(now, before)) return now;
    const gone = times >= MOST_TIMES && i < MOST_LEFT ? left(context, state, step) : null;
    if (gone === null) return noted(now, step, times + 1);
    const isInHand = now.at?.id === step.id;
    const { first: _, few: __, offers: ___, ...rest } = now;
    now = { ...rest, walk: { ...now.walk, state: gone }, notes: isInHand ? [...now.notes, GO_ON] : now.notes };
  }
  return now;
};
