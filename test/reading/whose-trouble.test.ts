/** Whose trouble a text tells: what another device, another matter or a loose word says is not the mount's. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

type Case = readonly [name: string, text: string, told: readonly string[], not: readonly string[]];

const each = (cases: readonly Case[]): void => {
  it.each(cases)('%s', (_, text, told, not) => {
    const facts = factsOf(text);
    for (const one of told) expect(facts, text).toContain(one);
    for (const one of not)
      expect(
        facts.filter((fact) => `${fact}.`.startsWith(`${one}.`)),
        text,
      ).toEqual([]);
  });
};

describe("another device's trouble is not the mount's", () => {
  each([
    [
      'a group of the device list above the line',
      'Device Manager > Imaging devices\n  Office Scanner: This device cannot start. (Code 10)',
      ['system.windows'],
      ['device-status', 'port-appears'],
    ],
    [
      'a group on the line itself',
      'Sound, video and game controllers: Windows has stopped this device because it has reported problems. (Code 43)',
      [],
      ['device-status', 'port-appears', 'path'],
    ],
    [
      'the next group is read again',
      'Device Manager\nCameras\n  Front Camera\nOther devices\n  USB Serial\n  The drivers for this device are not installed. (Code 28)',
      ['device-status.no-driver'],
      [],
    ],
    [
      'a log of several devices',
      '21:40 focuser: move failed, USB read timeout\n21:41 mount: tracking',
      [],
      ['message', 'path'],
    ],
    [
      'the mount beside it is still read',
      '21:40 focuser: moved to 3200\n21:41 mount: no response from mount on COM4',
      ['message.no-reply', 'system.windows'],
      [],
    ],
    [
      "a log that bears the mount's name on its lines, and another's on the failed one",
      '21:04:11 weatherd: connection refused by station\n21:04:12 mount: slew complete, tracking',
      [],
      ['message', 'socket-opens', 'path'],
    ],
    [
      'a list of USB devices with a radio and no adapter',
      '$ lsusb\nBus 001 Device 003: ID 1234:0a2b Example Bluetooth radio\nBus 001 Device 001: ID 1d6b:0002 Linux Foundation 2.0 root hub',
      ['port-appears.nothing'],
      ['path'],
    ],
    [
      'another host than the mount',
      '64 bytes from 192.168.4.1: icmp_seq=1 ttl=255 time=3.1 ms\nping: fenwold.example: Name or service not known',
      ['ping.answers'],
      ['message'],
    ],
    ['a database of the own machine', 'psycopg: connection to 127.0.0.1:5432 refused (database)', [], ['message']],
    ['headphones', "bluetooth headset won't pair with my laptop", [], ['bt-listed', 'how-far']],
    [
      'a mouse that is paired beside a mount that is not listed',
      "my bluetooth keyboard is paired fine but the mount isn't in the list",
      ['bt-listed.not-listed'],
      ['bt-listed.paired'],
    ],
  ]);
});

describe('another matter than the link to the mount', () => {
  each([
    [
      'a file that a program may not write',
      "System.UnauthorizedAccessException: Access to the path 'D:\\Sky\\Catalogues\\own.db' is denied.",
      [],
      ['message'],
    ],
    [
      'a port is read as before',
      "UnauthorizedAccessException: Access to the path 'COM6' is denied.",
      ['message.denied'],
      [],
    ],
    [
      'a ping to the internet',
      'Pinging 9.9.9.9 with 32 bytes of data:\nRequest timed out.\nRequest timed out.\nPackets: Sent = 2, Received = 0, Lost = 2 (100% loss)',
      [],
      ['ping', 'path'],
    ],
    [
      'a ping to the bridge after one to the internet',
      'PING example.org (93.184.215.14) 56(84) bytes of data.\n64 bytes from 93.184.215.14: icmp_seq=1 ttl=56 time=9.1 ms\n' +
        'PING 192.168.4.1 (192.168.4.1) 56(84) bytes of data.\n4 packets transmitted, 0 received, 100% packet loss, time 3062ms',
      ['ping.silent'],
      [],
    ],
    [
      'the sandbox of another program',
      'audit: apparmor="DENIED" operation="open" profile="snap.reader.reader" name="/home/tamsin/.config/x" pid=88',
      ['system.linux'],
      ['package-kind', 'message'],
    ],
    [
      'a radio that has joined nothing yet',
      '4: wlan0: <NO-CARRIER,BROADCAST,MULTICAST,UP> mtu 1500 qdisc noqueue state DOWN',
      [],
      ['how-far'],
    ],
    ['a VPN that is off', 'Company VPN: not connected', ['vpn.none'], ['network-doubts']],
    ['a VPN that is on', 'Company VPN: connected to gateway 3', ['vpn.active'], []],
  ]);
});

describe('words near a thing are not the thing', () => {
  each([
    [
      'each time it moves',
      'the lamp on the mount flickers each time it moves and the link is gone',
      [],
      ['date-entries'],
    ],
    ['the clock that each time starts anew', 'the handset clock resets every time', ['date-entries.reset'], []],
    ['a season', 'the handset believes we are in winter time', ['zone-entries.summer-time'], ['site-entries']],
    ['a place', 'the handset thinks it is in Australia', ['site-entries.another-place'], []],
    ['switched off to test', 'I switched ours off to test, no change', [], ['worked-before']],
    ['switched to something new', 'we switched to a new router and since then nothing', ['worked-before.changed'], []],
    [
      'the local network refused',
      'the Mac asked for the local network and I pressed do not allow',
      ['local-network.refused'],
      ['mac-approval'],
    ],
    [
      'another program that works',
      'the other program connects on the same port',
      ['other-program.works'],
      ['tried-already'],
    ],
    ['the same gear as then', 'in spring it worked with the same lead and the same laptop', ['worked-before.same'], []],
    ['what a book says of some', 'the handbook says you might need 19200; how do I set that?', [], ['port-settings']],
    [
      'an empty list of ports',
      'ls /dev/cu.* gives nothing new after plugging in',
      ['port-appears.nothing'],
      ['message'],
    ],
  ]);
});

// Debian Wiki, SystemGroups; id(1) and groups(1): with a name they read the file, without one the session.
describe('the group on file and the group of the session', () => {
  each([
    ['outside', 'checked, I am not in dialout', ['port-group.outside'], ['message']],
    [
      'added, not logged out',
      'I have added myself to dialout but did not log out since',
      ['port-group.on-file-only'],
      [],
    ],
    [
      'file and session differ',
      '$ groups ravi\nravi : ravi dialout plugdev\n$ id -nG\nravi plugdev',
      ['port-group.on-file-only'],
      [],
    ],
    [
      'file and session agree',
      '$ groups ravi\nravi : ravi dialout plugdev\n$ id -nG\nravi dialout plugdev',
      ['port-group.member'],
      [],
    ],
  ]);
});

describe('where else it works', () => {
  each([
    ['a phone that reaches it', 'on its own network my tablet connects', ['works-with-phone.works'], []],
    ['a phone that does not', "the tablet doesn't get in", ['works-with-phone.fails'], []],
    ['at home', 'it was working at home and fails on the field', ['other-place.home'], []],
    ['nowhere', 'it does not work at home', [], ['other-place.home']],
    ['the first evening', 'unpacked today, first time connecting it', ['worked-before.first-time'], []],
  ]);
});
