/** `dark over:…`: of several nights, which are dark without the Moon, or the best for a target. */
import { MS_PER_MINUTE } from '../../ground/durations.js';
import type { Target } from '../../catalogue/index.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { NOWHERE, reply, type Fact, type Outcome } from '../../reply/reply.js';
import { tableOf } from '../../ground/table-of.js';
import { isoUtc } from '../../reply/wording.js';
import { nightsOver, weekdayOf, type NamedNight } from '../../times/index.js';
import { commandLine, siteNotes, targetFor, type AskedTarget } from '../asking/question-parts.js';
import { siteFor, type ResolvedSite } from '../asking/resolve-site.js';
import type { Deps, Request } from '../core/command.js';
import { mindsMoon, nightsWorth, type NightWorth } from './nights-worth.js';
import {
  bestText,
  dayOf,
  eachText,
  hoursText,
  weekendName,
  weekendsOf,
  weekendsText,
  weekendText,
  type NightsSaid,
} from './nights-words.js';

/** 0 Sunday … 6 Saturday. */
const DAYS = tableOf<readonly number[]>({ weekends: [5, 6], fridays: [5], saturdays: [6], sundays: [0] });

export interface OverOptions {
  readonly over: string;
  readonly site?: string | undefined;
  readonly for?: string | undefined;
}

/** Where no span is said: so many weeks hold two dark weekends at least. */
const USUAL_SPAN = '9 weeks';

interface Span {
  /** Only the best of them is asked for. */
  readonly isBest: boolean;
  /** "weekends"; null: all evenings. */
  readonly weekdays: string | null;
  readonly nights: string;
}

/** "best weekends of next month" in its parts. */
const spanOf = (over: string): Span => {
  const [, best, weekdays, nights = ''] =
    /^(best )?(?:(weekends|fridays|saturdays|sundays)(?: (?:of|in|over)\b)? ?)?(.*)$/u.exec(
      over.trim().toLowerCase(),
    ) ?? [];
  return {
    isBest: best !== undefined,
    weekdays: weekdays ?? null,
    nights: nights === '' ? USUAL_SPAN : nights,
  };
};

/** So many fill a phone's screen. */
const MOST_SHOWN = 10;
const MOST_TOLD = 3;

/** The best of many, in their order. */
const shownOf = (nights: readonly NightWorth[]): readonly NightWorth[] => {
  const best = [...nights].sort((a, b) => b.totalMs - a.totalMs).slice(0, MOST_SHOWN);
  return nights.filter((one) => best.includes(one));
};

/** Which nights, where, and for what. */
interface Over extends Span {
  readonly where: ResolvedSite;
  readonly found: AskedTarget | null;
  readonly dates: readonly NamedNight['date'][];
}

const askedOver = async (deps: Deps, request: Request<unknown>, options: OverOptions): Promise<Over | Problem> => {
  const where = await siteFor(deps, request, options.site);
  if (isProblem(where)) return where;
  const lineFor = (target: string): string => commandLine('dark', '', { ...options, for: target });
  const found = options.for === undefined ? null : targetFor(deps, options.for, lineFor);
  if (isProblem(found)) return found;
  if (found?.target.id === 'sun')
    return problem('bad-option', 'By night there is no Sun to look for. For the Sun ask: sun.');
  const span = spanOf(options.over);
  const over = nightsOver(span.nights, where.site.zone, request.nowUtcMs);
  if (isProblem(over)) return problem(over.problem, over.message);
  const days = DAYS.get(span.weekdays ?? '');
  return { ...span, where, found, dates: over.dates.filter((date) => days?.includes(weekdayOf(date)) !== false) };
};

interface Told {
  readonly summary: string;
  readonly facts: readonly Fact[];
  readonly notes?: readonly string[];
}

const toldByWeekend = (nights: readonly NightWorth[], isWhich: boolean, zone: string): Told => {
  const weekends = weekendsOf(nights);
  return {
    summary: weekendsText(weekends, isWhich),
    facts: weekends
      .slice(0, MOST_SHOWN)
      .map((weekend) => ({ label: weekendName(weekend), value: weekendText(weekend, zone) })),
  };
};

const toldByNight = (nights: readonly NightWorth[], said: NightsSaid): Told => {
  if (nights.length <= MOST_TOLD) return { summary: eachText(nights, said), facts: [] };
  const shown = shownOf(nights);
  return {
    summary: bestText(nights, said),
    facts: shown.map((one) => ({ label: dayOf(one), value: hoursText(one, said.target, said.zone) })),
    notes: shown.length < nights.length ? [`The best ${shown.length} of ${nights.length} nights.`] : [],
  };
};

/** "Sun 13 Dec to Mon 14 Dec". */
const daysText = (nights: readonly NightWorth[]): string => {
  const days = nights.map(dayOf);
  return days.length > 1 ? `${days[0] ?? ''} to ${days.at(-1) ?? ''}` : (days[0] ?? 'none left');
};

const moonNotes = (target: Target | null, mayMind: boolean, isMoonless: boolean): readonly string[] => {
  if (isMoonless || target === null) return [];
  return [
    mayMind
      ? 'The Moon is up whenever it is high enough in the dark: these are hours with moonlight.'
      : `The Moon hardly matters to ${target.name}.`,
  ];
};

export const darkOver = async (deps: Deps, request: Request<unknown>, options: OverOptions): Promise<Outcome> => {
  const asked = await askedOver(deps, request, options);
  if (isProblem(asked)) return asked;
  const { where, found, dates, weekdays, isBest } = asked;
  const { zone } = where.site;
  const target = found?.target ?? null;
  const mayMind = target === null || mindsMoon(target);
  const free = nightsWorth(where, dates, { target, isMoonless: mayMind }, request.nowUtcMs);
  // Where the Moon has them all, the hours with it are better than none.
  const isMoonless = mayMind && (target === null || free.some(({ totalMs }) => totalMs >= MS_PER_MINUTE));
  const nights = isMoonless === mayMind ? free : nightsWorth(where, dates, { target, isMoonless }, request.nowUtcMs);
  const isByWeekend = weekdays !== null && target === null && nights.length > 2;
  const {
    summary,
    facts,
    notes = [],
  } = isByWeekend ? toldByWeekend(nights, isBest, zone) : toldByNight(nights, { target, isMoonless, zone });
  return reply({
    title: `${target === null ? 'Nights without the Moon' : `${target.name}, night by night`}, ${daysText(nights)}`,
    summary,
    facts,
    notes: [...notes, ...moonNotes(target, mayMind, isMoonless), ...(found?.notes ?? []), ...siteNotes(where)],
    pointsAt: NOWHERE,
    data: {
      nights: nights.map(({ night, spans }) => ({
        night: night.said,
        spans: spans.map(({ startUtcMs, endUtcMs }) => ({ startUtc: isoUtc(startUtcMs), endUtc: isoUtc(endUtcMs) })),
      })),
    },
  });
};
