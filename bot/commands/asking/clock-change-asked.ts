/** "When do the clocks go forward": the next change of the clocks where the asker usually stands, as the dark moves with it. */
import { timeZoneAt } from '../../places/index.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import { clockChanges, formatLocalDate, type ClockChange } from '../../times/index.js';
import { clock } from './following/shift-time.js';
import type { Known } from './sentence/asked.js';
import { SUMMER_TIME_RULE } from './summer-time-rule.js';

const CLOCKS = '(?:the |our |my |your )?clocks?';
const MOVE = '(?:go|goes|going|change|changes|changing|turn|turned|put|move|moved|spring|fall|alter|swap)';
const SUMMER = '(?:british |european )?(?:summer ?time|winter ?time|daylight savings?(?: time)?|dst|bst|cest|edt)';
const END = '(?: (?:this|next) (?:year|autumn|spring|weekend|month)| again| here| then| please| tonight| tomorrow)*';

/** Of the clocks on walls, and not the one in a controller. */
const ASKED = new RegExp(
  `^(?:(?:and|so|ok|hi|hey|please|tell me|do you know),? )*(?:` +
    `(?:when(?:'?s| is| are| do| does| will| did)?|what (?:day|date|time|weekend)(?: do| does| is| are| will)?|which (?:day|weekend|sunday)(?: do| does| are)?|how long (?:un)?till?(?: do)?|do|are|will) ${CLOCKS} (?:to )?${MOVE}(?: (?:an hour|by an hour))?(?: (?:forwards?|backwards?|back|ahead|on))?` +
    `|when (?:do|should|must) (?:i|we|you) (?:put|turn|change|move|set|alter) ${CLOCKS}(?: (?:forwards?|backwards?|back|ahead|on))?` +
    `|(?:(?:when(?:'?s| is)?|what(?:'?s| is)) (?:the )?)?(?:next )?clocks? change(?: (?:date|day|time))?` +
    `|${CLOCKS} (?:go )?(?:forwards?|back)(?: when)?` +
    `|when (?:does|will|do|is) ${SUMMER} (?:start|starts|begin|end|finish|over|stop|change)` +
    `)${END}$`,
  'u',
);

const MINUTES_PER_DAY = 1440;

/** "forward on Sun 28 Mar 2027, from 01:00 to 02:00". */
const told = ({ utcMs, byMinutes, fromMinutes }: ClockChange, zone: string): string =>
  `${byMinutes > 0 ? 'forward' : 'back'} on ${formatLocalDate(utcMs, zone)}, from ${clock(fromMinutes)} to ${clock((fromMinutes + byMinutes + MINUTES_PER_DAY) % MINUTES_PER_DAY)}`;

/** The one that is asked for first. */
const inOrder = (changes: readonly ClockChange[], plain: string): readonly ClockChange[] => {
  const isForward = /\b(?:forwards?|ahead|on|spring|start|starts|begin)\b/u.test(plain);
  const isBack = /\b(?:back|backwards?|fall|end|finish|over|stop)\b/u.test(plain);
  const [first, second] = changes;
  if (first === undefined || second === undefined || isForward === isBack) return changes.slice(0, 2);
  return first.byMinutes > 0 === isForward ? [first, second] : [second, first];
};

const summaryFor = (zone: string, plain: string, nowUtcMs: UtcMs): string => {
  const changes = inOrder(clockChanges(zone, nowUtcMs), plain);
  const [first, second] = changes;
  if (first === undefined) return 'The clocks of your usual place are not changed.';
  const next = second === undefined ? '' : `; ${told(second, zone)}`;
  const later = first.byMinutes > 0 ? 'later' : 'earlier';
  return `The clocks go ${told(first, zone)}${next}. By the first of these the dark comes an hour ${later} on the clock.`;
};

/** @param plain in lower case; null: it is not asked for */
export const clockChangeAsked = (plain: string, { usual, nowUtcMs }: Known): Outcome | null => {
  if (!ASKED.test(plain)) return null;
  return reply({
    title: 'The clocks',
    summary:
      usual == null ? SUMMER_TIME_RULE : summaryFor(timeZoneAt(usual.latitudeDeg, usual.longitudeDeg), plain, nowUtcMs),
    choices: [{ label: 'When is it dark tonight?', run: 'dark' }],
    pointsAt: NOWHERE,
  });
};
