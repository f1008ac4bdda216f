/** Which thing a length, a code, an opening or a holder belongs to. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('what is told of one thing is not taken for another', () => {
  it.each([
    [
      "there's a yellow triangle on it and the status says code 10",
      ['device-status.cannot-start'],
      ['device-status.no-driver'],
    ],
    ['yellow exclamation mark in device manager: code 43', ['device-status.cannot-start'], ['device-status.no-driver']],
    [
      'under other devices with a yellow bang, Code 52 when I look at properties',
      ['device-status.blocked'],
      ['device-status.no-driver'],
    ],
    [
      'yellow mark next to the usb serial thing, it says code 22',
      ['device-status.disabled'],
      ['device-status.no-driver'],
    ],
    ['12v cable from the battery is 2 metres, data side goes by wifi', [], ['cable-length']],
    ['mains lead is 3 m and the power brick sits on the grass', [], ['cable-length']],
    ['dew heater cable about 2 m', [], ['cable-length']],
    ["it's on the car lighter socket with a long thin lead", ['power-lead.thin'], []],
    ['since I opened the laptop again the port is gone', [], ['changed-last.handled']],
    ['after opening the program twice it says port busy', [], ['changed-last.handled']],
    ['after opening the observatory roof it connects and then drops', [], ['changed-last.handled']],
    ['lid shut, after opening it again nothing', [], ['changed-last.handled']],
    ["the vpn from work stays on, I can't switch it off", [], ['vpn.none']],
    ['vpn runs all the time, not allowed to quit it', ['vpn.active'], ['vpn.none']],
    ['our IT forces a vpn that I cannot turn off', [], ['vpn.none']],
    ['no vpn on this machine', ['vpn.none'], []],
    ['vpn is off', ['vpn.none'], []],
    ['changed the usb cable for another one and bingo it connects', ['other-cable.works'], ['tried-already.cable']],
    ['put a different usb lead in and there it was, COM6', [], ['tried-already.cable']],
    ['swapped the cable, hooray it works now', ['other-cable.works'], ['tried-already.cable']],
    ["swapped the cable and it still won't talk", ['tried-already.cable'], ['other-cable.works']],
    ['what would I look for in device manager? I have no windows machine', [], ['system']],
    ["I don't have a mac, so what does the system report matter", [], ['system']],
    ["I don't own a raspberry pi or any linux box", [], ['system']],
    ['the program says "access denied" and the handbook says nothing about it', ['message.denied'], []],
    [
      'COMMAND PID USER FD TYPE DEVICE SIZE/OFF NODE NAME ModemMana 644 root 11u CHR 188,0 0t0 611 /dev/ttyUSB0',
      ['port-holder.service'],
      ['port-holder.program'],
    ],
    ['brltty 733 root 9u CHR 188,0 0t0 611 /dev/ttyUSB0', ['port-holder.service'], ['port-holder.program']],
    ['pointer2 733 ravi 9u CHR 188,0 0t0 611 /dev/ttyUSB0', ['port-holder.program'], []],
    ['gpsd 512 nobody 8u CHR 188,1 0t0 600 /dev/ttyUSB1', ['port-holder.service'], []],
    ['/dev/ttyUSB0: root 512 F.... ModemManager', ['port-holder.service'], ['port-holder.program']],
    ['Zeitüberschreitung der Anforderung. bekomme ich immer beim ping', ['ping.silent'], ['socket-opens']],
    ['ping gives me Request timed out. four times', ['ping.silent'], ['socket-opens']],
    [
      'yellow warning triangle beside the com port, status tab has code 43 in it',
      ['device-status.cannot-start'],
      ['device-status.no-driver'],
    ],
    ['the lighter lead is 4 m, usb hangs off the pier', [], ['cable-length']],
    ['12 V supply lead 2 m long', [], ['cable-length']],
    ['usb cable is 2 m, mains brick under the tripod', ['cable-length.short'], []],
    ['after opening the roof the mount drops', [], ['changed-last']],
    ['since they opened the gearbox it slips', ['changed-last.handled'], []],
    ['the vpn on it cannot be switched off by me', ['vpn.active'], ['vpn.none']],
    ["we don't use a vpn here", ['vpn.none'], []],
    [
      'replaced the serial lead with one from the club and hurray, it answers',
      ['other-cable.works'],
      ['tried-already.cable'],
    ],
    ['put another usb cable on it and voila', ['other-cable.works'], ['tried-already.cable']],
    ['swapped the usb lead twice and no change', ['tried-already.cable'], ['other-cable.works']],
    ['I have no linux box, what does lsusb print?', [], ['system.linux']],
    ["how would device manager look? I don't use windows", [], ['system.windows']],
    ["ubuntu here, I don't have windows", ['system.linux'], []],
    ['ModemMana 702 root 11u CHR 166,0 0t0 611 /dev/ttyACM0', ['port-holder.service'], ['port-holder.program']],
    ['python3 733 ravi 9u CHR 188,0 0t0 611 /dev/ttyUSB0', ['port-holder.program'], []],
  ])('“%s”', (text, told, not) => {
    const facts = factsOf(text);
    for (const one of told) expect(facts).toContain(one);
    for (const one of not) expect(facts.filter((fact) => `${fact}.`.startsWith(`${one}.`))).toEqual([]);
  });
});
