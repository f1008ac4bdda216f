/** What a member did before the walk began is not asked for again; a wrong lead is stopped whenever it is spoken of. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { answerStep, assess, startWalk, tellText, type WalkState } from '../../bot/triage/index.js';
import { rankSteps } from '../../bot/triage/engine/choose-step.js';
import { deps } from './console-walk.js';

const model = deps.triage();
const start = (path: string): WalkState =>
  startWalk({ member: 'Sabra', helper: null }, { path, system: 'windows', client: 'direct' });
const tell = (state: WalkState, text: string): WalkState => tellText(model, state, text, 'member').state;
const reply = (state: WalkState, id: string, said: string): WalkState => {
  const then = answerStep(model, state, id, said, 'member');
  if (isProblem(then)) throw new Error(`${id}.${said} is no answer`);
  return then;
};
const offered = (state: WalkState): readonly string[] => {
  const { situation, evidence, belief } = assess(model, state);
  return rankSteps(situation, evidence, belief, { depth: 1, breadth: 99, freely: true }).flatMap((choice) =>
    choice.kind === 'try' ? [`${situation.faults[choice.fault]?.id}${choice.otherwise ? ', otherwise' : ''}`] : [],
  );
};

describe('what was done before', () => {
  it('is not asked for again: the other way to the same cure is', () => {
    const denied = tell(start('controller-serial'), 'Access to the port is denied.');
    expect(offered(denied)).toContain('port-held-by-program');
    const closed = tell(denied, 'I closed everything.');
    expect(offered(closed)).not.toContain('port-held-by-program');
    expect(offered(closed)).toContain('port-held-by-program, otherwise');
  });

  it('takes the address off the list and the light that stands for what they are', () => {
    const silent = reply(start('bridge-house-network'), 'ping', 'silent');
    expect(offered(silent)).toContain('bridge-address-changed');
    const said = tell(silent, 'I typed the address off the router page, and the light on the bridge is solid');
    expect(offered(said).join(' ')).not.toMatch(/bridge-address-changed|bridge-unpowered/u);
  });
});

describe('a nine-pin plug', () => {
  const answered = reply(start('board-cable'), 'lead-level', 'logic');

  it.each(['there is a nine pin plug on the adapter', '5 volt, its usb, but it has a nine pin plug'])(
    'stops the walk whatever was answered before: %s',
    (words) => {
      expect(assess(model, tell(answered, words)).step).toMatchObject({ kind: 'try', id: 'rs232-on-logic-port' });
    },
  );

  it('that was there once tells of a hurt input, and alarms nobody with a hand controller’s lead', () => {
    const once = assess(model, tell(answered, 'my first cable had a nine pin plug on it'));
    expect(once.step.id).not.toBe('rs232-on-logic-port');
    const at = once.situation.faultIndex.get('board-input-hurt') ?? -1;
    expect(once.belief.probabilities[at]).toBeGreaterThan(2 * (once.situation.priors[at] ?? 0));
    const open = tell(startWalk({ member: 'Sabra', helper: null }), 'it has a nine pin plug');
    const { observations } = assess(model, open).evidence;
    expect(observations.filter(({ guessed }) => guessed !== true)).toEqual([]);
  });
});

describe('a remedy of consequence', () => {
  const next = (state: WalkState): string => assess(model, state).step.id;
  it('waits for the free look that shows its cause, however likely that is', () => {
    let state = reply(start('controller-serial'), 'controller-screen', 'update');
    state = reply(reply(state, 'message', 'no-reply'), 'arrow-keys', 'none');
    const { belief, situation } = assess(model, state);
    expect(belief.probabilities[situation.faultIndex.get('firmware-half-updated') ?? -1]).toBeGreaterThan(0.6);
    expect(next(state)).toBe('update-ended');
    expect(next(reply(state, 'update-ended', 'stopped'))).toBe('firmware-half-updated');
    expect(next(reply(state, 'update-ended', 'well'))).not.toBe('firmware-half-updated');
  });
});

describe('an answer from before something was mended', () => {
  it('is not doubted as a slip', () => {
    let state = start('controller-serial');
    for (const [id, said] of [
      ['settings-screen', 'all-fit'],
      ['how-far', 'not-seen'],
      ['adapter-driver-missing', 'changed'],
      ['how-far', 'no-connect'],
      ['message', 'no-reply'],
    ] as const)
      state = reply(state, id, said);
    const { evidence, situation } = assess(model, state);
    const of = (id: string): boolean[] =>
      evidence.observations
        .filter(({ check }) => situation.checks[check]?.entry.id === id)
        .map(({ before }) => before === true);
    expect(of('settings-screen')).toEqual([true]);
    expect(of('how-far')).toEqual([false]);
    const again = rankSteps(situation, evidence, assess(model, state).belief).filter(
      (choice) =>
        choice.kind === 'ask' && choice.again && situation.checks[choice.check]?.entry.id === 'settings-screen',
    );
    expect(again).toEqual([]);
  });
});
