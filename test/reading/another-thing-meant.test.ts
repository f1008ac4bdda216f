/**
 * Words of the trade that mean another thing: a bridge of diodes, an adapter of the mains, a camera's lead, a mount that restarts, praise. Beside
 * each kind a line that means the thing itself. The sentences are ours, in the voices of members at night (invented; no source).
 */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

const toldOf = (text: string, what: string): readonly string[] =>
  readText(reading, text)
    .facts.filter((fact) => fact.what === what)
    .map(({ answer }) => answer);

/** Text, what is asked of it (a check, path, system or client), what is read of that (null: nothing). */
type Row = readonly [text: string, what: string, answer: string | null];

const WAYS: readonly Row[] = [
  ['My supply: transformer, bridge, capacitor. 17 V off load, the handset says voltage high', 'path', null],
  ['the bridge is on, the app does not connect', 'path', 'network'],
  ['it runs from a 12.0V 3A adapter and stalls at top speed', 'path', null],
  ['my 5 V TTL adapter goes into the board', 'path', 'board-cable'],
  ['it turns on, moves for 3 seconds, the power bank clicks off. repeat', 'path', null],
  ['found it: my camera usb cable is wrapping round the leg', 'path', null],
  ['the hand controller is wired to the laptop with one of those USB to serial leads', 'path', 'controller-serial'],
  ['over serial, macOS 14, handset route', 'path', 'through-controller'],
  ['By cable to the motor, the direct one. windows 11', 'path', 'board-cable'],
  ['the USB cable goes direct in his motor board', 'path', 'board-cable'],
  ['It is plugged into the square-ish port on the mount with a USB lead', 'path', 'built-in-usb'],
  ['My mount make wifi, I see it with my telephone', 'path', 'bridge-own-network'],
  ['mount is on our home wifi, it is not found', 'path', 'bridge-house-network'],
  ['it wont list bluetooth without location', 'path', 'bluetooth'],
  ['the mount is by cable ethernet direct in the computer, it times out', 'path', 'network'],
  ['a network cable goes from the adapter to the handset', 'path', 'through-controller'],
];

const SYSTEMS: readonly Row[] = [
  ['On my Linux laptop it says denied. Under my old Windows computer there was never such a thing', 'system', 'linux'],
  ['the small linux computer on the mount, I ssh from the mac, times out', 'system', 'linux'],
  ['my old windows 7 laptop does not see the mount', 'system', 'windows'],
];

const HANDSET: readonly Row[] = [
  ['it goes to places two fists to the right. using just the handset', 'client', 'none'],
  ['everything is 50 minutes off. Only got the handset.', 'client', 'none'],
  ['tracking is too fast, stars trail the other way. handset', 'client', 'none'],
  ['the laptop does not connect. handset', 'client', null],
  ['only the handset works, the laptop does not connect', 'client', null],
  ['can I talk to the mount without handset, e.g. straight into the mount?', 'not-here', null],
];

const REST: readonly Row[] = [
  ['In the hand control I put latitude 23 but where I put the S? I don’t found it', 'message', null],
  ['When I close the remote desktop, after about 20 minutes the connection is cut', 'when-drops', null],
  ['When I close the lid, after some minutes the connection is lost', 'when-drops', 'after-sleep'],
  ['MOUNT DEAD. NO LIGHT. SAME BATTERY RUNS MY DEW HEATER FINE. WORKED LAST SATURDAY.', 'worked-before', null],
  ['it worked last Saturday and I changed nothing since, now no light', 'worked-before', 'same'],
  ['Driver says timeout. It is at "Choose your time zone"', 'controller-screen', 'question'],
  ['Driver says timeout. The handset is at its main menu', 'controller-screen', 'ready'],
  [
    'Ports (COM & LPT) Communications Port (COM1) Standard Serial over Bluetooth link (COM3). With the lead out: exactly the same',
    'port-appears',
    'nothing',
  ],
  [
    'usb-serial ttyUSB0: generic converter now disconnected from ttyUSB0\nusb-serial generic converter now attached to ttyUSB1',
    'kernel-log',
    'cycles',
  ],
  ['rebooted the mount twice, same, no reply', 'tried-already', 'mount-restart'],
  ['rebooted the laptop twice, same, no reply', 'tried-already', 'restart'],
  ['Swapped the two motor cables over, the fault stayed with the motor', 'tried-already', null],
  ['I get it every 30 s. It is the heater: disconnecting it cures it', 'how-far', null],
  ['no laptop because the baby was sick on it, it lands elsewhere', 'other-radio', null],
  ['we have no baby monitor on, it drops', 'other-radio', 'none'],
  ['when I move it by hand with clutches loosened, the app shows nothing changing', 'clutches', null],
  ['I can push the bar round by hand with the lever tight', 'clutches', 'slips'],
  ['It points perfectly, tracks like a dream. I only want it to talk to my phone', 'miss-shape', null],
  ['dropped the hand controller, screen cracked, still lights. up arrow stuck', 'controller-screen', null],
  ['dec clutch lever came off in my hand. still moves tho', 'clutches', null],
  ['the port is in use, the guider and the planetarium are all pointing at COM7', 'port-holder', 'program'],
  ['the mount tracks like a dream for ten minutes and then drifts off', 'miss-shape', 'drifting'],
];

describe.each([
  ['the way to the mount', WAYS],
  ['the system', SYSTEMS],
  ['no computer', HANDSET],
  ['what happens and what was tried', REST],
])('%s', (_, rows) => {
  it.each(rows)('%s: %s is %s', (text, what, answer) => {
    expect(toldOf(text, what)).toEqual(answer === null ? [] : [answer]);
  });
});
