/** A position or a place name as a site: where, how high, and which clocks. Saved names are the caller's to look up first. */
import { isProblem } from '../ground/problem.js';
import type { Places } from './load-places.js';
import type { Spot } from './distance.js';
import { parsePosition } from './parse-position.js';
import { resolvePlace } from './resolve-place.js';
import type { Site } from './site.js';
import type { PlaceRecord, Position, SiteResolution } from './site-resolution.js';
import { timeZoneAt } from './time-zone-at.js';
import { placeLabel, positionName } from './wording.js';

/** A site at a position, with its time zone; sea level where no height is given. */
export const siteFromPosition = (position: Position): Site => {
  const { latitudeDeg, longitudeDeg, elevationM } = position;
  return {
    name: positionName(position),
    observer: { latitudeDeg, longitudeDeg, elevationM: elevationM ?? 0 },
    zone: timeZoneAt(latitudeDeg, longitudeDeg),
    source: 'coordinates',
  };
};

/** A site at a place of the gazetteer. */
export const siteFromPlace = (place: PlaceRecord, note?: string): Site => {
  const { latitudeDeg, longitudeDeg, elevationM, zone } = place;
  return {
    name: placeLabel(place),
    observer: { latitudeDeg, longitudeDeg, elevationM },
    zone,
    source: 'place',
    ...(note === undefined ? {} : { note }),
  };
};

/** A position ("51.05,-114.07") or a place name ("Calgary") → a site. Never throws on any text (only when the list cannot be read). */
export const resolveSite = (places: Places, text: string, near: Spot | null = null): SiteResolution => {
  const position = parsePosition(text);
  if (position !== null) return isProblem(position) ? position : { site: siteFromPosition(position.position) };
  const place = resolvePlace(places, text, near);
  return isProblem(place) ? place : { site: siteFromPlace(place.place, place.note) };
};
