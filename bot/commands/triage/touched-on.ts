/** Words that answer nothing for sure, and are like an answer to another look: that look is next, and its answer one press away. */
import type { Reading } from '../../reading/index.js';
import { assess, touchingOn, wantsPlainWords, type WalkState } from '../../triage/index.js';
import { isSafetyLook } from './answer-in-words.js';
import { wasShown, type Began } from './turn.js';

/** Less like it than this, it may as well be anything. */
const LIKE_ENOUGH = 0.6;
/** So many minutes worse than the best look it may be: it is answered at once. */
const HARDLY_WORSE = 3;

/**
 * @param state the record with the words, which left the question in hand where it was
 * @returns the record with the look that the words touch on next; as it was where they touch on none that is worth it
 */
export const withTouchedOn = (began: Began, state: WalkState, read: Reading): WalkState => {
  const { context, before } = began;
  if (!wasShown(began) || isSafetyLook(before.step) || read.by !== 'words') return state;
  const like = read.perhaps.filter(({ sureness }) => sureness >= LIKE_ENOUGH);
  if (like.length === 0 || like.some(({ what }) => what === before.step.id)) return state;
  const { ranked, situation } = assess(context.model, state, context.outcomes);
  const [best] = ranked;
  const worth = ranked.find((choice) => {
    if (best === undefined || choice.kind !== 'ask' || choice.again) return false;
    const look = situation.checks[choice.check]?.entry;
    const isLike = look !== undefined && !wantsPlainWords(look) && like.some(({ what }) => what === look.id);
    return isLike && choice.minutes <= best.minutes + HARDLY_WORSE;
  });
  const look = worth?.kind === 'ask' ? situation.checks[worth.check]?.entry : undefined;
  return look === undefined ? state : touchingOn(state, look.id, context.by);
};
