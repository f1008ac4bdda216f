/** How many questions one member may ask: a burst, then a steady trickle. */
import { expect, test } from 'vitest';
import { createRateLimit } from '../../bot/platforms/shared/rate-limit.js';

test('a burst, then as many as time gives back; members apart', () => {
  const limit = createRateLimit({ burst: 3, perSecond: 0.5 });
  const take = (key: string, ms: number) => limit.take(key, ms);
  for (let i = 0; i < 3; i++) expect(take('odalys', 1000)).toBeNull();
  expect(take('odalys', 1000)).toEqual({ problem: 'too-many', waitSeconds: 2, again: false });
  expect(take('odalys', 2000)).toEqual({ problem: 'too-many', waitSeconds: 1, again: true });
  expect(take('ravi', 2000)).toBeNull();
  expect(take('odalys', 3000)).toBeNull();
  expect(take('odalys', 3000)).toMatchObject({ problem: 'too-many', again: false });
  // Never more than the burst, however long the pause; a clock that goes back gives nothing.
  expect([0, 0, 0, 0].map(() => take('odalys', 9_000_000) === null)).toEqual([true, true, true, false]);
  expect(take('odalys', 0)).not.toBeNull();
});

test('memory stays bounded: the key unused longest goes first', () => {
  const limit = createRateLimit({ burst: 1, perSecond: 0.001 });
  limit.take('first', 0);
  limit.take('kept', 0);
  for (let i = 0; i < 19_999; i++) {
    limit.take(`member ${i}`, 0);
    if (i === 10_000) limit.take('kept', 0);
  }
  expect(limit.take('kept', 0)).not.toBeNull();
  expect(limit.take('first', 0)).toBeNull();
});
