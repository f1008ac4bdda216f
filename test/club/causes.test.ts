/** What a club's managers see of the causes its walks confirmed, and that no one member can bend them. */
import { expect, it } from 'vitest';
import { clubOutcomes, MOST_COUNTED } from '../../bot/commands/triage/walk-keeper.js';
import { MBALI, NOW, openClub, RAVI, TAMSIN } from './club-bench.js';

it('a manager looks at the counts and begins afresh; nobody else does', async () => {
  const club = await openClub();
  const [fault] = club.deps.triage().faults;
  if (fault === undefined) throw new Error('no fault');
  for (let i = 0; i < 20; i++) await club.deps.store.outcomes.add(TAMSIN.clubId, fault.id, TAMSIN.memberId, NOW);
  await club.deps.store.outcomes.add(TAMSIN.clubId, fault.id, RAVI.memberId, NOW);
  expect((await club.says('causes', MBALI)).facts).toEqual([{ label: fault.title, value: '2 times' }]);
  expect(JSON.stringify(await club.says('causes', MBALI))).not.toContain(TAMSIN.memberId);
  expect((await club.refused('causes', TAMSIN)).problem).toBe('not-allowed');
  await club.says('causes reset:yes', MBALI);
  expect((await club.says('causes', MBALI)).summary).toBe('None yet.');
});

it('no cause weighs more than so much, however many confirm it', async () => {
  const { deps } = await openClub();
  for (let i = 0; i < MOST_COUNTED + 15; i++) await deps.store.outcomes.add('c', 'cable', `discord:${i}`, NOW);
  expect(await clubOutcomes(deps.store, 'c')).toEqual({ cable: MOST_COUNTED });
});
