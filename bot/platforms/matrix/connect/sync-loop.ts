/** Follows the homeserver's event stream: through outages, over gaps, and without ever moving past a question not yet answered. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { UtcMs } from '../../../sky/types.js';
import type { PierhandMatrixClient } from './client.js';
import { eventsBackwards } from '../rooms/history.js';
import { backOffMs, isLimit, Unreachable, type Homeserver } from './homeserver-call.js';
import type { Content, MatrixEvent } from '../answer/matrix-event.js';
import { eventsIn, isRecord, recordAt, textAt } from '../answer/matrix-event.js';
import { MatrixError } from './sdk.js';

export interface SyncedRoom {
  readonly roomId: string;
  /** Present state as far as it changed. */
  readonly state: readonly MatrixEvent[];
  /** In order; without what was there before the bot joined, and without anything on a first sync. */
  readonly events: readonly MatrixEvent[];
  /** What was said between the bot's invitation and its joining. */
  readonly firstWords: readonly MatrixEvent[];
  /** The bot's own joining, where this sync brings it. */
  readonly joined: MatrixEvent | null;
}

export interface SyncBatch {
  readonly rooms: readonly SyncedRoom[];
  readonly invites: readonly { readonly roomId: string; readonly state: readonly Content[] }[];
  readonly leftRoomIds: readonly string[];
}

export interface SyncOptions {
  readonly client: PierhandMatrixClient;
  /** For the polls alone, which end as soon as the bot stops. */
  readonly poller: Homeserver;
  readonly botId: string;
  readonly readToken: () => Promise<string | null>;
  readonly saveToken: (token: string) => Promise<void>;
  /** The work a batch makes; each resolves to false where it was left undone. Must not reject. */
  readonly onBatch: (batch: SyncBatch) => readonly Promise<boolean>[];
  /** After each answer to a poll. */
  readonly onSynced: () => void;
  readonly onState: (state: 'ready' | 'lost' | 'resumed' | 'refused', detail: string) => void;
  readonly onError: (error: unknown, what: string) => void;
  readonly now: () => UtcMs;
  /** How far back gaps are filled. */
  readonly oldestMs: number;
  readonly stop: AbortSignal;
}

/** Short, as a server may miss waking a poll when something happens just as it comes in; then the next poll brings it. */
const POLL_MS = 10_000;
const LONGEST_SYNC_PAUSE_MS = 5000;
/** So many old events in a row end the look back: one server's wrong clock must not. */
const OLD_IN_A_ROW = 20;
const MOST_UNOPENED = 200;
/** Work under way beyond this holds the next poll back; high, so that one room's backlog holds up no other. */
const MOST_UNDER_WAY = 2000;

/** @param isFirst brings every room's state, of which the members are not needed */
const filter = (isFirst: boolean): string =>
  JSON.stringify({
    presence: { not_types: ['*'] },
    room: {
      ephemeral: { not_types: ['*'] },
      timeline: { limit: isFirst ? 1 : 50 },
      state: { lazy_load_members: isFirst },
    },
  });

const isOwnJoin = (event: MatrixEvent, botId: string): boolean =>
  event.type === 'm.room.member' &&
  event.state_key === botId &&
  textAt(event.content, 'membership') === 'join' &&
  // A new display name is a join event as well.
  textAt(recordAt(event.unsigned, 'prev_content'), 'membership') !== 'join';

const isOwnInvitation = (event: MatrixEvent, botId: string): boolean =>
  event.type === 'm.room.member' && event.state_key === botId && textAt(event.content, 'membership') === 'invite';

/** The homeserver no longer knows the token (it was restored, or replaced): begin anew, as on a first sync. */
const isUnknownPosition = (error: unknown): boolean =>
  error instanceof MatrixError &&
  (error.errcode === 'M_UNKNOWN_POS' || (error.statusCode === 400 && error.errcode !== 'M_LIMIT_EXCEEDED'));

/** Runs until `stop`; resolves when the work under way has ended. Never rejects. */
export const runSync = async (options: SyncOptions): Promise<void> => {
  const { client, poller, botId, readToken, saveToken, onBatch, onSynced, onState, onError, now, oldestMs, stop } =
    options;

  /** The newest event this process has had of each room. */
  const newest = new Map<string, string>();

  /** Back to what was had before: a room that is flooded is not read again and again while the others wait. */
  const gapBefore = async (roomId: string, from: string): Promise<readonly MatrixEvent[]> => {
    const missed: MatrixEvent[] = [];
    const had = newest.get(roomId);
    let old = 0;
    for await (const event of eventsBackwards(client, roomId, from)) {
      if (event.event_id === had) break;
      old = event.origin_server_ts < now() - oldestMs ? old + 1 : 0;
      if (old >= OLD_IN_A_ROW) break;
      missed.unshift(event);
      if (isOwnJoin(event, botId)) break;
    }
    return missed;
  };

  /** Encrypted events that came before their keys. */
  let unopened: { readonly roomId: string; readonly event: MatrixEvent; readonly isFirstWords: boolean }[] = [];
  const keepUnopened = (roomId: string, events: readonly MatrixEvent[], isFirstWords: boolean): void => {
    if (client.encryption === null) return;
    unopened.push(
      ...events
        .filter(({ type, sender }) => type === 'm.room.encrypted' && sender !== botId)
        .map((event) => ({ roomId, event, isFirstWords })),
    );
  };
  const openedSince = async (): Promise<readonly SyncedRoom[]> => {
    const before = unopened.filter(({ event }) => event.origin_server_ts >= now() - oldestMs).slice(-MOST_UNOPENED);
    unopened = [];
    const found: SyncedRoom[] = [];
    for (const waiting of before) {
      const { roomId, event, isFirstWords } = waiting;
      const opened = await client.opened(roomId, event);
      if (opened.type === 'm.room.encrypted') unopened.push(waiting);
      else {
        const [events, firstWords] = isFirstWords ? [[], [opened]] : [[opened], []];
        found.push({ roomId, state: [], events, firstWords, joined: null });
      }
    }
    return found;
  };

  const readRoom = async (roomId: string, raw: Content, isFirst: boolean): Promise<SyncedRoom> => {
    const timeline = recordAt(raw, 'timeline');
    const recent = eventsIn(timeline['events']);
    const state = [...eventsIn(recordAt(raw, 'state')['events']), ...recent].filter(
      (event) => event.state_key !== undefined,
    );
    await client.encryption?.sawState(roomId, state);
    if (isFirst) return { roomId, state, events: [], firstWords: [], joined: null };
    const opened: MatrixEvent[] = [];
    for (const event of recent) opened.push(await client.opened(roomId, event));
    const from = textAt(timeline, 'prev_batch');
    const isWhole = timeline['limited'] !== true || from === null || opened.some((event) => isOwnJoin(event, botId));
    const all = isWhole ? opened : [...(await gapBefore(roomId, from)), ...opened];
    const last = recent.at(-1);
    if (last !== undefined) newest.set(roomId, last.event_id);
    const joinedAt = all.findLastIndex((event) => isOwnJoin(event, botId));
    const joined = all[joinedAt] ?? null;
    const invitedAt = all.slice(0, Math.max(0, joinedAt)).findLastIndex((event) => isOwnInvitation(event, botId));
    const firstWords = invitedAt < 0 ? [] : all.slice(invitedAt + 1, joinedAt);
    const events = all.slice(joinedAt + 1);
    keepUnopened(roomId, firstWords, true);
    keepUnopened(roomId, events, false);
    return { roomId, state, events, firstWords, joined };
  };

  const read = async (raw: Content, isFirst: boolean): Promise<SyncBatch> => {
    // Keys first, so that what they open can be opened.
    await client.encryption?.takeIn(raw);
    const rooms = recordAt(raw, 'rooms');
    const joinedRooms: SyncedRoom[] = [...(await openedSince())];
    for (const [roomId, room] of Object.entries(recordAt(rooms, 'join'))) {
      if (isRecord(room)) joinedRooms.push(await readRoom(roomId, room, isFirst));
    }
    const invites = Object.entries(recordAt(rooms, 'invite')).map(([roomId, room]) => {
      const state = recordAt(isRecord(room) ? room : {}, 'invite_state')['events'];
      return { roomId, state: Array.isArray(state) ? state.filter(isRecord) : [] };
    });
    return { rooms: joinedRooms, invites, leftRoomIds: Object.keys(recordAt(rooms, 'leave')) };
  };

  let token: string | null = null;
  let underWay = 0;
  let saved: Promise<void> = Promise.resolve();
  let leftUndone = false;
  /** Tokens are saved in order, each after all the work before it. */
  const saveAfter = (work: readonly Promise<boolean>[], next: string): void => {
    underWay += work.length;
    saved = saved.then(async () => {
      const done = await Promise.all(work);
      underWay -= work.length;
      if (done.includes(false)) leftUndone = true;
      if (!leftUndone)
        await saveToken(next).catch((error: unknown) => {
          onError(error, 'the place in the event stream was not saved');
        });
    });
  };

  let attempt = 0;
  let wasReady = false;
  const poll = async (): Promise<void> => {
    if (token === null && !wasReady) token = await readToken();
    const isFirst = token === null;
    const answer = await poller.call({
      method: 'GET',
      path: '/_matrix/client/v3/sync',
      patienceMs: 0,
      // After trouble the first answer should come at once: it says that all is well again.
      timeoutMs: isFirst ? 600_000 : POLL_MS + 15_000,
      query: {
        since: token,
        timeout: isFirst || attempt > 0 || !wasReady ? 0 : POLL_MS,
        filter: filter(isFirst),
      },
    });
    const next = isRecord(answer) ? textAt(answer, 'next_batch') : null;
    if (!isRecord(answer) || next === null) throw new Unreachable('the sync answer has no token', true);
    const batch = await read(answer, isFirst);
    saveAfter(onBatch(batch), next);
    token = next;
    onSynced();
  };

  while (!stop.aborted) {
    try {
      await poll();
      if (!wasReady || attempt > 0) onState(wasReady ? 'resumed' : 'ready', '');
      wasReady = true;
      attempt = 0;
      while (underWay > MOST_UNDER_WAY && !stop.aborted) await sleep(200);
    } catch (error) {
      if (stop.aborted) break;
      attempt++;
      let pauseMs = Math.min(LONGEST_SYNC_PAUSE_MS, backOffMs(attempt));
      if (error instanceof MatrixError && error.statusCode === 401) {
        onState('refused', 'the homeserver no longer accepts the access token');
        pauseMs = 60_000;
      } else if (isLimit(error)) {
        pauseMs = Math.max(
          pauseMs,
          Number.isFinite(error.retryAfterMs) ? Math.min(120_000, error.retryAfterMs ?? 0) : 0,
        );
      } else if (token !== null && isUnknownPosition(error)) {
        onError(error, 'the homeserver does not know the place in its event stream; beginning anew');
        token = null;
        wasReady = true;
      } else {
        onState('lost', error instanceof Unreachable ? error.message : 'the sync failed');
        if (!(error instanceof Unreachable)) onError(error, 'reading the event stream failed');
      }
      await sleep(pauseMs, undefined, { signal: stop }).catch(() => undefined);
    }
  }
  await saved;
};
