/** Finds the site a question is about: a saved name, the member's or the club's usual site, coordinates or a place name. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Audience, type Choice, type Problem } from '../../ground/problem.js';
import {
  parsePosition,
  placeSpec,
  resolveSite,
  siteProblemMessage,
  type Site,
  type SiteProblem,
  type Spot,
} from '../../places/index.js';
import { fittingChoices } from '../../reply/reply.js';
import { siteNameKey } from '../../store/rows/site-name-key.js';
import {
  StoreError,
  type HorizonPoint,
  type Owner,
  type SiteSky,
  type Store,
  type StoredSite,
} from '../../store/store.js';
import type { Asker, Request, Deps } from '../core/command.js';
import type { Privacy } from '../core/privacy.js';
import { hintDue, lastPlace } from './following/last-asked.js';

/** A site with what the club's memory adds to it. */
export interface ResolvedSite {
  readonly site: Site;
  /** Obstructions by azimuth, or null where none are known (then the true horizon counts). */
  readonly horizon: readonly HorizonPoint[] | null;
  /** How dark its sky is, where its owner has said. */
  readonly sky?: SiteSky;
  /** How an answer names it: "Quarry Field (your site)", "Fenwold Common (the club's site)", "Calgary, Alberta, CA". */
  readonly saidAs: string;
  /** How to keep it, for whom no site is known. */
  readonly keep?: string;
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
  ...(stored.sky === undefined ? {} : { sky: stored.sky }),
  saidAs: kind === 'member' ? `${stored.name} (your site)` : `${stored.name} (the club's site)`,
});

/** What a site is asked for with: who asks, and the mark that one of their own was used. */
export type Asking = Pick<Request<unknown>, 'asker' | 'privacy'> & Partial<Pick<Request<unknown>, 'nowUtcMs'>>;
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

const listed = async (store: Pick<Store, 'sites'>, asker: Asker): Promise<SavedSites> => {
  try {
    const [member, club] = await Promise.all([
      store.sites.list(memberOwner(asker)),
      store.sites.list(clubOwner(asker)),
    ]);
    return { member, club, trouble: null };
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    return { member: [], club: [], trouble: error };
  }
};

/**
 * The saved sites a member may name; in a command, a member's own among them make the answer the asker's alone.
 * Never rejects with a StoreError: what needs no store goes on without it.
 */
export const savedSites = (deps: Pick<Deps, 'store'>, asker: Asker): Promise<SavedSites> => listed(deps.store, asker);

/**
 * Where somebody usually stands, to tell places of one name apart: their own usual site where nobody else reads the answer, so that no
 * answer in a channel differs by it; else the club's, or the operator's. `saved` comes from a store that marks nothing.
 */
export const usualSpot = (
  saved: SavedSites,
  { places, clubSiteText }: Pick<Deps, 'places' | 'clubSiteText'>,
  asker: Asker,
): Spot | null => {
  const isUsual = ({ isDefault }: StoredSite): boolean => isDefault;
  const site = (asker.isPrivate ? saved.member.find(isUsual) : undefined) ?? saved.club.find(isUsual);
  if (site !== undefined || clubSiteText === null) return site ?? null;
  const found = resolveSite(places(), clubSiteText);
  return isProblem(found) ? null : found.site.observer;
};

/** One saved site by its name, or the usual one; a member's own makes the answer the asker's alone, any other does not. */
export const savedSite = async (
  { asker, privacy }: Asking,
  kind: Owner['kind'],
  name: string | undefined,
): Promise<StoredSite | undefined> => {
  const sites = await privacy.unmarked.sites.list(kind === 'member' ? memberOwner(asker) : clubOwner(asker));
  const found = sites.find((site) => (name === undefined ? site.isDefault : sameSiteName(site.name, name)));
  if (found !== undefined && kind === 'member') privacy.markPersonal();
  return found;
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

/** How a site is asked for beyond its name. */
export interface SiteWish {
  /** Writes the line that asks again with another site, so that an ambiguous place name offers its readings. */
  readonly lineFor?: ((siteText: string) => string) | undefined;
  /** `everyone`: for what is said to a whole channel; a member's own sites are then left out. Usual: asker. */
  readonly shownTo?: Audience;
  /** Words somebody's eyes may hang on: where saved sites cannot be read, no other site stands in for them. */
  readonly isSafety?: boolean;
}

const NAME_ONE = 'Name one, such as site:52.71,0.12 or site:"Ely, England".';

type Kinds = readonly Owner['kind'][];

/** Among the saved sites of these owners, in order; one of the member's own makes the answer the asker's alone. */
const amongSaved = (
  saved: SavedSites,
  kinds: Kinds,
  privacy: Privacy,
  isMeant: (site: StoredSite) => boolean,
): ResolvedSite | undefined => {
  for (const kind of kinds) {
    const stored = saved[kind].find(isMeant);
    if (stored === undefined) continue;
    if (kind === 'member') privacy.markPersonal();
    return fromStoredSite(stored, kind);
  }
  return undefined;
};

const unknownPrivateSite = (siteText: string, saved: SavedSites): Problem => {
  const names = [...saved.member, ...saved.club].map(({ name }) => name);
  const known = names.length === 0 ? '' : `; saved are ${tidy(names.join(', '), 150)}`;
  const name = tidy(siteText, 30).replace(/^(?:my|our|the) /iu, '');
  return problem(
    'unknown-site',
    `I do not know where "${tidy(siteText, 30)}" is${known}. Save it once: site add ${name} 52.71,0.12 with your own latitude and longitude, or a town instead of them.`,
  );
};

const isNoneUsual = (saved: SavedSites, { clubSiteText }: Deps): boolean =>
  clubSiteText === null &&
  saved.trouble === null &&
  ![...saved.member, ...saved.club].some(({ isDefault }) => isDefault);

/** How to keep a place is said once in a talk. */
const isHintDue = ({ store }: Deps, { asker, nowUtcMs }: Asking): boolean =>
  nowUtcMs === undefined || hintDue(store, asker, nowUtcMs);

const namedSite = (
  deps: Deps,
  request: Asking,
  saved: SavedSites,
  siteText: string,
  { lineFor, shownTo }: SiteWish,
): ResolvedSite | Problem => {
  const { markPersonal } = request.privacy;
  const own = saved.member.find(({ name }) => sameSiteName(name, siteText));
  if (own !== undefined && shownTo === 'everyone') {
    markPersonal();
    return problem(
      'personal-site',
      `"${own.name}" is your own site, and this would show it to everyone. Name one of the club's sites, or a place.`,
    );
  }
  if (isPrivateWord(siteText)) {
    markPersonal();
    return saved.trouble === null
      ? unknownPrivateSite(siteText, saved)
      : problem(
          saved.trouble.code,
          `Saved sites cannot be read just now, "${tidy(siteText, 30)}" among them. ${NAME_ONE}`,
        );
  }
  const near = usualSpot(saved, deps, request.asker);
  const found = resolveSite(deps.places(), siteText, near);
  if (!isProblem(found)) {
    // A saved site may bear the same name; a position is what it is.
    if (saved.trouble !== null && parsePosition(siteText) === null)
      request.privacy.markUnread(`the place ${found.site.name}`);
    const keep =
      isNoneUsual(saved, deps) && isHintDue(deps, request)
        ? { keep: `To keep it, type: my site is ${found.site.name}` }
        : {};
    return { site: found.site, horizon: null, saidAs: found.site.name, ...keep };
  }
  // A name that is no place asks for a site of the member's own, there or not.
  if (found.problem === 'unknown-place') markPersonal();
  const message = siteProblemMessage(found);
  return problem(
    found.problem,
    saved.trouble === null ? message : `${message} Saved sites cannot be read just now.`,
    placeChoices(found, lineFor),
  );
};

/** The operator's setting, where neither a member nor the club has a usual site. */
const siteOfOperator = (
  deps: Deps,
  { privacy }: Asking,
  saved: SavedSites,
  { isSafety = false }: SiteWish,
): ResolvedSite | Problem => {
  if (saved.trouble !== null && isSafety)
    return problem(
      saved.trouble.code,
      `Saved sites cannot be read just now, so I do not know where you stand, and the Sun is not to be guessed at. ${NAME_ONE}`,
    );
  if (deps.clubSiteText !== null) {
    const found = resolveSite(deps.places(), deps.clubSiteText);
    if (!isProblem(found)) {
      const saidAs = `${found.site.name} (the club's site)`;
      if (saved.trouble !== null) privacy.markUnread(saidAs);
      return { site: { ...found.site, source: 'club' }, horizon: null, saidAs };
    }
    return problem(
      found.problem,
      `The operator's setting PIERHAND_SITE, "${tidy(deps.clubSiteText, 40)}", cannot be read: ${siteProblemMessage(found)}`,
    );
  }
  return problem(
    'no-site',
    saved.trouble === null
      ? 'No site is known yet. Tell me once, "my site is Ely, England" or site add garden 52.71,0.12; or name it with the question: site:"Ely, England" or site:52.71,0.12'
      : `Saved sites cannot be read just now, and no site was named. ${NAME_ONE}`,
  );
};

/** Where no site is known: the place that the asker named some minutes ago, in the same place of talk. */
const placeBefore = ({ store }: Deps, { asker, nowUtcMs }: Asking): string | null =>
  nowUtcMs === undefined ? null : lastPlace(store, asker, nowUtcMs);

/**
 * The site a question is about. With text: the member's saved sites by name, the club's, coordinates, place names.
 * Without: the member's usual site, the club's, the operator's setting; else Problem 'no-site'.
 * A member's own site makes whatever comes of the request the asker's alone.
 */
export const siteFor = async (
  deps: Deps,
  request: Asking,
  siteText: string | undefined,
  wish: SiteWish = {},
): Promise<ResolvedSite | Problem> => {
  const saved = await listed(request.privacy.unmarked, request.asker);
  const kinds: Kinds = wish.shownTo === 'everyone' ? ['club'] : ['member', 'club'];
  const isMeant = (site: StoredSite): boolean =>
    siteText === undefined ? site.isDefault : sameSiteName(site.name, siteText);
  // What cannot be read may well be the member's own.
  if (saved.trouble !== null) request.privacy.markPersonal();
  const found = amongSaved(saved, kinds, request.privacy, isMeant);
  if (found !== undefined) return found;
  if (siteText !== undefined) return namedSite(deps, request, saved, siteText, wish);
  const before = isNoneUsual(saved, deps) && wish.shownTo !== 'everyone' ? placeBefore(deps, request) : null;
  const named = before === null ? null : namedSite(deps, request, saved, before, wish);
  return named === null || isProblem(named)
    ? siteOfOperator(deps, request, saved, wish)
    : { ...named, saidAs: `${named.saidAs}, as you said before` };
};
