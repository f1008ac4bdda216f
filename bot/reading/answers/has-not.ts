/** What a member says not to have: "dont own a multimeter", "no second cable here", "the handset is at the club". */
import { rememberLines } from '../lately.js';

/** `lead`, `adapter`, `computer`, `supply`: another one than that in use; `spare`: anything to swap with. */
export type Lacked =
  'handset' | 'meter' | 'lead' | 'adapter' | 'computer' | 'phone' | 'supply' | 'hub' | 'tool' | 'internet' | 'spare';

const LEAD = '(?:usb |serial |data |network )?(?:cables?|leads?|cords?)';
const COMPUTER = '(?:computers?|laptops?|pcs?|macs?|notebooks?|machines?)';
const ADAPTER = '(?:usb |serial |usb serial )?(?:adapters?|adaptors?|dongles?|converters?)';
const SUPPLY = '(?:power )?(?:supply|supplies|psus?|battery|batteries|power ?packs?|power ?banks?)';
const HANDSET = '(?:hand ?(?:controllers?|sets?|box|pad|controls?|paddles?)|handsets?|keypads?|paddles?)';
const METER = '(?:(?:multi|volt) ?meters?|meters?|measuring (?:instruments?|devices?|things?|tools?)|testers?)';
const TOOL = '(?:screw ?drivers?|allen ?keys?|hex ?keys?|spanners?|tools?|soldering iron)';
/** As it stands behind "no", "have not a". */
const NAMED: readonly (readonly [Lacked, string])[] = [
  ['handset', HANDSET],
  ['meter', METER],
  ['tool', TOOL],
  ['hub', '(?:powered |usb |own )*hubs?'],
  ['phone', '(?:smart ?)?(?:phones?|tablets?)'],
  ['internet', '(?:internet|wi-?fi|mobile data|signal|network|reception)'],
];
const OTHER = '(?:second|2nd|other|others?|spare|another|different|extra|third|replacement|more|further)';
const OTHERS: readonly (readonly [Lacked, string])[] = [
  ['lead', LEAD],
  ['adapter', ADAPTER],
  ['computer', COMPUTER],
  ['supply', SUPPLY],
];

const HAVE = '(?:have|has|had|got|own|possess|find|bring|carry|keep)';
const HAVE_NOT = [
  `\\b(?:do|does|did|have|has|had|having)(?: not|nt) (?:even |yet |really |actually )?(?:${HAVE} )?(?:got )?(?:with me )?`,
  '\\b(?:has|have|got|with|there(?:s| is| are)|own|possess|is|am) (?:got )?no\\b ?',
  '(?:^|[.,;!] ?|\\b(?:sorry|but|and|so|well|as) )no\\b ?',
  '\\b(?:never (?:had|owned|bought|got)|without|lacking|lack|nobody here with|not (?:a|any|an)|no have|not have|sold|lost|forgot|left|broke) ?',
].join('|');
const A = '(?:(?:a|an|any|the|my|one|such|right|proper|own|single|even|to) )*';
/** What is said not of the thing but of something about it. */
const OF_IT =
  '(?! ?s? ?(?:display|screen|text|light|lights|led|power|driver|drivers|problem|problems|trouble|error|errors|response|reply|connection|port|ports|fault|damage|charge|works?|working|shows?|sees|does|did|do|either|answers?|makes|socket|menu|button|buttons|reads?|connects?|keys))';
const AWAY = `(?:is|are|was|has|have)? ?(?:(?:at|in) (?:the |my )?(?:club|home|work|house|bin|office|shop|repair\\w*|school|observatory)|broken(?: and .{0,12})?|dead and gone|died .{0,16}|stolen|lost|sold|(?:not|nt) here)`;

const patternsOf = (thing: string, isOther: boolean): RegExp => {
  const one = isOther ? `${OTHER} ${thing}` : thing;
  const ways = [
    `(?:${HAVE_NOT})${A}${one}\\b${OF_IT}`,
    `\\b${one}\\b ${AWAY}(?=[ .,;!]|$)`,
    ...(isOther
      ? [
          `\\bonly (?:have |has |got |own )?(?:(?:the|this|that|my|a|have|got|here) )*(?:one |single |original |same )?${thing}\\b${OF_IT}(?! works?)(?! (?:that|which|who)\\b)`,
          `\\b(?:have|got|own|there(?:s| is)|is|ive) (?:got )?only (?:the |this )?(?:one |single )?${thing}\\b`,
          `\\b(?:my|the) only ${thing}\\b`,
          `\\bnobody (?:here )?(?:with|has) (?:a |an )?${thing}\\b`,
        ]
      : [`\\b(?:what|which) ${thing}\\?`, `\\b${thing}\\b.{0,14}\\b(?:do ?nt|have ?nt) have one\\b`]),
    ...(isOther
      ? []
      : [
          `\\b(?:did ?nt|did not|does ?nt) (?:come|ship) with (?:a |an |any )?${thing}\\b`,
          `\\bmeter\\b.{0,40}\\bdont have one\\b`.replace('meter', thing),
        ]),
  ];
  return new RegExp(ways.join('|'), 'u');
};

const LACKS: readonly (readonly [Lacked, RegExp])[] = [
  ...NAMED.map(([name, thing]) => [name, patternsOf(thing, false)] as const),
  ...OTHERS.map(([name, thing]) => [name, patternsOf(thing, true)] as const),
  [
    'spare',
    /\b(?:nothing|none|no ?thing|not(?:hing)? any(?:thing)?|no one) (?:else )?(?:to|i can) (?:swap|try|exchange|change|replace|compare)\b|\b(?:no|got no|not a|have ?nt a) (?:spares?|other one|second one)\b(?! \w)|\bhave none (?:to|here|of)\b/u,
  ],
];

const LONGEST = 120;
const NOTHING: ReadonlySet<Lacked> = new Set();

const lackedIn = (text: string): ReadonlySet<Lacked> => {
  const said = text
    .trim()
    .toLowerCase()
    .replace(/['\u2019]/gu, '')
    .replace(/\s+/gu, ' ');
  if (said.length > LONGEST) return NOTHING;
  return new Set(LACKS.flatMap(([name, pattern]) => (pattern.test(said) ? [name] : [])));
};

export const thingsLacked = rememberLines(lackedIn);

const ANY = NAMED.map(([name, thing]) => [name, new RegExp(`\\b${thing}\\b`, 'iu')] as const);
const ANY_OTHER = OTHERS.map(
  ([name, thing]) =>
    [
      name,
      new RegExp(
        `\\b(?:${OTHER}|borrowed|better|new|shorter|thicker)\\b[^.;]{0,24}\\b${thing}\\b|\\b(?:use|take|get) an? ${thing} (?:that|which|known|made)\\b|\\bswap\\w*\\b`,
        'iu',
      ),
    ] as const,
);
const NAMES = new Map<Lacked, RegExp>([
  ...ANY,
  ...ANY_OTHER,
  ['spare', /\b(?:swap\w*|another|other|spare|second|borrow\w*)\b/iu],
]);

/** Whether what is asked for, of a look or a remedy, needs what these words say is not there. */
export const namesLacked = (text: string, asked: string): boolean =>
  [...thingsLacked(text)].some((thing) => NAMES.get(thing)?.test(asked) === true);
