import type { Catalogue } from './catalogue.js';
import type { TargetResolution } from './target-resolution.js';

/** Finds the one target a member means by what they typed: a name, a designation or J2000 coordinates. Never throws. */
export function resolveTarget(_catalogue: Catalogue, text: string): TargetResolution {
  throw new Error(`not yet: ${text}`);
}
