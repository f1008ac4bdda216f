/** What a reply asks beside its step, answered in words: what the cure was, what is not so, what was guessed. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const talk = async (name: string, ...lines: readonly string[]): Promise<Reply> => {
  const [first = '', ...rest] = lines;
  let reply = await answer(deps, `triage ${first}`, NOW, member(name));
  const id = idOf(reply);
  for (const line of rest)
    reply = await answer(
      deps,
      line.startsWith('do:') ? `triage walk:${id} ${line}` : `triage walk:${id} text:"${line}"`,
      NOW,
      member(name),
    );
  return reply;
};
const labelsOf = ({ choices = [] }: Reply): string => choices.map(({ label }) => label).join(' | ');
const notesOf = ({ notes }: Reply): string => notes.join(' ');

describe('a cure is put down to what the member did', () => {
  it.each([
    [
      'the laptop does not find the bridge on the network, windows',
      'allowed the program in the firewall, now working',
      'firewall-blocks',
    ],
    [
      'cannot connect over the house network, bridge',
      'turned off the vpn of my work and it works straight away',
      'vpn-takes-traffic',
    ],
    [
      'my mount does not power up, my laptop sees nothing',
      'blown fuse in the plug, new one in, alive again',
      'fuse-blown',
    ],
  ])('%s: “%s”', async (opening, deed, fault) => {
    expect(stepOf(await talk(`Orla ${fault}`, opening, deed))).toMatchObject({ kind: 'done', id: fault });
  });

  it('at its own remedy the card stands, and nothing more is asked', async () => {
    const told = [
      'slews but star drifts away quickly, does not follow',
      'tracking had been off, turned it on and stars stay put now',
    ];
    expect(stepOf(await talk('Orla tracking-off', ...told))).toMatchObject({ kind: 'done', id: 'tracking-off' });
  });

  it('at the remedy of another cause, in plain words of a cure', async () => {
    const opening = ['usb 1-1: device descriptor read/64, error -71', 'through the hand controller own usb socket'];
    const other = await talk('Orlin', ...opening, 'no change', 'works now, it was a firewall thing');
    expect(stepOf(other)).toMatchObject({ kind: 'done', id: 'firewall-blocks' });
    const own = await talk('Orlan', ...opening, 'did that, works now');
    expect(stepOf(own).kind).toBe('done');
  });

  const PUSHED = [
    'my laptop no longer sees the mount, usb socket in the mount, windows',
    'pushed the plug in properly and it works now',
  ];

  it('which it was is asked where several fit, and told in words', async () => {
    const asked = await talk('Osric', ...PUSHED);
    expect(asked.summary).toBe('Good to hear. What was it?');
    expect(labelsOf(asked)).toMatch(/A USB plug is not fully in.*Something else/u);
    expect(labelsOf(asked)).not.toMatch(/serial lead|network/u);
    expect(stepOf(await talk('Osrik', ...PUSHED, 'the usb one'))).toMatchObject({
      kind: 'done',
      id: 'usb-plug-not-home',
    });
  });

  it.each(['the cat had been sitting on it', 'something else', 'no idea honestly'])(
    'what no choice fits ends the walk well, and is kept: “%s”',
    async (words) => {
      const end = await talk(`Osmund ${words.length}`, ...PUSHED, words);
      expect(notesOf(end)).toContain('Good to hear.');
      expect(end.data['step']).not.toMatchObject({ kind: 'done' });
      expect(JSON.stringify(end)).toContain(words);
    },
  );

  it('a trouble told there ends nothing', async () => {
    const back = await talk('Oswin', ...PUSHED, 'oh no it stopped working again');
    expect(notesOf(back)).not.toContain('Good to hear.');
  });
});

describe('what is typed to “which of these is not so?”', () => {
  it.each([
    ['linux, permission denied on ttyUSB0, worked before', 'not linux, sorry', 'Linux'],
    ['windows 11, hand controller, cannot open the port', 'windows', 'Windows'],
    ['drops when it slews, battery, windows usb', 'the one about when it slews', 'fails: when the motors run or slew'],
    ['fails at connect with a time out, linux, serial lead', 'the second', 'The program will not connect'],
    ['the light on my adapter stays dark, windows, handset', 'adapter light', 'adapter light: it stays dark'],
  ])('is taken back: %s: “%s”', async (opening, words, label) => {
    const reply = await talk(`Wulf ${label}`, opening, 'do:doubt', words);
    expect(notesOf(reply)).toContain(`Taken back: ${label}`);
  });

  it.each([
    'tried another lead same',
    'another cable does not help either',
    'my cable is 5 metres long',
    'the handset stays on when it happens',
    'i swapped the adapter too',
    'it says timeout',
  ])('news takes nothing back: “%s”', async (words) => {
    const opening = 'linux, usb adapter at hand controller, tried another cable, it drops after a while';
    const reply = await talk(`Wiglaf ${words}`, opening, 'do:doubt', words);
    expect(notesOf(reply)).not.toContain('Taken back');
  });

  it('names what it is instead', async () => {
    const reply = await talk(
      'Wystan',
      'windows laptop, usb socket in the mount, not in the list',
      'do:doubt',
      'its a mac, not windows',
    );
    expect(notesOf(reply)).toContain('Taken back: Windows.');
    expect(notesOf(reply)).toContain('macOS');
  });

  it('of none of them takes nothing back, and an unclear word is asked about', async () => {
    const opening = 'cannot open port com3, windows, closed everything';
    expect(notesOf(await talk('Wybert', opening, 'do:doubt', 'none of those'))).not.toContain('Taken back');
    expect((await talk('Wymark', opening, 'do:doubt', 'the thing with the dew')).summary).toBe(
      'Which of these is not so?',
    );
  });
});

describe('a yes to what was guessed beside another step', () => {
  it.each(['yes', 'yes that', 'yep, thats it'])('%s', async (yes) => {
    const lines = ['usb cable, drops now and then, linux', 'it does it each night about eleven'];
    expect(notesOf(await talk(`Hild ${yes}`, ...lines))).toContain('Perhaps: ');
    const reply = await talk(`Hild2 ${yes}`, ...lines, yes);
    expect(notesOf(reply)).toContain('I take it: fails: at the same hour or date');
    expect(notesOf(reply)).not.toContain('Perhaps: ');
  });
});

describe('asked how a thing is done that is not the step in hand', () => {
  it.each([
    [
      'app on my phone does not connect, own wifi of the mount',
      'how do i stop my phone going back to the house wifi',
      'Switch off joining',
    ],
    ['windows usb adapter hand controller, it drops', 'how do i switch off usb power saving', 'Power Management'],
    [
      'bluetooth mount, windows, cannot open the port',
      'how do i forget the mount in bluetooth and pair again',
      'forget',
    ],
  ])('%s: “%s”', async (opening, asked, how) => {
    const first = await talk(`Tova ${how}`, opening);
    const reply = await talk(`Tovb ${how}`, opening, asked);
    expect(notesOf(reply)).toMatch(/^How: /u);
    expect(notesOf(reply)).toContain(how);
    // The question in hand, or the remedy of the cause that was named.
    expect([stepOf(first).id, 'computer-hops-away']).toContain(stepOf(reply).id);
  });

  it.each(['how do i bake bread', 'how do i do that', 'how does it all work'])(
    '%s: nothing is told of it',
    async (asked) => {
      expect(
        notesOf(await talk(`Tovc ${asked}`, 'bridge on the house network does not answer, windows', asked)),
      ).not.toContain('How: ');
    },
  );
});

describe('a yes to what was said back', () => {
  it('is no answer to the question that stands', async () => {
    const lines = ['usb adapter, windows, port missing', 'yellow sign next to something in the list'];
    const first = await talk('Ysolt', ...lines);
    expect(notesOf(first)).toContain('I take it: ');
    const reply = await talk('Ysolde', ...lines, 'yes');
    expect(notesOf(reply)).not.toContain('Did you mean');
    expect(stepOf(reply)).toMatchObject({ id: stepOf(first).id });
  });

  it('a doubt about another thing is no answer either', async () => {
    const reply = await talk(
      'Yves',
      'usb cable into the mounts own socket, windows, com4, times out',
      'i dont know which speed it wants, 9600 is set',
    );
    expect(notesOf(reply)).not.toContain('nothing that I know of');
  });
});
