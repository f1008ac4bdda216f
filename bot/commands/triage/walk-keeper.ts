/** Keeps walks in the store, or, while the store cannot answer, in this process's memory. */
import { onceOf } from '../../ground/once.js';
import { typableId } from '../../ground/ids.js';
import { readWalkState, type WalkState } from '../../triage/index.js';
import { orWhenSilent } from '../../store/or-when-silent.js';
import { StoreError, type Store, type StoredWalk } from '../../store/store.js';
import { putNewest } from '../../ground/remember.js';

export interface Walk extends Omit<StoredWalk, 'state'> {
  readonly state: WalkState;
}

export interface Kept {
  /** Set when the walk lives in memory alone; fit for a member. */
  readonly trouble: string | null;
}

const MEMORY_LIMIT = 500;

export const newWalkId = (): string => typableId(6);

/** By the part of the store that keeps walks: each request has a store of its own around it. */
const memoryIn = onceOf((_: Store['walks']) => new Map<string, Walk>());
const memoryOf = ({ walks }: Store): Map<string, Walk> => memoryIn(walks);

const fromStored = (stored: StoredWalk): Walk | null => {
  const state = readWalkState(stored.state);
  // A helper whose rows were forgotten leaves no name behind either.
  return state === null
    ? null
    : { ...stored, state: stored.helperId === null ? { ...state, names: { ...state.names, helper: null } } : state };
};

const walkFrom = (stored: StoredWalk | null): Walk | null => (stored === null ? null : fromStored(stored));

const lookUp = async (store: Store, id: string, whenSilent: Walk | null): Promise<Walk | null> =>
  memoryOf(store).get(id) ?? orWhenSilent(async () => walkFrom(await store.walks.get(id)), whenSilent);

export const loadWalk = (store: Store, id: string): Promise<Walk | null> => lookUp(store, id, null);

/** A walk found before, as it stands now; null where it has been forgotten since. While the store cannot answer, as it was found. */
export const latestOf = (store: Store, walk: Walk): Promise<Walk | null> => lookUp(store, walk.id, walk);

/** The newest walk under way about a member, or helped by them, in a club; none that awaits them. With `helperId`: about them, with that helper. */
export const activeWalk = async (
  store: Store,
  clubId: string,
  memberId: string,
  helperId?: string,
): Promise<Walk | null> => {
  const isTheirs = (walk: Walk): boolean =>
    helperId === undefined
      ? (walk.memberId === memberId && walk.awaitsMember !== true) || walk.helperId === memberId
      : walk.memberId === memberId && walk.helperId === helperId;
  const remembered = [...memoryOf(store).values()]
    .reverse()
    .find((walk) => walk.clubId === clubId && walk.endedUtcMs === null && isTheirs(walk));
  if (remembered !== undefined) return remembered;
  return orWhenSilent(async () => walkFrom(await store.walks.active(clubId, memberId, helperId)), null);
};

/** The newest walk that another began for this member in a club and that waits for their first word. */
export const walkBegunFor = (store: Store, clubId: string, memberId: string): Promise<Walk | null> =>
  orWhenSilent(async () => walkFrom(await store.walks.waiting(clubId, memberId)), null);

/** Never rejects with a StoreError: a walk at the pier must go on. A walk kept in memory moves to the store once that answers again. */
export const keepWalk = async (store: Store, walk: Walk): Promise<Kept> => {
  const memory = memoryOf(store);
  try {
    await store.walks.put({ ...walk, state: walk.state });
    memory.delete(walk.id);
    return { trouble: null };
  } catch (error) {
    if (!(error instanceof StoreError)) throw error;
    putNewest(memory, walk.id, walk, MEMORY_LIMIT);
    return { trouble: 'My store does not answer, so this walk is kept only until I restart.' };
  }
};

/** Forgets what is remembered in memory alone about a member; the store's own rows are the store's to remove. Returns how many. */
export const forgetRemembered = (store: Store, memberId: string): number => {
  const memory = memoryOf(store);
  const theirs = [...memory.values()].filter((walk) => walk.memberId === memberId || walk.helperId === memberId);
  for (const { id } of theirs) memory.delete(id);
  return theirs.length;
};

/** Beyond this a cause grows no likelier: one diligent group must not drown what the questions say. */
export const MOST_COUNTED = 20;

/** Causes confirmed in this club; none where the store cannot say. */
export const clubOutcomes = (store: Store, clubId: string): Promise<Readonly<Record<string, number>>> =>
  orWhenSilent(async () => {
    const counts = await store.outcomes.counts(clubId);
    return Object.fromEntries(
      Object.entries(counts).map(([faultId, times]) => [faultId, Math.min(times, MOST_COUNTED)]),
    );
  }, {});
