/** A cure in a few words ends the walk at its remedy, or is asked once, and is put down to that remedy. The words are our own. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, member, NOW, stepOf } from './console-walk.js';

let members = 0;
const talk = async (...lines: readonly string[]): Promise<Reply> => {
  members += 1;
  const who = member(`Hildeswith${members}`);
  const [first = '', ...rest] = lines;
  let reply = await answer(deps, `triage ${first}`, NOW, who);
  const id = idOf(reply);
  for (const line of rest) reply = await answer(deps, `triage walk:${id} text:"${line}"`, NOW, who);
  return reply;
};
const textOf = (reply: Reply): string => [reply.summary, ...reply.notes].join(' ');
const yesLine = (reply: Reply): string => reply.choices?.find(({ label }) => /^yes\b/iu.test(label))?.run ?? '';

const NO_DRIVER = 'usb-serial adapter at the handset, windows, device manager shows code 28';
const PARKED = 'connected, but it refuses to slew, says parked';

describe('a short cure at a remedy', () => {
  it.each(['yep connected', 'connected now', 'fixed', 'that did it', 'found it now', 'works!'])(
    '“%s” ends the walk there',
    async (words) => {
      expect(stepOf(await talk(NO_DRIVER, words))).toMatchObject({ kind: 'done', id: 'adapter-driver-missing' });
    },
  );

  it.each(['it does', 'ha, it does', 'it did', 'got it', 'ha, yes', 'working'])(
    '“%s” is asked once, or ends it, and is put down to it',
    async (words) => {
      const reply = await talk(NO_DRIVER, words);
      if (stepOf(reply).kind !== 'done') expect(yesLine(reply)).toContain('adapter-driver-missing.works');
      else expect(stepOf(reply).id).toBe('adapter-driver-missing');
    },
  );

  it.each(['bingo', 'it does now', 'it does'])('“%s” is no yes to what was only guessed beside it', async (words) => {
    const opened = await talk(PARKED);
    expect(textOf(opened)).toContain('Perhaps: ');
    const reply = await talk(PARKED, words);
    expect(textOf(reply)).not.toContain('I take it: ');
    expect(stepOf(reply).kind === 'done' ? 'done' : yesLine(reply)).toMatch(/done|mount-parked\.works/u);
  });

  it.each(['connected now', 'yep connected'])(
    '“%s” is no cure of a mount that connects and points astray',
    async (words) => {
      const reply = await talk('it goes to the wrong place, always 15 degrees east', words);
      expect(stepOf(reply).kind).not.toBe('done');
    },
  );
});

describe('a short cure after a remedy that changed nothing', () => {
  it.each(['works!', 'ooh that worked', 'it does now'])(
    '“%s” is asked about, and no answer to the question',
    async (words) => {
      const reply = await talk(NO_DRIVER, 'no change', words);
      expect(yesLine(reply)).toMatch(/^triage walk:/u);
      expect(textOf(reply)).not.toContain('Did you mean');
    },
  );
});

describe('a look that is the remedy as well', () => {
  const PHONE = ["my phone app can't find the mount, network bridge's own wifi", 'unreachable', 'mobile data is on'];
  it.each(['it does now', 'yes all good', 'yep connected', 'works!', 'it does', 'yes'])(
    'is answered by “%s”, and its card says that all may be well already',
    async (words) => {
      const asked = await talk(...PHONE);
      expect(stepOf(asked).id).toBe('without-mobile-data');
      const reply = await talk(...PHONE, words);
      expect(stepOf(reply)).toMatchObject({ id: 'phone-sends-by-mobile-data' });
      expect(textOf(reply)).toContain('If all is well as it is now, tell me so');
      const ended = await talk(...PHONE, words, 'yes it works');
      expect(stepOf(ended)).toMatchObject({ kind: 'done', id: 'phone-sends-by-mobile-data' });
    },
  );
});
