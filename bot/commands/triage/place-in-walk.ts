/** Where a member lives or observes, told in a walk: kept as their site where none is known, and what is read out is held against it. */
import { isProblem } from '../../ground/problem.js';
import {
  parsePosition,
  placeLabel,
  populationFound,
  resolvePlace,
  siteProblemMessage,
  timeZoneAt,
} from '../../places/index.js';
import type { Observer } from '../../sky/types.js';
import { NUMBERS, tellText } from '../../triage/index.js';
import { isPrivateWord, siteFor } from '../asking/resolve-site.js';
import { spellerFor } from '../asking/spelling/known-words.js';
import type { Deps } from '../core/command.js';
import { site } from '../site/site.js';
import { changed, isAsked, type Began, type Turn, type TurnContext } from './turn.js';

export interface SpotNamed {
  readonly observer: Pick<Observer, 'latitudeDeg' | 'longitudeDeg'>;
  readonly zone: string;
}

const LIVES_IN =
  /\b(?:i|we)(?: am|'?m|’m| are|'?re)? ?(?:live|lives|living|observe|observing|stay|come|from|in|near|close to|outside)(?: (?:here|now|out))?(?: (?:in|near|at|from|by|close to|outside))? (\p{L}[\p{L}' .-]{2,40}?(?:, ?\p{L}[\p{L}' ]{2,20}?)?)(?=[,.;:!?]|$| and | but | with | the )|\b(?:is|am) from (\p{L}[\p{L}' -]{2,30}?)(?=[,.;:!?]|$)/iu;

interface Named {
  readonly spot: SpotNamed;
  /** As the site rooms read it, and as it is said. */
  readonly place: string;
  readonly label: string;
}

const BY_THE_WAY = /[ ,]+(?:by the way|btw|right now|now|tonight|though|these days|at the moment)(?=[ ,.!]|$)/iu;

/** "Site is leeds", "; site Leeds". */
const SITE_IS =
  /(?:^|[.,;:!] *|\b(?:and|my|our|the) )(?:site|town|city|village|location)(?: is| in|:|=)? (\p{L}[\p{L}' -]{2,30}?(?:, ?\p{L}[\p{L}' ]{2,20}?)?)(?=[.;:!?]|,|$| and | but )/iu;

/** "York, england" goes before "York" alone. */
const placeIn = (deps: Pick<Deps, 'places'>, text: string): Named | null => {
  const own = text.replace(BY_THE_WAY, '');
  const named = LIVES_IN.exec(own);
  const said = named?.[1] ?? named?.[2] ?? SITE_IS.exec(own)?.[1];
  if (said === undefined || isPrivateWord(said)) return null;
  for (const name of new Set([said, said.replace(/,.*$/u, '')])) {
    const found = resolvePlace(deps.places(), name);
    if (!isProblem(found))
      return {
        spot: { observer: found.place, zone: found.place.zone },
        place: placeLabel(found.place),
        label: placeLabel(found.place),
      };
  }
  return null;
};

const LEADS =
  /^(?:(?:ok|well|so|i(?:'?m| am)|we(?:'?re| are)|my (?:site|place|position|location) is|it is|its|at|near|from|site:?|here) )*/iu;
/** Two numbers, of which one bears a letter of the globe. */
const MAY_BE_POSITION = /^[^\d]{0,30}\d[^;]*\d[^;]*$/u;
const WITH_SIDE = /\d[^a-z]{0,4}(?:n|s|north|south)\b.*\d[^a-z]{0,4}(?:e|w|east|west)\b/iu;
const LONGEST_POSITION = 60;

const positionIn = (text: string): Named | null => {
  const said = text.trim().replace(/[.!]+$/u, '');
  if (said.length > LONGEST_POSITION || !MAY_BE_POSITION.test(said) || !WITH_SIDE.test(said)) return null;
  const own = said.replace(LEADS, '');
  const found = parsePosition(own);
  if (found === null || isProblem(found)) return null;
  const { latitudeDeg, longitudeDeg } = found.position;
  return {
    spot: { observer: found.position, zone: timeZoneAt(latitudeDeg, longitudeDeg) },
    place: `${latitudeDeg}, ${longitudeDeg}`,
    label: own,
  };
};

/** The place that the walk's words name, the newest first. */
export const spotNamed = (deps: Pick<Deps, 'places'>, texts: readonly string[]): SpotNamed | null => {
  for (const text of texts.toReversed()) {
    const place = placeIn(deps, text);
    if (place !== null) return place.spot;
  }
  return null;
};

/** A name and, behind a comma, its region or country. */
const MAY_BE_TOWN = /^\p{L}[\p{L}'’.-]+(?: [\p{L}'’.-]+){0,2}(?:, ?\p{L}[\p{L}' ]*)?$/u;
const LEAST_POPULATION = 5000;
const STAGE = 'site-and-time';

/** Where a site bears on the step in hand. */
const wantsSite = ({ before: { step } }: Began): boolean => {
  if (step.kind === NUMBERS) return true;
  if (step.kind === 'try') return step.fault.stage === STAGE;
  return step.kind === 'ask' && !step.opening && step.check.stage === STAGE;
};

/** "Ely" and nothing else, where a site bears on the step and none is known; `among`: several are called so. */
const townAlone = async (
  { context, ...began }: Began,
  text: string,
): Promise<Named | { readonly among: string } | null> => {
  const { deps, asker, privacy, nowUtcMs } = context;
  const name = text
    .trim()
    .replace(LEADS, '')
    .replace(/[.!?]+$/u, '');
  if (!wantsSite({ context, ...began }) || !MAY_BE_TOWN.test(name)) return null;
  const found = resolvePlace(deps.places(), name);
  const isWord = name.split(' ').every((word) => spellerFor(deps).isKnown(word.toLowerCase()));
  if (isWord || (populationFound(found) ?? 0) < LEAST_POPULATION) return null;
  if (!isProblem(await siteFor(deps, { asker, privacy, nowUtcMs }, undefined))) return null;
  if (isProblem(found)) return found.problem === 'ambiguous-place' ? { among: siteProblemMessage(found) } : null;
  const label = placeLabel(found.place);
  return { spot: { observer: found.place, zone: found.place.zone }, place: label, label };
};

const MY_SITE = 'my site';

/** Kept where no site is known: what is asked next is asked from there. */
const keepSite = async ({ deps, asker, privacy, nowUtcMs }: TurnContext, place: string): Promise<boolean> => {
  const asking = { asker, privacy, nowUtcMs };
  if (!isProblem(await siteFor(deps, asking, undefined))) return false;
  const options = {
    action: 'add',
    name: MY_SITE,
    position: place,
    elevation: undefined,
    horizon: undefined,
    sky: undefined,
    to: undefined,
    precise: undefined,
    for: undefined,
  } as const;
  return !isProblem(await site.run(deps, { ...asking, options }));
};

const keptNote = (label: string): string => `Kept as your site: ${label}.`;

/** The place that was asked for, as it was said: kept where none is known, and said so. */
export const keepPlace = async (context: TurnContext, said: string): Promise<readonly string[]> => {
  const found = resolvePlace(context.deps.places(), said);
  if (isProblem(found) || context.by !== 'member') return [];
  const place = placeLabel(found.place);
  return (await keepSite(context, place)) ? [keptNote(place)] : [];
};

/** Where one lives, told beside something else: kept, and said so; null where there is none or a site is known. */
export const keepPlaceIn = async (context: TurnContext, text: string): Promise<string | null> => {
  const named = placeIn(context.deps, text);
  if (named === null || context.by !== 'member' || !(await keepSite(context, named.place))) return null;
  return keptNote(named.label);
};

/** What the mount shows is read out there, which is no place of one's own. */
const READS_OUT: readonly string[] = ['site-entries', 'entries-screen'];

/** Where one lives, told in a walk and nothing beside it: it is kept, and what can be done with it is said. */
export const takePlace = async (began: Began, text: string): Promise<Turn | null> => {
  const { context, walk, before } = began;
  if (!isAsked(began)) return null;
  const position = READS_OUT.includes(before.step.id) ? null : positionIn(text);
  const named = placeIn(context.deps, text) ?? position ?? (await townAlone(began, text));
  if (named === null) return null;
  if ('among' in named) return { walk, notes: [...began.notes, named.among], at: before.step, show: 'step' };
  const { state, read } = tellText(context.model, walk.state, text, context.by);
  // Told with it, an answer goes first.
  if (read.facts.length > 0 || read.perhaps.some(({ what }) => what === before.step.id)) return null;
  const isKept = context.by === 'member' && (await keepSite(context, named.place));
  const noted = isKept ? keptNote(named.label) : `Noted: ${named.label}.`;
  const note =
    before.step.kind === NUMBERS
      ? noted
      : `${noted} Read me latitude, longitude, date and zone as the mount shows them, and I compare.`;
  // The question is not put once more for it.
  const isTold = before.step.kind === NUMBERS;
  return changed(began, state, { notes: [note], at: before.step, ...(isTold ? { isTold } : {}) });
};
