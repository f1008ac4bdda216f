/** What each shipped fault does to a sound set-up, by fault id. Written from what the fault's title says, not from its table of answers. */
import { at, both, told, type Change } from './edit.js';
import { LATE_FAULTS } from './late-faults.js';
import type { World } from './world.js';

const clock = (hours: number, entry: World['sky']['told']['entry']): Change =>
  told(() => ({ clockOffHours: hours, entry }));

const POWER: Readonly<Record<string, Change>> = {
  'mount-switched-off': at('power', { switchOn: false }),
  'supply-dead': at('power', { source: 'dead' }),
  'power-plug-loose': at('power', { plug: 'loose' }),
  'power-plug-reversed': at('power', { plug: 'reversed' }),
  'fuse-blown': at('power', { fuseWhole: false }),
  'brown-out-supply': at('power', { supply: 'too-few', from: 'mains' }),
  'brown-out-lead': at('power', { lead: 'starving' }),
  'battery-low': at('power', { from: 'battery', batteryFull: false }),
  'controller-lead-loose': at('power', { controllerLeadHome: false }),
  'bridge-unpowered': at('power', { bridgeFed: false }),
  'computer-undervolted': at('power', { computerSags: true }),
  'mount-electronics-dead': at('power', { electronicsAlive: false }),
};

const LEADS: Readonly<Record<string, Change>> = {
  'rs232-on-logic-port': at('leads', { level: 'rs232' }),
  'lead-gives-three-volts': at('leads', { level: 'low' }),
  // Many such a board comes with a lead of one's own, its pins measured.
  'logic-on-rs232-port': (w) =>
    at('leads', { adapterLevel: 'logic', made: w.luck < 0.5 ? 'measured' : w.leads.made })(w),
  'look-alike-serial-lead': at('leads', { serial: 'look-alike' }),
  'six-wire-lead-mirrored': at('leads', { serial: 'mirrored' }),
  'home-made-lead-pins': at('leads', { made: 'miscounted' }),
  'extra-null-modem': at('leads', { serial: 'extra-piece' }),
  'serial-lead-broken': at('leads', { serialBroken: true }),
  'serial-lead-too-long': at('leads', { serialTooLong: true }),
  'wrong-socket': at('leads', { socket: 'look-alike' }),
  'charge-only-cable': at('leads', { usbWire: 'charge-only' }),
  'usb-cable-broken': at('leads', { usbWire: 'broken' }),
  'usb-plug-not-home': at('leads', { usbHome: false }),
  'worn-socket': (w) => at('leads', { wornAt: w.luck < 0.6 ? 'mount' : 'computer' })(w),
  'lead-snags': at('leads', { snags: true }),
  'motor-noise': at('leads', { bundled: true, disturbed: true }),
  'usb-cable-too-long': at('leads', { usbTooLong: true }),
  'unpowered-hub': at('leads', { hub: 'bus', hubStarves: true }),
};

const ADAPTER: Readonly<Record<string, Change>> = {
  'adapter-driver-missing': at('adapter', { driver: 'none' }),
  'adapter-driver-wrong': at('adapter', { driver: 'other' }),
  'adapter-chip-refused': at('adapter', { driver: 'refused' }),
  'adapter-blocked-by-policy': at('adapter', { driver: 'blocked' }),
  'adapter-disabled': at('adapter', { driver: 'disabled' }),
  'adapter-waits-for-restart': at('adapter', { driver: 'restart' }),
  'adapter-module-missing': at('adapter', { driver: 'no-module' }),
  'adapter-taken-by-braille-service': at('adapter', { driver: 'taken' }),
  'adapter-dead': at('adapter', { alive: false }),
  'mount-usb-dead': at('adapter', { mountUsbAlive: false }),
  'computer-usb-socket-dead': at('adapter', { socketAlive: false }),
  'usb-port-asleep': at('adapter', { maySleep: true, fallsAsleep: true }),
  'computer-slept': at('adapter', { computerSlept: true }),
  'adapter-latency-long': at('adapter', { latencyLong: true, latencyHurts: true }),
  'virtual-machine-took-it': at('adapter', { machineTakes: true }),
};

const PORT: Readonly<Record<string, Change>> = {
  'port-number-moved': at('port', { chosen: 'old-number' }),
  'wrong-port-picked': at('port', { chosen: 'other-device' }),
  'port-number-too-high': at('port', { chosen: 'unlisted' }),
  'port-held-by-program': at('port', { holder: 'program' }),
  'port-held-by-leftover': at('port', { holder: 'leftover' }),
  'no-permission': at('port', { group: 'outside' }),
  'group-not-yet-active': at('port', { group: 'on-file' }),
  'port-probed-by-service': at('port', { holder: 'service' }),
  'program-confined': at('port', { package: 'confined' }),
  'mac-call-in-device': at('port', { chosen: 'call-in' }),
  'bluetooth-incoming-port': at('port', { chosen: 'incoming' }),
  'bluetooth-port-not-made': at('port', { chosen: 'not-made' }),
  'wrong-speed': at('settings', { speedFits: false }),
  'wrong-frame': at('settings', { frameFits: false }),
  'flow-control-on': at('settings', { flowControl: true }),
  'time-out-too-short': at('settings', { timeOutShort: true }),
  'retries-too-few': at('settings', { noRetries: true }),
  'opening-restarts-board': at('settings', { restartsOnOpen: true }),
  'bridge-serial-speed-wrong': at('settings', { bridgeSpeedFits: false }),
};

const CONTROLLER: Readonly<Record<string, Change>> = {
  'controller-at-start-question': at('controller', { screen: 'question' }),
  'controller-asleep': at('controller', { screen: 'asleep' }),
  'pass-through-left-on': at('controller', { screen: 'pass-through' }),
  'pass-through-needed': at('controller', { driverWantsPassThrough: true }),
  'firmware-half-updated': at('controller', { firmware: 'half' }),
  'firmware-too-old': at('controller', { firmware: 'old' }),
  'controller-other-socket': at('controller', { otherSocket: true }),
  'controller-and-cable': at('controller', { bothPlugged: true }),
  'mount-driver-missing': at('driver', { installed: false }),
  'similar-driver-chosen': at('driver', { rightOfTwo: false, twoAlike: true }),
  'bits-differ': at('driver', { bitsMatch: false }),
  'component-off': at('driver', { componentOn: false }),
  'driver-race': at('driver', { oneStarter: false }),
  'privilege-mixed': at('driver', { privilegeAlike: false }),
  'platform-service-stopped': at('driver', { serviceRuns: false }),
};

const PROGRAM: Readonly<Record<string, Change>> = {
  'wrong-mount-type': at('program', { type: 'other' }),
  'protocol-too-old': at('program', { type: 'old-protocol' }),
  'simulator-chosen': at('program', { type: 'simulator' }),
  'mount-parked': at('program', { parked: true }),
  'below-horizon-limit': (w) =>
    // Half set their target too low, half their limit too high.
    w.luck < 0.5
      ? { ...w, sky: { ...w.sky, target: { ...w.sky.target, eastHours: 6.4 } } }
      : at('program', { lowLimitDeg: 75 })(w),
  'meridian-limit': at('program', { pastMeridianLimit: true }),
  'not-aligned-yet': at('program', { aligned: false }),
  'tracking-off': at('program', { tracking: 'off' }),
  'tracking-rate-wrong': at('program', { tracking: 'another' }),
  'motion-rate-slow': at('program', { buttonsSlow: true }),
  'clutch-loose': at('program', { clutchFirm: false }),
};

const RADIO: Readonly<Record<string, Change>> = {
  'bluetooth-off': at('radio', { on: false }),
  'bluetooth-not-paired': at('radio', { pairing: 'none' }),
  'bluetooth-code-refused': at('radio', { pairing: 'refused' }),
  'bluetooth-held-elsewhere': at('radio', { heldElsewhere: true }),
  'bluetooth-too-far': at('radio', { far: true }),
  'bluetooth-low-energy-only': at('radio', { lowEnergyOnly: true }),
  'bluetooth-stale-pairing': at('radio', { pairing: 'stale' }),
};

const NETWORK: Readonly<Record<string, Change>> = {
  'wrong-network-joined': at('network', { joined: 'other' }),
  'computer-hops-away': at('network', { joined: 'hops' }),
  'bridge-address-changed': at('network', { addressNow: 'new' }),
  'bridge-lost-house-network': at('network', { bridgeJoined: false }),
  'house-network-five-gigahertz': at('network', { band24: false }),
  'network-isolation': at('network', { isolated: true }),
  'bridge-port-number-wrong': at('network', { portFits: false }),
  'bridge-kind-wrong': at('network', { kindFits: false }),
  'firewall-blocks': at('network', { firewall: 'blocks' }),
  'local-network-refused': at('network', { localAllowed: false }),
  'two-masters': at('network', { masters: 'several' }),
  'vpn-takes-traffic': at('network', { vpn: true }),
  'weak-signal': at('network', { weak: true }),
  'twin-networks': at('network', { twins: true }),
  'bridge-hung': at('network', { hung: true }),
};

/** 12.71° typed as 12° 71′: the hundredths taken for minutes. */
const mixedDecimals = (deg: number): number => Math.trunc(deg) + ((deg - Math.trunc(deg)) * 100) / 60;

const SKY: Readonly<Record<string, Change>> = {
  'summer-time-wrong': told((w) => ({ summer: !w.sky.summer })),
  'utc-offset-wrong': told((w) => ({ zoneHours: w.sky.zoneHours + (w.luck < 0.5 ? 2 : -3) })),
  'utc-offset-sign-wrong': told((w) => ({ zoneHours: -w.sky.zoneHours || 1 })),
  'longitude-sign-wrong': told((w) => ({ longitudeDeg: -w.sky.longitudeDeg, siteEntry: 'east-west' })),
  'latitude-sign-wrong': told((w) => ({ latitudeDeg: -w.sky.latitudeDeg, siteEntry: 'north-south' })),
  'site-decimals-mixed': told((w) => ({
    longitudeDeg: mixedDecimals(w.sky.longitudeDeg),
    latitudeDeg: mixedDecimals(w.sky.latitudeDeg),
    siteEntry: 'decimals',
  })),
  'site-numbers-swapped': told((w) => ({
    longitudeDeg: w.sky.latitudeDeg,
    latitudeDeg: Math.max(-90, Math.min(90, w.sky.longitudeDeg)),
    siteEntry: 'swapped',
  })),
  'site-of-another-place': told((w) => ({
    longitudeDeg: w.sky.longitudeDeg + 9,
    latitudeDeg: w.sky.latitudeDeg - 6,
    siteEntry: 'another-place',
  })),
  // The seventh of the fifth for the fifth of the seventh: some 59 days.
  'day-and-month-swapped': clock(-59 * 24, 'swapped'),
  'date-one-day-off': (w) => clock(w.luck < 0.5 ? 24 : -24, 'day-off')(w),
  'twelve-hours-off': clock(-12, 'half-day'),
  'mount-clock-lost': clock(-3_000 * 24 - 5.3, 'reset'),
  'computer-clock-wrong': at('sky', { sends: 'wrong-clock' }),
  'program-sends-own-site': at('sky', { sends: 'wrong-site' }),
  'epoch-mixed': at('sky', { epochMixed: true }),
  'not-started-at-home': at('sky', { atHome: false }),
  'aligned-on-wrong-star': at('sky', { starRight: false }),
  'polar-axis-off': at('sky', { polarOffDeg: 6, mount: 'german' }),
  'axis-reversed': at('sky', { reversed: true }),
};

/** Every shipped fault as a change to the world. */
export const FAULT_CHANGES: Readonly<Record<string, Change>> = {
  ...POWER,
  ...LEADS,
  ...ADAPTER,
  ...PORT,
  ...CONTROLLER,
  ...PROGRAM,
  ...RADIO,
  ...NETWORK,
  ...SKY,
  ...LATE_FAULTS,
};

export const broken = (w: World, faultIds: readonly string[]): World =>
  both(
    ...faultIds.map((id) => {
      const change = FAULT_CHANGES[id];
      if (change === undefined) throw new Error(`the bench has no state for the fault ${id}`);
      return change;
    }),
  )(w);
