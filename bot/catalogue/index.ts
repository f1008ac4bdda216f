/** The catalogue's door: load once, then look up, complete, sweep, and word what went wrong. */
export { meanSurfaceBrightness, NO_CATALOGUE_DATA } from './target.js';
export type { DoubleStar, Target, TargetKind, VariableStar } from './target.js';
export { NO_KIND, TARGET_KINDS, type Catalogue } from './catalogue.js';
export type { MovingTargets } from './moving-targets.js';
export { brightNamedStars, type BrightNamedStar } from './bright-stars.js';
export { constellationName } from './constellations.js';
export { NO_SATELLITES, NO_WEATHER } from './untold.js';
export { loadCatalogue } from './load-catalogue.js';
export { resolveTarget } from './resolve-target.js';
export { completeTargets, warmCompletion } from './complete-targets.js';
export { nameWithAlias, targetLabel, targetProblemMessage } from './wording.js';
