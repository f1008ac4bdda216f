/** One member's event from reading to answered: who asks, what is asked, run it, say it, each exactly once. */
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import { isProblem, problem } from '../../../ground/problem.js';
import { tidy } from '../../../ground/tidy.js';
import type { Asker } from '../../../commands/core/command.js';
import { runCommand } from '../../../commands/core/dispatch.js';
import { parseLine } from '../../../commands/core/grammar.js';
import { renderChart } from '../../../reply/render-chart.js';
import type { Chart, Outcome } from '../../../reply/reply.js';
import type { UtcMs } from '../../../sky/types.js';
import { outcomeLabel } from '../../../app/metrics.js';
import type { PlatformContext } from '../../../app/platform.js';
import type { RateLimit } from '../../shared/rate-limit.js';
import { keycap } from './choices.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import type { DirectRooms } from '../rooms/direct-rooms.js';
import { offerFor } from './find-choices.js';
import type { Content, MatrixEvent } from './matrix-event.js';
import { answerRelation, relationTo, threadRootOf } from './matrix-event.js';
import { withMemberIds } from './member-option.js';
import type { Outbox } from '../connect/outbox.js';
import type { PendingAnswers } from './pending-answers.js';
import { askedIn, type Asked } from './read-message.js';
import { displayNameIn, isEncrypted, isPrivateBetween, mayManage, type Rooms, type RoomState } from '../rooms/rooms.js';
import { MatrixError } from '../connect/sdk.js';
import { chartImage, plainNotice, reactionsFor, writeOutcome } from './write-reply.js';

/** Older questions are not answered: their moment has passed. */
export const OLDEST_ANSWERED_MS = 10 * MS_PER_MINUTE;

/** Where the server limits the bot, its number reactions are the first to go. */
const REACTION_PATIENCE_MS = 3000;

export interface AnswerParts {
  readonly context: PlatformContext;
  readonly client: PierhandMatrixClient;
  readonly botId: string;
  readonly botName: () => string;
  readonly rooms: Rooms;
  readonly direct: DirectRooms;
  readonly outbox: Outbox;
  readonly pending: PendingAnswers;
  readonly limit: RateLimit;
  /** Keys claimed by a process that died before it had answered. */
  readonly leftOver: Set<string>;
  readonly startedUtcMs: UtcMs;
  readonly stop: AbortSignal;
}

/** What is to be run, and where its answer belongs. */
interface Task {
  readonly line: string;
  readonly relation: Content;
}

export const eventKey = (botId: string, eventId: string): string => `matrix:${botId}:${eventId}`;

/** Answers events. Never rejects; false: left undone because the bot is stopping, to be taken up at the next start. */
export const createAnswerer = (parts: AnswerParts): ((roomId: string, event: MatrixEvent) => Promise<boolean>) => {
  const { context, client, botId, botName, rooms, direct, outbox, pending, limit, leftOver, startedUtcMs, stop } =
    parts;
  const { deps, log, metrics, now, settings } = context;
  /** Stands in for the store where it cannot answer. */
  const seen = new Set<string>();

  const claim = async (key: string): Promise<'fresh' | 'left-over' | 'done'> => {
    if (seen.has(key)) return 'done';
    seen.add(key);
    if (seen.size > 10_000) seen.delete(seen.values().next().value ?? '');
    if (leftOver.delete(key)) return 'left-over';
    try {
      return (await deps.store.events.claim(key, now())) ? 'fresh' : 'done';
    } catch (error) {
      log.warn({ err: error }, 'cannot claim a Matrix event in the store; answering all the same');
      return 'fresh';
    }
  };

  const settle = async (key: string): Promise<void> => {
    try {
      await deps.store.events.answered(key);
    } catch (error) {
      log.warn({ err: error }, 'cannot mark a Matrix event as answered');
    }
    await pending.done(key);
  };

  /** The line to run, or words for a pick that cannot be, or null where nothing was meant for the bot. */
  const taskFor = async (
    roomId: string,
    event: MatrixEvent,
    asked: Asked,
  ): Promise<Task | { readonly problem: Outcome } | null> => {
    if (asked.kind === 'line') return { line: asked.line, relation: answerRelation(event) };
    const offer = await offerFor(client, botId, roomId, event, asked, event.origin_server_ts);
    const run = offer?.runs[asked.number - 1];
    if (offer !== null && run !== undefined) {
      // Nothing can be a reply to a reaction; the answer follows the offer instead.
      return {
        line: run,
        relation:
          asked.kind === 'reaction'
            ? relationTo(offer.event.event_id, threadRootOf(offer.event))
            : answerRelation(event),
      };
    }
    if (asked.kind === 'reaction') return null;
    if (offer !== null && (asked.addressed || asked.repliedTo !== null)) {
      return {
        problem: problem('no-such-choice', `Choose a number from 1 to ${offer.runs.length}, or ask another question.`),
      };
    }
    return asked.addressed
      ? {
          problem: problem('no-such-choice', 'There is nothing to choose from just now. Ask a question, or type help.'),
        }
      : null;
  };

  const askerOf = (roomId: string, event: MatrixEvent, state: RoomState, isPrivate: boolean): Asker => {
    const memberId = `matrix:${event.sender}`;
    return {
      platform: 'matrix',
      memberId,
      displayName:
        tidy(displayNameIn(state, event.sender) ?? '', 60) || tidy(event.sender.slice(1).replace(/:.*$/u, ''), 60),
      clubId: isPrivate ? memberId : `matrix:${roomId}`,
      channelId: roomId,
      isManager: isPrivate || mayManage(state, event.sender),
      isPrivate,
    };
  };

  const run = async (
    roomId: string,
    state: RoomState,
    line: string,
    asker: Asker,
    askedUtcMs: UtcMs,
  ): Promise<{ readonly name: string; readonly outcome: Outcome }> => {
    const parsed = parseLine(line, deps.commands);
    if (isProblem(parsed)) return { name: 'unknown', outcome: parsed };
    const { command } = parsed;
    const raw = withMemberIds(command, parsed.raw, state);
    if (isProblem(raw)) return { name: command.name, outcome: raw };
    const typing = command.slow === true;
    if (typing) void client.setTyping(roomId, true, 20_000).catch(() => undefined);
    const outcome = await runCommand(deps, command, raw, asker, askedUtcMs, (error, name) => {
      log.error({ err: error, command: name }, 'a command failed');
      metrics.failed('matrix', 'command');
    });
    if (typing) void client.setTyping(roomId, false).catch(() => undefined);
    return { name: command.name, outcome };
  };

  const answer = async (
    roomId: string,
    event: MatrixEvent,
    state: RoomState,
    task: Task | { readonly problem: Outcome },
    key: string,
    maybeSent: boolean,
  ): Promise<void> => {
    const isPrivate = isPrivateBetween(state, botId, event.sender);
    const asker = askerOf(roomId, event, state, isPrivate);
    const askedUtcMs = Math.min(now(), event.origin_server_ts);
    const relation = 'line' in task ? task.relation : answerRelation(event);
    const part = (room: string, name: string, content: Content) =>
      outbox.send({
        roomId: room,
        type: 'm.room.message',
        answersId: event.event_id,
        askedUtcMs,
        name,
        content,
        maybeSent,
      });

    let outcome = pending.get(key);
    let name = 'again';
    if (outcome === undefined) {
      ({ name, outcome } =
        'line' in task
          ? await run(roomId, state, task.line, asker, askedUtcMs)
          : { name: 'pick', outcome: task.problem });
      await pending.put(key, outcome);
    }

    let target = roomId;
    let extra: Content = { 'm.relates_to': relation };
    let told: string | null = null;
    if (!isProblem(outcome) && outcome.audience === 'asker' && !isPrivate) {
      const opened = await openDirect(event.sender);
      if (opened === null) {
        await part(
          roomId,
          'told',
          plainNotice(
            'That answer is for you alone, and I could not open a direct room with you. Please invite me to one and ask again there.',
            extra,
          ),
        );
        return;
      }
      told = `${asker.displayName}, that answer is for you alone: it is in our direct room.${opened.isNew ? ' I have invited you to it.' : ''}`;
      target = opened.roomId;
      extra = {};
    }
    const textId = await part(target, 'text', writeOutcome(outcome, event.sender, extra));
    if (told !== null) await part(roomId, 'told', plainNotice(told, { 'm.relates_to': relation }));
    const chart = isProblem(outcome) ? undefined : outcome.chart;
    if (chart !== undefined) await part(target, 'chart', await chartContent(target, chart, extra));
    // Nobody waits for these: the next answer matters more.
    void offerReactions(target, textId, reactionsFor(outcome), askedUtcMs);
    metrics.answered({
      platform: 'matrix',
      command: name,
      outcome: outcomeLabel(outcome),
      seconds: Math.max(0, now() - askedUtcMs) / 1000,
    });
  };

  const openDirect = async (userId: string): Promise<{ readonly roomId: string; readonly isNew: boolean } | null> => {
    try {
      return await direct.with(userId);
    } catch (error) {
      if (!(error instanceof MatrixError)) throw error;
      log.warn({ errcode: error.errcode }, 'cannot open a direct room');
      return null;
    }
  };

  /** Number reactions to tap; nothing is lost where they cannot be put there. */
  const offerReactions = async (roomId: string, targetId: string, count: number, askedUtcMs: UtcMs): Promise<void> => {
    for (let number = 1; number <= count; number++) {
      try {
        await outbox.send({
          roomId,
          type: 'm.reaction',
          answersId: targetId,
          askedUtcMs,
          name: `choice ${number}`,
          maybeSent: false,
          patienceMs: REACTION_PATIENCE_MS,
          content: { 'm.relates_to': { rel_type: 'm.annotation', event_id: targetId, key: keycap(number) } },
        });
      } catch (error) {
        log.debug({ err: error }, 'cannot put a number reaction');
        return;
      }
    }
  };

  /** The chart as an image, or its text alternative where it cannot be drawn or uploaded. */
  const chartContent = async (roomId: string, chart: Chart, extra: Content): Promise<Content> => {
    try {
      const { png, width, height } = await renderChart(chart);
      const encrypted =
        client.hasCrypto && (await client.crypto.isRoomEncrypted(roomId))
          ? await client.crypto.encryptMedia(png)
          : null;
      const uri = await client.uploadContent(
        encrypted?.buffer ?? png,
        encrypted === null ? 'image/png' : 'application/octet-stream',
        'chart.png',
      );
      return chartImage(
        chart.altText,
        encrypted === null ? { url: uri } : { file: { ...encrypted.file, url: uri } },
        { width, height, bytes: png.length },
        extra,
      );
    } catch (error) {
      log.warn({ err: error }, 'cannot draw or upload a chart');
      metrics.failed('matrix', 'chart');
      return plainNotice(`(The picture could not be shown.) ${chart.altText}`, extra);
    }
  };

  const refuse = async (roomId: string, event: MatrixEvent, waitSeconds: number, again: boolean): Promise<void> => {
    metrics.limited('matrix', 'member');
    if (again) return;
    await outbox.send({
      roomId,
      type: 'm.room.message',
      answersId: event.event_id,
      askedUtcMs: event.origin_server_ts,
      name: 'text',
      maybeSent: false,
      content: plainNotice(`One moment, please: that was a lot of questions at once. Ask again in ${waitSeconds} s.`, {
        'm.relates_to': answerRelation(event),
      }),
    });
  };

  const handle = async (roomId: string, event: MatrixEvent): Promise<boolean> => {
    const key = eventKey(botId, event.event_id);
    try {
      if (event.sender === botId || event.origin_server_ts < now() - OLDEST_ANSWERED_MS) return true;
      if (event.type !== 'm.room.message' && event.type !== 'm.reaction') return true;
      const state = await rooms.state(roomId);
      // What is said in the clear in an encrypted room must not be answered in the clear there.
      if (isEncrypted(state) && !client.hasCrypto) return true;
      const names = [botName(), displayNameIn(state, botId) ?? ''];
      const asked = askedIn(
        event,
        { userId: botId, names, prefix: settings.prefix },
        isPrivateBetween(state, botId, event.sender),
      );
      if (asked === null) return true;
      const task = await taskFor(roomId, event, asked);
      if (task === null) return true;
      const claimed = await claim(key);
      if (claimed === 'done') {
        metrics.duplicate('matrix');
        return true;
      }
      const maybeSent = claimed === 'left-over' || event.origin_server_ts < startedUtcMs;
      if (claimed === 'fresh' && maybeSent) {
        // Not in the store, yet from before this start: if the store was lost, the room still knows.
        const sent = await outbox.sentParts(roomId, event.event_id, event.origin_server_ts);
        if (sent.size > 0) {
          await settle(key);
          return true;
        }
      }
      if (pending.get(key) === undefined) {
        const taken = limit.take(event.sender, Math.min(now(), event.origin_server_ts));
        if (!taken.ok) {
          await refuse(roomId, event, taken.waitSeconds, taken.again);
          await settle(key);
          return true;
        }
      }
      await answer(roomId, event, state, task, key, maybeSent);
      await settle(key);
      return true;
    } catch (error) {
      if (stop.aborted) return false;
      // A room may well forbid the bot to speak; that is no fault.
      if (error instanceof MatrixError) log.warn({ errcode: error.errcode }, 'the homeserver refused an answer');
      else log.error({ err: error }, 'cannot answer a Matrix event');
      metrics.failed('matrix', 'send');
      await settle(key).catch(() => undefined);
      return true;
    }
  };
  return handle;
};
