/** Says an outcome where it belongs: the words, the chart, numbers to tap; in the direct room what is for the asker alone. */
import type { Outcome } from '../../../reply/reply.js';
import type { UtcMs } from '../../../sky/types.js';
import type { PlatformContext } from '../../../app/platform.js';
import { chartOrWords } from '../../shared/chart-or-words.js';
import { chartFaults } from '../../shared/faults.js';
import type { PierhandMatrixClient } from '../connect/client.js';
import type { Outbox } from '../connect/outbox.js';
import { MatrixError } from '../connect/sdk.js';
import type { DirectRooms } from '../rooms/direct-rooms.js';
import { chartContent } from './chart-content.js';
import { keycap } from './choices.js';
import type { Content, MatrixEvent } from './matrix-event.js';
import { threadRootOf } from './matrix-event.js';
import type { Offers } from './offers.js';
import { carried, plainNotice, reactionsFor, writeOutcome } from './write-reply.js';

/** Where the server limits the bot, its number reactions are the first to go. */
const REACTION_PATIENCE_MS = 3000;

/** One outcome for one event. */
export interface Saying {
  readonly roomId: string;
  readonly event: MatrixEvent;
  readonly outcome: Outcome;
  readonly relation: Content;
  readonly askedUtcMs: UtcMs;
  readonly askerName: string;
  /** The room is the asker's and the bot's alone. */
  readonly isPrivate: boolean;
  /** An earlier process may have said some of it. */
  readonly maybeSent: boolean;
}

export interface SpeakerParts {
  readonly context: PlatformContext;
  readonly client: PierhandMatrixClient;
  readonly direct: DirectRooms;
  readonly outbox: Outbox;
  readonly offers: Offers;
  readonly ticksMs: () => number;
}

/** Where an outcome goes; `told`: what the room is told of it. Null: there is nowhere. */
interface Place {
  readonly roomId: string;
  readonly extra: Content;
  readonly told: string | null;
}

const NO_DIRECT_ROOM =
  'That answer is for you alone, and I could not open a direct room with you. Please invite me to one and ask again there.';

export const createSpeaker = ({ context, client, direct, outbox, offers, ticksMs }: SpeakerParts) => {
  const { log, now } = context;

  const placeFor = async ({
    roomId,
    event,
    outcome,
    relation,
    askerName,
    isPrivate,
  }: Saying): Promise<Place | null> => {
    if (outcome.audience !== 'asker' || isPrivate) return { roomId, extra: { 'm.relates_to': relation }, told: null };
    try {
      const opened = await direct.with(event.sender);
      const invited = opened.isNew ? ' I have invited you to it.' : '';
      const told = `${askerName}, that answer is for you alone: it is in our direct room.${invited}`;
      return { roomId: opened.roomId, extra: {}, told };
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

  const onChartFault = chartFaults(context, 'matrix');
  const chartFor = (outcome: Outcome, { roomId, extra }: Place): Promise<Content | null> =>
    chartOrWords(
      outcome,
      (chart) => chartContent(client, roomId, chart, extra),
      (error, { altText }) => {
        onChartFault(error);
        return plainNotice(`(The picture could not be shown.) ${altText}`, extra);
      },
    );

  return async (saying: Saying): Promise<void> => {
    const { roomId, event, outcome, relation, askedUtcMs, maybeSent } = saying;
    const part = (room: string, name: string, content: Content): Promise<string> =>
      outbox.send({
        roomId: room,
        type: 'm.room.message',
        answersId: event.event_id,
        askedUtcMs,
        name,
        content,
        maybeSent,
      });
    const place = await placeFor(saying);
    const inRoom: Content = { 'm.relates_to': relation };
    if (place === null) {
      await part(roomId, 'told', plainNotice(NO_DIRECT_ROOM, inRoom));
      return;
    }
    const textId = await part(place.roomId, 'text', writeOutcome(outcome, event.sender, place.extra));
    const choices = carried(outcome);
    if (choices.length > 0)
      offers.remember(place.roomId, {
        askerId: event.sender,
        runs: choices.map(({ run }) => run),
        choices,
        eventId: textId,
        threadRoot: threadRootOf({ ...event, content: place.extra }),
        offeredUtcMs: now(),
        // What an earlier process may have said was there before whatever waits to be read now.
        sinceMs: maybeSent ? Number.NEGATIVE_INFINITY : ticksMs(),
      });
    if (place.told !== null) await part(roomId, 'told', plainNotice(place.told, inRoom));
    const chart = await chartFor(outcome, place);
    if (chart !== null) await part(place.roomId, 'chart', chart);
    // Nobody waits for these: the next answer matters more.
    void offerReactions(place.roomId, textId, reactionsFor(outcome), askedUtcMs);
  };
};
