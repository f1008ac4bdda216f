/** `site`: the places a member, or the club, observes from: add, list, show, use, rename, remove, and their horizons. */
import { isProblem } from '../../ground/problem.js';
import type { Outcome } from '../../reply/reply.js';
import { savedSites } from '../asking/resolve-site.js';
import { defineCommand, type Deps, type Request } from '../core/command.js';
import { addSite } from './add-site.js';
import { removeSite, renameSite, setHorizon, setSky, useSite } from './change-site.js';
import { listSites, showSite } from './show-sites.js';
import { options, type SiteOptions } from './site-options.js';
import { clubsOf, whoseOf, type SiteRequest } from './whose-site.js';

type Action = NonNullable<SiteOptions['action']>;

/** Where no action is named, what was given tells. */
const actionOf = ({ action, position, name }: SiteOptions): Action => {
  if (action !== undefined) return action;
  if (position !== undefined) return 'add';
  return name === undefined ? 'list' : 'show';
};

const CHANGES: { readonly [action in Exclude<Action, 'list' | 'show'>]: (request: SiteRequest) => Promise<Outcome> } = {
  add: addSite,
  use: useSite,
  horizon: setHorizon,
  sky: setSky,
  rename: renameSite,
  remove: removeSite,
};

const run = async (deps: Deps, request: Request<SiteOptions>): Promise<Outcome> => {
  const { options: given, asker, nowUtcMs } = request;
  const action = actionOf(given);
  if (action === 'list') return listSites(deps, asker);
  if (action === 'show') return showSite(deps, request);
  const whose = whoseOf(asker, given.for);
  return isProblem(whose) ? whose : CHANGES[action]({ deps, given, whose, clubs: clubsOf(asker).owner, nowUtcMs });
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
