/** What members say not to have, at a look or a remedy that needs it; and the same words of something else. Ours, in members' voices; no source. */
import { describe, expect, it } from 'vitest';
import { namesLacked, thingsLacked } from '../../bot/reading/index.js';

describe('what is not there', () => {
  it.each([
    ['i have NO hand controller, cant do that', 'handset'],
    ['dont own a multimeter', 'meter'],
    ['no second cable here', 'lead'],
    ['ive only got the one cable', 'lead'],
    ['theres no handset with this mount', 'handset'],
    ['never owned a handset', 'handset'],
    ['i dont have another computer to try', 'computer'],
    ["haven't got a meter", 'meter'],
    ['no voltmeter in the house', 'meter'],
    ['only one usb lead here', 'lead'],
    ['cant, the handset is at the club', 'handset'],
    ['no spare lead', 'lead'],
    ['sold the hand controller years ago', 'handset'],
    ['got no meter mate', 'meter'],
    ['my mount came without hand control', 'handset'],
    ['I do not possess such measuring instrument', 'meter'],
    ['nothing to swap it with', 'spare'],
    ['dont have a second laptop', 'computer'],
    ['only this cable, shops closed', 'lead'],
    ['no wifi out here, im in a field', 'internet'],
    ['i dont have any other cable with me', 'lead'],
    ['theres only this one adapter', 'adapter'],
    ['no other dongle', 'adapter'],
    ['no other power supply to test with', 'supply'],
    ['I own only one battery', 'supply'],
    ['what handset? mine has none', 'handset'],
    ['it didnt come with a handset', 'handset'],
    ['multimeter is at work', 'meter'],
    ['wheres a normal person get a meter from? dont have one', 'meter'],
    ['havent got the right allen key', 'tool'],
    ['no screwdriver on me', 'tool'],
    ['i dont own a powered hub', 'hub'],
    ['this is my only computer', 'computer'],
    ['the other pc died last year so no', 'computer'],
    ['i dont have a smartphone', 'phone'],
    ['theres no internet at the dark site', 'internet'],
    ['left the spare cable at home', 'lead'],
    ['hand controller is broken and in the bin', 'handset'],
    ['no paddle here sorry, app only', 'handset'],
    ['Sorry I have not a meter for volts', 'meter'],
    ['have none to swap', 'spare'],
    ['got no spare', 'spare'],
    ['Only have the original lead', 'lead'],
    ['I have not a second converter', 'adapter'],
    ['nobody here with a laptop', 'computer'],
  ] as const)('“%s”: %s', (text, thing) => {
    expect([...thingsLacked(text)]).toContain(thing);
  });

  it.each([
    'the hand controller shows no text',
    'no light on the handset',
    'no power at the handset',
    'the adapter has no driver',
    'no computer sees the mount',
    'the other cable makes no difference',
    'another cable, same',
    'my second laptop doesnt connect either',
    'i have a meter but it reads nothing',
    'no change with the other lead',
    'the handset does not respond',
    'no response from hand controller',
    'the battery has no charge',
    'the cable has no damage',
    'i only get timeouts',
    'only the handset works',
    'the meter shows 12 volt',
    'no connection with the phone',
    'no errors on the laptop',
    'internet is slow',
    'i did not use the handset',
    'no arrows work on the handset',
    'borrowed a multimeter, 5.02 v',
    'the spare lead works!',
    'no difference on my wifes computer',
    'no voltage on the meter',
    'hub is gone, no drops',
  ])('“%s” tells of none', (text) => {
    expect([...thingsLacked(text)]).toEqual([]);
  });
});

describe('whether it is needed', () => {
  it.each([
    ['dont own a multimeter', 'Meter on DC volts, black probe on ground', true],
    ['no second cable here', 'With another cable known to carry data, does it work?', true],
    ['i have no other laptop', 'From another computer, does the mount connect?', true],
    ['nothing to swap it with', 'Swap only the cable', true],
    ['no second cable here', 'Which words stand on the screen right now?', false],
    ['dont own a multimeter', 'Pull the USB plug and put it back', false],
  ])('“%s” at “%s”: %s', (text, asked, isNeeded) => {
    expect(namesLacked(text, asked)).toBe(isNeeded);
  });
});
