/** What the collecting line prints (knowledge/connection/collecting.yaml) is read whole; the outputs are invented, in the tools' own layout. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

interface Printed {
  readonly name: string;
  readonly text: string;
  readonly told: readonly string[];
  readonly not: readonly string[];
}

const PRINTED: readonly Printed[] = [
  {
    name: 'Linux: outside the group, port there',
    text: [
      'Linux',
      'crw-rw---- 1 root dialout 188, 0 Nov 12 21:40 /dev/ttyUSB0',
      'my groups: plugdev ',
      'service ModemManager runs',
      'Bus 001 Device 004: ID 1234:5678 Example USB-Serial adapter',
      'wlan0            UP             192.168.4.20/24',
      '[ 2204.270620] usb 1-2: generic converter now attached to ttyUSB0',
    ].join('\n'),
    told: ['system.linux', 'port-appears.port', 'port-group.outside'],
    not: ['path.network', 'path.bridge-house-network'],
  },
  {
    name: 'Linux: no port at all',
    text: [
      'Linux',
      'no serial port',
      'my groups: ',
      'Bus 001 Device 003: ID 1234:0001 Example camera',
      'eth0             UP             192.168.1.20/24',
    ].join('\n'),
    told: ['system.linux', 'port-appears.nothing'],
    not: ['path.network'],
  },
  {
    name: 'Linux: port held by a program',
    text: [
      'Linux',
      'crw-rw---- 1 root dialout 188, 0 Nov 12 21:40 /dev/ttyUSB0',
      'my groups: dialout plugdev ',
      'port held by chart',
      'service brltty runs',
    ].join('\n'),
    told: ['system.linux', 'port-appears.port', 'port-group.member', 'port-holder.program'],
    not: ['port-group.outside'],
  },
  {
    name: 'Windows: code 28',
    text: [
      'Name                                 Status ConfigManagerErrorCode',
      '----                                 ------ ----------------------',
      'USB Serial Controller                Error                      28',
      'USB Root Hub (USB 3.0)               OK                          0',
      'Communications Port (COM1)           OK                          0',
      '',
      'ports: COM1',
      '',
      'InterfaceAlias IPAddress',
      '-------------- ---------',
      'Wi-Fi          192.168.4.21',
      'Loopback       127.0.0.1',
      '',
      'InterfaceAlias NetworkCategory',
      '-------------- ---------------',
      'Wi-Fi                   Public',
    ].join('\n'),
    told: ['system.windows', 'device-status.no-driver'],
    not: ['path.network', 'hub.bus-hub'],
  },
  {
    name: 'Windows: code 10',
    text: [
      'Name                       Status  ConfigManagerErrorCode',
      '----                       ------  ----------------------',
      'USB Serial Port (COM5)     Error                       10',
      'USB Root Hub               OK                           0',
      '',
      'ports: COM3 COM5',
    ].join('\n'),
    told: ['system.windows', 'device-status.cannot-start'],
    not: ['hub.bus-hub'],
  },
  {
    name: 'Windows: code 43, no port',
    text: [
      'Name                                          Status ConfigManagerErrorCode',
      '----                                          ------ ----------------------',
      'Unknown USB Device (Device Descriptor Failed) Error                      43',
      'ports: ',
    ].join('\n'),
    told: ['system.windows', 'port-appears.unknown'],
    not: ['port-appears.port'],
  },
  {
    name: 'Windows: all well',
    text: [
      'Name                       Status ConfigManagerErrorCode',
      '----                       ------ ----------------------',
      'USB Serial Port (COM4)     OK                          0',
      'USB Composite Device       OK                          0',
      'ports: COM4',
    ].join('\n'),
    told: ['system.windows', 'port-appears.port'],
    not: ['device-status.cannot-start', 'device-status.no-driver'],
  },
  {
    name: 'Windows: code 22',
    text: [
      'Name                       Status ConfigManagerErrorCode',
      '----                       ------ ----------------------',
      'USB Serial Port (COM4)     Error                      22',
      'ports: COM1',
    ].join('\n'),
    told: ['system.windows', 'device-status.disabled'],
    not: [],
  },
  {
    name: 'Windows: code 45',
    text: [
      'Name                       Status ConfigManagerErrorCode',
      '----                       ------ ----------------------',
      'USB Serial Port (COM4)     Unknown                    45',
      'ports: ',
    ].join('\n'),
    told: ['system.windows', 'device-status.not-there'],
    not: [],
  },
  {
    name: 'macOS: a driver waits',
    text: [
      'macOS 14.5',
      '/dev/cu.usbserial-110',
      '+-o Root  ',
      '+-o AppleT8103USBXHCI',
      '+-o USB-Serial Controller',
      '   1 [activated waiting for user]',
      'en0:',
      'inet 192.168.1.30',
    ].join('\n'),
    told: ['system.macos', 'port-appears.port', 'mac-approval.waiting'],
    not: ['path.network'],
  },
  {
    name: 'macOS: no port',
    text: [
      'macOS 14.5',
      'no serial port of a USB adapter',
      '+-o Root  ',
      '+-o USB2.0 Hub',
      '   1 [activated enabled]',
      'en0:',
      'inet 192.168.1.30',
    ].join('\n'),
    told: ['system.macos', 'port-appears.nothing'],
    not: ['path.network', 'mac-approval.waiting'],
  },
];

const toldBy = (text: string, by?: 'log'): readonly string[] =>
  readText(reading, text, by).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('what the collecting line prints', () => {
  it.each(PRINTED)('is read: $name', ({ text, told, not }) => {
    expect(toldBy(text)).toEqual(expect.arrayContaining([...told]));
    // Platforms may have folded its lines into one; nothing wrong is told then either.
    const folded = toldBy(text.replace(/\s+/gu, ' '), 'log');
    for (const one of not) {
      expect(toldBy(text)).not.toContain(one);
      expect(folded).not.toContain(one);
    }
  });
});
