/** `site list` and `site show`. */
import { isProblem } from '../../ground/problem.js';
import { NOWHERE, reply, type Outcome } from '../../reply/reply.js';
import type { StoredSite } from '../../store/store.js';
import { commandLine } from '../asking/question-parts.js';
import { savedSite, savedSites } from '../asking/resolve-site.js';
import type { Asker, Deps, Request } from '../core/command.js';
import type { SiteOptions } from './site-options.js';
import { siteData, siteLine } from './site-words.js';
import { clubsOf, ownOf, shown, siteOf } from './whose-site.js';

export const listSites = async (deps: Deps, asker: Asker): Promise<Outcome> => {
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

const usual = ({ isDefault }: StoredSite): string => (isDefault ? 'usual ' : '');

/** A member's own is looked at before the club's. */
export const showSite = async (deps: Deps, request: Request<SiteOptions>): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  const own = ownOf(asker);
  const club = clubsOf(asker);
  const found = given.for === 'club' ? undefined : await savedSite(request, 'member', given.name);
  if (found !== undefined)
    return shown({ title: found.name, summary: `Your ${usual(found)}site.` }, found, own, nowUtcMs);
  const ofClub = await siteOf(deps, club, given.name);
  if (!isProblem(ofClub))
    return shown({ title: ofClub.name, summary: `The club's ${usual(ofClub)}site.` }, ofClub, club, nowUtcMs);
  if (given.for === 'club') return ofClub;
  const missing = await siteOf(deps, own, given.name);
  return isProblem(missing) ? missing : ofClub;
};
