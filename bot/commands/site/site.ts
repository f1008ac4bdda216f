/** `site`: the places a member, or the club, observes from: add, list, show, use, rename, remove, and their horizons. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { SKIES, SKY_NAMES, SKY_WORDS } from '../../evening/equipment.js';
import { isPosition, placeSpec, resolveSite, siteProblemMessage } from '../../places/index.js';
import { fittingChoices, NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { rounded } from '../../reply/wording.js';
import type { Owner, StoredSite } from '../../store/store.js';
import {
  choice,
  defineCommand,
  flag,
  number,
  optional,
  text,
  type Asker,
  type OptionSpec,
  type OptionValues,
  type Request,
  type Deps,
} from '../core/command.js';
import { horizonChart, readHorizon } from './horizon-words.js';
import { commandLine } from '../asking/question-parts.js';
import { clubOwner, isPrivateWord, memberOwner, sameSiteName, savedSite, savedSites } from '../asking/resolve-site.js';
import { siteData, siteFacts, siteLine } from './site-words.js';

const NAME_LIMIT = 40;
const MY_SITE = 'my site';
/** 0.01° is about a kilometre: no pointing needs more, and it keeps a home address out of the store. */
const ROUNDED_DIGITS = 2;
const PRECISE_DIGITS = 6;

const options = {
  action: optional(
    choice('What to do (usual: list)', ['list', 'add', 'show', 'use', 'horizon', 'sky', 'rename', 'remove']),
  ),
  name: optional(text("The site's name", { complete: 'own', maxLength: 80 })),
  position: optional(text('add: LAT,LON in degrees, ISO 6709, or a place name', { complete: 'place' })),
  elevation: optional(number('add: height above the sea in metres', { min: -430, max: 8850 })),
  horizon: optional(
    text('Azimuth:altitude pairs in degrees, "0:5, 90:20, 120:15"; none takes it away', { maxLength: 3500 }),
  ),
  sky: optional(choice('add, sky: how dark it is there (city, suburb, country, dark)', SKIES, SKY_NAMES)),
  to: optional(text('rename: the new name', { maxLength: 80 })),
  precise: optional(flag('add: keep the position as given, not rounded to 0.01°')),
  for: optional(choice('Whose site: me (usual) or the club', ['me', 'club'])),
} satisfies Record<string, OptionSpec>;
type Options = OptionValues<typeof options>;

/** Who owns the site in question, and how that is said. */
interface Whose {
  readonly owner: Owner;
  readonly isClub: boolean;
  readonly possessive: string;
}

const whoseOf = (asker: Asker, given: Options['for']): Whose | Problem => {
  if (given !== 'club') return { owner: memberOwner(asker), isClub: false, possessive: 'your' };
  if (asker.clubId === asker.memberId)
    return problem('no-club', 'In a direct message there is no club. Say it in a channel of the club.');
  if (!asker.isManager)
    return problem(
      'not-allowed',
      "The club's sites are set by those who may change the club's settings here. Leave for:club out to set your own.",
    );
  return { owner: clubOwner(asker), isClub: true, possessive: "the club's" };
};

/** A name that can be typed back, and is not taken for a position. */
const readName = (given: string): { readonly name: string } | Problem => {
  const name = tidy(given, NAME_LIMIT + 1);
  if (name === '' || Array.from(name).length > NAME_LIMIT)
    return problem('bad-site-name', `A site's name has 1 to ${NAME_LIMIT} characters, such as "Quarry Field".`);
  if (/["\\:<>`]/u.test(name))
    return problem(
      'bad-site-name',
      `"${name}" cannot be a site's name: leave out quotes, colons, backslashes and angle brackets.`,
    );
  if (isPosition(name))
    return problem(
      'bad-site-name',
      `"${name}" would be taken for a position. Give the site a name, such as name:"Quarry Field".`,
    );
  return { name };
};

const forClub = (whose: Whose) => (whose.isClub ? 'club' : undefined);

const noSuchSite = (name: string, whose: Whose, sites: readonly StoredSite[]): Problem =>
  problem(
    'unknown-site',
    `There is no site "${tidy(name, 40)}" among ${whose.possessive} sites. ${sites.length === 0 ? 'None is saved yet.' : `There are: ${tidy(sites.map((site) => site.name).join(', '), 250)}.`}`,
  );

/** One of the owner's sites by name; the usual one where none is named. */
const siteOf = async (deps: Deps, whose: Whose, name: string | undefined): Promise<StoredSite | Problem> => {
  const sites = await deps.store.sites.list(whose.owner);
  const found =
    name === undefined ? sites.find(({ isDefault }) => isDefault) : sites.find((site) => sameSiteName(site.name, name));
  if (found !== undefined) return found;
  return name === undefined
    ? problem('missing-option', `Which site? Name it: name:"${sites[0]?.name ?? 'Quarry Field'}"`)
    : noSuchSite(name, whose, sites);
};

const shown = (
  title: string,
  summary: string,
  site: StoredSite,
  whose: Whose,
  nowUtcMs: number,
  notes: readonly string[] = [],
): Outcome => {
  const chart = horizonChart(site.name, site.horizon);
  return reply({
    title,
    summary,
    level: 'good',
    facts: siteFacts(site, nowUtcMs),
    notes,
    pointsAt: NOWHERE,
    data: { site: siteData(site), owner: whose.isClub ? 'club' : 'member' },
    ...(chart === undefined ? {} : { chart }),
  });
};

const add = async (deps: Deps, given: Options, whose: Whose, nowUtcMs: number): Promise<Outcome> => {
  if (given.position === undefined)
    return problem(
      'missing-option',
      'site add needs a position: coordinates or a place name, such as site add name:"Quarry Field" position:52.71,0.12',
    );
  if (isPrivateWord(given.position))
    return problem(
      'missing-option',
      `Where is your ${tidy(given.position, 30).replace(/^(?:my|our|the) /iu, '')}? Give its latitude and longitude, or a town: site add ${tidy(given.position, 30).replace(/^(?:my|our|the) /iu, '')} 52.71,0.12`,
    );
  const found = resolveSite(deps.places(), given.position);
  if (isProblem(found)) {
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
  }
  const isPlace = found.site.source === 'place';
  if (given.name === undefined && !isPlace)
    return problem('missing-option', 'site add needs a name: such as name:"Quarry Field"');
  const named = readName(given.name ?? found.site.name.split(',')[0] ?? '');
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
  const { latitudeDeg, longitudeDeg, elevationM } = found.site.observer;
  const site: StoredSite = {
    name: named.name,
    latitudeDeg: rounded(latitudeDeg, digits),
    longitudeDeg: rounded(longitudeDeg, digits),
    elevationM: rounded(given.elevation ?? elevationM, 1),
    zone: found.site.zone,
    horizon: horizon.horizon,
    ...(given.sky === undefined ? {} : { sky: given.sky }),
    isDefault: before?.isDefault ?? sites.length === 0,
  };
  await deps.store.sites.put(whose.owner, site);
  const wasRounded =
    site.latitudeDeg !== rounded(latitudeDeg, PRECISE_DIGITS) ||
    site.longitudeDeg !== rounded(longitudeDeg, PRECISE_DIGITS);
  return shown(
    `Site saved: ${site.name}`,
    site.isDefault
      ? `Saved as ${whose.possessive} usual site: it is used wherever none is named.`
      : `Saved among ${whose.possessive} sites; site use name:"${site.name}" makes it the usual one.`,
    site,
    whose,
    nowUtcMs,
    [
      ...(isPlace ? [`Found as ${found.site.name}.`] : []),
      ...(found.site.note === undefined ? [] : [found.site.note]),
      ...(wasRounded ? ['Rounded to 0.01° (about a kilometre), enough for any pointing; precise:yes keeps more.'] : []),
      ...(given.elevation === undefined && !isPlace && elevationM === 0
        ? ['No height given: sea level is taken.']
        : []),
    ],
  );
};

const list = async (deps: Deps, asker: Asker): Promise<Outcome> => {
  const { member, club, trouble } = await savedSites(deps, asker);
  if (trouble !== null) throw trouble;
  const ownLabel =
    member.length + club.length === 0
      ? 'No site is saved yet. Save one: site add name:"Quarry Field" position:52.71,0.12'
      : `${member.length === 1 ? '1 site' : `${member.length} sites`} of your own, ${club.length} of the club's.`;
  return reply({
    title: 'Saved sites',
    summary: ownLabel,
    facts: [
      ...member.map((site) => ({ label: site.name, value: siteLine(site) })),
      ...club.map((site) => ({ label: `${site.name} (club)`, value: siteLine(site) })),
    ],
    notes:
      member.length > 0 && !member.some(({ isDefault }) => isDefault)
        ? ['None of yours is the usual one: choose with site use.']
        : [],
    choices: member
      .filter(({ isDefault }) => !isDefault)
      .map(({ name }) => ({ label: `Use ${name}`, run: commandLine('site', 'use', { name }) })),
    pointsAt: NOWHERE,
    data: { member: member.map(siteData), club: club.map(siteData) },
  });
};

/** A member's own is looked at before the club's. */
const show = async (deps: Deps, request: Request<Options>): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  const own: Whose = { owner: memberOwner(asker), isClub: false, possessive: 'your' };
  const club: Whose = { owner: clubOwner(asker), isClub: true, possessive: "the club's" };
  const found = given.for === 'club' ? undefined : await savedSite(request, 'member', given.name);
  if (found !== undefined)
    return shown(found.name, `Your ${found.isDefault ? 'usual ' : ''}site.`, found, own, nowUtcMs);
  const ofClub = await siteOf(deps, club, given.name);
  if (!isProblem(ofClub))
    return shown(ofClub.name, `The club's ${ofClub.isDefault ? 'usual ' : ''}site.`, ofClub, club, nowUtcMs);
  if (given.for === 'club') return ofClub;
  const missing = await siteOf(deps, own, given.name);
  return isProblem(missing) ? missing : ofClub;
};

const use = async (deps: Deps, given: Options, whose: Whose, nowUtcMs: number): Promise<Outcome> => {
  if (given.name === undefined)
    return problem('missing-option', 'Which site? Name it, such as site use name:"Quarry Field"');
  const found = await siteOf(deps, whose, given.name);
  if (isProblem(found)) return found;
  await deps.store.sites.setDefault(whose.owner, found.name);
  return shown(
    `${found.name} from now on`,
    `It is ${whose.possessive} usual site: used wherever none is named.`,
    { ...found, isDefault: true },
    whose,
    nowUtcMs,
  );
};

const setHorizon = async (deps: Deps, given: Options, whose: Whose, nowUtcMs: number): Promise<Outcome> => {
  if (given.horizon === undefined)
    return problem(
      'missing-option',
      'Which horizon? Give azimuth:altitude pairs in degrees, such as site horizon name:"Quarry Field" horizon:"0:5, 90:20, 120:15"',
    );
  const read = readHorizon(given.horizon);
  if (isProblem(read)) return read;
  const found = await siteOf(deps, whose, given.name);
  if (isProblem(found)) return found;
  const site = { ...found, horizon: read.horizon };
  await deps.store.sites.put(whose.owner, site);
  return shown(
    `Horizon of ${site.name}`,
    site.horizon === null
      ? 'Taken away: the level horizon counts again.'
      : 'Saved. Answers for this site now say what it hides.',
    site,
    whose,
    nowUtcMs,
  );
};

const setSky = async (deps: Deps, given: Options, whose: Whose, nowUtcMs: number): Promise<Outcome> => {
  if (given.sky === undefined)
    return problem(
      'missing-option',
      'How dark is it there? One of city, suburb, country, dark, such as site sky sky:suburb',
    );
  const found = await siteOf(deps, whose, given.name);
  if (isProblem(found)) return found;
  const site = { ...found, sky: given.sky };
  await deps.store.sites.put(whose.owner, site);
  return shown(
    `Sky of ${site.name}`,
    `Saved: ${SKY_WORDS[given.sky]}. up and tonight now reckon with it.`,
    site,
    whose,
    nowUtcMs,
  );
};

const rename = async (deps: Deps, given: Options, whose: Whose): Promise<Outcome> => {
  if (given.name === undefined || given.to === undefined)
    return problem(
      'missing-option',
      'site rename needs both names, such as site rename name:"Quarry Field" to:"Old Quarry"',
    );
  const named = readName(given.to);
  if (isProblem(named)) return named;
  const found = await siteOf(deps, whose, given.name);
  if (isProblem(found)) return found;
  if (!(await deps.store.sites.rename(whose.owner, found.name, named.name))) {
    return problem('site-exists', `"${named.name}" is already among ${whose.possessive} sites. Choose another name.`);
  }
  return reply({
    title: 'Site renamed',
    level: 'good',
    summary: `"${found.name}" is now "${named.name}".`,
    pointsAt: NOWHERE,
    data: { name: named.name, before: found.name },
  });
};

const remove = async (deps: Deps, given: Options, whose: Whose): Promise<Outcome> => {
  if (given.name === undefined)
    return problem('missing-option', 'Which site? Name it, such as site remove name:"Quarry Field"');
  const found = await siteOf(deps, whose, given.name);
  if (isProblem(found)) return found;
  await deps.store.sites.remove(whose.owner, found.name);
  const left = (await deps.store.sites.list(whose.owner)).map(({ name }) => name);
  return reply({
    title: 'Site removed',
    level: 'good',
    pointsAt: NOWHERE,
    data: { removed: found.name, left },
    summary: `"${found.name}" is gone.${found.isDefault && left.length > 0 ? ' It was the usual one; choose another with site use.' : ''}`,
    choices: found.isDefault
      ? left.map((name) => ({ label: `Use ${name}`, run: commandLine('site', 'use', { name, for: forClub(whose) }) }))
      : [],
  });
};

const run = async (deps: Deps, request: Request<Options>): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  const action = given.action ?? (given.position !== undefined ? 'add' : given.name !== undefined ? 'show' : 'list');
  if (action === 'list') return list(deps, asker);
  if (action === 'show') return show(deps, request);
  const whose = whoseOf(asker, given.for);
  if (isProblem(whose)) return whose;
  switch (action) {
    case 'add':
      return add(deps, given, whose, nowUtcMs);
    case 'use':
      return use(deps, given, whose, nowUtcMs);
    case 'horizon':
      return setHorizon(deps, given, whose, nowUtcMs);
    case 'sky':
      return setSky(deps, given, whose, nowUtcMs);
    case 'rename':
      return rename(deps, given, whose);
    case 'remove':
      return remove(deps, given, whose);
  }
};

export const site = defineCommand({
  name: 'site',
  summary: 'Save where you observe from, with its horizon; list, use, rename, remove',
  options,
  bare: 'action',
  examples: [
    'site add name:"Quarry Field" position:52.71,0.12 elevation:31',
    'site add name:"Cold Ridge" position:"Alice Springs" horizon:"0:5, 90:20, 120:15, 270:8"',
    'site horizon name:"Quarry Field" horizon:"80:12, 100:25, 140:10"',
    'site add name:"Fenwold Common" position:52.7,0.1 for:club',
    'site list',
  ],
  completeOwn: async (deps, _option, partial, asker) => {
    const { member, club } = await savedSites(deps, asker);
    return [...member, ...club]
      .filter(({ name }) => name.toLowerCase().includes(partial.toLowerCase()))
      .map(({ name }) => ({ label: name, value: name }));
  },
  run,
});
