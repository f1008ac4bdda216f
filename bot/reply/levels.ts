/** How reply levels compare. */
import type { Level } from './reply.js';

const RANK: readonly Level[] = ['good', 'info', 'caution', 'danger'];

/** The more serious of two reply levels; info counts as more than good, so that it never hides behind it. */
export const graver = (a: Level, b: Level): Level => (RANK.indexOf(b) > RANK.indexOf(a) ? b : a);
