/** The event stream: what of it counts, and when its place may be saved. */
import { describe, expect, test } from 'vitest';
import { runSync } from '../../bot/platforms/matrix/connect/sync-loop.js';
import type { SyncBatch } from '../../bot/platforms/matrix/connect/sync-reader.js';
import { Unreachable } from '../../bot/platforms/matrix/connect/homeserver-call.js';
import { MatrixError } from '../../bot/platforms/matrix/connect/sdk.js';
import { BOT, event, NOW, said, state } from './events.js';
import { clientOf, type Answer } from './fake-homeserver.js';

const room = '!r:fenwold.test';
const ownJoin = (before: string) => ({
  ...state('m.room.member', BOT, { membership: 'join' }, BOT),
  unsigned: { prev_content: { membership: before } },
});
const sync = (next_batch: string, timeline: object = { events: [] }, more: object = {}) => ({
  next_batch,
  rooms: { join: { [room]: { timeline, ...more } } },
});

/** Runs through the given sync answers (or errors), then stops. */
const follow = async (given: {
  readonly token: string | null;
  readonly syncs: readonly (object | Error)[];
  readonly messages?: Answer;
  readonly work?: (batch: SyncBatch, index: number) => readonly Promise<boolean>[];
}) => {
  const stop = new AbortController();
  const syncs = [...given.syncs];
  const since: unknown[] = [];
  const saved: string[] = [];
  const batches: SyncBatch[] = [];
  const states: string[] = [];
  const errors: string[] = [];
  const { client } = clientOf((call) =>
    call.path.endsWith('/messages') ? (given.messages?.(call) ?? { chunk: [] }) : {},
  );
  const poller = {
    call: async (call: { query?: Record<string, unknown> }) => {
      const next = syncs.shift();
      if (next === undefined) {
        stop.abort();
        throw new Unreachable('stopping', false);
      }
      since.push(call.query?.['since']);
      if (next instanceof Error) throw next;
      return next;
    },
  };
  await runSync({
    client,
    poller: poller,
    botId: BOT,
    readToken: async () => given.token,
    saveToken: async (token) => {
      saved.push(token);
    },
    onBatch: (batch) => {
      batches.push(batch);
      return given.work?.(batch, batches.length - 1) ?? [];
    },
    onSynced: () => undefined,
    onState: (to) => states.push(to),
    onError: (_error, what) => errors.push(what),
    now: () => NOW,
    oldestMs: 600_000,
    stop: stop.signal,
  });
  const bodies = batches.map((batch) =>
    batch.rooms
      .flatMap(({ events }) => events)
      .map(({ content }) => content['body'])
      .filter((body) => body !== undefined),
  );
  return { since, saved, batches, bodies, states, errors };
};

describe('what counts', () => {
  test('nothing on a first sync; everything after', async () => {
    const { bodies, since } = await follow({
      token: null,
      syncs: [sync('t1', { events: [said('old')] }), sync('t2', { events: [said('new')] })],
    });
    expect(bodies).toEqual([[], ['new']]);
    expect(since).toEqual([null, 't1']);
  });
  test('everything since the saved place', async () => {
    const { bodies, since } = await follow({ token: 't0', syncs: [sync('t1', { events: [said('while away')] })] });
    expect(bodies).toEqual([['while away']]);
    expect(since).toEqual(['t0']);
  });
  test('nothing from before the bot came in', async () => {
    const { bodies, batches } = await follow({
      token: 't0',
      syncs: [sync('t1', { events: [said('before'), ownJoin('invite'), said('after')] })],
    });
    expect(bodies).toEqual([['after']]);
    expect(batches[0]?.rooms[0]?.joined?.sender).toBe(BOT);
  });
  test('a new display name is no coming in', async () => {
    const { bodies, batches } = await follow({
      token: 't0',
      syncs: [sync('t1', { events: [said('before'), ownJoin('join'), said('after')] })],
    });
    expect(bodies).toEqual([['before', 'after']]);
    expect(batches[0]?.rooms[0]?.joined).toBeNull();
  });
  test('what a gap left out, back to ten minutes ago', async () => {
    const pages: Record<string, object> = {
      gap: { chunk: [said('third'), said('second')], end: 'further' },
      further: {
        chunk: [
          said('first'),
          ...Array.from({ length: 30 }, (_, i) =>
            event('m.room.message', { msgtype: 'm.text', body: `old ${i}` }, { origin_server_ts: NOW - 600_001 }),
          ),
        ],
        end: 'too far',
      },
    };
    const asked: unknown[] = [];
    const { bodies } = await follow({
      token: 't0',
      syncs: [sync('t1', { events: [said('fourth')], limited: true, prev_batch: 'gap' })],
      messages: (call) => {
        asked.push(call.query?.['from']);
        return pages[String(call.query?.['from'])];
      },
    });
    expect(asked).toEqual(['gap', 'further']);
    expect(bodies[0]?.slice(-4)).toEqual(['first', 'second', 'third', 'fourth']);
  });
  test('a gap ends where the bot came in', async () => {
    const { bodies } = await follow({
      token: 't0',
      syncs: [sync('t1', { events: [said('last')], limited: true, prev_batch: 'gap' })],
      messages: () => ({ chunk: [said('middle'), ownJoin('invite'), said('before')], end: 'more' }),
    });
    expect(bodies).toEqual([['middle', 'last']]);
  });
  test('content that is no content does no harm', async () => {
    const broken = {
      next_batch: 't1',
      rooms: {
        join: {
          [room]: {
            timeline: { events: [null, 7, { type: 'm.room.message' }, { ...said('x'), content: null }, said('good')] },
          },
          '!b': null,
        },
        invite: { '!c': {} },
        leave: null,
      },
    };
    const { bodies, errors } = await follow({ token: 't0', syncs: [broken] });
    expect(bodies).toEqual([['good']]);
    expect(errors).toEqual([]);
  });
});

describe('the place in the stream', () => {
  test('is saved only after the work before it, in order', async () => {
    const order: string[] = [];
    let finish: (done: boolean) => void = () => undefined;
    const slow = new Promise<boolean>((resolve) => {
      finish = resolve;
    });
    const { saved } = await follow({
      token: 't0',
      syncs: [sync('t1'), sync('t2'), sync('t3')],
      work: (_batch, index) => {
        if (index === 0) return [slow];
        if (index === 2)
          setTimeout(() => {
            order.push('finished');
            finish(true);
          }, 50);
        return [Promise.resolve(true)];
      },
    });
    expect(order).toEqual(['finished']);
    expect(saved).toEqual(['t1', 't2', 't3']);
  });
  test('does not move past work left undone', async () => {
    const { saved } = await follow({
      token: 't0',
      syncs: [sync('t1'), sync('t2'), sync('t3')],
      work: (_batch, index) => [Promise.resolve(index !== 1)],
    });
    expect(saved).toEqual(['t1']);
  });
  test('outlives outages and limits', async () => {
    const { since, states, bodies } = await follow({
      token: 't0',
      syncs: [
        sync('t1'),
        new Unreachable('ECONNREFUSED', false),
        new MatrixError({ errcode: 'M_LIMIT_EXCEEDED', error: '', retry_after_ms: 100 }, 429),
        sync('t2', { events: [said('again')] }),
      ],
    });
    expect(since).toEqual(['t0', 't1', 't1', 't1']);
    expect(states).toEqual(['ready', 'lost', 'resumed']);
    expect(bodies.at(-1)).toEqual(['again']);
  });
  test('unknown to the homeserver means beginning anew, without a backlog', async () => {
    const { since, bodies, errors } = await follow({
      token: 't0',
      syncs: [
        new MatrixError({ errcode: 'M_UNKNOWN_POS', error: '', retry_after_ms: 0 }, 400),
        sync('n1', { events: [said('backlog')] }),
        sync('n2', { events: [said('new')] }),
      ],
    });
    expect(since).toEqual(['t0', null, 'n1']);
    expect(bodies).toEqual([[], ['new']]);
    expect(errors).toHaveLength(1);
  });
});
