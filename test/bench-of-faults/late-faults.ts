/** Faults that came to the list later: most of them as an oddity at one link, which their own remedy takes away. */
import { at, type Change } from './edit.js';
import { GUIDE_FAULTS } from './guide-faults.js';
import { NAMED_FAULTS } from './named-faults.js';
import { oddly } from './oddly.js';
import type { Oddity, World } from './world.js';

const odd =
  (name: string, link: Oddity['link'], shows: Oddity['shows'], seen: Oddity['seen']): Change =>
  (w) => ({ ...w, oddity: { name, link, shows, seen: seen ?? {}, inComputer: false, telling: '' } });

const ODDITIES: Readonly<Record<string, Change>> = {
  'board-input-hurt': odd('board-input-hurt', 'controller-mode', 'no-reply', {
    'earlier-lead': 'yes',
    'adapter-light': 'sends',
    'other-program': 'text',
  }),
  'moisture-on-contacts': odd('moisture-on-contacts', 'cable', 'drops-random', {
    contacts: 'dirty',
    'when-drops': 'weather',
    'other-place': 'home',
    'changed-last': 'season',
  }),
  'controller-cold': odd('controller-cold', 'controller-mode', 'drops-random', {
    'when-drops': 'weather',
    'other-place': 'home',
    'changed-last': 'season',
  }),
  'radio-noise-beside-bridge': odd('radio-noise-beside-bridge', 'network', 'drops-random', {
    'when-drops': 'device',
    'bridge-beside-hub': 'beside',
    'other-place': 'alone',
    'works-with-phone': 'stutters',
    'changed-last': 'device',
    signal: 'strong',
    ping: 'patchy',
  }),
  'router-night-schedule': odd('router-night-schedule', 'network', 'drops-random', {
    'when-drops': 'hour',
    'changed-last': 'network',
    signal: 'strong',
  }),
  'motor-lead-loose': odd('motor-lead-loose', 'client-program', 'no-motion', {
    slew: 'hums',
    'mount-does': 'one-axis',
    'arrow-keys': 'one',
    clutches: 'firm',
    'gear-sound': 'silent',
    'handset-shows': 'motor',
  }),
  'gearing-wrong': odd('gearing-wrong', 'alignment', 'misses-anyhow', {
    'miss-shape': 'grows',
    'mount-does': 'elsewhere',
    'changed-last': 'handled',
    miss: 'east-west',
  }),
  'cone-error': odd('cone-error', 'alignment', 'misses-small', { 'miss-shape': 'one-side', 'mount-does': 'elsewhere' }),
  'moon-place-crude': odd('moon-place-crude', 'site-and-time', 'misses-small', {
    'miss-shape': 'solar-system',
    'mount-does': 'elsewhere',
    'works-with-handset': 'finds',
  }),
  'high-limit-set': odd('high-limit-set', 'client-program', 'refuses', {
    'refused-where': 'high',
    'mount-does': 'refuses-some',
    'handset-shows': 'limits',
    'works-with-handset': 'refuses',
    slew: 'side-limit',
  }),
  'program-forbids-the-sun': odd('program-forbids-the-sun', 'client-program', 'refuses', {
    'refused-where': 'moon-sun',
    'mount-does': 'refuses-some',
    'works-with-handset': 'finds',
    slew: 'nothing',
  }),
  'low-air': odd('low-air', 'alignment', 'misses-small', {
    'miss-shape': 'low',
    'mount-does': 'elsewhere',
    'target-place': 'low',
  }),
};

const AT_THE_MOUNT = { 'how-far': 'guiding', 'mount-does': 'well', 'miss-shape': 'no-miss', miss: 'on-target' };

/** Guiding, gears, feet: it points, and does not hold. */
const HOLDING: Readonly<Record<string, Change>> = {
  'declination-play': oddly('declination-play', 'alignment', 'creeps', {
    best: { guiding: 'lags' },
    seen: { guiding: 'swings', ...AT_THE_MOUNT, follow: 'stays' },
    mixed: { 'axis-play': ['play', 'tight'] },
  }),
  'guide-calibration-stale': oddly('guide-calibration-stale', 'alignment', 'creeps', {
    best: { guiding: 'runs-away' },
    seen: { guiding: 'one-way', ...AT_THE_MOUNT, follow: 'stays' },
    mixed: { 'when-drops': ['never', 'place'] },
  }),
  'guide-pulses-lost': oddly('guide-pulses-lost', 'alignment', 'creeps', {
    best: { guiding: 'no-pulses' },
    seen: { guiding: 'one-way', ...AT_THE_MOUNT, follow: 'stays', 'changed-last': 'program' },
  }),
  'guide-too-hard': oddly('guide-too-hard', 'alignment', 'creeps', {
    best: { guiding: 'swings' },
    seen: { guiding: 'to-and-fro', ...AT_THE_MOUNT, follow: 'stays' },
  }),
  'worm-error': oddly('worm-error', 'alignment', 'creeps', {
    best: { guiding: 'to-and-fro' },
    seen: { guiding: 'swings', miss: 'on-target', 'miss-shape': 'no-miss' },
    mixed: { 'how-far': ['guiding', 'elsewhere'], 'mount-does': ['well', 'drifts'], follow: ['stays', 'creeps'] },
  }),
  'feet-settle': oddly('feet-settle', 'alignment', 'creeps', {
    best: { feet: 'soft' },
    seen: { 'how-far': 'elsewhere', 'miss-shape': 'drifting' },
    mixed: { 'mount-does': ['drifts', 'elsewhere'], miss: ['small', 'anywhere'], 'polar-axis': ['close', 'off'] },
  }),
  'old-alignment-points': oddly('old-alignment-points', 'alignment', 'misses-anyhow', {
    best: { 'old-points': 'old' },
    mixed: { 'miss-shape': ['no-pattern', 'one-side'], 'changed-last': ['place', 'nothing'] },
  }),
  'tube-shifts': oddly('tube-shifts', 'alignment', 'misses-small', {
    best: { 'tube-firm': 'shifts' },
    mixed: { 'tube-doubts': ['optics', 'none'], 'miss-shape': ['one-side', 'no-pattern'] },
  }),
  'out-of-balance': oddly('out-of-balance', 'client-program', 'no-motion', {
    best: { balance: 'heavy' },
    seen: { slew: 'hums', clutches: 'firm', 'mount-does': 'one-axis' },
    mixed: { 'changed-last': ['device', 'nothing'], 'gear-sound': ['even', 'grates'], 'arrow-keys': ['both', 'one'] },
  }),
  'gear-damaged': oddly('gear-damaged', 'client-program', 'no-motion', {
    best: { 'gear-sound': 'grates' },
    seen: { slew: 'hums', clutches: 'firm', 'mount-does': 'one-axis', 'arrow-keys': 'one' },
    mixed: { 'changed-last': ['handled', 'nothing'] },
  }),
  'guider-holds-axis': oddly('guider-holds-axis', 'client-program', 'refuses', {
    best: { 'guider-running': 'running' },
    seen: { 'park-state': 'free', slew: 'nothing' },
    mixed: { 'mount-does': ['refuses-all', 'refuses-some'], 'works-with-handset': ['moves', 'finds'] },
  }),
  'stick-moves-mount': oddly('stick-moves-mount', 'client-program', 'creeps', {
    best: { 'game-stick': 'there' },
    seen: { 'how-far': 'elsewhere', 'mount-does': 'drifts', slew: 'moves' },
    mixed: { 'works-with-handset': ['finds', 'moves'], follow: ['creeps', 'leaves-fast'] },
    inComputer: true,
  }),
};

/** What sleeps, hides, or answers in another's name. */
const HIDDEN: Readonly<Record<string, Change>> = {
  'wireless-asleep': oddly('wireless-asleep', 'network', 'drops-quiet', {
    best: { 'wireless-saving': 'may-sleep' },
    mixed: { 'when-drops': ['quiet', 'after-sleep'] },
    inComputer: true,
  }),
  'address-taken-twice': oddly('address-taken-twice', 'network', 'unreachable', {
    best: { 'answers-when-off': 'answers' },
    seen: { ping: 'answers', 'router-list': 'same-address' },
    mixed: { 'socket-opens': ['refused', 'times-out'], 'changed-last': ['network', 'nothing'] },
  }),
  'namesake-network': oddly('namesake-network', 'network', 'no-reply', {
    best: { 'answers-when-off': 'answers' },
    seen: { ping: 'answers', 'joined-network': 'mounts' },
    mixed: { 'socket-opens': ['opens', 'refused'], 'changed-last': ['place', 'nothing'] },
  }),
  'proxy-in-the-way': oddly('proxy-in-the-way', 'network', 'unreachable', {
    best: { proxy: 'set' },
    seen: { ping: 'answers', 'socket-opens': 'opens' },
    mixed: { 'changed-last': ['computer', 'nothing'] },
    inComputer: true,
  }),
  'port-not-passed-in': oddly('port-not-passed-in', 'system-port', 'not-found', {
    best: { 'inside-another': 'inside' },
    seen: { 'port-match': 'not-offered' },
    mixed: {
      'port-appears': ['port', 'nothing'],
      'device-status': ['working', 'not-there'],
      'kernel-log': ['attached', 'no-line'],
      'mac-tree': ['both', 'neither'],
      'settings-screen': ['port', 'all-fit'],
      'changed-last': ['program', 'computer'],
    },
    inComputer: true,
  }),
  'lock-file-left': oddly('lock-file-left', 'system-port', 'denied', {
    best: { 'after-restart': 'works' },
    seen: { 'port-holder': 'nobody', 'port-group': 'member' },
    inComputer: true,
  }),
  'program-profile-broken': oddly('program-profile-broken', 'client-program', 'no-reply', {
    best: { 'fresh-profile': 'works' },
    seen: { 'settings-screen': 'all-fit' },
    mixed: { 'other-program': ['works', 'none'] },
    inComputer: true,
  }),
  'platform-damaged': oddly('platform-damaged', 'driver', 'driver-error', {
    best: { 'platform-others': 'all-fail' },
    seen: { 'driver-list': 'will-not-open' },
    mixed: { 'changed-last': ['update', 'program'] },
    inComputer: true,
  }),
  'suite-quarantines-program': oddly('suite-quarantines-program', 'driver', 'driver-error', {
    best: { 'suite-log': 'took-it' },
    mixed: { 'driver-list': ['will-not-open', 'one'], 'changed-last': ['update', 'nothing'] },
    inComputer: true,
  }),
  'asked-too-soon': oddly('asked-too-soon', 'controller-mode', 'no-reply', {
    best: { 'second-try': 'works' },
    mixed: { 'changed-last': ['nothing', 'program'] },
  }),
  'controller-missing': oddly('controller-missing', 'controller-mode', 'no-reply', {
    best: { 'controller-present': 'missing' },
    seen: { 'works-with-handset': 'none', 'arrow-keys': 'none', 'controller-screen': 'dark' },
    mixed: { 'changed-last': ['place', 'nothing'] },
  }),
  'shared-supply-sags': oddly('shared-supply-sags', 'power', 'drops-random', {
    best: { 'separate-supplies': 'one' },
    seen: { wiggle: 'firm' },
    mixed: {
      'shares-supply': ['heater', 'camera'],
      'when-drops': ['device', 'weather'],
      'other-place': ['untried', 'alone'],
      'changed-last': ['device', 'season'],
      'other-supply': ['works', 'same'],
    },
  }),
  'stray-currents': oddly('stray-currents', 'cable', 'drops-random', {
    best: { 'separate-supplies': 'several' },
    seen: { wiggle: 'firm' },
    mixed: {
      'when-drops': ['device', 'random'],
      'other-place': ['alone', 'untried'],
      'changed-last': ['supply', 'device'],
    },
  }),
};

export const LATE_FAULTS: Readonly<Record<string, Change>> = {
  ...ODDITIES,
  ...HOLDING,
  ...NAMED_FAULTS,
  ...GUIDE_FAULTS,
  ...HIDDEN,
  'serial-lead-pin-order': at('leads', { serial: 'other-family' }),
  'security-suite-blocks': at('network', { firewall: 'suite-blocks' }),
  'two-systems-one-clock': (w) => {
    const clockWrong = at('sky', { sends: 'wrong-clock' })(w);
    return odd('two-systems-one-clock', 'site-and-time', 'misses-anyhow', {
      'two-systems': 'yes',
      miss: 'east-west',
      'miss-shape': 'computer-only',
      'other-place': 'home',
    })(clockWrong);
  },
  'protocol-too-new': at('program', { type: 'too-new' }),
};

const lifted =
  (name: string): Change =>
  (w) =>
    w.oddity?.name === name ? { ...w, oddity: null } : w;
const clockRight = (w: World): World => (w.sky.sends === 'wrong-clock' ? at('sky', { sends: 'right' })(w) : w);

/** Seeing to a clutch begins with the balance. */
export const balanced: Change = lifted('out-of-balance');

export const LATE_REMEDIES: Readonly<Record<string, Change>> = {
  ...Object.fromEntries(
    Object.keys({ ...ODDITIES, ...HOLDING, ...NAMED_FAULTS, ...GUIDE_FAULTS, ...HIDDEN }).map((name) => [
      name,
      lifted(name),
    ]),
  ),
  'serial-lead-pin-order': at('leads', { serial: 'its-own', serialBroken: false }),
  'security-suite-blocks': (w) => (w.network.firewall === 'suite-blocks' ? at('network', { firewall: 'lets' })(w) : w),
  'two-systems-one-clock': (w) => clockRight(lifted('two-systems-one-clock')(w)),
  'protocol-too-new': (w) => (w.program.type === 'too-new' ? at('program', { type: 'fits' })(w) : w),
};
