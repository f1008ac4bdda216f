/** What kind of thing is done, whatever it is done to: "shut", "ended" and "quit" are one, and so a remedy's own step is known in other words. */

const KINDS = {
  close:
    'clos(?:e[sd]?|ing)|shut(?: ?down)?|end(?:ed|ing)?(?= (?:it|the|that|them|all|in|task))|end|kill(?:ed|ing)?|quit(?:ted)?|exit(?:ed)?|stop(?:ped)?|terminat\\w*|log(?:ged)? off',
  restart: 'restart\\w*|re-?boot\\w*|power[- ]?cycl\\w*|log(?:ged|ging)? (?:out|in|off)(?: and in| n in)?|new log-?in',
  replug:
    're-?plug\\w*|plug(?:ged|s)? (?:\\w+ ){0,2}(?:in )?again|out and in|back in|re-?seat\\w*|unplug\\w* and|pull(?:ed)? (?:\\w+ ){0,2}out and|plug in again',
  unplug:
    'unplug\\w*|pull(?:ed)? (?:\\w+ ){0,2}(?:out|off)|disconnect(?:ed)?|remov(?:e|ed)|took (?:\\w+ ){0,3}(?:out|off|away)|take (?:\\w+ ){0,3}(?:out|off|away)|switch(?:ed)? (?:\\w+ ){0,3}off|turn(?:ed)? (?:\\w+ ){0,3}off|disabl\\w*|uninstall\\w*|off now',
  'push-home':
    'push(?:ed)?|press(?:ed)? (?:\\w+ ){0,4}home|home at both ends|seat(?:ed)?|pushed home|tighten(?:ed)?|screw(?:ed)? (?:\\w+ )?(?:in|down|tight)|clicked in|clamp(?:ed)?|lock(?:ed)?',
  exchange:
    'swap(?:ped)?|replac(?:e|ed)|exchang\\w*|(?:(?:an)?other|new|different|spare|fresh) (?:\\w+ ){0,2}?(?:one|cable|lead|cord|wire|adapter|supply|battery|brick|fuse|hub|charger|converter|plug)s?|borrow\\w*|lent|loan\\w*|bought|buy|us(?:e|ed|ing) (?:a|an|my|the|his|her|one)|took (?:the|a|one|my)|from (?:the|my|a)|chang(?:e|ed) (?:the|my) \\w*(?:cable|lead|adapter|battery|fuse)',
  socket:
    '(?:(?:an)?other|different|second|next) (?:usb )?(?:socket|port|hole|side|jack)s?|plugged (?:\\w+ ){0,2}in(?:to)?|straight in(?:to)?|without the hub',
  allow:
    'allow(?:ed|s)?|permit(?:ted)?|permissions?|grant(?:ed)?|accept(?:ed)?|agree[ds]?|unblock(?:ed)?|confirm(?:ed)?|said yes|clicked (?:yes|ok)|enabl\\w*|let (?:it|the)',
  set: 'set|chos(?:e|en)|choose|pick(?:ed)?|select(?:ed)?|typ(?:e|ed)|enter(?:ed)?|put (?:in|\\d+|it (?:to|on|at))|chang(?:e|ed) (?:it|the \\w+|\\w+) to|correct(?:ed)?|adjust(?:ed)?|switch(?:ed)? (?:\\w+ ){0,2}to|turn(?:ed)? (?:\\w+ ){0,3}on|switch(?:ed)? (?:\\w+ ){0,3}on|tick(?:ed)?|untick(?:ed)?|save[ds]?|raise[ds]?|lower(?:ed)?',
  move: 'mov(?:e|ed)|shift(?:ed)?|apart|away from|further|higher|closer|beside|next to|other (?:leg|side|end)|put (?:the|it|my) (?:\\w+ )?(?:up|higher|away|on the)|rais(?:e|ed)',
  install:
    'install(?:ed)?|updat(?:e|ed)|upgrad\\w*|roll(?:ed)? back|re-?install\\w*|download(?:ed)?|older (?:driver|version)|driver from|flash(?:ed)?',
  add: 'add(?:ed)?|usermod|adduser|dialout|join(?:ed)?',
  charge: 'charg(?:e|ed)(?! only)|recharg\\w*|full battery|topped up',
  clean: 'clean(?:ed)?|wip(?:e|ed)|scrap(?:e|ed)|polish\\w*|deoxit|dust(?:ed)?',
  align:
    're-?align\\w*|align(?:ed)?|re-?did|did (?:\\w+ ){0,3}again|again from (?:the )?start|sync(?:ed)?|level(?:led)?|balanc(?:e|ed)',
  wake: 'wake|woke|pressed enter|press(?:ed)? (?:a|any|enter) ?(?:key)?|unpark(?:ed)?',
} as const;

export type DeedKind = keyof typeof KINDS;

const PATTERNS = Object.entries(KINDS).map(
  ([kind, words]) => [kind as DeedKind, new RegExp(`\\b(?:${words})\\b`, 'iu')] as const,
);

export const deedKindsIn = (text: string): ReadonlySet<DeedKind> =>
  new Set(PATTERNS.flatMap(([kind, pattern]) => (pattern.test(text) ? [kind] : [])));
