/** A cure told with what was done for it: credited at once to that, whichever remedy or question stands. Nothing is asked back. */
import { isProblem } from '../../ground/problem.js';
import { curedByDeed, readText, type DeedTold } from '../../reading/index.js';
import { answerStep, tellText } from '../../triage/index.js';
import { HAS_CHANGED, isAnswer, remedyOf } from './asks-fixed.js';
import { creditedIn, takeCredited } from './credited.js';
import { saidBefore } from './said-before.js';
import { wrongNowLinked } from './told-at-card.js';
import { changed, isAsked, type Began, type SaidInTurn, type Turn } from './turn.js';

const HOW_FAR = 'how-far';
/** The mount had answered before: that it does so now is no cure. */
const LINKED_BEFORE: readonly string[] = ['drops', 'elsewhere', 'refuses', 'connects'];

const isLinkOnly = ({ walk }: Began, { isOfTheLink }: DeedTold): boolean =>
  isOfTheLink && LINKED_BEFORE.includes(saidBefore(walk.state.events).get(HOW_FAR) ?? '');

/** "With my friend's laptop it works" tells where the trouble lies. */
const isContrast = ({ context: { model } }: Began, text: string): boolean =>
  readText(model.reading, text).facts.some(({ what }) => model.check(what)?.contrast !== undefined);

/** @returns null where no deed is told with a cure, or what was done is not told well enough */
export const takeCuredInWords = (began: Began, { text, answer, file }: SaidInTurn): Turn | null => {
  if (text === undefined || answer !== undefined || file !== undefined || !isAsked(began)) return null;
  const told = curedByDeed(text);
  const expected = remedyOf(began);
  if (!told.isCured || told.deed === '' || isLinkOnly(began, told)) return null;
  const { context, walk, before } = began;
  const credited = creditedIn(began, text, expected);
  const isPlain = credited !== null && credited !== 'else' && 'fault' in credited;
  if (
    !isPlain &&
    (wrongNowLinked(began, text) !== null ||
      isContrast(began, text) ||
      (before.step.kind === 'ask' && isAnswer(began, text)))
  )
    return null;
  if (expected === undefined && !told.isDone && !(isPlain && HAS_CHANGED.test(text))) return null;
  const { state } = tellText(context.model, walk.state, text, context.by);
  if (credited !== null) return takeCredited(began, text, state, expected);
  if (expected === undefined) return null;
  const cured = answerStep(context.model, state, expected, 'works', context.by);
  return isProblem(cured) ? null : changed(began, cured);
};
