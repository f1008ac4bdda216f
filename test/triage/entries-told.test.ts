/** What a mount shows of place and zone, told in a walk beside where that is, is held against the town. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../bot/reply/reply.js';
import { answer } from '../commands/real-deps.js';
import { deps, idOf, linesOn, member, NOW, stepOf } from './console-walk.js';

let members = 0;
const told = async (line: string): Promise<Reply> => {
  members += 1;
  const who = member(`Cyneburh${members}`);
  const opening = 'every goto lands far off to the west, windows, usb adapter at the hand controller';
  const reply = await answer(deps, `triage ${opening}`, NOW, who);
  return answer(deps, `triage walk:${idOf(reply)} text:"${line}"`, NOW, who);
};

const screenOf = (reply: Reply): string => linesOn(reply).join(' ').replaceAll(/\s+/gu, ' ');

describe('entries told with a town', () => {
  // Freiburg lies near 48.0° N, 7.85° E, Dunedin near 45.9° S, 170.5° E (GeoNames); some of its members live a way off.
  it.each([
    [
      'longitude-sign-wrong',
      'the hand controller says 48 10 N and 008 30 W. We live near Freiburg, that is right I think',
    ],
    ['longitude-sign-wrong', 'it shows lat 48 00 N long 7 51 W, i live in Freiburg'],
    ['site-of-another-place', 'the screen has 40 25 N, 3 42 W. I live in Freiburg'],
  ])('give %s its turn: %s', async (fault, line) => {
    const reply = await told(line);
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: fault });
    expect(screenOf(reply)).toContain('Kept as your site');
  });

  it('tell the wrong side of the equator, whichever way the miss points', async () => {
    const reply = await told('the mount shows latitude 45 52 N, we are near Dunedin, New Zealand');
    expect(screenOf(reply)).toContain('the latitude on the other side of the equator');
  });

  it.each([
    ['the mount shows 48 10 N and 8 30 E. We live near Freiburg'],
    ['the mount shows 47 59 N, 7 51 E, i live in Freiburg'],
    ['We live near Freiburg, on a hill'],
  ])('accuse no entry that is right: %s', async (line) => {
    const reply = await told(line);
    expect(screenOf(reply)).not.toMatch(/another place|other side|Likely cause/u);
  });
});

describe('a zone told with a town', () => {
  // Europe/Berlin stands at UTC+1 in November (IANA time zone database).
  it.each(['time zone plus one, date is right', 'utc offset is +1', 'zone: +1'])('is right: %s', async (zone) => {
    const reply = await told(`I live in Freiburg. ${zone}`);
    expect(screenOf(reply)).toContain('the UTC offset in the mount is right');
    expect(screenOf(reply)).not.toMatch(/entry that differs/u);
  });

  it.each([
    ['utc-offset-sign-wrong', 'time zone minus one'],
    ['utc-offset-wrong', 'the zone is set to +3'],
  ])('is %s: %s', async (fault, zone) => {
    const reply = await told(`I live in Freiburg. the hand controller says ${zone}`);
    expect(stepOf(reply)).toMatchObject({ kind: 'try', id: fault });
  });
});
