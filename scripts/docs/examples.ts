/** The README's conversations: what is asked in our invented club, and at what instant, so that the answers never change by themselves. */

/** Saturday evening before an observing night of the Fenwold Astronomical Society (invented). */
export const EXAMPLE_NOW_UTC_MS = Date.UTC(2026, 11, 12, 17, 30);

/** What stands before a line that is typed, as on the console. */
export const PROMPT = 'pierhand> ';

export interface Example {
  /** The marker in README.md: `<!-- made: example NAME -->`. */
  readonly name: string;
  /** All that is asked, and all of it shown. */
  readonly lines: readonly string[];
}

/** In the order in which they stand in README.md, for one sitting: a walk that is left under way changes what comes after it. */
export const EXAMPLES: readonly Example[] = [
  { name: 'up', lines: ['up NGC 7331 site:52.71,0.12'] },
  { name: 'tonight', lines: ['tonight site:52.71,0.12 kind:globular-cluster'] },
  {
    name: 'triage',
    lines: [
      'triage it worked last week, since the update the port is missing',
      'through the hand controller and a USB adapter',
      '[ 812.4] usb 1-1: device descriptor read/64, error -71',
      '2',
      'that was it, it works now',
      'no',
    ],
  },
  { name: 'entries', lines: ['entries site:"Ely, England" at:"tonight 21:00"'] },
  { name: 'sidereal', lines: ['sidereal at:"tonight 21:00" site:52.71,0.12'] },
  {
    name: 'astray',
    lines: ['astray Spica site:52.71,0.12 at:2027-04-10T22:30 lst:11:45:05 landed:"15 degrees west of it"'],
  },
  { name: 'sun', lines: ['sun Spica from:Vega site:52.71,0.12 at:2026-12-13T11:00 mount:altaz'] },
  { name: 'pole', lines: ['pole site:52.71,0.12 at:"tonight 20:00"'] },
  { name: 'alignment', lines: ['alignment site:52.71,0.12 at:"tonight 20:00"'] },
];
