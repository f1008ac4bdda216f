/** `remind list` and `remind cancel`: a member's own reminders, and, for those who may, the channel's. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem } from '../../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { isoUtc } from '../../reply/wording.js';
import type { Reminder } from '../../store/store.js';
import { formatLocalDateTime } from '../../times/index.js';
import type { Asker, Completion, Request, Deps } from '../core/command.js';
import { siteFor } from '../asking/resolve-site.js';

const own = async (deps: Deps, asker: Asker): Promise<readonly Reminder[]> => deps.store.reminders.list(asker.memberId);

/** What others set for this channel; shown to those who may cancel it. */
const ofChannel = async (deps: Deps, asker: Asker, ownList: readonly Reminder[]): Promise<readonly Reminder[]> => {
  if (!asker.isManager || asker.isPrivate) return [];
  return (await deps.store.reminders.listChannel(asker.platform, asker.channelId)).filter(
    ({ id }) => !ownList.some((each) => each.id === id),
  );
};

const line = ({ to, text, repeat }: Reminder): string =>
  `${to === 'channel' ? 'In a channel' : 'To you'}${repeat === null ? '' : ', again and again'}: ${text}`;

export const listReminders = async (deps: Deps, request: Request<unknown>): Promise<Outcome> => {
  const { asker } = request;
  const mine = await own(deps, asker);
  const others = await ofChannel(deps, asker, mine);
  const all = [...mine, ...others];
  const where = await siteFor(deps, request, undefined);
  const zone = isProblem(where) ? 'UTC' : where.site.zone;
  return reply({
    title: 'Reminders',
    summary:
      all.length === 0
        ? 'None is waiting. Set one: remind NGC 7331 above:30'
        : `${all.length === 1 ? '1 is' : `${all.length} are`} waiting${others.length === 0 ? '' : `, ${others.length} of them this channel's`}.`,
    facts: all.map((each) => ({
      label: `${formatLocalDateTime(each.dueUtcMs, zone)} · ${each.id}`,
      value: line(each),
    })),
    choices: all
      .slice(0, 25)
      .map(({ id, text }) => ({ label: tidy(`Cancel ${id}: ${text}`, 60), run: `remind cancel id:${id}` })),
    pointsAt: NOWHERE,
    data: {
      reminders: all.map(({ id, kind, to, dueUtcMs, text, repeat }) => ({
        id,
        kind,
        to,
        dueUtc: isoUtc(dueUtcMs),
        text,
        repeats: repeat !== null,
      })),
    },
  });
};

export const cancelReminder = async (
  deps: Deps,
  { asker }: Request<unknown>,
  given: string | undefined,
): Promise<Outcome> => {
  if (given === undefined)
    return problem('missing-option', 'Which one? Give its id from remind list, such as remind cancel id:k7m2xqp');
  const id = given.trim().toLowerCase();
  const isGone =
    (await deps.store.reminders.cancel(asker.memberId, id)) ||
    (asker.isManager && (await deps.store.reminders.cancelChannel(asker.platform, asker.channelId, id)));
  if (!isGone)
    return problem(
      'unknown-reminder',
      `There is no reminder "${tidy(id, 20)}" that you can cancel here. See remind list.`,
    );
  return reply({
    title: 'Reminder cancelled',
    level: 'good',
    summary: `${id} will not be said.`,
    audience: 'asker',
    pointsAt: NOWHERE,
    data: { cancelled: id },
  });
};

export const completeReminders = async (
  deps: Deps,
  _option: string,
  partial: string,
  asker: Asker,
): Promise<readonly Completion[]> => {
  const mine = await own(deps, asker);
  return [...mine, ...(await ofChannel(deps, asker, mine))]
    .filter(({ id, text }) => `${id} ${text}`.toLowerCase().includes(partial.toLowerCase()))
    .map(({ id, text }) => ({ label: tidy(`${id}: ${text}`, 100), value: id }));
};
