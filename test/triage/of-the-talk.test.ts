/** What members say of the talk itself while a walk waits. The held-out lines were written by people who knew no reader; common practice, no source. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { ofTheTalk } from '../../bot/reading/index.js';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { answer, ask, ODALYS, realDeps } from '../commands/real-deps.js';
import { shippedModel } from '../shipped.js';

const NOW = Date.UTC(2026, 10, 26, 21);
const { reading } = shippedModel();
const deps = await realDeps();

const held = readFileSync('test/reading/corpus/talk/held.jsonl', 'utf8')
  .split('\n')
  .filter((line) => line !== '')
  .map((line) => JSON.parse(line) as { readonly kind: string; readonly text: string });

describe('lines that nothing was fitted on', () => {
  it('are heard for what they are, more than half', () => {
    const lines = held.filter(({ kind }) => kind !== 'nothing');
    const heard = lines.map(({ kind, text }) => ({ kind, heard: ofTheTalk(reading, text) }));
    expect(lines.length).toBeGreaterThan(120);
    // Measured: 77 right, 23 of a neighbouring kind, 40 unheard, of 140.
    expect(heard.filter((one) => one.heard === one.kind).length / lines.length).toBeGreaterThan(0.5);
    expect(heard.filter((one) => one.heard !== null && one.heard !== one.kind).length / lines.length).toBeLessThan(0.2);
  });

  it('are left alone where they tell of the mount', () => {
    const lines = held.filter(({ kind }) => kind === 'nothing');
    expect(lines.length).toBeGreaterThan(50);
    expect(lines.filter(({ text }) => ofTheTalk(reading, text) !== null)).toEqual([]);
  });
});

const OPENING = 'my laptop does not see the mount, windows 11, usb adapter at the hand controller';

/** What comes of a line said to the first question. */
const said = async (line: string): Promise<{ readonly first: Outcome; readonly then: Outcome }> => {
  const asker = { ...ODALYS, memberId: `console:${line}`, channelId: `console ${line}` };
  const first = await answer(deps, `triage ${OPENING}`, NOW, asker);
  return { first, then: await ask(deps, line, NOW, asker) };
};
const stepIn = (outcome: Outcome): unknown => (isProblem(outcome) ? null : outcome.data['step']);
const notesIn = (outcome: Outcome): string => (isProblem(outcome) ? outcome.message : outcome.notes.join(' '));

describe('in a walk', () => {
  it.each(["i haven't done it yet", 'will look tomorrow, it is late', 'give me a minute, the laptop is booting'])(
    '“%s” waits',
    async (line) => {
      const { then } = await said(line);
      expect(isProblem(then) && then.problem).toBe('beside-the-walk');
    },
  );

  it.each(['i dont understand the question', 'what do you mean', "sorry, i'm lost"])(
    '“%s” is told how, at the same question',
    async (line) => {
      const { first, then } = await said(line);
      expect(stepIn(then)).toMatchObject({ id: (stepIn(first) as { id: string }).id });
      expect(notesIn(then)).toContain('Here is how, once more.');
    },
  );

  it.each(['ignore that, it was the wrong log', 'scrap what i just said'])(
    '“%s” takes the words back',
    async (line) => {
      const { then } = await said(line);
      expect(notesIn(then)).toContain('Taken back');
      expect(stepIn(then)).toMatchObject({ id: 'path' });
    },
  );

  it('what was asked before is passed on', async () => {
    const { first, then } = await said('we had that one before');
    expect((stepIn(then) as { id: string }).id).not.toBe((stepIn(first) as { id: string }).id);
  });

  it.each(['it says code 28', 'the light on the handset stays off', 'nothing at all happens'])(
    '“%s” is heard as before',
    async (line) => {
      expect(ofTheTalk(reading, line)).toBe(null);
      expect(notesIn((await said(line)).then)).not.toContain('once more');
    },
  );
});
