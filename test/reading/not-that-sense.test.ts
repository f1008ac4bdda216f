/** One word of several senses, a denial within what is well, another's or another time's: none of it is claimed of the mount. */
import { describe, expect, it } from 'vitest';
import { readText } from '../../bot/reading/index.js';
import { shippedModel } from '../shipped.js';

const { reading } = shippedModel();

/** All invented; each second line was not looked at while the vocabulary was mended. */
const LINES: readonly { readonly line: string; readonly tells: readonly string[]; readonly not: readonly string[] }[] =
  [
    { line: 'ping answers with no loss', tells: ['ping.answers'], not: ['ping.silent'] },
    { line: 'pinging the bridge: four sent, none lost', tells: [], not: ['ping.silent'] },
    { line: 'ping works without a single timeout', tells: ['ping.answers'], not: ['ping.silent'] },
    { line: 'ping comes back every time, no drops', tells: [], not: ['ping.silent'] },
    { line: 'i get replies to every ping, not one lost', tells: [], not: ['ping.silent'] },
    { line: 'can ping it, zero loss, 3 ms', tells: ['ping.answers'], not: ['ping.silent'] },
    { line: 'the adapter sits behind a brick wall 20 m off', tells: [], not: ['not-here.battery'] },
    { line: 'I plugged it in another socket of the laptop', tells: [], not: ['not-here.battery'] },
    { line: 'red light since I plugged it into the car socket', tells: [], not: ['not-here.battery'] },
    { line: 'the hub has no power brick of its own', tells: [], not: ['not-here.battery'] },
    { line: 'the wall socket in the shed is dead', tells: [], not: ['not-here.battery'] },
    { line: 'I run the mount off a mains brick', tells: ['not-here.battery'], not: [] },
    { line: 'fed from a 12 V 5 A supply', tells: ['not-here.battery'], not: [] },
    { line: 'can I bend the pin back or will it snap', tells: [], not: ['system.linux', 'package-kind.confined'] },
    { line: 'one clip snapped off the battery lid', tells: [], not: ['system.linux', 'package-kind.confined'] },
    { line: 'took a snap of the display for you', tells: [], not: ['system.linux', 'package-kind.confined'] },
    { line: 'the belt will snap if I pull any harder', tells: [], not: ['system.linux'] },
    { line: 'the snap package sees no port', tells: ['package-kind.confined'], not: [] },
    { line: 'ethernet in the mount, a direct cable to my pc, no router between', tells: [], not: ['path.board-cable'] },
    {
      line: "network lead goes direct from the laptop to the mount's LAN socket",
      tells: [],
      not: ['path.board-cable'],
    },
    { line: "patch cable direct into the pc's ethernet, what ip do i type", tells: [], not: ['path.board-cable'] },
    { line: 'a direct cable into the board instead of the handset', tells: ['path.board-cable'], not: [] },
    { line: 'any windows people here? the printer queue is full again', tells: [], not: ['system.windows'] },
    { line: 'is there a windows guru about', tells: [], not: ['system.windows'] },
    { line: 'on windows the same lead works at once', tells: ['other-place.other-system'], not: ['system.windows'] },
    {
      line: 'under linux this very cable and mount work fine',
      tells: ['other-place.other-system'],
      not: ['system.linux'],
    },
    { line: 'same stick, on my old mac it just works', tells: [], not: ['system.macos'] },
    {
      line: 'with windows it was no trouble, now on debian permission denied',
      tells: ['system.linux'],
      not: ['system.windows'],
    },
    { line: 'nearly hit the tripod leg before I could stop it', tells: [], not: ['feet.moved'] },
    { line: 'caught the tube just before it hit the pier', tells: [], not: ['feet.moved'] },
    { line: 'it almost bumped the pier', tells: [], not: ['feet.moved'] },
    { line: 'someone bumped the tripod an hour ago', tells: ['feet.moved'], not: [] },
    { line: 'E or W? we live right on the line and I am not sure which', tells: [], not: ['star-sure.doubtful'] },
    { line: 'not sure what my longitude is, goto off by degrees', tells: [], not: ['star-sure.doubtful'] },
    { line: 'mount is on its own 12v battery, laptop on the charger', tells: [], not: ['supply-amps.other-volts'] },
    {
      line: 'own 12v brick for the mount, connection drops when the laptop charges',
      tells: [],
      not: ['supply-amps.other-volts'],
    },
    {
      line: 'parked it yesterday, today unparked, and the chart has the tube at the zenith',
      tells: [],
      not: ['park-state.parked'],
    },
    { line: 'unparked it and the map shows zenith though it looks at the pole', tells: [], not: ['park-state.parked'] },
    { line: "I parked, powered off, and after unpark it thinks it's elsewhere", tells: [], not: ['park-state.parked'] },
    { line: 'says parked and will not slew', tells: ['park-state.parked'], not: [] },
    {
      line: 'I had chosen the simulator, silly me, with the real driver it now says check power',
      tells: [],
      not: ['mount-type.simulator'],
    },
    {
      line: 'was on the simulator all evening. with the real one: no device',
      tells: [],
      not: ['mount-type.simulator'],
    },
    { line: 'the driver is set to simulator', tells: ['mount-type.simulator'], not: [] },
    { line: 'dew heater box is dead, no light, fuse fine', tells: [], not: ['how-far.no-light', 'power-light.off'] },
    {
      line: 'my dew strap controller has gone dark, fuse is whole',
      tells: [],
      not: ['how-far.no-light', 'power-light.off'],
    },
    { line: 'the heater went dead, led off, anyone knows a cure', tells: [], not: ['how-far.no-light'] },
    { line: 'mount dead, no light', tells: ['how-far.no-light'], not: [] },
    { line: 'pc time right, date 20 years off', tells: [], not: ['date-entries.right'] },
    { line: 'time is correct to the second but the date says 2004', tells: [], not: ['date-entries.right'] },
    { line: 'clock fine, the day is wrong by one', tells: [], not: ['date-entries.right'] },
    { line: 'date and time are right', tells: ['date-entries.right'], not: [] },
    { line: 'polar aligned, then carried the tripod two metres', tells: [], not: ['polar-axis.close'] },
    {
      line: 'did the polar alignment, after that moved the whole thing over the lawn',
      tells: [],
      not: ['polar-axis.close'],
    },
    { line: 'motors make no hum at all, it just stops at 60 degrees', tells: [], not: ['slew.hums'] },
    { line: 'stops like a wall at 70 up, motor hum none', tells: [], not: ['slew.hums'] },
    { line: 'motors hum but nothing moves', tells: ['slew.hums'], not: [] },
    {
      line: 'connected all right, M42 accepted, the rest goto rejected',
      tells: ['mount-does.refuses-some'],
      not: ['message.denied'],
    },
    { line: 'connects with no trouble, then every goto rejected', tells: [], not: ['message.denied'] },
    { line: 'light on while I hold the plug, off when I let go', tells: [], not: ['how-far.no-light'] },
    {
      line: 'if I press the plug the lamp is lit, let go and it is out',
      tells: ['power-touch.flickers'],
      not: ['how-far.no-light'],
    },
    { line: 'my handset is what died. could I go on without a handset?', tells: [], not: ['not-here.handset'] },
    { line: 'the screen of the keypad is cracked but lit', tells: [], not: ['controller-screen.dark'] },
    { line: 'dropped it, glass broken, still shows the menu', tells: [], not: ['controller-screen.dark'] },
    { line: "router's device list: android-77c1 192.168.0.21, ESP-44 192.168.0.60", tells: [], not: ['system.phone'] },
    { line: 'dhcp leases: LAPTOP-EVA .12, iphone-jan .14, esp-31 .31', tells: [], not: ['system.phone'] },
    { line: 'iphone here, the app finds nothing', tells: ['system.phone'], not: [] },
    { line: 'my camera drops frames on usb2 with windows', tells: [], not: ['how-far.drops'] },
    { line: 'webcam freezes all the time, mount is fine', tells: [], not: ['how-far.drops'] },
  ];

describe('what is claimed', () => {
  it.each(LINES)('$line', ({ line, tells, not }) => {
    const told = readText(reading, line).facts.map(({ what, answer }) => `${what}.${answer}`);
    expect(told).toEqual(expect.arrayContaining([...tells]));
    for (const one of not) expect(told).not.toContain(one);
  });
});
