/** What looks at the USB device, its driver and the port the system makes of it answer. */
import { portExists, usbEnumerates, usbFlaps } from '../chain.js';
import { falls, type World } from '../world.js';
import { wouldWork } from './power-and-leads.js';

const portAppears = (w: World): string => {
  if (w.oddity?.shows === 'not-found') return 'unknown';
  if (w.leads.usbTooLong && falls(w, 'too long is half seen', 0.6)) return 'unknown';
  if (w.leads.usbWire === 'broken' && falls(w, 'broken is half seen', 0.35)) return 'unknown';
  if (!usbEnumerates(w) || w.adapter.machineTakes) return 'nothing';
  if (w.adapter.driver === 'taken') return 'flaps';
  if (w.adapter.driver !== 'fits')
    return w.adapter.driver === 'refused' && falls(w, 'refused has a port') ? 'port' : 'unknown';
  return usbFlaps(w) ? 'flaps' : 'port';
};

const STATUS: Readonly<Record<World['adapter']['driver'], string>> = {
  fits: 'working',
  none: 'no-driver',
  other: 'damaged',
  refused: 'cannot-start',
  blocked: 'blocked',
  disabled: 'disabled',
  restart: 'restart',
  'no-module': 'no-driver',
  taken: 'working',
};

const deviceStatus = (w: World): string => {
  if (portAppears(w) === 'unknown' && w.adapter.driver === 'fits') return 'cannot-start';
  if (!usbEnumerates(w) || w.adapter.machineTakes) return 'not-there';
  return STATUS[w.adapter.driver];
};

const kernelLog = (w: World): string => {
  if (portAppears(w) === 'unknown' && w.adapter.driver === 'fits') return 'no-address';
  if (!w.adapter.socketAlive && falls(w, 'tripped socket logs')) return 'power';
  if (!usbEnumerates(w)) return 'no-line';
  if (w.adapter.machineTakes) return falls(w, 'machine logs a device') ? 'taken' : 'attached';
  if (w.adapter.driver === 'taken') return 'taken';
  if (w.adapter.driver !== 'fits') return 'no-tty';
  if (w.power.computerSags) return falls(w, 'dips stand in the log', 0.7) ? 'power' : 'cycles';
  if (w.leads.hubStarves) return falls(w, 'hub logs over-current') ? 'power' : 'cycles';
  return usbFlaps(w) ? 'cycles' : 'attached';
};

const macTree = (w: World): string => {
  if (!usbEnumerates(w) || w.adapter.machineTakes) return 'neither';
  return w.adapter.driver === 'fits' && w.oddity?.shows !== 'not-found' ? 'both' : 'usb-only';
};

const adapterDriver = ({ adapter }: World): string => {
  if (adapter.driver === 'none' || adapter.driver === 'blocked') return 'none';
  return adapter.driver === 'other' ? 'another' : 'its-own';
};

const otherSocket = (w: World): string => {
  const port: World['port'] = w.port.chosen === 'old-number' ? { ...w.port } : w.port;
  const leads: World['leads'] = { ...w.leads, hubStarves: false, hub: 'none' };
  return wouldWork(w, { port, leads, adapter: { ...w.adapter, socketAlive: true, computerSlept: false } })
    ? 'works'
    : 'same';
};

export const ADAPTER_RULES: Readonly<Record<string, (w: World) => string>> = {
  'port-appears': portAppears,
  'device-status': deviceStatus,
  'kernel-log': kernelLog,
  'mac-tree': macTree,
  'adapter-driver': adapterDriver,
  'chip-text': ({ adapter }) => (adapter.driver === 'refused' ? 'refused' : 'plain'),
  'mac-approval': ({ adapter }) => (adapter.driver === 'blocked' ? 'waiting' : 'nothing-asked'),
  'other-usb-socket': otherSocket,
  'power-saving': ({ adapter }) => (adapter.maySleep ? 'may-sleep' : 'stays-on'),
  latency: ({ adapter }) => (adapter.latencyLong ? 'long' : 'short'),
  'virtual-machine': ({ adapter }) => (adapter.machineTakes ? 'takes-usb' : 'none'),
};

const portMatch = (w: World): string => {
  const { chosen, package: kind } = w.port;
  if (!portExists(w)) return 'not-offered';
  if (chosen === 'unlisted') return 'not-offered';
  if (kind === 'confined' && falls(w, 'confined lists no port', 0.6)) return 'not-offered';
  if (chosen === 'old-number') return 'another';
  if (chosen === 'other-device') return falls(w, 'guessed among several', 0.6) ? 'several' : 'another';
  return falls(w, 'several ports in a sound set-up', 0.06) ? 'several' : 'same';
};

export const PORT_RULES: Readonly<Record<string, (w: World) => string>> = {
  'port-match': portMatch,
  'mac-name': ({ port }) => (port.chosen === 'call-in' ? 'call-in' : 'call-out'),
  'port-group': ({ port }) => (port.group === 'on-file' ? 'on-file-only' : port.group),
  'port-holder': ({ port }) => port.holder ?? 'nobody',
  'package-kind': ({ port }) => (port.package === 'ordinary' ? 'ordinary' : 'confined'),
};
