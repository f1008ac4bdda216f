/** What of guiding goes by a lead of its own, radios at certain hours, newer versions. By what is then seen; common practice, no source. */
import type { Change } from './edit.js';
import { oddly } from './oddly.js';

const ON_TARGET = {
  'how-far': 'guiding',
  'mount-does': 'well',
  'miss-shape': 'no-miss',
  miss: 'on-target',
  follow: 'stays',
  'arrow-keys': 'both',
} as const;

export const GUIDE_FAULTS: Readonly<Record<string, Change>> = {
  'guide-lead-wrong-socket': oddly('guide-lead-wrong-socket', 'alignment', 'creeps', {
    best: { 'guide-lead': 'other-socket' },
    seen: { 'guide-lead': 'guide-socket', 'guide-buttons': 'none', guiding: 'no-pulses', ...ON_TARGET },
  }),
  'guide-lead-out': oddly('guide-lead-out', 'alignment', 'creeps', {
    best: { 'guide-lead': 'out' },
    seen: { 'guide-lead': 'guide-socket', 'guide-buttons': 'none', guiding: 'no-pulses', ...ON_TARGET },
  }),
  'guider-not-calibrated': oddly('guider-not-calibrated', 'alignment', 'creeps', {
    best: { 'guide-buttons': 'moves' },
    seen: { 'guide-buttons': 'some', ...ON_TARGET },
    mixed: { guiding: ['no-pulses', 'one-way'] },
  }),
  'radio-noise-at-hours': oddly('radio-noise-at-hours', 'radio', 'drops-random', {
    best: { 'other-radio': 'near' },
    seen: { 'other-radio': 'none', 'bridge-beside-hub': 'clear', signal: 'strong' },
    mixed: { 'when-drops': ['hour', 'random'], ping: ['patchy', 'answers'], 'changed-last': ['device', 'nothing'] },
  }),
  'newer-version-fails': oddly('newer-version-fails', 'client-program', 'no-reply', {
    best: { 'version-since': 'newer' },
    seen: { 'version-since': 'same', 'worked-before': 'changed' },
    mixed: { 'changed-last': ['update', 'program'], message: ['driver-error', 'no-reply'] },
    inComputer: true,
  }),
};
