/** The README's conversations: what is asked, by whom in our invented club, and at what instant, so that the answers never change by themselves. */

/** Saturday evening before an observing night of the Fenwold Astronomical Society (invented). */
export const EXAMPLE_NOW_UTC_MS = Date.UTC(2026, 11, 12, 17, 30);

export interface Example {
  /** The marker in README.md: `<!-- made: example NAME -->`. */
  readonly name: string;
  readonly lines: readonly string[];
  /** Overrides the instant of asking. */
  readonly nowUtcMs?: number;
  /** Print only the last line's answer. */
  readonly lastOnly?: boolean;
}

export const EXAMPLES: readonly Example[] = [
  { name: 'up', lines: ['up NGC 7331 site:51.05,-114.07'], nowUtcMs: Date.UTC(2026, 11, 13, 0, 30) },
  { name: 'tonight', lines: ['tonight site:52.71,0.12 kind:globular-cluster'] },
  { name: 'sidereal', lines: ['sidereal at:"tonight 21:00" site:52.71,0.12'] },
];
