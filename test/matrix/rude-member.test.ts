/**
 * One member floods in every way Matrix allows; the others are answered as if nothing were, and the homeserver is asked a bounded number of
 * times. (Bare numbers, reactions, threads and backdated questions: flood.test.ts. Discord: test/discord/rude-member.test.ts.)
 */
import { afterEach, expect, test, vi } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import type { PierhandMatrixClient } from '../../bot/platforms/matrix/connect/client.js';
import { runSync } from '../../bot/platforms/matrix/connect/sync-loop.js';
import type { Outbox } from '../../bot/platforms/matrix/connect/outbox.js';
import { createMissingKeys } from '../../bot/platforms/matrix/answer/missing-keys.js';
import type { MatrixEvent } from '../../bot/platforms/matrix/answer/matrix-event.js';
import { askedIn } from '../../bot/platforms/matrix/answer/read-message.js';
import { createDirectRooms } from '../../bot/platforms/matrix/rooms/direct-rooms.js';
import { createMembership, type Membership } from '../../bot/platforms/matrix/rooms/membership.js';
import { createRooms } from '../../bot/platforms/matrix/rooms/rooms.js';
import { createBatchTaker } from '../../bot/platforms/matrix/rooms/take-batch.js';
import { createRateLimit } from '../../bot/platforms/shared/rate-limit.js';
import { BOT, event, NOW, ODALYS, said, state, TAMSIN } from './events.js';
import { clientOf } from './fake-homeserver.js';

const ROOM = '!club:fenwold.test';
const RUDE = '@ingo:fenwold.test';
const never = (): Promise<never> => new Promise(() => undefined);
const soon = async (): Promise<void> => {
  for (let i = 0; i < 50; i++) await new Promise((resolve) => void setImmediate(resolve));
};
const outbox: Outbox = { send: async () => '$sent', sentParts: async () => new Map<string, string>() };
const log = createLog('silent', []);
const stop = new AbortController().signal;
const NOTHING = async (): Promise<void> => undefined;
const idle: Membership = {
  invited: NOTHING,
  made: NOTHING,
  joined: NOTHING,
  leaveIfEmpty: NOTHING,
  tellUnreadable: NOTHING,
  upgraded: NOTHING,
};

const takerOver = (client: PierhandMatrixClient, answer: (roomId: string, event: MatrixEvent) => Promise<boolean>) =>
  createBatchTaker({
    client,
    botId: BOT,
    rooms: createRooms(client.homeserver),
    membership: idle,
    answer,
    missingKey: () => undefined,
    onOwnName: () => undefined,
    ticksMs: () => 0,
    stop,
  });
const roomWith = (events: readonly MatrixEvent[], roomId = ROOM) => ({
  rooms: [{ roomId, state: [], events, firstWords: [], joined: null }],
  invites: [],
  leftRoomIds: [],
});

afterEach(() => {
  vi.useRealTimers();
});

test('files that never come keep nobody else in the room waiting, nor the same member elsewhere', async () => {
  const answered: string[] = [];
  const { client } = clientOf(() => []);
  const take = takerOver(client, async (roomId, { sender, content }) => {
    if (sender === RUDE && content['msgtype'] === 'm.file') return never();
    answered.push(`${sender} ${roomId}`);
    return true;
  });
  const file = () => event('m.room.message', { msgtype: 'm.file', body: 'log.txt' }, { sender: RUDE });
  void take(roomWith([...Array.from({ length: 200 }, file), said('!pier up M13'), said('!pier up M13', {}, TAMSIN)]));
  void take(roomWith([said('!pier up M13', {}, RUDE)], '!other:fenwold.test'));
  await soon();
  expect(answered.sort()).toEqual([`${RUDE} !other:fenwold.test`, `${ODALYS} ${ROOM}`, `${TAMSIN} ${ROOM}`].sort());
});

test('a picture that takes its time keeps nothing waiting that the same member asks after it, and waits for what came before', async () => {
  const answered: unknown[] = [];
  const { client } = clientOf(() => []);
  let isRead = (): void => undefined;
  const reading = new Promise<void>((resolve) => (isRead = resolve));
  const take = takerOver(client, async (_room, { content }) => {
    await (content['msgtype'] === 'm.image' ? reading : soon());
    answered.push(content['body']);
    return true;
  });
  const picture = event('m.room.message', { msgtype: 'm.image', body: 'screen.png' });
  const all = take(roomWith([said('one'), picture, said('two'), said('three')]));
  await Promise.all([all[0], all[2], all[3]]);
  expect(answered).toEqual(['one', 'two', 'three']);
  isRead();
  await Promise.all(all);
  expect(answered).toEqual(['one', 'two', 'three', 'screen.png']);
});

test("one member's questions in a room are answered in their order", async () => {
  const answered: unknown[] = [];
  const { client } = clientOf(() => []);
  const take = takerOver(client, async (_room, { content }) => {
    await soon();
    answered.push(content['body']);
    return true;
  });
  await Promise.all(take(roomWith([said('one'), said('two'), said('three')])));
  expect(answered).toEqual(['one', 'two', 'three']);
});

test('a room that is flooded is read back to where it was left, not again and again from the beginning', async () => {
  // 300 messages a sync, of which the server gives 50; the rest is asked for, 100 at a time.
  const all: MatrixEvent[] = [];
  let pages = 0;
  const { client } = clientOf(({ path, query }) => {
    if (!path.endsWith('/messages')) return {};
    pages++;
    const from = Number(query?.['from']);
    const chunk = all.slice(Math.max(0, from - 100), from).reverse();
    return { chunk, end: String(Math.max(0, from - 100)) };
  });
  const ending = new AbortController();
  let syncs = 0;
  const heard: string[] = [];
  await runSync({
    client,
    poller: {
      call: async () => {
        if (++syncs > 8) {
          ending.abort();
          return never();
        }
        for (let i = 0; i < 300; i++) all.push(said(`!pier up M${i % 110}`, {}, RUDE));
        const timeline = { events: all.slice(-50), limited: true, prev_batch: String(all.length - 50) };
        return { next_batch: `s${syncs}`, rooms: { join: { [ROOM]: { timeline } } } };
      },
    },
    botId: BOT,
    readToken: async () => 's0',
    saveToken: async () => undefined,
    onBatch: ({ rooms }) => {
      heard.push(...rooms.flatMap(({ events }) => events.map(({ event_id: id }) => id)));
      if (syncs === 8) ending.abort();
      return [];
    },
    onSynced: () => undefined,
    onState: () => undefined,
    onError: (error) => {
      throw error;
    },
    now: () => NOW,
    oldestMs: 600_000,
    stop: ending.signal,
  });
  // Each once, in order, and not more pages a sync than the 250 left out need, and the first twice.
  expect(heard).toEqual(all.map(({ event_id: id }) => id));
  expect(pages).toBeLessThanOrEqual(8 * 3 + 2);
});

test('a member whose server takes no direct room keeps no other from a private answer', async () => {
  const { client } = clientOf(({ path, body }) => {
    if (path.endsWith('/createRoom'))
      return JSON.stringify(body).includes(RUDE) ? never() : { room_id: '!direct:fenwold.test' };
    if (path.endsWith('/joined_rooms')) return { joined_rooms: [] };
    return {};
  });
  const direct = createDirectRooms(client, BOT, createRooms(client.homeserver));
  void direct.with(RUDE);
  await soon();
  expect(await Promise.race([direct.with(ODALYS), soon().then(soon)])).toMatchObject({ isNew: true });
});

test('300 messages that nobody can read wait for their keys a few at a time, and are told of once', async () => {
  vi.useFakeTimers();
  let opened = 0;
  const { client } = clientOf(() => [state('m.room.member', RUDE, { membership: 'join', displayname: 'Ingo' })]);
  client.opened = async (_room, one) => {
    opened++;
    return one;
  };
  let told = 0;
  const missing = createMissingKeys({
    client,
    rooms: createRooms(client.homeserver),
    outbox: { ...outbox, send: async () => `$${told++}` },
    log,
    now: () => NOW,
    ticksMs: () => 0,
    oldestMs: 600_000,
    stop,
  });
  for (let i = 0; i < 300; i++) missing(ROOM, event('m.room.encrypted', {}, { sender: RUDE }));
  expect(vi.getTimerCount()).toBeLessThanOrEqual(3);
  for (let i = 0; i < 1000; i++) missing(ROOM, event('m.room.encrypted', {}, { sender: `@m${i}:fenwold.test` }));
  expect(vi.getTimerCount()).toBeLessThanOrEqual(200);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(opened).toBeLessThanOrEqual(200);
  missing(ROOM, event('m.room.encrypted', {}, { sender: ODALYS }));
  expect(vi.getTimerCount()).toBe(1);
});

test('500 invitations from one member: ten are taken, the others declined one after the other', async () => {
  let atOnce = 0;
  let mostAtOnce = 0;
  let left = 0;
  let joined = 0;
  const { client } = clientOf(async ({ path }) => {
    if (path.includes('/join/')) joined++;
    if (path.endsWith('/leave')) {
      mostAtOnce = Math.max(mostAtOnce, ++atOnce);
      await new Promise((resolve) => void setImmediate(resolve));
      atOnce--;
      left++;
    }
    return { room_id: '!x:fenwold.test' };
  });
  const rooms = createRooms(client.homeserver);
  const notes = { get: async () => null, set: NOTHING, list: async () => [], remove: NOTHING };
  const membership = createMembership({
    client,
    botId: BOT,
    rooms,
    direct: createDirectRooms(client, BOT, rooms),
    outbox,
    notes,
    log,
    allowed: [],
    prefix: '!pier',
    invitations: createRateLimit({ burst: 10, perSecond: 1 / 600 }),
    ticksMs: () => 0,
    stop,
  });
  const invitation = { type: 'm.room.member', state_key: BOT, sender: RUDE, content: { membership: 'invite' } };
  await Promise.all(Array.from({ length: 500 }, (_, i) => membership.invited(`!r${i}:fenwold.test`, [invitation])));
  expect({ joined, left, mostAtOnce }).toEqual({ joined: 10, left: 490, mostAtOnce: 1 });
});

test('members who come and go by the hundred cost one look at the room', async () => {
  const { client, calls } = clientOf(() => [state('m.room.member', BOT, { membership: 'join' })]);
  const rooms = createRooms(client.homeserver);
  await rooms.state(ROOM);
  for (let i = 0; i < 1000; i++) {
    rooms.apply(ROOM, state('m.room.member', RUDE, { membership: i % 2 === 0 ? 'join' : 'leave' }));
    await rooms.state(ROOM);
  }
  expect(calls).toHaveLength(1);
});

const me = { userId: BOT, names: ['Pierhand'], prefix: '!pier' };
const link = '<a href="https://matrix.to/#/';
// An event is at most 65,536 bytes (Matrix specification, "Size limits").
const GIANTS: readonly (readonly [string, MatrixEvent])[] = [
  ['words', said('x'.repeat(60_000))],
  ['quotes', said('> a\n'.repeat(15_000))],
  ['digits', said(`!pier ${'7 '.repeat(30_000)}`)],
  ['spaces', said(`!pier${' '.repeat(60_000)}x`)],
  ['unclosed links', said('x', { format: 'org.matrix.custom.html', formatted_body: link.repeat(2000) })],
  [
    'links of a long name',
    said('x', { format: 'org.matrix.custom.html', formatted_body: `${link}${'a'.repeat(790)}`.repeat(75) }),
  ],
  [
    'links that all close',
    said('x '.repeat(20_000), { format: 'org.matrix.custom.html', formatted_body: `${link}@x:y">x</a>`.repeat(1600) }),
  ],
  ['replies unclosed', said('x', { format: 'org.matrix.custom.html', formatted_body: '<mx-reply>'.repeat(6000) })],
];
test.each(GIANTS)('a giant event of %s is read in a moment', (_name, giant) => {
  const before = process.cpuUsage();
  for (let i = 0; i < 10; i++) askedIn(giant, me, true);
  // Of the processor's time, however busy the machine: fifty times what ten of them take, a hundredth of what an expression gone wild would.
  expect(process.cpuUsage(before).user / 1000).toBeLessThan(2000);
});

test('edits, own echoes and notices ask for nothing', () => {
  for (const heard of [
    said('!pier up M13', { 'm.relates_to': { rel_type: 'm.replace', event_id: '$before' } }),
    said('!pier up M13', {}, BOT),
    { ...said('!pier up M13'), content: { msgtype: 'm.notice', body: '!pier up M13' } },
  ])
    expect(askedIn(heard, me, true)).toBeNull();
});
