/**
 * What the bot asks of the SDK's encryption engine, on a stand-in for it, so that it runs without the native library. That the real one
 * works is shown in test/homeserver.
 */
import { describe, expect, test } from 'vitest';
import { asEvent } from '../../bot/platforms/matrix/answer/matrix-event.js';
import { runSync } from '../../bot/platforms/matrix/connect/sync-loop.js';
import { clientOf, type Answer } from './fake-homeserver.js';
import { BOT, event, NOW, ODALYS } from './events.js';

const hidden = (text: string) => ({
  algorithm: 'm.megolm.v1.aes-sha2',
  ciphertext: Buffer.from(text).toString('base64'),
});

/** An "engine" that encodes instead of encrypting, and opens only what it has been given the key for. */
const withEngine = (hasKey: () => boolean, answer: Answer = () => ({ event_id: '$new' })) => {
  const { client, calls } = clientOf(answer);
  const taken: unknown[] = [];
  client.encryption = {
    takeIn: async (sync) => {
      taken.push(sync['to_device']);
    },
    sawState: async () => undefined,
    isRoomEncrypted: async (roomId) => roomId === '!secret',
    lock: async (_roomId, type, content) => hidden(JSON.stringify({ type, content })),
    open: async (_roomId, { content, ...rest }) =>
      hasKey()
        ? asEvent({
            ...rest,
            ...(JSON.parse(Buffer.from(String(content['ciphertext']), 'base64').toString()) as object),
          })
        : null,
    lockFile: (bytes) => ({ bytes: Buffer.from(bytes), file: {} }),
    openFile: (bytes) => bytes,
    close: async () => undefined,
  };
  return { client, calls, taken };
};

describe('with an encryption engine', () => {
  test('answers are encrypted where the room is, with the relation beside the ciphertext', async () => {
    const { client, calls } = withEngine(() => true);
    const relation = { 'm.relates_to': { rel_type: 'm.thread', event_id: '$root' } };
    await client.sendWithTransaction('!secret', 'm.room.message', { body: 'up', ...relation }, 'txn', 1000);
    await client.sendWithTransaction('!open', 'm.room.message', { body: 'up' }, 'txn', 1000);
    await client.sendWithTransaction('!secret', 'm.reaction', { 'm.relates_to': { key: '1️⃣' } }, 'txn2', 1000);
    expect(calls.map(({ path }) => path.split('/send/')[1])).toEqual([
      'm.room.encrypted/txn',
      'm.room.message/txn',
      'm.reaction/txn2',
    ]);
    expect(calls[0]?.body).toMatchObject({ algorithm: 'm.megolm.v1.aes-sha2', ...relation });
    expect(JSON.stringify(calls[0]?.body)).not.toContain('"up"');
  });

  test('questions are opened, with the relation that stood beside the ciphertext; those whose key comes later, later', async () => {
    let hasKey = false;
    const { client, taken } = withEngine(() => hasKey);
    const question = event('m.room.encrypted', {
      ...hidden(JSON.stringify({ type: 'm.room.message', content: { msgtype: 'm.text', body: '!pier dark' } })),
      'm.relates_to': { rel_type: 'm.thread', event_id: '$root' },
    });
    const keys = { type: 'm.room_key', content: {} };
    const syncs = [
      { next_batch: 't1', rooms: { join: { '!secret': { timeline: { events: [question] } } } } },
      { next_batch: 't2', to_device: { events: [keys] } },
    ];
    const stop = new AbortController();
    const found: unknown[][] = [];
    await runSync({
      client,
      botId: BOT,
      readToken: async () => 't0',
      saveToken: async () => undefined,
      onSynced: () => undefined,
      onState: () => undefined,
      onError: (error) => {
        throw error;
      },
      now: () => NOW,
      oldestMs: 600_000,
      stop: stop.signal,
      onBatch: ({ rooms }) => {
        found.push(rooms.flatMap(({ events }) => events));
        return [];
      },
      poller: {
        call: async () => {
          const next = syncs.shift();
          if (next === undefined) {
            stop.abort();
            throw new Error('stopping');
          }
          hasKey = 'to_device' in next;
          return next;
        },
      },
    });
    expect(found[0]).toMatchObject([{ type: 'm.room.encrypted' }]);
    expect(found[1]).toMatchObject([
      {
        type: 'm.room.message',
        sender: ODALYS,
        event_id: question.event_id,
        content: { body: '!pier dark', 'm.relates_to': { rel_type: 'm.thread', event_id: '$root' } },
      },
    ]);
    expect(taken).toEqual([undefined, { events: [keys] }]);
  });
});
