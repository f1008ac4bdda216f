/* eslint-disable complexity -- what a look shows is one list of cases, the first that holds is seen */
/** Another way to reach or move the mount: the same set-up with some links exchanged, asked whether it then works. */
import { dropOf, energised, messageOf, slewOf, starves } from '../chain.js';
import { randomFrom } from '../random.js';
import { falls, hasController, isBridge, isUsb, type World } from '../world.js';
import { triedIn } from './history.js';
import { missOf, MISSES_FROM_DEG } from './sky.js';
import { wouldWork } from './power-and-leads.js';

const refusesByItself = (w: World): boolean =>
  ['low-limit', 'side-limit', 'not-aligned'].includes(slewOf({ ...w, sky: { ...w.sky, sends: 'nothing' } }));

/** The keys and the controller's own goto: supply, mount, controller and what was typed; nothing of the computer. */
const withHandset = (w: World): string => {
  if (!hasController(w) && falls(w, 'no controller at hand', 0.35)) return 'none';
  if (!energised(w) || !w.power.controllerLeadHome || starves(w)) return 'fails';
  if (w.controller.firmware === 'half' || w.oddity?.shows === 'no-motion' || !w.program.clutchFirm) return 'fails';
  if (hasController(w) && w.controller.screen !== 'ready') return 'fails';
  if (refusesByItself(w)) return 'refuses';
  const typed = missOf({ ...w.sky, sends: w.sky.sends === 'nothing' ? 'nothing' : 'right', epochMixed: false });
  const connected = messageOf(w) === 'connects' && slewOf(w) === 'moves';
  if (connected && (typed.totalDeg > MISSES_FROM_DEG || typed.mirrored)) return 'misses';
  if (w.oddity?.shows === 'misses-small' || w.oddity?.shows === 'misses-anyhow') return 'misses';
  return falls(w, 'has tried a goto by hand') ? 'finds' : 'moves';
};

const freshNetwork = (w: World): World['network'] => ({
  ...w.network,
  joined: 'mounts',
  addressNow: 'saved',
  portFits: true,
  kindFits: true,
  firewall: 'lets',
  localAllowed: true,
  vpn: false,
  twins: false,
});

/** A phone brings its own radio, program and settings, and finds the bridge's address by itself. */
const withPhone = (w: World): string => {
  if (falls(w, 'no phone program', 0.25)) return 'none';
  const phone: World = {
    ...w,
    client: 'direct',
    network: freshNetwork(w),
    radio: { ...w.radio, on: true, pairing: 'good', heldElsewhere: false, lowEnergyOnly: false },
    port: { ...w.port, chosen: 'right', group: 'member', holder: null, package: 'ordinary' },
    settings: {
      ...w.settings,
      speedFits: true,
      frameFits: true,
      flowControl: false,
      timeOutShort: false,
      noRetries: false,
    },
    program: { ...w.program, type: 'fits' },
    oddity: w.oddity?.inComputer === true ? null : w.oddity,
  };
  if (messageOf(phone) !== 'connects') return 'fails';
  return dropOf(phone) === 'never' ? 'works' : 'stutters';
};

/** Another program or a terminal on this computer: driver, program and their settings are new, port and rights are not. */
const withOtherProgram = (w: World): string => {
  if (falls(w, 'no other program', 0.25)) return 'none';
  const inProgram = w.oddity?.link === 'client-program' || w.oddity?.link === 'driver';
  const other: World = {
    ...w,
    client: 'direct',
    oddity: inProgram ? null : w.oddity,
    program: { ...w.program, type: 'fits' },
    settings: {
      ...w.settings,
      speedFits: true,
      frameFits: true,
      flowControl: false,
      timeOutShort: false,
      noRetries: false,
    },
    port: { ...w.port, package: 'ordinary', chosen: falls(w, 'picks the port anew', 0.6) ? 'right' : w.port.chosen },
    network: { ...w.network, firewall: 'lets', localAllowed: true, portFits: true, kindFits: true },
  };
  return messageOf(other) === 'connects' && dropOf(other) === 'never' ? 'works' : 'fails';
};

const otherAdapter = (w: World): string => {
  if (falls(w, 'no other adapter', 0.45)) return 'none';
  const adapter: World['adapter'] = { ...w.adapter, alive: true, driver: 'fits', latencyHurts: false };
  return wouldWork(w, { adapter, leads: { ...w.leads, level: 'logic', adapterLevel: 'rs232' } }) ? 'works' : 'same';
};

const otherSupply = (w: World): string => {
  if (falls(w, 'no other supply', 0.4)) return 'none';
  const power: World['power'] = {
    ...w.power,
    source: 'live',
    supply: 'enough',
    lead: 'stout',
    batteryFull: true,
    plug: 'firm',
    fuseWhole: true,
  };
  return wouldWork(w, { power }) ? 'works' : 'same';
};

const atHome = (w: World): boolean =>
  w.network.weak || w.radio.far || starves(w) || w.sky.sends === 'wrong-clock' || w.network.joined !== 'mounts';

const otherPlace =
  (looks: Readonly<Record<string, (w: World) => string>>) =>
  (w: World): string => {
    if (falls(w, 'has one place only', 0.4)) return 'untried';
    if (atHome(w)) return 'home';
    if (isBridge(w) && (w.network.isolated || !w.network.band24)) return 'other-network';
    if (isUsb(w) && w.leads.hubStarves) return 'alone';
    if (w.controller.screen === 'question' && falls(w, 'another answered it')) return 'other-person';
    return looks['other-computer']?.(w) === 'works' ? 'other-system' : 'nowhere';
  };

const mountDoes = (w: World): string => {
  const slew = slewOf(w);
  if (slew === 'not-connected') return 'not-connected';
  if (w.program.type === 'old-protocol' || w.program.type === 'too-new')
    return falls(w, 'protocol shows nonsense') ? 'nonsense' : 'nothing';
  if (slew === 'parked' || slew === 'not-aligned') return 'refuses-all';
  if (slew === 'low-limit' || slew === 'side-limit') return 'refuses-some';
  if (slew === 'nothing') return w.oddity?.shows === 'refuses' ? 'refuses-some' : 'nothing';
  if (slew === 'hums') return 'one-axis';
  if (missOf(w.sky).mirrored) return 'wrong-way';
  if (missOf(w.sky).totalDeg > MISSES_FROM_DEG || (w.oddity?.shows ?? '').startsWith('misses')) return 'elsewhere';
  return w.program.tracking === 'sidereal' && w.oddity?.shows !== 'creeps' ? 'well' : 'drifts';
};

const missShape = (w: World): string => {
  const { sky } = w;
  const miss = missOf(sky);
  if (miss.mirrored) return 'mirrored';
  if (w.program.tracking !== 'sidereal' || w.oddity?.shows === 'creeps') return 'drifting';
  if (w.oddity?.shows === 'misses-anyhow') return 'no-pattern';
  if (miss.totalDeg < MISSES_FROM_DEG && w.oddity?.shows !== 'misses-small') return 'no-miss';
  if (sky.epochMixed || sky.sends === 'wrong-site' || sky.sends === 'wrong-clock')
    return falls(w, 'has compared with the handset') ? 'computer-only' : 'same';
  if (sky.mount !== 'altaz' && sky.polarOffDeg > 2) return falls(w, 'sees it grow') ? 'grows' : 'no-pattern';
  // The same error in hour angle on an equatorial mount; on an alt-azimuth one a wrong latitude has no plain pattern.
  return sky.mount === 'altaz' && Math.abs(sky.told.latitudeDeg - sky.latitudeDeg) > 1 ? 'no-pattern' : 'same';
};

const refusedWhere = (w: World): string => {
  const slew = slewOf(w);
  if (slew === 'side-limit') return 'one-side';
  if (slew !== 'low-limit') return 'none';
  return w.program.lowLimitDeg > 20 || w.sky.target.eastHours > 4 ? 'low' : 'up-now';
};

const handsetShows = (w: World): string => {
  const random = randomFrom(`handset shows ${w.luck}`);
  switch (slewOf(w)) {
    case 'low-limit':
      return random.pick(['horizon', 'horizon', 'limits', 'beep']);
    case 'side-limit':
      return random.pick(['limits', 'limits', 'rejected']);
    case 'parked':
      return 'parked';
    case 'not-aligned':
      return 'align';
    case 'hums':
      return random.pick(['motor', 'nothing']);
    default:
      return w.oddity?.shows === 'refuses' ? random.pick(['rejected', 'beep']) : 'nothing';
  }
};

const timeAfterConnect = ({ sky }: World): string => {
  if (sky.sends === 'wrong-clock') return 'spoils';
  return sky.sends === 'nothing' && sky.told.entry !== 'right' ? 'wrong-both' : 'unchanged';
};

export const contrastRules = (
  looks: Readonly<Record<string, (w: World) => string>>,
): Readonly<Record<string, (w: World) => string>> => {
  const own = {
    'works-with-handset': withHandset,
    'works-with-phone': withPhone,
    'other-program': withOtherProgram,
    'other-adapter': otherAdapter,
    'other-supply': otherSupply,
    'other-place': otherPlace(looks),
    'mount-does': mountDoes,
    'miss-shape': missShape,
    'refused-where': refusedWhere,
    'handset-shows': handsetShows,
    'time-after-connect': timeAfterConnect,
    'earlier-lead': (w: World) => (falls(w, 'an earlier lead did no harm', 0.08) ? 'yes' : 'no'),
    contacts: (w: World) => (falls(w, 'contacts a little green', 0.05) ? 'dirty' : 'bright'),
    'bridge-beside-hub': (w: World) => (falls(w, 'a hub near a sound bridge', 0.2) ? 'beside' : 'clear'),
    'two-systems': (w: World) => (falls(w, 'two systems without harm', 0.07) ? 'yes' : 'no'),
  };
  return { ...own, 'tried-already': (w) => triedIn(w, { ...looks, ...own }) };
};
