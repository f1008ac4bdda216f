/**
 * Finds which offer of choices a number or a reaction answers. What this process offered it remembers; the room itself is read only for
 * what an earlier process offered, once for each room and thread, and for what a reply or reaction names, a bounded number of times.
 */
import { MS_PER_MINUTE } from '../../../ground/durations.js';
import type { Choice } from '../../../ground/problem.js';
import type { UtcMs } from '../../../sky/types.js';
import { labelPicked } from '../../shared/label-picked.js';
import type { RateLimit } from '../../shared/rate-limit.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import { MatrixError } from '../connect/sdk.js';
import { eventsBackwards } from '../rooms/history.js';
import { offeredIn, type OfferedChoices } from './choices.js';
import type { MatrixEvent } from './matrix-event.js';
import { asEvent, repliedTo, threadRootOf } from './matrix-event.js';
import type { Asked } from './read-message.js';
import { putNewest } from '../../../ground/remember.js';

/** A number without a reply or thread counts only this long after the choices were offered. */
const BARE_NUMBER_MS = 30 * MS_PER_MINUTE;
/** So much of a room's past is read after a restart. */
const MOST_LOOKED_BACK = 300;
const MOST_ROOMS = 2000;
const MOST_IN_ROOM = 200;
/** Of one member in one place; older ones can still be picked by reply. */
const MOST_FOR_ONE = 5;

export interface Offer extends OfferedChoices {
  readonly eventId: string;
  readonly threadRoot: string | null;
  readonly offeredUtcMs: UtcMs;
  /** On the bot's own steady clock; minus infinity where an earlier process made it. */
  readonly sinceMs: number;
  /** What it showed; missing where an earlier process made it, since labels are not carried in the room. */
  readonly choices?: readonly Choice[];
}

/** A pick as it arrived. */
export interface Pick {
  readonly roomId: string;
  readonly event: MatrixEvent;
  readonly asked: Extract<Asked, { kind: 'number' | 'reaction' }>;
  /** On the bot's own steady clock: what it offered later cannot be what this answers. */
  readonly arrivedMs: number;
}

export interface Offers {
  readonly remember: (roomId: string, offer: Offer) => void;
  /**
   * The offer a pick is about. A reply or a reaction names it, and anyone in the room may pick so; in a thread it is the newest there;
   * a bare number in the room counts only for the member who was offered, and not for long. `unreadable`: what it names cannot be opened.
   */
  readonly find: (pick: Pick) => Promise<Offer | 'unreadable' | null>;
  /** The line of a choice that was offered to whom says its label; by what this process remembers alone. */
  readonly byLabel: (heard: Omit<Pick, 'asked'>, line: string) => string | null;
  /** Whether the newest offer in a thread is a step of a walk of the member's. */
  readonly isWalkThread: (roomId: string, threadRoot: string, memberId: string) => Promise<boolean>;
  /** The event that a message replies to, opened; bounded for each member. Null: there are too many, or it may not be seen or opened. */
  readonly eventNamed: (roomId: string, eventId: string, memberId: string) => Promise<MatrixEvent | null>;
}

export interface OffersParts {
  readonly client: PierhandMatrixClient;
  readonly botId: string;
  readonly now: () => UtcMs;
  readonly ticksMs: () => number;
  /** How often one member may have the server asked for what a reply or a reaction names. */
  readonly lookUps: RateLimit;
}

interface RoomOffers {
  /** Oldest first. */
  offers: readonly Offer[];
  /** Places (the room itself: "", or a thread's root) whose past has been read. */
  readonly lookedBack: Map<string, Promise<void>>;
}

const offerOf = (event: MatrixEvent, botId: string): Offer | null => {
  const offered = offeredIn(event, botId);
  return offered === null
    ? null
    : {
        ...offered,
        eventId: event.event_id,
        threadRoot: threadRootOf(event),
        offeredUtcMs: event.origin_server_ts,
        sinceMs: Number.NEGATIVE_INFINITY,
      };
};

export const createOffers = ({ client, botId, now, ticksMs, lookUps }: OffersParts): Offers => {
  const rooms = new Map<string, RoomOffers>();
  const inRoom = (roomId: string): RoomOffers => {
    const here = rooms.get(roomId) ?? { offers: [], lookedBack: new Map<string, Promise<void>>() };
    putNewest(rooms, roomId, here, MOST_ROOMS);
    return here;
  };
  const add = (roomId: string, offer: Offer, isOlder: boolean): void => {
    const here = inRoom(roomId);
    if (here.offers.some(({ eventId }) => eventId === offer.eventId)) return;
    const all = isOlder ? [offer, ...here.offers] : [...here.offers, offer];
    const isAlike = (other: Offer): boolean => other.askerId === offer.askerId && other.threadRoot === offer.threadRoot;
    const oldest = all.filter(isAlike).length > MOST_FOR_ONE ? all.find(isAlike) : undefined;
    here.offers = all.filter((other) => other !== oldest).slice(-MOST_IN_ROOM);
  };

  /** Reads what an earlier process offered in the room, or in one of its threads. */
  const lookBack = async (roomId: string, threadRoot: string | null): Promise<void> => {
    let read = 0;
    for await (const past of eventsBackwards(client, roomId, null)) {
      const offer = offerOf(past, botId);
      if (offer !== null && offer.threadRoot === threadRoot) add(roomId, offer, true);
      const isFarBack =
        threadRoot === null ? past.origin_server_ts < now() - BARE_NUMBER_MS : past.event_id === threadRoot;
      if (isFarBack || ++read >= MOST_LOOKED_BACK) return;
    }
  };
  const lookBackOnce = (roomId: string, threadRoot: string | null, senderId: string): Promise<void> => {
    const { lookedBack } = inRoom(roomId);
    const place = threadRoot ?? '';
    const before = lookedBack.get(place);
    if (before !== undefined) return before;
    // The room's own past is read once whoever asks; anyone can open as many threads as they like.
    if (threadRoot !== null && lookUps.take(senderId, ticksMs()) !== null) return Promise.resolve();
    const looking = lookBack(roomId, threadRoot);
    lookedBack.set(place, looking);
    looking.catch(() => lookedBack.delete(place));
    return looking;
  };

  const eventNamed = async (roomId: string, eventId: string, memberId: string): Promise<MatrixEvent | null> => {
    try {
      const path = `/_matrix/client/v3/rooms/${encodeURIComponent(roomId)}/event/${encodeURIComponent(eventId)}`;
      const found =
        lookUps.take(memberId, ticksMs()) === null
          ? asEvent(await client.homeserver.call({ method: 'GET', path }))
          : null;
      const event = found === null ? null : await client.opened(roomId, found);
      return event?.type === 'm.room.encrypted' ? null : event;
    } catch (error) {
      // What is from before the bot came it may not be shown.
      if (error instanceof MatrixError) return null;
      throw error;
    }
  };
  const named = async (roomId: string, eventId: string, memberId: string): Promise<Offer | 'unreadable' | null> => {
    const known = inRoom(roomId).offers.find((offer) => offer.eventId === eventId);
    if (known !== undefined) return known;
    const event = await eventNamed(roomId, eventId, memberId);
    return event === null ? 'unreadable' : offerOf(event, botId);
  };

  return {
    remember: (roomId, offer) => {
      add(roomId, offer, false);
    },
    find: async ({ roomId, event, asked, arrivedMs }) => {
      const namedId = asked.kind === 'reaction' ? asked.targetId : asked.repliedTo;
      if (namedId !== null) return named(roomId, namedId, event.sender);
      const threadRoot = asked.kind === 'number' ? asked.threadRoot : null;
      const newest = (): Offer | undefined =>
        inRoom(roomId).offers.findLast(
          (offer) =>
            offer.threadRoot === threadRoot &&
            offer.sinceMs <= arrivedMs &&
            (threadRoot !== null || (offer.askerId === event.sender && offer.offeredUtcMs >= now() - BARE_NUMBER_MS)),
        );
      const found = newest();
      if (found !== undefined) return found;
      await lookBackOnce(roomId, threadRoot, event.sender);
      return newest() ?? null;
    },
    byLabel: ({ roomId, event, arrivedMs }, line) => {
      const root = threadRootOf(event);
      const namedId = repliedTo(event);
      const offer = inRoom(roomId).offers.findLast(
        ({ eventId, askerId, threadRoot, sinceMs, offeredUtcMs }) =>
          askerId === event.sender &&
          sinceMs <= arrivedMs &&
          (namedId === null
            ? threadRoot === root && (root !== null || offeredUtcMs >= now() - BARE_NUMBER_MS)
            : eventId === namedId),
      );
      return labelPicked(line, offer?.choices ?? []);
    },
    eventNamed,
    isWalkThread: async (roomId, threadRoot, memberId) => {
      const newest = (): Offer | undefined =>
        inRoom(roomId).offers.findLast((offer) => offer.threadRoot === threadRoot && offer.askerId === memberId);
      if (newest() === undefined) await lookBackOnce(roomId, threadRoot, memberId);
      return newest()?.runs.some((line) => line.startsWith('triage ')) ?? false;
    },
  };
};
