/** What doing each shipped remedy's steps changes in the world, by fault id: often more than its own fault. */
import { at, both, told, type Change } from './edit.js';
import { restarted } from './links/controller-and-program.js';
import { balanced, LATE_REMEDIES } from './late-faults.js';
import type { World } from './world.js';

const replug: Change = at('adapter', { computerSlept: false });
const powerCycle: Change = (w) => ({
  ...w,
  controller: {
    ...w.controller,
    screen: w.controller.screen === 'asleep' || w.controller.screen === 'pass-through' ? 'ready' : w.controller.screen,
  },
  network: { ...w.network, hung: false },
  radio: { ...w.radio, heldElsewhere: false },
});
const chooseDriver: Change = (w) => {
  const wasWrong = w.adapter.driver === 'none' || w.adapter.driver === 'other';
  return wasWrong ? at('adapter', { driver: 'fits' })(w) : w;
};
const anotherUsbCable: Change = at('leads', { usbWire: 'data', usbHome: true, usbTooLong: false });
const anotherSerialLead: Change = at('leads', { serial: 'its-own', made: 'bought', serialBroken: false });
const rightPort: Change = (w) => (w.port.chosen === 'not-made' ? w : at('port', { chosen: 'right' })(w));
const typeAll: Change = (w) =>
  told(() => ({
    latitudeDeg: w.sky.latitudeDeg,
    longitudeDeg: w.sky.longitudeDeg,
    zoneHours: w.sky.zoneHours,
    summer: w.sky.summer,
    clockOffHours: 0,
    entry: 'right',
    siteEntry: 'match',
  }))(w);
const typeSite: Change = told(({ sky }) => ({
  latitudeDeg: sky.latitudeDeg,
  longitudeDeg: sky.longitudeDeg,
  siteEntry: 'match',
}));
const typeZone: Change = told(({ sky }) => ({ zoneHours: sky.zoneHours, summer: sky.summer }));
const typeDate: Change = told(() => ({ clockOffHours: 0, entry: 'right' }));
/** Typing into the mount helps only while no program overwrites it on connecting. */
const typed =
  (change: Change): Change =>
  (w) =>
    w.sky.sends === 'nothing' || w.sky.sends === 'right' ? change(w) : w;
const alignAnew: Change = at('sky', { atHome: true, starRight: true });
const unlocked: Change = (w) => ({ ...w, port: { ...w.port, holder: w.port.holder === 'service' ? 'service' : null } });
const lowTarget: Change = (w) => ({
  ...w,
  program: { ...w.program, lowLimitDeg: Math.min(w.program.lowLimitDeg, 5) },
  sky: { ...w.sky, target: { ...w.sky.target, eastHours: 1.5 } },
});

const HARDWARE: Readonly<Record<string, Change>> = {
  'mount-switched-off': at('power', { switchOn: true }),
  'supply-dead': at('power', { source: 'live', supply: 'enough', batteryFull: true }),
  'power-plug-loose': at('power', { plug: 'firm' }),
  'power-plug-reversed': at('power', { plug: 'firm' }),
  'fuse-blown': at('power', { fuseWhole: true }),
  'brown-out-supply': at('power', { supply: 'enough', from: 'mains' }),
  'brown-out-lead': at('power', { lead: 'stout', plug: 'firm' }),
  'battery-low': at('power', { batteryFull: true }),
  'controller-lead-loose': both(at('power', { controllerLeadHome: true }), powerCycle),
  'bridge-unpowered': both(at('power', { bridgeFed: true }), at('network', { hung: false })),
  'rs232-on-logic-port': at('leads', { level: 'logic', serial: 'its-own', serialBroken: false }),
  'lead-gives-three-volts': at('leads', { level: 'logic' }),
  'logic-on-rs232-port': at('leads', { adapterLevel: 'rs232' }),
  'look-alike-serial-lead': anotherSerialLead,
  'six-wire-lead-mirrored': anotherSerialLead,
  'home-made-lead-pins': anotherSerialLead,
  'extra-null-modem': (w) => (w.leads.serial === 'extra-piece' ? at('leads', { serial: 'its-own' })(w) : w),
  'serial-lead-broken': (w) => (w.leads.serial === 'its-own' ? anotherSerialLead(w) : w),
  'serial-lead-too-long': at('leads', { serialTooLong: false }),
  'wrong-socket': at('leads', { socket: 'right' }),
  'charge-only-cable': anotherUsbCable,
  'usb-cable-broken': anotherUsbCable,
  'usb-plug-not-home': at('leads', { usbHome: true }),
  'worn-socket': at('leads', { wornAt: null }),
  'lead-snags': at('leads', { snags: false }),
  'motor-noise': at('leads', { bundled: false, disturbed: false }),
  'usb-cable-too-long': at('leads', { usbTooLong: false, usbWire: 'data', usbHome: true }),
  'computer-undervolted': at('power', { computerSags: false }),
  'unpowered-hub': at('leads', { hub: 'none', hubStarves: false }),
  'adapter-dead': both(at('adapter', { alive: true }), chooseDriver),
  'mount-usb-dead': replug,
  'computer-usb-socket-dead': both(at('adapter', { socketAlive: true }), replug, restarted),
  'usb-port-asleep': at('adapter', { fallsAsleep: false, maySleep: false }),
  'computer-slept': replug,
  'adapter-latency-long': at('adapter', { latencyLong: false, latencyHurts: false }),
  'virtual-machine-took-it': at('adapter', { machineTakes: false }),
};

const SOFTWARE: Readonly<Record<string, Change>> = {
  'adapter-driver-missing': chooseDriver,
  'adapter-driver-wrong': both(chooseDriver, restarted),
  'adapter-chip-refused': (w) => (w.adapter.driver === 'refused' ? at('adapter', { driver: 'fits' })(w) : w),
  'adapter-blocked-by-policy': (w) => (w.adapter.driver === 'blocked' ? at('adapter', { driver: 'fits' })(w) : w),
  'adapter-disabled': (w) => (w.adapter.driver === 'disabled' ? at('adapter', { driver: 'fits' })(w) : w),
  'adapter-waits-for-restart': restarted,
  'adapter-module-missing': (w) =>
    w.adapter.driver === 'no-module' ? at('adapter', { driver: 'fits' })(w) : restarted(w),
  'adapter-taken-by-braille-service': (w) => (w.adapter.driver === 'taken' ? at('adapter', { driver: 'fits' })(w) : w),
  'port-number-moved': rightPort,
  'wrong-port-picked': rightPort,
  'port-number-too-high': rightPort,
  'port-held-by-program': (w) => (w.port.holder === 'program' ? at('port', { holder: null })(w) : w),
  'port-held-by-leftover': (w) => restarted(unlocked(w)),
  'no-permission': at('port', { group: 'member' }),
  'group-not-yet-active': (w) => (w.port.group === 'on-file' ? restarted(w) : w),
  'port-probed-by-service': (w) => (w.port.holder === 'service' ? at('port', { holder: null })(w) : w),
  'program-confined': (w) => at('port', { package: 'ordinary' })(w),
  'mac-call-in-device': (w) => (w.port.chosen === 'call-in' ? rightPort(w) : w),
  'bluetooth-incoming-port': (w) => (w.port.chosen === 'incoming' ? rightPort(w) : w),
  'bluetooth-port-not-made': at('port', { chosen: 'right' }),
  'wrong-speed': at('settings', { speedFits: true }),
  'wrong-frame': at('settings', { frameFits: true }),
  'flow-control-on': at('settings', { flowControl: false }),
  'time-out-too-short': at('settings', { timeOutShort: false, noRetries: false }),
  'retries-too-few': at('settings', { timeOutShort: false, noRetries: false }),
  'opening-restarts-board': at('settings', { restartsOnOpen: false }),
  'bridge-serial-speed-wrong': both(at('settings', { bridgeSpeedFits: true }), at('network', { hung: false })),
  'mount-driver-missing': at('driver', { installed: true }),
  'similar-driver-chosen': at('driver', { rightOfTwo: true }),
  'bits-differ': at('driver', { bitsMatch: true }),
  'component-off': both(at('driver', { componentOn: true }), restarted),
  'driver-race': both(at('driver', { oneStarter: true }), unlocked),
  'privilege-mixed': at('driver', { privilegeAlike: true }),
  'platform-service-stopped': at('driver', { serviceRuns: true }),
};

const AT_THE_MOUNT: Readonly<Record<string, Change>> = {
  'controller-at-start-question': (w) =>
    w.controller.screen === 'question' ? at('controller', { screen: 'ready' })(w) : w,
  'controller-asleep': (w) => (w.controller.screen === 'asleep' ? powerCycle(w) : w),
  'pass-through-left-on': powerCycle,
  'pass-through-needed': at('controller', { driverWantsPassThrough: false }),
  'firmware-half-updated': (w) => (w.controller.firmware === 'half' ? at('controller', { firmware: 'enough' })(w) : w),
  'firmware-too-old': both(at('controller', { firmware: 'enough' }), (w) =>
    w.program.type === 'other' ? w : at('program', { type: 'fits' })(w),
  ),
  'controller-other-socket': both(at('controller', { otherSocket: false }), powerCycle),
  'controller-and-cable': at('controller', { bothPlugged: false }),
  'wrong-mount-type': at('program', { type: 'fits' }),
  'protocol-too-old': (w) => (w.program.type === 'old-protocol' ? at('program', { type: 'fits' })(w) : w),
  'simulator-chosen': (w) => (w.program.type === 'simulator' ? at('program', { type: 'fits' })(w) : w),
  'mount-parked': at('program', { parked: false }),
  'below-horizon-limit': lowTarget,
  'meridian-limit': at('program', { pastMeridianLimit: false }),
  'not-aligned-yet': both(at('program', { aligned: true }), typed(typeAll), alignAnew),
  'tracking-off': at('program', { tracking: 'sidereal' }),
  'tracking-rate-wrong': at('program', { tracking: 'sidereal' }),
  'motion-rate-slow': at('program', { buttonsSlow: false }),
  'clutch-loose': both(at('program', { clutchFirm: true }), alignAnew, balanced),
};

const ON_THE_AIR: Readonly<Record<string, Change>> = {
  'bluetooth-off': at('radio', { on: true }),
  'bluetooth-not-paired': (w) => (w.radio.pairing === 'refused' ? w : at('radio', { pairing: 'good' })(w)),
  'bluetooth-code-refused': both(at('radio', { pairing: 'good' }), powerCycle),
  'bluetooth-held-elsewhere': at('radio', { heldElsewhere: false }),
  'bluetooth-too-far': at('radio', { far: false }),
  'bluetooth-low-energy-only': at('radio', { lowEnergyOnly: false }),
  'bluetooth-stale-pairing': (w) =>
    w.radio.pairing === 'stale' ? both(at('radio', { pairing: 'good' }), powerCycle)(w) : w,
  'wrong-network-joined': at('network', { joined: 'mounts' }),
  'computer-hops-away': at('network', { joined: 'mounts' }),
  'bridge-address-changed': at('network', { addressNow: 'saved' }),
  'bridge-lost-house-network': at('network', { bridgeJoined: true, hung: false }),
  'house-network-five-gigahertz': at('network', { band24: true, hung: false }),
  'network-isolation': at('network', { isolated: false }),
  'bridge-port-number-wrong': at('network', { portFits: true }),
  'bridge-kind-wrong': at('network', { kindFits: true }),
  'firewall-blocks': (w) => (w.network.firewall === 'blocks' ? at('network', { firewall: 'lets' })(w) : w),
  'local-network-refused': at('network', { localAllowed: true }),
  'two-masters': at('network', { masters: 'one', hung: false }),
  'vpn-takes-traffic': at('network', { vpn: false }),
  'weak-signal': at('network', { weak: false }),
  'twin-networks': at('network', { twins: false }),
  'bridge-hung': powerCycle,
};

const programStops = (w: World, what: World['sky']['sends']): World =>
  w.sky.sends === what ? at('sky', { sends: 'right' })(w) : w;

const ABOUT_THE_SKY: Readonly<Record<string, Change>> = {
  'summer-time-wrong': typed(told(({ sky }) => ({ summer: sky.summer }))),
  'utc-offset-wrong': typed(both(typeZone, typeDate)),
  'utc-offset-sign-wrong': typed(
    told(({ sky }) => ({ zoneHours: sky.told.zoneHours === -sky.zoneHours ? sky.zoneHours : sky.told.zoneHours })),
  ),
  'longitude-sign-wrong': typed(typeSite),
  'latitude-sign-wrong': typed(typeSite),
  'site-decimals-mixed': typed(typeSite),
  'site-numbers-swapped': typed(typeSite),
  'site-of-another-place': typed(typeSite),
  'day-and-month-swapped': typed(typeDate),
  'date-one-day-off': typed(typeDate),
  'twelve-hours-off': typed(typeDate),
  'mount-clock-lost': typed(typeDate),
  // Setting the clock by hand helps tonight, whatever put it wrong.
  'computer-clock-wrong': (w) => LATE_REMEDIES['two-systems-one-clock']?.(w) ?? programStops(w, 'wrong-clock'),
  'program-sends-own-site': (w) => programStops(w, 'wrong-site'),
  'epoch-mixed': at('sky', { epochMixed: false }),
  'not-started-at-home': alignAnew,
  'aligned-on-wrong-star': at('sky', { starRight: true }),
  'polar-axis-off': at('sky', { polarOffDeg: 0.3 }),
  'axis-reversed': at('sky', { reversed: false }),
};

export const REMEDY_CHANGES: Readonly<Record<string, Change>> = {
  ...HARDWARE,
  ...SOFTWARE,
  ...AT_THE_MOUNT,
  ...ON_THE_AIR,
  ...ABOUT_THE_SKY,
  ...LATE_REMEDIES,
};

/** Remedies whose end is "a repairer", a purchase or an administrator: known, but not done tonight by everyone. Shares that cannot, by judgement. */
export const CANNOT_TONIGHT: Readonly<Record<string, number>> = {
  'serial-lead-pin-order': 0.4,
  'adapter-dead': 0.5,
  'rs232-on-logic-port': 0.5,
  'look-alike-serial-lead': 0.4,
  'home-made-lead-pins': 0.3,
  'logic-on-rs232-port': 0.5,
  'six-wire-lead-mirrored': 0.4,
  'serial-lead-broken': 0.3,
  'bluetooth-low-energy-only': 0.7,
  'firmware-too-old': 0.3,
  'worn-socket': 0.2,
  'adapter-chip-refused': 0.2,
  'adapter-blocked-by-policy': 0.2,
  'supply-dead': 0.15,
  'brown-out-supply': 0.2,
  'network-isolation': 0.15,
};

/** Broken for good: the remedy's last step is a repairer, and a member who gets there says that it cannot be done tonight. */
export const BEYOND_REPAIR: Readonly<Record<string, (w: World) => boolean>> = {
  'mount-electronics-dead': ({ power }) => !power.electronicsAlive,
  'mount-usb-dead': ({ adapter }) => !adapter.mountUsbAlive,
  'board-input-hurt': ({ oddity }) => oddity?.name === 'board-input-hurt',
};
