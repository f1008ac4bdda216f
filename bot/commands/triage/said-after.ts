/** What words at a remedy leave in the record once its outcome is taken: what else they told is so after it. */
import { isProblem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { outcomeSaid, type Reading, type SaidOutcome } from '../../reading/index.js';
import { answerStep, passStep, tellText, type WalkState } from '../../triage/index.js';
import { keptWords } from './kept-words.js';
import { COMPLAINT, isDenied, isNotThere, wrongNowLinked } from './told-at-card.js';
import type { Began } from './turn.js';

/** What is gone of a trouble half gone: "slew drop gone, but idle drop still there". */
const GONE = /\b(?:gone|cured|fixed|solved|sorted|over|no more|went away|not any ?more|history)\b/iu;

/** Without what was read of the half that is gone; the complaint itself stands. */
const withoutGone = (state: WalkState, text: string, { what, remains }: SaidOutcome): WalkState => {
  const last = state.events.at(-1);
  if (what !== 'partly' || remains === null || last?.kind !== 'text') return state;
  const gone = text.slice(0, text.lastIndexOf(remains.slice(0, 20)));
  if (!GONE.test(gone)) return state;
  const facts = last.facts.filter(
    (fact) => COMPLAINT.has(fact.what) || !gone.includes(fact.quote) || remains.includes(fact.quote),
  );
  return { ...state, events: [...state.events.slice(0, -1), { ...last, facts }] };
};

/** Whoever denies what a remedy is for is not asked whether it stands as it should: where it is not there, it does. */
const withoutVerifying = (began: Began, text: string, state: WalkState): WalkState => {
  const { context, before } = began;
  const { model, by } = context;
  const { check: id, answer } = before.step.kind === 'try' ? before.step.fault.verify : {};
  const check = id === undefined ? undefined : model.check(id);
  if (check === undefined || COMPLAINT.has(check.id) || check.scope === 'chain') return state;
  const isSound = isNotThere(began, text) && answer !== undefined && check.good === answer;
  const next = isSound ? answerStep(model, state, check.id, answer, by) : passStep(model, state, check.id, by);
  return isProblem(next) ? state : next;
};

const HOW_FAR = 'how-far';

/** Told in one breath with the link that stands now: how far it gets, where nothing else of it was read. */
const withHowFar = (began: Began, text: string, state: WalkState, { facts }: Reading): WalkState => {
  const shows = wrongNowLinked(began, text)?.shows ?? null;
  const isTold = facts.some(({ what, answer }) => COMPLAINT.has(what) && answer !== 'connects');
  if (shows === null || isTold) return state;
  const { model, by } = began.context;
  const told = answerStep(model, state, HOW_FAR, shows, by);
  return isProblem(told) ? state : told;
};

/** A remedy's outcome with what else was told: that is so after it, and stands behind it in the record. */
export const saidAfter = (began: Began, text: string, outcome: string | undefined): WalkState | null => {
  const { context, walk, before } = began;
  const { step } = before;
  if (step.kind !== 'try' || outcome === undefined || outcome === 'works') return null;
  const done = answerStep(context.model, walk.state, step.id, outcome, context.by);
  if (isProblem(done)) return null;
  // "There is none" tells of this alone.
  if (isNotThere(began, text)) return withoutVerifying(began, text, keptWords(context.by, done, text));
  const told = tellText(context.model, done, text, context.by);
  const { read } = told;
  const after = withoutGone(told.state, text, outcomeSaid(context.model.reading, text));
  const state = isDenied(began, text) ? withoutVerifying(began, text, after) : withHowFar(began, text, after, read);
  const { check, answer } = step.fault.verify;
  // What the remedy should have set right, looked at and found right.
  const isSeen = check !== undefined && read.facts.some((fact) => fact.what === check && fact.answer === answer);
  if (outcome !== 'same' || !isSeen || COMPLAINT.has(check)) return state;
  const seen = answerStep(context.model, done, check, answer ?? '', context.by);
  return isProblem(seen) ? state : tellText(context.model, seen, text, context.by).state;
};

const LONGEST_LEFT = 80;

/** Half of the trouble is gone: what is heard of the rest. */
export const leftToMend = (began: Began, text: string): readonly string[] => {
  const { context, before } = began;
  const said = outcomeSaid(context.model.reading, text);
  const remains = wrongNowLinked(began, text)?.rest ?? (said.what === 'partly' ? said.remains : null);
  if (before.step.kind !== 'try' || remains === null) return [];
  return [`That helped in part; on to what is left: “${tidy(remains, LONGEST_LEFT)}”.`];
};
