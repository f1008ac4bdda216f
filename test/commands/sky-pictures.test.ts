/** Pictures of the sky are never the fault walk's; what can be reckoned of them is. */
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { skyPicture } from '../../bot/commands/asking/sky-pictures.js';
import { shippedCatalogue } from '../shipped.js';
import { answer, ask, realDeps } from './real-deps.js';

const NOW = Date.UTC(2026, 10, 27, 19, 5);
const here = await realDeps({ clubSiteText: '53.96,-1.08' });
const summary = async (line: string): Promise<string> => (await answer(here, line, NOW)).summary;

describe('how long a frame may be on a tripod', () => {
  // 500 over the focal length, and over the sensor's crop: common practice, no source. A pixel of 4 µm at 50 mm is 16.5″, and the sky turns
  // 15.04″ a second (360° in a sidereal day of 86,164 s): 1.1 s.
  it.each([
    [
      'How I make photo of Orion with my camera, 50 mm lens, without tracking',
      /50 mm about 10 s on a full-frame.*6\.7 s on an APS-C.*Orion's Belt.*in 1\.1 s/u,
    ],
    ['Photo of Orion with 50 mm lens on tripod, how many seconds', /about 10 s on a full-frame/u],
    ['how long can i expose before trailing, 50mm', /about 10 s on a full-frame/u],
    ['wie lange kann ich mit 50 mm ohne Nachführung belichten', /about 10 s on a full-frame/u],
    ['500 rule for 18mm on aps-c', /about 19 s on an APS-C camera/u],
    ['max exposure time 35 mm lens no tracker', /about 14 s on a full-frame/u],
    // (35 × 2.8 + 30 × 4.3) / 14 = 16.2: F. Michaud's rule, Société astronomique du Havre, from memory.
    ['npf rule 14mm f2.8 4.3 micron', /NPF rule, \(35 × 2\.8 \+ 30 × 4\.3\) over 14: 16 s/u],
    // At the Pleiades' 24° hardly slower; at M 81's 69° 1 / cos 69.1° = 2.8 times.
    ['photo of m81 with 135 mm lens on tripod, how many seconds', /At M 81, 2\.8 times slower/u],
  ])('%s', async (line, told) => expect(await summary(line)).toMatch(told));
});

describe('what is said where nothing is reckoned', () => {
  it.each([
    ['photo of star trails how long', /^The sky turns 15° an hour/u],
    ['star trails one long exposure or many short', /^The sky turns 15° an hour/u],
    ['can i photograph the moon with my phone', /^Yes, it is what a phone does best/u],
    ['photographier la lune avec mon telephone', /^Yes, it is what a phone does best/u],
    ['can i use my phone to photograph jupiter', /^Yes, small but real/u],
    ['how to take a picture of the milky way', /^A dark sky without the Moon/u],
    ['camera settings for the geminids', /^A wide lens/u],
    ['can i do astrophotography with an alt az mount', /^Yes, in short frames/u],
    ['what settings for photo of full moon', /^The Moon is a sunlit landscape/u],
  ])('%s', async (line, told) => expect(await summary(line)).toMatch(told));

  it('"it" is what was asked about last', async () => {
    await answer(here, 'where is jupiter', NOW);
    expect(await summary('can i snap it with my iphone')).toMatch(/^Yes, small but real/u);
  });

  it('is answered beside a walk, which stays', async () => {
    const deps = await realDeps();
    await answer(deps, 'triage the mount does not connect', NOW);
    const outcome = await ask(deps, 'photo of star trails how long', NOW + 1000);
    expect(isProblem(outcome) ? '' : outcome.summary).toMatch(/^The sky turns/u);
    expect((isProblem(outcome) ? [] : outcome.notes).join(' ')).toMatch(/Your walk still waits/u);
  });
});

describe('what is no question of a picture', () => {
  it.each([
    "my camera won't connect to the laptop",
    'stars trail in my photos though tracking is on',
    'photos show egg shaped stars after 60 s',
    'i took a photo of the screen, what is wrong',
    'can i photograph the sun with my phone',
    'how do i connect my phone to the mount',
    'will m31 fit in the picture at 600mm',
    'i shot the moon last night, lovely',
  ])('%s', (line) => expect(skyPicture(line, shippedCatalogue())).toBe(null));
});
