/** `remind`: says when a target is high enough, clear of the trees or at the meridian, when it is dark, and before the Sun rises. */
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { reply, type Outcome } from '../../reply/reply.js';
import { isoUtc } from '../../reply/wording.js';
import type { Moment } from '../../reminders/find-moment.js';
import type { TimeSpan } from '../../sky/night.js';
import type { UtcMs } from '../../sky/types.js';
import type { NewReminder, Reminder } from '../../store/store.js';
import { formatLocalDateTime, formatLocalTime, nightsFrom } from '../../times/index.js';
import { defineCommand, type Request, type Deps } from '../core/command.js';
import { askedOf, type Asked } from './asked-of.js';
import { again, isAction, options, type Action, type RemindOptions } from './remind-options.js';
import { cancelReminder, completeReminders, listReminders } from './reminder-list.js';
import { keepLastAsked } from '../asking/following/last-asked.js';
import { commandLine, nightFor } from '../asking/question-parts.js';
import { addressOf, toOf } from './reminder-address.js';
import { setStandingWarning } from './standing-reminder.js';
import { withSunSaid } from './with-sun-said.js';
import { setWeekly } from './weekly-reminder.js';

/** Time to walk out, cap and park. */
const SUNRISE_LEAD_MINUTES = 45;

const HALF_A_DAY_MS = MS_PER_DAY / 2;

/** The day, from midnight to midnight, on whose evening a night begins. */
const dayOf = ({ startUtcMs, endUtcMs }: TimeSpan): TimeSpan => ({
  startUtcMs: startUtcMs - HALF_A_DAY_MS,
  endUtcMs: endUtcMs - HALF_A_DAY_MS,
});

/** Where no date was asked for: the night (for the Sun the day) that it is now, and the one after when this has none left. */
/** From three in the morning to noon. */
const MORNING_MS = 9 * MS_PER_HOUR;

/** "Tomorrow when Venus rises" is of tomorrow's morning, where it comes up in it. */
const inMorning = (
  given: RemindOptions,
  { search, isByDay }: Asked,
  [night]: readonly TimeSpan[],
  nowUtcMs: UtcMs,
): Moment | null => {
  if (
    given.on?.trim().toLowerCase() !== 'tomorrow' ||
    given.at !== undefined ||
    isByDay === true ||
    night === undefined
  )
    return null;
  const morning = { startUtcMs: night.startUtcMs - MORNING_MS, endUtcMs: night.startUtcMs };
  const found = morning.startUtcMs > nowUtcMs ? search(morning) : null;
  const isIn =
    found !== null &&
    'found' in found &&
    found.found.utcMs > morning.startUtcMs + MS_PER_MINUTE &&
    found.found.utcMs < morning.endUtcMs;
  return isIn ? found.found : null;
};

const spansOf = (given: RemindOptions, { where, isByDay }: Asked, nowUtcMs: UtcMs): readonly TimeSpan[] | Problem => {
  const { site } = where;
  if (given.on === undefined)
    return isByDay === true ? nightsFrom(nowUtcMs + HALF_A_DAY_MS, site).map(dayOf) : nightsFrom(nowUtcMs, site);
  const night = nightFor(given.on, site, nowUtcMs);
  if (isProblem(night)) return night;
  if (isByDay === true) return [dayOf(night)];
  // "When the Moon sets on Sunday": by day, where it does not by night.
  return given.when === 'set' || given.above === 0 ? [night, dayOf(night)] : [night];
};

const momentOf = (asked: Asked, nights: readonly TimeSpan[], leadMs: number, nowUtcMs: UtcMs): Moment | Problem => {
  for (const night of nights) {
    const search = asked.search(night);
    if ('already' in search && nights[0] === night) {
      return problem(
        'already',
        `${asked.already}, until ${formatLocalTime(search.already.endUtcMs, asked.where.site.zone)}.`,
      );
    }
    if ('found' in search && search.found.utcMs - leadMs > nowUtcMs) return search.found;
    if ('found' in search && nights.length === 1)
      return problem(
        'too-late',
        `That is at ${formatLocalTime(search.found.utcMs, asked.where.site.zone)}, less than ${leadMs / MS_PER_MINUTE} min from now. Give a smaller before:.`,
      );
  }
  return problem('no-such-moment', asked.why(nights[0] ?? { startUtcMs: nowUtcMs, endUtcMs: nowUtcMs }));
};

/** What is so already tonight may be waited for tomorrow. */
const withTomorrow = (found: Problem, given: RemindOptions): Problem =>
  (found.problem === 'already' || (found.problem === 'no-such-moment' && given.at !== undefined)) &&
  given.on === undefined
    ? problem(found.problem, found.message, [
        {
          label: given.at === undefined ? 'Remind me tomorrow night' : 'Tomorrow at that hour',
          run: again(given, { on: 'tomorrow' }),
        },
      ])
    : found;

/** A target given in the place of the action. */
const tidied = (given: RemindOptions): RemindOptions & { readonly action: Action } => {
  const word = given.action;
  const named = word !== undefined && !isAction(word) ? { ...given, target: given.target ?? word } : given;
  if (word !== undefined && isAction(word)) return { ...named, action: word.toLowerCase() as Action };
  const isAsking = [named.target, named.when, named.nights, named.at, named.event].some((value) => value !== undefined);
  if (isAsking) return { ...named, action: 'add' };
  return { ...named, action: named.id !== undefined ? 'cancel' : 'list' };
};

/** The cautions that the reminder will carry stand below, where every answer has them. */
const saved = (kept: Reminder, moment: Moment, { where, pointsAt, sayOf, notes = [] }: Asked): Outcome => {
  const { zone } = where.site;
  return reply({
    title: 'Reminder set',
    level: 'good',
    summary: `${formatLocalDateTime(kept.dueUtcMs, zone)}, ${kept.to === 'channel' ? 'in this channel' : 'to you'}: ${sayOf(moment)}`,
    facts: [
      { label: 'Id', value: kept.id },
      { label: 'Site', value: where.saidAs },
    ],
    notes:
      kept.kind === 'sunrise' || kept.kind === 'hour'
        ? notes
        : [...notes, `It is said until ${formatLocalTime(moment.untilUtcMs, zone)}; later it would be of no use.`],
    pointsAt: pointsAt(moment.utcMs),
    choices: [{ label: 'Cancel it', run: commandLine('remind', 'cancel', { id: kept.id }) }],
    data: {
      id: kept.id,
      kind: kept.kind,
      dueUtc: isoUtc(kept.dueUtcMs),
      momentUtc: isoUtc(moment.utcMs),
      to: kept.to,
      text: kept.text,
      repeats: false,
    },
  });
};

const add = async (deps: Deps, request: Request<RemindOptions>): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  const to = toOf(asker, given.to);
  if (typeof to !== 'string') return to;
  // Whatever comes of it: whether it stands among their reminders is theirs to know.
  if (to === 'member') request.privacy.markPersonal();
  if (given.nights !== undefined && given.at !== undefined) return setWeekly(deps, request, to);
  if (given.nights !== undefined) return setStandingWarning(deps, request, to, given.before ?? SUNRISE_LEAD_MINUTES);
  const asked = await askedOf(deps, request, to);
  if (isProblem(asked)) return asked;
  const nights = spansOf(given, asked, nowUtcMs);
  if (isProblem(nights)) return nights;
  const leadMs = (given.before ?? (asked.kind === 'sunrise' ? SUNRISE_LEAD_MINUTES : 0)) * MS_PER_MINUTE;
  const moment = inMorning(given, asked, nights, nowUtcMs) ?? momentOf(asked, nights, leadMs, nowUtcMs);
  if (isProblem(moment)) return withTomorrow(moment, given);
  const said = withSunSaid(asked.sayOf(moment), asked.pointsAt(moment.utcMs), deps.sunLimits);
  const reminder: NewReminder = {
    ...addressOf(asker, to),
    kind: asked.kind,
    dueUtcMs: Math.round(moment.utcMs - leadMs),
    staleUtcMs: Math.round(moment.untilUtcMs),
    repeat: null,
    text: said,
  };
  return saved(await deps.store.reminders.add(reminder), moment, asked);
};

/** Set or not, it may be changed by the next words: "make it 7 instead". One in the place of another ends that. */
const addAndKeep = async (deps: Deps, request: Request<RemindOptions>): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  const keep = (instead: string | undefined): void =>
    keepLastAsked(deps.store, asker, again(given, { nights: given.nights, instead }), nowUtcMs, 'reminder');
  const outcome = await add(deps, request);
  if (isProblem(outcome)) {
    keep(given.instead);
    return outcome;
  }
  const isEnded = given.instead !== undefined && (await deps.store.reminders.cancel(asker.memberId, given.instead));
  keep(outcome.facts.find(({ label }) => label === 'Id')?.value);
  return isEnded ? { ...outcome, notes: [...outcome.notes, 'The one before is not said any more.'] } : outcome;
};

export const remind = defineCommand({
  name: 'remind',
  summary: 'Tell me when a target is up, when it is dark, or before sunrise',
  options,
  bare: 'action',
  examples: [
    'remind NGC 7331 above:30',
    'remind M13 when:transit before:10 site:52.71,0.12',
    'remind Jupiter at:23:00',
    'remind when:dark on:friday',
    'remind when:sunrise to:channel nights:"fri sat" before:60',
    'remind at:19:30 nights:thu say:"club night"',
    'remind event:Geminids',
    'remind list',
    'remind cancel id:k7m2xqp',
  ],
  sentence: /^(?:me|us|everyone|everybody)\b/iu,
  completeOwn: completeReminders,
  run: async (deps, request): Promise<Outcome> => {
    const given = tidied(request.options);
    switch (given.action) {
      case 'add':
        return addAndKeep(deps, { ...request, options: given });
      case 'list':
        return listReminders(deps, request);
      case 'cancel':
        return cancelReminder(deps, request, given.id);
    }
  },
});
