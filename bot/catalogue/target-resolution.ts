/** What looking up a target can come to: a target, or a problem as a code with its facts; the sentences live in wording.ts. */
import { isProblem } from '../ground/problem.js';
import type { Target } from './target.js';

/** What is wrong with something that was meant as coordinates. */
export type CoordinateFault =
  /** Right ascension is not within 0..24 h (0..360°). */
  | 'right-ascension-range'
  /** Declination is not within -90..90°. */
  | 'declination-range'
  /** Minutes or seconds are 60 or more. */
  | 'sixtieths-range'
  /** Two plain decimals: the first could be hours or degrees. */
  | 'hours-or-degrees'
  /** Looks like coordinates, but cannot be read as a pair. */
  | 'unreadable';

export type TargetProblem =
  | {
      readonly problem: 'unknown-target';
      /** What was typed, cleaned and shortened for showing. */
      readonly text: string;
      /** Best first, at most 5; empty when nothing is near. */
      readonly nearest: readonly Target[];
      /**
       * 'moon-of-planet': `nearest` is its planet. 'moves-unlisted': a comet or an asteroid, and there is no list of them;
       * 'not-in-list': there is one, without it. 'satellite': of Earth. 'variable-unlisted': a variable star's name that the list lacks.
       */
      readonly reason:
        | 'empty'
        | 'too-long'
        | 'not-found'
        | 'listed-as-nonexistent'
        | 'moon-of-planet'
        | 'moves-unlisted'
        | 'not-in-list'
        | 'satellite'
        | 'variable-unlisted';
    }
  | {
      readonly problem: 'ambiguous-target';
      readonly text: string;
      /** Best known first, at most 25. Each candidate's `name` resolves to it alone. */
      readonly candidates: readonly Target[];
      /** Set where a spelling was corrected. */
      readonly isSlip?: true;
    }
  | {
      readonly problem: 'bad-coordinates';
      readonly text: string;
      readonly fault: CoordinateFault;
      /** The number that is out of range, where there is one. */
      readonly value: number | null;
    };

/** `note` says what was taken for granted: a spelling corrected, a unit inferred, the brightest of a close pair. */
export type TargetResolution =
  | {
      readonly target: Target;
      readonly note?: string;
      /** Set where a spelling was corrected. */
      readonly isSlip?: true;
    }
  | TargetProblem;

/** Whether a text names a target, or several, as it stands: without a slip in it, and no two numbers that may be coordinates. */
export const isNamed = (found: TargetResolution): boolean => {
  if (isProblem(found)) return found.problem === 'ambiguous-target' && found.isSlip !== true;
  return found.isSlip !== true && (found.note === undefined || found.target.kind !== 'coordinates');
};
