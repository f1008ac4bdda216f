/** Which walk a line is about, and who speaks in it. */
import { MS_PER_HOUR } from '../../ground/durations.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { WALK_DAYS } from '../../reminders/purge-old.js';
import { gearForOwnWalk } from '../asking/mount-for.js';
import type { Asking } from '../asking/resolve-site.js';
import { startWalk, type Speaker, type TriageModel } from '../../triage/index.js';
import type { Asker, Deps } from '../core/command.js';
import { isLeftBehind } from './just-ended.js';
import { helperName } from './walk-words.js';
import { activeWalk, loadWalk, newWalkId, walkBegunFor, type Walk } from './walk-keeper.js';

export const speakerOf = (walk: Walk, asker: Asker): Speaker | null => {
  if (walk.memberId === asker.memberId) return 'member';
  return walk.helperId === asker.memberId ? 'helper' : null;
};

export const notYours = (walk: Walk): Problem =>
  problem(
    'not-your-walk',
    `Only the one whose mount it is and their helper may answer this walk. To help, write: triage for:@them, or start your own with triage do:new.${walk.endedUtcMs === null ? '' : ' It has ended.'}`,
  );

/** Whoever speaks leaves a name for "who said what". */
export const named = (walk: Walk, by: Speaker, asker: Asker): Walk => {
  const name = tidy(asker.displayName, 40);
  return walk.state.names[by] === name || name === ''
    ? walk
    : { ...walk, state: { ...walk.state, names: { ...walk.state.names, [by]: name } } };
};

const gearKnown = async (request: Asking, model: TriageModel) => {
  const { connection, system } = await gearForOwnWalk(request);
  return { path: connection !== null && model.path(connection) !== undefined ? connection : null, system };
};

const begin = async (
  model: TriageModel,
  request: Asking,
  forMember: string | undefined,
  nowUtcMs: number,
): Promise<Walk> => {
  const { asker } = request;
  const helps = forMember !== undefined && forMember !== asker.memberId;
  const memberId = helps ? forMember : asker.memberId;
  const name = tidy(asker.displayName, 40);
  return {
    id: newWalkId(),
    clubId: asker.clubId,
    memberId,
    helperId: helps ? asker.memberId : null,
    platform: asker.platform,
    channelId: asker.channelId,
    state: startWalk(
      helps ? { member: null, helper: name } : { member: name, helper: null },
      // What another member saved is theirs to say.
      helps ? {} : await gearKnown(request, model),
    ),
    updatedUtcMs: nowUtcMs,
    endedUtcMs: null,
    ...(helps ? { awaitsMember: true as const } : {}),
  };
};

export interface Found {
  readonly walk: Walk;
  readonly isNew: boolean;
  readonly note: string | null;
  /** The asker would help, and the member has to say yes first. */
  readonly asksToHelp?: true;
}

export interface AskedWalk {
  readonly walk?: string | undefined;
  readonly for?: string | undefined;
  readonly fresh: boolean;
}

/** The walk under way about a member, to be joined where the asker is neither of its two; null: none. */
const underWay = async (deps: Deps, asker: Asker, forMember: string | undefined): Promise<Found | Problem | null> => {
  const about = forMember ?? asker.memberId;
  if (about !== asker.memberId) {
    const helped = await activeWalk(deps.store, asker.clubId, about, asker.memberId);
    if (helped !== null) return { walk: helped, isNew: false, note: null };
  }
  const under = await activeWalk(deps.store, asker.clubId, about);
  if (under === null || (forMember !== undefined && under.memberId !== about)) return null;
  if (speakerOf(under, asker) !== null) return { walk: under, isNew: false, note: null };
  // Someone comes to help with a walk the member began.
  if (under.helperId === null) return { walk: under, isNew: false, note: null, asksToHelp: true };
  return problem(
    'has-a-helper',
    'That member already has a helper in a walk under way. They can send the helper away with: triage do:release',
  );
};

/** A walk left for longer no longer takes words that may be meant for something else. */
const WAITS_MS = 3 * MS_PER_HOUR;

/**
 * Points to a walk that another began for the member, here and lately. A line and no more: it is entered by naming it, so nobody can
 * have another answer in a walk of their making unawares.
 */
const begunForThem = async (deps: Deps, asker: Asker, nowUtcMs: number): Promise<string | null> => {
  const walk = await walkBegunFor(deps.store, asker.clubId, asker.memberId);
  if (walk === null || walk.channelId !== asker.channelId || nowUtcMs - walk.updatedUtcMs > WAITS_MS) return null;
  return `${helperName(walk, 'Someone')} began a walk for you here. To answer in that one instead: triage walk:${walk.id}`;
};

export const unknownWalk = (id: string): Problem =>
  problem(
    'unknown-walk',
    `I know no walk "${tidy(id, 12)}"; walks are kept ${WALK_DAYS} days. Start a new one with: triage`,
  );

/** The walk a line is about: the one it names, the one under way, or a new one. */
export const findWalk = async (
  deps: Deps,
  model: TriageModel,
  request: Asking,
  asked: AskedWalk,
  nowUtcMs: number,
): Promise<Found | Problem> => {
  const { asker } = request;
  if (asked.walk !== undefined) {
    const walk = await loadWalk(deps.store, asked.walk.toLowerCase());
    return walk === null ? unknownWalk(asked.walk) : { walk, isNew: false, note: null };
  }
  const helps = asked.for !== undefined && asked.for !== asker.memberId;
  // One walk at a time for each member somebody helps, however often it is begun.
  const under = asked.fresh && !helps ? null : await underWay(deps, asker, asked.for);
  if (under !== null) return under;
  return {
    walk: await begin(model, request, asked.for, nowUtcMs),
    isNew: true,
    note: helps ? null : await begunForThem(deps, asker, nowUtcMs),
  };
};

/** The walk of this asker in this place that is not over, one left behind among them; null: none. */
export const openWalkHere = async (deps: Deps, asker: Asker, nowUtcMs: number): Promise<Walk | null> => {
  const found = await underWay(deps, asker, undefined);
  if (found === null || isProblem(found)) return null;
  const { walk } = found;
  const waits = walk.endedUtcMs === null && nowUtcMs - walk.updatedUtcMs <= WAITS_MS;
  return waits && walk.channelId === asker.channelId ? walk : null;
};

/** The walk of this asker in this place that words may be meant for, one that is mended and rests among them; null: none. */
export const walkHere = async (deps: Deps, asker: Asker, nowUtcMs: number): Promise<Walk | null> => {
  const walk = await openWalkHere(deps, asker, nowUtcMs);
  return walk === null || isLeftBehind(deps.store, asker, walk) ? null : walk;
};

/** The walk of this asker that waits for a word in this place; null: none. */
export const waitingWalk = async (deps: Deps, asker: Asker, nowUtcMs: number): Promise<Walk | null> => {
  const walk = await walkHere(deps, asker, nowUtcMs);
  return walk?.state.rests === true ? null : walk;
};
