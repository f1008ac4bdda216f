/** Finds the site a question is about: a saved name, the member's or the club's usual site, coordinates or a place name. */
import { tidy } from '../../ground/tidy.js';
import { problem, type Choice, type Problem } from '../../ground/problem.js';
import { placeSpec, resolveSite, siteProblemMessage, type Site, type SiteProblem } from '../../places/index.js';
import { fittingChoices } from '../../reply/reply.js';
import { siteNameKey } from '../../store/rows/site-name-key.js';
import { StoreError, type HorizonPoint, type Owner, type StoredSite } from '../../store/store.js';
import type { Asker } from '../core/command.js';
import type { Deps } from '../core/deps.js';

/** A site with what the club's memory adds to it. */
export interface ResolvedSite {
  readonly site: Site;
  /** Obstructions by azimuth, or null where none are known (then the true horizon counts). */
  readonly horizon: readonly HorizonPoint[] | null;
  /** A member's own saved site: the reply must have `audience: 'asker'`. */
  readonly isPersonal: boolean;
  /** How an answer names it: "Quarry Field (your site)", "Fenwold Common (the club's site)", "Calgary, Alberta, CA". */
  readonly saidAs: string;
}

export const memberOwner = (asker: Asker): Owner => ({ kind: 'member', id: asker.memberId });
/** In a direct message the club is the member alone. */
export const clubOwner = (asker: Asker): Owner => ({ kind: 'club', id: asker.clubId });

export const sameSiteName = (a: string, b: string): boolean => siteNameKey(a) === siteNameKey(b);

/** What a saved site is to the one who asks. */
export const fromStoredSite = (stored: StoredSite, kind: Owner['kind']): ResolvedSite => ({
  site: {
    name: stored.name,
    observer: { latitudeDeg: stored.latitudeDeg, longitudeDeg: stored.longitudeDeg, elevationM: stored.elevationM },
    zone: stored.zone,
    source: kind === 'member' ? 'saved' : 'club',
  },
  horizon: stored.horizon,
  isPersonal: kind === 'member',
  saidAs: kind === 'member' ? `${stored.name} (your site)` : `${stored.name} (the club's site)`,
});

/** Words for where someone lives or observes. There are towns of these names; nobody means them. */
const PRIVATE_WORDS =
  /^(?:(?:my|our|the) )?(?:home|house|here|place|garden|back ?garden|yard|back ?yard|balcony|terrace|roof|patio|field|club|club ?site|observatory|obs|dome|shed|pier|site|cabin|cottage|work|school)$/iu;

export const isPrivateWord = (text: string): boolean => PRIVATE_WORDS.test(text.trim().replace(/\s+/gu, ' '));

interface SavedSites {
  readonly member: readonly StoredSite[];
  readonly club: readonly StoredSite[];
  /** Set when the store could not be read: saved names are then unknown, all else still works. */
  readonly trouble: StoreError | null;
}

/** The saved sites a member may name. Never rejects with a StoreError: what needs no store goes on without it. */
export const savedSites = async (deps: Deps, asker: Asker): Promise<SavedSites> => {
  try {
    const [member, club] = await Promise.all([
      deps.store.sites.list(memberOwner(asker)),
      deps.store.sites.list(clubOwner(asker)),
    ]);
    return { member, club, trouble: null };
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return { member: [], club: [], trouble: error };
  }
};

/** Choices that stand for the places a member may have meant. */
const placeChoices = (
  found: SiteProblem,
  lineFor: ((siteText: string) => string) | undefined,
): readonly Choice[] | undefined => {
  if (lineFor === undefined || found.problem !== 'ambiguous-place') return undefined;
  return fittingChoices(
    found.candidates.slice(0, 25).map((place) => ({ label: placeSpec(place), run: lineFor(placeSpec(place)) })),
  );
};

/**
 * The site a question is about. With text: the member's saved sites by name, the club's, coordinates, place names.
 * Without: the member's usual site, the club's, the operator's setting; else Problem 'no-site'.
 * `lineFor` writes the command line that asks again with another site, so that an ambiguous place name offers its readings.
 * `shownTo: 'everyone'`: for what is said to a whole channel; a member's own sites are then left out.
 */
export const siteFor = async (
  deps: Deps,
  asker: Asker,
  siteText: string | undefined,
  lineFor?: (siteText: string) => string,
  shownTo: 'asker' | 'everyone' = 'asker',
): Promise<ResolvedSite | Problem> => {
  const saved = await savedSites(deps, asker);
  const kinds = shownTo === 'everyone' ? (['club'] as const) : (['member', 'club'] as const);
  if (siteText !== undefined) {
    for (const kind of kinds) {
      const stored = saved[kind].find(({ name }) => sameSiteName(name, siteText));
      if (stored !== undefined) return fromStoredSite(stored, kind);
    }
    const own = saved.member.find(({ name }) => sameSiteName(name, siteText));
    if (own !== undefined)
      return problem(
        'personal-site',
        `"${own.name}" is your own site, and this would show it to everyone. Name one of the club's sites, or a place.`,
      );
    if (isPrivateWord(siteText)) {
      const names = [...saved.member, ...saved.club].map(({ name }) => name);
      return problem(
        'unknown-site',
        `I do not know where "${tidy(siteText, 30)}" is${names.length === 0 ? '' : `; saved are ${tidy(names.join(', '), 150)}`}. Save it once: site add ${tidy(siteText, 30).replace(/^(?:my|our|the) /iu, '')} 52.71,0.12 with your own latitude and longitude, or a town instead of them.`,
      );
    }
    const found = resolveSite(deps.places(), siteText);
    if (found.ok) return { site: found.site, horizon: null, isPersonal: false, saidAs: found.site.name };
    const message = siteProblemMessage(found);
    return problem(
      found.problem,
      saved.trouble === null ? message : `${message} Saved sites cannot be read just now.`,
      placeChoices(found, lineFor),
    );
  }
  for (const kind of kinds) {
    const stored = saved[kind].find(({ isDefault }) => isDefault);
    if (stored !== undefined) return fromStoredSite(stored, kind);
  }
  if (deps.clubSiteText !== null) {
    const found = resolveSite(deps.places(), deps.clubSiteText);
    if (found.ok) {
      return {
        site: { ...found.site, source: 'club' },
        horizon: null,
        isPersonal: false,
        saidAs: `${found.site.name} (the club's site)`,
      };
    }
    return problem(
      found.problem,
      `The operator's setting PIERHAND_SITE, "${tidy(deps.clubSiteText, 40)}", cannot be read: ${siteProblemMessage(found)}`,
    );
  }
  return problem(
    'no-site',
    saved.trouble === null
      ? 'No site is known yet. Name one, such as site:52.71,0.12 or site:"Ely, England"; or save yours once: site add name:"Quarry Field" position:52.71,0.12'
      : 'Saved sites cannot be read just now, and no site was named. Name one, such as site:52.71,0.12 or site:"Ely, England".',
  );
};
