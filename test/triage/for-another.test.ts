/** A walk begun in words for one who is no member here. The sentences and people are our own. */
import { describe, expect, it } from 'vitest';
import { forAnother } from '../../bot/reading/index.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW } from './console-walk.js';

describe('whose mount an account is of', () => {
  it.each([
    ['my mate bob cant connect his mount, usb to the board, mac', 'Bob'],
    ["bob's mount doesnt connect, he goes usb straight into the board", 'Bob'],
    ['my friend anna cannot connect her mount over bluetooth, windows', 'Anna'],
    ["i'm helping anna with her mount, windows, usb adapter, no port", 'Anna'],
    ["its not my mount, its anna's. goto misses by 15 degrees", 'Anna'],
    ['for a friend: handset is dark', 'your friend'],
  ])('%s: %s', (text, who) => {
    expect(forAnother(text)?.who).toBe(who);
  });

  it.each([
    'my mate bob lent me his cable, windows usb adapter no port',
    'tried with my friends laptop and it works, windows',
    'bob thinks the lead is broken. windows usb adapter at handset no port',
    'i cannot connect, my friend bob can, same mount',
    "my neighbour's mount works perfectly",
    'bluetooth cant see the mount',
    'still cannot find the mount',
    'my dec goes the wrong way. a friend’s scope did the same',
  ])('one’s own: %s', (text) => {
    expect(forAnother(text)).toBeNull();
  });
});

describe('a walk for a friend', () => {
  const heard = ({ notes, data }: Reply): string => JSON.stringify([notes, data['context']]);

  it('says so, reads what the friend has, and leaves the asker’s own gear out', async () => {
    const who = member('Osyth');
    await answer(deps, 'gear connection:bluetooth system:windows', NOW, who);
    const first = await answer(deps, 'triage my mate bob cant connect his mount, usb to the board, mac', NOW, who);
    expect(first.title).toContain('for Bob');
    expect(heard(first)).toMatch(/macOS/u);
    expect(heard(first)).toMatch(/motor board/u);
    expect(heard(first)).not.toMatch(/Bluetooth|Windows/u);
  });

  it('names both on the sheet, with the asker’s own words', async () => {
    const who = member('Frideswide');
    await answer(deps, "triage anna's mount wont connect, windows, bluetooth", NOW, who);
    const sheet = JSON.stringify((await answer(deps, 'triage do:summary', NOW, who)).facts);
    expect(sheet).toContain('Frideswide for Anna');
    expect(sheet).toContain("anna's mount wont connect");
  });
});
