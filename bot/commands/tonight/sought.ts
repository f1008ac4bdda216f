/** Which hours of which night `tonight` looks through, from where, with what and under which sky. */
import { constellationMeant } from '../../catalogue/index.js';
import { tidy } from '../../ground/tidy.js';
import { readEquipment, USUAL_EQUIPMENT, USUAL_SKY, type Equipment, type Sky } from '../../evening/equipment.js';
import { eveningHours, type EveningHours } from '../../evening/evening-hours.js';
import { MS_PER_DAY, MS_PER_MINUTE } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { twilights, type Twilights } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import { bedtimeOf, localToUtc, parseTime, type NamedNight } from '../../times/index.js';
import { twilightSpan } from '../asking/night-words.js';
import { nightFor } from '../asking/question-parts.js';
import type { ResolvedSite } from '../asking/resolve-site.js';
import type { TonightOptions } from './tonight-options.js';

export interface Sought {
  readonly where: ResolvedSite;
  readonly night: NamedNight;
  readonly twilight: Twilights;
  readonly equipment: Equipment;
  readonly sky: Sky;
  /** By the IAU's abbreviations; null: any. */
  readonly constellations: readonly string[] | null;
  /** Null where the night has none to offer. */
  readonly hours: EveningHours | null;
  /** Stars are asked for as ones that vary. */
  readonly isOfChange: boolean;
  readonly nowUtcMs: UtcMs;
  /** The end of the hours that were said; null: none were. */
  readonly lastUtcMs: UtcMs | null;
}

/** An hour of the asked night: readings are of its evening and the morning after; "now" and "in 2 hours" count from now. */
const hourOf = (
  asked: string | undefined,
  { night, where }: Pick<Sought, 'night' | 'where'>,
  nowUtcMs: UtcMs,
): UtcMs | null | Problem => {
  if (asked === undefined) return null;
  const { zone } = where.site;
  const isRelative = /^\s*(?:now|right now|in )/iu.test(asked);
  const afternoonUtcMs = localToUtc(night.date, { hour: 15, minute: 0, second: 0 }, zone).utcMs;
  const found = parseTime(asked, zone, isRelative ? nowUtcMs : afternoonUtcMs);
  return isProblem(found) ? problem(found.problem, found.message) : found.utcMs;
};

/** By its abbreviation; null where none was asked for. */
const constellationsIn = ({ constellation }: TonightOptions): readonly string[] | null | Problem => {
  if (constellation === undefined) return null;
  const names = constellation.split(/\s*(?:,|;|\+|&|\band\b|\bor\b)\s*/u).filter((name) => name !== '');
  const meant = names.map((name) => constellationMeant(name));
  const unknown = names.find((_, i) => meant[i] === undefined);
  return unknown === undefined
    ? meant.filter((name) => name !== undefined)
    : problem(
        'bad-option',
        `There is no constellation "${tidy(unknown, 40)}"; it takes one of the 88, such as constellation:Cygnus or constellation:Cyg.`,
      );
};

/** An hour alone is so long. */
const AT_HOUR_MS = 10 * MS_PER_MINUTE;

const firstHour = ({ at, from }: TonightOptions): string | undefined => at ?? from;

const untilOf = (
  { at, until }: TonightOptions,
  fromUtcMs: UtcMs | null,
  asked: Pick<Sought, 'night' | 'where'>,
  nowUtcMs: UtcMs,
): UtcMs | null | Problem =>
  at === undefined || fromUtcMs === null ? hourOf(until, asked, nowUtcMs) : fromUtcMs + AT_HOUR_MS;

/** After midnight, hours of an evening are of the coming one, unless the list goes on into the night in progress. */
export const nightOfHours = (
  given: TonightOptions,
  asked: { readonly where: ResolvedSite; readonly night: NamedNight },
  nowUtcMs: UtcMs,
): NamedNight | Problem => {
  const { night, where } = asked;
  const isTonight = given.on === undefined || /^\s*(?:tonight|this evening)\s*$/iu.test(given.on);
  const last = hourOf(given.until ?? firstHour(given), asked, nowUtcMs);
  const midnightUtcMs = localToUtc(night.date, { hour: 0, minute: 0, second: 0 }, where.site.zone).utcMs + MS_PER_DAY;
  if (!isTonight || last === null || isProblem(last) || nowUtcMs < midnightUtcMs || last >= midnightUtcMs) return night;
  return nightFor('tomorrow night', where.site, nowUtcMs);
};

const skyOf = ({ sky }: TonightOptions, where: ResolvedSite): Sky => sky ?? where.sky ?? USUAL_SKY;

export const soughtOf = (
  given: TonightOptions,
  asked: { readonly where: ResolvedSite; readonly night: NamedNight },
  nowUtcMs: UtcMs,
): Sought | Problem => {
  const { where, night } = asked;
  const { observer, zone } = where.site;
  const equipment = given.with === undefined ? USUAL_EQUIPMENT : readEquipment(given.with);
  if (isProblem(equipment)) return equipment;
  const constellations = constellationsIn(given);
  if (isProblem(constellations)) return constellations;
  const fromUtcMs = hourOf(firstHour(given), asked, nowUtcMs);
  if (isProblem(fromUtcMs)) return fromUtcMs;
  const untilUtcMs = untilOf(given, fromUtcMs, asked, nowUtcMs);
  if (isProblem(untilUtcMs)) return untilUtcMs;
  if (fromUtcMs !== null && untilUtcMs !== null && untilUtcMs <= fromUtcMs)
    return problem(
      'bad-time',
      'until: comes before from:. Give the later hour as until:, such as from:21:00 until:23:30.',
    );
  const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
  const bright = twilightSpan(twilight.civil, night);
  const dark = twilightSpan(twilight.astronomical, night) ?? twilightSpan(twilight.nautical, night) ?? bright;
  const hours =
    bright === null || dark === null
      ? null
      : eveningHours({ dark, bright, bedtimeUtcMs: bedtimeOf(night, zone), nowUtcMs, fromUtcMs, untilUtcMs });
  return {
    where,
    night,
    twilight,
    equipment,
    sky: skyOf(given, where),
    constellations,
    hours,
    isOfChange: given.kind === 'variable-star' || given.kind === 'carbon-star',
    nowUtcMs,
    lastUtcMs: untilUtcMs ?? fromUtcMs,
  };
};
