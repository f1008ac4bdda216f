/** `remind at:… nights:…`: an hour of some days of the week, again and again. */
import { isProblem, problem } from '../../ground/problem.js';
import { nextWeekly, type Weekly } from '../../reminders/weekly.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { capital, isoUtc } from '../../reply/wording.js';
import { formatClock, formatLocalDateTime } from '../../times/index.js';
import type { Request, Deps } from '../core/command.js';
import { commandLine, timeFor } from '../asking/question-parts.js';
import { siteFor } from '../asking/resolve-site.js';
import type { RemindOptions } from './remind-options.js';
import { daysWords, ownWords, readEvenings } from './remind-words.js';
import { sendsToSun, sunAt } from './of-sun.js';
import { withSunSaid } from './with-sun-said.js';
import { addressOf, type To } from './reminder-address.js';

export const setWeekly = async (deps: Deps, request: Request<RemindOptions>, to: To): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  if (given.target !== undefined)
    return problem(
      'bad-option',
      'What comes again is an hour, without a target: where that stands changes by four minutes a day. Such as remind at:19:30 nights:fri say:"look for Jupiter"',
    );
  const days = readEvenings(given.nights ?? '');
  if (isProblem(days)) return days;
  const where = await siteFor(deps, request, given.site, { shownTo: to === 'channel' ? 'everyone' : 'asker' });
  if (isProblem(where)) return where;
  const { zone } = where.site;
  const time = timeFor(given.at, zone, nowUtcMs);
  if (isProblem(time)) return time;
  const [hour = 0, minute = 0] = formatClock(time.utcMs, zone).split(':').map(Number);
  const weekly: Weekly = { every: 'week', days: [...days], hour, minute, zone };
  const when = `${daysWords(days)} at ${formatClock(time.utcMs, zone)}`;
  const begun = ownWords(given.say ?? `It is ${formatClock(time.utcMs, zone)}, as you asked`);
  const dueUtcMs = nextWeekly(weekly, nowUtcMs);
  const pointsAt = sendsToSun(given.say) ? [sunAt(where, dueUtcMs)] : NOWHERE;
  const kept = await deps.store.reminders.add({
    ...addressOf(asker, to),
    kind: 'hour',
    dueUtcMs,
    staleUtcMs: null,
    repeat: { ...weekly },
    text: withSunSaid(begun, pointsAt, deps.sunLimits),
  });
  return reply({
    title: 'Reminder set, again and again',
    level: 'good',
    summary: `${capital(when)}, ${to === 'channel' ? 'in this channel' : 'to you'}: ${begun} Next on ${formatLocalDateTime(kept.dueUtcMs, zone)}.`,
    facts: [
      { label: 'Id', value: kept.id },
      { label: 'Site', value: where.saidAs },
    ],
    choices: [{ label: 'Cancel it', run: commandLine('remind', 'cancel', { id: kept.id }) }],
    pointsAt,
    data: {
      id: kept.id,
      kind: kept.kind,
      dueUtc: isoUtc(kept.dueUtcMs),
      momentUtc: isoUtc(kept.dueUtcMs),
      to,
      text: kept.text,
      repeats: true,
    },
  });
};
