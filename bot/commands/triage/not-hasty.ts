/**
 * A cure that the words put down to the remedy in hand, though it may be none of it: told with a doubt, after "could not do it", or with
 * no word on what was done. It is asked back; who did nothing at all counts for no cause.
 */
import { curedByDeed, curedOfItself, curedUnexplained, hedgesCure, withoutOfItself } from '../../reading/index.js';
import { couldNotDo, mendedBy } from '../../triage/index.js';
import { remedyOf } from './asks-fixed.js';
import { askedWhich, creditedElse, saysAsShown } from './credited.js';
import { keptWords } from './kept-words.js';
import { changed, type Began, type Turn } from './turn.js';
import { answerLine } from './walk-words.js';

const FIXED = { kind: 'fixed' } as const;

/** The words that a yes to "Is it fixed?" agrees to, and the yes. */
const wordsBehind = ({ walk: { state } }: Began, text: string): string => {
  const last = state.asked?.kind === 'fixed' ? state.events.findLast(({ kind }) => kind === 'text') : undefined;
  return last?.kind === 'text' ? `${last.words}. ${text}` : text;
};

/** What was shown was done, as far as they tell. */
const tellsDeed = (words: string): boolean => curedByDeed(words).isDone || saysAsShown(words);

const isDoubtful = ({ walk: { state } }: Began, fault: string, words: string): boolean =>
  !tellsDeed(withoutOfItself(words)) && (couldNotDo(state, fault) || curedUnexplained(words));

/** @param turn what the words came to */
export const notHasty = (began: Began, text: string, turn: Turn): Turn => {
  const { context, walk, before } = began;
  const { asked } = walk.state;
  const fault = mendedBy(turn.walk.state);
  if (fault === null || asked?.kind === 'which-cured' || mendedBy(walk.state) !== null) return turn;
  const kept = keptWords(context.by, walk.state, text);
  if (asked?.kind !== 'fixed' && hedgesCure(text))
    return changed(began, kept, { at: before.step, ifFixed: answerLine(walk, fault, 'works'), asks: FIXED });
  if (fault !== remedyOf(began)) return turn;
  const words = wordsBehind(began, text);
  if (curedOfItself(words)) return creditedElse(began, kept, fault) ?? turn;
  return isDoubtful(began, fault, words) ? askedWhich(began, kept, [fault]) : turn;
};
