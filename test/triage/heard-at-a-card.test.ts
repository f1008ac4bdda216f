/** Cures and pleas in a member's own words, while a walk waits at a remedy or a question. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { leavesWalk } from '../../bot/reading/index.js';
import { answer } from '../commands/real-deps.js';
import { shippedModel } from '../shipped.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';
import { remedyOutcome } from '../reading/outcome-named.js';

const { reading } = shippedModel();

const CURED = [
  'bang on now',
  'changed the plug over and it talks now!',
  'rolled it back to the old one, the triangle went away, it answers!! wonderful',
  'it slews fine again, thank you',
  'that sorted it, ta',
  'aha, that was it',
  'oh lovely, it tracks properly now',
  'set the zone right, did the stars again and its spot on',
  'all good now cheers',
  'its fine now',
  'sorted',
  'we are up and running at last',
  'got it working, many thanks',
  'a shorter lead did the trick',
  'problem solved',
  'hooray it talks to the laptop',
  'the mount responds at last',
  'goto lands bang on, brilliant',
  'everything is working perfectly',
  'i turned the tablet off and it pairs and connects first time, thanks so much',
];

const NOT_CURED = [
  'it talks now but drops',
  'connects for a second',
  'would be brilliant if it connects',
  'fine on the phone',
  'it works for a minute then it goes dead',
  'i hoped that sorted it',
  'does it slew fine now?',
  'nothing fixed it',
  'it only talks now when i hold the plug',
  'it was bang on last week',
  'the hand controller talks fine',
  'it connects now and then',
  'it almost lands spot on',
  'it never talks properly',
  'my friend said that fixed it',
  'now it goes to the wrong star',
  'it works if i wiggle it',
  'it is back again',
  'it moves fine with the buttons',
  'will it work now',
];

const PLEAS = [
  'I want to speak to a helper',
  'i give up, who at the club can help me',
  'can someone else look',
  'can i talk to a real person please',
  'is there anybody at the club who could help?',
  'just hand me on to someone',
  "I've had enough, I need a human",
];
const STOPS = ['stop', 'forget it', 'never mind, leave it for tonight', 'ok lets stop here please'];

const NO_PLEA = [
  'someone at the club looked at it and the lamp was lit',
  'could somebody else be connected to it',
  'it stops after a minute',
  'forget it, still nothing',
  'the helper said to swap the lead',
  'i gave up on the old lead',
  'nobody else can connect to it',
  'stop bits are 1',
  'i press stop and nothing happens',
  'i need another one',
  "i can see someone else's mount on the list",
  'could i call it com4',
];

describe('what came of a remedy', () => {
  it.each(CURED)('“%s” is a cure', (text) => {
    expect(remedyOutcome(reading, text)).toBe('works');
  });

  it.each(NOT_CURED)('“%s” is none', (text) => {
    expect(remedyOutcome(reading, text)).not.toBe('works');
  });
});

describe('a wish to leave the walk', () => {
  it.each(PLEAS)('“%s” asks for a person', (text) => {
    expect(leavesWalk(reading, text)).toBe('person');
  });

  it.each(STOPS)('“%s” ends it', (text) => {
    expect(leavesWalk(reading, text)).toBe('end');
  });

  it.each([...NO_PLEA, ...CURED, ...NOT_CURED])('“%s” is no such wish', (text) => {
    expect(leavesWalk(reading, text)).toBeNull();
  });

  it('is not looked for in pasted lines', () => {
    expect(leavesWalk(reading, 'usb 1-1: device descriptor read/64\ni give up, can someone help')).toBeNull();
  });
});

const OPENING =
  'USB-serial adapter at the handset on Windows; I updated the firmware of the controller, now it times out.';

describe('in a walk', () => {
  it('hands on or ends where that is asked for, at a question and at a card', async () => {
    const who = member('Osgar');
    const first = await answer(deps, `triage ${OPENING}`, NOW, who);
    const asked = await goOn(who, first, (reply) => stepOf(reply).kind === 'ask', 4);
    const handed = await answer(deps, 'triage can someone at the club help me please', NOW, who);
    expect(handed.title).toContain('For a helper');
    expect(stepOf(handed)).toEqual(stepOf(asked));
    expect(handed.choices?.map(({ label }) => label)).toEqual(['Go on', 'Why this?', 'End']);
    const card = await goOn(who, handed, (reply) => stepOf(reply).kind === 'try', 12);
    expect(stepOf(card).kind).toBe('try');
    expect((await answer(deps, 'triage I want to speak to a helper', NOW, who)).title).toContain('For a helper');
    expect((await answer(deps, 'triage stop', NOW, who)).summary).toContain('This walk has ended');
  });

  it('does not take the first words of a walk for a wish to leave it', async () => {
    const first = await answer(deps, 'triage I give up, can someone help me connect my mount', NOW, member('Ottilie'));
    expect(first.title).toBe('Finding the connection fault');
  });

  it('takes a cure at a question for that of the remedy tried last', async () => {
    const who = member('Petra');
    const first = await answer(deps, `triage ${OPENING}`, NOW, who);
    const card = await goOn(who, first, (reply) => stepOf(reply).kind === 'try', 12);
    const { id } = stepOf(card);
    const after = await answer(deps, `triage walk:${idOf(card)} answer:${id}.changed`, NOW, who);
    expect(stepOf(after).kind).toBe('ask');
    expect(stepOf(await answer(deps, 'triage ah, it talks now, thank you!', NOW, who))).toMatchObject({
      kind: 'done',
      id,
    });
  });
});
