/** Logs in once and follows the rooms of the account: the sync, the answers, the invitations and the reminders. */
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { StartError } from '../../ground/start-error.js';
import type { MatrixSettings } from '../../app/settings.js';
import { deliveryKey } from '../../reminders/delivery-key.js';
import type { Reminder } from '../../store/store.js';
import { type PlatformContext, type RunningPlatform } from '../../app/platform.js';
import { createRateLimit, type BucketSize } from '../shared/rate-limit.js';
import { createTurns } from '../shared/take-turns.js';
import { createAnswerer, eventKey, OLDEST_ANSWERED_MS } from './answer/answer.js';
import { PierhandMatrixClient } from './connect/client.js';
import { createDirectRooms } from './rooms/direct-rooms.js';
import { homeserverAt, isLimit, Unreachable } from './connect/homeserver-call.js';
import { logIn } from './connect/login.js';
import { needWritable, NotNow } from './connect/not-now.js';
import { isRecord, textAt } from './answer/matrix-event.js';
import { createMembership } from './rooms/membership.js';
import { createBatchTaker } from './rooms/take-batch.js';
import { createFileReader } from './answer/member-file.js';
import { createMissingKeys } from './answer/missing-keys.js';
import { KeysLost } from './connect/encryption-engine.js';
import { openEncryption, type Encryption, type EncryptionParts } from './connect/encryption.js';
import { nativeCrypto } from './connect/native-crypto.js';
import { createOutbox } from './connect/outbox.js';
import { createPendingAnswers } from './answer/pending-answers.js';
import { createRooms, readersIn } from './rooms/rooms.js';
import { LogService, MatrixError } from './connect/sdk.js';
import { runSync } from './connect/sync-loop.js';
import { plainNotice } from './answer/write-reply.js';

export interface Tuning {
  /** Questions one member may ask. */
  readonly perMember: BucketSize;
}
const DEFAULT_TUNING: Tuning = { perMember: { burst: 10, perSecond: 1 / 3 } };
/** Invitations taken from one member: ten, and one more each ten minutes. */
const INVITATIONS: BucketSize = { burst: 10, perSecond: 1 / 600 };
/** Limits go by a clock that never jumps. */
const ticksMs = (): number => performance.now();

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

/**
 * Null where the keys of this device are lost: then the bot does without.
 * @throws StartError where the kept keys cannot be used; NotNow where the homeserver is away or the disk is full
 */
const startEncryption = async (parts: EncryptionParts, log: PlatformContext['log']): Promise<Encryption | null> => {
  try {
    return await openEncryption(parts);
  } catch (error) {
    if (error instanceof KeysLost) {
      log.error(
        'MATRIX_ACCESS_TOKEN: its device has encryption keys that are not in the data folder, so encrypted rooms cannot be read; a new token, from a new login, mends it',
      );
      return null;
    }
    if (error instanceof Unreachable || isLimit(error)) throw new NotNow(error.message, 0);
    needWritable(path.dirname(parts.keyFolder));
    const why = error instanceof Error ? error.message.split('\n')[0] : 'error';
    throw new StartError(
      `PIERHAND_DATA: the Matrix encryption keys in ${parts.keyFolder} cannot be used (${why}). Moved elsewhere, new ones are made.`,
    );
  }
};

/**
 * Logs in and follows the rooms. Resolves once the homeserver has accepted the session; rooms are caught up with after that.
 * @param given.stop ends it while it is still logging in; afterwards the platform's own `stop` does
 * @throws StartError where the settings or credentials do not work; NotNow where waiting may help
 */
export const followRooms = async (
  context: PlatformContext,
  { stop, tuning = DEFAULT_TUNING }: { readonly stop: AbortSignal; readonly tuning?: Tuning | undefined },
): Promise<RunningPlatform> => {
  const { deps, settings, log, metrics, now } = context;
  const matrix = settings.matrix as MatrixSettings;
  quietSdkLog(log);
  const ending = new AbortController();
  const stopping = new AbortController();
  const endEarly = (): void => ending.abort();
  stop.addEventListener('abort', endEarly, { once: true });
  const session = await logIn(matrix, settings.dataFolder, ending.signal);
  const botId = session.userId;
  const homeserver = homeserverAt(matrix.homeserverUrl, session.accessToken, ending.signal, (reason, pauseMs) => {
    log.debug({ reason, pauseMs }, 'waiting for the homeserver');
  });
  const client = new PierhandMatrixClient(matrix.homeserverUrl, session.accessToken, homeserver);
  const rooms = createRooms(homeserver);
  const { deviceId } = session;
  if (nativeCrypto === null || deviceId === null)
    log.info('the native encryption library is not there: encrypted rooms cannot be read');
  else
    client.encryption = await startEncryption(
      {
        native: nativeCrypto,
        homeserver,
        userId: botId,
        deviceId,
        // Keys belong to a device: a new token means new ones.
        keyFolder: path.join(settings.dataFolder, 'matrix-keys', encodeURIComponent(deviceId).replaceAll('.', '%2E')),
        readersOf: async (roomId) => readersIn(await rooms.state(roomId)),
        onError: (error) => {
          log.warn({ err: error }, 'keys could not be exchanged; trying again with the next sync');
        },
      },
      log,
    );

  const tokenNote = `matrix:${botId}:sync-token`;
  const startedUtcMs = now();
  const direct = createDirectRooms(client, botId, rooms);
  const outbox = createOutbox(client, botId, OLDEST_ANSWERED_MS, ending.signal);
  const pending = createPendingAnswers(deps.store.notes, `matrix:${botId}:pending-answers`, now, (error) => {
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
    fileIn: createFileReader({
      homeserverUrl: matrix.homeserverUrl,
      accessToken: session.accessToken,
      encryption: () => client.encryption,
      takeTurn: createTurns().take,
    }),
    limit: createRateLimit(tuning.perMember),
    lookUps: createRateLimit(DEFAULT_TUNING.perMember),
    ticksMs,
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
    invitations: createRateLimit(INVITATIONS),
    ticksMs,
    stop: ending.signal,
  });
  const readOwnName = async (): Promise<void> => {
    const profile: unknown = await client.getUserProfile(botId).catch(() => null);
    botName = (isRecord(profile) ? textAt(profile, 'displayname') : null) ?? botName;
  };
  await readOwnName();
  stop.removeEventListener('abort', endEarly);

  const onBatch = createBatchTaker({
    client,
    botId,
    rooms,
    membership,
    answer,
    missingKey: createMissingKeys({
      client,
      rooms,
      outbox,
      log,
      now,
      ticksMs,
      oldestMs: OLDEST_ANSWERED_MS,
      stop: ending.signal,
    }),
    onOwnName: (name) => {
      botName = name;
    },
    ticksMs,
    stop: ending.signal,
  });

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
      if (stopping.signal.aborted) return;
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
  const leaveEmptyRooms = async (): Promise<void> => {
    const joined = await client.getJoinedRooms().catch(() => []);
    for (const roomId of joined) {
      if (stopping.signal.aborted) return;
      const members = await client.getJoinedRoomMembers(roomId).catch(() => []);
      if (members.length === 1) await membership.leaveIfEmpty(roomId);
    }
  };
  void leaveEmptyRooms();

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
      await client.encryption?.close();
    },
  };
};
