/** The door to sites and place names: load the gazetteer lazily, resolve and complete, and word what went wrong. */
export type { Site } from './site.js';
export { countyNamed } from './counties.js';
export { distanceKm, type Spot } from './distance.js';
export type * from './site-resolution.js';
export { foldPlace } from './fold-place.js';
export { loadPlaces, type Places } from './load-places.js';
export { populationFound, resolvePlace } from './resolve-place.js';
export { countryNamed, countryWords } from './countries.js';
export { countryAt } from './country-at.js';
export { namesRegion } from './names-region.js';
export { completePlaces } from './complete-places.js';
export { withHalfCompleted, withPlainPosition } from './find-position.js';
export { isPosition, parsePosition } from './parse-position.js';
export { resolveSite } from './resolve-site.js';
export { timeZoneAt } from './time-zone-at.js';
export { placeLabel, placeSpec, positionName, siteProblemMessage } from './wording.js';
