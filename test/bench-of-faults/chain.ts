/* eslint-disable complexity -- the order in which a program meets each obstacle is one list, read from top to bottom */
/** The signal's way through the chain, link by link: what is fed, seen, opened, heard and understood, and what the member meets first. */
import { lands, refusesTarget } from './links/sky.js';
import { falls, hasController, hasSerialLead, isBridge, isUsb, throughController, type World } from './world.js';

export type Message = 'connects' | 'not-found' | 'denied' | 'no-reply' | 'odd-reply' | 'driver-error' | 'unreachable';
export type Drop = 'never' | 'quiet' | 'minutes' | 'motors' | 'touched' | 'place' | 'after-sleep' | 'random';

/** The mount's electronics have power and start. */
export const energised = ({ power, oddity }: World): boolean =>
  power.switchOn &&
  power.source === 'live' &&
  power.plug !== 'reversed' &&
  !(power.plug === 'loose' && !power.looseContact) &&
  power.fuseWhole &&
  power.electronicsAlive &&
  oddity?.shows !== 'dark';

export const starves = ({ power }: World): boolean =>
  power.supply === 'too-few' || power.lead === 'starving' || (power.from === 'battery' && !power.batteryFull);

export const controllerAlive = (w: World): boolean => energised(w) && w.power.controllerLeadHome;

const usbChipFed = (w: World): boolean => {
  if (hasSerialLead(w) || w.adapter.chipBusPowered) return true;
  return w.path === 'built-in-usb' ? energised(w) : controllerAlive(w);
};

/** The wires between computer and USB chip, and the chip itself. */
export const usbEnumerates = (w: World): boolean =>
  w.leads.usbWire === 'data' &&
  w.leads.usbHome &&
  !w.leads.usbTooLong &&
  w.adapter.socketAlive &&
  (hasSerialLead(w) ? w.adapter.alive : w.adapter.mountUsbAlive) &&
  usbChipFed(w) &&
  w.oddity?.shows !== 'not-seen';

/** It is there for a moment, and gone again. */
export const usbFlaps = ({ leads, power, oddity }: World): boolean =>
  leads.wornAt !== null || leads.hubStarves || power.computerSags || oddity?.shows === 'drops-device';

export const portExists = (w: World): boolean => {
  if (isUsb(w)) return usbEnumerates(w) && !w.adapter.machineTakes && w.adapter.driver === 'fits';
  if (w.path === 'bluetooth')
    return w.radio.on && (w.radio.pairing === 'good' || w.radio.pairing === 'stale') && !w.radio.lowEnergyOnly;
  return true;
};

const driverMessage = ({ client, driver, oddity }: World): Message | null => {
  if (oddity?.shows === 'driver-error') return 'driver-error';
  if (client === 'direct') return null;
  return driver.installed &&
    driver.bitsMatch &&
    driver.componentOn &&
    driver.privilegeAlike &&
    driver.serviceRuns &&
    driver.oneStarter
    ? null
    : 'driver-error';
};

const portMessage = (w: World): Message | null => {
  const { port } = w;
  if (!portExists(w) || w.oddity?.shows === 'not-found') return 'not-found';
  if (port.chosen === 'old-number' || port.chosen === 'unlisted' || port.chosen === 'not-made') return 'not-found';
  if (port.package === 'confined') return falls(w, 'confined says denied') ? 'denied' : 'not-found';
  if (port.group !== 'member' || port.holder !== null || w.oddity?.shows === 'denied') return 'denied';
  return port.chosen === 'right' ? null : 'no-reply';
};

/** Packets find the bridge: the right network, address and nothing on the way that eats them. */
export const bridgeReached = (w: World): boolean => {
  const n = w.network;
  return (
    energised(w) &&
    w.power.bridgeFed &&
    !n.hung &&
    !n.vpn &&
    !n.twins &&
    n.localAllowed &&
    w.oddity?.shows !== 'unreachable' &&
    (w.path === 'bridge-own-network'
      ? n.joined !== 'other'
      : n.bridgeJoined && n.band24 && !n.isolated && n.addressNow === 'saved')
  );
};

const bridgeMessage = (w: World): Message | null => {
  const n = w.network;
  if (!bridgeReached(w)) {
    const says = !n.localAllowed || n.joined === 'other' || w.oddity?.shows === 'unreachable';
    return says || falls(w, 'no way says unreachable', 0.35) ? 'unreachable' : 'no-reply';
  }
  if (n.firewall !== 'lets') return falls(w, 'firewall says refused', 0.25) ? 'unreachable' : 'no-reply';
  if (!n.portFits) return falls(w, 'wrong port refused', 0.75) ? 'unreachable' : 'no-reply';
  if (!n.kindFits) return falls(w, 'wrong kind refused') ? 'unreachable' : 'no-reply';
  return w.settings.bridgeSpeedFits && w.leads.socket === 'right' && !w.controller.otherSocket ? null : 'no-reply';
};

/** Whether the signal's wires and levels carry bytes both ways between adapter and mount. */
export const wiresCarry = (w: World): boolean =>
  !hasSerialLead(w) ||
  ((w.path === 'controller-serial' ? w.leads.adapterLevel === 'rs232' : w.leads.level === 'logic') &&
    w.leads.serial === 'its-own' &&
    w.leads.made !== 'miscounted' &&
    !w.leads.serialBroken &&
    w.leads.socket === 'right' &&
    !w.settings.flowControl);

const wireMessage = (w: World): Message | null => {
  if (isBridge(w)) return null;
  if (!wiresCarry(w)) return 'no-reply';
  const serialSet = hasSerialLead(w) || w.path === 'bluetooth';
  if (serialSet && !w.settings.frameFits) return 'odd-reply';
  // A mount's own USB socket has a serial adapter inside: the speed counts there too.
  if (!w.settings.speedFits) return falls(w, 'wrong speed garbles', 0.4) ? 'odd-reply' : 'no-reply';
  if (w.path === 'bluetooth' && (w.radio.heldElsewhere || w.radio.pairing === 'stale')) return 'no-reply';
  return null;
};

const controllerMessage = (w: World): Message | null => {
  const c = w.controller;
  if (!energised(w) || (hasController(w) && !w.power.controllerLeadHome)) return 'no-reply';
  if (c.firmware === 'half' || c.screen === 'loader') return 'no-reply';
  if (hasController(w) && c.screen !== 'ready' && !(c.screen === 'pass-through' && c.driverWantsPassThrough))
    return 'no-reply';
  if (throughController(w) && c.driverWantsPassThrough && c.screen !== 'pass-through') return 'no-reply';
  if (c.otherSocket || c.bothPlugged) return 'no-reply';
  if (c.firmware === 'old') return 'odd-reply';
  return w.oddity?.shows === 'no-reply' || w.oddity?.shows === 'odd-reply' ? w.oddity.shows : null;
};

const programMessage = (w: World): Message | null => {
  if (w.client === 'platform' && !w.driver.rightOfTwo) return 'no-reply';
  if (w.program.type === 'other') return falls(w, 'other series answers oddly') ? 'odd-reply' : 'no-reply';
  if (w.program.type === 'old-protocol') return falls(w, 'old protocol connects', 0.6) ? null : 'odd-reply';
  if (w.settings.restartsOnOpen) return 'no-reply';
  // Too short a patience fails at once, or only now and then.
  if (w.settings.timeOutShort && falls(w, 'short time-out fails at once')) return 'no-reply';
  return null;
};

/** A simulator, or a driver that does not start, never touches the port. */
export const programOpensPort = (w: World): boolean => w.program.type !== 'simulator' && driverMessage(w) === null;

/** What the program says on connecting: the first thing that stops it, in the order in which a program meets it. */
export const messageOf = (w: World): Message => {
  if (w.program.type === 'simulator') return 'connects';
  return (
    driverMessage(w) ??
    (isBridge(w) ? bridgeMessage(w) : portMessage(w)) ??
    wireMessage(w) ??
    controllerMessage(w) ??
    programMessage(w) ??
    'connects'
  );
};

const wirelessDrop = (w: World): Drop => {
  if (w.path === 'bluetooth') return w.radio.far ? 'random' : 'never';
  if (!isBridge(w)) return 'never';
  if (w.path === 'bridge-own-network' && w.network.joined === 'hops')
    return falls(w, 'hops when quiet') ? 'quiet' : 'minutes';
  return w.network.weak || w.network.masters === 'several' ? 'random' : 'never';
};

const cableDrop = (w: World): Drop => {
  if (w.path === 'bluetooth') return 'never';
  if (w.leads.wornAt !== null) return 'touched';
  if (w.leads.snags) return 'place';
  if (!isUsb(w)) return 'never';
  if (w.adapter.computerSlept) return 'after-sleep';
  if (w.adapter.fallsAsleep) return 'quiet';
  if (w.leads.bundled && w.leads.disturbed) return 'motors';
  if (w.leads.hubStarves || w.power.computerSags) return 'random';
  return hasSerialLead(w) && (w.adapter.latencyHurts || w.leads.serialTooLong) ? 'random' : 'never';
};

const ODD_DROPS: Readonly<Record<string, Drop>> = {
  'drops-quiet': 'quiet',
  'drops-motors': 'motors',
  'drops-random': 'random',
  'drops-device': 'random',
};

/** When a link that was made breaks or stumbles. */
export const dropOf = (w: World): Drop => {
  if (messageOf(w) !== 'connects' || w.program.type === 'simulator') return 'never';
  if (starves(w)) return 'motors';
  if (w.power.plug === 'loose') return 'touched';
  const odd = ODD_DROPS[w.oddity?.shows ?? ''];
  if (odd !== undefined) return odd;
  const cable = cableDrop(w);
  if (cable !== 'never') return cable;
  if (w.settings.timeOutShort || w.settings.noRetries) return 'random';
  return wirelessDrop(w);
};

/** What happens on a slew to something high in the sky. */
export const slewOf = (w: World): string => {
  if (messageOf(w) !== 'connects') return 'not-connected';
  if (w.program.type === 'simulator' || w.oddity?.shows === 'no-motion') return 'nothing';
  if (w.program.type === 'old-protocol' || w.program.type === 'too-new') return 'nothing';
  if (w.program.parked) return 'parked';
  if (!w.program.aligned) return 'not-aligned';
  if (refusesTarget(w)) return 'low-limit';
  if (w.program.pastMeridianLimit) return 'side-limit';
  if (w.oddity?.shows === 'refuses') return 'nothing';
  return w.program.clutchFirm ? 'moves' : 'hums';
};

export const followOf = (w: World): string => {
  // A reversed hour axis runs away from the stars; a reversed declination axis does not matter to tracking.
  if (w.sky.reversed && falls(w, 'the hour axis is reversed')) return 'leaves-fast';
  if (w.program.tracking === 'off') return 'leaves-fast';
  const creeps = w.program.tracking === 'another' || (w.sky.mount !== 'altaz' && w.sky.polarOffDeg > 2);
  return creeps || w.oddity?.shows === 'creeps' ? 'creeps' : 'stays';
};

const computerSeesMount = (w: World): boolean => {
  if (isBridge(w)) return bridgeReached(w);
  return portExists(w);
};

export type HowFar = 'no-light' | 'not-seen' | 'no-connect' | 'drops' | 'no-move' | 'elsewhere' | 'works';

export const howFarOf = (w: World): HowFar => {
  const simulated = w.program.type === 'simulator';
  if (!energised(w)) return 'no-light';
  if (!simulated && !computerSeesMount(w)) return 'not-seen';
  if (messageOf(w) !== 'connects') return 'no-connect';
  if (dropOf(w) !== 'never') return 'drops';
  if (slewOf(w) !== 'moves' || w.program.buttonsSlow || w.program.tracking !== 'sidereal') return 'no-move';
  return lands(w) && followOf(w) === 'stays' ? 'works' : 'elsewhere';
};

export const isWell = (w: World): boolean => howFarOf(w) === 'works';

/** Everything by which a member would notice that "something changed". */
export const complaintOf = (w: World): string => [howFarOf(w), messageOf(w), dropOf(w), slewOf(w)].join(' ');
