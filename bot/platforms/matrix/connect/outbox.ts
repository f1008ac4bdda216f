/** Sends each part of an answer exactly once, whatever breaks between the bot and the homeserver, or the bot itself. */
import { setTimeout as sleep } from 'node:timers/promises';
import { createHash } from 'node:crypto';
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import type { UtcMs } from '../../../sky/types.js';
import type { PierhandMatrixClient } from './client.js';
import { eventsBackwards } from '../rooms/history.js';
import { backOffMs, Unreachable } from './homeserver-call.js';
import type { Content } from '../answer/matrix-event.js';
import { recordAt, textAt } from '../answer/matrix-event.js';

/** Our own key in a message's content: which event it answers, and with which part of the answer. */
export const ANSWER_KEY = 'pierhand.answer';

export interface Part {
  readonly roomId: string;
  readonly type: 'm.room.message' | 'm.reaction';
  /** What this is an answer to: an event's id, or another lasting name. */
  readonly answersId: string;
  /** When that was, for how far back to look. */
  readonly askedUtcMs: UtcMs;
  /** Which part of the answer: "text", "chart". */
  readonly name: string;
  readonly content: Content;
  /** A process before this one may have sent it already. */
  readonly maybeSent: boolean;
  /** How long to keep trying, where not as long as usual. */
  readonly patienceMs?: number;
}

export interface Outbox {
  /**
   * The id of the one event that holds the part.
   * @throws MatrixError where the server refuses it; Unreachable where it could not be sent within the time
   */
  readonly send: (part: Part) => Promise<string>;
  /** The parts of an answer that stand in a room, by name. */
  readonly sentParts: (roomId: string, answersId: string, askedUtcMs: UtcMs) => Promise<ReadonlyMap<string, string>>;
}

/** A server that has just come back may still be storing what it had taken in before; look only after this long. */
const SETTLE_MS = 1000;
/** With less time left than this another try is not worth it. */
const LEAST_LEFT_MS = 1000;
/** Servers' clocks differ; look this much further back. */
const CLOCK_SLACK_MS = 5 * MS_PER_MINUTE;

/** The same part always has the same id, so that the server drops what it has had already. */
export const transactionId = (answersId: string, name: string): string =>
  `pierhand-${createHash('sha256').update(`${answersId}\n${name}`).digest('base64url')}`;

export const answerMarker = (answersId: string, name: string): Content => ({
  [ANSWER_KEY]: { to: answersId, part: name },
});

/**
 * @param usualPatienceMs how long to keep trying: after that the answer has lost its sense
 */
export const createOutbox = (
  client: PierhandMatrixClient,
  botId: string,
  usualPatienceMs: number,
  stop: AbortSignal,
): Outbox => {
  const sentParts: Outbox['sentParts'] = async (roomId, answersId, askedUtcMs) => {
    const found = new Map<string, string>();
    for await (const event of eventsBackwards(client, roomId, null)) {
      if (event.origin_server_ts < askedUtcMs - CLOCK_SLACK_MS) break;
      const marker = recordAt(event.content, ANSWER_KEY);
      const name = textAt(marker, 'part');
      if (event.sender === botId && name !== null && textAt(marker, 'to') === answersId)
        found.set(name, event.event_id);
      // Nothing answers an event before it was there.
      if (event.event_id === answersId) break;
    }
    return found;
  };

  return {
    sentParts,
    send: async ({ roomId, type, answersId, askedUtcMs, name, content, maybeSent, patienceMs = usualPatienceMs }) => {
      const startedMs = performance.now();
      const left = (): number => patienceMs - (performance.now() - startedMs);
      let unsure = maybeSent;
      for (let attempt = 0; ; attempt++) {
        try {
          if (unsure) {
            const already = (await sentParts(roomId, answersId, askedUtcMs)).get(name);
            if (already !== undefined) return already;
          }
          const marked = type === 'm.reaction' ? content : { ...content, ...answerMarker(answersId, name) };
          return await client.sendWithTransaction(
            roomId,
            type,
            marked,
            transactionId(answersId, name),
            Math.max(0, left()),
          );
        } catch (error) {
          // A transaction id alone is not enough: a server may forget them when it restarts. So look before trying again.
          if (!(error instanceof Unreachable) || stop.aborted || left() < LEAST_LEFT_MS) throw error;
          unsure = type !== 'm.reaction';
          await sleep(backOffMs(attempt), undefined, { signal: stop }).catch(() => undefined);
          await client.homeserver.call({
            method: 'GET',
            path: '/_matrix/client/versions',
            patienceMs: Math.max(0, left()),
          });
          await sleep(SETTLE_MS, undefined, { signal: stop }).catch(() => undefined);
        }
      }
    },
  };
};
