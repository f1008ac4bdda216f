/** `site add`: keeps a position under a name, rounded unless asked otherwise. */
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { placeSpec, resolveSite, siteProblemMessage, type Site } from '../../places/index.js';
import { fittingChoices, type Outcome } from '../../reply/reply.js';
import { rounded } from '../../reply/wording.js';
import type { StoredSite } from '../../store/store.js';
import { commandLine } from '../asking/question-parts.js';
import { isPrivateWord, sameSiteName } from '../asking/resolve-site.js';
import { readHorizon } from './horizon-words.js';
import { forClub, readName, shown, type SiteRequest } from './whose-site.js';

const MY_SITE = 'my site';
/** 0.01° is about a kilometre: no pointing needs more, and it keeps a home address out of the store. */
const ROUNDED_DIGITS = 2;
const PRECISE_DIGITS = 6;

/** Where the site is to be, or what has to be asked first. */
const placeFor = ({ deps, given, whose }: SiteRequest): Site | Problem => {
  if (given.position === undefined)
    return problem(
      'missing-option',
      'site add needs a position: coordinates or a place name, such as site add name:"Quarry Field" position:52.71,0.12',
    );
  if (isPrivateWord(given.position)) {
    const spot = tidy(given.position, 30).replace(/^(?:my|our|the) /iu, '');
    return problem(
      'missing-option',
      `Where is your ${spot}? Give its latitude and longitude, or a town: site add ${spot} 52.71,0.12`,
    );
  }
  const found = resolveSite(deps.places(), given.position);
  if (!isProblem(found)) return found.site;
  const readings = found.problem === 'ambiguous-place' ? found.candidates : [];
  return problem(
    found.problem,
    siteProblemMessage(found),
    fittingChoices(
      readings.slice(0, 25).map((place) => ({
        label: placeSpec(place),
        run: commandLine('site', 'add', { name: given.name, for: forClub(whose), position: placeSpec(place) }),
      })),
    ),
  );
};

/** The name given, else the place's. */
const nameFor = (name: string | undefined, place: Site): ReturnType<typeof readName> =>
  name === undefined && place.source !== 'place'
    ? problem('missing-option', 'site add needs a name: such as name:"Quarry Field"')
    : readName(name ?? place.name.split(',')[0] ?? '');

const notesOn = ({ given }: SiteRequest, place: Site, site: StoredSite): readonly string[] => {
  const isPlace = place.source === 'place';
  const { latitudeDeg, longitudeDeg, elevationM } = place.observer;
  const wasRounded =
    site.latitudeDeg !== rounded(latitudeDeg, PRECISE_DIGITS) ||
    site.longitudeDeg !== rounded(longitudeDeg, PRECISE_DIGITS);
  return [
    ...(isPlace ? [`Found as ${place.name}.`] : []),
    ...(place.note === undefined ? [] : [place.note]),
    ...(wasRounded ? ['Rounded to 0.01° (about a kilometre), enough for any pointing; precise:yes keeps more.'] : []),
    ...(given.elevation === undefined && !isPlace && elevationM === 0 ? ['No height given: sea level is taken.'] : []),
  ];
};

export const addSite = async (request: SiteRequest): Promise<Outcome> => {
  const { deps, given, whose, nowUtcMs } = request;
  const place = placeFor(request);
  if (isProblem(place)) return place;
  const named = nameFor(given.name, place);
  if (isProblem(named)) return named;
  const horizon = given.horizon === undefined ? { horizon: null } : readHorizon(given.horizon);
  if (isProblem(horizon)) return horizon;

  const sites = await deps.store.sites.list(whose.owner);
  const before = sites.find(({ name }) => sameSiteName(name, named.name));
  // "My site" is where the member says they are, wherever that was before.
  if (before !== undefined && !sameSiteName(named.name, MY_SITE)) {
    return problem(
      'site-exists',
      `"${named.name}" is already among ${whose.possessive} sites. Give another name, remove that one first, or change its horizon with site horizon.`,
    );
  }
  const digits = given.precise === true ? PRECISE_DIGITS : ROUNDED_DIGITS;
  const { latitudeDeg, longitudeDeg, elevationM } = place.observer;
  const site: StoredSite = {
    name: named.name,
    latitudeDeg: rounded(latitudeDeg, digits),
    longitudeDeg: rounded(longitudeDeg, digits),
    elevationM: rounded(given.elevation ?? elevationM, 1),
    zone: place.zone,
    horizon: horizon.horizon,
    ...(given.sky === undefined ? {} : { sky: given.sky }),
    isDefault: before?.isDefault ?? sites.length === 0,
  };
  await deps.store.sites.put(whose.owner, site);
  const said = {
    title: `Site saved: ${site.name}`,
    summary: site.isDefault
      ? `Saved as ${whose.possessive} usual site: it is used wherever none is named.`
      : `Saved among ${whose.possessive} sites; site use name:"${site.name}" makes it the usual one.`,
    notes: notesOn(request, place, site),
  };
  return shown(said, site, whose, nowUtcMs);
};
