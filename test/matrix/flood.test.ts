/** A member who floods holds up nobody: what each message costs the homeserver, the store and the others. */
import { expect, test } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import { createMetrics } from '../../bot/app/metrics.js';
import { createAnswerer, OLDEST_ANSWERED_MS } from '../../bot/platforms/matrix/answer/answer.js';
import { createPendingAnswers } from '../../bot/platforms/matrix/answer/pending-answers.js';
import { createOutbox } from '../../bot/platforms/matrix/connect/outbox.js';
import { createDirectRooms } from '../../bot/platforms/matrix/rooms/direct-rooms.js';
import { createRooms } from '../../bot/platforms/matrix/rooms/rooms.js';
import { createRateLimit } from '../../bot/platforms/shared/rate-limit.js';
import { defineCommand } from '../../bot/commands/core/command.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import type { MatrixEvent } from '../../bot/platforms/matrix/answer/matrix-event.js';
import type { PlatformContext } from '../../bot/app/platform.js';
import { clientOf } from './fake-homeserver.js';
import { BOT, event, NOW, ODALYS, said, state, TAMSIN } from './events.js';

const ROOM = '!club:fenwold.test';
const offer = defineCommand({
  name: 'offer',
  summary: 'Offers two sites.',
  options: {},
  examples: ['offer'],
  run: async () =>
    reply({
      title: 'Which site?',
      summary: 'Two are known.',
      pointsAt: NOWHERE,
      choices: [
        { label: 'Cold Ridge', run: 'offer' },
        { label: 'Quarry Field', run: 'offer' },
      ],
    }),
});

const bot = () => {
  const past: MatrixEvent[] = [];
  let claims = 0;
  let ticksMs = 0;
  const { client, calls } = clientOf(({ path, method, body }) => {
    if (path.endsWith('/state'))
      return [BOT, ODALYS, TAMSIN].map((userId) =>
        state('m.room.member', userId, { membership: 'join', displayname: userId.slice(1, 5) }),
      );
    if (path.endsWith('/messages')) return { chunk: [...past].reverse() };
    if (method === 'PUT' && path.includes('/send/m.room.message/')) {
      const sent = event('m.room.message', body as object as Record<string, unknown>, { sender: BOT });
      past.push(sent);
      return { event_id: sent.event_id };
    }
    return { event_id: '$other' };
  });
  const stop = new AbortController().signal;
  const notes = {
    get: async () => null,
    set: async () => undefined,
    list: async () => [],
    remove: async () => undefined,
  };
  const events = {
    claim: async () => {
      claims++;
      return true;
    },
    answered: async () => undefined,
  };
  const context = {
    deps: { store: { events, notes }, commands: [offer] },
    settings: { prefix: '!pier' },
    log: createLog('silent', []),
    metrics: createMetrics(),
    now: () => NOW,
  } as unknown as PlatformContext;
  const rooms = createRooms(client.homeserver);
  const answer = createAnswerer({
    context,
    client,
    botId: BOT,
    botName: () => 'Pierhand',
    rooms,
    direct: createDirectRooms(client, BOT, rooms),
    outbox: createOutbox(client, BOT, OLDEST_ANSWERED_MS, stop),
    pending: createPendingAnswers(
      notes,
      'pending',
      () => NOW,
      () => undefined,
    ),
    fileIn: () => null,
    limit: createRateLimit({ burst: 10, perSecond: 1 / 3 }),
    lookUps: createRateLimit({ burst: 10, perSecond: 1 / 3 }),
    leftOver: new Set<string>(),
    startedUtcMs: NOW,
    ticksMs: () => ticksMs,
    stop,
  });
  const countOf = (end: string): number => calls.filter(({ path }) => path.endsWith(end) || path.includes(end)).length;
  return {
    hear: (heard: MatrixEvent) => {
      past.push(heard);
      return answer(ROOM, heard, (ticksMs += 1));
    },
    /** It arrived before anything else was answered, and waited its turn. */
    hearLate: (heard: MatrixEvent) => answer(ROOM, heard, -1),
    past,
    lookBacks: () => countOf('/messages'),
    lookUps: () => countOf('/event/'),
    messages: () => countOf('/send/m.room.message/'),
    claims: () => claims,
  };
};

test('250 bare numbers that answer nothing cost one look back in all, no claim and no word', async () => {
  const { hear, lookBacks, claims, messages } = bot();
  for (let i = 0; i < 250; i++) await hear(said('7'));
  expect(lookBacks()).toBe(1);
  expect(claims()).toBe(0);
  expect(messages()).toBe(0);
});

test('250 numbers that pick are limited like questions: ten answers, one kind word, then silence', async () => {
  const { hear, lookBacks, claims, messages } = bot();
  await hear(said('!pier offer'));
  for (let i = 0; i < 250; i++) await hear(said('2'));
  expect(messages()).toBe(11);
  expect(claims()).toBe(11);
  expect(lookBacks()).toBe(0);
});

test('250 replies and reactions to messages that offer nothing have the server asked ten times', async () => {
  const { hear, lookUps } = bot();
  for (let i = 0; i < 125; i++) {
    await hear(said('7', { 'm.relates_to': { 'm.in_reply_to': { event_id: `$talk${i}` } } }));
    await hear(
      event('m.reaction', {
        'm.relates_to': { rel_type: 'm.annotation', event_id: `$said${i}`, key: '7\uFE0F\u20E3' },
      }),
    );
  }
  expect(lookUps()).toBe(10);
});

test('250 numbers in threads, each another, have the room read ten times', async () => {
  const { hear, lookBacks } = bot();
  for (let i = 0; i < 250; i++) {
    const relation = { rel_type: 'm.thread', event_id: `$root${i}`, is_falling_back: true };
    await hear(said('7', { 'm.relates_to': relation }));
  }
  expect(lookBacks()).toBe(10);
});

test('backdated questions do not pass the limit', async () => {
  const { hear, messages } = bot();
  // Each dated a while after the one before, as if they had been asked over nine minutes.
  for (let i = 0; i < 100; i++) await hear({ ...said('!pier offer'), origin_server_ts: NOW - 540_000 + i * 5000 });
  expect(messages()).toBe(11);
});

test('what was offered before a restart can be picked after it, by the member who was offered', async () => {
  const before = bot();
  await before.hear(said('!pier offer'));
  const after = bot();
  after.past.push(...before.past);
  await after.hear(said('2', {}, TAMSIN));
  expect(after.messages()).toBe(0);
  await after.hear(said('2'));
  expect(after.messages()).toBe(1);
  expect(after.lookBacks()).toBe(1);
});

test('a number that came before an offer does not answer it', async () => {
  const { hear, hearLate, past, messages } = bot();
  await hear(said('!pier offer'));
  past.length = 0;
  await hearLate(said('1'));
  expect(messages()).toBe(1);
  await hear(said('1'));
  expect(messages()).toBe(2);
});
