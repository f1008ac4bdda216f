/** Outcomes kept between running a command and having said its answer. */
import { expect, test } from 'vitest';
import { createPendingAnswers, type KeptAnswer } from '../../bot/platforms/matrix/answer/pending-answers.js';
import { NOWHERE, reply, type Outcome } from '../../bot/reply/reply.js';
import { openStore } from '../../bot/store/open-store.js';
import { StoreError } from '../../bot/store/store.js';

const NOW = Date.UTC(2026, 10, 25, 18);
const PREFIX = 'matrix:@pierhand:fenwold.example:pending-answers';
const TAMSIN = 'matrix:@tamsin:fenwold.example';
const RAVI = 'matrix:@ravi:fenwold.example';

const answer = reply({
  pointsAt: NOWHERE,
  title: 'Reminder',
  summary: 'I will tell you at 22:30.',
  data: { id: 'r1' },
});

const garden = reply({
  title: 'Garden',
  summary: 'Garden stands at 52.71, 0.12.',
  audience: 'asker',
  pointsAt: [
    {
      what: 'Venus',
      when: { utcMs: NOW },
      observer: { latitudeDeg: 52.71, longitudeDeg: 0.12, elevationM: 3 },
      zone: 'Europe/London',
      direction: { altitudeDeg: 20, azimuthDeg: 200 },
    },
  ],
  data: { site: { latitudeDeg: 52.71 } },
});
const publicly = (outcome: Outcome, memberId = TAMSIN): KeptAnswer => ({ outcome, memberId, isPrivate: false });

const opened = async (errors: unknown[] = []) => {
  const store = await openStore({ memory: true });
  const process = (nowUtcMs = NOW) =>
    createPendingAnswers(
      store.notes,
      PREFIX,
      () => nowUtcMs,
      (error) => errors.push(error),
    );
  return { store, process };
};

test('the next process finds what the last had not yet said, and nothing that was', async () => {
  const errors: unknown[] = [];
  const { store, process } = await opened(errors);
  const first = process();
  await first.load();
  await Promise.all([first.put('a', publicly(answer)), first.put('b', publicly(answer))]);
  await first.done('a');
  const second = process();
  await second.load();
  expect(second.get('a')).toBeUndefined();
  expect(second.get('b')).toEqual({ ...answer, data: {} });
  await second.done('b');
  expect(await store.notes.list(PREFIX)).toEqual([]);
  expect(errors).toEqual([]);
  await store.close();
});

test('after a crash, forget leaves no private answer of theirs behind, and leaves those of others', async () => {
  const { store, process } = await opened();
  const crashed = process();
  await crashed.put('a', { ...publicly(garden), isPrivate: true });
  await crashed.put('b', publicly(answer, RAVI));
  await store.forgetMember(TAMSIN);
  const left = await store.notes.list('');
  expect(left.map(({ key }) => key)).toEqual([`${PREFIX}:b:@ravi:fenwold.example`]);
  const next = process();
  await next.load();
  expect(next.get('b')).toMatchObject({ summary: answer.summary });
  await store.close();
});

test('a crash leaves no word of a private answer, and of a public one no place it was reckoned for', async () => {
  const { store, process } = await opened();
  const crashed = process();
  await crashed.put('a', { ...publicly(garden), isPrivate: true });
  await crashed.put('b', publicly({ ...garden, title: 'Venus', summary: 'It is up.', audience: 'everyone' }));
  const left = JSON.stringify(await store.notes.list(''));
  for (const secret of ['Garden', '52.71', '0.12', 'Europe/London']) expect(left).not.toContain(secret);
  // As long as the process lives, the answer is whole.
  expect(crashed.get('a')).toEqual(garden);
  const next = process();
  await next.load();
  expect(next.get('a')).toMatchObject({ problem: 'interrupted', audience: 'asker' });
  expect(next.get('b')).toMatchObject({ title: 'Venus', summary: 'It is up.', pointsAt: [] });
  await store.close();
});

test('a day after a crash, and from before answers had owners, nothing is left', async () => {
  const { store, process } = await opened();
  await process().put('a', publicly(answer));
  await store.notes.set(PREFIX, JSON.stringify({ old: answer }));
  await store.notes.set('matrix:@pierhand:fenwold.example:sync-token', 't');
  await process(NOW + 25 * 3_600_000).load();
  expect((await store.notes.list('')).map(({ key }) => key)).toEqual(['matrix:@pierhand:fenwold.example:sync-token']);
  await store.close();
});

test('a damaged note is told and passed over; a failing store stops no answer, but does stop the start', async () => {
  const errors: unknown[] = [];
  const { store, process } = await opened(errors);
  await store.notes.set(`${PREFIX}:a:@tamsin:fenwold.example`, '{"a":');
  await process().load();
  expect(errors).toHaveLength(1);
  await store.close();
  const fail = async (): Promise<never> => {
    throw new StoreError('store-unavailable', 'x');
  };
  const failing = createPendingAnswers(
    { get: fail, set: fail, list: fail, remove: fail },
    PREFIX,
    () => NOW,
    (error) => errors.push(error),
  );
  await expect(failing.load()).rejects.toBeInstanceOf(StoreError);
  await failing.put('a', publicly(answer));
  expect(failing.get('a')).toEqual(answer);
  await failing.done('a');
  expect(failing.get('a')).toBeUndefined();
});
