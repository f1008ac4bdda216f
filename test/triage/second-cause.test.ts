/** A cause that was there and is mended while the trouble stays: a second one is looked for, and what the first accounts for is not counted twice. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { gatherEvidence } from '../../bot/triage/engine/evidence.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { verifyingCheck } from '../../bot/triage/walk/after-remedy.js';
import type { WalkEvent } from '../../bot/triage/walk/walk-state.js';
import { check, fault, smallModel, WIRE } from './small-model.js';

const said = (checkId: string, answer: string): WalkEvent => ({ kind: 'answer', check: checkId, answer, by: 'member' });
const tried = (id: string, outcome: 'same' | 'changed'): WalkEvent => ({
  kind: 'try',
  fault: id,
  outcome,
  by: 'member',
});

const verify = (id: string) => ({ text: 'It is well.', check: id, answer: 'yes' });
const MODEL = smallModel({
  faults: [
    fault({
      id: 'wrong-plug',
      weight: 0.1,
      answers: { plug: 'no', runs: 'no', hum: 'no', lately: { yes: 0.1, no: 0.9 } },
      verify: verify('plug'),
    }),
    fault({ id: 'flat', answers: { runs: 'no', lamp: 'no' }, verify: verify('lamp') }),
    fault({ id: 'fuse', answers: { runs: 'no', lamp: 'no' }, verify: verify('lamp') }),
    fault({ id: 'worn', answers: { runs: 'no', lately: { yes: 0.4, no: 0.6 } } }),
  ],
  checks: [
    check({ id: 'plug' }),
    check({ id: 'lamp' }),
    check({ id: 'hum' }),
    check({ id: 'runs', scope: 'chain' }),
    check({ id: 'lately', lasting: true }),
  ],
});

const situation = situationFor(MODEL, WIRE);
const after = (events: readonly WalkEvent[]) => {
  const evidence = gatherEvidence(situation, events);
  const belief = beliefFrom(situation, evidence);
  const kept = evidence.observations.map((one) => situation.checks[one.check]?.entry.id);
  const of = (id: string): number => belief.probabilities[situation.faultIndex.get(id) ?? -1] ?? NaN;
  return { evidence, kept, of, next: verifyingCheck(situation, evidence, belief, events)?.id };
};

const PLUG_SHOWN = [said('runs', 'no'), said('plug', 'no'), said('hum', 'no')];

describe('a remedy that changed nothing', () => {
  it('is looked at where its look had shown the cause and tells it from the others', () => {
    expect(after([...PLUG_SHOWN, tried('wrong-plug', 'same')]).next).toBe('plug');
  });

  it('is not looked at by what all other causes show too', () => {
    // The lamp is dark under either cause: that it is dark still says nothing of the one just seen to.
    expect(after([said('runs', 'no'), said('lamp', 'no'), tried('flat', 'same')]).next).toBeUndefined();
  });

  it('leaves a second cause to be looked for, with half of the turns given back, where the look now finds all well', () => {
    const { evidence, kept, of } = after([...PLUG_SHOWN, tried('wrong-plug', 'same'), said('plug', 'yes')]);
    expect(evidence.mended).toEqual(new Set([situation.faultIndex.get('wrong-plug')]));
    // Four answers and a remedy.
    expect(evidence.turns).toBe(2);
    // That it does not run is as true as before, and the plug is well now; that it does not hum was the plug's doing.
    expect(kept).toEqual(['runs', 'plug']);
    expect(of('wrong-plug')).toBeLessThan(0.05);
  });

  it('leaves a second cause too where a coarser look had shown the first', () => {
    const events = [said('runs', 'no'), said('hum', 'no'), tried('wrong-plug', 'same'), said('plug', 'yes')];
    expect(after(events).evidence.mended.size).toBe(1);
  });

  it('proves nothing where the look found all well before it', () => {
    const events = [said('hum', 'no'), said('plug', 'yes'), tried('wrong-plug', 'same'), said('plug', 'yes')];
    expect(after(events).evidence.mended.size).toBe(0);
  });

  it('is still in question where the look finds the cause as it was', () => {
    const { evidence } = after([...PLUG_SHOWN, tried('wrong-plug', 'same'), said('plug', 'no')]);
    expect(evidence.mended.size).toBe(0);
    expect(evidence.notTaken).toEqual(new Set([situation.faultIndex.get('wrong-plug')]));
  });
});

describe('what was told of the days before', () => {
  it('does not speak of a second cause where the first accounts for it, and is not asked again', () => {
    const { evidence, kept } = after([said('lately', 'no'), said('runs', 'no'), tried('wrong-plug', 'changed')]);
    expect(kept).toEqual([]);
    expect([...evidence.unsure].map((index) => situation.checks[index]?.entry.id)).toEqual(['lately']);
  });

  it('does where the first cause does not', () => {
    expect(after([said('lately', 'no'), said('runs', 'no'), tried('flat', 'changed')]).kept).toEqual(['lately']);
  });
});
