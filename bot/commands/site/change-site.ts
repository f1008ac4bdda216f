/** What changes a saved site: use, horizon, sky, rename, remove. */
import { isProblem, problem } from '../../ground/problem.js';
import { SKY_WORDS } from '../../evening/equipment.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import { commandLine } from '../asking/question-parts.js';
import { readHorizon } from './horizon-words.js';
import { forClub, readName, shown, siteOf, type SiteRequest } from './whose-site.js';

export const useSite = async ({ deps, given, whose, nowUtcMs }: SiteRequest): Promise<Outcome> => {
  if (given.name === undefined)
    return problem('missing-option', 'Which site? Name it, such as site use name:"Quarry Field"');
  const found = await siteOf(deps, whose, given.name);
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
