/** Says that a message could not be read, where its key does not come: a member must not wait for an answer that nobody is working on. */
import type { Logger } from 'pino';
import { MS_PER_HOUR } from '../../../ground/durations.js';
import { tidy } from '../../../ground/tidy.js';
import type { UtcMs } from '../../../sky/types.js';
import { createRateLimit } from '../../shared/rate-limit.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import type { Outbox } from '../connect/outbox.js';
import { displayNameIn, type Rooms } from '../rooms/rooms.js';
import type { MatrixEvent } from './matrix-event.js';
import { answerRelation } from './matrix-event.js';
import { plainNotice } from './write-reply.js';

export interface MissingKeysParts {
  readonly client: PierhandMatrixClient;
  readonly rooms: Rooms;
  readonly outbox: Outbox;
  readonly log: Logger;
  readonly now: () => UtcMs;
  readonly ticksMs: () => number;
  readonly oldestMs: number;
  readonly stop: AbortSignal;
}

/** Keys usually come with the message or a moment later. */
const KEY_PATIENCE_MS = 5000;
/** The same member in the same room hears it once an hour. */
const TOLD = { burst: 1, perSecond: 1000 / MS_PER_HOUR };

/** So many wait for their keys at once; of more, a member who wrote in earnest asks again. */
const MOST_WAITING = 200;
/** Of one member in one room. */
const MOST_OF_ONE = 3;

/** Takes note of a message that cannot be opened yet. */
export const createMissingKeys = (parts: MissingKeysParts): ((roomId: string, event: MatrixEvent) => void) => {
  const { client, rooms, outbox, log, now, ticksMs, oldestMs, stop } = parts;
  const told = createRateLimit(TOLD);
  /** How many of each member's in each room wait; a flood of what nobody can read must not pile up. */
  const waiting = new Map<string, number>();
  let allWaiting = 0;

  const tell = async (roomId: string, event: MatrixEvent): Promise<void> => {
    if (stop.aborted || (await client.opened(roomId, event)).type !== 'm.room.encrypted') return;
    if (told.take(`${roomId} ${event.sender}`, ticksMs()) !== null) return;
    const name = tidy(displayNameIn(await rooms.state(roomId), event.sender) ?? event.sender, 60);
    await outbox.send({
      roomId,
      type: 'm.room.message',
      answersId: event.event_id,
      askedUtcMs: event.origin_server_ts,
      name: 'no-key',
      maybeSent: false,
      content: plainNotice(
        `${name}, I cannot read that message: its key has not reached me. If it was for me, please ask again; if that does not help, open a new direct room with me.`,
        { 'm.relates_to': answerRelation(event) },
      ),
    });
  };

  return (roomId, event) => {
    if (event.origin_server_ts < now() - oldestMs) return;
    const of = `${roomId} ${event.sender}`;
    const before = waiting.get(of) ?? 0;
    if (before >= MOST_OF_ONE || allWaiting >= MOST_WAITING) return;
    waiting.set(of, before + 1);
    allWaiting++;
    setTimeout(() => {
      allWaiting--;
      const left = (waiting.get(of) ?? 1) - 1;
      if (left === 0) waiting.delete(of);
      else waiting.set(of, left);
      void tell(roomId, event).catch((error: unknown) => {
        if (!stop.aborted) log.warn({ err: error }, 'cannot say that a message could not be read');
      });
    }, KEY_PATIENCE_MS).unref();
  };
};
