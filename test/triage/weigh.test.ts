/** What is remembered of a walk's evidence is what would be worked out afresh, and no two evidences share it. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { rankSteps } from '../../bot/triage/engine/choose-step.js';
import type { Evidence } from '../../bot/triage/engine/evidence.js';
import { situationFor, type Situation } from '../../bot/triage/engine/situation.js';
import { believed, rankedSteps } from '../../bot/triage/engine/weigh.js';
import { contextsOf } from '../../scripts/knowledge/contexts.js';
import { EMPTY } from '../../scripts/knowledge/evaluate-policy.js';
import { playWalk } from '../../scripts/knowledge/sample-walks.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const situations = contextsOf(model)
  .filter((_, i) => i % 9 === 0)
  .map((context) => situationFor(model, context));

/** The evidence of some walks, turn by turn, with mistakes. */
const evidences = situations.flatMap((situation): { situation: Situation; evidence: Evidence }[] => {
  const met: { situation: Situation; evidence: Evidence }[] = [];
  const policy = (_: Situation, evidence: Evidence) => {
    met.push({ situation, evidence });
    return rankedSteps(situation, evidence)[0] ?? { kind: 'handOn' as const, minutes: 0 };
  };
  playWalk(situation, policy, 3, 0.15, 1);
  return met;
});

describe('what is remembered of an evidence', () => {
  it('is the belief and the ranking worked out afresh', () => {
    expect(evidences.length).toBeGreaterThan(15);
    for (const { situation, evidence } of evidences) {
      const belief = beliefFrom(situation, evidence);
      expect(believed(situation, evidence)).toEqual(belief);
      expect(rankedSteps(situation, evidence)).toEqual(rankSteps(situation, evidence, belief));
    }
  });

  it('is found again for the same answers', () => {
    const { situation, evidence } = evidences.at(-1) as (typeof evidences)[number];
    const again = { ...evidence, observations: evidence.observations.map((one) => ({ ...one })) };
    expect(rankedSteps(situation, again)).toBe(rankedSteps(situation, evidence));
  });

  it('is never that of another evidence or situation', () => {
    const [situation, other] = situations as [Situation, Situation];
    const [a, b] = [
      { check: 0, answer: 0, look: 'look' },
      { check: 1, answer: 1, look: 'look' },
    ] as const;
    const said: Evidence = { ...EMPTY, observations: [a, b] };
    const unlike: readonly Evidence[] = [
      said,
      { ...EMPTY, observations: [b, a] },
      { ...EMPTY, observations: [a] },
      { ...EMPTY, observations: [a, { ...b, look: 'relook' }] },
      { ...EMPTY, observations: [a, { ...b, slip: 0.2 }] },
      { ...EMPTY, observations: [a, { ...b, before: true }] },
      { ...said, turns: 2 },
      { ...said, tried: new Map([[4, 1]]) },
      { ...said, attempts: new Map([[4, 1]]) },
      { ...said, notTaken: new Set([4]) },
      { ...said, mended: new Set([4]) },
      { ...said, factors: new Map([[4, 1.5]]) },
      { ...said, unsure: new Set([4]) },
      { ...said, setAside: new Set([4]) },
    ];
    const kept = [...unlike.map((one) => believed(situation, one)), believed(other, said)];
    expect(new Set(kept).size).toBe(unlike.length + 1);
  });

  it('is not of another club, whose outcomes differ', () => {
    const [{ context, faults }] = situations as [Situation];
    const counted = situationFor(model, context, { [faults[5]?.id ?? '']: 9 });
    expect(believed(counted, EMPTY).probabilities[5]).toBeGreaterThan(
      believed(situationFor(model, context), EMPTY).probabilities[5] ?? 1,
    );
  });
});
