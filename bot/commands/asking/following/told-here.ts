/** The telescope and the sky that were told in this evening's talk: what is asked after, in words or as a command, is for them. */
import { readEquipment, SKIES, type Sky } from '../../../evening/equipment.js';
import { isProblem } from '../../../ground/problem.js';
import type { Store } from '../../../store/store.js';
import type { Asker } from '../../core/command.js';
import type { UtcMs } from '../../../sky/types.js';
import { savedApertureMm } from '../mount-for.js';
import type { Asking } from '../resolve-site.js';
import { keepLastAsked, lastAsked } from './last-asked.js';

type By = { readonly asker: Asker; readonly nowUtcMs: UtcMs };

/** Said of one's own, and not asked of a telescope in general: "can I see it in binoculars" tells of none. */
const OF_ONES_OWN =
  /\b(?:my|mine|our|ours|own|using|(?:i|we) (?:\w+ ){0,2}?(?:have|has|got|use|own|bought)|(?:i|we)'?ve|got an?|(?:i'?m|i am|we'?re|we are|living|based|observing|here) (?:\w+ ){0,5}?(?:with|under|using))\b/iu;
export const tellsOfOwn = (text: string): boolean => OF_ONES_OWN.test(text);

const isSky = (text: string | undefined): text is Sky => SKIES.some((sky) => sky === text);

/** Keeps what was told; what no telescope is would be refused in every answer after it. */
export const keepTold = (
  store: Store,
  { asker, nowUtcMs }: By,
  { kit, sky }: { readonly kit?: string | null | undefined; readonly sky?: string | null | undefined },
): void => {
  if (kit != null && !isProblem(readEquipment(kit))) keepLastAsked(store, asker, kit, nowUtcMs, 'scope');
  if (isSky(sky ?? undefined)) keepLastAsked(store, asker, sky ?? null, nowUtcMs, 'sky');
};

export interface ToldHere {
  /** As it was asked, else as it was told. */
  readonly with: string | undefined;
  readonly sky: Sky | undefined;
  /** That it was taken so, and how to say another. */
  readonly notes: readonly string[];
}

type Given = { readonly with?: string | undefined; readonly sky?: Sky | undefined };

/** What an answer takes that names no telescope or no sky of its own: what was told this evening, else the telescope of their gear. */
export const toldHere = async (
  store: Store,
  request: Asking & { readonly nowUtcMs: UtcMs },
  given: Given,
): Promise<ToldHere> => {
  const told = toldIn(store, request, given);
  const apertureMm = told.with === undefined ? await savedApertureMm(request) : null;
  if (apertureMm === null) return told;
  const kit = `${Math.round(apertureMm)} mm`;
  return { ...told, with: kit, notes: [...told.notes, `For the ${kit} of your gear; say with: for another.`] };
};

const toldIn = (store: Store, { asker, nowUtcMs }: By, given: Given): ToldHere => {
  const kit = given.with === undefined ? lastAsked(store, asker, nowUtcMs, 'scope') : null;
  const kept = given.sky === undefined ? (lastAsked(store, asker, nowUtcMs, 'sky') ?? undefined) : undefined;
  const sky = isSky(kept) ? kept : undefined;
  const named = [...(kit === null ? [] : [kit]), ...(sky === undefined ? [] : [`${sky} sky`])];
  return {
    with: given.with ?? kit ?? undefined,
    sky: given.sky ?? sky,
    notes:
      named.length === 0
        ? []
        : [
            `For the ${named.join(' and ')} you told; say ${[...(kit === null ? [] : ['with:']), ...(sky === undefined ? [] : ['sky:'])].join(' and ')} for another.`,
          ],
  };
};
