/** What looks at the power and at the leads answer. */
import { energised, isWell, portExists, programOpensPort, starves, wiresCarry } from '../chain.js';
import { falls, hasSerialLead, type World } from '../world.js';

/** The same set-up with one part changed for the length of a swap test. */
export const wouldWork = (w: World, part: Partial<World>): boolean => isWell({ ...w, ...part });

const powerLight = (w: World): string => {
  if (!energised(w)) return 'off';
  if (w.power.plug === 'loose') return 'dips';
  return starves(w) && falls(w, 'light dips at rest', 0.4) ? 'dips' : 'steady';
};

/** Following the lead with the eyes; what is dead or blown inside cannot be seen. */
const powerWalk = ({ power }: World): string => {
  if (!power.switchOn) return 'switch';
  if (power.source === 'dead') return 'no-power';
  if (power.plug === 'loose') return 'loose';
  if (power.plug === 'reversed') return 'odd-plug';
  if (power.supply === 'too-few' || (power.from === 'battery' && !power.batteryFull)) return 'weak';
  return power.lead === 'stout' ? 'all-well' : 'thin';
};

const arrowKeys = (w: World): string => {
  if (!energised(w) || !w.power.controllerLeadHome) return 'none';
  if (starves(w)) return 'restarts';
  const { screen } = w.controller;
  if (screen !== 'ready' || w.controller.firmware === 'half') return 'none';
  if (w.oddity?.seen?.['arrow-keys'] !== undefined) return w.oddity.seen['arrow-keys'];
  return w.program.clutchFirm ? 'both' : 'one';
};

export const POWER_RULES: Readonly<Record<string, (w: World) => string>> = {
  'power-walk': powerWalk,
  'power-light': powerLight,
  'power-switch': ({ power }) => (power.switchOn ? 'all-on' : 'one-off'),
  'shares-supply': (w) => {
    if (!falls(w, 'others on the supply', 0.4)) return 'alone';
    return falls(w, 'dew heaters on it', 0.35) ? 'heater' : 'camera';
  },
  'supply-live': ({ power }) => (power.source === 'live' ? 'live' : 'dead'),
  fuse: ({ power }) => (power.fuseWhole ? 'whole' : 'blown'),
  'plug-polarity': ({ power }) => (power.plug === 'reversed' ? 'reversed' : 'matches'),
  'power-touch': ({ power }) => (power.plug === 'loose' ? 'flickers' : 'steady'),
  'supply-amps': ({ power }) => (power.supply === 'enough' ? 'enough' : 'too-few'),
  'battery-volts': ({ power }) => (power.from === 'battery' && !power.batteryFull ? 'low' : 'full'),
  'power-lead': ({ power }) => (power.lead === 'stout' ? 'stout' : 'thin'),
  'arrow-keys': arrowKeys,
  'controller-lead': ({ power }) => (power.controllerLeadHome ? 'home' : 'loose'),
  'bridge-light': (w) => (w.power.bridgeFed && energised(w) ? 'lit' : 'dark'),
};

const level = ({ leads }: World): string => (leads.levelMarked || leads.level === 'rs232' ? leads.level : 'unmarked');

const otherCable = (w: World): string =>
  wouldWork(w, { leads: { ...w.leads, usbWire: 'data', usbHome: true, usbTooLong: false } }) ? 'works' : 'same';

/** Pins 2 and 3 joined at the far plug: the lead and the adapter alone. */
const loops = (w: World): string =>
  portExists(w) &&
  !w.leads.serialBroken &&
  !w.settings.flowControl &&
  (w.port.chosen === 'right' || w.port.chosen === 'call-in') &&
  w.leads.serial !== 'look-alike'
    ? 'echoes'
    : 'silent';

const adapterLight = (w: World): string => {
  // A port that is refused or not found is not opened, whatever the reason.
  if (w.oddity?.shows === 'denied' || w.oddity?.shows === 'not-found') return 'still';
  if (!portExists(w) || w.port.chosen !== 'right' || !programOpensPort(w)) return 'still';
  if (w.port.group !== 'member' || w.port.holder !== null || w.port.package === 'confined') return 'still';
  return wiresCarry(w) && energised(w) && w.controller.screen === 'ready' && w.settings.speedFits ? 'both' : 'sends';
};

const wiggle = ({ leads, power }: World): string => {
  if (leads.wornAt !== null) return leads.wornAt === 'mount' ? 'at-mount' : 'at-computer';
  return power.plug === 'loose' ? 'at-mount' : 'firm';
};

const REST_VOLTS = { logic: 'five', rs232: 'minus', low: 'three' } as const;

/** Who has measured and found it wrong has mended it, or says so; most have not measured. */
const pinOrder = (w: World): string => {
  if (w.leads.made === 'bought' || w.leads.made === 'measured') return 'measured';
  return w.leads.made === 'miscounted' && falls(w, 'pins measured', 0.25) ? 'differs' : 'not-measured';
};

/** Who made the lead knows it; one made by another passes for this or that: seen from the wrong side its colours run the other way. */
const serialLead = (w: World): string => {
  if (w.leads.made !== 'bought' && falls(w, 'is known as home-made', 0.8)) return 'home-made';
  if (w.leads.made !== 'miscounted' || w.leads.serial !== 'its-own') return w.leads.serial;
  if (falls(w, 'colours other way', 0.3)) return 'mirrored';
  return falls(w, 'passes for its own', 0.25) ? 'its-own' : 'look-alike';
};

const wireOrder = (w: World): string =>
  w.leads.serial === 'mirrored' || (w.leads.made === 'miscounted' && falls(w, 'colours mirrored'))
    ? 'mirrored'
    : 'as-drawn';

export const LEAD_RULES: Readonly<Record<string, (w: World) => string>> = {
  'lead-level': level,
  'adapter-level': (w) => {
    if (w.leads.adapterLevel === 'logic') return 'logic';
    return falls(w, 'adapter built into its lead', 0.32) ? 'built-in' : 'rs232';
  },
  'lead-at-rest': ({ leads }) => REST_VOLTS[leads.level],
  'nine-pins': ({ leads }) => (leads.level === 'rs232' ? 'yes' : 'no'),
  'usb-cable': ({ leads }) => (leads.usbWire === 'charge-only' ? 'charge-only' : 'data'),
  'usb-plugs': ({ leads }) => (leads.usbHome ? 'home' : 'loose'),
  'other-cable': otherCable,
  'lead-from': ({ leads }) => (leads.made === 'bought' ? 'bought' : 'made'),
  'pin-order': pinOrder,
  'serial-lead': serialLead,
  'wire-order': wireOrder,
  'adapter-light': adapterLight,
  loopback: loops,
  'socket-used': ({ leads }) => leads.socket,
  wiggle,
  'cable-length': (w) => {
    if (w.leads.usbTooLong) return 'long-usb';
    return hasSerialLead(w) && w.leads.serialTooLong ? 'long-serial' : 'short';
  },
  hub: ({ leads }) => (leads.hub === 'bus' ? 'bus-hub' : 'straight'),
  'computer-voltage': ({ power }) => (power.computerSags ? 'dips' : 'steady'),
  'lead-route': ({ leads }) => (leads.bundled ? 'beside' : 'apart'),
};
