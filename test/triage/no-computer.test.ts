/** Members who steer by the hand controller alone: nothing of a computer is asked of them. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { saysNoComputer, speaksOfComputer } from '../../bot/reading/index.js';
import { assess, startWalk, tellText } from '../../bot/triage/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

const model = deps.triage();
const clientAfter = (...texts: readonly string[]): string | null => {
  const state = texts.reduce(
    (at, text) => tellText(model, at, text, 'member').state,
    startWalk({ member: 'Hild', helper: null }),
  );
  return assess(model, state).context.client;
};

describe('no computer, said to a question of one', () => {
  it.each([
    'no computer at all',
    'no laptop, handset only',
    'i dont use a computer, just the keypad',
    'none. hand controller only',
    'there is no program, i only use the handset',
    'stand alone, no pc',
    'its all from the hand controller',
  ])('“%s”', (text) => expect(saysNoComputer(text)).toBe(true));

  it.each([
    'no other computer here',
    'no laptop, just a phone',
    'the laptop does not see it',
    'i have no windows computer',
    'usb cable from the handset to the pc',
    'is it no computer at all?',
    'through the hand controller and a USB adapter',
    'just through the hand controllers socket',
    'only a cable to the handset',
  ])('“%s” says no such thing', (text) => expect(saysNoComputer(text)).toBe(false));

  it('a computer is spoken of, unless it is denied', () => {
    expect(speaksOfComputer('no laptop, handset only')).toBe(false);
    expect(speaksOfComputer('without the laptop it moves, with the laptop it does not')).toBe(true);
  });
});

describe('told at the opening', () => {
  it.each([
    'goto is off by a lot and i only use the hand controller, no computer involved',
    'it wont track. I do not use a computer, just the keypad',
    'handset only, no pc, it wont track',
  ])('“%s”', (text) => expect(clientAfter(text)).toBe('none'));

  it.each([
    'no laptop at the moment but the mount does not connect to the app',
    'Gotos land two fists to the east, but ONLY from the computer. Handset alone, perfect.',
    'laptop off, just the handset: same miss',
    'no computer in the house sees it',
    'i only use the handset to centre, the laptop does the goto and it misses',
    'I use a phone only, no computer at all, the app does not connect',
  ])('“%s” is of one with a computer', (text) => expect(clientAfter(text)).not.toBe('none'));
});

describe('a walk without a computer', () => {
  const OF_A_COMPUTER = [
    'path',
    'system',
    'client',
    'message',
    'settings-screen',
    'program-clock',
    'other-computer',
    'mount-type',
  ];

  it('asks nothing of one, and shows no remedy of one', async () => {
    const who = member('Hildegard');
    await answer(deps, 'triage my goto lands nowhere near', NOW, who);
    let reply = await answer(deps, 'triage no computer at all', NOW, who);
    expect(reply.notes.join(' ')).toContain('no computer, the hand controller alone');
    const seen: string[] = [];
    for (let turn = 0; turn < 25 && ['ask', 'try'].includes(stepOf(reply).kind); turn++) {
      seen.push(stepOf(reply).id);
      reply = await goOn(who, reply, () => false, 1);
    }
    expect(seen.length).toBeGreaterThan(3);
    expect(seen.filter((id) => OF_A_COMPUTER.includes(id))).toEqual([]);
    const faults = seen.filter((id) => model.fault(id) !== undefined);
    expect(faults.filter((id) => model.fault(id)?.only?.clients !== undefined)).toEqual([]);
  });

  it('is offered where the way is asked', async () => {
    const who = member('Hilda');
    const asked = await answer(deps, 'triage', NOW, who);
    const alone = (asked.choices ?? []).find(({ label }) => /hand controller alone/iu.test(label));
    expect(stepOf(asked).id).toBe('path');
    const next = await answer(deps, alone?.run ?? '', NOW, who);
    expect(stepOf(next).id).not.toBe('path');
    expect(idOf(next)).toBe(idOf(asked));
  });
});
