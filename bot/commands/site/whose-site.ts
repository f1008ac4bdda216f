/** Whose sites are meant, the member's own or the club's, and one of them by its name. */
import { tidy } from '../../ground/tidy.js';
import { problem, type Problem } from '../../ground/problem.js';
import { isPosition } from '../../places/index.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import type { Owner, StoredSite } from '../../store/store.js';
import { clubOwner, memberOwner, sameSiteName } from '../asking/resolve-site.js';
import type { Asker, Deps } from '../core/command.js';
import { horizonChart } from './horizon-words.js';
import type { SiteOptions } from './site-options.js';
import { siteData, siteFacts } from './site-words.js';

const NAME_LIMIT = 40;

/** Who owns the site in question, and how that is said. */
export interface Whose {
  readonly owner: Owner;
  readonly isClub: boolean;
  readonly possessive: string;
}

export const ownOf = (asker: Asker): Whose => ({ owner: memberOwner(asker), isClub: false, possessive: 'your' });

export const clubsOf = (asker: Asker): Whose => ({ owner: clubOwner(asker), isClub: true, possessive: "the club's" });

/** Those to be changed: the club's by who may, the member's own by the member. */
export const whoseOf = (asker: Asker, given: SiteOptions['for']): Whose | Problem => {
  if (given !== 'club') return ownOf(asker);
  if (asker.clubId === asker.memberId)
    return problem('no-club', 'In a direct message there is no club. Say it in a channel of the club.');
  if (!asker.isManager)
    return problem(
      'not-allowed',
      "The club's sites are set by those who may change the club's settings here. Leave for:club out to set your own.",
    );
  return clubsOf(asker);
};

/** What is asked of a site: one record for every action that changes something. */
export interface SiteRequest {
  readonly deps: Deps;
  readonly given: SiteOptions;
  readonly whose: Whose;
  /** The club's, whoever's are to be changed. */
  readonly clubs: Owner;
  readonly nowUtcMs: number;
}

/** A name that can be typed back, and is not taken for a position. */
export const readName = (given: string): { readonly name: string } | Problem => {
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

/** The value of `for:` that means these sites again. */
export const forClub = (whose: Whose) => (whose.isClub ? 'club' : undefined);

const noSuchSite = (name: string, whose: Whose, sites: readonly StoredSite[]): Problem =>
  problem(
    'unknown-site',
    `There is no site "${tidy(name, 40)}" among ${whose.possessive} sites. ${sites.length === 0 ? 'None is saved yet.' : `There are: ${tidy(sites.map((site) => site.name).join(', '), 250)}.`}`,
  );

/** One of the owner's sites by name; the usual one where none is named. */
export const siteOf = async (deps: Deps, whose: Whose, name: string | undefined): Promise<StoredSite | Problem> => {
  const sites = await deps.store.sites.list(whose.owner);
  const found =
    name === undefined ? sites.find(({ isDefault }) => isDefault) : sites.find((site) => sameSiteName(site.name, name));
  if (found !== undefined) return found;
  return name === undefined
    ? problem('missing-option', `Which site? Name it: name:"${sites[0]?.name ?? 'Quarry Field'}"`)
    : noSuchSite(name, whose, sites);
};

/** The answer that shows a site, with what was done to it. */
export const shown = (
  {
    title,
    summary,
    notes = [],
  }: { readonly title: string; readonly summary: string; readonly notes?: readonly string[] },
  site: StoredSite,
  whose: Whose,
  nowUtcMs: number,
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
