/** What members say in a walk: kept for the helper, counted as a turn, answered where it asks back. */
import { describe, expect, it } from 'vitest';
import type { Asker } from '../../bot/commands/core/command.js';
import { cautionLinesAfter } from '../../bot/commands/triage/walk-words.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

const factOf = (reply: Reply, wanted: string): string => reply.facts.find(({ label }) => label === wanted)?.value ?? '';

describe('the sheet for a helper', () => {
  it('keeps what the walk did not understand, on one screen, and neither asks nor offers it again', async () => {
    const who = member('Isaura');
    let reply = await answer(deps, 'triage Cable straight to the motor board, no reply on my Mac.', NOW, who);
    const remarks = [
      'it sat in a damp shed under the apple tree all autumn',
      'the chosen name begins with /dev/cu.',
      'the same lead drives the mount of a friend',
      'the moon was lovely last week',
    ];
    reply = await answer(deps, `triage walk:${idOf(reply)} answer:wrong-socket.same`, NOW, who);
    for (let turn = 0; turn < 40 && stepOf(reply).kind !== 'handOn'; turn++) {
      const { kind, id } = stepOf(reply);
      const remark = remarks[turn];
      if (remark !== undefined) reply = await answer(deps, `triage walk:${idOf(reply)} text:"${remark}"`, NOW, who);
      if (stepOf(reply).id !== id) continue;
      const good = turn < 6 ? deps.triage().check(id)?.good : undefined;
      reply = await answer(
        deps,
        `triage walk:${idOf(reply)} answer:${id}.${kind === 'try' ? 'same' : (good ?? 'unsure')}`,
        NOW,
        who,
      );
    }
    expect(stepOf(reply).kind).toBe('handOn');
    const lines = linesOn(reply);
    const text = lines.join(' ').replace(/\s+/gu, ' ');
    // On a full screen each is cut, and what was understood gives way first.
    for (const remark of [remarks[0], remarks[2]]) expect(text).toContain(remark?.slice(0, 30));
    expect(lines.length, lines.join('\n')).toBeLessThanOrEqual(26);
    expect(factOf(reply, 'Look next')).not.toContain('/dev/cu.');
    const stands = factOf(reply, 'Stands');
    const tried = factOf(reply, 'Tried').split('\n');
    expect(tried.join('')).not.toBe('');
    for (const line of tried) expect(stands).not.toContain(line.replace(/^• |: no change.*$/gu, '').slice(0, 40));
  });
});

describe('what was tried', () => {
  it('stands on the sheet whole, what was done before the walk as well, and nobody is quoted twice', async () => {
    const who = member('Philomel');
    const opening = 'USB socket built into the mount, Windows, not found; tried another cable and another USB socket';
    const first = await answer(deps, `triage ${opening}`, NOW, who);
    const done = ['motor-lead-loose', 'clutch-loose', 'mount-parked', 'wrong-mount-type', 'charge-only-cable'];
    for (const fault of done) await answer(deps, `triage walk:${idOf(first)} answer:${fault}.same`, NOW, who);
    await answer(deps, `triage walk:${idOf(first)} text:"Tried another cable."`, NOW, who);
    const sheet = await answer(deps, 'triage do:summary', NOW, who);
    const tried = factOf(sheet, 'Tried').toLowerCase();
    for (const fault of done)
      expect(tried).toContain(deps.triage().fault(fault)?.title.toLowerCase().slice(0, 40) ?? 'no such fault');
    expect(tried).toContain('before this walk: another cable; another usb socket');
    expect(factOf(sheet, 'And then')).toBe('');
    const cured = await answer(deps, `triage walk:${idOf(first)} answer:clutch-loose.works`, NOW, who);
    expect(stepOf(cured).kind).toBe('done');
    expect(factOf(await answer(deps, 'triage do:summary', NOW, who), 'Stands')).toBe('');
  });
});

describe('a turn', () => {
  it('counts once, whether pressed or written, and is taken back whole', async () => {
    const who = member('Rurik');
    const first = await answer(deps, 'triage Bluetooth on Windows, it will not connect', NOW, who);
    expect(first.title).toBe('Finding the connection fault');
    const { id } = stepOf(first);
    const second = await answer(deps, 'triage a heron stood on the pier', NOW, who);
    expect(second.title).toBe('Step 2');
    const third = await answer(deps, `triage walk:${idOf(first)} answer:${id}.unsure`, NOW, who);
    expect(third.title).toBe('Step 3');
    await answer(deps, 'triage do:back', NOW, who);
    const again = await answer(deps, 'triage do:back', NOW, who);
    expect(again.title).toBe('Finding the connection fault');
    expect(again.notes.join(' ')).toContain('a heron stood on the pier');
  });
});

describe('a question back on a remedy', () => {
  const remedyFor = async (who: Asker): Promise<Reply> => {
    const began = await answer(
      deps,
      'triage USB-serial adapter at the handset on Windows; I updated the firmware of the controller, now it times out.',
      NOW,
      who,
    );
    return goOn(who, began, (reply) => stepOf(reply).id === 'wrong-speed', 12);
  };

  it('is answered by the lines that speak of it, and not by all of them again', async () => {
    const who = member('Aldous');
    const remedy = await remedyFor(who);
    expect(stepOf(remedy)).toMatchObject({ kind: 'try', id: 'wrong-speed' });
    const back = await answer(deps, 'triage what speed? which notes?', NOW, who);
    const notes = back.notes.join('\n');
    expect(notes).not.toMatch(/^a\) /mu);
    expect(notes).toMatch(/speed/u);
    expect(back.notes.length).toBeLessThan(4);
    expect(back.summary).toContain('What came of it?');
    expect(notes).not.toContain('I could not read');
    const other = await answer(deps, 'triage the owl is back on the roof', NOW, who);
    expect(other.notes.join('\n')).not.toMatch(/^a\) /mu);
    expect(other.summary).toContain('What came of it?');
    expect(other.notes.join('\n')).toMatch(/It was: \w/u);
  });
});

describe('a caution', () => {
  it('is short beside another one the first time, and only named after; that of the Sun is first said in full', () => {
    const first = cautionLinesAfter(['moving-mount', 'sun'], new Set()).join(' ');
    expect(first).toContain('Cap the finder');
    expect(first).toContain('know its stop key');
    expect(first.length).toBeLessThan(330);
    expect(cautionLinesAfter(['moving-mount'], new Set()).join(' ')).toContain('counterweight');
    expect(cautionLinesAfter(['moving-mount', 'sun'], new Set(['sun', 'moving-mount']))).toEqual([
      'As said before: A moving mount; The Sun.',
    ]);
  });
});
