/** Every prompt lets a member out, and what was answered by a slip is taken back in words. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { saysUnsure, takesBack } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

const UNSURE = [
  'not sure',
  "I'm not really sure",
  'dont know',
  'no idea sorry',
  "can't tell",
  'hard to say',
  'um, not sure what that is',
  'i honestly dont know',
  'havent a clue',
  'not sure how to check that',
];
const SURE = [
  'not sure but the light is red',
  'i dont know the speed, it says 9600',
  'no idea why it drops at night',
  'sure',
  'cannot tell it to park',
  'it is not certain to connect, one time in three',
];
const TAKEN_BACK = [
  'i looked wrong before, it does blink',
  'sorry, i meant 115200',
  'my mistake, there is a light',
  'I misread it, it says COM7',
  'no wait, it was the other lamp',
  'ah, i pressed the wrong one',
  'what i said before was wrong, the app is on the other phone',
  'looked again with a torch and it is on after all',
  'correction: two ports',
  'i told you wrong, it is a mac',
];
const NOT_TAKEN_BACK = [
  'the wrong lead was in',
  'it went wrong again',
  'it was wrong all along in the program',
  'i put the right number in',
  'wait for the light to go green, nothing',
  'the mount is wrong by an hour',
  'i mean business',
];

describe('words that cannot tell, and words that take back', () => {
  it.each(UNSURE)('“%s” says no more than not sure', (text) => expect(saysUnsure(text)).toBe(true));
  it.each(SURE)('“%s” says more', (text) => expect(saysUnsure(text)).toBe(false));
  it.each(TAKEN_BACK)('“%s” takes something back', (text) => expect(takesBack(text)).toBe(true));
  it.each(NOT_TAKEN_BACK)('“%s” takes nothing back', (text) => expect(takesBack(text)).toBe(false));
});

const OPENING =
  'USB-serial adapter at the handset on Windows; I updated the firmware of the controller, now it times out.';
const labels = (reply: Reply): readonly string[] => (reply.choices ?? []).map(({ label }) => label);
const WAYS = ['Not sure', 'Why this?', 'Back a step', 'Something of this is wrong'];

describe('every prompt', () => {
  it('offers the same ways out in the same order, a question and a card, shown and asked after', async () => {
    const who = member('Ulrike');
    const asked = await goOn(
      who,
      await answer(deps, `triage ${OPENING}`, NOW, who),
      (r) => stepOf(r).kind === 'ask',
      4,
    );
    const own = labels(asked).slice(labels(asked).indexOf('Not sure'));
    expect(own.slice(0, 4)).toEqual(WAYS);
    const card = await goOn(who, asked, (r) => stepOf(r).kind === 'try', 12);
    expect(labels(card).slice(4, 8)).toEqual(WAYS);
    const after = await answer(deps, 'triage hm, one moment', NOW, who);
    expect(stepOf(after)).toEqual(stepOf(card));
    expect(labels(after).slice(0, 8)).toEqual(labels(card).slice(0, 8));
  });

  it('says at a card how to tell, and goes on where that does not help', async () => {
    const who = member('Wendel');
    const card = await goOn(
      who,
      await answer(deps, `triage ${OPENING}`, NOW, who),
      (r) => stepOf(r).kind === 'try',
      12,
    );
    const told = await answer(deps, 'triage not sure', NOW, who);
    expect(stepOf(told)).toEqual(stepOf(card));
    expect(told.notes.join(' ')).toMatch(/once more what failed/u);
    const on = await answer(deps, "triage i can't tell", NOW, who);
    expect(on.summary).not.toBe(told.summary);
    expect(on.notes.join(' ')).not.toMatch(/once more what failed/u);
  });
});

describe('an answer that was a slip', () => {
  it('gives way to what is said instead, at a later question and at a card', async () => {
    const who = member('Fenella');
    let reply = await answer(deps, 'triage the bridge is on the house network, program times out', NOW, who);
    reply = await answer(deps, `triage walk:${idOf(reply)} answer:ping.silent`, NOW, who);
    const before = stepOf(reply);
    const instead = await answer(
      deps,
      'triage sorry, i looked wrong before, the ping does come back every time',
      NOW,
      who,
    );
    expect(instead.notes.join(' ')).toMatch(/^Noted instead: .*: /u);
    const walk = deps.triage();
    expect(
      walk
        .check('ping')
        ?.answers.map(({ label }) => label)
        .some((label) => instead.notes[0]?.includes(label)),
    ).toBe(true);
    expect(stepOf(instead)).not.toEqual(before);
  });
});
