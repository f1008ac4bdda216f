/** The catalogue's door: load once, then look up, complete, sweep, and word what went wrong. */
export { NO_CATALOGUE_DATA, TARGET_KINDS } from './target.js';
export type { DoubleStar, Target, TargetKind, VariableStar } from './target.js';
export { NO_KIND, type Catalogue } from './catalogue.js';
export type { MovingTargets } from './moving-targets.js';
export { brightNamedStars, starsForTheEye, type BrightNamedStar } from './bright-stars.js';
export { beginsConstellation, constellationName, isGenitive } from './constellations.js';
export { constellationMeant, latinAsGreek } from './designation.js';
export { nameWords, popularNames } from './name-words.js';
export { loadCatalogue } from './load-catalogue.js';
export { resolveTarget } from './resolve-target.js';
export { completeTargets, warmCompletion } from './complete-targets.js';
export { isNamed } from './target-resolution.js';
export { NO_ELEMENTS } from './untold.js';
export { nameWithAlias, targetLabel, targetProblemMessage } from './wording.js';
export { commonName, listName } from './spoken-names.js';
export { MOON_FEATURES, moonFeatureIn, type MoonFeature } from './moon-features.js';
