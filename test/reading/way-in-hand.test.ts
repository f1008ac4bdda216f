/** Of several ways to the mount that a message names, the one in hand is read; one that is over, unused or well is not. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const model = shippedModel();

const pathIn = (text: string): string | undefined =>
  readText(model.reading, text).facts.find(({ what }) => what === 'path')?.answer;

// Messages as members type them; what each plainly says was labelled by hand before it was read.
const WAYS: readonly (readonly [string, string | undefined])[] = [
  ["The mount I borrow has bluetooth but I've not used that, I went with the serial lead.", 'serial-port'],
  ['usb worked, i wanted wifi, so fitted the module: now it does not appear in networks at all', undefined],
  ['fine by usb, over bluetooth nothing', 'bluetooth'],
  ['it works over wifi but not with the usb cable', 'usb-cable'],
  [
    'Last year I had problems with bluetooth, those are gone since I use a cable from the handset.',
    'through-controller',
  ],
  // The same words where the way is the one in hand still.
  ['bluetooth worked last month, now it does not connect', 'bluetooth'],
  ['I had trouble with the usb cable last night, the link drops', 'usb-cable'],
  ['all of this via the handset only, no pc', undefined],
];

describe('the way in hand', () => {
  it.each(WAYS)('“%s” is about %s', (text, way) => {
    expect(pathIn(text)).toBe(way);
  });
});

const told = (text: string): readonly string[] =>
  readText(model.reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

const NOT_TOLD: readonly (readonly [string, string])[] = [
  ['no, not yet tried another cable. the mount shows as COM3', 'tried-already.cable'],
  ['I plug the adapter in, windows makes its sound, COM3 is there', 'not-here.battery'],
  ['mini pc in the garden, by usb to the mount. RDP drops, not the mount', 'how-far.drops'],
  ['my pc has no serial port so i bought a usb-serial thing', 'how-far.not-seen'],
  ['I look at it over remote desktop from the warm room, the program says no reply', 'inside-another.inside'],
  ['RA graph is fine until 20 minutes past the meridian, then guiding runs away in dec', 'worked-before.changed'],
  ['RA graph is fine until 20 minutes past the meridian, then guiding runs away in dec', 'mount-does.wrong-way'],
  ['The laptop sees nothing. Phone finds it sometimes.', 'works-with-phone.works'],
];

const TOLD: readonly (readonly [string, string])[] = [
  ['it works on my desktop but not on the netbook outside', 'other-computer.works'],
  ['everything fine except guiding, the corrections do nothing', 'how-far.guiding'],
  ['When I connect from my tablet it works for a bit, then it is gone', 'system.phone'],
  ['olá, it is only in the USB 2 port of the windows notebook that the mount shows up', 'system.windows'],
];

describe('what is plainly said', () => {
  it.each(NOT_TOLD)('“%s” tells no %s', (text, fact) => {
    expect(told(text)).not.toContain(fact);
  });
  it.each(TOLD)('“%s” tells %s', (text, fact) => {
    expect(told(text)).toContain(fact);
  });
});
