/** Which part of the chain it is, asked by a contrast once a remedy was in vain; bits worked by hand. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import type { Choice } from '../../bot/triage/engine/choice.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import { bitsOfPart, tellPartsFirst } from '../../bot/triage/engine/tell-parts.js';
import { EMPTY } from '../../scripts/knowledge/evaluate-policy.js';
import { check, fault, smallModel, WIRE } from './small-model.js';

const FAULTS = ['a', 'b', 'c', 'd', 'e', 'f'].map((id) => fault({ id, link: id < 'd' ? 'lead' : 'program' }));
const swap = check({ id: 'swap', minutes: 8, contrast: { works: { yes: ['program'] }, fails: { no: ['program'] } } });
const look = check({ id: 'look' });
const situation = situationFor(smallModel({ faults: FAULTS, checks: [swap, look] }), WIRE);
const tried = (count: number) => ({ ...EMPTY, turns: 3, tried: new Map(count === 0 ? [] : [[0, count]]) });
const RANKED: readonly Choice[] = [
  { kind: 'try', fault: 1, otherwise: false, minutes: 10 },
  { kind: 'ask', check: 1, again: false, minutes: 11 },
  { kind: 'ask', check: 0, again: false, minutes: 12 },
];
const firstOf = (evidence: typeof EMPTY): Choice | undefined =>
  tellPartsFirst(situation, evidence, beliefFrom(situation, evidence), RANKED)[0];

describe('a contrast that tells the part', () => {
  it('tells nearly one bit of two parts, a look at one thing nothing', () => {
    const belief = beliefFrom(situation, EMPTY);
    const [bits, none] = situation.checks.map((numbers) => bitsOfPart(situation, belief, numbers));
    // Two parts alike, 1 bit at most; 6 in 100 contrasts err either way and as many members, and a little is unknown.
    expect(bits).toBeGreaterThan(0.4);
    expect(bits).toBeLessThan(0.8);
    expect(none).toBeLessThan(0.1);
  });

  it('comes before one more guess after a remedy in vain, not before the first', () => {
    expect(firstOf(tried(0))).toMatchObject({ kind: 'try' });
    expect(firstOf(tried(1))).toMatchObject({ kind: 'ask', check: 0 });
  });

  it('does not come in a walk that is old', () => {
    expect(firstOf({ ...tried(1), turns: 9 })).toMatchObject({ kind: 'try' });
  });
});
