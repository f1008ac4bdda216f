/** The parts most questions share (target, site, time, night), read the same way by every command. */
import { MS_PER_DAY, MS_PER_HOUR, MS_PER_MINUTE } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { resolveTarget, targetLabel, targetProblemMessage, type Target } from '../../catalogue/index.js';
import { fittingChoices } from '../../reply/reply.js';
import { horizontalOf } from '../../sky/place.js';
import { SUN_HORIZON_ALTITUDE_DEG } from '../../sky/rise-set.js';
import { sunSafety } from '../../sky/sun-safety.js';
import { SUN } from '../../sky/twilight.js';
import type { UtcMs } from '../../sky/types.js';
import {
  namesHour,
  nightAround,
  nightOn,
  parseDate,
  parseTime,
  tonightAt,
  type NamedNight,
} from '../../times/index.js';
import type { Request, Deps } from '../core/command.js';
import { siteFor, type Asking, type ResolvedSite } from './resolve-site.js';
import { chiefOf } from './whole-constellation.js';

/** Writes the line that asks the same question with another value. */
type LineFor = (value: string) => string;

/** As the grammar reads it back: quoted where it would otherwise end or open something, with its own quotes escaped. */
const quoted = (value: string): string =>
  /[\s"“”\\]|[A-Za-z_][\w-]*:/u.test(value) ? `"${value.replace(/["“”\\]/gu, '\\$&')}"` : value;

/** `altitude Vega at:"tonight 22:30"`: a command line from its parts; `undefined` parts are left out. */
export const commandLine = (
  command: string,
  bare: string,
  named: Readonly<Record<string, string | number | boolean | undefined>>,
): string =>
  [
    command,
    bare,
    ...Object.entries(named)
      .filter(([, value]) => value !== undefined)
      .map(([name, value]) => `${name}:${quoted(String(value))}`),
  ]
    .filter((part) => part !== '')
    .join(' ');

export interface AskedTarget {
  readonly target: Target;
  /** What was taken for granted: a spelling corrected, the brighter of a pair. */
  readonly notes: readonly string[];
}

export const targetFor = (deps: Deps, text: string, lineFor: LineFor): AskedTarget | Problem => {
  const found = resolveTarget(deps.catalogue, text);
  if (!isProblem(found)) return { target: found.target, notes: found.note === undefined ? [] : [found.note] };
  const nearest = found.problem === 'unknown-target' ? found.nearest : [];
  const offered = found.problem === 'ambiguous-target' ? found.candidates : nearest;
  return problem(
    found.problem,
    targetProblemMessage(found),
    fittingChoices(offered.map((target) => ({ label: targetLabel(target), run: lineFor(target.name) }))),
  );
};

export interface AskedTime {
  readonly utcMs: UtcMs;
  readonly notes: readonly string[];
}

/** Answers are for whole seconds, so that what is printed is what was computed. */
export const wholeSecond = (utcMs: UtcMs): UtcMs => Math.round(utcMs / 1000) * 1000;

/** Without text: now. */
export const timeFor = (text: string | undefined, zone: string, nowUtcMs: UtcMs): AskedTime | Problem => {
  if (text === undefined) return { utcMs: wholeSecond(nowUtcMs), notes: [] };
  const found = parseTime(text, zone, nowUtcMs);
  return isProblem(found)
    ? problem(found.problem, found.message)
    : { utcMs: wholeSecond(found.utcMs), notes: found.note === undefined ? [] : [found.note] };
};

/** As a question of the Sun has it: an hour alone is the next such hour, today's where it is not yet past, and never the coming night's. */
export const dayTimeFor = (text: string | undefined, zone: string, nowUtcMs: UtcMs): AskedTime | Problem => {
  const found = timeFor(text, zone, nowUtcMs);
  if (text === undefined || isProblem(found) || !namesHour(text, nowUtcMs)) return found;
  const next = ['today', 'tomorrow']
    .map((day) => timeFor(`${day} ${text}`, zone, nowUtcMs))
    .find((time) => !isProblem(time) && time.utcMs >= nowUtcMs);
  return next ?? found;
};

/** Of what has happened: an hour alone is the last such hour; one about to come is the asker's slip of some minutes. */
export const pastTimeFor = (text: string | undefined, zone: string, nowUtcMs: UtcMs): AskedTime | Problem =>
  text !== undefined && text !== 'now' && namesHour(text, nowUtcMs) && !/^(?:in|right)\b/iu.test(text)
    ? dayTimeFor(text, zone, nowUtcMs - MS_PER_DAY + AHEAD_MS)
    : timeFor(text, zone, nowUtcMs);

/** "sunset", "at sunrise tomorrow": the event, and the day where one is said. */
const SUN_EVENT = /^(?:(.+) )?(?:at )?(sunset|sunrise|sundown|sun-?up)(?: (.+))?$/iu;
/** A clock read while the question is typed may be ahead by so much. */
const AHEAD_MS = 15 * MS_PER_MINUTE;
/** The Sun is still, or just, up so near to its rising or setting. */
const BESIDE_EVENT_MS = MS_PER_MINUTE;

/** The next sunset or sunrise, at a minute when the Sun is up. */
export const sunEventFor = (
  text: string | undefined,
  { observer, zone }: ResolvedSite['site'],
  nowUtcMs: UtcMs,
): AskedTime | Problem | null => {
  const [, before, event, after] = SUN_EVENT.exec(text?.trim() ?? '') ?? [];
  if (event === undefined) return null;
  const day = before ?? after;
  const noon = day === undefined ? { utcMs: nowUtcMs, notes: [] } : timeFor(`${day} 12:00`, zone, nowUtcMs);
  if (isProblem(noon)) return noon;
  const { nextSunriseUtcMs, nextSunsetUtcMs } = sunSafety(
    SUN,
    observer,
    Math.max(noon.utcMs - MS_PER_DAY / 2, nowUtcMs),
  );
  const isRise = /rise|up/iu.test(event);
  const utcMs = isRise ? nextSunriseUtcMs : nextSunsetUtcMs;
  if (utcMs === null)
    return problem('no-such-hour', `The Sun does not ${isRise ? 'rise' : 'set'} there in the two days from then.`);
  return { utcMs: wholeSecond(utcMs + (isRise ? BESIDE_EVENT_MS : -BESIDE_EVENT_MS)), notes: [] };
};

/** Tonight; before sunrise the night that is still on, however late the clocks say it is. */
const nightInHand = (site: ResolvedSite['site'], nowUtcMs: UtcMs): NamedNight => {
  const tonight = tonightAt(site, nowUtcMs);
  if (nowUtcMs >= tonight.startUtcMs) return tonight;
  const isDay = horizontalOf(SUN, site.observer, nowUtcMs).altitudeDeg > SUN_HORIZON_ALTITUDE_DEG;
  return isDay ? tonight : nightAround(nowUtcMs, site);
};

/** Without text: tonight. */
export const nightFor = (
  text: string | undefined,
  site: ResolvedSite['site'],
  nowUtcMs: UtcMs,
): NamedNight | Problem => {
  if (text === undefined) return nightInHand(site, nowUtcMs);
  const found = parseDate(text, site.zone, nowUtcMs);
  return isProblem(found) ? problem(found.problem, found.message) : nightOn(found.date, site);
};

/** From noon, well into the afternoon: a clock reading alone is then of the night that follows. */
const INTO_THE_NIGHT_MS = 3 * MS_PER_HOUR;

/** An hour on the clocks in a night that was named: "23:00" of its evening, "02:00" of the morning after. */
export const hourOfNight = (text: string | undefined, zone: string, night: NamedNight): AskedTime | Problem =>
  timeFor(text, zone, night.startUtcMs + INTO_THE_NIGHT_MS);

/** A place and a night, as `dark` and `tonight` ask for them. */
export const siteAtNight = async (
  deps: Deps,
  request: Request<{ readonly site?: string | undefined; readonly on?: string | undefined }>,
): Promise<{ readonly where: ResolvedSite; readonly night: NamedNight } | Problem> => {
  const { options, nowUtcMs } = request;
  const where = await siteFor(deps, request, options.site);
  if (isProblem(where)) return where;
  const night = nightFor(options.on, where.site, nowUtcMs);
  return isProblem(night) ? night : { where, night };
};

/** The line under an answer that says for where it holds, with what the member should know about how the site was found. */
export const siteNotes = ({ saidAs, site, keep }: ResolvedSite): string[] => [
  `Site: ${saidAs}.${keep === undefined ? '' : ` ${keep}`}`,
  ...(site.note === undefined ? [] : [site.note]),
];

export interface TargetAtSite {
  readonly target: Target;
  readonly where: ResolvedSite;
  /** What the member should know about how both were found, the site named. */
  readonly notes: readonly string[];
}

/** A question about a target from a site: the command that asks it, what was typed, and the other options to keep. */
export interface TargetQuestion {
  readonly command: string;
  readonly target: string;
  readonly site: string | undefined;
  readonly rest: Readonly<Record<string, string | undefined>>;
  /** See SiteWish. */
  readonly isSafety?: boolean;
  /** A constellation may be asked about as a whole. */
  readonly takesWholes?: boolean;
}

/** A target and a site together; each problem offers to ask again with the other kept. */
export const targetAtSite = async (
  deps: Deps,
  request: Asking,
  { command, target: targetText, site: siteText, rest, isSafety = false, takesWholes = false }: TargetQuestion,
): Promise<TargetAtSite | Problem> => {
  const chief = takesWholes ? chiefOf(deps, targetText) : null;
  const found = targetFor(deps, chief?.name ?? targetText, (name) =>
    commandLine(command, name, { site: siteText, ...rest }),
  );
  if (isProblem(found)) return found;
  const { target } = found;
  const lineFor = (site: string): string => commandLine(command, target.name, { site, ...rest });
  const where = await siteFor(deps, request, siteText, { lineFor, isSafety });
  return isProblem(where)
    ? where
    : { target, where, notes: [...(chief === null ? [] : [chief.note]), ...found.notes, ...siteNotes(where)] };
};
