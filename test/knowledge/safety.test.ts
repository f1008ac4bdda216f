/** Warnings before the steps that can hurt a person or the gear. */
import { isProblem } from '../../bot/ground/problem.js';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { answerStep, assess, startWalk, type AnswerProblem } from '../../bot/triage/walk/walk.js';
import type { WalkState } from '../../bot/triage/walk/walk-state.js';
import { shipped } from './shipped-model.js';

const cautionIds = new Set(
  (parse(readFileSync('knowledge/cautions.yaml', 'utf8')) as readonly { readonly id: string }[]).map(({ id }) => id),
);

const stepsOf = (id: string): string => {
  const steps = shipped.fault(id)?.remedy.steps;
  if (steps === undefined) return '';
  return Array.isArray(steps)
    ? steps.join(' ')
    : [steps.all, steps.windows, steps.macos, steps.linux].flatMap((part) => part ?? []).join(' ');
};

describe('safety in the fault model', () => {
  it('names only cautions that are written', () => {
    for (const { id, remedy } of shipped.faults)
      for (const caution of remedy.cautions ?? []) expect(cautionIds.has(caution), `${id}: ${caution}`).toBe(true);
    for (const { id, cautions } of shipped.checks)
      for (const caution of cautions ?? []) expect(cautionIds.has(caution), `${id}: ${caution}`).toBe(true);
  });

  it('asks for the voltage level first on the direct cable, mount off, whatever the system', () => {
    for (const system of ['windows', 'macos', 'linux'] as const) {
      const { step } = assess(
        shipped,
        startWalk({ member: 'Odalys', helper: null }, { path: 'board-cable', system, client: 'direct' }),
      );
      expect(step.id).toBe('lead-level');
    }
    const check = shipped.check('lead-level');
    expect(check?.powerOffFirst).toBe(true);
    expect(check?.cautions).toEqual(expect.arrayContaining(['logic-level', 'power-off-first']));
  });

  it('has a lead that is not logic level unplugged at once, before any other question', () => {
    const answered = (state: WalkState, step: string, answer: string): WalkState => {
      const next: WalkState | AnswerProblem = answerStep(shipped, state, step, answer, 'member');
      if (isProblem(next)) throw new Error(next.problem);
      return next;
    };
    const start = startWalk(
      { member: 'Odalys', helper: null },
      { path: 'board-cable', system: 'macos', client: 'platform' },
    );
    const away = { kind: 'try', id: 'rs232-on-logic-port' };
    expect(assess(shipped, answered(start, 'lead-level', 'rs232')).step).toMatchObject(away);
    // Told nothing by its label, the lead itself is looked at, then measured, before anything else is asked.
    for (const open of ['unmarked', 'unsure']) {
      const marked = answered(start, 'lead-level', open);
      expect(assess(shipped, marked).step.id).toBe('nine-pins');
      expect(assess(shipped, answered(marked, 'nine-pins', 'yes')).step).toMatchObject(away);
      for (const plug of ['no', 'unsure']) {
        const looked = answered(marked, 'nine-pins', plug);
        expect(assess(shipped, looked).step.id).toBe('lead-at-rest');
        expect(assess(shipped, answered(looked, 'lead-at-rest', 'minus')).step).toMatchObject(away);
        expect(assess(shipped, answered(looked, 'lead-at-rest', 'three')).step.id).toBe('lead-gives-three-volts');
        expect(assess(shipped, answered(looked, 'lead-at-rest', 'five')).step).toMatchObject({
          kind: 'ask',
          id: 'how-far',
        });
      }
    }
    // Nobody could tell by any look: it stays unplugged.
    const unknown = ['lead-level', 'nine-pins', 'lead-at-rest'].reduce((at, id) => answered(at, id, 'unsure'), start);
    expect(assess(shipped, unknown).step).toMatchObject(away);
    expect(assess(shipped, answered(start, 'lead-level', 'logic')).step).toMatchObject({ kind: 'ask', id: 'how-far' });
    // Unplugged, and still no cure: the walk goes on instead of repeating itself.
    const unplugged = answered(answered(start, 'lead-level', 'rs232'), 'rs232-on-logic-port', 'same');
    expect(assess(shipped, unplugged).step.id).not.toBe('rs232-on-logic-port');
  });

  // RS-232: signal levels of ±3 to ±15 V at a receiver, ANSI/TIA-232-F; what they do to a 5 V board: common practice, no source.
  it('warns of the damage RS-232 levels do to a logic port', () => {
    const fault = shipped.fault('rs232-on-logic-port');
    expect(fault?.why).toMatch(/15 V/u);
    expect(fault?.why).toMatch(/destroy/u);
    expect(fault?.remedy.cautions).toContain('logic-level');
    expect(stepsOf('rs232-on-logic-port')).toMatch(/^Switch the mount off and unplug/u);
  });

  it('carries the power-off caution wherever a remedy switches the mount off before plugs move', () => {
    for (const { id, remedy } of shipped.faults) {
      if (
        /switch (?:the mount )?off(?:,| and| before|\.)[^.]*(?:plug|lead|cable|controller|fuse)/iu.test(stepsOf(id))
      ) {
        expect(remedy.cautions ?? [], id).toContain('power-off-first');
      }
    }
  });

  it('carries Sun or motion cautions wherever it asks for a slew', () => {
    for (const check of shipped.checks) {
      if (/\bslew\b/iu.test(`${check.question}`))
        expect(check.cautions ?? [], check.id).toEqual(expect.arrayContaining(['sun', 'moving-mount']));
    }
    for (const { id, remedy } of shipped.faults) {
      if (/cap the tube/iu.test(stepsOf(id)))
        expect(
          (remedy.cautions ?? []).some((c) => c === 'sun' || c === 'moving-mount'),
          id,
        ).toBe(true);
    }
  });

  it('leaves mains and fixed wiring to a licensed electrician, and never has anyone open a supply', () => {
    expect(stepsOf('supply-dead')).toMatch(/licensed electrician/u);
    expect(stepsOf('supply-dead')).toMatch(/do not open the supply/u);
    for (const { id } of shipped.faults) expect(stepsOf(id), id).not.toMatch(/rewire|unscrew|open up/iu);
  });
});
