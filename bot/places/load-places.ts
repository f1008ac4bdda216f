/** The gazetteer, opened lazily: nothing is read until the first look-up. */
export interface Places {
  /** Reads the file now (for a warm start); the first look-up does it otherwise. */
  warm(): void;
}

/** A gazetteer over a folder ("knowledge/places"). Reading happens at the first look-up; a missing file throws then, naming it. */
export function loadPlaces(folder: string): Places {
  throw new Error(`not yet: ${folder}`);
}
