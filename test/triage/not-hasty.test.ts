/** A cure that the remedy on show may not have brought about. The sentences are our own; what ought to come of them is a club helper's judgement, no source. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

let members = 0;
const OPENING = 'triage windows, usb adapter at handset, the program says access denied on com5';

/** The lines typed one after the other by one member; the last one's reply. */
const said = async (...lines: readonly string[]): Promise<Reply> => {
  members += 1;
  const who = member(`Elfrida${members}`);
  let reply = await answer(deps, OPENING, NOW, who);
  for (const line of lines) reply = await answer(deps, line, NOW, who);
  return reply;
};

const isFixed = (reply: Reply): boolean => /^Fixed/u.test(reply.summary);
const labelsOf = ({ choices = [] }: Reply): readonly string[] => choices.map(({ label }) => label);

describe('a cure after “could not do it”', () => {
  it.each(["couldn't do it", 'not possible', 'cant do that my laptop is at work'])(
    '“%s” is heard as that, and what works later is not put down to it',
    async (line) => {
      const end = await said(line, 'it works now');
      expect(isFixed(end)).toBe(false);
      expect(end.summary).toBe('Good to hear. What was it?');
      expect(labelsOf(end)).toEqual(['Another program holds the port', 'Something else']);
    },
  );

  it('asked whether it is fixed, a yes still asks what it was', async () => {
    const end = await said("couldn't do it", 'its working now i think', 'yes');
    expect(end.summary).toBe('Good to hear. What was it?');
  });

  it('is put down to it where it was done after all', async () => {
    const end = await said("couldn't do it", 'closed the terminal and it works');
    expect(stepOf(end)).toMatchObject({ kind: 'done', id: 'port-held-by-program' });
  });
});

describe('a cure told with a doubt', () => {
  it.each(['its working now i think', 'probably fixed', 'it works, or so it seems', 'i guess it is fixed'])(
    '“%s” is asked about, and a yes ends it',
    async (line) => {
      expect((await said(line)).summary).toBe('Is it fixed?');
      expect(stepOf(await said(line, 'yes'))).toMatchObject({ kind: 'done', id: 'port-held-by-program' });
    },
  );

  it('a guess at the cause is no doubt of the cure', async () => {
    expect(isFixed(await said('closed the terminal, i think that had the port, works now'))).toBe(true);
  });
});

describe('a cure that nobody did anything for', () => {
  it.each(['it started working by itself', 'ok now it works, didnt do anything'])(
    '“%s” counts for no cause',
    async (line) => {
      const end = await said(line);
      expect(isFixed(end)).toBe(false);
      expect(end.notes.join(' ')).toContain('count it for no cause');
    },
  );

  it.each(['rebooted everything and it is back', 'hm funny it connects now'])('“%s” asks what it was', async (line) => {
    expect((await said(line)).summary).toBe('Good to hear. What was it?');
  });
});

describe('“the way” of another thing', () => {
  it('is not the way that the card shows', async () => {
    expect((await said('modemmanager was in the way, removed it and it works')).summary).not.toContain(
      'Another program',
    );
  });
});

describe('what was done at another card', () => {
  const AT_PARKED = 'triage windows, usb adapter to handset, connected but mount does not move, handset says parked';

  it.each(['used the other power supply and it moves', 'turned it off and on again, moves'])(
    '“%s” is not unparking',
    async (line) => {
      members += 1;
      const who = member(`Wynflaed${members}`);
      expect(stepOf(await answer(deps, AT_PARKED, NOW, who)).id).toBe('mount-parked');
      expect(isFixed(await answer(deps, line, NOW, who))).toBe(false);
    },
  );
});
