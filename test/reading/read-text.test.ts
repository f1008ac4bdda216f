/** What a text is read as: facts, each with the words it came from. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

describe('a pasted message', () => {
  it('gives facts that quote it, and the system it can only come from', () => {
    // Linux kernel, drivers/usb/serial/bus.c and usb-serial.c: the line printed when a port is made of an adapter.
    const read = readText(reading, '[  963.837493] usb 1-2: USB serial converter now attached to ttyUSB0');
    expect(read.by).toBe('log');
    const fact = (what: string) => read.facts.find((one) => one.what === what);
    expect(fact('system')?.answer).toBe('linux');
    expect(fact('kernel-log')?.answer).toBe('attached');
    for (const { quote } of read.facts) expect(quote).toContain('attached to ttyUSB0');
  });

  it('tells every path it takes, a single one by its own title', () => {
    for (const text of ['the mount is on the house wifi', 'by bluetooth', 'usb cable to the motor board']) {
      const read = readText(reading, text);
      expect(
        read.understood.map(({ fact }) => fact.what),
        text,
      ).toContain('path');
    }
  });

  it('says nothing of a text that says nothing', () => {
    const read = readText(reading, 'thank you, that was the best view of the ring yet');
    expect(read).toMatchObject({ by: 'words', facts: [], suggested: [], understood: [], says: [] });
  });
});

describe('a log', () => {
  const answers = (text: string, by?: 'log' | 'picture'): Record<string, string> =>
    Object.fromEntries(readText(reading, text, by).facts.map(({ what, answer }) => [what, answer]));
  const ATTACHED = '[  963.8] usb 1-2: USB serial converter now attached to ttyUSB0';
  const GONE = '[ 1311.2] usbserial ttyUSB0: USB serial converter now disconnected from ttyUSB0';

  it('is read in order, and its last state holds', () => {
    expect(answers(`${ATTACHED}\n${GONE}`)).toMatchObject({ 'how-far': 'drops' });
    expect(answers(`${GONE}\n${ATTACHED}`)).toMatchObject({ 'kernel-log': 'attached' });
    expect(answers(`${GONE}\n${ATTACHED}`)['how-far']).toBeUndefined();
  });

  it('lets the line that says why count wherever it stands', () => {
    const service = "[  319.0] usb 1-2: usbfs: interface 0 claimed by usbserial while 'brltty' sets config #1";
    expect(answers([ATTACHED, service, GONE].join('\n'))['kernel-log']).toBe('taken');
  });

  // Microsoft Learn, Device Manager error messages (31) and System Error Codes (31, ERROR_GEN_FAILURE).
  it('takes a number only beside what it belongs to', () => {
    expect(answers('Windows cannot load the drivers. (Code 31)')['device-status']).toBe('damaged');
    expect(answers('Unknown error code 31')['device-status']).toBeUndefined();
    expect(answers('error at line 10065 of the log')['socket-opens']).toBeUndefined();
  });

  it('is read through the slips of a machine that read it from a picture', () => {
    expect(answers('usb l-2: USB seria1 converter now attached to ttyUSBO', 'picture')['kernel-log']).toBe('attached');
    expect(answers('usb usbl-port2: unab1e to enumerate USB device', 'picture')['kernel-log']).toBe('no-address');
  });
});

describe('any text', () => {
  const LONG = 1_000_000;
  it.each([
    ['one letter without end', 'a'.repeat(LONG)],
    ['brackets', '([{<'.repeat(LONG / 4)],
    ['one word again and again', 'not connect '.repeat(LONG / 12)],
    ['lines of a log', 'usb 1-2: USB disconnect, device number 5\n'.repeat(LONG / 41)],
    ['signs of no script', '\u{10FFFF}\u200d\ufeff'.repeat(LONG / 4)],
  ])('of a million characters (%s) is read and no slower for it', (_, text) => {
    const read = readText(reading, text);
    expect(read.facts.length).toBeLessThan(40);
    for (const { quote } of read.facts) expect(quote.length).toBeLessThanOrEqual(120);
  });
});

describe('what a text does not say', () => {
  const told = (text: string): readonly string[] =>
    readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

  it.each([
    // German: "die" is an article.
    ['Ein Verbindungsversuch ist fehlgeschlagen, da die Gegenstelle nicht richtig reagiert hat', 'how-far.drops'],
    ['USB Root Hub (USB 3.0) Properties > Power Management', 'hub.bus-hub'],
    ['Access serial port hardware: (disconnected)  - snap permissions', 'how-far.drops'],
    ['Other devices -> USB to UART Bridge Controller with a yellow triangle', 'path.controller-usb'],
    ['the driver is not for this chip', 'mac-approval.waiting'],
    [
      'Pinging 192.168.1.77 with 32 bytes of data:\nReply from 192.168.1.20: Destination host unreachable.',
      'ping.answers',
    ],
    ['device manager shows COM7 without yellow mark', 'port-appears.unknown'],
    ['I soldered my own serial lead from a phone plug', 'usb-cable.charge-only'],
    ['the red LED on the mount blinks slowly', 'power-light.steady'],
    ['/dev/cu.usbmodem shows', 'mac-tree.both'],
  ])('is not read of it: %s', (text, not) => {
    expect(told(text)).not.toContain(not);
  });

  it('is the system: a pasted line of one system tells which it is', () => {
    expect(told('generic converter now attached to ttyUSB0')).toContain('system.linux');
  });
});

describe('several things said at once', () => {
  const told = (text: string): readonly string[] =>
    readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

  it('leave the way to the mount that is told most surely, and nothing of another way', () => {
    const facts = told('The wifi signal here is weak. The mount hangs on a usb cable to the hand controller.');
    expect(facts).toContain('path.controller-usb');
    expect(facts).not.toContain('signal.weak');
  });

  it('leave the system that is named outright, not the one that a port would belong to', () => {
    expect(told('com ports are what my friend has in mind, this here is ubuntu')).toContain('system.linux');
  });

  it('count together where only both make sense of it', () => {
    expect(told('the scan stays empty')).not.toContain('how-far.search-empty');
    expect(told('by its address it connects. the scan stays empty')).toContain('how-far.search-empty');
    expect(told('by its address it connects')).not.toContain('how-far.search-empty');
  });

  it('are over where the words right after say so', () => {
    expect(told('the access denied is gone')).not.toContain('message.denied');
    expect(told('access denied, and my patience is gone')).toContain('message.denied');
  });

  it('mend a misspelt word to the nearest that is known', () => {
    // "responce" is two slips from "respond", one from "response".
    expect(told('handset says no responce 16')).toContain('controller-screen.motor-error');
  });
});

describe('words that are read again', () => {
  it('are the same reading while they were read lately, and of each way of reading its own', () => {
    const text = 'it connects and then drops';
    const read = readText(reading, text);
    expect(readText(reading, text)).toBe(read);
    expect(readText(reading, text, 'log').by).toBe('log');
    for (let i = 0; i < 100; i++) readText(reading, `M ${i}`);
    const anew = readText(reading, text);
    expect(anew).not.toBe(read);
    expect(anew).toEqual(read);
  });

  it('are not kept where a text is longer than what is read of it', () => {
    const text = 'it drops. '.repeat(1000);
    expect(readText(reading, text)).not.toBe(readText(reading, text));
  });
});
