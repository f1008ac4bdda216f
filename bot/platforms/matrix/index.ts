/** Pierhand on Matrix: the same commands as everywhere, in the rooms of one account. */
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { StartError } from '../../ground/start-error.js';
import type { MatrixSettings } from '../../app/settings.js';
import { deliveryKey } from '../../reminders/delivery-key.js';
import type { Reminder } from '../../store/store.js';
import { type PlatformContext, type RunningPlatform } from '../../app/platform.js';
import { createRateLimit, type BucketSize } from '../shared/rate-limit.js';
import { createAnswerer, eventKey, OLDEST_ANSWERED_MS } from './answer/answer.js';
import { PierhandMatrixClient } from './connect/client.js';
import { createDirectRooms } from './rooms/direct-rooms.js';
import { homeserverAt } from './connect/homeserver-call.js';
import { logIn } from './connect/login.js';
import { isRecord, textAt } from './answer/matrix-event.js';
import { createMembership } from './rooms/membership.js';
import { nativeCrypto } from './connect/native-crypto.js';
import { createOutbox } from './connect/outbox.js';
import { createPendingAnswers } from './answer/pending-answers.js';
import { createRooms, isEncrypted } from './rooms/rooms.js';
import { LogService, MatrixError, RustSdkCryptoStorageProvider } from './connect/sdk.js';
import { runSync, type SyncBatch } from './connect/sync-loop.js';
import { plainNotice } from './answer/write-reply.js';

export interface Tuning {
  /** Questions one member may ask. */
  readonly perMember: BucketSize;
}
const DEFAULT_TUNING: Tuning = { perMember: { burst: 10, perSecond: 1 / 3 } };

/** Answers under way get this long to finish when the bot stops. */
const STOP_PATIENCE_MS = 8000;
/** Shorter than a reminder is held by one process; it comes again. */
const DELIVER_PATIENCE_MS = 40_000;
/** A sync this old means that the connection is lost, whatever else is said. */
const STALE_SYNC_MS = 90_000;

/** The SDK says every refused request at its error level; what matters of that the bot says itself. */
const quietSdkLog = (log: PlatformContext['log']): void => {
  const say = (module: string, ...message: readonly unknown[]): void => {
    const [first] = message;
    log.debug({ sdk: module }, typeof first === 'string' ? first.slice(0, 300) : 'sdk message');
  };
  LogService.setLogger({ trace: () => undefined, debug: () => undefined, info: say, warn: say, error: say });
};

const prepareKeys = async (client: PierhandMatrixClient, keyFolder: string): Promise<void> => {
  try {
    await client.crypto.prepare(await client.getJoinedRooms());
  } catch (error) {
    const why = error instanceof Error ? error.message.split('\n')[0] : 'error';
    throw new StartError(
      `PIERHAND_DATA: the Matrix encryption keys in ${keyFolder} cannot be used (${why}). Moved elsewhere, new ones are made.`,
    );
  }
};

/**
 * Logs in and follows the rooms. Resolves once the homeserver has accepted the session; rooms are caught up with after that.
 * @throws StartError where the settings or credentials do not work
 */
export const startMatrix = async (context: PlatformContext, tuning = DEFAULT_TUNING): Promise<RunningPlatform> => {
  const { deps, settings, log, metrics, now } = context;
  const matrix = settings.matrix as MatrixSettings;
  quietSdkLog(log);
  const ending = new AbortController();
  const stopping = new AbortController();
  const session = await logIn(matrix, settings.dataFolder, ending.signal);
  const botId = session.userId;
  const homeserver = homeserverAt(matrix.homeserverUrl, session.accessToken, ending.signal, (reason, pauseMs) => {
    log.debug({ reason, pauseMs }, 'waiting for the homeserver');
  });
  // Keys belong to a device: a new token means new ones.
  const keyFolder = path.join(
    settings.dataFolder,
    'matrix-keys',
    encodeURIComponent(session.deviceId ?? 'device').replaceAll('.', '%2E'),
  );
  const crypto =
    nativeCrypto === null ? null : new RustSdkCryptoStorageProvider(keyFolder, nativeCrypto.StoreType.Sqlite);
  const client = new PierhandMatrixClient(matrix.homeserverUrl, session.accessToken, crypto, homeserver);
  if (client.hasCrypto) await prepareKeys(client, keyFolder);
  else log.info('the native encryption package is not there: encrypted rooms cannot be read');

  const tokenNote = `matrix:${botId}:sync-token`;
  const startedUtcMs = now();
  const rooms = createRooms(homeserver);
  const direct = createDirectRooms(client, botId, rooms);
  const outbox = createOutbox(client, botId, OLDEST_ANSWERED_MS, ending.signal);
  const pending = createPendingAnswers(deps.store.notes, `matrix:${botId}:pending-answers`, (error) => {
    log.warn({ err: error }, 'cannot keep answers under way in the store');
  });
  const leftOver = new Set<string>();
  let botName = '';
  const answer = createAnswerer({
    context,
    client,
    botId,
    botName: () => botName,
    rooms,
    direct,
    outbox,
    pending,
    leftOver,
    startedUtcMs,
    limit: createRateLimit(tuning.perMember),
    stop: ending.signal,
  });
  const membership = createMembership({
    client,
    botId,
    rooms,
    direct,
    outbox,
    log,
    notes: deps.store.notes,
    allowed: matrix.allowed,
    prefix: settings.prefix,
    stop: ending.signal,
  });
  const readOwnName = async (): Promise<void> => {
    const profile: unknown = await client.getUserProfile(botId).catch(() => null);
    botName = (isRecord(profile) ? textAt(profile, 'displayname') : null) ?? botName;
  };
  await readOwnName();

  /** One thing after another in a room, rooms side by side. */
  const queues = new Map<string, Promise<unknown>>();
  const inRoom = (roomId: string, work: () => Promise<boolean>): Promise<boolean> => {
    const result = (queues.get(roomId) ?? Promise.resolve()).then(work);
    queues.set(roomId, result);
    void result.finally(() => {
      if (queues.get(roomId) === result) queues.delete(roomId);
    });
    return result;
  };
  const done = async (work: Promise<void>): Promise<boolean> => {
    await work;
    return !ending.signal.aborted;
  };

  const onBatch = (batch: SyncBatch): readonly Promise<boolean>[] => {
    for (const roomId of batch.leftRoomIds) rooms.forget(roomId);
    for (const { roomId, state, joined } of batch.rooms) {
      if (joined !== null) rooms.forget(roomId);
      for (const event of state) {
        rooms.apply(roomId, event);
        if (event.type === 'm.room.member' && event.state_key === botId)
          botName = textAt(event.content, 'displayname') ?? botName;
      }
    }
    const work: Promise<boolean>[] = batch.invites.map(({ roomId, state }) =>
      inRoom(roomId, () => done(membership.invited(roomId, state))),
    );
    // Before any answer: one of them may be about to make the same direct room again.
    for (const { roomId, state } of batch.rooms) {
      const create = state.find(({ type }) => type === 'm.room.create');
      if (create !== undefined) work.push(done(membership.made(roomId, create)));
    }
    for (const { roomId, events, joined } of batch.rooms) {
      if (joined !== null) work.push(inRoom(roomId, () => done(membership.joined(roomId, joined))));
      for (const event of events) {
        if (event.type === 'm.room.message' || event.type === 'm.reaction')
          work.push(inRoom(roomId, () => answer(roomId, event)));
        if (!client.hasCrypto && (event.type === 'm.room.encrypted' || event.type === 'm.room.encryption'))
          work.push(inRoom(roomId, () => done(unreadable(roomId))));
        if (event.type === 'm.room.tombstone') work.push(inRoom(roomId, () => done(membership.upgraded(event))));
      }
      const someoneLeft = events.some(
        ({ type, content, state_key: who }) =>
          type === 'm.room.member' && who !== botId && ['leave', 'ban'].includes(textAt(content, 'membership') ?? ''),
      );
      if (someoneLeft) work.push(inRoom(roomId, () => done(membership.leaveIfEmpty(roomId))));
    }
    return work;
  };
  const unreadable = async (roomId: string): Promise<void> => {
    if (isEncrypted(await rooms.state(roomId))) await membership.tellUnreadable(roomId);
  };

  let lastSyncUtcMs = startedUtcMs;
  let trouble: string | null = 'not connected yet';
  const following = runSync({
    poller: homeserverAt(matrix.homeserverUrl, session.accessToken, stopping.signal),
    client,
    botId,
    now,
    onBatch,
    oldestMs: OLDEST_ANSWERED_MS,
    stop: stopping.signal,
    readToken: async () => {
      for (const key of await deps.store.events.unanswered(eventKey(botId, ''), startedUtcMs - 2 * OLDEST_ANSWERED_MS))
        leftOver.add(key);
      await pending.load();
      return deps.store.notes.get(tokenNote);
    },
    saveToken: (token) => deps.store.notes.set(tokenNote, token),
    onSynced: () => {
      lastSyncUtcMs = now();
    },
    onState: (state, detail) => {
      metrics.connection('matrix', state);
      const wasWell = trouble === null;
      trouble = state === 'ready' || state === 'resumed' ? null : detail;
      if (trouble === null) log.info({ state }, 'following the Matrix rooms');
      else if (wasWell || state === 'refused')
        log[state === 'refused' ? 'error' : 'warn']({ detail }, 'not connected to the homeserver; trying again');
    },
    onError: (error, what) => {
      metrics.failed('matrix', 'sync');
      log.error({ err: error }, what);
    },
  });
  void leaveEmptyRooms();
  async function leaveEmptyRooms(): Promise<void> {
    const joined = await client.getJoinedRooms().catch(() => []);
    for (const roomId of joined) {
      if (stopping.signal.aborted) return;
      const members = await client.getJoinedRoomMembers(roomId).catch(() => []);
      if (members.length === 1) await membership.leaveIfEmpty(roomId);
    }
  }

  const deliver = async (reminder: Reminder, text: string): Promise<'sent' | 'gone'> => {
    try {
      const userId = reminder.memberId.replace(/^matrix:/u, '');
      const roomId =
        reminder.to === 'member' ? (await direct.with(userId)).roomId : reminder.channelId.replace(/^matrix:/u, '');
      await outbox.send({
        roomId,
        type: 'm.room.message',
        name: 'text',
        answersId: `reminder ${deliveryKey(reminder)}`,
        askedUtcMs: reminder.dueUtcMs,
        maybeSent: true,
        patienceMs: DELIVER_PATIENCE_MS,
        // Not a notice: those ring no phone (Matrix specification, push rules, ".m.rule.suppress_notices"), and a reminder must.
        content: { ...plainNotice(text), msgtype: 'm.text' },
      });
      return 'sent';
    } catch (error) {
      if (error instanceof MatrixError && [400, 403, 404].includes(error.statusCode)) return 'gone';
      throw error;
    }
  };

  return {
    name: 'matrix',
    deliver,
    health: () => {
      const isStale = now() - lastSyncUtcMs > STALE_SYNC_MS;
      return {
        ok: trouble === null && !isStale,
        detail: trouble ?? (isStale ? 'no answer from the homeserver for a while' : `following the rooms of ${botId}`),
      };
    },
    stop: async () => {
      stopping.abort();
      await Promise.race([following, sleep(STOP_PATIENCE_MS, undefined, { ref: false })]);
      ending.abort();
      await following;
    },
  };
};
