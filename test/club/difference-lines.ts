/** What two members of one club keep for themselves, and what both then ask: for the test that no public word depends on the first. */

/** Members alike in all that others could know; the third keeps nothing. */
export const PRIVATE_ROWS: readonly (readonly string[])[] = [
  [
    'site add name:"Garden" position:52.71,0.12 elevation:3 horizon:"0:5, 90:20"',
    'site add name:"Larkfold" position:51.05,-114.07',
    'remind when:dark on:tomorrow site:Garden',
    'remind NGC 7331 above:30 site:Larkfold',
    'gear mount:fork',
  ],
  [
    'site add name:"Garden" position:-33.9,18.42 elevation:200 horizon:"180:40"',
    'site add name:"Meadow" position:69.65,18.96',
    'remind when:sunrise site:Meadow',
    'gear mount:altaz',
  ],
  [],
];

/** Said in each one's direct room: walks there are nobody else's. */
export const PRIVATE_WALKS: readonly (readonly string[])[] = [
  ['triage the port is not in the list', 'triage do:new', 'triage usb 1-1: device descriptor read/64, error -71'],
  ['triage it lands 15 degrees away'],
  [],
];

const SITES = [
  '',
  ' site:Garden',
  ' site:Larkfold',
  ' site:Meadow',
  ' site:"Fenwold Common"',
  ' site:nowhere',
  ' site:52.71,0.12',
];
const WHENS = ['', ' at:"tonight 22:30"', ' at:2026-06-21T12:00', ' at:never'];
const NIGHTS = ['', ' on:2026-06-21'];
const MOUNTS = ['', ' mount:german'];
const TARGETS = ['M13', 'Sun', 'Venus', 'NGC 253', 'nothing known'];
const SITE_NAMES = ['Garden', 'Larkfold', 'Meadow', 'nowhere', 'x', 'Fenwold Common'];
const SITE_ACTIONS = ['show', 'use', 'remove', 'rename', 'horizon', 'add'];

const withSites = (lines: readonly string[]): readonly string[] =>
  lines.flatMap((line) => SITES.map((site) => `${line}${site}`));
const withMounts = (lines: readonly string[]): readonly string[] =>
  lines.flatMap((line) => MOUNTS.map((mount) => `${line}${mount}`));

export const LINES: readonly string[] = [
  ...withSites(TARGETS.flatMap((target) => NIGHTS.map((on) => `up ${target}${on}`))),
  ...withSites(TARGETS.flatMap((target) => WHENS.map((at) => `altitude ${target}${at}`))),
  ...withMounts(
    withSites(
      TARGETS.flatMap((target) => ['', ' from:Vega', ' from:"nothing known"'].map((from) => `sun ${target}${from}`)),
    ),
  ),
  ...withMounts(withSites(TARGETS.map((target) => `meridian ${target} above:20`))),
  ...withSites(NIGHTS.map((on) => `dark${on}`)),
  ...withSites(WHENS.flatMap((at) => [`sidereal${at}`, `entries${at}`, `pole${at}`, `moon${at}`, `moons${at}`])),
  ...withMounts(withSites(WHENS.map((at) => `alignment${at}`))),
  ...withSites(['tonight', 'tonight kind:galaxy', 'tonight above:89', 'tonight kind:nonsense']),
  ...withSites(['ahead eclipses', 'ahead saturdays weeks:6', 'ahead showers about:nonsense', 'ahead nonsense']),
  ...withSites(['drift meridian by:"N 4"', 'drift east by:"S 2.5"', 'drift west by:nonsense']),
  ...withMounts(
    withSites([
      'astray Capella landed:"15 degrees east of it"',
      'astray Mirach lst:23:19:40',
      'astray M13 landed:nonsense',
    ]),
  ),
  ...withSites([
    'remind M13 above:30',
    'remind M13 above:89',
    'remind NGC 253 above:80',
    'remind when:dark',
    'remind when:sunrise nights:every',
    'remind when:sunrise to:channel',
  ]),
  ...SITE_NAMES.flatMap((name) =>
    SITE_ACTIONS.flatMap((action) => [
      `site ${action} name:"${name}"`,
      `site ${action} name:"${name}" to:Other`,
      `site ${action} name:"${name}" for:club`,
      `site ${action} name:"${name}" horizon:"bad"`,
    ]),
  ),
  ...[
    'site list',
    'site',
    'remind list',
    'remind cancel id:aaaaaaa',
    'remind',
    'mydata',
    'mydata part:sites',
    'forget',
  ],
  ...[
    'help',
    'help site',
    'gear',
    'gear connection:nonsense',
    'gear system:mac',
    'epoch M13',
    'causes',
    'causes reset:yes',
  ],
  ...[
    'triage',
    'triage the port is not in the list',
    'triage do:why',
    'triage do:back',
    'triage do:end',
    'triage do:new',
  ],
  ...['triage walk:aaaaaa', 'triage do:release', 'triage do:accept answer:00000000'],
  ...['is saturn up from the garden tonight?', 'what can I see from garden tomorrow with binoculars'],
  ...['when does M13 set at Garden', 'how high is Vega from my garden at midnight', 'tonight from home at 10pm'],
  ...['remind me when saturn sets at garden', 'can I see the moon from my balcony', 'M31 tomorrow, at the garden'],
  ...['Garden', 'is M13 up at Garden?', 'how dark is it at Meadow tonight', 'up M13 Garden', 'nonsense here', ''],
];

const OF_A_MOUNT = /^(?:sun|meridian|alignment|astray)\b/u;

/**
 * Where a question leaves the site or the mount out, the usual one is meant: the member's own if there is one, for their eyes, or else the
 * club's, for everyone. So there it shows that a member has one; else only where they write the name of one that is also a town's or stands
 * bare after a target, in sight of all.
 */
export const asksTheUsual = (line: string): boolean =>
  !line.includes(' site:') || (OF_A_MOUNT.test(line) && !line.includes(' mount:'));
