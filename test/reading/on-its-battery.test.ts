/** A computer on its own battery, a mount that greets anew, a port that comes and goes, a saddle that rocks: as told. The sentences are our own. */
import { describe, expect, it } from 'vitest';
import { curedByDeed, forAnother, readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const toldIn = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

// That systems save power so on battery: Linux kernel documentation, Power Management for USB; Windows: common practice, no source.
describe('a link that is lost while the computer runs on its own battery', () => {
  it.each([
    'in the field the laptop runs on its own battery, at home its plugged in',
    'only when laptops on battery, i just tried at home with the charger out and it dropped after 6 min',
    'i said laptop battery, not the mounts',
    'on mains the laptop holds the connection, on battery it drops',
    'as soon as i unplug the laptops charger it disconnects',
    'pc on battery = disconnects, pc on mains = ok',
  ])('%s', (text) => {
    expect(toldIn(text)).toContain('power-saving.may-sleep');
    expect(toldIn(text)).not.toContain('when-drops.one-place');
  });

  it.each([
    'the mount is on a battery and it drops',
    'the mount drops when its battery is low',
    'on mains or on battery, same drops',
    'laptop runs on battery, works fine',
    'the laptop battery is flat',
  ])('%s: is not told', (text) => {
    expect(toldIn(text)).not.toContain('power-saving.may-sleep');
  });
});

describe('a mount that restarts', () => {
  it.each(['screen goes off n on n says welcome', 'handset goes blank then shows the start screen again'])(
    'greets anew: %s',
    (text) => {
      expect(toldIn(text)).toContain('arrow-keys.restarts');
      expect(toldIn(text)).not.toContain('controller-screen.dark');
    },
  );

  it('does not while its plug is held', () => {
    expect(toldIn('if i hold it with my hand it doesnt reboot lol')).toEqual(['when-drops.touched']);
  });

  it.each([
    'swapped to the plug w the right hole (2.1 i had 2.5), no more reboot',
    'swapped the plug for one with the right hole, no more reboots',
  ])('no longer: %s', (text) => {
    expect(curedByDeed(text)).toMatchObject({ isCured: true, isDone: true });
  });

  it('in the middle of a slew is no cure', () => {
    expect(curedByDeed('goes back to the start menu by itself in the middle of a slew').isCured).toBe(false);
  });
});

describe('other things told', () => {
  it.each([
    ['the port is there for a second when we plug and then gone', 'port-appears.flaps'],
    ['it rocks a hair in the clamp, front screw only half tight', 'tube-firm.shifts'],
    ['only on the west side, east is fine', 'miss-shape.one-side'],
    ['resync fixes one side only', 'miss-shape.one-side'],
  ])('%s', (text, fact) => {
    expect(toldIn(text)).toContain(fact);
  });
});

describe('the only machine that is told of', () => {
  it.each(['his linux pc says permission denied on /dev/ttyUSB0', 'her laptop doesnt find the mount, windows 11'])(
    'is another member’s: %s',
    (text) => {
      expect(forAnother(text)).toEqual({ who: 'your friend' });
    },
  );

  it.each(['his laptop works, mine says access denied', 'his advice was to update my driver'])(
    'stands beside one’s own: %s',
    (text) => {
      expect(forAnother(text)).toBeNull();
    },
  );
});
