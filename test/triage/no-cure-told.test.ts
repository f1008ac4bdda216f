/** Words that hold "works" or "answers" and tell no cure, where no remedy or another was shown; and a cure that was none, taken back. Ours. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const say = (name: string, text: string) => answer(deps, `triage ${text}`, NOW, member(name));

describe('at a question', () => {
  it.each([
    ['the cable came with the mount, 5 volts on it. it worked until the update on sunday'],
    ['there is COM6 in the list under ports, it says working properly'],
    ['it is the maker’s own lead, connected fine last winter'],
    ['no vpn here. the bridge answers the ping in 5 ms'],
    ['everything worked before my holiday, same lead same socket'],
  ])('“%s” is no cure', async (text) => {
    const name = `Isaut ${text.slice(0, 12)}`;
    await say(name, 'Windows, cable straight to the motor board, the program gets no reply');
    const next = await say(name, text);
    expect(stepOf(next).kind).not.toBe('done');
    expect(next.summary).not.toMatch(/Is it fixed/u);
  });
});

describe('at a remedy', () => {
  it.each([
    'unplugged it. tried the hand controller, that works perfectly, moves the mount. i havent got the other lead yet',
    'with the keypad it drives fine',
    'handset in instead: works fine, as it always did. the new lead is still in the post',
    'the ping to it answers. have not opened the driver, havent typed it in',
    'it works with my brothers phone',
  ])('“%s” is no cure', async (text) => {
    const name = `Isbel ${text.slice(0, 14)}`;
    await say(
      name,
      "Windows, usb adapter on the hand controller. could not open port 'COM3', Device Manager lists COM8",
    );
    expect(stepOf(await say(name, text)).kind).not.toBe('done');
  });
});

describe('a warning on a screen', () => {
  it('is told of the hand controller, and asks of no looking', async () => {
    await say('Isaac', 'windows, usb adapter at the hand controller. the program gets no reply');
    const next = await say('Isaac', 'it shows the sun warning and press enter to continue, i never press it');
    expect(stepOf(next)).toMatchObject({ id: 'controller-at-start-question' });
  });
});

describe('a cure', () => {
  it('that the member says was none is taken back, and nothing is said to have come back', async () => {
    const name = 'Isengrim';
    await say(
      name,
      "Windows, usb adapter on the hand controller. could not open port 'COM3', Device Manager lists COM8",
    );
    expect(stepOf(await say(name, 'put 8 in and it connects now'))).toMatchObject({ kind: 'done' });
    const back = await say(name, 'what? no, nothing is fixed');
    expect(stepOf(back).kind).not.toBe('done');
    expect(back.notes.join('\n')).toContain('I took that for a cure');
    expect(back.notes.join('\n')).not.toContain('It came back');
  });

  it('by a program that is named for what it does is put down to no axis', async () => {
    const name = 'Isolde';
    await say(name, 'Windows, usb adapter on the hand controller. it says the port is in use');
    const end = await say(name, 'the polar alignment program still had the port open. closed it, now it connects');
    expect(stepOf(end)).toMatchObject({ kind: 'done', id: 'port-held-by-program' });
  });

  it.each(['yes please count', 'yes, count', 'yes fine, thanks, good night'])(
    '“%s” lets it be counted',
    async (text) => {
      const name = `Isumbras ${text}`;
      await say(
        name,
        "Windows, usb adapter on the hand controller. could not open port 'COM3', Device Manager lists COM8",
      );
      await say(name, 'put 8 in and it connects now');
      const end = await say(name, text);
      expect(end.notes.join('\n') + end.summary).not.toMatch(/Not counted/u);
      expect(end.choices ?? []).toEqual([]);
    },
  );
});
