/** What comes next where words bring a walk nearer without answering its question. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

const began = (name: string, opening: string) => answer(deps, `triage ${opening}`, NOW, member(name));

describe('words that answer nothing for sure, and touch on another look', () => {
  const opening = 'my laptop cant see the mount, windows 11, usb serial cable into the handset';

  it('bring that look next, with what it may be, and a yes answers it', async () => {
    const who = member('Leofwen');
    const first = await began('Leofwen', opening);
    expect(stepOf(first).id).not.toBe('port-appears');
    const next = await answer(deps, `triage walk:${idOf(first)} text:"pc dont notice it at all"`, NOW, who);
    expect(stepOf(next).id).toBe('port-appears');
    expect(linesOn(next).join(' ')).toMatch(/Perhaps: on plugging in USB: nothing at all/u);
    const then = await answer(deps, `triage walk:${idOf(first)} yes`, NOW, who);
    expect(then.notes.join(' ')).toContain('on plugging in USB: nothing at all');
    expect(stepOf(then).id).not.toBe('port-appears');
  });

  it('leave the question where it is when they are like an answer to it', async () => {
    const first = await began('Leofgyth', 'windows, usb adapter to the handset, no new port when i plug it in');
    const { id } = stepOf(first);
    const next = await answer(deps, `triage walk:${idOf(first)} text:"hm maybe, hard to say"`, NOW, member('Leofgyth'));
    expect(stepOf(next).id).toBe(id);
  });
});

describe('which way the computer reaches the mount', () => {
  it.each([
    ['Aelfrun', 'permission denied on /dev/ttyUSB0, ubuntu 24.04', 'no-permission'],
    ['Aelfwaru', 'is anyone on fedora? my serial port opens as root but not as me', 'no-permission'],
  ])('is not asked where the remedy is the same on all that are left: %s, %s', async (name, words, fault) => {
    expect(stepOf(await began(name, words))).toMatchObject({ kind: 'try', id: fault });
  });

  it('is asked where nothing stands out, and before a remedy that one way alone has', async () => {
    expect(stepOf(await began('Aelfthryth', 'it worked yesterday, now it does not connect')).id).toBe('path');
  });

  it('is asked once such a remedy changed nothing', async () => {
    const who = member('Aelfswith');
    const first = await began('Aelfswith', 'permission denied on /dev/ttyUSB0, ubuntu 24.04');
    let next = first;
    for (let turn = 0; turn < 3 && stepOf(next).kind === 'try'; turn++)
      next = await answer(deps, `triage walk:${idOf(first)} answer:${stepOf(next).id}.same`, NOW, who);
    expect(stepOf(next)).toMatchObject({ kind: 'ask' });
  });
});
