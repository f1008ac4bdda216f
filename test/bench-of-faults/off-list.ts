/**
 * Set-ups in trouble that no shipped fault describes. Each sits at one link and shows itself in one way; from experience of
 * how electronics, systems and people fail, no source. A walk cannot cure them; it can bring them down to a link and hand them on.
 */
import type { Oddity, PathId, SystemId } from './world.js';

export interface OffList extends Oddity {
  readonly paths?: readonly PathId[];
  readonly systems?: readonly SystemId[];
  /** The fault id under which the knowledge may hold it; then it is played among the listed ones. */
  readonly listedAs?: string;
}

const CONTROLLER_PATHS: readonly PathId[] = ['controller-serial', 'controller-usb'];
const USB: readonly PathId[] = ['controller-serial', 'controller-usb', 'board-cable', 'built-in-usb'];
const BRIDGE: readonly PathId[] = ['bridge-own-network', 'bridge-house-network'];

const odd = (
  name: string,
  link: Oddity['link'],
  shows: Oddity['shows'],
  telling: string,
  more: Partial<OffList> = {},
): OffList => ({ name, link, shows, telling, inComputer: false, ...more });

export const OFF_LIST: readonly OffList[] = [
  odd(
    'board input hurt by wrong levels',
    'controller-mode',
    'no-reply',
    'its start text comes, but nothing typed is answered',
    { listedAs: 'board-input-hurt', paths: ['board-cable'], seen: { 'adapter-light': 'sends' } },
  ),
  odd(
    'controller serial chip dead',
    'controller-mode',
    'no-reply',
    'the keys drive the mount, the socket is dumb with every lead',
    {
      listedAs: 'board-input-hurt',
      paths: ['controller-serial'],
      seen: { 'arrow-keys': 'both', 'adapter-light': 'sends' },
    },
  ),
  odd('damp in the connector', 'cable', 'drops-random', 'it comes with the dew and is gone by noon', {
    listedAs: 'moisture-on-contacts',
    paths: USB,
    seen: { wiggle: 'firm' },
  }),
  odd('frozen connector contact', 'cable', 'drops-random', 'only under minus ten', { paths: USB }),
  odd('earth loop through the camera supply', 'cable', 'drops-random', 'only with the camera supply plugged in', {
    listedAs: 'stray-currents',
    paths: USB,
    seen: { 'lead-route': 'apart', hub: 'straight' },
  }),
  odd('static from a dry carpet resets the hub chip', 'cable', 'drops-device', 'a spark when touching the tripod', {
    paths: USB,
  }),
  odd('USB 3 noise drowns the bridge', 'network', 'drops-random', 'only while the camera streams', {
    listedAs: 'radio-noise-beside-bridge',
    paths: BRIDGE,
    seen: { signal: 'strong', ping: 'patchy', masters: 'one' },
  }),
  odd('microwave link next door', 'network', 'drops-random', 'each evening at the same hour', {
    paths: BRIDGE,
    seen: { signal: 'strong', ping: 'patchy' },
  }),
  odd('mesh node moves the bridge', 'network', 'drops-quiet', 'the router shows it at another node each time', {
    paths: ['bridge-house-network'],
    seen: { signal: 'strong' },
  }),
  odd('two bridges share one name', 'network', 'no-reply', 'a second bridge of the same name answers from next door', {
    listedAs: 'namesake-network',
    paths: ['bridge-own-network'],
    seen: { ping: 'answers', 'socket-opens': 'opens' },
  }),
  odd('address taken by a printer', 'network', 'unreachable', 'the address answers even with the mount switched off', {
    listedAs: 'address-taken-twice',
    paths: ['bridge-house-network'],
    seen: { ping: 'answers', 'socket-opens': 'refused', 'router-list': 'same-address' },
  }),
  odd('bridge firmware bug after a day', 'network', 'drops-quiet', 'after about a day of running, every time', {
    paths: BRIDGE,
    seen: { signal: 'strong', ping: 'answers' },
  }),
  odd('proxy settings catch the local address', 'network', 'unreachable', 'the office set a proxy', {
    listedAs: 'proxy-in-the-way',
    paths: BRIDGE,
    seen: { ping: 'answers', 'socket-opens': 'opens', firewall: 'allowed' },
    inComputer: true,
  }),
  odd('security suite sandboxes the program', 'client-program', 'driver-error', 'the suite put it in quarantine', {
    listedAs: 'suite-quarantines-program',
    systems: ['windows'],
    inComputer: true,
  }),
  odd('corrupt program profile', 'client-program', 'no-reply', 'a fresh user account works', {
    listedAs: 'program-profile-broken',
    inComputer: true,
    seen: { 'settings-screen': 'all-fit' },
  }),
  odd(
    'program cannot bear letters in the user name',
    'driver',
    'driver-error',
    'the account has an accent in its name',
    { listedAs: 'program-profile-broken', inComputer: true },
  ),
  odd('registry of the platform damaged', 'driver', 'driver-error', 'every driver fails to open', {
    listedAs: 'platform-damaged',
    systems: ['windows'],
    inComputer: true,
  }),
  odd('clone of the mount answers another dialect', 'driver', 'odd-reply', 'replies come, in another order', {
    seen: { 'mount-type': 'fits', 'adapter-light': 'both' },
  }),
  odd(
    'bootloader waits for a key on each start',
    'controller-mode',
    'no-reply',
    'ten seconds after power-on it answers',
    { listedAs: 'asked-too-soon', paths: ['built-in-usb'], seen: { 'board-light': 'normal' } },
  ),
  odd('system update broke the port driver', 'adapter', 'not-found', 'since the update of Tuesday', {
    paths: USB,
    inComputer: true,
    seen: { 'device-status': 'working', 'kernel-log': 'attached', 'adapter-driver': 'its-own' },
  }),
  odd(
    'USB chip without serial number twin of another',
    'system-port',
    'denied',
    'with the focuser unplugged it works',
    { paths: ['controller-serial'], inComputer: true, seen: { 'port-holder': 'nobody', 'port-group': 'member' } },
  ),
  odd('lock file left by a crash', 'system-port', 'denied', 'says it is locked, by a process that is gone', {
    listedAs: 'lock-file-left',
    paths: USB,
    systems: ['linux', 'macos'],
    inComputer: true,
    seen: { 'port-holder': 'nobody', 'port-group': 'member' },
  }),
  odd('motor driver chip hot', 'power', 'no-motion', 'after twenty minutes of slews it stops till it cools', {
    seen: { slew: 'hums', 'arrow-keys': 'one' },
  }),
  odd('gear train stripped', 'alignment', 'no-motion', 'the motor runs, a gear grates', {
    listedAs: 'gear-damaged',
    seen: { slew: 'hums', clutches: 'firm', 'arrow-keys': 'one' },
  }),
  odd('encoder ring dirty', 'alignment', 'misses-anyhow', 'the position on the screen jumps', {
    seen: { 'home-start': 'at-home', 'star-sure': 'sure' },
  }),
  odd('tube slips in its rings', 'alignment', 'misses-small', 'the dovetail shifts across the meridian', {
    listedAs: 'tube-shifts',
    seen: { clutches: 'firm' },
  }),
  odd('mirror flops', 'alignment', 'misses-small', 'it jumps when the tube passes the meridian', {
    listedAs: 'tube-shifts',
    seen: { 'epoch-entries': 'same' },
  }),
  odd('cone error', 'alignment', 'misses-small', 'other way on the other side of the meridian', {
    listedAs: 'cone-error',
    seen: { 'epoch-entries': 'same' },
  }),
  odd('tripod sinks', 'alignment', 'creeps', 'worse on the lawn after rain', {
    listedAs: 'feet-settle',
    seen: { 'tracking-rate': 'sidereal', 'polar-axis': 'close' },
  }),
  odd('worm has a bad tooth', 'alignment', 'creeps', 'to and fro every eight minutes', {
    listedAs: 'worm-error',
    seen: { 'tracking-rate': 'sidereal', 'polar-axis': 'close' },
  }),
  odd('planetary mode with a comet rate left in', 'client-program', 'creeps', 'a custom rate from last month', {
    listedAs: 'tracking-rate-wrong',
    seen: { 'tracking-rate': 'sidereal', 'polar-axis': 'close' },
  }),
  odd('axis limit switch stuck', 'controller-mode', 'refuses', 'one direction is refused everywhere', {
    seen: { 'target-place': 'easy', 'park-state': 'free' },
  }),
  odd('guider holds the axis', 'client-program', 'refuses', 'it moves once the guider is stopped', {
    listedAs: 'guider-holds-axis',
    seen: { 'target-place': 'easy', 'park-state': 'free' },
  }),
  odd('power socket cracked inside', 'power', 'dark', 'dark on every supply, lit for a moment when hot', {
    seen: { 'power-touch': 'steady', 'supply-live': 'live', fuse: 'whole' },
  }),
  odd(
    'controller lead has one broken wire',
    'controller-mode',
    'no-reply',
    'the keys work, the text comes, but no computer',
    { listedAs: 'board-input-hurt', paths: CONTROLLER_PATHS, seen: { 'arrow-keys': 'both' } },
  ),
  odd(
    'module speaks another serial speed since its reset',
    'radio',
    'odd-reply',
    'garbled letters since its battery ran flat',
    { paths: ['bluetooth'], seen: { 'port-settings': 'match' } },
  ),
  odd('transmitter next door', 'cable', 'drops-random', 'the loudspeakers buzz at the same time', {
    paths: USB,
    seen: { wiggle: 'firm', contacts: 'bright', 'separate-supplies': 'one' },
  }),
  odd('wire of a robot mower', 'network', 'drops-random', 'only while the mower is out', {
    paths: BRIDGE,
    seen: { signal: 'strong', ping: 'patchy', 'bridge-beside-hub': 'clear' },
  }),
  odd('switch of the roof says shut', 'client-program', 'refuses', 'the observatory program waits for the roof', {
    seen: { 'park-state': 'free', 'guider-running': 'stopped' },
  }),
  odd('plug that works one way round only', 'cable', 'not-seen', 'turned over in its socket it is there', {
    paths: USB,
    seen: { 'usb-cable': 'data', 'usb-plugs': 'home' },
  }),
  odd('belt skips in the cold', 'alignment', 'no-motion', 'a toothed belt is slack', {
    seen: { clutches: 'firm', slew: 'hums', 'gear-sound': 'even' },
  }),
  odd('shared folder sets the site back', 'site-and-time', 'misses-anyhow', 'each morning the old numbers are back', {
    inComputer: true,
  }),
  odd('satellite receiver gives an old date', 'site-and-time', 'misses-anyhow', 'the year jumps back at each start', {
    seen: { 'date-entries': 'reset' },
  }),
  odd('router takes no more devices', 'network', 'unreachable', 'the router says its list is full', {
    paths: ['bridge-house-network'],
    seen: { 'router-list': 'missing', 'bridge-light': 'lit' },
  }),
  odd('power bank switches itself off', 'power', 'drops-quiet', 'its lights go out when little is drawn', {
    paths: BRIDGE,
    seen: { 'power-walk': 'all-well', 'battery-volts': 'full' },
  }),
  odd('board shuts itself off when warm', 'controller-mode', 'drops-quiet', 'a warm smell, and again after cooling', {
    paths: ['board-cable', 'built-in-usb'],
    seen: { 'power-saving': 'stays-on' },
  }),
  odd('module thinks it is a headset', 'radio', 'no-reply', 'the system shows it among the loudspeakers', {
    paths: ['bluetooth'],
    seen: { 'bt-listed': 'paired', 'bt-light': 'waiting' },
  }),
  odd('disk of the computer is full', 'client-program', 'driver-error', 'it also says no space left', {
    inComputer: true,
  }),
  odd(
    'capture program takes all the computer has',
    'client-program',
    'drops-device',
    'the clock on the screen stutters',
    {
      inComputer: true,
      seen: { hub: 'straight', 'separate-supplies': 'one' },
    },
  ),
  odd('last owner changed the speed for good', 'port-settings', 'odd-reply', 'the sheet of the last owner says 19200', {
    paths: ['controller-serial', 'board-cable'],
    seen: { 'port-settings': 'match', 'mount-type': 'fits' },
  }),
  odd('home sensor finds another place each time', 'alignment', 'misses-anyhow', 'its search for home ends elsewhere', {
    seen: { 'home-start': 'at-home', 'star-sure': 'sure', 'old-points': 'fresh' },
  }),
  odd('motor cable is pinched at one angle', 'controller-mode', 'no-motion', 'only beyond a certain height', {
    seen: { slew: 'moves', clutches: 'firm', balance: 'balanced' },
  }),
];
