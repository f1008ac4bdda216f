/** What to say of a reminder that is due, with its lateness said; or that it has lost its sense. Pure. */
import { MS_PER_DAY, MS_PER_MINUTE } from '../ground/durations.js';
import { duration } from '../reply/wording.js';
import type { UtcMs } from '../sky/types.js';
import type { Reminder } from '../store/store.js';
import { staleUtcMsOf, textOf } from './repeats.js';

/** Later than this is said; less is how often the clock is looked at. */
const PUNCTUAL_MS = 2 * MS_PER_MINUTE;
/** Whatever could not be said for this long is given up. */
export const GIVE_UP_AFTER_MS = MS_PER_DAY;

export type Saying = { readonly say: string; readonly isMissed: boolean } | { readonly say: null };

const missedText = (reminder: Reminder, latenessMs: number): string => {
  const more = reminder.repeat !== null && latenessMs > MS_PER_DAY ? ', and so did any since' : '';
  return (
    `A sunrise warning did not go out in time: it was due ${duration(latenessMs)} ago${more}. ` +
    'The Sun may be up. If a tube is still out, do not look through it or its finder; cap both from the side, then park. ' +
    `It would have said: ${textOf(reminder)}`
  );
};

/** What was true when it was due may be so no more: the sky has turned, and the Sun may have come up. */
const lateText = ({ kind }: Reminder, text: string, latenessMs: number): string =>
  kind === 'sunrise'
    ? `${text} (This comes ${duration(latenessMs)} late.)`
    : `${text} (This comes ${duration(latenessMs)} late and was true then: see where the Sun is now before you point.)`;

export const whatToSay = (reminder: Reminder, nowUtcMs: UtcMs): Saying => {
  const latenessMs = nowUtcMs - reminder.dueUtcMs;
  const staleUtcMs = staleUtcMsOf(reminder);
  if (staleUtcMs !== null && nowUtcMs > staleUtcMs) {
    return reminder.kind === 'sunrise' ? { say: missedText(reminder, latenessMs), isMissed: true } : { say: null };
  }
  const text = textOf(reminder);
  return {
    say: latenessMs <= PUNCTUAL_MS ? text : lateText(reminder, text, latenessMs),
    isMissed: false,
  };
};
