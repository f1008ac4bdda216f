/** What members tell of clutches, of the place, of the way it turns, of what else hangs on the supply and of a mode that is off. The lines are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();
const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

const TOLD: Readonly<Record<string, readonly string[]>> = {
  'clutches.slips': [
    'i can push the ra axis round with the knob done up',
    'when locked the tube still turns if i lean on it',
    'ra gives way under my hand with the clamp closed',
    'motor turns but the scope lags behind, like it slips',
  ],
  'site-entries.another-place': [
    'app says location 38.7 N 9.1 W. thats lisbon isnt it!',
    'its the PLACE that is wrong',
    'it still has my holiday location in it',
    'handset shows latitude 28, i am at 53',
    'gps says another country',
    'the program still thinks we are in tenerife',
    'wrong town in the mount, it shows the one from our trip',
  ],
  'mount-does.wrong-way': [
    'sidereal, but it drives backwards',
    'it tracks in the opposite direction',
    'tracks backward since reinstall',
    'motor runs reverse to the sky',
  ],
  'follow.leaves-fast': [
    'the stars leave twice as quick with tracking on as with it off',
    'tracking on makes the star leave faster',
    'stars fly out of view as soon as tracking is on',
  ],
  'shares-supply.heater': [
    'dew heaters are on the same supply',
    'the heater controller is plugged into the same hub supply',
    'same psu for straps and mount',
  ],
  'other-program.works': [
    'one program connects; the other will not connect',
    'my planetarium connects; the guider does not',
    'first program works, second one refuses',
  ],
  'chip-text.refused': ['it was PHASED OUT says the device manager'],
  'controller-too.cable-only': ['controller is not plug now', 'handset isnt plugged in at the moment'],
  'how-far.drops': ['camera drops too', 'the focuser and the camera vanish at the same moment'],
};

describe('what is told', () => {
  for (const [fact, lines] of Object.entries(TOLD))
    it.each(lines)(`${fact}: %s`, (line) => {
      expect(factsOf(line)).toContain(fact);
    });
});

const NOT_TOLD: Readonly<Record<string, readonly string[]>> = {
  'controller-set-up.left-pass-through': [
    'in menu utility i see PC direct mode, never used it',
    'pc direct is off',
    'pass through is not on, what the driver want i dont know',
    'direct mode is there in the menu but i did not choose it',
    'no i have not set it to pass through',
    'passthrough off',
  ],
  'clutches.slips': ['both clutches locked, the axis is firm', 'once 5 minutes, then 20 minutes'],
  'site-entries.another-place': ['i am back from a holiday and nothing connects'],
  'shares-supply.heater': ['the dew heaters have their own supply', 'dew heaters on a battery of their own'],
  'when-drops.quiet': ['it does drop while the program is busy with it, not idle'],
  'miss.one-hour': ['goto moves wrong; up, 15 degrees up and maybe 8 to the right'],
  'mount-does.wrong-way': ['the picture is upside down'],
};

describe('what is not', () => {
  for (const [fact, lines] of Object.entries(NOT_TOLD))
    it.each(lines)(`${fact}: %s`, (line) => {
      expect(factsOf(line)).not.toContain(fact);
    });

  it('but a mode that is on is on', () => {
    expect(factsOf('handset screen says pc direct mode')).toContain('controller-set-up.left-pass-through');
  });
});
