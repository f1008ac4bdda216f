/** Outcomes kept between running a command and having said its answer. */
import { expect, test } from 'vitest';
import { createPendingAnswers } from '../../bot/platforms/matrix/answer/pending-answers.js';
import { NOWHERE, reply } from '../../bot/reply/reply.js';
import { StoreError } from '../../bot/store/store.js';

const answer = reply({
  pointsAt: NOWHERE,
  title: 'Reminder',
  summary: 'I will tell you at 22:30.',
  data: { id: 'r1' },
});

const notesOf = (values: Map<string, string>) => ({
  get: async (key: string) => values.get(key) ?? null,
  set: async (key: string, value: string) => {
    values.set(key, value);
  },
});

test('the next process finds what the last had not yet said, and nothing that was', async () => {
  const values = new Map<string, string>();
  const errors: unknown[] = [];
  const first = createPendingAnswers(notesOf(values), 'pending', (error) => errors.push(error));
  await first.load();
  await Promise.all([first.put('a', answer), first.put('b', answer)]);
  await first.done('a');
  const second = createPendingAnswers(notesOf(values), 'pending', (error) => errors.push(error));
  await second.load();
  expect(second.get('a')).toBeUndefined();
  expect(second.get('b')).toEqual(answer);
  await second.done('b');
  expect(values.get('pending')).toBe('{}');
  expect(errors).toEqual([]);
});

test('a damaged note is told and passed over; a failing store stops no answer, but does stop the start', async () => {
  const errors: unknown[] = [];
  const damaged = createPendingAnswers(notesOf(new Map([['pending', '{"a":']])), 'pending', (error) =>
    errors.push(error),
  );
  await damaged.load();
  expect(errors).toHaveLength(1);
  const fail = async (): Promise<never> => {
    throw new StoreError('store-unavailable', 'x');
  };
  const failing = createPendingAnswers({ get: fail, set: fail }, 'pending', (error) => errors.push(error));
  await expect(failing.load()).rejects.toBeInstanceOf(StoreError);
  await failing.put('a', answer);
  expect(failing.get('a')).toEqual(answer);
  await failing.done('a');
  expect(failing.get('a')).toBeUndefined();
});
