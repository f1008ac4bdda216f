/** What members say by the way: what they tried and what came of it, what works, what changed, what feeds it, what a screen shows. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

/** All invented, as many strangers would type them, and written before the vocabulary was: what of each is heard today. */
const TOLD: readonly (readonly [line: string, tells: readonly string[]])[] = [
  [
    'tried her laptop, tried my old one, same cable both times and both connect. only the new one wont. win 11',
    ['other-computer.works', 'system.windows'],
  ],
  [
    'Drops as soon as I plug the charger into the laptop. On battery it sat there connected from 7 till midnight.',
    ['how-far.drops'],
  ],
  [
    'swapped usb lead twice, swapped the adapter, rebooted, reinstalled driver. still code 10',
    [
      'other-cable.same',
      'other-adapter.same',
      'after-restart.same',
      'tried-already.cable',
      'tried-already.adapter',
      'tried-already.restart',
      'tried-already.driver',
      'device-status.cannot-start',
    ],
  ],
  [
    'My phone sees the mount right away and drives it. The tablet does not, both android both same app',
    ['works-with-phone.works', 'system.phone'],
  ],
  [
    'It has worked for two years. On Sunday I changed the router because the old one died. Since Sunday the mount is not in any list',
    ['changed-last.network', 'worked-before.changed'],
  ],
  [
    'good evening, in the guest room everything functions, in the garden nothing, same laptop same cables, only the power is other: inside the power supply, outside the car battery',
    ['other-place.home'],
  ],
  [
    'the pc in the observatory connects to COM3 no problem, my laptop on the same cable gives access denied',
    ['other-computer.works', 'message.denied'],
  ],
  [
    'Handset works perfect, goto spot on, tracking fine. From laptop: "no response from mount". USB adapter with blinking light.',
    ['message.no-reply'],
  ],
  [
    'after the firmware update of the hand controller the laptop cant talk to it anymore. keypad itself is fine and I can slew with it',
    ['changed-last.firmware', 'works-with-handset.moves'],
  ],
  [
    "Without the hub it is stable. With the hub, drops every ten mins. hub has no power brick, it's just one of those little 4 port things",
    ['hub.bus-hub', 'how-far.drops', 'when-drops.minutes'],
  ],
  ["I don't use a hub. Straight from the mount into the laptop, 2 m cable", ['hub.straight', 'cable-length.short']],
  [
    'runs off a 7Ah battery and at the end of the evening when the battery reads 11.4 the mount starts doing silly things',
    ['battery-volts.low'],
  ],
  [
    'bought a 12v 2a supply, the manual asks for 4 amps. is that my problem? handset goes dark on slews',
    ['supply-amps.too-few'],
  ],
  [
    'Since I put the new heavier camera on, dec stalls. With the old camera never a problem.',
    ['changed-last.device', 'worked-before.changed'],
  ],
  ['since the clocks changed on sunday everything lands one hour off', ['changed-last.season', 'miss.one-hour']],
  [
    'my nephew borrowed the mount for a week and since he brought it back goto is way off',
    ['changed-last.handled', 'worked-before.changed'],
  ],
  [
    'no matter which program I use, same thing: it connects, I see coordinates, but slew does nothing. handset slews fine',
    ['works-with-handset.moves', 'arrow-keys.both', 'how-far.no-move'],
  ],
  ['terminal gets the version string back, so cable is ok. the planetarium says timeout', ['message.no-reply']],
  ['ping answers with no loss, 2 ms. the program still says it can not find the mount', ['ping.answers']],
  [
    'i get about half of the pings back. the bridge is 20 m away behind a brick wall',
    ['ping.patchy', 'network-doubts.far'],
  ],
  ['laptop connects by the kitchen window, not by the pier. pier is maybe 25 meters from router', ['other-place.home']],
  [
    'the display says BOOT LOADER and nothing else since the update failed at 60 percent',
    ['controller-screen.update', 'update-ended.stopped', 'changed-last.firmware'],
  ],
  [
    'Handset shows "Both axes no response" straight after switch on, motors not humming',
    ['controller-screen.motor-error'],
  ],
  ['display just shows black squares. keys beep though', ['controller-screen.sluggish']],
  ['I have no computer at all, only the hand box, and it says no response 16', ['controller-screen.motor-error']],
  [
    'works on linux, on windows on the same machine it says access denied',
    ['system.windows', 'message.denied', 'other-place.other-system'],
  ],
  ['with the same cable on windows it works, on this ubuntu box ttyUSB0 shows up and vanishes', ['system.linux']],
  [
    'chrome book user here. the android app installs ok but finds no mount. my phone finds it straight away',
    ['works-with-phone.works'],
  ],
  [
    'Moved the whole thing from the shed to the new pier and now its 40 degrees off on the first star. In the shed it was fine for years',
    ['changed-last.place', 'worked-before.changed'],
  ],
  [
    'I\'ve tried: other USB port, other cable, another laptop. All the same, "device not recognised"',
    [
      'other-usb-socket.same',
      'other-cable.same',
      'other-computer.fails',
      'tried-already.socket',
      'tried-already.cable',
      'tried-already.computer',
    ],
  ],
  [
    'hub swapped for a powered one. no change. still loses the mount whenever the camera downloads',
    ['when-drops.device', 'how-far.drops'],
  ],
  [
    "it's only in the cold. at home on the desk 20 degrees all evening no trouble, in the field at minus 8 handset goes slow and display fades",
    ['when-drops.weather', 'other-place.home', 'controller-screen.sluggish'],
  ],
  [
    'nothing changed. same laptop same cable same field as last month when it all went well',
    ['worked-before.same', 'changed-last.nothing'],
  ],
  [
    "The club's laptop drives my mount without any problem, so it must be mine. Mine: Windows 10, adapter shows as COM7 with a yellow sign",
    ['other-computer.works', 'system.windows'],
  ],
  [
    'what i see on the hand controller: "Scope parked. Unpark? yes no". from the pc nothing moves',
    ['park-state.parked'],
  ],
  ['I took the camera off the hub and since then not one drop in two nights', ['other-place.alone']],
  [
    'Bonjour, the mount do not respond to PC since I have install the new version of program. Before with version 5 all was good',
    ['worked-before.changed'],
  ],
  [
    'hola, con el mando todo bien but with the computer no reply, i use adaptor usb serie and win 7',
    ['message.no-reply', 'system.windows'],
  ],
  [
    'I have test with the cable from my colleague. With his is going, with mine not. So cable broken?',
    ['other-cable.works'],
  ],
  [
    'ich habe another power supply tested, is the same, resets when goto start',
    ['other-supply.same', 'when-drops.motors', 'tried-already.supply'],
  ],
  [
    'So I finally got round to replacing the belt last weekend, greased everything, put it all back together, and now the RA axis makes a grinding noise that was never there before',
    ['changed-last.handled', 'gear-sound.grates'],
  ],
  [
    'was fine tuesday. wednesday windows did one of its overnight updates. thursday no com port. coincidence?',
    ['changed-last.update', 'worked-before.changed', 'system.windows'],
  ],
  ['the wifi of the mount reaches the patio (3 m) fine, at the shed (15 m) one bar and it stutters', ['signal.weak']],
  ['with mobile data off the phone connects. with it on, never.', ['without-mobile-data.works']],
  ['i switched off the firewall for a minute and yes it connects', ['firewall.blocked']],
  ['Turned off defender firewall, no difference. vpn isnt installed on this pc', ['vpn.none', 'system.windows']],
  [
    'works if i start the imaging program first and then the planetarium. other way round second one says port busy',
    ['message.denied'],
  ],
  [
    'I can slew from the planetarium but the guiding program says the same port is in use',
    ['other-program.works', 'message.denied'],
  ],
  [
    'Cable is 10 m usb with an active repeater in the middle. with the 1.5m one that came in the box no dropouts at all',
    ['cable-length.long-usb'],
  ],
  ['the lead came with an old modem i think, plugs fit. handset on, pc gets nothing', ['serial-lead.look-alike']],
  ['Made the cable from an old network cable and a nine pin plug', ['lead-from.made']],
  [
    'If I wait a minute after switching the mount on before pressing connect, it connects. straight away: timeout',
    ['message.no-reply'],
  ],
  [
    'mount beeps and restarts itself every time the dew heaters kick in. All on one battery',
    ['when-drops.device', 'separate-supplies.one'],
  ],
  [
    'i use the cigarette lighter in the car, mount on a 5m extension of that. at slew the red light goes dim',
    ['power-lead.thin', 'power-light.dips'],
  ],
  [
    'power led is solid red, handset lit, arrows move both axes. computer though... "no device found"',
    ['power-light.steady', 'arrow-keys.both', 'message.not-found', 'works-with-handset.moves'],
  ],
  [
    'My mate set it up the same way at the star party and for him it works, for me same evening no. Laptop mine in both cases',
    ['other-place.other-person'],
  ],
  ['when i use my hotspot instead of the house wifi both find each other', ['other-place.other-network']],
  [
    'Stepped on the usb plug last night, bent it. bent it back and pc says usb device not recognised',
    ['port-appears.unknown', 'changed-last.handled'],
  ],
  [
    'Dropped the handset on concrete on friday. screen still on, but the left key is dead now',
    ['changed-last.handled'],
  ],
  [
    'Laptop updated to sonoma. before that the cu.usbserial was there, after it isnt',
    ['changed-last.update', 'worked-before.changed', 'system.macos'],
  ],
  [
    'mac mini m1, the adapter shows in system information but there is no /dev/cu entry',
    ['system.macos', 'mac-tree.usb-only'],
  ],
  [
    'it used to be a different usb port. i moved it to the front socket when i tidied the desk and since then nothing',
    ['changed-last.socket', 'worked-before.changed'],
  ],
  ['other things work on that supply, phone charger and so on, so its not dead', ['supply-live.live']],
  [
    'Meter on the plug: 12.7 idle, 12.5 slewing. Fuse is good. Light on. Handset dead.',
    ['fuse.whole', 'power-light.steady', 'controller-screen.dark'],
  ],
  ['the fuse in the lighter plug was blown, new one blows at once too', ['fuse.blown']],
  ["iphone 12 and ipad both connect, my husband's samsung doesn't, says no mount on network", ['system.phone']],
  [
    'Its a 32 bit driver and my new capture prog is 64. old prog (32) still connects',
    ['bits.differ', 'other-program.works'],
  ],
  ['old version 2.1 of the app connects. the new 3.0 crashes when I press connect', ['other-program.works']],
  ['Simulator works in the same program, real driver says "failed to open port"', ['platform-others.open']],
  [
    'A friend lent me his adapter and his is working at once. mine is a noname one from the flea market',
    ['other-adapter.works'],
  ],
  [
    'i had to send it in for repair, came back monday, new board inside they said, now program says wrong protocol',
    ['changed-last.handled', 'message.odd-reply'],
  ],
  [
    'moved from a desktop to a raspberry pi 4 last week, desktop still works, pi says permission denied on /dev/ttyACM0',
    ['system.linux', 'changed-last.computer', 'worked-before.changed', 'other-computer.works', 'message.denied'],
  ],
  ['in the lounge it worked, carried it out, wont work outside, carried in again works again', ['other-place.home']],
  [
    'Both clutches are tight, balance is good too, counterweight where it always is',
    ['clutches.firm', 'balance.balanced'],
  ],
  [
    "I did restart both. mount off for a full minute, laptop rebooted. Same story, sits at 'connecting'",
    ['after-restart.same', 'tried-already.restart'],
  ],
  [
    'Only RA moves from the pc. From the hand controller both axes are fine',
    ['mount-does.one-axis', 'arrow-keys.both', 'works-with-handset.moves'],
  ],
  [
    'ok here is what i know. red led on. handset menu comes up. planetarium: connected!. click slew: nothing. click again: nothing. handset arrows: moves',
    [
      'power-light.steady',
      'controller-screen.ready',
      'works-with-handset.moves',
      'arrow-keys.both',
      'message.connects',
    ],
  ],
  [
    'router lists it as 192.168.1.43, before it was .40 and the program still has .40 in it',
    ['bridge-entry.other-address'],
  ],
  ["someone else's tablet was on the mount wifi at the same time, when she left mine connected", ['masters.more']],
  [
    'The polar scope has been set properly this evening, checked by drift too. Goto still ten degrees off to the east',
    ['miss.east-west'],
  ],
  ['handset has firmware 4.03, the program wants 4.21 at least', ['controller-set-up.older']],
  [
    'Mount talks fine at 9600 in the terminal. in the program it is 115200 i see now, is that it?',
    ['other-program.works'],
  ],
  [
    'first light tonight! never connected before, brand new everything, windows 11 laptop, nothing in device manager when i plug in',
    ['worked-before.first-time', 'changed-last.never-worked', 'system.windows', 'port-appears.nothing'],
  ],
  [
    'it was running all summer with this exact setup. took it out of the box today after winter, no light at all',
    ['how-far.no-light', 'power-light.off'],
  ],
  [
    'Wiggling the round plug at the mount makes it lose connection, at the laptop end I can wiggle all I want',
    ['wiggle.at-mount', 'when-drops.touched', 'how-far.drops'],
  ],
  [
    'every saturday at the old quarry it fails to find satellites for the gps, everywhere else gps is fine in a min',
    ['when-drops.one-place'],
  ],
  [
    'dads laptop connects right away, mine with the identical cable just says no reply',
    ['other-computer.works', 'message.no-reply'],
  ],
  ['both of my pcs give the same timeout', ['message.no-reply']],
  ['on the raspberry it ran fine, on the mini pc: access denied', ['other-computer.works', 'message.denied']],
  ['new cable bought, no change at all, still no com port', ['other-cable.same']],
  ['put a different usb adapter in and bingo it talks', ['other-adapter.works']],
  ['my old phone finds the mount, the new one never does', ['works-with-phone.works']],
  [
    'indoors by the router all fine, on the terrace it loses the link every 5 minutes',
    ['other-place.home', 'how-far.drops'],
  ],
  ['camera unplugged = stable all night. camera plugged in = drops', ['other-place.alone', 'when-drops.device']],
  [
    'since my cousin had the mount for the summer the goto is off by ten degrees',
    ['changed-last.handled', 'worked-before.changed'],
  ],
  ['handset fell off the table on the patio, now left and right do nothing', ['changed-last.handled']],
  ['everything is plugged into a cheap hub without power supply', ['hub.bus-hub']],
  ['the hub has its own mains adapter so that is not it', ['hub.straight']],
  ['screen of the keypad shows weird signs and is very slow in this cold', ['controller-screen.sluggish']],
  ['keypad says: no response from axes', ['controller-screen.motor-error']],
  ['mount camera and laptop all from one leisure battery', ['separate-supplies.one']],
  ['the lead is from an old router, it fits in the socket', ['serial-lead.look-alike']],
  ['simulator connects ok in that program, the mount driver does not', ['platform-others.open']],
  ['other stuff on that battery works, my lamp for example', ['supply-live.live']],
  ['program is 64 bit, the driver is only 32 bit', ['bits.differ']],
  ['controller has version 4.10, program wants 4.22 or newer', ['controller-set-up.older']],
  ['everywhere else it works, only at the club site it drops', ['when-drops.one-place']],
  ['antivirus turned off and it connects at once', ['firewall.blocked']],
  ['terminal shows the answer of the mount. chart program says no device', ['other-program.works']],
  ['tried another usb hole and two other leads, same result', ['other-usb-socket.same', 'other-cable.same']],
  ['restarted windows, no luck', ['after-restart.same', 'system.windows', 'tried-already.restart']],
  [
    'from the handset all four directions work, from the pc nothing moves',
    ['works-with-handset.moves', 'arrow-keys.both'],
  ],
];

describe('what is told by the way', () => {
  it.each(TOLD)('%s', (line, tells) => {
    const told = readText(reading, line).facts.flatMap(({ what, answer, or = [] }) =>
      [answer, ...or].map((one) => `${what}.${one}`),
    );
    expect(told).toEqual(expect.arrayContaining([...tells]));
  });
});
