/** Words to "What was it?", asked of a cure that nobody put down to a cause yet; and the asking of it once more. */
import {
  leavesWalk,
  outcomeSaid,
  saysBrokenAgain,
  saysSomethingElse,
  yesOrNo,
  type SaidOutcome,
} from '../../reading/index.js';
import { remediesTold, UNSURE, type RemedyTold, type WalkEvent, type WalkState } from '../../triage/index.js';
import { creditedElse, curedBy, isOwn, isToldPlainly } from './credited.js';
import { keptWords } from './kept-words.js';
import type { Began, Turn } from './turn.js';
import type { Walk } from './walk-keeper.js';

/** Asked which, so far ahead of the others names one. */
const NAMES_BY = 0.3;
const LEAST_TOLD = 1;

const OF_NO_CURE: readonly SaidOutcome['what'][] = [
  'unchanged',
  'worse',
  'partly',
  'could-not',
  'not-yet',
  'asks-back',
];

/** Not a question, and no trouble told. */
const isOfTheCure = ({ context: { model } }: Began, text: string): boolean =>
  leavesWalk(model.reading, text) === null &&
  !text.includes('?') &&
  !OF_NO_CURE.includes(outcomeSaid(model.reading, text).what) &&
  !saysBrokenAgain(text);

/** What was taken for the cure was none, though it is cured: what it was is asked, in one short question. */
export const askedWhatElse = (walk: Walk): Turn => {
  const events = walk.state.events.map((event): WalkEvent =>
    event.kind === 'try' && event.outcome === 'works' ? { ...event, outcome: UNSURE } : event,
  );
  return {
    walk: { ...walk, state: { ...walk.state, events } },
    notes: [],
    show: 'step',
    whichCured: [],
    asks: { kind: 'which-cured', faults: [] },
  };
};

/** "3 it was the fuse". */
const PICKED = /^\W*(?<number>\d)\b[\s.,:;)-]*(?=\S*\p{L}{2})/iu;

type Which = Extract<NonNullable<WalkState['asked']>, { kind: 'which-cured' }>;

/** The one that they tell best, where they tell it plainly. */
const plainlyNamed = ([best]: readonly RemedyTold[]): string | null =>
  best !== undefined && isToldPlainly(best) ? best.fault.id : null;

/** A number with words: the words go before it where they name another cause plainly, and "something else" is none of those listed. */
const pickedOf = (told: readonly RemedyTold[], { faults }: Which, number: string): string | null => {
  const named = plainlyNamed(told);
  const listed = faults[Number(number) - 1] ?? null;
  return listed === null && named !== null && faults.includes(named) ? null : (named ?? listed);
};

/** The one of those listed that the words name, or another that they name plainly. */
const namedOf = (told: readonly RemedyTold[], { faults }: Which): string | null => {
  const [best] = told;
  const [first, next] = told.filter(({ fault }) => faults.includes(fault.id));
  const isNamed =
    first !== undefined &&
    first.told >= LEAST_TOLD &&
    first.told - (next?.told ?? 0) >= NAMES_BY &&
    isOwn(first, best ?? first);
  return isNamed ? first.fault.id : plainlyNamed(told);
};

/** "Yes" to one that is offered alone. */
const agreedTo = ({ faults: [only, second] }: Which, text: string): string | null => {
  const reply = second === undefined ? yesOrNo(text) : null;
  return reply?.says === 'yes' && reply.rest === '' ? (only ?? null) : null;
};

/** Words to "What was it?": what they name, or else nothing that is listed. */
export const takeWhich = (began: Began, text: string): Turn | null => {
  const { context, walk } = began;
  const { asked } = walk.state;
  if (asked?.kind !== 'which-cured' || !isOfTheCure(began, text)) return null;
  const state = keptWords(context.by, walk.state, text);
  const number = PICKED.exec(text)?.groups?.['number'];
  const words = number === undefined ? text : text.replace(PICKED, '');
  const told = saysSomethingElse(words) ? [] : remediesTold(context.model, began.before, words);
  const fault = agreedTo(asked, text) ?? (number === undefined ? namedOf(told, asked) : pickedOf(told, asked, number));
  return fault === null ? creditedElse(began, state, asked.faults.at(-1)) : curedBy(began, state, fault);
};
