/** "Make it half 6", "an hour earlier", "make it tomorrow": the reminder that was spoken of a moment ago, at another time. */
import { plainLine } from '../../ground/fold-text.js';
import type { UtcMs } from '../../sky/types.js';
import type { Command, WordsReader } from '../core/command.js';
import { timesChanged } from '../asking/following/hour-changed.js';
import { lastAsked } from '../asking/following/last-asked.js';
import { lineOf, timesOf, toldLine, withTimes, type ToldLine } from '../asking/following/told-line.js';

const LONGEST = 80;
/** Of a reminder nothing else is changed. */
const HOUR_ALONE =
  /^(?:at|for|on) |^(?:an?|half an|one|two|\d{1,2}) (?:hours?|hrs?|minutes?|mins?) (?:later|earlier)\b/u;
const MINUTES_BEFORE =
  /^(?:(?:make|change|set) (?:it|that)(?: to)? )?(?<minutes>\d{1,3}) ?min(?:ute)?s? (?:before|earlier|ahead|in advance)(?: (?:that|it))?(?: please| instead)*$/u;

const leadChanged = (before: ToldLine, plain: string): ToldLine | null => {
  const minutes = MINUTES_BEFORE.exec(plain)?.groups?.['minutes'];
  // Of an hour so many minutes are taken off; of a rising or the like it is said so long before.
  return minutes === undefined || before.values['at'] !== undefined
    ? null
    : { ...before, values: { ...before.values, before: minutes } };
};

/** What it waited for gives way to an hour. */
const withoutEvent = (before: ToldLine): ToldLine => {
  const { when: _when, above: _above, before: _before, ...values } = before.values;
  return { ...before, values };
};

/** @returns null: the words change no reminder */
export const reminderChanged = (
  line: string,
  text: string,
  commands: readonly Command[],
  nowUtcMs: UtcMs,
): string | null => {
  const before = toldLine(line, commands);
  if (before === null) return null;
  const plain = plainLine(text);
  if (plain.length > LONGEST) return null;
  const led = leadChanged(before, plain);
  if (led !== null) return lineOf(led);
  const then = timesOf(before, nowUtcMs);
  const times = timesChanged(HOUR_ALONE.test(plain) ? `make it ${plain}` : plain, then, nowUtcMs);
  if (times === null) return null;
  const changed = withTimes(times.hour === null ? before : withoutEvent(before), times, nowUtcMs);
  return changed === null ? null : lineOf(changed);
};

export const changedReminder: WordsReader = {
  name: 'a reminder at another time',
  read: (deps, { text, asker, nowUtcMs }) => {
    const last = lastAsked(deps.store, asker, nowUtcMs, 'reminder');
    const line = last === null ? null : reminderChanged(last, text, deps.commands, nowUtcMs);
    return Promise.resolve(line === null ? null : { line });
  },
};
