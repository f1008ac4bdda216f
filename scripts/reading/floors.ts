/** The shares that the project's own texts must reach, for CI. */
import type { Tally } from './measure.js';

export interface Figures {
  readonly sums: Readonly<Record<string, Tally>>;
  readonly traps: { readonly all: number; readonly fallen: number };
  readonly causes: { readonly all: number; readonly found: number };
}

/** Shares from 0 to 1: of the said that is read, of the read that is right, of traps fallen into at most, of causes found. */
export interface Floors {
  readonly read: Readonly<Record<string, number>>;
  readonly right: Readonly<Record<string, number>>;
  readonly trapsAtMost: number;
  readonly causes: number;
}

const share = (part: number, whole: number): number => (whole === 0 ? 1 : part / whole);
const percent = (value: number): string => `${(100 * value).toFixed(1)} %`;

export const floorsMissed = ({ sums, traps, causes }: Figures, floors: Floors): readonly string[] => {
  const missed: string[] = [];
  const hold = (name: string, got: number, floor: number): void => {
    if (got < floor) missed.push(`${name}: ${percent(got)}, at least ${percent(floor)} is held`);
  };
  for (const [name, floor] of Object.entries(floors.read)) {
    const own = sums[name];
    hold(`${name} read`, own === undefined ? 0 : share(own.read, own.said), floor);
  }
  for (const [name, floor] of Object.entries(floors.right)) {
    const own = sums[name];
    hold(`${name} right`, own === undefined ? 0 : share(own.right, own.right + own.wrong), floor);
  }
  hold('traps avoided', 1 - share(traps.fallen, traps.all), 1 - floors.trapsAtMost);
  hold('a sensible cause among the first three', share(causes.found, causes.all), floors.causes);
  return missed;
};
