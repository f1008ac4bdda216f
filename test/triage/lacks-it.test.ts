/** What is not there is asked for once: the look or the remedy is passed by, and no other that needs it comes. Ours, in members' voices. */
import { describe, expect, it } from 'vitest';
import { assess, startWalk, tellText } from '../../bot/triage/index.js';
import { answer } from '../commands/real-deps.js';
import { deps, member, NOW, stepOf } from './console-walk.js';

const model = deps.triage();
const SETUP = { path: 'built-in-usb', system: 'windows', client: 'direct' } as const;
const ids = (said: string): readonly string[] => {
  const { state } = tellText(model, startWalk({ member: 'Tegan', helper: null }, SETUP), said, 'member');
  return assess(model, state).situation.checks.map(({ entry }) => entry.id);
};

describe('a look that needs it', () => {
  it.each([
    ['no reply, and no second cable here', 'other-cable'],
    ['no reply. dont have a second laptop', 'other-computer'],
    ['no reply, theres no handset with this mount', 'works-with-handset'],
  ])('“%s” leaves out %s', (said, check) => {
    expect(ids('no reply')).toContain(check);
    expect(ids(said)).not.toContain(check);
  });

  it('that there is no second lead says nothing of what another lead did', () => {
    const { read } = tellText(
      model,
      startWalk({ member: 'Tegan', helper: null }, SETUP),
      'no second cable here',
      'member',
    );
    expect(read.facts.map(({ what, answer: said }) => `${what}.${said}`)).toEqual(['not-here.other-lead']);
  });

  it('is gone on from where it is asked', async () => {
    const who = member('Tegwen');
    const first = await answer(
      deps,
      'triage macos, bluetooth mount. no reply from mount. the hand controller is not plugged in',
      NOW,
      who,
    );
    expect(stepOf(first).id).toBe('controller-screen');
    const next = await answer(deps, 'triage i have NO hand controller, cant do that', NOW, who);
    expect(stepOf(next).id).not.toBe('controller-screen');
    expect(next.notes.join(' ')).toContain('there is no hand controller here');
    expect(next.notes.join(' ')).not.toMatch(/not sure|something changed/iu);
  });
});

describe('a remedy that needs it', () => {
  it('could not be done', async () => {
    const who = member('Tegryn');
    const card = await answer(
      deps,
      'triage windows, usb socket in the mount, it charges but no port appears, cable came from a lamp',
      NOW,
      who,
    );
    expect(stepOf(card)).toMatchObject({ kind: 'try', id: 'charge-only-cable' });
    const next = await answer(deps, 'triage this is the only cable i have', NOW, who);
    expect(next.notes.join(' ')).toContain('could not do it');
  });
});
