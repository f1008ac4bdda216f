/** The catalogue's door: load once, then look up, complete, sweep, and word what went wrong. */
export type { Target, TargetKind } from './target.js';
export { TARGET_KINDS, type Catalogue } from './catalogue.js';
export { loadCatalogue } from './load-catalogue.js';
export { resolveTarget } from './resolve-target.js';
export { completeTargets, warmCompletion } from './complete-targets.js';
export { nameWithAlias, targetLabel, targetProblemMessage } from './wording.js';
