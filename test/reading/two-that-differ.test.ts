/** Two figures, or two ways to the mount, that a member sets against each other. Texts are invented. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

const factsOf = (text: string): readonly string[] =>
  readText(reading, text).facts.map(({ what, answer }) => `${what}.${answer}`);

describe('what is set against another is read, and what only looks like it is not', () => {
  it.each([
    [
      "from the hand controller it goes to every star I ask for, from the laptop it won't",
      ['works-with-handset.finds'],
      [],
    ],
    ['handset alone is spot on with every target, the pc sends it astray', ['works-with-handset.finds'], []],
    ['with the handset I can drive it about, the laptop does nothing', ['works-with-handset.moves'], []],
    ['moves fine from the buttons on the keypad but not from the software', ['works-with-handset.moves'], []],
    ['modemmanager had hold of ttyUSB0', ['port-holder.service'], []],
    ['some braille thing called brltty grabs the port as soon as I plug in', ['port-holder.service'], []],
    ['turns out gpsd is sitting on the serial port', ['port-holder.service'], []],
    ['firmware update froze at 40 percent and that was it', ['update-ended.stopped'], []],
    ['the update of the hand controller got as far as 78% then the power went', ['update-ended.stopped'], []],
    ['flashing the mount stopped halfway when my laptop fell asleep', ['update-ended.stopped'], []],
    ['firmware update went to 100% and it said done', ['update-ended.well'], []],
    ["my daughter's tablet was connected to it the whole time", ['masters.more'], []],
    ['turned out the ipad indoors was still driving the mount', ['masters.more'], []],
    ['forgot the phone app was still steering it in the house', ['masters.more'], []],
    ['driver is at 115200, the mount wants 9600', ['port-settings.other-speed'], []],
    ['program uses 9600 baud but the handbook says 19200', ['port-settings.other-speed'], []],
    ['I have 57600 set and the hand controller talks 9600', ['port-settings.other-speed'], []],
    ['the box got .57 now, in the program I still have .23', ['bridge-entry.other-address'], []],
    [
      'the bridge is at 192.168.1.57 today, the program still points at 192.168.1.23',
      ['bridge-entry.other-address'],
      [],
    ],
    ["the mount's address changed to .40 and I had .31 typed in", ['bridge-entry.other-address'], []],
    ['sheet says port 4030, I have 4031 in the program', ['bridge-entry.other-port'], []],
    ['9600 or 19200, which does the manual say?', [], ['port-settings.other-speed']],
    ['the 9600 baud setting is what the manual says', [], ['port-settings.other-speed']],
    ["my wife's tablet has never been near it", [], ['masters.more']],
    ["could my wife's tablet be driving it?", [], ['masters.more']],
    ['the camera driver download stopped at 40 percent', [], ['update-ended']],
    ['battery was at 40 percent when the update was done', [], ['update-ended']],
    ['with the handset it never finds a target', [], ['works-with-handset.finds']],
    ['the printer is .57 now and I still have .23 in the printer settings', [], ['bridge-entry']],
    ['is modemmanager bad for this?', [], ['port-holder']],
    ['no brltty or modemmanager installed here', [], ['port-holder.service']],
    [
      'the driver was left on 57600 and the handbook asks 9600, no I mean the handbook says 9600',
      ['port-settings.other-speed'],
      [],
    ],
    ['software is set to 19200, controller should be 9600', ['port-settings.other-speed'], []],
    [
      'the bridge shows up as 192.168.4.17 now, the app still points to 192.168.4.9',
      ['bridge-entry.other-address'],
      [],
    ],
    ['manual gives port 11880 but my program uses 11881', ['bridge-entry.other-port'], []],
    ['handset firmware upload died at 20 percent', ['update-ended.stopped'], []],
    ["my husband's phone was still connected to it from the sofa", ['masters.more'], []],
    ['the modem manager thing had taken ttyUSB0', ['port-holder.service'], []],
    ['just the hand controller finds every star', ['works-with-handset.finds'], []],
    ['driver was at 115200, changed it to 9600 as the manual says', [], ['port-settings.other-speed']],
    ['is it 9600 in the driver, or 115200 as in the manual?', [], ['port-settings.other-speed']],
    ['my phone is .57 now and I still use .23 for the laptop', [], ['bridge-entry']],
    ['box is .57 now and I typed .57', [], ['bridge-entry']],
    ['the firmware update has not been done yet', [], ['update-ended']],
  ])('“%s”', (text, told, not) => {
    const facts = factsOf(text);
    for (const one of told) expect(facts).toContain(one);
    for (const one of not) expect(facts.filter((fact) => `${fact}.`.startsWith(`${one}.`))).toEqual([]);
  });
});
