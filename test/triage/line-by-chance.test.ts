/** Lines that by chance begin like a command, name the Sun, a helper or a pole, or sound like a cure. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { leavesWalk, outcomeSaid } from '../../bot/reading/index.js';
import type { Outcome } from '../../bot/reply/reply.js';
import { isProblem } from '../../bot/ground/problem.js';
import { harmNear } from '../../bot/commands/triage/harm-near.js';
import { answer, ask } from '../commands/real-deps.js';
import { shippedModel } from '../shipped.js';
import { deps, linesOn, member, NOW } from './console-walk.js';

const { reading } = shippedModel();
const shown = (outcome: Outcome): string =>
  isProblem(outcome) ? outcome.message : linesOn(outcome).join(' ').replaceAll(/\s+/gu, ' ');

let members = 0;
const inWalk = async (opening: string, line: string): Promise<string> => {
  members += 1;
  const who = member(`Wulfrun${members}`);
  await answer(deps, `triage ${opening}`, NOW, who);
  return shown(await ask(deps, line, NOW, who));
};

describe('a line to a walk', () => {
  const MISSES = 'every goto is 30 degrees west, windows, usb in the handset';
  it.each([
    'site is right in the program, the handset clock goes two hours early',
    'alignment was done twice last night',
  ])('is the walk’s, where it only begins like a command: %s', async (line) => {
    expect(await inWalk(MISSES, line)).not.toMatch(/does not fit|Found no place/u);
  });

  it('is the command’s, where it is plainly one', async () => {
    expect(await inWalk(MISSES, 'site add here 99 999')).toContain('needs a position');
  });

  it.each(['my sun set up the house wifi on it, app says no mount found', 'no not the sun in the sky, my son did it'])(
    'is not about the Sun where a son is meant: %s',
    async (line) => {
      expect(await inWalk('tablet, the bridge is on the house network', line)).not.toContain('solar filter');
    },
  );

  it('is about the Sun where a son wants to look at it', async () => {
    expect(await inWalk('tablet, the bridge is on the house network', 'my sun wants to look at the sun')).toContain(
      'solar filter',
    );
  });

  it.each([
    'the tablet is new, the old one did it fine until it broke',
    'that makes no sense: it is wired, in the list of the router, and answers a ping',
  ])('is no cure where it tells of before or disputes: %s', async (line) => {
    expect(await inWalk('bridge on the house network, the app finds no mount, windows', line)).not.toContain('Fixed');
  });
});

describe('words of an outcome', () => {
  it.each(['put it on yes, works now', 'dst was on no, put it on yes, bang on the star'])(
    'are no wish for a person: %s',
    (words) => {
      expect(leavesWalk(reading, words)).toBeNull();
    },
  );

  it.each(['put me through to somebody', 'please hand it on', 'put this to a helper'])('are one: %s', (words) => {
    expect(leavesWalk(reading, words)).toBe('person');
  });

  it.each([
    'I have changed to sidereal but now there are clouds, I can not test it',
    'did it already, removed, only not tested',
  ])('say it is done and not yet tried: %s', (words) => {
    expect(outcomeSaid(reading, words).what).toBe('done');
  });

  it('say that it fails again, however good the rest sounds', () => {
    expect(outcomeSaid(reading, 'pulled the cable, put it in again and it is denied again').what).toBe('unchanged');
    expect(outcomeSaid(reading, 'it was denied again, then I added the group and it works').what).toBe('cured');
  });

  it('say it could not be done, where nothing was', () => {
    expect(outcomeSaid(reading, 'i can not test it tonight').what).toBe('could-not');
  });

  it('name a pole only where one is meant', () => {
    expect(harmNear('it was the old address plus the wrong port')).toBeNull();
    expect(harmNear('i put plus and minus the wrong way round')).not.toBeNull();
  });
});
