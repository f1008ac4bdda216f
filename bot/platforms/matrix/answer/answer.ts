/** One member's event from reading to answered: is it meant for the bot, may they ask, run it, say it, each exactly once. */
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import type { UtcMs } from '../../../sky/types.js';
import { outcomeLabel } from '../../../app/metrics.js';
import type { PlatformContext } from '../../../app/platform.js';
import { createAnswerOnce } from '../../shared/answer-once.js';
import { tooManyWords } from '../../shared/busy-words.js';
import type { RateLimit } from '../../shared/rate-limit.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import type { Outbox } from '../connect/outbox.js';
import { MatrixError } from '../connect/sdk.js';
import type { DirectRooms } from '../rooms/direct-rooms.js';
import { displayNameIn, isEncrypted, isPrivateBetween, type Rooms } from '../rooms/rooms.js';
import { findTask, type Task } from './find-task.js';
import type { MatrixEvent } from './matrix-event.js';
import { answerRelation } from './matrix-event.js';
import { createOffers } from './offers.js';
import type { FileReader } from './member-file.js';
import type { PendingAnswers } from './pending-answers.js';
import { askedIn } from './read-message.js';
import { askerIn, createRunner, type Done } from './run-task.js';
import { createSpeaker } from './say-outcome.js';
import { plainNotice } from './write-reply.js';

/** Older questions are not answered: their moment has passed. */
export const OLDEST_ANSWERED_MS = 10 * MS_PER_MINUTE;

export interface AnswerParts {
  readonly context: PlatformContext;
  readonly client: PierhandMatrixClient;
  readonly botId: string;
  readonly botName: () => string;
  readonly rooms: Rooms;
  readonly direct: DirectRooms;
  readonly outbox: Outbox;
  readonly pending: PendingAnswers;
  /** The file that a message holds. */
  readonly fileIn: FileReader;
  readonly limit: RateLimit;
  /** How often one member may have the server asked for what a reply or a reaction names. */
  readonly lookUps: RateLimit;
  /** Keys claimed by a process that died before it had answered. */
  readonly leftOver: Set<string>;
  readonly startedUtcMs: UtcMs;
  /** A clock that never jumps: limits go by it, as the times on events are their senders' word. */
  readonly ticksMs: () => number;
  readonly stop: AbortSignal;
}

/** Answers one event. Never rejects; false: left undone because the bot is stopping, to be taken up at the next start. */
export type Answerer = (roomId: string, event: MatrixEvent, arrivedMs: number) => Promise<boolean>;

export const eventKey = (botId: string, eventId: string): string => `matrix:${botId}:${eventId}`;

export const createAnswerer = (parts: AnswerParts): Answerer => {
  const { context, client, botId, rooms, outbox, pending, limit, leftOver, startedUtcMs, ticksMs } = parts;
  const { log, metrics, now, settings } = context;
  const once = createAnswerOnce(context, { leftOver });
  const offers = createOffers({ client, botId, now, ticksMs, lookUps: parts.lookUps });
  const say = createSpeaker({ context, client, direct: parts.direct, outbox, offers, ticksMs });
  const run = createRunner(context, client);

  const settle = async (key: string): Promise<void> => {
    await once.settle(key);
    await pending.done(key);
  };

  const isOurs = ({ type, sender, origin_server_ts: sentUtcMs }: MatrixEvent): boolean =>
    sender !== botId && sentUtcMs >= now() - OLDEST_ANSWERED_MS && (type === 'm.room.message' || type === 'm.reaction');

  /** What the event asks of the bot, or null. */
  const taskIn = async (roomId: string, event: MatrixEvent, arrivedMs: number): Promise<Task | null> => {
    const state = await rooms.state(roomId);
    // What is said in the clear in an encrypted room must not be answered in the clear there.
    if (isEncrypted(state) && client.encryption === null) return null;
    const me = { userId: botId, names: [parts.botName(), displayNameIn(state, botId) ?? ''], prefix: settings.prefix };
    const asked = askedIn(event, me, isPrivateBetween(state, botId, event.sender));
    return asked === null ? null : findTask(offers, parts.fileIn, { roomId, event, asked, arrivedMs });
  };

  /** One kind word, then silence until there is room again; false where the member may ask. */
  const isTooMany = async (roomId: string, event: MatrixEvent, key: string): Promise<boolean> => {
    const refused = limit.take(event.sender, ticksMs());
    if (refused === null) return false;
    metrics.limited('matrix', 'member');
    if (refused.again || (await once.claim(key)) === 'again') return true;
    await outbox.send({
      roomId,
      type: 'm.room.message',
      answersId: event.event_id,
      askedUtcMs: event.origin_server_ts,
      name: 'text',
      maybeSent: event.origin_server_ts < startedUtcMs,
      content: plainNotice(tooManyWords(refused.waitSeconds), { 'm.relates_to': answerRelation(event) }),
    });
    await settle(key);
    return true;
  };

  /** Runs the task unless an earlier process has, and says what came of it. */
  const carryOut = async (roomId: string, event: MatrixEvent, task: Task, maybeSent: boolean): Promise<void> => {
    const key = eventKey(botId, event.event_id);
    const state = await rooms.state(roomId);
    const isPrivate = isPrivateBetween(state, botId, event.sender);
    const asker = askerIn(roomId, event.sender, state, isPrivate);
    const askedUtcMs = Math.min(now(), event.origin_server_ts);
    const kept = pending.get(key);
    const done: Done | null =
      kept === undefined ? await run(task.run, asker, state, askedUtcMs) : { name: 'again', outcome: kept };
    if (done === null) return;
    const { name, outcome } = done;
    if (kept === undefined)
      await pending.put(key, {
        outcome,
        memberId: asker.memberId,
        isPrivate: isPrivate || outcome.audience === 'asker',
      });
    await say({
      roomId,
      event,
      outcome,
      relation: task.relation,
      askedUtcMs,
      askerName: asker.displayName,
      isPrivate,
      maybeSent,
    });
    metrics.answered({
      platform: 'matrix',
      command: name,
      outcome: outcomeLabel(outcome),
      seconds: Math.max(0, now() - askedUtcMs) / 1000,
    });
  };

  const handle = async (roomId: string, event: MatrixEvent, arrivedMs: number): Promise<void> => {
    const key = eventKey(botId, event.event_id);
    if (!isOurs(event)) return;
    const task = await taskIn(roomId, event, arrivedMs);
    if (task === null) return;
    if (once.isSeen(key)) {
      metrics.duplicate('matrix');
      return;
    }
    // Before anything that costs: a flood is a look at a number.
    const isBegun = leftOver.has(key) || pending.get(key) !== undefined;
    if (!isBegun && (await isTooMany(roomId, event, key))) return;
    const claimed = await once.claim(key);
    if (claimed === 'again') {
      metrics.duplicate('matrix');
      return;
    }
    const maybeSent = claimed === 'left-over' || event.origin_server_ts < startedUtcMs;
    // Not in the store, yet from before this start: if the store was lost, the room still knows.
    const isAnswered =
      claimed === 'first' &&
      maybeSent &&
      (await outbox.sentParts(roomId, event.event_id, event.origin_server_ts)).size > 0;
    if (!isAnswered) await carryOut(roomId, event, task, maybeSent);
    await settle(key);
  };

  return async (roomId, event, arrivedMs) => {
    try {
      await handle(roomId, event, arrivedMs);
      return true;
    } catch (error) {
      if (parts.stop.aborted) return false;
      // A room may well forbid the bot to speak; that is no fault.
      if (error instanceof MatrixError) log.warn({ errcode: error.errcode }, 'the homeserver refused an answer');
      else log.error({ err: error }, 'cannot answer a Matrix event');
      metrics.failed('matrix', 'send');
      await settle(eventKey(botId, event.event_id)).catch(() => undefined);
      return true;
    }
  };
};
