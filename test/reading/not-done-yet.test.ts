/** What was not done yet, or is asked of a remedy, is no outcome of it; what other gear does is no cure. The sentences are invented. */
import { describe, expect, it } from 'vitest';
import { asksWhatItIs, cureGrade, isNotDoneYet, outcomeSaid } from '../../bot/reading/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from '../triage/console-walk.js';

const { reading } = deps.triage();

describe('not done yet', () => {
  it.each([
    'we didnt do it yet',
    'wait we didn’t do it yet',
    'have not tried that one yet',
    'not there yet, still looking for the cable',
    'hold on, not done',
    'give me 5 minutes',
    'bear with me',
    'still downloading',
    'didnt get to it, will do after dinner',
  ])('%s', (text) => {
    expect(outcomeSaid(reading, text).what).toBe('not-yet');
  });

  it.each([
    'did it, no change',
    'not yet working',
    'still not there',
    'give me a new cable',
    'we did that yesterday',
    'didnt do a thing',
    'it does not connect yet',
  ])('is something else: %s', (text) => {
    expect(isNotDoneYet(text)).toBe(false);
  });
});

describe('asked of the remedy', () => {
  it.each([
    'granddad says whats brltty he never installed that',
    'whats a terminal',
    'ok but where is that menu',
    'sorry, how do i open it',
  ])('%s', (text) => {
    expect(outcomeSaid(reading, text).what).toBe('asks-back');
  });

  it.each(['what a night, it works', 'i know what it is', 'it shows what is wrong'])('is no question: %s', (text) => {
    expect(asksWhatItIs(text)).toBe(false);
  });
});

describe('what another part does well', () => {
  it.each([
    'handbox is lit and moves the scope',
    'the hand controller is on and slews',
    'its the lead from my cam charger, camera charges on it fine',
    'printer works on that socket',
    'mouse works in that usb port',
  ])('ends no walk: %s', (text) => {
    expect(cureGrade(text).grade).not.toBe('sure');
  });

  it.each(['hand controller is alive again and the mount slews', 'yep connected', 'it moves now'])(
    'while what failed does: %s',
    (text) => {
      expect(cureGrade(text).grade).toBe('sure');
    },
  );
});

describe('what was good at another time', () => {
  it.each([
    'bro set it up so i can use it from the sofa, last year the hill was ok',
    'swapped the battery in spring, back then it worked great',
    'i changed the lead, it was fine last week',
  ])('is no cure: %s', (text) => {
    expect(cureGrade(text).grade).toBe('none');
  });

  it.each(['changed the cable and it works now', 'new fuse, works again like last year'])('may be one: %s', (text) => {
    expect(cureGrade(text).grade).not.toBe('none');
  });
});

describe('at a remedy', () => {
  const opening = 'linux permission denied on /dev/ttyUSB0';

  it('what is not done yet leaves it standing, and a word of the trade is explained', async () => {
    const who = member('Eadburh');
    const first = await answer(deps, `triage ${opening}`, NOW, who);
    const { id, kind } = stepOf(first);
    expect(kind).toBe('try');
    for (const line of ['we didnt do it yet', 'my brother asks whats a terminal', 'what does dialout mean?']) {
      const next = await answer(deps, `triage walk:${idOf(first)} text:"${line}"`, NOW, who);
      expect(stepOf(next)).toEqual({ ...stepOf(first), kind: 'try', id });
      if (line.includes('terminal')) expect(linesOn(next).join(' ')).toContain('window where commands are typed');
    }
    const after = await answer(deps, `triage walk:${idOf(first)} text:"done it, works now"`, NOW, who);
    expect(stepOf(after)).toMatchObject({ kind: 'done', id });
  });
});
