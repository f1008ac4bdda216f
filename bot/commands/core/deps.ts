/** What commands are given to work with; made once by the composition root, replaced piecewise by tests. */
import type { Catalogue } from '../../catalogue/index.js';
import type { PictureReader } from '../../pictures/picture-reader.js';
import type { Places } from '../../places/index.js';
import type { Store } from '../../store/store.js';
import type { TriageModel } from '../../triage/index.js';
import type { Command } from './command.js';
import type { WordsReader } from './words-reader.js';

export interface Deps {
  readonly catalogue: Catalogue;
  /** Loaded on first use. */
  readonly places: () => Places;
  readonly store: Store;
  readonly triage: () => TriageModel;
  /** Reads the text in members' pictures. */
  readonly pictures: PictureReader;
  /** The club's site as the operator set it (`PIERHAND_SITE`), in the site grammar. */
  readonly clubSiteText: string | null;
  /** A club may widen these, never narrow them. */
  readonly sunLimits: { readonly dangerDeg: number; readonly cautionDeg: number };
  /** The whole list, for `help`. */
  readonly commands: readonly Command[];
  /** Asked in order about text that is no command; absent: nobody. */
  readonly readers?: readonly WordsReader[];
}
