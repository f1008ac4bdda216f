/** What the knowledge says that an answer settles, against what the bench's set-ups show: they are built without looking at it. */
import { expect, it } from 'vitest';
import { realDeps } from '../commands/real-deps.js';
import { pairJobs, singleJobs } from './jobs.js';
import { seenAs } from './member.js';

/** Of set-ups that show the one answer, so many show the other as well. Two faults at once bend a rule now and then. */
const AS_SETTLED = 0.99;

it('a settled answer is what the set-up shows', async () => {
  const model = (await realDeps()).triage();
  const worlds = [...singleJobs(model, 6), ...pairJobs(model, 150)].map(({ world }) => world);
  const rules = model.checks.flatMap(({ id, settles = [] }) =>
    settles.flatMap(({ when, then }) =>
      when.flatMap((answer) => Object.entries(then).map(([other, shows]) => ({ id, answer, other, shows }))),
    ),
  );
  expect(rules.length).toBeGreaterThan(50);
  const wrong = rules.flatMap(({ id, answer, other, shows }) => {
    const seen = worlds.flatMap((world) => (seenAs(model, world, id) === answer ? [seenAs(model, world, other)] : []));
    const told = seen.filter((one) => one !== null);
    const right = told.filter((one) => one === shows).length;
    return right >= AS_SETTLED * told.length ? [] : [`${id}=${answer} → ${other}=${shows}: ${right} of ${told.length}`];
  });
  expect(wrong).toEqual([]);
}, 120_000);
