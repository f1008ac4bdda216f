/** "No laptop, handset only", to a question that only one with a computer can answer: it is asked no more, and nothing of a computer is. */
import { isProblem } from '../../ground/problem.js';
import { CLIENTS, saysNoComputer, saysNoComputerOutright } from '../../reading/index.js';
import { answerStep, NO_COMPUTER, tellText, type Step } from '../../triage/index.js';
import { readWords } from './read-notes.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';

/** Told of by what there is beside the computer in hand. */
const OF_OTHERS: ReadonlySet<string> = new Set(['works-with-handset', 'other-computer', 'two-systems']);

/** Without a computer it is not asked. */
const asksOfComputer = (step: Step): boolean =>
  step.kind === 'ask' && (step.opening || step.check.only?.clients?.length === CLIENTS.length);

/** Where no computer was told of yet. */
const isSaidOutright = ({ before: { context } }: Began, text: string): boolean =>
  context.path === null && context.system === null && saysNoComputerOutright(text);

const TAKEN = 'I take it: no computer, the hand controller alone.';

/** @returns null where the step asks of no computer, or the words do not say that there is none */
export const takeNoComputer = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  if (!isAsked(began) || OF_OTHERS.has(before.step.id)) return null;
  if (asksOfComputer(before.step) ? !saysNoComputer(text) : !isSaidOutright(began, text)) return null;
  const { state, read } = tellText(context.model, walk.state, text, context.by);
  const alone = answerStep(context.model, state, 'path', NO_COMPUTER, context.by);
  if (isProblem(alone)) return null;
  const understood = read.understood.filter(({ fact }) => fact.what !== 'client');
  const heard = understood.length === 0 ? [] : readWords(context.model, { ...read, understood });
  return changed(began, alone, { notes: [TAKEN, ...heard], at: before.step });
};
