/** The sheet for a helper never names first, as if it were new, a cause whose remedy was done in vain. The lines are invented. */
import { describe, expect, it } from 'vitest';
import { answer } from '../commands/real-deps.js';
import { deps, goOn, member, NOW, stepOf } from './console-walk.js';

const MOST_TURNS = 40;

describe('a cause that was tried', () => {
  it.each([
    [
      'windows, usb adapter at handset, connects fine, every goto lands in the wrong place, about an hour east. summer time is set wrong',
      'Summer time is set wrong',
    ],
    [
      'windows, adapter at handset. it connects but the mount does not move on goto, says it is parked',
      'The mount is parked and refuses to move',
    ],
  ])('stands with the reason why: %s', async (opening, title) => {
    const who = member(`Hereward ${title}`);
    const first = await answer(deps, `triage ${opening}`, NOW, who);
    const end = await goOn(who, first, (reply) => stepOf(reply).kind === 'handOn', MOST_TURNS);
    const stands = end.facts.find(({ label }) => label === 'Stands')?.value ?? '';
    expect(stands).toMatch(new RegExp(`^${title}, \\d+ % \\(tried, yet it fits best`, 'u'));
    expect(end.facts.map(({ label }) => label)).toContain('Where');
  });
});
