/** What telling a place in a sentence has to know. */
import type { Places } from '../../../places/index.js';

export interface PlaceKnowledge {
  readonly places: () => Places;
  /** Of the member and the club. */
  readonly siteNames: readonly string[];
  readonly isTarget: (text: string) => boolean;
  /** Two targets are measured against each other: "from Jupiter" is no town. */
  readonly isOfPair?: boolean;
  /** A constellation, or a name that several share. */
  readonly isSeveralTargets: (text: string) => boolean;
  /** A target's name with a slip in it. */
  readonly isSlip: (text: string) => boolean;
  /** The asker stands in that country. */
  readonly isHome: (country: string) => boolean;
  /** A word of questions, right as it stands. */
  readonly isWord: (word: string) => boolean;
}
