/** What the random questions about the Sun have in common. */
import type { Where } from './sun-reader.js';

export type Random = () => number;

export const pick = <T>(random: Random, items: readonly T[]): T => items[Math.floor(random() * items.length)]!;

/** A whole minute of three years. */
export const someUtcMs = (random: Random): number =>
  Math.floor((Date.UTC(2026, 0, 1) + random() * 3 * 365 * 86_400_000) / 60_000) * 60_000;

export const atOption = (utcMs: number): string => `at:${new Date(utcMs).toISOString().slice(0, 16)}Z`;
export const siteOption = ({ latitudeDeg, longitudeDeg }: Where): string => `site:${latitudeDeg},${longitudeDeg}`;
