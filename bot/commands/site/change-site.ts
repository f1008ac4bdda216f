/** What changes a saved site: use, horizon, sky, rename, remove. */
import { isProblem, problem } from '../../ground/problem.js';
import { SKY_WORDS } from '../../evening/equipment.js';
import { fittingChoices, NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import type { StoredSite } from '../../store/store.js';
import { commandLine } from '../asking/question-parts.js';
import { sameSiteName } from '../asking/resolve-site.js';
import { readHorizon } from './horizon-words.js';
import { forClub, readName, shown, siteOf, type SiteRequest } from './whose-site.js';

/** What the club's own site is called by members. */
const CLUBS = /^(?:the )?club(?:'?s)?(?: (?:usual )?site)?$/iu;
/** The way back from a site that was used for a while. */
const WAY_BACK = /^(?:home|usual|normal|regular|old|first|other|default)$/iu;
/** What the usual one of their own is already. */
const USUAL = /^(?:usual|normal|regular|default)$/iu;

/** None of the member's own is the usual one any more: the club's counts again. */
const useClubs = async ({ deps, whose, clubs }: SiteRequest, own: readonly StoredSite[]): Promise<Outcome> => {
  const hasOne = deps.clubSiteText !== null || (await deps.store.sites.list(clubs)).some(({ isDefault }) => isDefault);
  if (!hasOne)
    return problem(
      'no-site',
      'No site of the club is known here. Tell me yours, by a town or by latitude and longitude: my site is near Ely, England',
    );
  for (const site of own.filter(({ isDefault }) => isDefault))
    await deps.store.sites.put(whose.owner, { ...site, isDefault: false });
  return reply({
    title: "The club's site from now on",
    level: 'good',
    summary: 'It is used wherever none is named.',
    notes: own.length === 0 ? [] : [`Still saved: ${own.map(({ name }) => name).join(', ')}.`],
    choices: own.map(({ name }) => ({ label: `Use ${name}`, run: commandLine('site', 'use', { name }) })),
    pointsAt: NOWHERE,
    data: { site: null, owner: 'club' },
  });
};

/** "go back to the home site", no site being called so: the only other one there is, else which. */
const wayBack = async (request: SiteRequest, name: string, own: readonly StoredSite[]): Promise<Outcome> => {
  const others = own.filter(({ isDefault }) => !isDefault);
  const usual = own.find(({ isDefault }) => isDefault);
  if (others.length === 0 && usual !== undefined && USUAL.test(name))
    return {
      ...shown(
        { title: usual.name, summary: 'It is your usual site already: used wherever none is named.' },
        usual,
        request.whose,
        request.nowUtcMs,
      ),
      choices: [{ label: "Use the club's site", run: 'site use name:club' }],
    };
  if (others.length === 0) return useClubs(request, own);
  const lines = [...others.map(({ name }) => name), 'club'].map((name) => ({
    label: name === 'club' ? "The club's site" : name,
    run: commandLine('site', 'use', { name }),
  }));
  return problem('which-site', 'Back to which site?', fittingChoices(lines));
};

export const useSite = async (request: SiteRequest): Promise<Outcome> => {
  const { deps, given, whose, nowUtcMs } = request;
  if (given.name === undefined)
    return problem('missing-option', 'Which site? Name it, such as site use name:"Quarry Field"');
  const { name } = given;
  const sites = await deps.store.sites.list(whose.owner);
  if (!whose.isClub && !sites.some((site) => sameSiteName(site.name, name))) {
    if (CLUBS.test(name)) return useClubs(request, sites);
    if (WAY_BACK.test(name)) return wayBack(request, name, sites);
  }
  const found = await siteOf(deps, whose, name);
  if (isProblem(found)) return found;
  await deps.store.sites.setDefault(whose.owner, found.name);
  return shown(
    {
      title: `${found.name} from now on`,
      summary: `It is ${whose.possessive} usual site: used wherever none is named.`,
    },
    { ...found, isDefault: true },
    whose,
    nowUtcMs,
  );
};

export const setHorizon = async ({ deps, given, whose, nowUtcMs }: SiteRequest): Promise<Outcome> => {
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
    {
      title: `Horizon of ${site.name}`,
      summary:
        site.horizon === null
          ? 'Taken away: the level horizon counts again.'
          : 'Saved. Answers for this site now say what it hides.',
    },
    site,
    whose,
    nowUtcMs,
  );
};

export const setSky = async ({ deps, given, whose, nowUtcMs }: SiteRequest): Promise<Outcome> => {
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
    { title: `Sky of ${site.name}`, summary: `Saved: ${SKY_WORDS[given.sky]}. up and tonight now reckon with it.` },
    site,
    whose,
    nowUtcMs,
  );
};

export const renameSite = async ({ deps, given, whose }: SiteRequest): Promise<Outcome> => {
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

export const removeSite = async ({ deps, given, whose }: SiteRequest): Promise<Outcome> => {
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
