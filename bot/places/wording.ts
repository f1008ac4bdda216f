import type { PlaceRecord, Position, SiteProblem } from './site-resolution.js';

/** "Calgary, Alberta, Canada", at most 100 characters. */
export function placeLabel(place: PlaceRecord): string { return place.name; }
/** The shortest text that resolves to this place alone: "Springfield, Illinois, US". */
export function placeSpec(place: PlaceRecord): string { return place.name; }
/** "51.05° N, 114.07° W". */
export function positionName(position: Position): string { return String(position.latitudeDeg); }
/** One sentence or two, ≤ 400 characters. */
export function siteProblemMessage(problem: SiteProblem): string { return problem.problem; }
