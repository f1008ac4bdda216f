/** `remind list` and `remind cancel`: a member's own reminders, and, for those who may, the channel's. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Choice, type Problem } from '../../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { isoUtc } from '../../reply/wording.js';
import type { Reminder } from '../../store/store.js';
import type { UtcMs } from '../../sky/types.js';
import {
  formatClock,
  formatDate,
  formatLocalDateTime,
  localDateAt,
  namesHour,
  parseDate,
  parseTime,
  weekdayOf,
} from '../../times/index.js';
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

const zoneFor = async (deps: Deps, request: Request<unknown>): Promise<string> => {
  const where = await siteFor(deps, request, undefined);
  return isProblem(where) ? 'UTC' : where.site.zone;
};

export const listReminders = async (deps: Deps, request: Request<unknown>): Promise<Outcome> => {
  const { asker } = request;
  const mine = await own(deps, asker);
  const others = await ofChannel(deps, asker, mine);
  const all = [...mine, ...others];
  const zone = await zoneFor(deps, request);
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
    choices: cancelChoices(all),
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

interface Clocks {
  readonly zone: string;
  readonly nowUtcMs: UtcMs;
}

/** "tuesday", "tomorrow", "8pm": of that day of the week, that date, that hour. */
const dueThen = (all: readonly Reminder[], words: string, { zone, nowUtcMs }: Clocks): readonly Reminder[] => {
  const when = words.replace(/^(?:on|for|at) /u, '');
  const dayOf = ({ dueUtcMs }: Reminder) => localDateAt(dueUtcMs, zone);
  if (namesHour(when, nowUtcMs)) {
    const time = parseTime(when, zone, nowUtcMs);
    return isProblem(time)
      ? []
      : all.filter(({ dueUtcMs }) => formatClock(dueUtcMs, zone) === formatClock(time.utcMs, zone));
  }
  const day = parseDate(when, zone, nowUtcMs);
  if (isProblem(day)) return [];
  const isOfWeek = /day$|^(?:mon|tue|wed|thu|fri|sat|sun)/u.test(when) && !/\d|^(?:today|yesterday)$/u.test(when);
  return all.filter((each) =>
    isOfWeek ? weekdayOf(dayOf(each)) === weekdayOf(day.date) : formatDate(dayOf(each)) === formatDate(day.date),
  );
};

/** Those meant: by the id, by the place in the list, by when they come, or by what they are about. */
const meantBy = (all: readonly Reminder[], words: string, clocks: Clocks): readonly Reminder[] => {
  const byId = all.filter(({ id }) => id === words);
  if (byId.length > 0) return byId;
  const last = words === 'last' ? all.at(-1) : undefined;
  const nth = /^\d{1,2}$/u.test(words) ? all[Number(words) - 1] : last;
  if (nth !== undefined) return [nth];
  if (words.length < LEAST_LETTERS) return [];
  const spaced = words.replace(/^(\p{L}+)(\d+)$/u, '$1 $2');
  const about = all.filter(({ text }) => [words, spaced].some((name) => text.toLowerCase().includes(name)));
  return about.length > 0 ? about : dueThen(all, words, clocks);
};
const LEAST_LETTERS = 2;

const cancelChoices = (reminders: readonly Reminder[]): readonly Choice[] =>
  reminders
    .slice(0, 25)
    .map(({ id, text }) => ({ label: tidy(`Cancel ${id}: ${text}`, 60), run: `remind cancel id:${id}` }));

const cancelled = (reminders: readonly Reminder[], kept: readonly Reminder[]): Outcome =>
  reply({
    title: reminders.length === 1 ? 'Reminder cancelled' : `${reminders.length} reminders cancelled`,
    level: 'good',
    summary: reminders.length === 1 ? `Not to be said any more: ${reminders[0]!.text}` : 'None of these will be said.',
    facts: reminders.length === 1 ? [] : reminders.map((each) => ({ label: each.id, value: line(each) })),
    notes: kept.length === 0 ? [] : ['Standing warnings stay; each is cancelled by its id.'],
    choices: cancelChoices(kept),
    audience: 'asker',
    pointsAt: NOWHERE,
    data: { cancelled: reminders.length === 1 ? reminders[0]!.id : reminders.map(({ id }) => id) },
  });

/** A standing warning of the Sun for a whole channel is cancelled by its id alone. */
const isStanding = ({ to, repeat }: Reminder): boolean => to === 'channel' && repeat !== null;

/** Those that may be meant are offered. */
const whichOne = (words: string, offered: readonly Reminder[], isSeveral: boolean): Problem => {
  const choices = cancelChoices(offered);
  if (offered.length === 0 && (words === '' || words === 'all'))
    return problem(
      'missing-option',
      'No reminder that you can cancel is waiting here; remind list shows all of yours.',
    );
  if (words === '') return problem('missing-option', 'Which one? remind list shows them as well.', choices);
  return isSeveral
    ? problem('which-reminder', `Which one about "${tidy(words, 20)}"?`, choices)
    : problem(
        'unknown-reminder',
        `There is no reminder "${tidy(words, 20)}" that you can cancel here. See remind list.`,
        choices,
      );
};

/** All of the asker's own; or one, by its id, its place in the list, or what it is about. */
export const cancelReminder = async (
  deps: Deps,
  request: Request<unknown>,
  given: string | undefined,
): Promise<Outcome> => {
  const { asker, nowUtcMs } = request;
  const mine = await own(deps, asker);
  const all = [...mine, ...(await ofChannel(deps, asker, mine))];
  const words = given?.trim().toLowerCase() ?? '';
  const one =
    words === '' && all.length === 1 ? all : meantBy(all, words, { zone: await zoneFor(deps, request), nowUtcMs });
  const meant = words === 'all' ? mine.filter((each) => !isStanding(each)) : one;
  if (meant.length === 0 || (words !== 'all' && meant.length > 1))
    return whichOne(words, meant.length > 1 ? meant : all, meant.length > 1);
  for (const { id } of meant)
    if (!(await deps.store.reminders.cancel(asker.memberId, id)))
      await deps.store.reminders.cancelChannel(asker.platform, asker.channelId, id);
  return cancelled(meant, words === 'all' ? mine.filter(isStanding) : []);
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
