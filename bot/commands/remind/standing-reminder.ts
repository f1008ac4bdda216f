/** `remind when:sunrise nights:…`: the warning that comes back on every observing night. */
import { isProblem, problem } from '../../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { isoUtc } from '../../reply/wording.js';
import { nextStandingWarning, standingText, type StandingWarning } from '../../reminders/standing-warning.js';
import { formatLocalDateTime } from '../../times/index.js';
import type { Request, Deps } from '../core/command.js';
import { commandLine } from '../asking/question-parts.js';
import type { RemindOptions } from './remind-options.js';
import { eveningsWords, readEvenings } from './remind-words.js';
import { addressOf, type To } from './reminder-address.js';
import { siteFor } from '../asking/resolve-site.js';

export const setStandingWarning = async (
  deps: Deps,
  request: Request<RemindOptions>,
  to: To,
  minutesBefore: number,
): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  if (given.when !== 'sunrise')
    return problem(
      'bad-option',
      'nights: goes with when:sunrise, the warning that comes back, or with an hour: remind when:sunrise nights:every to:channel',
    );
  const evenings = readEvenings(given.nights ?? '');
  if (isProblem(evenings)) return evenings;
  const where = await siteFor(deps, request, given.site, { shownTo: to === 'channel' ? 'everyone' : 'asker' });
  if (isProblem(where)) return where;
  if (to === 'channel') {
    const [there] = (await deps.store.reminders.listChannel(asker.platform, asker.channelId)).filter(
      ({ kind, repeat }) => kind === 'sunrise' && repeat !== null,
    );
    if (there !== undefined) {
      return problem(
        'already',
        `This channel has a standing sunrise warning already (${there.id}). Cancel it first to change it.`,
        [{ label: 'Cancel it', run: commandLine('remind', 'cancel', { id: there.id }) }],
      );
    }
  }
  const { observer, zone, name } = where.site;
  const standing: StandingWarning = {
    every: 'sunrise',
    evenings: [...evenings],
    minutesBefore,
    siteName: name,
    zone,
    ...observer,
  };
  const next = nextStandingWarning(standing, nowUtcMs);
  if (next === null) return problem('no-such-moment', `The Sun does not rise at ${name} within a year.`);
  const kept = await deps.store.reminders.add({
    ...addressOf(asker, to),
    kind: 'sunrise',
    dueUtcMs: next.dueUtcMs,
    staleUtcMs: null,
    repeat: { ...standing },
    text: standingText(standing, next.dueUtcMs),
  });
  return reply({
    title: 'Standing sunrise warning set',
    level: 'good',
    summary: `${minutesBefore} min before sunrise at ${name}, ${eveningsWords(evenings)}, ${to === 'channel' ? 'in this channel' : 'to you'}; next on ${formatLocalDateTime(next.dueUtcMs, zone)}.`,
    facts: [
      { label: 'Id', value: kept.id },
      { label: 'It will say', value: kept.text },
    ],
    notes: ['If I cannot say it in time, I say that I missed it.'],
    choices: [{ label: 'Cancel it', run: commandLine('remind', 'cancel', { id: kept.id }) }],
    pointsAt: NOWHERE,
    data: {
      id: kept.id,
      kind: kept.kind,
      dueUtc: isoUtc(kept.dueUtcMs),
      momentUtc: isoUtc(next.sunriseUtcMs),
      to,
      text: kept.text,
      repeats: true,
    },
  });
};
