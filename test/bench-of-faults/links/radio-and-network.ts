/** What looks at the Bluetooth link and at the network answer. */
import { bridgeReached, energised } from '../chain.js';
import { falls, type World } from '../world.js';
import { wouldWork } from './power-and-leads.js';

const listed = (w: World): string => {
  if (!w.radio.on) return 'bt-off';
  if (w.radio.pairing === 'refused') return 'code-refused';
  const paired = w.radio.pairing === 'good' || w.radio.pairing === 'stale';
  if (!energised(w)) return paired && falls(w, 'list remembers', 0.6) ? 'paired' : 'not-listed';
  if (w.radio.lowEnergyOnly) return falls(w, 'low energy listed') ? 'not-paired' : 'not-listed';
  if (w.radio.far && falls(w, 'too far to list', 0.2)) return 'not-listed';
  return paired ? 'paired' : 'not-paired';
};

const light = (w: World): string => {
  if (!energised(w)) return 'dark';
  return w.radio.heldElsewhere ? 'held' : 'waiting';
};

const btPort = (w: World): string => {
  if (w.radio.pairing === 'none' || w.radio.pairing === 'refused' || w.radio.lowEnergyOnly || !w.radio.on)
    return 'none';
  if (w.port.chosen === 'incoming') return 'incoming';
  return w.port.chosen === 'not-made' ? 'none' : 'outgoing';
};

export const RADIO_RULES: Readonly<Record<string, (w: World) => string>> = {
  'bt-listed': listed,
  'bt-light': light,
  'bt-near': (w) => (wouldWork(w, { radio: { ...w.radio, far: false } }) ? 'works' : 'same'),
  'bt-kind': ({ radio }) => (radio.lowEnergyOnly ? 'low-energy' : 'classic'),
  'bt-port': btPort,
};

const doubts = ({ network: n }: World): string => {
  if (n.vpn) return 'vpn';
  if (n.firewall !== 'lets' || !n.localAllowed) return 'not-allowed';
  if (n.masters === 'several') return 'second';
  if (n.twins) return 'two-links';
  if (n.weak) return 'far';
  return n.isolated ? 'guest' : 'none';
};

const routerList = (w: World): string => {
  const { network: n, power, oddity } = w;
  const gone = !n.bridgeJoined || !n.band24 || !power.bridgeFed || n.hung;
  // Many routers list a device for a day after it left.
  if (gone) return falls(w, 'router remembers', 0.25) ? 'same-address' : 'missing';
  if (oddity?.seen?.['router-list'] !== undefined) return oddity.seen['router-list'];
  return n.addressNow === 'new' ? 'new-address' : 'same-address';
};

/** Firewalls of programs let the system's own ping pass; a VPN, isolation and twin ranges do not. */
const ping = (w: World): string => {
  const n = w.network;
  const pings = bridgeReached({ ...w, network: { ...n, localAllowed: true } });
  if (!pings) return n.joined === 'other' || falls(w, 'ping says unreachable', 0.35) ? 'unreachable' : 'silent';
  return n.weak || n.joined === 'hops' ? 'patchy' : 'answers';
};

const opens = (w: World): string => {
  const n = w.network;
  if (!bridgeReached({ ...w, network: { ...n, localAllowed: true } }))
    return n.joined === 'other' || falls(w, 'ping says unreachable', 0.35) ? 'unreachable' : 'times-out';
  if (!n.portFits) return falls(w, 'wrong port refused', 0.75) ? 'refused' : 'times-out';
  if (!n.kindFits) return falls(w, 'wrong kind refused') ? 'refused' : 'opens';
  // A firewall that blocks the program stops a test by another program only where it stops all.
  return n.firewall !== 'lets' && falls(w, 'firewall stops all', 0.4) ? 'times-out' : 'opens';
};

const entry = ({ network: n }: World): string => {
  if (!n.portFits) return 'other-port';
  if (!n.kindFits) return 'other-kind';
  return n.addressNow === 'new' ? 'other-address' : 'matches';
};

export const NETWORK_RULES: Readonly<Record<string, (w: World) => string>> = {
  'network-doubts': doubts,
  'joined-network': ({ network }) => network.joined,
  'router-list': routerList,
  ping,
  'socket-opens': opens,
  'bridge-entry': entry,
  masters: ({ network }) => (network.masters === 'one' ? 'one' : 'more'),
  // The system's own firewall knows nothing of a suite's.
  firewall: ({ network }) => (network.firewall === 'blocks' ? 'blocked' : 'allowed'),
  'local-network': ({ network }) => (network.localAllowed ? 'allowed' : 'refused'),
  vpn: ({ network }) => (network.vpn ? 'active' : 'none'),
  signal: ({ network }) => (network.weak ? 'weak' : 'strong'),
  'guest-network': ({ network }) => (network.isolated ? 'guest' : 'main'),
  'house-band': ({ network }) => (network.band24 ? 'offered' : 'only-five'),
  'twin-numbers': ({ network }) => (network.twins ? 'twins' : 'apart'),
};
