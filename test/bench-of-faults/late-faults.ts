/** Faults that came to the list later: most of them as an oddity at one link, which their own remedy takes away. */
import { at, type Change } from './edit.js';
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

export const LATE_FAULTS: Readonly<Record<string, Change>> = {
  ...ODDITIES,
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

export const LATE_REMEDIES: Readonly<Record<string, Change>> = {
  ...Object.fromEntries(Object.keys(ODDITIES).map((name) => [name, lifted(name)])),
  'serial-lead-pin-order': at('leads', { serial: 'its-own', serialBroken: false }),
  'security-suite-blocks': (w) => (w.network.firewall === 'suite-blocks' ? at('network', { firewall: 'lets' })(w) : w),
  'two-systems-one-clock': (w) => clockRight(lifted('two-systems-one-clock')(w)),
  'protocol-too-new': (w) => (w.program.type === 'too-new' ? at('program', { type: 'fits' })(w) : w),
};
