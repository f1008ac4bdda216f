/** Asks where, before a command runs: which of several places of a name, or whether a far village or an unknown name was meant at all. */
import { isProblem, problem, type Choice, type Problem } from '../../ground/problem.js';
import {
  countyNamed,
  distanceKm,
  parsePosition,
  placeLabel,
  placeSpec,
  resolvePlace,
  siteProblemMessage,
  timeZoneAt,
  type PlaceRecord,
  type PlaceResolution,
  type Spot,
} from '../../places/index.js';
import { fittingChoices } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import type { Asker, Command, Deps } from '../core/command.js';
import { bareOption } from '../core/grammar.js';
import { keepLastPlace, lastPlace } from './following/last-asked.js';
import { commandLine } from './question-parts.js';
import { isPrivateWord, sameSiteName, savedSites, usualSpot } from './resolve-site.js';
import { savedNameMeant } from './saved-name-meant.js';

/** Options as they came, by name. */
export type Raw = Map<string, unknown>;

export interface Typed {
  readonly deps: Deps;
  readonly command: Command;
  readonly asker: Asker;
  readonly nowUtcMs: UtcMs;
  /** Makes whatever comes of the request the asker's alone. */
  readonly markPersonal: () => void;
}

/** A village so small and so far from where somebody usually stands is seldom meant ("hill", "field"). */
const VILLAGE_POPULATION = 5000;
const FAR_KM = 1000;

const isVillage = (found: PlaceResolution): boolean =>
  !isProblem(found) && !found.isQualified && found.place.population < VILLAGE_POPULATION;

const isFarVillage = (found: PlaceResolution, near: Spot | null): boolean =>
  !isProblem(found) && isVillage(found) && near !== null && distanceKm(found.place, near) > FAR_KM;

/** No town that everybody knows: it may be a site of somebody's own, and whether it is one nobody else may see. */
const mayBeTheirOwn = (found: PlaceResolution): boolean =>
  isVillage(found) || (isProblem(found) && found.problem !== 'ambiguous-place' && found.reason === 'not-found');

/** Two that are called the same to the last word are told apart by nobody: the larger stands for both. */
const placesOf = (found: PlaceResolution): readonly PlaceRecord[] => {
  if (!isProblem(found)) return [found.place];
  const all = found.problem === 'ambiguous-place' ? found.candidates : found.nearest;
  return all.filter((place, i) => all.findIndex((other) => placeSpec(other) === placeSpec(place)) === i);
};

/** The same question with each of the places, and with none. */
const choicesOf = (
  { command }: Typed,
  raw: Raw,
  option: string,
  found: PlaceResolution,
): { readonly places: readonly Choice[]; readonly usual: Choice } => {
  const bare = bareOption(command) ?? '';
  const given = Object.fromEntries([...raw].map(([name, value]) => [name, String(value)]));
  const { [bare]: bareValue, ...named } = given;
  // What looks like an option of its own would be read back as one, and is nothing's name.
  const kept = /[:"“”\\]/u.test(bareValue ?? '') ? '' : (bareValue ?? '');
  const line = (site: string | undefined): string =>
    commandLine(command.name, bare === option ? '' : kept, { ...named, [option]: site });
  return {
    places: placesOf(found).map((place) => ({
      label: `${placeSpec(place)} (${place.population.toLocaleString('en')} people)`,
      run: line(placeSpec(place)),
    })),
    usual: { label: 'My usual site', run: line(undefined) },
  };
};

/** A name that may have been meant for a site of the member's own is theirs to know, there or not. */
const forAsker = (asked: Problem): Problem => ({ ...asked, audience: 'asker' });

const questionOf = (
  typed: Typed,
  raw: Raw,
  option: string,
  found: PlaceResolution,
  near: Spot | null,
): Problem | null => {
  const { places, usual } = choicesOf(typed, raw, option, found);
  const offered = near === null ? places : [...places.slice(0, 4), usual];
  if (!isProblem(found))
    return isFarVillage(found, near)
      ? forAsker(
          problem(
            'unsure-place',
            `Did you mean ${placeLabel(found.place)}? That is a village far from the usual site.`,
            fittingChoices(offered),
          ),
        )
      : null;
  const isSeveral = found.problem === 'ambiguous-place';
  if (!isSeveral && found.reason !== 'not-found') return null;
  const asked = problem(found.problem, siteProblemMessage(found), fittingChoices(isSeveral ? places : offered));
  return isSeveral ? asked : forAsker(asked);
};

/** A county is wide, and no town far away that is called so is meant by those who live near it: its own town is offered. */
const countyQuestion = (typed: Typed, raw: Raw, option: string, text: string, near: Spot | null): Problem | null => {
  const named = near !== null && isBritish(near) ? countyNamed(text) : null;
  const found = named === null ? null : resolvePlace(typed.deps.places(), named.town, null);
  if (named === null || found === null || isProblem(found)) return null;
  keepLastPlace(typed.deps.store, typed.asker, text, typed.nowUtcMs);
  const { places, usual } = choicesOf(typed, raw, option, found);
  return problem(
    'unsure-place',
    `${named.county} is wide and no town. Name the town nearest to you, or take ${named.town}.`,
    fittingChoices([...places, usual]),
  );
};
const isBritish = (near: Spot): boolean => timeZoneAt(near.latitudeDeg, near.longitudeDeg) === 'Europe/London';

/** Of several places of a name, the one that was named before in the same talk; null where it was none of them. */
const namedBefore = ({ deps, asker, nowUtcMs }: Typed, found: PlaceResolution): string | null => {
  if (!isProblem(found) || found.problem !== 'ambiguous-place') return null;
  const said = lastPlace(deps.store, asker, nowUtcMs);
  const before = said === null ? null : resolvePlace(deps.places(), said, null);
  if (before === null || isProblem(before)) return null;
  const { latitudeDeg, longitudeDeg } = before.place;
  const same = found.candidates.find((one) => one.latitudeDeg === latitudeDeg && one.longitudeDeg === longitudeDeg);
  return same === undefined ? null : placeSpec(same);
};

/** The one that was named before stands in the place of the name. */
const questionUnlessNamed: typeof questionOf = (typed, raw, option, found, near) => {
  const before = namedBefore(typed, found);
  if (before === null) {
    // "And Saturn from there" is of the same name, and asked again.
    if (isProblem(found) && found.problem === 'ambiguous-place')
      keepLastPlace(typed.deps.store, typed.asker, found.text, typed.nowUtcMs);
    return questionOf(typed, raw, option, found, near);
  }
  raw.set(option, before);
  return null;
};

/** Which of several was not yet said, and no usual site is known: the next question waits for it as well. */
const stillOpen = async ({ deps, asker, nowUtcMs }: Typed): Promise<string | undefined> => {
  const said = lastPlace(deps.store, asker, nowUtcMs);
  const saved = said === null ? null : await savedSites(deps, asker);
  if (said === null || saved === null || saved.trouble !== null || usualSpot(saved, deps, asker) !== null)
    return undefined;
  const found = resolvePlace(deps.places(), said, null);
  return isProblem(found) && found.problem === 'ambiguous-place' ? said : undefined;
};

/** The question to be asked first, or null. A saved site's name with a slip in it is put right on the way. */
export const askWhere = async (typed: Typed, raw: Raw): Promise<Problem | null> => {
  const { command } = typed;
  const option = Object.entries(command.options).find(([, { complete }]) => complete === 'site')?.[0];
  if (option === undefined) return null;
  const text = raw.get(option) ?? (await stillOpen(typed));
  return typeof text !== 'string' || parsePosition(text) !== null ? null : askOf(typed, raw, option, text);
};

const askOf = async (typed: Typed, raw: Raw, option: string, text: string): Promise<Problem | null> => {
  const { deps, asker } = typed;
  const saved = await savedSites(deps, asker);
  // What cannot be read is told by those who look the site up.
  if (saved.trouble !== null) return null;
  if (saved.club.some(({ name }) => sameSiteName(name, text))) return null;
  const near = usualSpot(saved, deps, asker);
  const found = resolvePlace(deps.places(), text, near);
  if (mayBeTheirOwn(found)) typed.markPersonal();
  if (saved.member.some(({ name }) => sameSiteName(name, text))) return null;
  const names = [...saved.member, ...saved.club].map(({ name }) => name);
  const meant = savedNameMeant(text, names);
  if (meant !== null && (isPrivateWord(text) || isProblem(found) || found.place.population < VILLAGE_POPULATION)) {
    raw.set(option, meant);
    return null;
  }
  return isPrivateWord(text)
    ? null
    : (countyQuestion(typed, raw, option, text, near) ?? questionUnlessNamed(typed, raw, option, found, near));
};
