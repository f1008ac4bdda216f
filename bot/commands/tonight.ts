/** `tonight`: what is worth pointing at this evening, ten at most, in the order of the hours. */
import { constellationName, listName, nameWithAlias } from '../catalogue/index.js';
import { ZENITH_MAG_PER_ARCSEC2, type Equipment } from '../evening/equipment.js';
import { tonightPicks, type Pick } from '../evening/tonight-picks.js';
import { towardsWords } from '../evening/towards.js';
import { whyOf } from '../evening/why.js';
import { total } from '../evening/worth.js';
import { isProblem } from '../ground/problem.js';
import { fittingChoices, reply, type Fact, type Json, type Outcome } from '../reply/reply.js';
import { isoUtc, listed, rounded } from '../reply/wording.js';
import { darkness } from '../sky/twilight.js';
import type { TimeSpan } from '../sky/night.js';
import { toldHere } from './asking/following/told-here.js';
import { commandLine, siteAtNight, siteNotes } from './asking/question-parts.js';
import { defineCommand, type Deps } from './core/command.js';
import { eveningPicture } from './tonight/evening-picture.js';
import { firstOfList } from './tonight/said-first.js';
import { easyLimits, easyOf, easySought } from './tonight/easy-ones.js';
import { nightOfHours, type Sought } from './tonight/sought.js';
import { options, type TonightOptions } from './tonight/tonight-options.js';
import { isDrowned, notesOf, pickFact, summaryOf } from './tonight/tonight-words.js';

const FAINTEST_BY_DEFAULT = 11;
const MORE_CHOICES = 2;
/** More than these are named alone, and fewer where they are long, so that the answer fits a telephone's screen. */
const SPELLED_OUT = 6;
const LEAST_SPELLED_OUT = 4;
const MOST_CHARACTERS = 520;

/** The finest first. */
const picksOf = (
  deps: Deps,
  given: TonightOptions,
  { where, night, hours, equipment, sky, constellations }: Sought,
): readonly Pick[] =>
  hours === null
    ? []
    : tonightPicks(deps.catalogue, {
        observer: where.site.observer,
        night,
        ...hours,
        kind: given.kind ?? 'any',
        also: given.also,
        brighter: given.brighter ?? FAINTEST_BY_DEFAULT,
        minimumAltitudeDeg: given.above ?? null,
        horizon: where.horizon,
        equipment,
        zenithMagPerArcsec2: ZENITH_MAG_PER_ARCSEC2[sky],
        towards: given.towards ?? null,
        constellations,
        limits: {
          isMessierOnly: given.messier,
          highestDeg: given.below,
          largerArcmin: given.larger,
          mostArcmin: given.smaller,
          widerArcsec: given.wider,
        },
      });

const pickData = (pick: Pick, equipment: Equipment): Json => ({
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

/** The finest in the order of the hours, the others by name; all in that order where all are asked for. */
const factsOf = (
  picks: readonly Pick[],
  given: TonightOptions,
  sought: Sought,
): { readonly facts: readonly Fact[]; readonly isCut: boolean } => {
  const { hours } = sought;
  if (hours === null) return { facts: [], isCut: false };
  // One more costs no more than the line that names it.
  const isCut = given.all !== true && picks.length > SPELLED_OUT + 1;
  const lengths = picks.map((pick) => pickFact(pick, sought, hours).value.length);
  const fitting = lengths.filter((_, i) => sumOf(lengths.slice(0, i + 1)) <= MOST_CHARACTERS).length;
  const shown = isCut ? picks.slice(0, Math.min(SPELLED_OUT, Math.max(LEAST_SPELLED_OUT, fitting))) : picks;
  const others = picks.slice(shown.length).map(({ target }) => listName(target));
  return {
    facts: [
      ...inHours(shown).map((pick) => pickFact(pick, sought, hours)),
      ...(others.length === 0 ? [] : [{ label: 'Also', value: listed(others) }]),
    ],
    isCut,
  };
};

const sumOf = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);

const inHours = (picks: readonly Pick[]): readonly Pick[] => [...picks].sort((a, b) => a.bestUtcMs - b.bestUtcMs);

/** The same question, for all of them. */
const allLine = (given: TonightOptions): string => {
  const { site, ...rest } = given;
  return commandLine('tonight', '', { ...rest, site, all: true });
};

const whereWords = ({ towards }: TonightOptions, { constellations }: Sought): string =>
  `${constellations === null ? '' : ` in ${listed(constellations.map(constellationName))}`}${towards === undefined ? '' : ` ${towardsWords(towards)}`}`;

const spanData = (span: TimeSpan | null): Json =>
  span === null ? null : { startUtc: isoUtc(span.startUtcMs), endUtc: isoUtc(span.endUtcMs) };

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
    const { nowUtcMs } = request;
    const told = await toldHere(deps.store, request, request.options);
    const given = { ...request.options, with: told.with, sky: told.sky };
    const meant = nightOfHours(given, asked, nowUtcMs);
    if (isProblem(meant)) return meant;
    const sought = easySought(given, { ...asked, night: meant }, nowUtcMs);
    if (isProblem(sought)) return sought;
    const { where, night, hours, equipment } = sought;
    const { observer, zone } = where.site;
    const picks = given.easy === true ? easyOf(picksOf(deps, easyLimits(given), sought)) : picksOf(deps, given, sought);
    const dark = darkness(observer, night.startUtcMs, night.endUtcMs);
    const inOrder = inHours(picks);
    const { facts, isCut } = factsOf(picks, given, sought);
    return reply({
      title: `${given.easy === true ? 'Bright and easy' : 'Worth seeing'}${whereWords(given, sought)}, night of ${night.said}`,
      level: picks.every(isDrowned) ? 'info' : 'good',
      summary: `${firstOfList(given.first, picks, sought)}${summaryOf(picks, given, sought)}`,
      facts,
      notes: [...notesOf(picks, given, sought), ...told.notes, ...siteNotes(where)],
      ...(hours === null || picks.length === 0 ? {} : { chart: eveningPicture(sought, hours, inOrder, dark) }),
      choices: fittingChoices([
        ...(isCut ? [{ label: `All ${picks.length} spelled out`, run: allLine(given) }] : []),
        ...picks.slice(0, isCut ? MORE_CHOICES : MORE_CHOICES + 1).map(({ target }) => ({
          label: `More on ${nameWithAlias(target)}`,
          run: commandLine('up', target.name, { site: given.site, on: given.on }),
        })),
      ]),
      pointsAt: picks.map(({ target, bestUtcMs }) => ({
        what: target.name,
        when: { utcMs: bestUtcMs },
        observer,
        zone,
        direction: target.body,
      })),
      data: {
        dark: spanData(dark),
        hours: spanData(hours?.brightWindow ?? null),
        picks: picks.map((pick) => pickData(pick, equipment)),
      },
    });
  },
});
