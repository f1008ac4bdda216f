/** Pierhand's own colours, chosen to stay apart for the common kinds of colour blindness; every use also has a word or a shape. */
import type { Level } from './reply.js';

/** Chart colours on a dark ground that does not spoil night vision more than it must. */
export const CHART = {
  ground: '#14110f',
  ink: '#e9dfd3',
  faint: '#9c9184',
  grid: '#332d28',
  target: '#ffb454',
  moon: '#8fb8d9',
  best: '#fff1dc',
  now: '#d68fb0',
  limit: '#b8a07a',
  horizon: '#4a5a3f',
  bands: { day: '#4d4034', civil: '#3d342c', nautical: '#302a25', astronomical: '#241f1c', dark: '#14110f' },
} as const;

/** Accent of a whole answer; the level's word always stands beside it. */
export const LEVEL_COLOUR: Readonly<Record<Level, string>> = {
  info: '#7d93a8',
  good: '#3f9e8c',
  caution: '#e0a03c',
  danger: '#c2415c',
};

export const LEVEL_WORD: Readonly<Record<Level, string>> = {
  info: 'For information',
  good: 'Good',
  caution: 'Caution',
  danger: 'Danger',
};
