/** How far the marks of a clause reach: past, whose, solved, quoted, not meant. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

const OPENING = new Set(['system', 'path', 'client']);

const factsOf = (text: string): readonly string[] =>
  readText(reading, text)
    .facts.filter(({ what }) => !OPENING.has(what))
    .map(({ what, answer }) => `${what}.${answer}`);

describe('what one part of a sentence says of another time, person or thing leaves the other part alone', () => {
  it.each([
    ['got put away for the holidays a few weeks ago, and the display is showing parked now', 'park-state.parked'],
    ['It connected fine last week and tonight I get access denied', 'message.denied'],
    ['Two weeks ago it was all good and now the program says no reply from mount', 'message.no-reply'],
    ['the supply was replaced last year but the fuse is blown', 'fuse.blown'],
    ['we had the battery changed some weeks ago and the power light is on', 'power-light.steady'],
    ['last month windows updated itself and device manager shows code 10', 'device-status.cannot-start'],
    ['I have the flatpak of it, my other program connects no problem', 'package-kind.confined'],
    ['it says access denied, and my brother sorted his laptop already', 'message.denied'],
    ['my mate fixed the handset cable and my battery reads 11.2 volts', 'battery-volts.low'],
    ['COM5 access denied all evening, guiding camera is sorted now at least', 'message.denied'],
    ['battery is flat, no problem with the fuse', 'battery-volts.low'],
    ['a few weeks ago I swapped laptops and this one says COM3 access denied', 'message.denied'],
    ['previously it ran for years and the fuse is blown now', 'fuse.blown'],
    ['we used to have a spare handset and the screen is dark on this one', 'controller-screen.dark'],
    ['the seller checked it all and my battery reads 11.3 volts', 'battery-volts.low'],
    ['my brother has the same mount and i get no reply from mine', 'message.no-reply'],
    ['port says access denied, the focuser connects no problem', 'message.denied'],
    ["power light is off, my club mate's laptop is fixed now", 'power-light.off'],
    ['manual says it should be lit but my power light is off', 'power-light.off'],
    ['program says "access denied" when I press connect', 'message.denied'],
  ])('“%s” tells %s', (text, told) => {
    expect(factsOf(text)).toContain(told);
  });
});

describe('what is over, or of another, is not told', () => {
  it.each([
    ["my friend's mount was parked last week and he says it was parked wrong", 'park-state'],
    ['last year I had access denied every night and a reinstall sorted it', 'message'],
    ['we got code 10 some weeks ago and the laptop is now fine', 'device-status'],
    ["access denied it said, but that's sorted now", 'message'],
    ['the time-out is gone, no problem any more', 'message'],
    ['my neighbour has a blown fuse and it drives him mad', 'fuse'],
    ['his drops out when the motors start and mine never did', 'when-drops'],
    ['the power light was off last year and a new lead cured it', 'power-light'],
    ['access denied for weeks, a reinstall cured it', 'message'],
    ['my brother gets access denied and he has no clue why', 'message'],
    ['last month the fuse was blown and nobody noticed', 'fuse'],
  ])('“%s” tells nothing of %s', (text, what) => {
    expect(factsOf(text).filter((fact) => fact.startsWith(what))).toEqual([]);
  });
});

describe('what is not meant of this mount tells nothing', () => {
  it.each([
    'it dropped the link all the time last week and hung as well',
    'I had a blown fuse years ago and replaced it, just for the record',
    "Sure the driver page in the manual states: 'If the port is busy, close other programs. Code 10 means restart.'",
    'the setup tutorial says "if the power light is off, the fuse is blown"',
    'the battery is flat, the fuse is blown and the earth is flat',
    'Yeah right, and the fuse is blown and pigs can fly',
    "Oh of course, the battery is flat, and I'm the queen of sheba",
    `The handbook reads: "If the power light is off, the fuse is blown. If it says no reply, restart." That's all I have so far`,
    "Setup guide says 'the computer shows code 28 when no driver is installed. A yellow triangle is normal.' ok then",
    'from the faq: "the port is in use by another program. Close it."',
  ])('“%s”', (text) => {
    expect(factsOf(text)).toEqual([]);
  });
});
