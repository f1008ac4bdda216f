/** Bayes' rule by hand, mistakes and second looks, contradictory answers, and what a partial cure does to earlier answers. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { gatherEvidence } from '../../bot/triage/engine/evidence.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import { SAYS_GOOD } from '../../bot/triage/engine/mistakes.js';
import {
  DEFAULT_SLIP,
  situationFor,
  SURENESS_OF_WEIGHTS,
  UNEXPLAINED_PRIOR,
} from '../../bot/triage/engine/situation.js';
import type { WalkEvent } from '../../bot/triage/walk/walk-state.js';
import { check, fault, smallModel, WIRE } from './small-model.js';

const said = (checkId: string, answer: string): WalkEvent => ({ kind: 'answer', check: checkId, answer, by: 'member' });
const after = (model: TriageModel, events: readonly WalkEvent[], outcomes = {}) => {
  const situation = situationFor(model, WIRE, outcomes);
  const gathered = gatherEvidence(situation, events);
  const belief = beliefFrom(situation, gathered);
  const of = (id: string): number =>
    belief.probabilities[id === 'unexplained' ? situation.unexplained : (situation.faultIndex.get(id) ?? -1)] ?? NaN;
  return { situation, gathered, belief, of };
};

const TWO = smallModel({
  faults: [
    fault({ id: 'a', weight: 3, answers: { c: { no: 0.8, yes: 0.2 } } }),
    fault({ id: 'b', weight: 1, answers: { c: { no: 0.1, yes: 0.9 } } }),
  ],
  checks: [check({ id: 'c' })],
});

describe('what is believed', () => {
  it('follows Bayes with the numbers of the model', () => {
    const u = UNEXPLAINED_PRIOR;
    const m = DEFAULT_SLIP;
    // Some mistakes say that all is well, the others any of the two answers: of these, half are a mistaken "no".
    const no = (m * (1 - SAYS_GOOD)) / 2;
    const [a, b] = [3 ** SURENESS_OF_WEIGHTS, 1];
    // P(no) = (1 - m) × odds + the mistaken for each cause; "unexplained" answers either way, evenly.
    const weights = {
      a: (a / (a + b)) * (1 - u) * ((1 - m) * 0.8 + no),
      b: (b / (a + b)) * (1 - u) * ((1 - m) * 0.1 + no),
      unexplained: u * ((1 - m) * 0.5 + no),
    };
    const total = weights.a + weights.b + weights.unexplained;
    const { of } = after(TWO, [said('c', 'no')]);
    expect(of('a')).toBeCloseTo(weights.a / total, 12);
    expect(of('b')).toBeCloseTo(weights.b / total, 12);
    expect(of('unexplained')).toBeCloseTo(weights.unexplained / total, 12);
  });

  it('is not moved by "not sure"', () => {
    expect([...after(TWO, [said('c', 'unsure')]).belief.probabilities]).toEqual([
      ...after(TWO, []).belief.probabilities,
    ]);
  });

  it('lets a second, different look win over the first', () => {
    expect(after(TWO, [said('c', 'yes'), said('c', 'no')]).of('a')).toBeGreaterThan(after(TWO, []).of('a'));
    expect(after(TWO, [said('c', 'no'), said('c', 'yes')]).of('a')).toBeLessThan(after(TWO, []).of('a'));
  });

  it('moves with the outcomes a club confirmed, as counts move a Dirichlet prior', () => {
    // 60 walks stand behind the shipped weights, drawn together: what a has more of them than b, counted for b, makes them equal.
    const a = 3 ** SURENESS_OF_WEIGHTS;
    const { of } = after(TWO, [], { b: (60 * (a - 1)) / (a + 1) });
    expect(of('a')).toBeCloseTo(of('b'), 12);
  });

  const words = (facts: Extract<WalkEvent, { kind: 'text' }>['facts'], suggests = {}): WalkEvent => ({
    kind: 'text',
    words: 'smoke',
    facts,
    guesses: [],
    suggests: Object.entries(suggests).map(([faultId, weight]) => ({ faultId, weight: weight as number })),
    by: 'member',
  });
  const fact = (what: string, answer: string, sureness = 0.8) =>
    ({ what, answer, sureness, quote: 'q', by: 'words' }) as const;

  it('takes likelihood factors from pasted text', () => {
    const model = smallModel({ faults: [fault({ id: 'a' }), fault({ id: 'b' })], checks: [check({ id: 'c' })] });
    const { of } = after(model, [words([], { b: 9 })]);
    expect(of('b') / of('a')).toBeCloseTo(9, 9);
  });

  it('believes words less than an answer, takes back what was denied, and lets an own answer replace them', () => {
    const told = after(TWO, [words([fact('c', 'no')])]).of('a');
    expect(told).toBeGreaterThan(after(TWO, []).of('a'));
    expect(told).toBeLessThan(after(TWO, [said('c', 'no')]).of('a'));
    const denied: WalkEvent = { kind: 'not-so', what: 'c', by: 'member' };
    expect(after(TWO, [words([fact('c', 'no')]), denied]).of('a')).toBe(after(TWO, []).of('a'));
    expect(after(TWO, [words([fact('c', 'no')]), said('c', 'yes')]).of('a')).toBeCloseTo(
      after(TWO, [said('c', 'yes')]).of('a'),
      12,
    );
    const right: WalkEvent = { kind: 'right', by: 'member' };
    expect(after(TWO, [words([fact('c', 'no')]), right]).of('a')).toBeGreaterThan(told);
  });

  it('lets no single answer rule a cause out', () => {
    const sure = smallModel({
      faults: [fault({ id: 'a', answers: { c: 'no' } }), fault({ id: 'b', answers: { d: 'no' } })],
      checks: [check({ id: 'c' }), check({ id: 'd' })],
    });
    expect(after(sure, [said('c', 'yes')]).of('a')).toBeGreaterThan(0.02);
  });
});

// A chain: a fault at a stage makes whole-chain checks behind it fail, leaves those before it good.
const CHAIN = smallModel({
  faults: [
    fault({ id: 'no-power', stage: 'power', answers: { light: 'no' } }),
    fault({ id: 'bad-cable', stage: 'cable' }),
    fault({ id: 'wrong-speed', stage: 'port', answers: { speed: 'no' } }),
    fault({ id: 'bad-driver', stage: 'program' }),
  ],
  checks: [
    check({ id: 'light', stage: 'power' }),
    check({ id: 'listed', stage: 'port', scope: 'chain' }),
    check({ id: 'speed', stage: 'port' }),
    check({ id: 'connects', stage: 'program', scope: 'chain' }),
  ],
});

describe('the defaults along the chain', () => {
  it('answers good before the fault and for settings, not good behind it', () => {
    const { situation } = after(CHAIN, []);
    const good = (checkId: string, faultId: string): number | undefined =>
      situation.checks[situation.checkIndex.get(checkId) ?? -1]?.odds[0]?.[situation.faultIndex.get(faultId) ?? -1];
    expect(good('light', 'bad-cable')).toBe(1);
    expect(good('listed', 'bad-cable')).toBe(0);
    expect(good('speed', 'bad-cable')).toBe(1);
    expect(good('connects', 'wrong-speed')).toBe(0);
    expect(good('listed', 'bad-driver')).toBe(1);
    expect(good('speed', 'wrong-speed')).toBe(0);
  });
});

describe('contradictory answers', () => {
  it('are found where every cause left needs one of them to be wrong', () => {
    const events = [said('light', 'yes'), said('listed', 'yes'), said('connects', 'no'), said('speed', 'yes')];
    expect(Math.max(...after(CHAIN, events).belief.mistaken)).toBeLessThan(0.5);
    // Two settings of one part cannot both be the cause; power and speed at once fit no single fault.
    const torn = after(CHAIN, [
      said('light', 'no'),
      said('speed', 'no'),
      said('listed', 'yes'),
      said('connects', 'yes'),
    ]);
    expect(Math.max(...torn.belief.mistaken) > 0.2 || torn.of('unexplained') > 0.5).toBe(true);
  });
});

describe('two causes at once', () => {
  it('keeps answers from before the removed cause and sets aside those given under it', () => {
    const { gathered, situation, of } = after(CHAIN, [
      said('light', 'yes'),
      said('listed', 'no'),
      said('connects', 'no'),
      said('speed', 'no'),
      { kind: 'try', fault: 'bad-cable', outcome: 'changed', by: 'member' },
    ]);
    const kept = gathered.observations.map(({ check: index }) => situation.checks[index]?.entry.id);
    // The light lies before the cable; the speed is a setting of its own. The whole-chain checks were answered under the broken cable.
    expect(kept).toEqual(['light', 'speed']);
    expect([...gathered.setAside].map((index) => situation.checks[index]?.entry.id)).toEqual(['listed', 'connects']);
    expect(of('wrong-speed')).toBeGreaterThan(0.8);
    expect(of('bad-cable')).toBeLessThan(0.05);
  });

  it('gives remedies that failed behind the removed cause another chance', () => {
    const failed: WalkEvent = { kind: 'try', fault: 'bad-driver', outcome: 'same', by: 'member' };
    expect(after(CHAIN, [failed]).of('bad-driver')).toBeLessThan(0.05);
    expect(
      after(CHAIN, [failed, { kind: 'try', fault: 'bad-cable', outcome: 'changed', by: 'member' }]).of('bad-driver'),
    ).toBeGreaterThan(0.2);
  });
});
