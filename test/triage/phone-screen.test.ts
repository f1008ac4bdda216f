/** A walk on a phone: how long its cards are, what stands in a menu, what comes after "could not do it". */
import { describe, expect, it } from 'vitest';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

const runOf = (reply: Reply, label: string): string =>
  reply.choices?.find((choice) => choice.label.startsWith(label))?.run ?? `no choice ${label}`;

describe('a long list of answers', () => {
  it('shows seven and the way to the rest, and not one of another question', async () => {
    const who = member('Maelle');
    let reply = await answer(deps, 'triage do:new', NOW, who);
    reply = await answer(deps, `triage walk:${idOf(reply)} answer:path.bridge-own-network`, NOW, who);
    expect(stepOf(reply).id).toBe('how-far');
    const own = (shown: Reply): number =>
      (shown.choices ?? []).filter(({ run }) => run.includes('answer:how-far.') && !run.endsWith('.unsure')).length;
    expect(own(reply)).toBe(7);
    const whole = await answer(deps, runOf(reply, 'Another'), NOW, who);
    expect(stepOf(whole).id).toBe('how-far');
    expect(own(whole)).toBe(deps.triage().check('how-far')?.answers.length);
    expect(whole.choices?.some(({ label }) => label.startsWith('Another'))).toBe(false);
  });
});

describe('a remedy', () => {
  it('is not said twice: words at it leave it standing, a setup code brings the other way', async () => {
    const who = member('Evander');
    const first = await answer(
      deps,
      'triage The driver platform will not open my driver on Windows. USB-serial adapter at the handset. It asks for .NET Framework 3.5.',
      NOW,
      who,
    );
    expect(stepOf(first)).toMatchObject({ kind: 'try', id: 'component-off' });
    const still = await answer(deps, 'triage one moment, I am looking', NOW, who);
    expect(stepOf(still)).toMatchObject({ kind: 'try', id: 'component-off' });
    expect(still.summary).toMatch(/What came of it/u);
    expect(still.notes.join('\n')).not.toMatch(/a\) /u);
    // 0x800F0954: the feature could not be fetched from the update server; its meaning from memory.
    const other = await answer(deps, 'triage setup stopped. Error 0x800F0954', NOW, who);
    expect(other.summary).toMatch(/^Another way/u);
    expect(other.notes.join('\n')).toContain('0x800F0954');
    expect(other.notes.filter((note) => first.notes.includes(note) && /^[a-z]\) /u.test(note))).toEqual([]);
  });
});

describe('the hand-on', () => {
  it('is one screen, quotes the member, claims nothing that was not said, and shows no command', async () => {
    const who = member('Ambrose');
    const began = await answer(
      deps,
      'triage New laptop with Windows, the bridge is on my house network. It all worked until Friday, now it times out.',
      NOW,
      who,
    );
    const reply = await goOn(who, began, (one) => stepOf(one).kind === 'handOn', 40);
    expect(stepOf(reply).kind).toBe('handOn');
    const lines = linesOn(reply);
    const text = lines.join('\n');
    expect(lines.length, text).toBeLessThanOrEqual(22);
    expect(text).toContain('New laptop with Windows');
    expect(text).not.toMatch(/triage|walk:|answer:|another computer/iu);
    const tried = reply.facts.find(({ label }) => label === 'Tried')?.value.split('\n') ?? [];
    expect(new Set(tried).size).toBe(tried.length);
  });

  it('stays one screen however much was said, with what stands and what changed before the remarks', async () => {
    const who = member('Philippa');
    const remarks = [
      'the dew heater was put on for the first time this week and the cables are all new',
      'it is on the mains box and not on a battery as I said',
      'the neighbour has a new fence and the lamp of it shines into the dome at times',
      'I wonder about the heater, the mat under the laptop is damp each morning too',
      'last night my daughter sat at it and saw nothing odd until she made tea',
    ];
    let reply = await answer(
      deps,
      'triage usb to the hand controller on Windows, it connects and then drops after an hour of perfect work, each night',
      NOW,
      who,
    );
    for (const remark of remarks) {
      reply = await goOn(
        who,
        await answer(deps, `triage ${remark}`, NOW, who),
        (one) => stepOf(one).kind === 'handOn',
        2,
      );
    }
    reply = await answer(deps, 'triage can someone at the club help me please', NOW, who);
    const lines = consoleLines({ ...reply, choices: [] }, null, { colour: false, width: 44 });
    expect(lines.length, lines.join('\n')).toBeLessThanOrEqual(27);
    const labels = reply.facts.map(({ label }) => label);
    expect(labels[0]).toBe('Who, what');
    expect(reply.facts.find(({ label }) => label === 'Since')?.value ?? '').not.toMatch(/nothing/iu);
  });
});

describe('a caution', () => {
  it('is given in full the first time it is shown, though a look that bears it was answered unasked', async () => {
    const who = member('Rosalind');
    let reply = await answer(deps, 'triage do:new', NOW, who);
    for (const said of ['path.controller-serial', 'system.windows', 'how-far.no-connect', 'contacts.bright'])
      reply = await answer(deps, `triage walk:${idOf(reply)} answer:${said}`, NOW, who);
    expect(deps.triage().check('contacts')?.powerOffFirst).toBe(true);
    const fuse = await answer(deps, 'could it be the fuse?', NOW, who);
    expect(stepOf(fuse).id).toBe('fuse');
    expect(fuse.cautions).toHaveLength(1);
    expect(fuse.cautions.join(' ')).not.toContain('As said before');
    const again = await answer(deps, `triage walk:${idOf(fuse)}`, NOW, who);
    expect(again.cautions).toEqual(['As said before: Power off first.']);
  });
});
