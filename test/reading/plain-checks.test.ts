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
    ['i tried: another usb port, other lead, restart. no change', 'tried-already.restart'],
    ["the adapter isn't seen by my partner's computer either", 'other-computer.fails'],
    ['If I shut the lid for a while the connection is dead', 'when-drops.after-sleep'],
    ['nothing. totally dead, no lamp', 'how-far.no-light'],
    ['the driver list has two entries that look nearly identical', 'driver-list.two-alike'],
    ['says cannot open com5 file not found', 'message.not-found'],
    ['full bars beside the bridge but indoors in the kitchen it drops', 'signal.weak'],
    ['laptop and phone are both on the mounts own wifi', 'joined-network.mounts'],
    ["swapped the adapter, now it's fine", 'other-adapter.works'],
    ['a 3 m cable plus a 5 m extension', 'cable-length.long-usb'],
    ["the laptop's bluetooth doesn't list the mount", 'bt-listed.not-listed'],
    ['my program only goes up to COM8', 'port-match.not-offered'],
    ['macOS asked to find devices on my local network and I clicked deny', 'local-network.refused'],
    ['it sits there thinking and then gives up', 'message.no-reply'],
    ['two laptops, on the arch one it just works', 'other-computer.works'],
    ['upgraded to 11 three weeks ago', 'changed-last.update'],
    ['only on humid nights', 'when-drops.weather'],
    ['the pc went to sleep while I was inside and the port is gone', 'when-drops.after-sleep'],
    ['baud, parity: all as the manual says', 'port-settings.match'],
    ['ask for something west and it goes just as far east', 'miss.mirrored'],
    ["the keys don't react", 'arrow-keys.none'],
    ['handset letters are faint', 'controller-screen.sluggish'],
    ['tapping on the plug makes the led go off', 'power-touch.flickers'],
    ['a yellow mark is next to the usb serial thing', 'port-appears.unknown'],
    ['thrown off the wifi of the mount', 'how-far.drops'],
    ['brand new lead, same error', 'other-cable.same'],
    ['we tried his power brick and it behaves', 'other-supply.works'],
    ['the program crashes as soon as I hit connect', 'how-far.no-connect'],
    ['ping 4 ms and sometimes two seconds', 'ping.patchy'],
    ['system report shows the adapter but nothing in /dev', 'mac-tree.usb-only'],
    ['% ping 192.168.4.1\nping: sendto: No route to host\nRequest timeout for icmp_seq 0', 'ping.unreachable'],
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
    ["The printer says it's offline and access denied", 'message'],
    ['12 V from a buck converter', 'path'],
    ['the pc beeps when I plug it in', 'handset-shows'],
    ['I raised the timeout to 5 seconds', 'message'],
    ["I don't see why it should matter", 'how-far'],
    ['can’t see the mount from the house', 'how-far'],
    ['with a 1 m cable it is fine', 'cable-length'],
    ['outgoing and incoming com port are listed', 'bt-port'],
    ['makes the lamp go off', 'how-far'],
    ['Mount ignores me: request timed out', 'how-far.no-move'],
    ['the driver is 64 bit, not sure about the program', 'bits'],
    ['the program says the driver is not installed', 'adapter-driver'],
    ['COM5 disappeared when I slewed', 'port-appears'],
    ['is that the cable or the router?', 'path'],
    ["my partner's laptop works for her office stuff", 'other-computer'],
    ['it is dead quiet here tonight', 'how-far'],
    ['the laptop goes to sleep when I close it, is that a problem?', 'when-drops'],
    ['the screen is dim to save my night vision', 'controller-screen'],
    ['new lead out of the box, same error', 'changed-last'],
    ['when I hit goto the mount stays put', 'feet'],
    ["swapped the cable, now it's fine", 'tried-already'],
    ['if I close the lid, will it drop?', 'how-far'],
    ['if I close the lid, will it drop?', 'when-drops'],
    ['Status Class FriendlyName\nUnknown Ports USB Serial Port (COM6)', 'port-appears'],
  ])('%s', (text, fact) => {
    expect(factsOf(text).filter((one) => `${one}.`.startsWith(`${fact}.`))).toEqual([]);
  });
});
