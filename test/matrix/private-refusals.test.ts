/** What is for the asker alone goes to the direct room, whether it is an answer or a refusal. */
import { expect, test } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import { createMetrics } from '../../bot/app/metrics.js';
import type { PlatformContext } from '../../bot/app/platform.js';
import { problem } from '../../bot/ground/problem.js';
import { createSpeaker } from '../../bot/platforms/matrix/answer/say-outcome.js';
import { reply } from '../../bot/reply/reply.js';
import { NOWHERE } from '../../bot/reply/points-at.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { clientOf } from './fake-homeserver.js';
import { NOW, said } from './events.js';

const CLUB = '!club:fenwold.test';
const DIRECT = '!direct:fenwold.test';

const saidFor = async (outcome: Outcome, isPrivate = false): Promise<Record<string, string>> => {
  const sent: Record<string, string> = {};
  const say = createSpeaker({
    context: {
      log: createLog('silent', []),
      metrics: createMetrics(),
      now: () => NOW,
    } as unknown as PlatformContext,
    client: clientOf(() => ({})).client,
    direct: {
      with: async () => ({ roomId: DIRECT, isNew: false }),
      existing: async () => DIRECT,
      remember: async () => undefined,
    },
    outbox: {
      send: async ({ roomId, content }) => {
        sent[roomId] = `${sent[roomId] ?? ''}${String(content['body'])}`;
        return '$sent';
      },
      sentParts: async () => new Map<string, string>(),
    },
    offers: {
      remember: () => undefined,
      find: async () => null,
      byLabel: () => null,
      isWalkThread: async () => false,
      eventNamed: async () => null,
    },
    ticksMs: () => 0,
  });
  await say({
    roomId: CLUB,
    event: said('!pier remind M13 above:89'),
    outcome,
    relation: {},
    askedUtcMs: NOW,
    askerName: 'Odalys',
    isPrivate,
    maybeSent: false,
  });
  return sent;
};

const refusal = problem('never-up', 'From Garden it never stands higher than 73.9°.');
const answer = reply({ title: 'Your site', summary: 'Garden, 52.71.', pointsAt: NOWHERE });

test.each([
  ['a refusal', refusal],
  ['an answer', answer],
])('%s for the asker alone leaves the room without a word of it', async (_name, outcome) => {
  const sent = await saidFor({ ...outcome, audience: 'asker' });
  expect(sent[DIRECT]).toContain('Garden');
  expect(sent[CLUB]).toBe('Odalys, that answer is for you alone: it is in our direct room.');
});

test.each([
  ['a refusal', refusal],
  ['an answer', answer],
])('%s for everyone stays where it was asked, and so does a private one in the direct room', async (_name, outcome) => {
  expect(Object.keys(await saidFor(outcome))).toEqual([CLUB]);
  expect(Object.keys(await saidFor({ ...outcome, audience: 'asker' }, true))).toEqual([CLUB]);
});
