/** What a mistake is: its usual forms, or its size where it may have any, each as a change to what a controller believes. */
import type { CauseId } from './astray-types.js';
import type { Belief } from './controller-belief.js';

/** What exactly was wrong, for the correction's words. */
export type Slip =
  | { readonly kind: 'clock'; readonly minutes: number; readonly enteredOffsetMinutes?: number }
  | { readonly kind: 'days'; readonly days: number }
  | { readonly kind: 'star'; readonly expected: string; readonly centred: string }
  | { readonly kind: 'axis'; readonly axis: 'primary' | 'secondary' | 'both' }
  /** Still at another place, or at 1 January. */
  | { readonly kind: 'place'; readonly name: string }
  | { readonly kind: 'default-date' }
  | { readonly kind: 'epoch'; readonly slip: 'j2000-as-date' | 'twice' }
  | { readonly kind: 'plain' };

export const PLAIN: Slip = { kind: 'plain' };

type Change = (belief: Belief) => Belief;

/** One definite form of a mistake. */
export interface Form {
  /** Share of the cause, 0..1; all forms and sizes of a cause add up to 1. */
  readonly share: number;
  readonly change: Change;
  readonly slip: Slip;
}

/** A mistake of unknown size, by standardised parameters. */
export interface Sized {
  readonly share: number;
  readonly dimensions: 1 | 2 | 3;
  /** Where any size is as likely as another over one whole turn; the other parameters are standard normal. */
  readonly isFlat: readonly boolean[];
  /** A narrower range of the same: beside another mistake the wide one stands for it. */
  readonly isNarrower?: boolean;
  /** Where to begin the search for the best size. */
  readonly seeds: readonly (readonly number[])[];
  readonly change: (standardised: readonly number[]) => Change;
  /** What the parameters are, in their own units. */
  readonly sizeAt: (standardised: readonly number[]) => readonly number[];
}

/** Where it is made: what was entered shows on the display too, what the mount does shows in the landing alone. */
export type MistakeKind = 'clock' | 'site' | 'coordinates' | 'mount';

export interface Mistake {
  readonly id: CauseId;
  readonly kind: MistakeKind;
  /** Relative frequency before anything is seen. Common practice, no source. */
  readonly prior: number;
  readonly forms: readonly Form[];
  readonly sizes: readonly Sized[];
}

/** Forms by weight. */
export const shared = (
  weighted: readonly { readonly weight: number; readonly change: Change; readonly slip?: Slip }[],
): Form[] => {
  const total = weighted.reduce((sum, { weight }) => sum + weight, 0);
  return weighted.map(({ weight, change, slip }) => ({ share: weight / total, change, slip: slip ?? PLAIN }));
};

/** A flat parameter over one whole turn of `range`: a unit is the range over √(2π), so that its weight is that of a standard normal's top. */
export const flatUnit = (range: number): number => range / Math.sqrt(2 * Math.PI);

/** One mistake at its best-fitting form or size. */
export interface Part {
  readonly id: CauseId;
  readonly slip: Slip;
  /** In the mistake's own units, for one that has a size. */
  readonly size: readonly number[] | null;
}
