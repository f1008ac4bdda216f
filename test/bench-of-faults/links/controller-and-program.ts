/** What looks at port settings, controller, mount driver and program answer, and the questions about the whole chain. */
import { dropOf, energised, followOf, howFarOf, messageOf, slewOf } from '../chain.js';
import { falls, hasController, isBridge, type World } from '../world.js';
import { wouldWork } from './power-and-leads.js';

const portSettings = ({ settings }: World): string => {
  if (!settings.speedFits) return 'other-speed';
  if (!settings.frameFits) return 'other-frame';
  return settings.flowControl ? 'flow-control' : 'match';
};

const patience = ({ settings }: World): string => {
  if (settings.timeOutShort) return 'short';
  return settings.noRetries ? 'no-retries' : 'usual';
};

const settingsScreen = (w: World): string => {
  const portWrong = isBridge(w)
    ? w.network.addressNow === 'new' || !w.network.portFits || !w.network.kindFits
    : w.port.chosen !== 'right';
  if (portWrong) return 'port';
  const set = portSettings(w);
  if (set !== 'match' && !isBridge(w)) return set === 'other-speed' ? 'speed' : 'frame-or-flow';
  if (patience(w) !== 'usual') return 'patience';
  return w.program.type === 'fits' && (w.client === 'direct' || w.driver.rightOfTwo) ? 'all-fit' : 'type';
};

const screen = (w: World): string => {
  if (!energised(w) || !w.power.controllerLeadHome) return 'dark';
  if (w.controller.firmware === 'half' && hasController(w)) return 'update';
  return w.controller.screen === 'loader' ? 'update' : w.controller.screen;
};

const setUp = ({ controller }: World): string => {
  if (controller.driverWantsPassThrough && controller.screen !== 'pass-through') return 'wants-pass-through';
  if (!controller.driverWantsPassThrough && controller.screen === 'pass-through') return 'left-pass-through';
  if (controller.otherSocket) return 'other-socket';
  return controller.firmware === 'old' ? 'older' : 'fit';
};

export const CONTROLLER_RULES: Readonly<Record<string, (w: World) => string>> = {
  'port-settings': portSettings,
  patience,
  'restarts-on-open': ({ settings }) => (settings.restartsOnOpen ? 'restarts' : 'stays'),
  'bridge-speed': ({ settings }) => (settings.bridgeSpeedFits ? 'matches' : 'differs'),
  'settings-screen': settingsScreen,
  'controller-screen': screen,
  'controller-too': ({ controller }) => (controller.bothPlugged ? 'both' : 'cable-only'),
  'board-light': ({ controller }) => (controller.firmware === 'half' ? 'loader' : 'normal'),
  'controller-set-up': setUp,
  'update-ended': ({ controller }) => (controller.firmware === 'half' ? 'stopped' : 'none'),
  'board-version': ({ controller }) => (controller.firmware === 'old' ? 'older' : 'enough'),
};

const driverList = ({ driver }: World): string => {
  if (!driver.installed) return 'none';
  if (!driver.bitsMatch || !driver.componentOn) return 'will-not-open';
  return driver.twoAlike || !driver.rightOfTwo ? 'two-alike' : 'one';
};

export const DRIVER_RULES: Readonly<Record<string, (w: World) => string>> = {
  'driver-list': driverList,
  bits: ({ driver }) => (driver.bitsMatch ? 'same' : 'differ'),
  component: ({ driver }) => (driver.componentOn ? 'active' : 'inactive'),
  'driver-starters': ({ driver }) => (driver.oneStarter ? 'one-at-a-time' : 'together'),
  privilege: ({ driver }) => (driver.privilegeAlike ? 'alike' : 'mixed'),
  'platform-service': ({ driver }) => (driver.serviceRuns ? 'running' : 'stopped'),
};

const mountType = ({ program }: World): string => {
  if (program.type === 'other') return 'other-type';
  return program.type === 'too-new' ? 'fits' : program.type;
};

const targetPlace = ({ sky, program }: World): string => {
  if (program.pastMeridianLimit) return 'meridian';
  return program.lowLimitDeg > 20 || sky.target.eastHours > 4 ? 'low' : 'easy';
};

export const PROGRAM_RULES: Readonly<Record<string, (w: World) => string>> = {
  slew: slewOf,
  'mount-type': mountType,
  'park-state': ({ program }) => (program.parked ? 'parked' : 'free'),
  'target-place': targetPlace,
  follow: followOf,
  'tracking-rate': ({ program }) => program.tracking,
  'motion-rate': ({ program }) => (program.buttonsSlow ? 'guide' : 'fast'),
  clutches: ({ program }) => (program.clutchFirm ? 'firm' : 'slips'),
};

/** Another computer, set up afresh by someone who knows how: its own driver, port, rights, program and network place. */
const onAnotherComputer = (w: World): string => {
  if (w.oddity?.inComputer === false) return 'fails';
  const fresh: Partial<World> = {
    oddity: null,
    adapter: {
      ...w.adapter,
      driver: 'fits',
      socketAlive: true,
      fallsAsleep: false,
      latencyHurts: false,
      computerSlept: false,
      machineTakes: false,
    },
    port: { ...w.port, chosen: 'right', group: 'member', holder: null, package: 'ordinary' },
    power: { ...w.power, computerSags: false },
    radio: { ...w.radio, on: true, pairing: 'good' },
    driver: {
      ...w.driver,
      installed: true,
      rightOfTwo: true,
      bitsMatch: true,
      componentOn: true,
      oneStarter: true,
      privilegeAlike: true,
      serviceRuns: true,
    },
    network: {
      ...w.network,
      joined: 'mounts',
      firewall: 'lets',
      localAllowed: true,
      vpn: false,
      twins: false,
      portFits: true,
      kindFits: true,
      masters: 'one',
    },
    settings: {
      ...w.settings,
      speedFits: true,
      frameFits: true,
      flowControl: false,
      timeOutShort: false,
      noRetries: false,
    },
    program: { ...w.program, type: 'fits' },
  };
  const moved = { ...w, ...fresh };
  return messageOf(moved) === 'connects' && dropOf(moved) === 'never' ? 'works' : 'fails';
};

/** A restart ends programs, releases ports, starts services, loads drivers and groups. */
export const restarted = (w: World): World => ({
  ...w,
  adapter: {
    ...w.adapter,
    driver: w.adapter.driver === 'restart' ? 'fits' : w.adapter.driver,
    computerSlept: false,
    machineTakes: false,
  },
  port: {
    ...w.port,
    holder: w.port.holder === 'service' ? 'service' : null,
    group: w.port.group === 'on-file' ? 'member' : w.port.group,
  },
  driver: { ...w.driver, oneStarter: true, privilegeAlike: w.driver.privilegeAlike },
});

/** "Not seen" and "will not connect" are one to many members; who picks a simulator may believe all is well but for the mount. */
const howFarSaid = (w: World): string => {
  const far = howFarOf(w);
  if (far !== 'not-seen') return far;
  if (!isBridge(w)) return falls(w, 'not seen said as no connection', 0.25) ? 'no-connect' : far;
  return falls(w, 'not seen said as no connection', 0.55) || !w.network.localAllowed ? 'no-connect' : far;
};

/** The same moment has several names. */
const whenFails = (w: World): string => {
  const drop = dropOf(w);
  if ((w.leads.hubStarves || w.power.computerSags) && drop === 'random')
    return falls(w, 'sees the device behind it') ? 'device' : drop;
  if (isBridge(w) && w.network.weak && drop === 'random')
    return falls(w, 'sees the place behind it', 0.3) ? 'one-place' : drop;
  return drop;
};

export const OVERVIEW_RULES: Readonly<Record<string, (w: World) => string>> = {
  'how-far': howFarSaid,
  message: messageOf,
  'when-drops': whenFails,
  'other-computer': onAnotherComputer,
  'after-restart': (w) => (wouldWork(restarted(w), {}) ? 'works' : 'same'),
};
