/** A remedy for what a member has not got, or told to be set already. The sentences are ours (invented; no source). */
import { describe, expect, it } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { hasNone, hasOnlyOne, isSetAlready } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, member, NOW, stepOf } from './console-walk.js';

const say = (who: Asker, line: string): Promise<Reply> => answer(deps, line, NOW, who);

describe('a remedy for what is not there', () => {
  it.each(['we have never had one', 'nothing like that is installed', 'i use no vpn', 'there is none here'])(
    'is left at once and does not come again: %s',
    async (words) => {
      const who = member(`Has none ${words}`);
      const opening = "triage mac, joined the mount's own wifi, connection timed out, phone app steers it fine";
      const first = await say(who, opening);
      const shown = await goOn(who, first, (reply) => stepOf(reply).id === 'vpn-takes-traffic', 6);
      expect(stepOf(shown)).toMatchObject({ kind: 'try', id: 'vpn-takes-traffic' });
      const next = await say(who, words);
      expect(next.notes.join(' ')).toContain('not that');
      const again = await goOn(
        who,
        next,
        (reply) => ['handOn', 'done'].includes(stepOf(reply).kind) || stepOf(reply).id === 'vpn-takes-traffic',
        14,
      );
      expect(stepOf(again).id).not.toBe('vpn-takes-traffic');
    },
  );

  it.each([
    ['there is no driver', 'The adapter has no driver'],
    ['no port appears', 'Another program holds the port'],
    ['i have no internet here', 'The adapter has no driver'],
    ['no change', 'A VPN takes the traffic away'],
    ['i do not use it at night', 'A VPN takes the traffic away'],
    ['no vpn, but the firewall was on: off now and it works', 'A VPN takes the traffic away'],
  ])('is not meant by “%s” at “%s”', (words, title) => {
    expect(hasNone(words, title)).toBe(false);
  });
});

describe('a remedy for what is set already, or for another where there is one alone', () => {
  it.each(['that was on from the start', 'it has been set so all along', 'as I told you, it is set'])(
    'hears it: %s',
    (words) => {
      expect(isSetAlready(words)).toBe(true);
    },
  );
  it.each(['it is on now and works', 'it was on, but not set', 'is it on already?'])('and not: %s', (words) => {
    expect(isSetAlready(words)).toBe(false);
  });
  it('is not for who runs one alone', () => {
    expect(hasOnlyOne('i only run one program', 'Another program holds the port')).toBe(true);
    expect(hasOnlyOne('only one program works', 'A VPN takes the traffic away')).toBe(false);
  });
});

describe('a remedy for what was told to be set already', () => {
  it('does not come', async () => {
    const who = member('Told at the start');
    let reply = await say(
      who,
      'triage windows 10, usb adapter to the hand controller, the port vanishes after some seconds now and then. USB power saving is off already, new lead tried',
    );
    for (let turn = 0; turn < 24 && stepOf(reply).kind !== 'handOn'; turn++) {
      const { kind, id } = stepOf(reply);
      expect(`${kind}:${id}`).not.toBe('try:usb-port-asleep');
      reply = await say(who, `triage walk:${idOf(reply)} answer:${id}.${kind === 'try' ? 'same' : 'unsure'}`);
    }
  });
});
