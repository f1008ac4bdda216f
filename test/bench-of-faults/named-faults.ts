/** Faults that members name themselves: optics, a lead, a compass, the cold. */
import type { Change } from './edit.js';
import { oddly } from './oddly.js';

export const NAMED_FAULTS: Readonly<Record<string, Change>> = {
  'diagonal-off': oddly('diagonal-off', 'alignment', 'misses-small', {
    best: { 'diagonal-turned': 'shifts' },
    mixed: {
      'tube-doubts': ['diagonal', 'none'],
      'miss-shape': ['same', 'no-pattern'],
      'changed-last': ['nothing', 'device'],
    },
  }),
  'collimation-off': oddly('collimation-off', 'alignment', 'misses-small', {
    best: { 'star-out-of-focus': 'lopsided' },
    mixed: {
      'tube-doubts': ['optics', 'none'],
      'miss-shape': ['same', 'no-pattern'],
      'changed-last': ['handled', 'nothing'],
    },
  }),
  'finder-off': oddly('finder-off', 'alignment', 'misses-small', {
    best: { 'aligned-through': 'finder', 'tube-doubts': 'finder' },
    mixed: { 'miss-shape': ['same', 'no-pattern'], 'changed-last': ['nothing', 'place'] },
  }),
  'lead-holds-tube': oddly('lead-holds-tube', 'alignment', 'misses-small', {
    best: { 'leads-free': 'catches' },
    mixed: {
      'tube-doubts': ['lead', 'none'],
      'when-drops': ['place', 'never'],
      'miss-shape': ['one-side', 'no-pattern'],
      'mount-does': ['elsewhere', 'drifts'],
      'changed-last': ['device', 'nothing'],
    },
  }),
  'compass-misled': oddly('compass-misled', 'alignment', 'misses-anyhow', {
    best: { 'north-by': 'iron' },
    seen: { 'polar-axis': 'off', follow: 'creeps' },
    mixed: {
      'miss-shape': ['grows', 'no-pattern'],
      'start-doubts': ['axis', 'none'],
      'changed-last': ['place', 'nothing'],
    },
  }),
  'grease-stiff-cold': oddly('grease-stiff-cold', 'client-program', 'no-motion', {
    best: { 'axes-light': 'stiff' },
    seen: { slew: 'hums', clutches: 'firm' },
    mixed: {
      'mount-does': ['one-axis', 'nothing'],
      'when-drops': ['weather', 'never'],
      'gear-sound': ['grates', 'even'],
      'changed-last': ['season', 'nothing'],
    },
  }),
};
