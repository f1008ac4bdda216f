/** `up`: is a target up tonight, when is it best, and what stands in the way? */
import {
  readEquipment,
  type Equipment,
  SKIES,
  SKY_NAMES,
  USUAL_EQUIPMENT,
  USUAL_SKY,
  ZENITH_MAG_PER_ARCSEC2,
} from '../evening/equipment.js';
import { TOWARDS } from '../evening/towards.js';
import { isProblem, type Problem } from '../ground/problem.js';
import type { Target } from '../catalogue/index.js';
import type { Outcome, Reply } from '../reply/reply.js';
import { twilights } from '../sky/twilight.js';
import { toldHere, type ToldHere } from './asking/following/told-here.js';
import { commandLine, targetAtSite, targetFor } from './asking/question-parts.js';
import { choice, defineCommand, number, optional, text, type Deps, type Request } from './core/command.js';
import { withCapsOn } from './sun/caps-on.js';
import { askedFirst, FIRST, type First } from './up/asked-first.js';
import { hourAndNight } from './up/asked-hour.js';
import { doubleThen } from './up/double-then.js';
import { isOfItself, itselfReply, itselfWords } from './up/of-itself.js';
import { hopByNight } from './up/hop-by-day.js';
import { outlookWithin, partOfNight, withOtherPart } from './up/part-of-night.js';
import { upReply } from './up/up-reply.js';

/** Whether a pair is split is asked of pairs; of the rest, whether it shows. */
const firstFor = (first: First | undefined, { double, kind }: Target): First | undefined =>
  first === 'split' && double === null && kind !== 'star' ? 'seen' : first;

/** What a target itself is hangs on no place: told though no site is known; null where it is not what was asked. */
const ofItself = (
  deps: Deps,
  { options, nowUtcMs }: Request<{ readonly target: string; readonly first?: First | undefined }>,
  equipment: Equipment,
): Reply | null => {
  const found = targetFor(deps, options.target, (target) => commandLine('up', target, {}));
  const { first } = options;
  if (isProblem(found) || !isOfItself(first)) return null;
  const question = {
    first,
    target: doubleThen(found.target, nowUtcMs),
    equipment: equipment === USUAL_EQUIPMENT ? null : equipment,
    utcMs: nowUtcMs,
  };
  const words = itselfWords(question);
  return words === null ? null : itselfReply(question, words);
};

/** These stand near the Sun, whoever asks. */
const BESIDE_SUN = /^(?:venus|mercury|sun)$/iu;
const unplaced = (target: string, noSite: Problem): Problem => (BESIDE_SUN.test(target) ? withCapsOn(noSite) : noSite);

const equipmentOf = (kit: string | undefined): ReturnType<typeof readEquipment> =>
  kit === undefined ? USUAL_EQUIPMENT : readEquipment(kit);

/** For which telescope it is, where that was told before, and where the answer tells what one shows. */
const withToldSaid = (answer: Reply, { notes }: ToldHere): Reply =>
  answer.facts.some(({ label }) => label === 'Shows') ? { ...answer, notes: [...answer.notes, ...notes] } : answer;

export const up = defineCommand({
  name: 'up',
  summary: 'Is a target up tonight, when is it best, and what is in the way?',
  options: {
    target: text('What to point at: a name, a number such as NGC 7331, or coordinates', { complete: 'target' }),
    site: optional(text('From where: a saved site, a place name, or LAT,LON', { complete: 'site' })),
    on: optional(text('Which night: tonight, tomorrow, friday, 2026-12-13', { complete: 'date', maxLength: 60 })),
    at: optional(text('Also how high at this hour: 21:00, 9pm', { complete: 'time', maxLength: 80 })),
    with: optional(
      text('With what: eyes, binoculars, or an aperture such as 150 mm (usual: 150 mm)', { maxLength: 40 }),
    ),
    sky: optional(choice("How dark your sky is (usual: the site's, or country)", SKIES, SKY_NAMES)),
    first: optional(choice('Say this first: a time, a figure of the hour, which eyepiece, or a yes or no', FIRST)),
    facing: optional(choice('Of a yes or no: only that part of the sky is seen', TOWARDS)),
    above: optional(number('Say first between which hours it stands higher than so many degrees', { min: 0, max: 89 })),
  },
  examples: [
    'up NGC 7331 site:51.05,-114.07',
    'up Saturn tomorrow 9pm site:"Hobart, Tasmania"',
    'up M 33 with:binoculars sky:suburb',
  ],
  run: async (deps, request): Promise<Outcome> => {
    const { options, nowUtcMs } = request;
    const told = await toldHere(deps.store, request, options);
    const equipment = equipmentOf(told.with);
    if (isProblem(equipment)) return equipment;
    const found = await targetAtSite(deps, request, {
      command: 'up',
      target: options.target,
      site: options.site,
      rest: { on: options.on, at: options.at, with: options.with, sky: options.sky },
      takesWholes: true,
    });
    if (isProblem(found))
      return found.problem === 'no-site'
        ? (ofItself(deps, request, equipment) ?? unplaced(options.target, found))
        : found;
    const { where } = found;
    const part = partOfNight(options, where.site, nowUtcMs);
    if (part !== null && isProblem(part)) return part;
    const dated = part === null ? hourAndNight(options, where, nowUtcMs) : { hour: null, night: part.night };
    if (isProblem(dated)) return dated;
    const { night } = dated;
    const target = doubleThen(found.target, night.startUtcMs);
    const asked = { ...found, target };
    const sky = told.sky ?? where.sky ?? USUAL_SKY;
    const twilight = twilights(where.site.observer, night.startUtcMs, night.endUtcMs);
    const outlookQuestion = {
      target,
      observer: where.site.observer,
      night,
      twilight,
      horizon: where.horizon,
      nowUtcMs,
      equipment,
      zenithMagPerArcsec2: ZENITH_MAG_PER_ARCSEC2[sky],
    };
    const seen = outlookWithin(outlookQuestion, part);
    const first = askedFirst({
      first: firstFor(options.first, target),
      aboveDeg: options.above,
      asked,
      night,
      utcMs: dated.hour?.utcMs ?? null,
      nowUtcMs,
      equipment,
      isKitSaid: told.with !== undefined,
      found: seen,
      facing: options.facing,
      outlookQuestion: part === null ? outlookQuestion : { ...outlookQuestion, night: part.within },
      hop: () =>
        hopByNight(deps.catalogue, {
          ...outlookQuestion,
          zone: where.site.zone,
          hourUtcMs: dated.hour?.utcMs ?? null,
          isTonight: options.on === undefined,
          found: seen,
        }),
    });
    const question = {
      ...dated,
      asked,
      typed: options.target,
      equipment,
      sky,
      twilight,
      nowUtcMs,
      first,
    };
    const answer = withToldSaid(upReply(deps, question, seen), told);
    return withOtherPart(answer, outlookQuestion, { part, found: seen, target, zone: where.site.zone });
  },
});
