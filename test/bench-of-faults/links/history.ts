/** What a member tells of the days before: what changed last, whether it ever worked, what was tried in vain. */
import { randomFrom } from '../random.js';
import { falls, type World } from '../world.js';

type When = (w: World) => boolean;

/** What usually changes before such a trouble shows; each of the words is as likely as the others. By judgement, no source. */
const BEFORE: readonly (readonly [When, readonly string[]])[] = [
  [({ adapter: a }) => a.driver === 'none' || a.driver === 'blocked', ['computer', 'computer', 'update', 'cable']],
  [({ adapter: a }) => a.driver === 'disabled', ['program', 'nothing']],
  [({ adapter: a }) => a.driver !== 'fits', ['update', 'update', 'computer', 'nothing']],
  [({ adapter: a }) => a.machineTakes, ['program', 'program', 'nothing']],
  [({ adapter: a }) => !a.alive || !a.socketAlive || !a.mountUsbAlive, ['nothing', 'nothing', 'handled']],
  [({ adapter: a }) => a.fallsAsleep || a.computerSlept, ['nothing', 'update', 'computer']],
  [({ port }) => port.chosen === 'old-number', ['socket', 'socket', 'nothing', 'cable']],
  [({ port }) => port.chosen === 'other-device', ['device', 'socket', 'never-worked']],
  [({ port }) => port.chosen === 'unlisted', ['socket', 'device', 'computer']],
  [({ port }) => port.chosen !== 'right', ['never-worked', 'computer']],
  [({ port }) => port.group !== 'member', ['computer', 'never-worked']],
  [({ port }) => port.package === 'confined', ['program', 'update', 'computer']],
  [({ port }) => port.holder !== null, ['program', 'nothing', 'update', 'device']],
  [
    ({ leads: l }) =>
      l.level !== 'logic' || l.adapterLevel !== 'rs232' || l.serial !== 'its-own' || l.made === 'miscounted',
    ['cable', 'cable', 'never-worked'],
  ],
  [({ leads: l }) => l.usbWire === 'charge-only' || l.usbTooLong || l.serialTooLong, ['cable', 'cable', 'place']],
  [({ power: p }) => p.computerSags, ['device', 'supply', 'computer']],
  [({ leads: l }) => l.hubStarves, ['device', 'device', 'socket']],
  [({ leads: l }) => l.socket !== 'right', ['place', 'nothing', 'never-worked']],
  [({ leads: l }) => l.snags || l.disturbed, ['device', 'cable', 'nothing']],
  [({ leads: l }) => l.wornAt !== null || l.serialBroken || l.usbWire === 'broken', ['nothing', 'nothing', 'handled']],
  [({ power: p }) => p.supply === 'too-few' || p.plug === 'reversed', ['supply', 'supply', 'device']],
  [({ power: p }) => p.lead === 'starving', ['supply', 'place', 'cable']],
  [({ power: p }) => p.from === 'battery' && !p.batteryFull, ['nothing', 'season', 'nothing']],
  [({ power: p }) => !p.controllerLeadHome || p.plug === 'loose' || !p.bridgeFed || !p.switchOn, ['nothing', 'place']],
  [({ radio: r }) => r.pairing === 'none' || r.pairing === 'refused', ['computer', 'never-worked']],
  [({ radio: r }) => r.pairing === 'stale', ['update', 'nothing']],
  [({ radio: r }) => r.lowEnergyOnly, ['never-worked']],
  [({ radio: r }) => r.far, ['place']],
  [({ network: n }) => n.addressNow === 'new' || !n.bridgeJoined || !n.band24, ['network', 'network', 'nothing']],
  [({ network: n }) => n.isolated, ['network', 'never-worked']],
  [({ network: n }) => n.firewall !== 'lets', ['update', 'program', 'network', 'computer']],
  [({ network: n }) => !n.localAllowed, ['update', 'computer']],
  [({ network: n }) => n.vpn, ['computer', 'program', 'nothing']],
  [({ network: n }) => n.weak, ['place', 'network']],
  [({ network: n }) => n.joined !== 'mounts', ['place', 'never-worked', 'nothing']],
  [({ network: n }) => n.twins, ['network', 'device']],
  [({ network: n }) => n.masters === 'several', ['device', 'nothing']],
  [({ network: n }) => !n.portFits || !n.kindFits, ['program', 'never-worked']],
  [({ controller: c }) => c.firmware === 'half', ['firmware']],
  [({ controller: c }) => c.firmware === 'old', ['program', 'update', 'never-worked']],
  [({ controller: c }) => c.screen === 'pass-through' && !c.driverWantsPassThrough, ['firmware', 'nothing', 'program']],
  [({ controller: c }) => c.otherSocket || c.driverWantsPassThrough, ['program', 'never-worked', 'firmware']],
  [({ driver: d }) => !d.installed || !d.componentOn, ['computer', 'computer', 'update']],
  [({ driver: d }) => !d.bitsMatch || !d.privilegeAlike || !d.oneStarter, ['program', 'update']],
  [({ driver: d }) => !d.rightOfTwo, ['program', 'never-worked', 'computer']],
  [({ program: p }) => p.type !== 'fits', ['program', 'never-worked']],
  [({ settings: s }) => !s.speedFits || !s.frameFits || s.flowControl, ['program', 'never-worked', 'firmware']],
  [({ settings: s }) => s.timeOutShort || s.noRetries || !s.bridgeSpeedFits, ['program', 'never-worked', 'nothing']],
  [({ sky }) => sky.told.summer !== sky.summer, ['season', 'season', 'nothing']],
  [({ sky }) => sky.told.zoneHours !== sky.zoneHours, ['place', 'never-worked', 'nothing']],
  [({ sky }) => sky.told.siteEntry !== 'match', ['place', 'never-worked', 'nothing']],
  [({ sky }) => sky.told.entry === 'reset', ['season', 'nothing']],
  [({ sky }) => sky.sends === 'wrong-clock', ['computer', 'place', 'nothing']],
  [({ sky }) => sky.sends === 'wrong-site' || sky.epochMixed, ['program', 'program', 'place']],
  [({ sky }) => sky.reversed, ['handled', 'place']],
  [({ program: p }) => !p.clutchFirm || p.lowLimitDeg > 20, ['device', 'handled', 'nothing']],
];

export const changedLast = (w: World): string => {
  const words = w.oddity === null ? BEFORE.find(([when]) => when(w))?.[1] : undefined;
  return randomFrom(`changed ${w.luck}`).pick(words ?? ['nothing', 'nothing', 'place']);
};

const workedBefore = (w: World): string => {
  const last = changedLast(w);
  if (last === 'never-worked') return 'first-time';
  if (last === 'nothing' || last === 'season') return 'same';
  // A change a fortnight ago is no change to some.
  return falls(w, 'forgets the change', 0.2) ? 'same' : 'changed';
};

/** What leaves the trouble as it is may have been tried; `looks` answers the contrast. */
export const triedIn = (w: World, looks: Readonly<Record<string, (w: World) => string>>): string => {
  const vain = (
    [
      ['restart', 'after-restart', 'same'],
      ['cable', 'other-cable', 'same'],
      ['socket', 'other-usb-socket', 'same'],
      ['computer', 'other-computer', 'fails'],
      ['program', 'other-program', 'fails'],
    ] as const
  ).filter(([, check, answer]) => looks[check]?.(w) === answer);
  const random = randomFrom(`tried ${w.luck}`);
  return vain.length === 0 || random.chance(0.4) ? 'nothing' : random.pick(vain)[0];
};

/** A lead that cannot have worked is new; of the others some are. */
const sameLead = (w: World): string => {
  const { level, adapterLevel, serial, made, usbWire } = w.leads;
  const cannot =
    level !== 'logic' ||
    adapterLevel !== 'rs232' ||
    serial !== 'its-own' ||
    made === 'miscounted' ||
    usbWire === 'charge-only';
  if (cannot || ['cable', 'never-worked'].includes(changedLast(w))) return 'new';
  return falls(w, 'the lead is new', 0.1) ? 'new' : 'worked';
};

export const HISTORY_RULES: Readonly<Record<string, (w: World) => string>> = {
  'not-here': () => 'nothing',
  'same-lead': sameLead,
  'changed-last': changedLast,
  'worked-before': workedBefore,
};
