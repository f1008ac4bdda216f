/** Changes to a world, one link at a time. */
import type { World } from './world.js';

type Part = { [K in keyof World]: World[K] extends object | null ? K : never }[keyof World];
/** A change to the world; the second argument of the makers says what becomes of one link. */
export type Change = (w: World) => World;

export const at =
  <K extends Exclude<Part, 'oddity'>>(link: K, to: Partial<World[K]>): Change =>
  (w) => ({ ...w, [link]: { ...w[link], ...to } });

/** What the mount was told of place and time. Typed by hand, so nothing overwrites it. */
export const told =
  (to: (w: World) => Partial<World['sky']['told']>): Change =>
  (w) => ({ ...w, sky: { ...w.sky, sends: 'nothing', told: { ...w.sky.told, ...to(w) } } });

export const both =
  (...changes: readonly Change[]): Change =>
  (w) =>
    changes.reduce((now, change) => change(now), w);
