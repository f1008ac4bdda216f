/** Kinds of words that set one thing against another: what it is, which of them, and whether all is well with it. */

const LISTS = {
  computer:
    'computer computers laptop laptops pc pcs notebook netbook desktop macbook mac imac minipc machine machines chromebook pi raspberry',
  phone: 'phone phones telephone smartphone iphone iphones ipad ipads tablet tablets android mobile',
  program:
    'program programs programme programmes prog progs software app apps planetarium terminal client console version',
  cable: 'cable cables lead leads cord cords wire kabel',
  adapter: 'adapter adapters adaptor adaptors dongle dongles converter',
  supply: 'battery batteries supply supplies psu powerbank accu brick',
  socket: 'socket sockets slot slots hole holes',
  'at-home': 'home indoors inside kitchen lounge livingroom room bedroom desk table bench basement cellar',
  away: 'outside outdoors garden field club pier shed observatory balcony patio terrace car site dark yard meadow roof driveway',
  system: 'windows win7 win10 win11 w7 w10 w11 vista xp linux ubuntu debian fedora mint macos osx raspbian',
  network: 'hotspot wifi wlan',
  device: 'camera hub focuser guider heater heaters charger dock webcam stick gamepad joystick wheel',
  vpn: 'vpn',
  suite: 'antivirus firewall antimalware',
  handset: 'handset keypad paddle controller handbox handcontroller handcontrol',
  restart: 'rebooted restarted restart reboot',
  /** Of whatever was named before. */
  again: 'one ones mine his hers theirs yours',
} as const;

export type Thing = keyof typeof LISTS;

const OTHER =
  'other another different second third old older previous former spare borrowed original friend friends mate mates wife wifes ' +
  'husband husbands partner partners son sons daughter daughters brother brothers sister sisters dad dads father fathers mum ' +
  'mums colleague colleagues neighbour neighbours neighbor neighbors club clubs her his hers their theirs buddy buddys kid ' +
  'kids work elses';
const SAME = 'same identical very';
const TRIED = 'tried swapped replaced exchanged tested swap borrowed changed';
const OWN = 'my mine our this new own';
/** Where the look for what says which of them ends. */
const ENDS = 'the a an this that my our these of on in with at from to for by or into';
const ABSENT = 'without off unplugged disconnected removed disabled uninstalled unplug disabling';
const WELL =
  'works work worked working fine ok okay good perfect perfectly great flawless flawlessly connects connected connect finds ' +
  'find found sees saw runs ran drives drove behaves talks talk answers responds happy stable solid reaches gets got better ' +
  'cured helps helped smooth smoothly lovely brilliant instantly yes funciona steady clockwork functions function going';
const BADLY =
  'fails fail failed failing dead silent refuses refused timeout timeouts timed error errors drops dropped drop dropping ' +
  'disconnects crash crashes crashed hangs hung freezes froze lost loses denied useless nope nada zilch stutters hiccups ' +
  'broken stuck resets restarts stalls stalled fades sluggish garbage gibberish nonsense unreachable unrecognised unrecognized struggles busy';
/** Of what was trouble: "the drops are gone". */
const GONE = 'gone vanished disappeared stopped';
/** As it was, whatever was tried. */
const AS_EVER = 'same either still';
/** "No trouble" is well, "trouble" is not. */
const TROUBLE =
  'trouble troubles problem problems issue issues bother hiccup hiccups hitch difficulty errors error drops dropouts drop dropout fault faults';
/** "No difference": it did not help. */
const EFFECT = 'difference different change improvement luck joy help effect';
/** To have none of these is badly. */
const WANTED = 'answer reply response signal sign connection contact link port sound reaction communication';
const NOT = 'not no never nothing none neither nor cannot nowhere nobody hardly';
/** "The old one does", "mine will not". */
const DOES = 'does do did will is are can has could';
/** "I can slew with it". */
const STEERS = 'slew move drive control steer goto use';

const LISTED = {
  other: OTHER,
  same: SAME,
  tried: TRIED,
  own: OWN,
  ends: ENDS,
  absent: ABSENT,
  well: WELL,
  badly: BADLY,
  gone: GONE,
  'as-ever': AS_EVER,
  trouble: TROUBLE,
  effect: EFFECT,
  wanted: WANTED,
  not: NOT,
  does: DOES,
  steers: STEERS,
  all: 'both all each every everything',
  /** What follows may be of it, and it is no thing of these. */
  user: 'account profile',
} as const;

type Role = keyof typeof LISTED;

/** Each a bit. */
export const ROLE = Object.fromEntries(Object.keys(LISTED).map((role, i) => [role, 1 << i])) as Readonly<
  Record<Role, number>
>;

export interface Kind {
  readonly thing: Thing | null;
  /** Of `ROLE`. */
  readonly roles: number;
}

const made = new Map<string, { thing: Thing | null; roles: number }>();
const of = (word: string): { thing: Thing | null; roles: number } => {
  const own = made.get(word) ?? { thing: null, roles: 0 };
  made.set(word, own);
  return own;
};
for (const [thing, words] of Object.entries(LISTS))
  for (const word of words.split(' ')) of(word).thing = thing as Thing;
for (const [role, words] of Object.entries(LISTED))
  for (const word of words.split(' ')) of(word).roles |= ROLE[role as Role];

/** undefined: it is none of them, as most are. */
export const contrastWord = (word: string): Kind | undefined => made.get(word);

/** What each token of a sentence is. */
export type Kinds = readonly (Kind | undefined)[];

/** Whether a token has one of these roles. */
export const plays = (kinds: Kinds, at: number, roles: number): boolean => ((kinds[at]?.roles ?? 0) & roles) !== 0;
export const thingAt = (kinds: Kinds, at: number): Thing | null => kinds[at]?.thing ?? null;
