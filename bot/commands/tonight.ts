/** `tonight`: what is worth pointing at this evening, ten at most, in the order of the hours. */
import { MS_PER_DAY } from '../ground/durations.js';
import { commonName, listName, nameWithAlias } from '../catalogue/index.js';
import {
  readEquipment,
  SKIES,
  SKY_NAMES,
  SKY_WORDS,
  USUAL_EQUIPMENT,
  USUAL_SKY,
  ZENITH_MAG_PER_ARCSEC2,
  type Equipment,
} from '../evening/equipment.js';
import { LEAST_PLANET_ALTITUDE_DEG, LEAST_USEFUL_ALTITUDE_DEG } from '../evening/pick.js';
import { eveningHours, type EveningHours } from '../evening/evening-hours.js';
import { PICK_KIND_NAMES, PICK_KINDS } from '../evening/kinds.js';
import { tonightPicks, type Pick } from '../evening/tonight-picks.js';
import { total } from '../evening/worth.js';
import { DROWNED_MAG, whyOf } from '../evening/why.js';
import { isProblem, problem, type Problem } from '../ground/problem.js';
import { fittingChoices, reply, type EveningChart, type Json, type Outcome } from '../reply/reply.js';
import { compassWord, degrees, isoUtc, listed, magnitudeText, rounded } from '../reply/wording.js';
import { altitudeCurve } from '../sky/altitude-curve.js';
import type { TimeSpan } from '../sky/night.js';
import { type Twilights, darkness, twilights } from '../sky/twilight.js';
import { showersHere } from '../ahead/showers.js';
import type { Observer, UtcMs } from '../sky/types.js';
import {
  bedtimeOf,
  formatClock,
  formatLocalTime,
  localToUtc,
  parseTime,
  zoneName,
  type NamedNight,
} from '../times/index.js';
import { choice, defineCommand, number, optional, text, type OptionSpec, type OptionValues } from './core/command.js';
import { darkWords, noDarkWords, twilightSpan } from './asking/night-words.js';
import { commandLine, siteAtNight, siteNotes } from './asking/question-parts.js';
import type { ResolvedSite } from './asking/resolve-site.js';

const FAINTEST_BY_DEFAULT = 11;
const MORE_CHOICES = 3;
const BEST_NAMED = 3;

const options = {
  site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
  on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
  kind: optional(choice('Only one kind of target', PICK_KINDS, PICK_KIND_NAMES)),
  from: optional(text('From which hour (usual: when it is dark)', { complete: 'time', maxLength: 40 })),
  until: optional(text('Until which hour (usual: half past midnight)', { complete: 'time', maxLength: 40 })),
  with: optional(text('With what: eyes, binoculars, or an aperture such as 150 mm (usual: 150 mm)', { maxLength: 40 })),
  sky: optional(choice('How dark your sky is (usual: country)', SKIES, SKY_NAMES)),
  brighter: optional(number('Faintest magnitude to list (usual: 11)', { min: -5, max: 20 })),
  above: optional(number('Least altitude in degrees (usual: 20; Moon and planets 10)', { min: 0, max: 85 })),
} satisfies Record<string, OptionSpec>;
type Options = OptionValues<typeof options>;

/** An hour of the asked night: readings are of its evening and the morning after; "now" and "in 2 hours" count from now. */
const hourOf = (
  asked: string | undefined,
  night: NamedNight,
  zone: string,
  nowUtcMs: UtcMs,
): UtcMs | null | Problem => {
  if (asked === undefined) return null;
  const isRelative = /^\s*(?:now|right now|in )/iu.test(asked);
  const afternoonUtcMs = localToUtc(night.date, { hour: 15, minute: 0, second: 0 }, zone).utcMs;
  const found = parseTime(asked, zone, isRelative ? nowUtcMs : afternoonUtcMs);
  return found.ok ? found.utcMs : problem(found.problem, found.message);
};

interface Sought {
  readonly hours: EveningHours;
  readonly equipment: Equipment;
}

/** The hours and the equipment; null hours where the night has none to offer. */
const soughtOf = (
  given: Options,
  { where, night }: { readonly where: ResolvedSite; readonly night: NamedNight },
  twilight: Twilights,
  nowUtcMs: UtcMs,
): Sought | Problem | null => {
  const { zone } = where.site;
  const equipment = given.with === undefined ? USUAL_EQUIPMENT : readEquipment(given.with);
  if (isProblem(equipment)) return equipment;
  const fromUtcMs = hourOf(given.from, night, zone, nowUtcMs);
  if (isProblem(fromUtcMs)) return fromUtcMs;
  const untilUtcMs = hourOf(given.until, night, zone, nowUtcMs);
  if (isProblem(untilUtcMs)) return untilUtcMs;
  if (fromUtcMs !== null && untilUtcMs !== null && untilUtcMs <= fromUtcMs)
    return problem(
      'bad-time',
      'until: comes before from:. Give the later hour as until:, such as from:21:00 until:23:30.',
    );
  const bright = twilightSpan(twilight.civil, night);
  const dark = twilightSpan(twilight.astronomical, night) ?? twilightSpan(twilight.nautical, night) ?? bright;
  if (bright === null || dark === null) return null;
  const bedtimeUtcMs = bedtimeOf(night, zone);
  const hours = eveningHours({ dark, bright, bedtimeUtcMs, nowUtcMs, fromUtcMs, untilUtcMs });
  return hours === null ? null : { hours, equipment };
};

const magnitudeWords = (magnitude: number | null): string =>
  magnitude === null ? '' : `, mag ${magnitudeText(magnitude)}`;

const entry = (pick: Pick, { hours, equipment }: Sought, zone: string) => {
  const { target, bestUtcMs, bestAltitudeDeg, azimuthDeg } = pick;
  const isOtherZone = zoneName(bestUtcMs, zone) !== zoneName(hours.brightWindow.startUtcMs, zone);
  const why = whyOf(pick, equipment);
  return {
    label: isOtherZone ? formatLocalTime(bestUtcMs, zone) : formatClock(bestUtcMs, zone),
    value: `${listName(target)}, ${degrees(bestAltitudeDeg)} in the ${compassWord(azimuthDeg)}: ${target.kindText === 'natural satellite' ? `${Math.round(pick.moonLitFraction * 100)} % lit` : `${target.kindText}${magnitudeWords(target.magnitude)}`}${why === '' ? '' : `; ${why}`}`,
  };
};

const dataOf = (pick: Pick, equipment: Equipment): Json => ({
  name: pick.target.name,
  type: pick.target.kindText,
  magnitude: pick.target.magnitude === null ? null : rounded(pick.target.magnitude, 2),
  bestUtc: isoUtc(pick.bestUtcMs),
  bestAltitudeDeg: rounded(pick.bestAltitudeDeg, 4),
  moonSeparationDeg: rounded(pick.moonSeparationDeg, 4),
  why: whyOf(pick, equipment),
  marginMag: rounded(pick.marginMag, 2),
  worth: {
    showpiece: rounded(pick.worth.showpiece, 2),
    seen: rounded(pick.worth.seen, 2),
    height: rounded(pick.worth.height, 2),
    total: rounded(total(pick.worth), 2),
  },
});

const nothingWords = (given: Options, noDark: string | null): string =>
  given.kind === undefined || given.kind === 'any'
    ? `Nothing shows in those hours${noDark === null ? '' : ` (${noDark.toLowerCase()})`}. Try other hours, a smaller above:, or with: and sky: as they are.`
    : `None of that kind shows in those hours. Moonlight or twilight may drown them: try another night, kind:any, or a smaller above:.`;

const summaryOf = (picks: readonly Pick[], { hours }: Sought, zone: string): string => {
  const best = listed(picks.slice(0, BEST_NAMED).map(({ target }) => commonName(target)));
  const drowned = picks.filter(({ marginMag }) => marginMag < DROWNED_MAG).length;
  if (drowned > picks.length / 2)
    return `A poor night for these: moonlight or twilight drowns ${drowned === picks.length ? 'all' : 'most'} of them. The least bad: ${best}.`;
  if (picks.length === 1) return `One target: ${best}.`;
  const span = `${formatClock(hours.brightWindow.startUtcMs, zone)} to ${formatLocalTime(hours.brightWindow.endUtcMs, zone)}`;
  return `The best: ${best}. ${picks.length} targets by the hour, ${span}:`;
};

/** Rates under which nobody goes out for a shower alone; common practice, no source. */
const LEAST_RATE = 18;

/** "Geminids, their best night: …" where a great shower has its best in this night. */
const showerNotes = (observer: Observer, { startUtcMs, endUtcMs }: TimeSpan, zone: string): readonly string[] =>
  showersHere(observer, { startUtcMs: startUtcMs - MS_PER_DAY, endUtcMs: endUtcMs + MS_PER_DAY })
    .filter(({ shower }) => shower.zenithalHourlyRate >= LEAST_RATE)
    .flatMap((here) => {
      const { shower, bestUtcMs, moonAltitudeDeg, moonLitFraction } = here;
      const nightsOff = bestUtcMs < startUtcMs ? -1 : Number(bestUtcMs > endUtcMs);
      const when = {
        '-1': 'had their best last night',
        '0': 'are at their best',
        '1': 'have their best tomorrow night',
      };
      const moon = moonAltitudeDeg > 0 ? `, Moon ${Math.round(moonLitFraction * 100)} % lit` : '';
      return [
        `Shooting stars: the ${shower.name} ${when[`${nightsOff as -1 | 0 | 1}`]}; look about ${formatClock(bestUtcMs, zone)}${moon}.`,
      ];
    });

const CURVE_STEP_MS = 10 * 60_000;

/** The evening as one picture. */
const eveningChart = (
  { said }: NamedNight,
  inOrder: readonly Pick[],
  { hours }: Sought,
  { site: { observer, zone } }: ResolvedSite,
  darkFromUtcMs: UtcMs | null,
): EveningChart => {
  const { startUtcMs, endUtcMs } = hours.brightWindow;
  const points = Math.max(2, Math.min(80, Math.ceil((endUtcMs - startUtcMs) / CURVE_STEP_MS) + 1));
  return {
    kind: 'evening',
    title: `The evening of ${said}`,
    zone,
    startUtcMs,
    endUtcMs,
    darkFromUtcMs,
    rows: inOrder.map(({ target, bestUtcMs }) => ({
      name: listName(target),
      bestUtcMs,
      leastDeg: target.body.kind === 'fixed' ? LEAST_USEFUL_ALTITUDE_DEG : LEAST_PLANET_ALTITUDE_DEG,
      curve: altitudeCurve(target.body, observer, startUtcMs, endUtcMs, points),
    })),
    altText: `Bars along the hours for ${listed(inOrder.map(({ target }) => target.name))}, each brighter where its target stands higher.`,
  };
};

export const tonight = defineCommand({
  name: 'tonight',
  summary: 'What is worth pointing at this evening? Ten at most, hour by hour',
  options,
  bare: 'site',
  examples: [
    'tonight site:52.71,0.12',
    'tonight kind:galaxy site:"Alice Springs"',
    'tonight until:22:30 with:binoculars sky:suburb site:52.71,0.12',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const asked = await siteAtNight(deps, request);
    if (isProblem(asked)) return asked;
    const { where, night } = asked;
    const { options: given, nowUtcMs } = request;
    const { observer, zone } = where.site;
    const twilight = twilights(observer, night.startUtcMs, night.endUtcMs);
    const sought = soughtOf(given, asked, twilight, nowUtcMs);
    if (isProblem(sought)) return sought;
    const sky = given.sky ?? where.sky ?? USUAL_SKY;
    const picks =
      sought === null
        ? []
        : tonightPicks(deps.catalogue, {
            observer,
            night,
            ...sought.hours,
            kind: given.kind ?? 'any',
            brighter: given.brighter ?? FAINTEST_BY_DEFAULT,
            minimumAltitudeDeg: given.above ?? null,
            horizon: where.horizon,
            equipment: sought.equipment,
            zenithMagPerArcsec2: ZENITH_MAG_PER_ARCSEC2[sky],
          });
    const noDark = noDarkWords(twilight, night, zone);
    const dark: TimeSpan | null = darkness(observer, night.startUtcMs, night.endUtcMs);
    const inOrder = [...picks].sort((a, b) => a.bestUtcMs - b.bestUtcMs);
    return reply({
      title: `Worth seeing, night of ${night.said}`,
      level: picks.every(({ marginMag }) => marginMag < DROWNED_MAG) ? 'info' : 'good',
      summary:
        sought === null
          ? `Nothing to list. ${noDark ?? 'Those hours are not in the dark of this night'}.`
          : picks.length === 0
            ? nothingWords(given, noDark)
            : summaryOf(picks, sought, zone),
      facts: sought === null ? [] : inOrder.map((pick) => entry(pick, sought, zone)),
      notes: [
        ...(sought === null
          ? []
          : [
              `${noDark ?? `Dark ${darkWords(twilight, night, zone)}`}. For ${SKY_WORDS[sky]} and ${sought.equipment.saidAs}${given.with === undefined ? '; say sky: and with: for yours' : ''}.`,
            ]),
        ...showerNotes(observer, night, zone),
        ...siteNotes(where),
      ],
      ...(sought === null || picks.length === 0
        ? {}
        : { chart: eveningChart(night, inOrder, sought, where, dark?.startUtcMs ?? null) }),
      choices: fittingChoices(
        picks.slice(0, MORE_CHOICES).map(({ target }) => ({
          label: `More on ${nameWithAlias(target)}`,
          run: commandLine('up', target.name, { site: given.site, on: given.on }),
        })),
      ),
      pointsAt: picks.map(({ target, bestUtcMs }) => ({
        what: target.name,
        when: { utcMs: bestUtcMs },
        observer,
        zone,
        direction: target.body,
      })),
      data: {
        dark: dark === null ? null : { startUtc: isoUtc(dark.startUtcMs), endUtc: isoUtc(dark.endUtcMs) },
        hours:
          sought === null
            ? null
            : {
                startUtc: isoUtc(sought.hours.brightWindow.startUtcMs),
                endUtc: isoUtc(sought.hours.brightWindow.endUtcMs),
              },
        picks: picks.map((pick) => dataOf(pick, sought?.equipment ?? USUAL_EQUIPMENT)),
      },
    });
  },
});
