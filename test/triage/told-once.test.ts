/** What a member told in words is not asked: over every check of the shipped model and every answer that words may hold. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import {
  answerStep,
  assess,
  startWalk,
  UNSURE,
  type CheckEntry,
  type Step,
  type WalkEvent,
  type WalkState,
} from '../../bot/triage/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();
const SURELY = 0.85;
const STEPS = 4;

const told = (check: string, answer: string): WalkEvent => ({
  kind: 'text',
  words: 'told',
  facts: [{ what: check, answer, sureness: SURELY, quote: 'told', by: 'words' }],
  guesses: [],
  suggests: [],
  by: 'member',
});

/** Asked for the first time, or as if it were: neither a doubt nor what a remedy has changed. */
const isAskedAnew = (step: Step, check: string): boolean =>
  step.kind === 'ask' && step.id === check && (step.opening || step.because === null);

const answerTo = (step: Step, says: 'good' | 'unsure'): string => {
  if (step.kind === 'try') return 'same';
  return step.kind === 'ask' && !step.opening && says === 'good' ? step.check.good : UNSURE;
};

const toldWalk = ({ id, only }: CheckEntry, answer: string): WalkState => {
  const path = only?.paths?.[0] ?? 'controller-serial';
  const system = only?.systems?.[0] ?? 'windows';
  const state = startWalk({ member: 'Isaura', helper: null }, { path, system, client: 'direct' });
  return { ...state, events: [...state.events, told(id, answer)] };
};

/** What would be asked in a walk that looks at other things and finds nothing, or cannot tell. */
const asksAnew = (check: CheckEntry, answer: string, says: 'good' | 'unsure'): readonly string[] => {
  let state = toldWalk(check, answer);
  const asked: string[] = [];
  for (let turn = 0; turn < STEPS; turn++) {
    const { step } = assess(model, state, {}, { depth: 1, breadth: 2 });
    if (isAskedAnew(step, check.id)) asked.push(`${check.id}=${answer} asked at step ${turn + 1}`);
    if (step.kind === 'handOn' || step.kind === 'done') break;
    const next = answerStep(model, state, step.id, answerTo(step, says), 'member');
    if (isProblem(next)) throw new Error(`${step.id}: ${next.problem}`);
    state = next;
  }
  return asked;
};

describe('what was told in words', () => {
  it.each(['same', 'first-time'])('of what came before (%s) is not asked more finely', (answer) => {
    const state = startWalk(
      { member: 'Isaura', helper: null },
      { path: 'built-in-usb', system: 'linux', client: 'direct' },
    );
    const { ranked, situation } = assess(model, { ...state, events: [...state.events, told('worked-before', answer)] });
    const asked = ranked.flatMap((choice) => (choice.kind === 'ask' ? [situation.checks[choice.check]?.entry.id] : []));
    expect(asked.length).toBeGreaterThan(0);
    expect(asked).not.toContain('changed-last');
  });

  it.each([
    ['changed-last', 'never-worked', 'when-drops'],
    ['worked-before', 'first-time', 'when-drops'],
    ['mount-does', 'wrong-way', 'slew'],
  ])('%s, %s, leaves nothing for %s to ask', (check, answer, barred) => {
    const start = startWalk(
      { member: 'Isaura', helper: null },
      { path: 'built-in-usb', system: 'linux', client: 'direct' },
    );
    const askedOnce = (events: readonly WalkEvent[]): readonly string[] => {
      const { ranked, situation } = assess(model, { ...start, events: [...start.events, ...events] });
      return ranked.flatMap((choice) =>
        choice.kind === 'ask' ? [situation.checks[choice.check]?.entry.id ?? ''] : [],
      );
    };
    const moves = told('how-far', 'no-move');
    expect(askedOnce([moves])).toContain(barred);
    expect(askedOnce([moves, told(check, answer)])).not.toContain(barred);
  });

  it('holds beside what else was changed or tried, and "nothing" only where nothing was', () => {
    const start = startWalk(
      { member: 'Isaura', helper: null },
      { path: 'controller-serial', system: 'windows', client: 'direct' },
    );
    const held = (check: string, answers: readonly string[]): readonly string[] => {
      const events = answers.map((answer) => told(check, answer));
      const { evidence, situation } = assess(model, { ...start, events: [...start.events, ...events] });
      const index = situation.checkIndex.get(check);
      return evidence.observations
        .filter((observation) => observation.check === index)
        .map(({ answer }) => situation.checks[index ?? -1]?.answers[answer] ?? '');
    };
    const tried = ['cable', 'restart', 'socket', 'adapter', 'restart'];
    expect(held('tried-already', tried)).toEqual(['cable', 'socket', 'adapter', 'restart']);
    expect(held('changed-last', ['nothing', 'cable', 'device', 'nothing'])).toEqual(['cable', 'device']);
    expect(held('message', ['connects', 'no-reply', 'denied'])).toHaveLength(2);
  });

  it('is not asked again, whatever the check and the answer', () => {
    const asked = model.checks.flatMap((check) =>
      check.answers.flatMap(({ id }, a) => asksAnew(check, id, a % 2 === 0 ? 'good' : 'unsure')),
    );
    expect(asked).toEqual([]);
  }, 120_000);
});
