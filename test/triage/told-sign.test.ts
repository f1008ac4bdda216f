/** What a member's words hold moves its cause up, and what they say is missing stays so. Facts: common practice, no source. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answerStep, assess, startWalk, tellText } from '../../bot/triage/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

let members = 0;
const talk = async (...lines: readonly string[]): Promise<Reply> => {
  members += 1;
  const who = member(`Wigmund${members}`);
  const [first = '', ...rest] = lines;
  let reply = await answer(deps, `triage ${first}`, NOW, who);
  const id = idOf(reply);
  for (const line of rest) reply = await answer(deps, `triage walk:${id} text:"${line}"`, NOW, who);
  return reply;
};

describe("a cause's own sign in words", () => {
  it.each([
    ['bluetooth-off', 'bluetooth windows mount not listed', 'bluetooth is off'],
    [
      'local-network-refused',
      'mac, bridge in the house network, no connection',
      'it asked about the local network and I pressed do not allow',
    ],
    // usermod(8): a new group counts from the next sign-in.
    [
      'group-not-yet-active',
      'linux, usb adapter at the handset, will not connect',
      'I joined uucp this evening but did not log out since',
    ],
    ['port-not-passed-in', 'linux, usb adapter at the handset, will not connect', 'the programs run in a container'],
  ])('brings its remedy next: %s', async (fault, opening, sign) => {
    expect(stepOf(await talk(opening, sign))).toMatchObject({ kind: 'try', id: fault });
  });

  it('does not where the remedy was tried', async () => {
    const reply = await talk(
      'bluetooth windows mount not listed',
      'bluetooth is off',
      'no change',
      'bluetooth was off',
    );
    expect(stepOf(reply)).not.toMatchObject({ kind: 'try', id: 'bluetooth-off' });
  });

  it.each(['the hub has no power brick', 'they run on one 8 A supply', 'the lead is 3 m'])(
    'is none in what many set-ups have: %s',
    async (words) => {
      const reply = await talk('linux, usb adapter at the handset, will not connect', words);
      expect(stepOf(reply).kind).toBe('ask');
    },
  );
});

// Android Developers, captive and unvalidated networks; Apple Support, Wi-Fi without internet (from memory).
describe('a phone that goes by mobile data', () => {
  it.each([
    ["android tablet, the mount's own wifi, app says unreachable", 'mobile data is on'],
    ["my phone app can't find the mount, network bridge's own wifi", 'i see 4g at the top of the screen'],
    ['iphone, bridge in the house network, app says unreachable', 'the phone prefers 5g'],
    ['my ipad wont see the mount, its own network', 'the ipad keeps going to mobile data'],
    ["android tablet, the mount's own wifi, app says unreachable", 'i think it is using my data plan instead'],
  ])('has that looked at next: %s, %s', async (opening, words) => {
    const { id } = stepOf(await talk(opening, words));
    expect(['without-mobile-data', 'phone-sends-by-mobile-data']).toContain(id);
  });

  it.each(['mobile data is off', 'no mobile data out here', 'the phone charges at 5 v'])(
    'is not one: %s',
    async (words) => {
      const reply = await talk("android tablet, the mount's own wifi, app says unreachable", words);
      expect(reply.notes.join(' ')).not.toContain('goes by mobile data');
    },
  );
});

const model = deps.triage();
const lacksOf = (said: string): readonly string[] => {
  const { state } = tellText(model, startWalk({ member: null, helper: null }), said, 'member');
  return assess(model, state).context.lacks ?? [];
};

describe('a hand controller that is not there', () => {
  it.each([
    'there is no handset',
    'the paddle is missing',
    'i forgot the handset',
    "the handset isn't with me tonight",
    'goto box without any handset',
  ])('is heard: %s', (said) => {
    expect(lacksOf(said)).toContain('handset');
  });

  it.each(['no handset response', 'no handset light', 'the handset is dark', 'forgot to unplug the handset'])(
    'is not: %s',
    (said) => {
      expect(lacksOf(said)).not.toContain('handset');
    },
  );

  it('pressed as an answer it stays so: nothing that needs one comes', () => {
    const known = { path: 'built-in-usb', system: 'windows', client: 'direct' } as const;
    let state = startWalk({ member: null, helper: null }, known);
    for (const [check, picked] of [
      ['how-far', 'no-move'],
      ['works-with-handset', 'none'],
    ] as const) {
      const next = answerStep(model, state, check, picked, 'member');
      if (isProblem(next)) throw new Error(next.problem);
      state = next;
    }
    const { context, situation } = assess(model, state);
    expect(context.lacks).toEqual(['handset']);
    expect(situation.faults.filter(({ needs }) => needs?.includes('handset'))).toEqual([]);
  });
});

describe("a network's password, and a mount sought on it", () => {
  const pathOf = (said: string): string | undefined =>
    tellText(model, startWalk({ member: null, helper: null }), said, 'member').read.facts.find(
      ({ what }) => what === 'path',
    )?.answer;

  it.each([
    ['wifi password is hunter2, windows', undefined],
    ['password for the wifi is hunter2', undefined],
    ["the mount's own wifi, password 12345678", 'bridge-own-network'],
    ['my ipad wont see the mount on the wifi', 'network'],
    ['own network', 'bridge-own-network'],
    ['my own network', 'bridge-house-network'],
  ])('tells the way or none: %s', (said, path) => {
    expect(pathOf(said)).toBe(path);
  });
});
