/** Idle words, thanks and questions after a mended walk: met once and briefly, never kept. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { answer, ask } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

let members = 0;

const mended = async (): Promise<ReturnType<typeof member>> => {
  members += 1;
  const who = member(`Godgifu${members}`);
  await answer(deps, 'triage windows, usb adapter at handset, the program says access denied on com5', NOW, who);
  expect(stepOf(await answer(deps, 'that was it, it works now', NOW, who)).kind).toBe('done');
  return who;
};

const wordsOf = (outcome: Outcome): string =>
  isProblem(outcome) ? outcome.message : [outcome.summary, ...outcome.notes].join(' ');

const IDLE = [
  'thx',
  'cheers',
  'its cold out here',
  'woohoo',
  'right back to the imaging then',
  ':-)',
  'my wife says hello',
];

describe('after a mended walk', () => {
  it.each(IDLE)('“%s” is met briefly, and stands in no summary', async (line) => {
    const who = await mended();
    const reply = await ask(deps, line, NOW, who);
    expect(wordsOf(reply)).toMatch(/Clear skies/u);
    expect(wordsOf(reply)).not.toMatch(/May I count|waits/u);
    const sheet = await answer(deps, 'triage do:summary', NOW, who);
    expect(JSON.stringify(sheet.facts)).not.toContain(line);
  });

  it('is met once: the next idle word is nobody’s', async () => {
    const who = await mended();
    await ask(deps, 'its cold out here', NOW, who);
    expect(wordsOf(await ask(deps, 'the flask is empty as well', NOW, who))).not.toMatch(/Good to hear|May I count/u);
  });

  it.each(["what's up tonight from 52.71,0.12", 'does it matter which eyepiece i use'])(
    '“%s” is answered as asked anywhere',
    async (line) => {
      expect(wordsOf(await ask(deps, line, NOW, await mended()))).not.toMatch(
        /May I count|keep that|This walk has ended/u,
      );
    },
  );

  it.each(['it stopped again', 'its doing it again', 'now the gotos are off by 10 degrees'])(
    '“%s” takes it up again, idle words between or not',
    async (line) => {
      const who = await mended();
      await ask(deps, 'thx', NOW, who);
      expect(stepOf(await answer(deps, line, NOW, who)).kind).not.toBe('done');
    },
  );

  it('counts when told so, once thanks were said too', async () => {
    const who = await mended();
    await ask(deps, 'thx', NOW, who);
    expect((await answer(deps, 'yes count it', NOW, who)).notes.join(' ')).toContain('Counted');
  });

  it('no longer takes a bare ok for a yes', async () => {
    const who = await mended();
    await ask(deps, 'lovely evening', NOW, who);
    expect(wordsOf(await ask(deps, 'ok', NOW, who))).not.toContain('Counted');
  });
});
