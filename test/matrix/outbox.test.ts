/** Each part of an answer is sent once, also when nobody can say whether the first try arrived. */
import { describe, expect, test } from 'vitest';
import { ANSWER_KEY, createOutbox, transactionId, type Part } from '../../bot/platforms/matrix/connect/outbox.js';
import { Unreachable } from '../../bot/platforms/matrix/connect/homeserver-call.js';
import { MatrixError } from '../../bot/platforms/matrix/connect/sdk.js';
import { BOT, event, NOW, TAMSIN } from './events.js';
import { clientOf, type Answer } from './fake-homeserver.js';

const part: Part = {
  roomId: '!r:x',
  type: 'm.room.message',
  answersId: '$asked',
  askedUtcMs: NOW,
  name: 'text',
  content: { msgtype: 'm.notice', body: 'x' },
  maybeSent: false,
};
const marked = (id: string, sender = BOT, to = '$asked', name = 'text') =>
  event('m.room.message', { [ANSWER_KEY]: { to, part: name } }, { event_id: id, sender });

/** @param tries what each PUT does; @param past the room's events, newest first */
const outboxWith = (tries: (() => unknown)[], past: readonly object[] = []) => {
  const sent: string[] = [];
  const answer: Answer = (call) => {
    if (call.path.endsWith('/messages')) return { chunk: past };
    if (call.method !== 'PUT') return {};
    sent.push(call.path);
    return tries.shift()?.();
  };
  const { client, calls } = clientOf(answer);
  return { outbox: createOutbox(client, BOT, 60_000, new AbortController().signal), sent, calls };
};
const arrived = () => ({ event_id: '$new' });
const broke = () => {
  throw new Unreachable('the connection broke', true);
};

describe('a part', () => {
  test('is sent with a transaction id of its own and a mark of what it answers', async () => {
    const { outbox, sent, calls } = outboxWith([arrived]);
    expect(await outbox.send(part)).toBe('$new');
    expect(sent).toEqual([`/_matrix/client/v3/rooms/!r%3Ax/send/m.room.message/${transactionId('$asked', 'text')}`]);
    expect(calls[0]?.body).toMatchObject({ body: 'x', [ANSWER_KEY]: { to: '$asked', part: 'text' } });
  });
  test('is looked for and not sent again when the first try may have arrived, and had', async () => {
    const { outbox, sent } = outboxWith([broke, arrived], [marked('$found')]);
    expect(await outbox.send(part)).toBe('$found');
    expect(sent).toHaveLength(1);
  });
  test('is sent again, under the same transaction id, when it had not', async () => {
    const { outbox, sent } = outboxWith(
      [broke, arrived],
      [marked('$another', BOT, '$asked', 'chart'), marked('$other', BOT, '$else'), marked('$forged', TAMSIN)],
    );
    expect(await outbox.send(part)).toBe('$new');
    expect(sent).toHaveLength(2);
    expect(new Set(sent).size).toBe(1);
  });
  test('of an earlier process is looked for first', async () => {
    const { outbox, sent } = outboxWith([arrived], [marked('$found')]);
    expect(await outbox.send({ ...part, maybeSent: true })).toBe('$found');
    expect(sent).toHaveLength(0);
  });
  test('that the server refuses is not tried again', async () => {
    const { outbox, sent } = outboxWith([
      () => {
        throw new MatrixError({ errcode: 'M_FORBIDDEN', error: 'No', retry_after_ms: 0 }, 403);
      },
    ]);
    await expect(outbox.send(part)).rejects.toMatchObject({ errcode: 'M_FORBIDDEN' });
    expect(sent).toHaveLength(1);
  });
});

test('transaction ids differ by question and part, and fit', () => {
  const ids = [transactionId('$a', 'text'), transactionId('$a', 'chart'), transactionId('$b', 'text')];
  expect(new Set(ids).size).toBe(3);
  expect(transactionId('$a', 'text')).toBe(ids[0]);
  for (const id of ids) expect(id).toMatch(/^[\w-]{1,255}$/u);
});
