/** What an answer settles of other checks: they are not asked, they weigh a little, and a doubtful answer settles nothing. */
import { describe, expect, it } from 'vitest';
import { beliefFrom } from '../../bot/triage/engine/belief.js';
import { rankSteps } from '../../bot/triage/engine/choose-step.js';
import { gatherEvidence } from '../../bot/triage/engine/evidence.js';
import { situationFor } from '../../bot/triage/engine/situation.js';
import type { WalkEvent } from '../../bot/triage/index.js';
import { BASE, complaints, goodEvidence } from './model-folders.js';
import { check, fault, smallModel, WIRE } from './small-model.js';

const answered = (id: string, answer: string): WalkEvent => ({ kind: 'answer', check: id, answer, by: 'member' });
const told = (what: string, answer: string, sureness: number): WalkEvent => ({
  kind: 'text',
  words: 'in words',
  facts: [{ what, answer, sureness, quote: 'in words', by: 'words' }],
  guesses: [],
  suggests: [],
  by: 'member',
});

/** Keys that run the mount, and lights that show it live: as in the trade, keys that run settle the switch. */
const modelWith = (parts: { readonly settles: boolean }) =>
  smallModel({
    faults: [
      fault({ id: 'switched-off', answers: { switch: 'no', keys: { yes: 0.2, no: 0.8 } } }),
      fault({ id: 'lead-pulled', stage: 'cable', answers: { lead: 'no' } }),
      fault({ id: 'wrong-type', stage: 'program', answers: { type: 'no' } }),
    ],
    checks: [
      check({ id: 'keys', ...(parts.settles ? { settles: [{ when: ['yes'], then: { switch: 'yes' } }] } : {}) }),
      check({ id: 'switch', ...(parts.settles ? { settles: [{ when: ['no'], then: { keys: 'no' } }] } : {}) }),
      check({ id: 'lead', stage: 'cable' }),
      check({ id: 'type', stage: 'program' }),
    ],
  });

const after = (events: readonly WalkEvent[], settles = true) => {
  const situation = situationFor(modelWith({ settles }), WIRE);
  const evidence = gatherEvidence(situation, events);
  const belief = beliefFrom(situation, evidence);
  return {
    asked: rankSteps(situation, evidence, belief).flatMap((choice) =>
      choice.kind === 'ask' && !choice.again ? [situation.checks[choice.check]?.entry.id ?? ''] : [],
    ),
    switchedOff: belief.probabilities[situation.faultIndex.get('switched-off') ?? -1] ?? 0,
  };
};

describe('an answer that settles another check', () => {
  it('leaves that one unasked, and no other', () => {
    expect(after([answered('keys', 'yes')], false).asked).toContain('switch');
    const { asked } = after([answered('keys', 'yes')]);
    expect(asked).not.toContain('switch');
    expect(asked).toContain('lead');
    expect(after([answered('lead', 'yes')]).asked).toContain('switch');
  });

  it('weighs for what it settles, less than if that had been looked at', () => {
    const [bare, settled, looked] = [
      after([answered('keys', 'yes')], false).switchedOff,
      after([answered('keys', 'yes')]).switchedOff,
      after([answered('keys', 'yes'), answered('switch', 'yes')], false).switchedOff,
    ];
    expect(settled).toBeLessThan(bare);
    expect(settled).toBeGreaterThan(looked);
  });

  it('settles nothing where it was only half understood, or taken back', () => {
    expect(after([told('keys', 'yes', 0.9)]).asked).not.toContain('switch');
    expect(after([told('keys', 'yes', 0.6)]).asked).toContain('switch');
    const slip: WalkEvent = { kind: 'slip', check: 'keys', by: 'member' };
    expect(after([answered('keys', 'yes'), slip]).asked).toContain('switch');
  });

  it('settles nothing once a remedy has changed something since', () => {
    const changed: WalkEvent = { kind: 'try', fault: 'wrong-type', outcome: 'changed', by: 'member' };
    expect(after([answered('keys', 'yes'), changed]).asked).toContain('switch');
  });
});

describe('a file of checks', () => {
  const withSettles = (settles: string, light = ''): string[] =>
    complaints({
      ...goodEvidence,
      'checks/all.yaml': `${BASE['checks/all.yaml']}${light}- id: keys
  stage: power
  question: Do the keys work?
  how: Look.
  answers: [{ id: both, label: Both }, { id: none, label: None }]
  good: both
  settles: ${settles}
  minutes: 1
  source: invented for a test
`,
    }).filter((complaint) => complaint.includes('settles'));

  it('may name checks and answers that exist', () => {
    expect(withSettles('[{ when: [both], then: { light: "on" } }]')).toEqual([]);
  });

  it.each([
    ['[{ when: [bath], then: { light: "on" } }]', 'check "keys" has no answer "bath"; did you mean "both"?'],
    ['[{ when: [both], then: { lihgt: "on" } }]', 'there is no check "lihgt"; did you mean "light"?'],
    ['[{ when: [both], then: { light: lit } }]', 'check "light" has no answer "lit"'],
    ['[{ when: [both], then: { keys: none } }]', 'it is this very check'],
    [
      '[{ when: [both], then: { light: "on" } }, { when: [both, none], then: { light: "off" } }]',
      'what "both" says of "light" stands there twice',
    ],
  ])('%s is complained of', (settles, said) => {
    expect(withSettles(settles)).toEqual([expect.stringContaining(said)]);
  });

  it('may settle no look that keeps gear from harm', () => {
    expect(withSettles('[{ when: [both], then: { light: "on" } }]', '  safety: true\n')).toEqual([
      expect.stringContaining('"light" keeps gear from harm, and is always looked at'),
    ]);
  });
});
