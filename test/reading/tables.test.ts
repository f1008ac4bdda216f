/** Tables of systems' own tools, read row by row. The layouts are those of the tools' manuals; names and numbers are invented. */
import { describe, expect, it } from 'vitest';
import { amiss, everyWay, factsOf } from './made/make.js';

const INTERFACES = ['{a} UP 192.168.{n}.20/24\n{b} UP {other}.2/24'];
const BLOCKS = [
  '2: {a}: <BROADCAST,UP> mtu 1500\n    inet 192.168.{n}.20/24 scope global {a}\n3: {b}: <BROADCAST,UP> mtu 1500\n    inet {other}.2/24 scope global {b}',
  '{a}: flags=4163<UP> mtu 1500\n    inet 192.168.{n}.20 netmask 255.255.255.0\n{b}: flags=4163<UP> mtu 1500\n    inet {other}.2 netmask 255.255.255.0',
  'Ethernet adapter {a}:\n   IPv4 Address. . . . . : 192.168.{n}.20\nWireless LAN adapter {b}:\n   IPv4 Address. . . . . : {other}.2',
];
const NAMES = { a: ['eth0', 'enp3s0', 'en5'], b: ['wlan0', 'wlp2s0', 'en0'], n: ['1', '4', '178'] };

describe('two interfaces', () => {
  it('with numbers of one network are twins', () => {
    const texts = NAMES.n.flatMap((n) =>
      everyWay([...INTERFACES, ...BLOCKS], { a: NAMES.a, b: NAMES.b, n: [n], other: [`192.168.${n}`] }),
    );
    expect(amiss(texts, { read: ['twin-numbers.twins'] })).toEqual([]);
  });
  it('with numbers of two are not, nor is the loop or a container', () => {
    const texts = [
      ...everyWay([...INTERFACES, ...BLOCKS], { ...NAMES, other: ['10.0.0', '192.168.77'] }),
      ...everyWay(INTERFACES, { a: ['docker0', 'lo'], b: NAMES.b, n: ['4'], other: ['192.168.4'] }),
    ];
    expect(amiss(texts, { not: ['twin-numbers'] })).toEqual([]);
  });
});

describe('wireless', () => {
  const forms = ['yes:{name}:{percent}\nno:HomeNet:91', '    SSID : {name}\n    Signal : {percent}%'];
  it('is weak or strong by the network in use', () => {
    const name = ['SCOPE-1', 'Goto_Mount', 'HomeNet'];
    expect(amiss(everyWay(forms, { name, percent: ['8', '21', '39'] }), { read: ['signal.weak'] })).toEqual([]);
    expect(amiss(everyWay(forms, { name, percent: ['55', '70', '96'] }), { read: ['signal.strong'] })).toEqual([]);
  });
  it("is the mount's where its name says so", () => {
    const percent = ['20', '80'];
    const texts = everyWay(forms, { name: ['SCOPE-1', 'Goto_Mount'], percent });
    expect(amiss(texts, { read: ['joined-network.mounts'] })).toEqual([]);
    expect(amiss(everyWay(forms, { name: ['HomeNet', 'Attic'], percent }), { not: ['joined-network'] })).toEqual([]);
  });
});

describe('devices and ports', () => {
  it.each([
    [
      'Status Class FriendlyName\nError Ports USB-SERIAL (COM5)\nOK Ports Communications Port (COM1)',
      'port-appears.unknown',
    ],
    ['Status Class FriendlyName\nOK Ports Communications Port (COM1)', 'port-appears.nothing'],
    [
      '% ls /dev/cu.*\n/dev/cu.Bluetooth-Incoming-Port\t/dev/cu.debug-console\t/dev/cu.wlan-debug',
      'port-appears.nothing',
    ],
    [
      'Bus 001 Device 003: ID 8087:0a2a Example Bluetooth Device\nBus 001 Device 001: ID 1d6b:0002 Linux Foundation 2.0 root hub',
      'port-appears.nothing',
    ],
    ['$ ps aux | grep ttyUSB0\nravi 2210 0.3 1.1 chart --port /dev/ttyUSB0', 'port-holder.program'],
  ])('%s', (text, fact) => {
    const [check] = fact.split('.');
    expect(factsOf(text).filter((one) => one.startsWith(`${check}.`))).toEqual([fact]);
  });
  it.each([
    ['ravi 2211 0.0 0.0 grep --color=auto /dev/ttyUSB0', 'port-holder'],
    ['/dev/cu.Bluetooth-Incoming-Port\n/dev/cu.usbserial-10', 'port-appears.nothing'],
    [
      'Bus 001 Device 004: ID 1a86:7523 Example serial converter\nBus 001 Device 001: ID 1d6b:0002 Linux Foundation 2.0 root hub',
      'port-appears.nothing',
    ],
  ])('%s tells nothing of the kind', (text, fact) => {
    expect(factsOf(text).filter((one) => one.startsWith(fact))).toEqual([]);
  });
});
