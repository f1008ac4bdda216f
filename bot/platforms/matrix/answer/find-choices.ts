/** Finds which offer of choices a number or a reaction answers, from the room itself, so that a restart changes nothing. */
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import type { UtcMs } from '../../../sky/types.js';
import { offeredIn, type OfferedChoices } from './choices.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import { eventsBackwards } from '../rooms/history.js';
import type { MatrixEvent } from './matrix-event.js';
import { asEvent, threadRootOf } from './matrix-event.js';
import type { Asked } from './read-message.js';
import { MatrixError } from '../connect/sdk.js';

/** A number without a reply or thread counts only this long after the choices were offered. */
const BARE_NUMBER_MS = 30 * MS_PER_MINUTE;

export interface Offer extends OfferedChoices {
  readonly event: MatrixEvent;
}

const eventById = async (
  client: PierhandMatrixClient,
  roomId: string,
  eventId: string,
): Promise<MatrixEvent | null> => {
  try {
    const event = asEvent(
      await client.homeserver.call({
        method: 'GET',
        path: `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/event/${encodeURIComponent(eventId)}`,
      }),
    );
    return event === null ? null : await client.opened(roomId, event);
  } catch (error) {
    if (error instanceof MatrixError) return null;
    throw error;
  }
};

const asOffer = (event: MatrixEvent | null, botId: string): Offer | null => {
  const offered = event === null ? null : offeredIn(event, botId);
  return event === null || offered === null ? null : { ...offered, event };
};

/**
 * The offer a pick is about. A reply or a reaction names it, and anyone in the room may pick so; in a thread it is the newest there;
 * a bare number in the room counts only for the member who was offered, and not for long.
 */
export const offerFor = async (
  client: PierhandMatrixClient,
  botId: string,
  roomId: string,
  event: MatrixEvent,
  asked: Exclude<Asked, { kind: 'line' }>,
  now: UtcMs,
): Promise<Offer | null> => {
  const named = asked.kind === 'reaction' ? asked.targetId : asked.repliedTo;
  if (named !== null) return asOffer(await eventById(client, roomId, named), botId);
  const threadRoot = asked.kind === 'number' ? asked.threadRoot : null;
  let isBefore = false;
  for await (const past of eventsBackwards(client, roomId, null)) {
    if (threadRoot === null && past.origin_server_ts < now - BARE_NUMBER_MS) return null;
    // What was said after the number cannot be what it answers.
    isBefore ||= past.event_id === event.event_id;
    if (!isBefore || threadRootOf(past) !== threadRoot) continue;
    const offer = asOffer(past, botId);
    if (offer !== null && (threadRoot !== null || offer.askerId === event.sender)) return offer;
    if (past.event_id === threadRoot) return null;
  }
  return null;
};
