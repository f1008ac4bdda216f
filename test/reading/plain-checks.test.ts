/** Plain answers to plain checks: what was looked at, moved, tried or closed, and what came of it. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('a plain answer is read', () => {
  it.each([
    ["I looked, the fuse isn't blown", 'fuse.whole'],
    ['fuse in the plug checked and okay', 'fuse.whole'],
    ['the driver box says "simulator"', 'mount-type.simulator'],
    ['it was set to demo all along', 'mount-type.simulator'],
    ['mount is fed from the lighter socket of the car', 'power-lead.thin'],
    ['six metres of thin wire from the battery', 'power-lead.thin'],
    ['short and thick power lead', 'power-lead.stout'],
    ['jiggled every plug, made no difference', 'wiggle.firm'],
    ['if I nudge the plug by the handset it connects again', 'wiggle.at-mount'],
    ['the lead between them is a crossed one', 'serial-lead.extra-piece'],
    ['link lost whenever the motors run', 'when-drops.motors'],
    ['my phone connects no problem, the pc times out', 'works-with-phone.works'],
    ['on the tablet it says cannot connect', 'works-with-phone.fails'],
    ["tried my husband's laptop too, same error", 'other-computer.fails'],
    ['fuser shows nothing for the port', 'port-holder.nobody'],
    ['$ sudo lsof /dev/ttyUSB0\n$ ', 'port-holder.nobody'],
    ['closed the guiding program and now it connects', 'port-holder.program'],
    ['cu.Bluetooth-Incoming-Port is all alone, only cu.Bluetooth in the list', 'port-appears.nothing'],
    ["the mount isn't among the paired devices", 'bt-listed.not-listed'],
    ['both the ethernet and the wifi are 192.168.4.x', 'twin-numbers.twins'],
    ['dmesg stays completely silent', 'kernel-log.no-line'],
    ['I took the .deb', 'package-kind.ordinary'],
    ['I press east and it goes west', 'east-key.west'],
    ['the handset is not dark, it shows the menu as usual', 'controller-screen.ready'],
  ])('%s', (text, fact) => {
    expect(factsOf(text)).toContain(fact);
  });
});

describe('what is denied, asked or of another matter is not', () => {
  it.each([
    ["haven't looked at the fuse yet", 'fuse'],
    ['would the fuse be fine if it looks shiny?', 'fuse'],
    ['with the simulator it works, with the mount it does not', 'mount-type'],
    ['the power lead is only a metre long and thick', 'power-lead.thin'],
    ['wiggled everything, nothing changes', 'when-drops'],
    ['do I need a null modem?', 'serial-lead'],
    ['there is a null modem in a drawer, not used', 'serial-lead'],
    ['my tablet works fine as a torch', 'works-with-phone'],
    ['paired devices: keyboard and mouse', 'bt-listed'],
    ['closed the other program, still nothing', 'port-holder'],
    ['the handset beeps when it has reached the star', 'controller-screen'],
    ['nothing odd in dmesg', 'kernel-log'],
    ['lsof /dev/ttyUSB0 shows nothing', 'port-appears'],
  ])('%s', (text, fact) => {
    expect(factsOf(text).filter((one) => `${one}.`.startsWith(`${fact}.`))).toEqual([]);
  });
});
