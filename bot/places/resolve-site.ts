import type { Places } from './load-places.js';
import type { Site } from './site.js';
import type { PlaceRecord, Position, SiteResolution } from './site-resolution.js';

/** A position or a place name → a site. Saved names are looked up by the caller first. Never throws. */
export function resolveSite(_places: Places, text: string): SiteResolution {
  throw new Error(`not yet: ${text}`);
}
/** A site at a position, with its time zone. */
export function siteFromPosition(position: Position): Site {
  throw new Error(`not yet: ${position.latitudeDeg}`);
}
export function siteFromPlace(place: PlaceRecord, _note?: string): Site {
  throw new Error(`not yet: ${place.name}`);
}
