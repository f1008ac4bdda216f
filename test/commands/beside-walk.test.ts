import { beforeEach, describe, expect, it, vi } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { answer, ask, realDeps } from './real-deps.js';

// A busy machine may be many times slower; nothing here is about its speed.
vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

const NOW = Date.UTC(2026, 10, 26, 20);
const OPENS = 'triage do:new [ 812.4] usb 1-1: device descriptor read/64, error -71';

let deps: Deps;
let walkId: string;
beforeEach(async () => {
  deps = deps === undefined ? await realDeps() : deps;
  ({ walkId } = (await answer(deps, OPENS, NOW)).data as { walkId: string });
});

/** What the walk opened first holds by now: what was read and asked, and where it stands. */
const standing = async (): Promise<string> => {
  const { summary, data } = await answer(deps, `triage walk:${walkId}`, NOW);
  return JSON.stringify({ summary, data });
};
/** At the first question, and with a remedy in hand. */
const atEach = async (check: () => Promise<void>): Promise<void> => {
  await check();
  await answer(deps, `triage walk:${walkId} answer:controller-serial`, NOW);
  await check();
};

describe('what is plainly not for the walk that waits', () => {
  it.each([
    'hello, thanks all, see you at the field tomorrow',
    'cheers everyone, heading home now',
    'Good night all, clear skies!',
    "thanks Wilf, you're a star",
    'brb, kettle is on',
    'great evening everyone, well done',
    'see you all on Saturday',
    'anyone coming to the field on Friday?',
    '@Wilf can you bring your spare laptop?',
    'ok talk later, dinner is ready',
    'happy birthday Tamsin 🎂',
    'hi all',
    'one moment',
    'back in 5 mins',
    'lol',
    'thank you so much for the help tonight, safe journey home',
    'Good evening everybody, how are you all?',
    '!roll 2d6',
    '!remindme 10m feed the cat',
    'morning! lovely to see you all',
    'are we meeting on Saturday?',
    'right, must dash. Until tomorrow!',
    'sorry guys just saw this, hope you all had a good night',
    'what a night! saw the rings for the first time',
    '@tamsin did you get home ok',
    'who has the key to the clubhouse?',
    'anyone want a brew',
    'haha no worries, speak soon',
    'gotta put the kids to bed, back tomorrow',
    '!ping',
    'is everybody home safe?',
    'thanks again for tonight Tamsin, really enjoyed it',
    'did anyone bring a flask?',
    'two minutes please',
    'congratulations to the new members',
    'who left their gloves on the bench?',
    'Ravi, will you be there on Tuesday?',
    '@Ravi: your gloves are here',
    'whats up',
    "how's it going",
    'nice to meet you',
  ])('talk moves nothing: %s', async (line) => {
    await atEach(async () => {
      const before = await standing();
      const outcome = await ask(deps, line, NOW);
      expect(isProblem(outcome) ? undefined : outcome.data['walkId']).toBeUndefined();
      expect(await standing()).toBe(before);
    });
  });

  it.each([
    ['!pier tonight site:52.71,0.12', /^Worth seeing/u],
    ['!tonight site:52.71,0.12', /^Worth seeing/u],
    ['! tonight site:52.71,0.12', /^Worth seeing/u],
    ['@Pierhand tonight site:52.71,0.12', /^Worth seeing/u],
    ['pierhand: up M 42 site:52.71,0.12', /^M 42/u],
    ['pierhand> up M 42 site:52.71,0.12', /^M 42/u],
    ['/pier sidereal site:52.71,0.12', /^Sidereal/u],
    ['!pier', /^Pierhand/u],
    ["thanks! what's up tonight from 52.71,0.12?", /^Worth seeing/u],
    ['!help', /^Pierhand/u],
    ["!pier what's up tonight from 52.71,0.12?", /^Worth seeing/u],
    ['something else: how high is Vega from 52.71,0.12?', /Vega/u],
  ])('a command is run, however it is addressed: %s', async (line, title) => {
    await atEach(async () => {
      const before = await standing();
      expect((await answer(deps, line, NOW)).title).toMatch(title);
      expect(await standing()).toBe(before);
    });
  });

  it.each([
    ['can I look at the Sun, it is low and hazy?', /^No[,:]/u],
    ['can I look at the sun thru clouds', /^No[,:]/u],
    ['my son wants to look at the Sun now, is that ok?', /^No[,:]/u],
    ['is it safe to look at the sun', /^No[,:]/u],
    // Nobody has said where they stand.
    ['where is the Sun now', /^No site is known/u],
    ['what is up tonight', /^No site is known/u],
    ['M42 transit on 12 December', /^No site is known/u],
    ['is jupiter up', /^No site is known/u],
  ])('a question of the Sun or the sky is answered, whatever waits: %s', async (line, told) => {
    await atEach(async () => {
      const before = await standing();
      // Later than a place that was named is meant.
      const outcome = await ask(deps, line, NOW + 20 * 60_000);
      expect(isProblem(outcome) ? outcome.message : `${outcome.title} ${outcome.summary}`).toMatch(told);
      expect(isProblem(outcome) ? undefined : outcome.data['walkId']).toBeUndefined();
      expect(await standing()).toBe(before);
    });
  });

  it.each([
    ['new walk', null],
    ['Start a new walk please', null],
    ['start over', null],
    ['new topic', null],
    ['never mind, different problem: bridge has no wifi', /./u],
    ["let's start again from scratch", null],
    ['another problem: the hand controller is dead', /controller/u],
    ['this is a new problem. My scope points a bit off', /./u],
    ['new fault, the wifi of the bridge is gone', /./u],
    ['something else: the hand controller shows nothing', /controller/u],
  ])('another walk is begun, and the one before named and left: %s', async (line, kept) => {
    await atEach(async () => {
      const before = await standing();
      const { data, notes } = await answer(deps, line, NOW);
      expect(data['walkId']).toMatch(/./u);
      expect(data['walkId']).not.toBe(walkId);
      expect(notes.join(' ')).toContain(`triage walk:${walkId}`);
      if (kept !== null) expect(JSON.stringify(data)).toMatch(kept);
      expect(await standing()).toBe(before);
      await answer(deps, `triage walk:${walkId}`, NOW + 1);
    });
  });
});

describe('what is for the walk, though it begins like talk', () => {
  it.each([
    'thanks, still nothing',
    'thanks, done',
    'cheers, swapped it',
    'thanks, I unplugged the hub',
    'cheers mate the light went off',
    '@home it works, here not',
    'who keeps the port busy?',
    'does anyone know why it does not connect?',
    'wait, the hum stopped',
    'bye, the motor went',
    'hold on, now it is in the list',
    'what a surprise, code 43',
    'my wife pulled the cable',
    '@ the controller it says no link',
    'anyway, the led blinks twice',
    'anyone had this error before?',
    'what a mess, the port is gone again',
    'bye bye COM4, it vanished again',
    'hang on it says error 5',
    'do you mean the cable?',
    'my son swapped the cable, no change',
    'can you see the log I pasted?',
    'ok thanks, that was it, it works now',
    'hi, it still says access denied',
    'good, the light is on',
    '!!! nothing happens',
    '!the port is gone now',
    'hello? it does not see the mount',
    'start over did not help',
    'I started it again and no change',
    'a new cable made no difference',
    'great, now it says permission denied',
    'wait, now it says Code 10',
    'it is a Mac, sorry',
    'see you can hear the motor but the port is not there',
    'back to the old cable and the port is missing',
    '!pier the port is gone',
    'a new problem came up after that, it says access denied',
    'night after night the port is lost',
    'no thanks to that, still the same error',
    'one second after plugging in it vanishes',
  ])('it hears: %s', async (line) => {
    await answer(deps, `triage walk:${walkId} answer:controller-serial`, NOW);
    expect((await answer(deps, line, NOW)).data['walkId']).toBe(walkId);
  });
});
