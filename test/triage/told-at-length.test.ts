/** Stories at length and contrasts told by the way, as members tell them. The sentences are our own; what follows from them is common practice. */
import { describe, expect, it } from 'vitest';
import { outcomeSaid, readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const told = (text: string): ReadonlyMap<string, string> =>
  new Map(readText(reading, text).facts.map(({ what, answer }) => [what, answer]));

describe('told by the way', () => {
  it.each([
    ['with the computer off and on the handset alone it sits still', 'works-with-handset', 'finds'],
    ['it only creeps while the program is open', 'works-with-handset', 'moves'],
    ['there is a gamepad paired with this laptop', 'game-stick', 'there'],
    [
      'at some point it stops following, a new goto cures it and the tube is then on the other side of the pier',
      'target-place',
      'meridian',
    ],
    [
      'eastern targets are tracked for hours, tracking is off a little after they cross the meridian',
      'target-place',
      'meridian',
    ],
    ['the motor spins, the axis does not', 'slew', 'hums'],
    ['it thinks it is moving, the tube does not turn', 'how-far', 'no-move'],
    ['in the app my place is latitude 0 and longitude 0', 'program-clock', 'wrong-site'],
    ['I said no to location when the app asked', 'program-clock', 'wrong-site'],
    ['it says things are up which I cannot see', 'how-far', 'elsewhere'],
    ['it is miles off, like a quarter of the sky', 'how-far', 'elsewhere'],
    ['no hand controller on this mount, only the cable', 'works-with-handset', 'none'],
    ['I sold the handset years ago', 'works-with-handset', 'none'],
  ])('%s', (text, what, answer) => {
    expect(told(text).get(what)).toBe(answer);
  });

  it.each([
    ['with the handset alone it creeps just the same', 'works-with-handset', 'finds'],
    ['with the handset plugged in the screen stays blank', 'works-with-handset', 'finds'],
    ['without the computer it still drifts', 'works-with-handset', 'moves'],
    ['there is no gamepad or joystick here', 'game-stick', 'there'],
    ['the usb connection drops when the scope goes past the meridian', 'target-place', 'meridian'],
    ['it points to the other side of the sky', 'target-place', 'meridian'],
    ['latitude 52.7 and longitude 0.12, that is right', 'program-clock', 'wrong-site'],
    ['location is allowed', 'program-clock', 'wrong-site'],
    ['no text on the handset', 'works-with-handset', 'none'],
    ['the hand controller has no power', 'works-with-handset', 'none'],
  ])('is not told by: %s', (text, what, answer) => {
    expect(told(text).get(what)).not.toBe(answer);
  });

  it.each([
    'it thinks it is tracking',
    'the program believes it is moving',
    'numbers go up though the tube has not moved',
  ])('is no cure: %s', (text) => {
    expect(['cured', 'done']).not.toContain(outcomeSaid(reading, text).what);
  });
});

describe('a count of nothing and a drawn-out word', () => {
  it.each(['20 slews on the mains supply, 0 drops.', 'not a single drop since', 'yesss works after reboot'])(
    'tell of a cure: %s',
    (line) => {
      expect(outcomeSaid(reading, line).what).toBe('cured');
    },
  );

  it.each(['still 10 drops an hour', 'it shows 0 errors but nothing moves'])('and not of one: %s', (line) => {
    expect(outcomeSaid(reading, line).what).not.toBe('cured');
  });
});

describe('two systems in one text', () => {
  it.each([
    ['it works on the windows side, not in linux', 'linux'],
    ['win11 is dead, debian on the same box finds the mount', 'windows'],
    ['the tablet connects, the windows laptop doesnt', 'windows'],
    ['ubuntu laptop, windows on it works', 'linux'],
    ['neither windows nor my mac sees it', undefined],
  ])('%s', (line, system) => {
    expect(told(line).get('system')).toBe(system);
  });
});
