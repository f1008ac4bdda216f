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
  ['usb worked, i wanted wifi, so fitted the module: now it does not appear in networks at all', 'network'],
  ['fine by usb, over bluetooth nothing', 'bluetooth'],
  ['it works over wifi but not with the usb cable', 'usb-cable'],
  [
    'Last year I had problems with bluetooth, those are gone since I use a cable from the handset.',
    'through-controller',
  ],
  [
    "if the mount were on wifi i'd try the phone, but it's on the usb of the handset and the pc says no response",
    'controller-usb',
  ],
  ["the mount's own app works over wifi, the other program does not", undefined],
  ["the pi is fine, mount is fine, it's the wifi between my house and the pi that stutters", undefined],
  ['my pi runs headless, via usb stick adapter to handset', 'controller-serial'],
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
  ["it's on the usb of the handset and the pc says no response", 'controller-screen.motor-error'],
  ["no error, no timeout, nothing in the log. it just doesn't move. mac mini", 'message.no-reply'],
  ["no error, no timeout, nothing in the log. it just doesn't move. mac mini", 'suite-log.nothing'],
  ['the camera keeps disconnecting but the mount is rock solid, usb3 hub, win11', 'how-far.drops'],
  ['I had no lights at first, that was the switch. now lights ok, ubuntu cannot open the port', 'how-far.no-light'],
  ['straight into the mini pc it works, in the hub mount not found', 'hub.straight'],
  ['his connects by wifi, mine by cable; his is fine, mine is not', 'other-cable.works'],
  [
    'new here. got my mount last week, win 11 laptop, cable to the hand controller, it says timed out',
    'changed-last.computer',
  ],
  ["My mate's mount does the same, drops on every slew. Mine doesn't connect at all.", 'when-drops.motors'],
  ["My mate's mount does the same, drops on every slew. Mine doesn't connect at all.", 'how-far.drops'],
  ['mac mini, the adapter shows up in system information but no cu. device in /dev', 'refused-where.up-now'],
  ['bluetooth pairing works on my ipad but the app says no mount found', 'works-with-phone.works'],
  ['The laptop sees nothing. Phone finds it sometimes.', 'works-with-phone.works'],
];

const TOLD: readonly (readonly [string, string])[] = [
  ['it works on my desktop but not on the netbook outside', 'other-computer.works'],
  ['bluetooth would not go on windows so i use android. it pairs, the app cannot connect', 'system.phone'],
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
