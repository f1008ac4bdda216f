/** Looks back into a room's past: for what the sync left out, and for what the bot itself has said already. */
import type { PierhandMatrixClient } from '../connect/client.js';
import type { MatrixEvent } from '../answer/matrix-event.js';
import { eventsIn, isRecord, textAt } from '../answer/matrix-event.js';

const PAGE = 100;
const MOST_PAGES = 20;

/**
 * A room's events from a point backwards, newest first, opened where encrypted.
 * @param from a pagination token, or null for the newest
 */
// eslint-disable-next-line func-style -- no arrow can be a generator
export async function* eventsBackwards(
  client: PierhandMatrixClient,
  roomId: string,
  from: string | null,
): AsyncGenerator<MatrixEvent> {
  let token = from;
  for (let page = 0; page < MOST_PAGES; page++) {
    const answer = await client.homeserver.call({
      method: 'GET',
      path: `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/messages`,
      query: { dir: 'b', limit: PAGE, from: token },
    });
    if (!isRecord(answer)) return;
    const events = eventsIn(answer['chunk']);
    for (const event of events) yield await client.opened(roomId, event);
    const next = textAt(answer, 'end');
    if (next === null || next === token || events.length === 0) return;
    token = next;
  }
}
