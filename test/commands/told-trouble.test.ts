/** A member's account of a mount that fails begins a walk, and a question of the night that names gear does not. Common practice, no source. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { isProblem } from '../../bot/ground/problem.js';
import { ask, ODALYS, realDeps } from './real-deps.js';

const EVENING = Date.UTC(2026, 10, 26, 20, 41);
const deps = await realDeps({ clubSiteText: '52.71,0.12' });

/** Each is told by a member who has no walk. */
const beginsWalk = async (text: string): Promise<boolean> => {
  const outcome = await ask(deps, text.replace(/\n/gu, ' '), EVENING, { ...ODALYS, memberId: `console:${text}` });
  return !isProblem(outcome) && typeof outcome.data['walkId'] === 'string';
};

describe('a trouble told where no walk waits', () => {
  it.each([
    'scope wont talk to laptop usb adptr lights up no com port win 11, swapd cable nothin',
    'nothing happens when i plug the scope into the laptop',
    'handset says nothing and the scope is dark, power light off',
    'wifi app cant find my scope, nothing in the list',
    'laptop sees nothing when i plug in the telescope usb',
    'Good evening all. Vega came up fine by hand, but from the tablet every target is refused, it says not aligned.',
    'The clocks went back on Sunday and since then every goto lands a good hour west of Capella, handset only.',
    "We got a new internet box and since then the telescope's gone. Search button finds nothing.",
    'pc says connected. handset says connected. crosshair stays at polaris while the mount tracks something else',
    'Cloudy here so I tested it indoors: the driver says access is denied on the port, the lead is the one it came with.',
    // A target named, and what the mount does instead: no question of where the target stands.
    'Hello. Mount connect OK. I say go to Vega, it go far away, wrong place. Every time. Why?',
    'goto jupiter and the thing dives for the grass, what gives',
    'when i send the mount to Saturn it moves a bit then stops and says limit, all other stars ok',
    'points me into the trees instead of at Regulus',
    'asked for Castor got somewhere in Leo',
    'my mount stops short of every star by about a fist',
    'asked it for the double cluster and got a hedge',
    // Gear in words that tell nothing the walk asks about: it asks.
    'wife moved the router now the scope is offline',
    'mount makes grinding noise',
    'my goto wont goto',
    'can someone help me with my mount',
    'hi, newbie, how do i connect my mount to my laptop',
  ])('%s', async (text) => {
    expect(await beginsWalk(text)).toBe(true);
  });

  it.each([
    'i have a new laptop and a new camera and want to photograph the horsehead, when is it highest this month',
    'the moon is out and i cant see andromeda with my binoculars, what else is up in the east tonight',
    'can you remind me at nine tomorrow to charge the battery and pack the cable and the hand controller',
    'my mount is a german one and i wonder when m42 crosses the meridian so that i can plan the flip',
    'the hand controller asks for the sidereal time at my place at ten this evening, what is it',
    'is the sun far enough away from venus this evening for my goto to slew there safely',
    'clouds keep coming and going here, will there be a gap for jupiter after midnight or is it too low by then',
    'we had the mount repaired last year and it has been fine since, so what shall we try on sunday with the new moon',
    'the star party is on friday and the battery only lasts four hours so what should we look at first',
    'how long before sunrise should i stop so that i do not point near the sun with the scope on the usb hub',
    'where does saturn go when it sets behind the trees, still worth a look',
    'selling my old mount, two hundred quid, collect only',
    'no i ment from york',
    "Hello! I've just been given my first telescope and I was wondering, could you tell me what would be nice to look at right now?",
    'which mount should i buy for a beginner',
    'thanks for the lift and for carrying the mount, tom',
    'can i leave my telescope outside under a cover all winter',
    'jupiter looks upside down in my scope, is that right',
    'which way do i look for vega, behind the house or over the road',
    'does capella ever go below the ground from here',
    'when the sun goes down behind the wall can i point at venus',
    'andromeda goes straight overhead, how do i get to it with the dob without hurting my neck',
  ])('%s is no trouble', async (text) => {
    expect(await beginsWalk(text)).toBe(false);
  });

  it('lets the Sun stand first by day', async () => {
    const noon = Date.UTC(2026, 5, 26, 12);
    const outcome = await ask(deps, 'I say go to Venus, it go far away, wrong place. Every time. Why?', noon, ODALYS);
    expect(!isProblem(outcome) && typeof outcome.data['walkId'] === 'string').toBe(false);
  });

  // Written by members' voices that never saw the readers, and fitted to by nothing: of 240 whole, 213 begin a walk.
  it('hears most of what members wrote at length', async () => {
    const told = readFileSync('test/reading/corpus/told.jsonl', 'utf8')
      .split('\n')
      .filter((line, index) => line !== '' && index % 4 === 0);
    let begun = 0;
    for (const line of told) begun += (await beginsWalk((JSON.parse(line) as { text: string }).text)) ? 1 : 0;
    expect(told.length).toBe(60);
    expect(begun).toBeGreaterThanOrEqual(48);
  }, 120_000);
});
