/** The README's conversations: what is asked, by whom in our invented club, and at what instant, so that the answers never change by themselves. */

/** Saturday evening before an observing night of the Fenwold Astronomical Society (invented). */
export const EXAMPLE_NOW_UTC_MS = Date.UTC(2026, 11, 12, 17, 30);

export interface Example {
  /** The marker in README.md: `<!-- made: example NAME -->`. */
  readonly name: string;
  readonly lines: readonly string[];
  /** Overrides the instant of asking. */
  readonly nowUtcMs?: number;
  /** So many lines at the start are asked and not shown. */
  readonly unseen?: number;
}

export const EXAMPLES: readonly Example[] = [
  { name: 'up', lines: ['up NGC 7331 site:52.71,0.12'] },
  { name: 'tonight', lines: ['tonight site:52.71,0.12 kind:globular-cluster'] },
  { name: 'sidereal', lines: ['sidereal at:"tonight 21:00" site:52.71,0.12'] },
  { name: 'entries', lines: ['entries site:"Ely, England" at:"tonight 21:00"'] },
  { name: 'sun', lines: ['sun Spica from:Vega site:52.71,0.12 at:2026-12-13T11:00 mount:altaz'] },
  {
    name: 'astray',
    lines: ['astray Spica site:52.71,0.12 at:2027-04-10T22:30 lst:11:45:05 landed:"15 degrees west of it"'],
  },
  { name: 'pole', lines: ['pole site:52.71,0.12 at:"tonight 20:00"'] },
  { name: 'alignment', lines: ['alignment site:52.71,0.12 at:"tonight 20:00"'] },
  { name: 'listening', lines: ['triage it worked last week, since the update the port is missing'] },
  // Last: a walk under way changes what astray offers.
  {
    name: 'triage',
    unseen: 1,
    lines: [
      'gear connection:controller-serial system:linux',
      'triage [ 812.4] usb 1-1: device descriptor read/64, error -71',
      '1',
      '2',
    ],
  },
];
