/** A member of the club at their Matrix client: plain HTTP, so that nothing of the bot's own code judges itself. */
import { setTimeout as sleep } from 'node:timers/promises';
import type { Account } from './dendrite.js';

export interface SeenEvent {
  readonly type: string;
  readonly event_id: string;
  readonly sender: string;
  readonly origin_server_ts: number;
  readonly state_key?: string;
  readonly content: Record<string, any>; // eslint-disable-line @typescript-eslint/no-explicit-any -- read by assertions
}

let transactions = 0;
const patience = 30_000;

export class RequestError extends Error {
  constructor(
    readonly status: number,
    readonly body: unknown,
  ) {
    super(`${status} ${JSON.stringify(body)}`);
  }
}

export const memberOf = (url: string, account: Account) => {
  // eslint-disable-next-line @typescript-eslint/no-explicit-any
  const request = async (method: string, path: string, body?: unknown): Promise<any> => {
    const response = await fetch(`${url}/_matrix/client/v3${path}`, {
      method,
      headers: { Authorization: `Bearer ${account.accessToken}`, 'Content-Type': 'application/json' },
      ...(method === 'GET' ? {} : { body: JSON.stringify(body ?? {}) }),
    });
    const answer: unknown = await response.json();
    if (!response.ok) throw new RequestError(response.status, answer);
    return answer;
  };
  const room = (roomId: string): string => `/rooms/${encodeURIComponent(roomId)}`;
  const send = async (roomId: string, type: string, content: unknown): Promise<string> =>
    (
      (await request('PUT', `${room(roomId)}/send/${type}/member-${Date.now()}-${++transactions}`, content)) as {
        event_id: string;
      }
    ).event_id;

  /** All of a room's events, oldest first. */
  const events = async (roomId: string): Promise<readonly SeenEvent[]> => {
    const all: SeenEvent[] = [];
    let from = '';
    for (;;) {
      const page = (await request('GET', `${room(roomId)}/messages?dir=b&limit=200${from}`)) as {
        chunk: SeenEvent[];
        end?: string;
      };
      all.unshift(...page.chunk.reverse());
      if (page.end === undefined || page.chunk.length === 0) return all;
      from = `&from=${encodeURIComponent(page.end)}`;
    }
  };

  const wait = async <T>(
    what: string,
    look: () => Promise<T | undefined | null | false>,
    withinMs = patience,
  ): Promise<T> => {
    const until = performance.now() + withinMs;
    for (;;) {
      const found = await look().catch((error: unknown) => {
        if (error instanceof RequestError) return undefined;
        throw error;
      });
      if (found !== undefined && found !== null && found !== false) return found;
      if (performance.now() > until) throw new Error(`waited in vain for ${what}`);
      await sleep(100);
    }
  };

  return {
    ...account,
    request,
    send,
    events,
    wait,
    createRoom: async (content: unknown): Promise<string> =>
      ((await request('POST', '/createRoom', content)) as { room_id: string }).room_id,
    invite: (roomId: string, userId: string) => request('POST', `${room(roomId)}/invite`, { user_id: userId }),
    join: (roomId: string) => request('POST', `/join/${encodeURIComponent(roomId)}`),
    leave: (roomId: string) => request('POST', `${room(roomId)}/leave`),
    state: (roomId: string, type: string, content: unknown, stateKey = '') =>
      request('PUT', `${room(roomId)}/state/${type}/${stateKey}`, content),
    say: (roomId: string, body: string, more: object = {}) =>
      send(roomId, 'm.room.message', { msgtype: 'm.text', body, ...more }),
    react: (roomId: string, eventId: string, key: string) =>
      send(roomId, 'm.reaction', { 'm.relates_to': { rel_type: 'm.annotation', event_id: eventId, key } }),
    invitations: async (): Promise<readonly string[]> => {
      const sync = (await request('GET', '/sync?timeout=0')) as { rooms?: { invite?: object } };
      return Object.keys(sync.rooms?.invite ?? {});
    },
    membership: async (roomId: string, userId: string): Promise<string> =>
      (
        (await request('GET', `${room(roomId)}/state/m.room.member/${encodeURIComponent(userId)}`)) as {
          membership: string;
        }
      ).membership,
  };
};

export type Member = ReturnType<typeof memberOf>;

/** The bot's messages that answer an event, as a client shows them: by thread or reply. */
export const answersTo = (all: readonly SeenEvent[], botId: string, eventId: string): readonly SeenEvent[] =>
  all.filter(
    ({ type, sender, content }) =>
      type === 'm.room.message' &&
      sender === botId &&
      (content['m.relates_to'] as { 'm.in_reply_to'?: { event_id?: string } } | undefined)?.['m.in_reply_to']
        ?.event_id === eventId,
  );
