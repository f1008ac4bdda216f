/** What is said in a walk and was taken for another thing. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

const began = async (name: string, opening: string) => {
  const first = await answer(deps, `triage ${opening}`, NOW, member(name));
  return {
    first,
    say: (words: string) => answer(deps, `triage walk:${idOf(first)} text:"${words}"`, NOW, member(name)),
  };
};

describe('asked what changed last', () => {
  const opening = 'worked till last week now windows says no reply, usb adapter to handset, something changed';

  it.each([
    ['Burgwynn', 'tried all usb holes, same'],
    ['Burghild', 'tried other lead'],
  ])('what was tried is no change: %s, %s', async (name, words) => {
    const { first, say } = await began(name, opening);
    expect(stepOf(first).id).toBe('changed-last');
    expect((await say(words)).notes.join(' ')).not.toMatch(
      /another USB socket, hub or dock|another cable, adapter or plug/iu,
    );
  });
});

describe('a laptop on its own battery', () => {
  it('brings the power saving, and said once more is no word against it', async () => {
    const { first, say } = await began(
      'Burgflaed',
      'connection drops only when the laptop runs on its own battery. windows, usb serial adapter into hand controller',
    );
    expect(stepOf(first)).toMatchObject({ kind: 'try', id: 'usb-port-asleep' });
    const next = await say(
      'only when laptops on battery, i just tried with the charger out and it dropped after 6 min',
    );
    expect(stepOf(next)).toMatchObject({ kind: 'try', id: 'usb-port-asleep' });
  });
});

describe('a power plug of another size', () => {
  it('is put down to the plug', async () => {
    const { say } = await began(
      'Burglufu',
      'handset reboots when i slew both axes, 12v supply, the power plug wobbles',
    );
    await say('the power plug is loose, touching it makes it restart');
    const next = await say('swapped the plug for one with the right hole, no more reboots');
    expect(next.summary).toContain('The power plug sits loose in its socket');
  });

  it('is put down to no cause that cannot be, by a word or two', async () => {
    const { say } = await began('Ceolrun', 'mount restarts when slewing, barrel plug feels wobbly');
    expect(stepOf(await say('if i press the plug sideways it stays on'))).toMatchObject({ id: 'power-plug-loose' });
    const next = await say('got the 2.5 one now instead, no more reboots all night');
    expect(next.summary).not.toContain('Fixed');
    expect(next.choices?.map(({ label }) => label)).toContain('The power plug sits loose in its socket');
  });

  // Barrel plugs of 5.5 mm with a pin of 2.1 or 2.5 mm: common practice, no source.
  it('is explained', async () => {
    const { say } = await began(
      'Burgwara',
      'handset reboots when i slew both axes, 12v supply, the power plug wobbles',
    );
    expect((await say('so which plug do i need')).notes.join(' ')).toContain('5.5/2.1 and 5.5/2.5');
  });
});

describe('the time asked for', () => {
  it('is told', async () => {
    const { say } = await began('Ceolwynn', 'goto lands wrong, windows, usb adapter');
    expect((await say('whats the time')).notes.join(' ')).toContain('21:00 UTC');
  });
});
