/** Sentences about the mount, the site and what is kept: faults, misses, drift, reminders, saving a place, what to type in. */
import { problem } from '../../../ground/problem.js';
import { fittingChoices } from '../../../reply/reply.js';
import { commandLine } from '../question-parts.js';
import { isPrivateWord } from '../resolve-site.js';
import { latitudeAlone } from './latitude-alone.js';
import { drift } from './about-drift.js';
import { instantLine, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { numberOf } from './words.js';

const PART =
  'mount|handset|hand ?controller|hand ?set|controller|keypad|cable|lead|usb|serial|com ?port|port|driver|adapter|adaptor|dongle|wi-?fi|bluetooth|laptop|computer|pc|motors?|device manager|hub|network|fuse|power|battery';
const FAILS =
  "not|won'?t|wont|doesn'?t|doesnt|can'?t|cant|cannot|isn'?t|isnt|no|lost|losing|los(?:t|es|ing)|fail\\w*|refus\\w*|dead|die[sd]?|vanish\\w*|disappear\\w*|drops?|dropp\\w*|disconnect\\w*|missing|trouble|problem|error|code \\d+|triangle|denied|busy|unknown|stuck|nothing|broken|keeps|timed? ?out|times out|stopped|faulty|beep\\w*|blink\\w*|flash\\w*";
const TROUBLE = new RegExp(
  `\\b(?:${PART})s?\\b.*\\b(?:${FAILS})\\b|\\b(?:${FAILS})\\b.*\\b(?:${PART}|connect\\w*|communicat\\w*|detect\\w*|recogni\\w*|respond\\w*)s?\\b|\\bcode (?:10|28|43|31|39|52)\\b|\\b(?:yellow triangle|permission denied|access denied|ping(?:ing)? it)\\b`,
  'u',
);

/** Nothing is named that fails: the walk asks what it is. */
const ALL_FAILS =
  /^(?:nothing (?:(?:at all|ever|still|is) )?(?:works?|working|happens?|happening|moves?|responds?)|(?:it|this|that|the (?:thing|scope|telescope)|my (?:scope|telescope|goto)|everything) (?:just |still |all )*(?:(?:does(?: not|n't|nt)|will not|won't|wont|is not|isn't|isnt) (?:work\w*|mov\w+|respond\w*|do anything|turn(?:ing)? on|start\w*)|stopped working|is (?:dead|broken|stuck)))\b/u;

const trouble: Rule = (asked) =>
  (says(asked, TROUBLE) || says(asked, ALL_FAILS)) && !says(asked, /\bremind\b|\bmeridian flip\b/u)
    ? { line: `triage ${asked.original}` }
    : null;

const LANDED =
  /\b(?:landed|lands?|landing|ended up|ends up|end up|it went to|went to|hit|stopped (?:at|on)|is pointing at|was pointing at|points? at|pointed at|got|came out|finished)\b/u;
const SENT = /\b(?:sent|told|slew\w*|goto|go to|asked|went|landed|lands|aimed|pointed|astray)\b/u;
const OFFSET =
  /((?:\d+(?:\.\d+)?|an?|one|two|three|five|ten|fifteen|twenty|thirty))\s*(°|degrees?|deg|arc ?min(?:ute)?s?|′)\s*(?:(?:too far|too|to the|off to the|off)\s+)*(north|south|east|west|high|low|left|right|above|below)(?:-?(east|west))?/u;

/** "15 degrees west", as `landed:` takes it; null where the words give none. */
const offsetWords = (plain: string): string | null => {
  const offset = OFFSET.exec(plain);
  if (offset === null) return null;
  const [, amount = '', unit = '', way = '', second = ''] = offset;
  const size = /^an?$/u.test(amount) ? 1 : (numberOf(amount) ?? Number(amount));
  return `${size} ${/′|arc/u.test(unit) ? 'arcmin' : 'degrees'} ${second === '' ? way : `${way}-${second}`}`;
};

/** The one it was sent to, and the other: "on deneb instead of vega" names them the other way round. */
const sentAndLanded = ({ targets, plain }: Asked): readonly (string | undefined)[] => {
  const [first, second] = targets;
  const wanted = /\b(?:instead of|rather than|not on) (.+)$/u.exec(plain)?.[1];
  return second !== undefined && wanted?.startsWith(second) === true ? [second, first] : [first, second];
};

/** "landed on deneb", and not a word of where it was to go: the name is where it landed. */
const LANDED_ONLY = /^(?:it |the mount |the scope |tube )?(?:has )?(?:landed|ended up|stopped) (?:on|at|in|near)\b/u;

const miss: Rule = (asked) => {
  const [target, star] = sentAndLanded(asked);
  if (target !== undefined && star === undefined && says(asked, LANDED_ONLY))
    return problem(
      'which-target',
      `It landed on ${target}; what was it sent to? Such as ${commandLine('astray', 'Vega', { landed: target })}`,
      fittingChoices([{ label: 'What to type into the controller', run: 'entries' }]),
    );
  if (target === undefined || !says(asked, SENT) || !says(asked, LANDED)) return null;
  const landed = offsetWords(asked.plain) ?? star;
  return landed === undefined
    ? null
    : { line: commandLine('astray', target, { landed, site: asked.place ?? undefined }) };
};

const REMIND =
  /^(?:poke|buzz|text|message|shout at) (?:me|us)\b|^remind\b|^alarm (?:at |for )?\d|\bdon'?t let (?:me|us) miss\b|^set (?:a )?reminder\b|\b(?:remind|notify|alert|nudge|ping|warn|wake)\b(?: me| us| everyone| everybody| the channel| the club)|^(?:set |make |add )?(?:a |an )?(?:reminder|alarm)s?\b (?:for|at|about|when|to|before)|\b(?:tell|give) (?:me|us) (?:a shout |a nudge )?(?:when|once|as soon as|before)\b|\blet (?:me|us) know (?:when|once|as soon as|before)\b/u;

const beforeMinutes = ({ plain }: Asked): string | undefined => {
  const found = /\b(half (?:an )?hour|an hour|(\w+) ?(minutes?|mins?|hours?)) before\b/u.exec(plain);
  if (found === null) return undefined;
  const [, whole = '', count = '', unit = ''] = found;
  if (/^(?:half (?:an )?|an )hour$/u.test(whole)) return whole.startsWith('half') ? '30' : '60';
  const value = numberOf(count);
  return value === null ? undefined : String(Math.round(value * (unit.startsWith('h') ? 60 : 1)));
};

const ABOVE = /\b(?:above|over|past|reaches|gets to|higher than|at least) (\d{1,2})\b(?! ?(?:am|pm|:))/u;
/** "10 degrees high", "comes up at 10°": a height by its unit, wherever it stands. */
const HEIGHT = /\b(\d{1,2}) ?(?:°|deg\b|degrees?\b)/u;
const UP_DEG = '15';

type Condition = Readonly<Record<string, string>>;

/** What may be waited for of a target, and of the Sun and the dark. */
const OF_TARGET: readonly (readonly [RegExp, Condition])[] = [
  [
    /\b(?:clears?|clear of|over|above) (?:the |my )?(?:trees?|roofs?|houses?|horizon|hedge|wall|fence)\b/u,
    { when: 'horizon' },
  ],
  [/\b(?:meridian|transits?|highest|culminat\w*|due south)\b/u, { when: 'transit' }],
  [/\b(?:sets|goes down|has set|is down|gone)\b/u, { when: 'set' }],
  [/\b(?:when|once|as soon as)\b.*\b(?:up|rises?|risen|visible|out|appears?)\b/u, { above: UP_DEG }],
];
const OF_SUN: readonly (readonly [RegExp, Condition])[] = [
  [
    /\bsun ?(?:rise|up)\b|\bdawn\b|\bsun (?:comes up|rises|is up)\b|\b(?:before|when) (?:the sun|it gets light)\b/u,
    { when: 'sunrise' },
  ],
  [/\bdark\b/u, { when: 'dark' }],
];

/** The condition in words, as options; null where an hour or the target alone is said. */
const conditionOf = (asked: Asked, target: string | undefined): Condition | null => {
  const isOfTarget = target !== undefined && target !== 'sun';
  const above = (ABOVE.exec(asked.plain) ?? HEIGHT.exec(asked.plain))?.[1];
  if (target !== undefined && above !== undefined) return { above };
  const found = (isOfTarget ? OF_TARGET : OF_SUN).find(([pattern]) => says(asked, pattern))?.[1] ?? null;
  // "when venus is up at noon": the hour was said, the height of "up" is our own.
  return found?.['above'] !== undefined && asked.when.hour !== null ? null : found;
};

/** What goes with a reminder beside what it waits for. */
const remindOptions = (asked: Asked, isSunrise: boolean): Readonly<Record<string, string | undefined>> => ({
  nights: isSunrise && says(asked, /\bevery (?:night|morning|day)\b/u) ? 'every' : undefined,
  on: asked.when.night === 'tonight' ? undefined : (asked.when.night ?? undefined),
  before: beforeMinutes(asked),
  site: asked.place ?? undefined,
  to: says(asked, /\b(?:remind|tell|alert|warn) (?:everyone|everybody|the channel|the club)\b/u)
    ? 'channel'
    : undefined,
});

const remind: Rule = (asked) => {
  if (!says(asked, REMIND)) return null;
  const [named] = asked.targets;
  const condition = conditionOf(asked, named);
  const isSunrise = condition?.['when'] === 'sunrise';
  const isOfSun = named === 'sun' && condition?.['above'] === undefined;
  const target = isSunrise || isOfSun ? undefined : named;
  const at = condition === null ? (asked.when.hour ?? undefined) : undefined;
  // What to wait for is still to be said: the command asks.
  if (target === undefined && condition === null && at === undefined) return { line: 'remind add' };
  return { line: commandLine('remind', '', { target, ...condition, at, ...remindOptions(asked, isSunrise) }) };
};

const HOW_SAVE =
  /\bhow (?:do|can|would|should) (?:i|you|we)\b.*\b(?:save|add|set|store|change|tell you|give you)\b.*\b(?:site|garden|home|house|place|observatory|location|position|where i)\b|\bwhere do i (?:put|save|set) my\b/u;
const SAVE =
  /^(?:please )?(?:save|add|store|remember|register|set up|set|change|move|new(?= site\b))\b(?: my| our| the| a)?(?: new)?(?: site)? ?(.*?)$/u;
const IS_AT = /^(?:my )?([\p{L} ]{2,30}?)(?:'s| is)(?: (?:at|in|near))? /u;
const I_AM =
  /^(?:hi |hello |so )?(?:i'?m|i am|we'?re|we are|i|we)(?: currently| now| here)?(?: (?:live|observe|observing|based|set up|out|standing|moved|have moved))?(?: in| at| near| from| to)/u;

/** The name before the place in "save my garden as 52.63, 1.30". */
const nameBefore = (words: string): string =>
  words
    .replace(/^(?:to|at|in|as) .*$/u, '')
    .replace(/[-+−]?\d+(?:\.\d+)?\s*°?\s*[ns]?[ ,]+[-+−]?\d+(?:\.\d+)?.*$/u, '')
    .replace(/\s+(?:at|as|in|near|to|is|location|position|:)(?:\s+(?:at|in|near))?(?:\s+.*)?$/u, '')
    .replace(/\s+$/u, '');

const savedAs = (name: string, { place }: Asked): Reading | null =>
  place === null ? null : { line: commandLine('site', 'add', { name, position: place }) };

const isOnlyPlace = ({ left, targets, kind }: Asked): boolean =>
  left.length === 0 && targets.length === 0 && kind === null;

/** "save my garden at 52.63, 1.30". */
const savingRule: Rule = (asked) => {
  const saving = SAVE.exec(asked.plain);
  if (saving === null || asked.targets.length > 0) return null;
  const name = nameBefore(saving[1] ?? '');
  if (asked.place === null && /^(?:|site|here|this)$/u.test(name)) return { line: 'help site' };
  const isPlain = /^(?:|site|location|position|place|home site)$/u.test(name) || name === asked.place;
  return savedAs(isPlain ? 'my site' : name, asked);
};

/** "my site is norwich". */
const isAtRule: Rule = (asked) => {
  const own = IS_AT.exec(asked.plain)?.[1];
  const isOwn = asked.plain.startsWith('my ') || (own !== undefined && isPrivateWord(own));
  if (own === undefined || !isOwn || asked.left.length > 0) return null;
  return savedAs(/^(?:my )?(?:site|place|position|location|coordinates)$/u.test(own) ? 'my site' : own, asked);
};

const I_AM_AT =
  /^(?:i'?m|i am|we'?re|we are|i|we)(?: (?:live|observe|observing))? (?:in|at|near|from) (?!(?:a|an|the|my|our|it|this|that|home|work)\b)(\p{L}{3,}(?: \p{L}{3,}){0,2})$/u;

/** "im in norwich", and nothing asked. */
const iAmRule: Rule = (asked) => {
  const asksMore = says(asked, /\b(?:what|what's|which|see|look|up|when|how|is|can)\b/u);
  if (!I_AM.test(asked.plain) || asksMore || asked.targets.length > 0 || asked.kind !== null) return null;
  if (asked.place !== null && (asked.isPlaceSaved || isPrivateWord(asked.place)))
    return { line: commandLine('site', 'use', { name: asked.place }) };
  if (asked.place !== null && !asked.isPlaceUnknown) return isOnlyPlace(asked) ? savedAs('my site', asked) : null;
  // A place that no list has: the answer says so, and how to save it by its position.
  const unknown = I_AM_AT.exec(asked.plain)?.[1];
  return unknown === undefined ? null : { line: commandLine('site', 'add', { name: unknown, position: unknown }) };
};

const WHERE_AM_I =
  /^(?:list (?:all )?(?:my |the )?sites?|(?:my )?sites list|(?:what|which) sites .{0,20}|where am i|(?:what|which) is my site|what'?s my site|my sites?|saved sites?)$|\bwhere (?:do you think )?i am\b|\bmy (?:latitude|longitude|coordinates|location)$/u;

const saveSite: Rule = (asked) => {
  if (says(asked, HOW_SAVE)) return { line: 'help site' };
  if (says(asked, WHERE_AM_I)) return { line: 'site' };
  return savingRule(asked) ?? isAtRule(asked) ?? iAmRule(asked);
};

/** "use the hut": from now on; "use cork tonight": for that night alone. */
const useSite: Rule = (asked) => {
  const wanted = /^(?:use|switch to|go to|change to) (?:the |my )?(?:site )?/u.test(asked.plain);
  const { place, targets, left, when } = asked;
  if (!wanted || place === null || targets.length > 0 || left.length > 0) return null;
  const isOnce = when.night !== null || when.hour !== null;
  return isOnce ? nightLine('tonight', '', asked) : { line: commandLine('site', 'use', { name: place }) };
};

/** Whole commands that a few words ask for. */
const NAMED: readonly (readonly [RegExp, (asked: Asked) => Reading])[] = [
  [
    /\b(?:cancel|stop|delete|del|clear|drop|remove|show|list) (?:all )?(?:of )?(?:my |the )?reminders?|\bstop reminding\b|^(?:my )?reminders?(?: list)?$|\b(?:what|which|any|how many) (?:of my )?reminders?\b|\breminders (?:do )?i have\b/u,
    () => ({ line: 'remind list' }),
  ],
  [
    /\bwhat (?:do )?you (?:know|keep|store|have|hold) (?:about|on|of) me|^my data$|\bgdpr\b|\bprivacy\b/u,
    () => ({ line: 'mydata' }),
  ],
  [
    /\b(?:delete|erase|remove|forget|wipe) (?:about |all )?(?:me|my (?:data|stuff|things|info)|everything)\b/u,
    () => ({ line: 'forget' }),
  ],
  [
    /\b(?:what|which|good|best|two|three|bright)\b.*\bstars?\b.*\ball?ign|\bstars? (?:to|for) all?ign|\balign(?:ment)? stars?\b|\b(?:two|three|2|3) star align/u,
    (asked) => instantLine('alignment', '', asked),
  ],
  [
    /\bpolar ?align|\bpolar (?:axis|scope)|\b(?:polaris|north star|pole star)\b.*\b(?:clock|reticle|scope)\b|\bhow far off is (?:polaris|the pole star)\b|\b(?:north|south) celestial pole|\bwhere is the pole\b/u,
    (asked) => instantLine('pole', '', asked),
  ],
  [/\bsidereal\b|\blst\b/u, (asked) => instantLine('sidereal', '', asked)],
  [
    /\bwhat\b.*\b(?:do|should|must|shall) (?:i|we) (?:type|enter|put)\b|\bdaylight ?saving|\bdst\b|\btime ?zone\b|\b(?:set ?up|enter|put in|type in) (?:the )?(?:date|time|site)/u,
    (asked) => instantLine('entries', '', asked),
  ],
];

const named: Rule = (asked) => NAMED.find(([pattern]) => pattern.test(asked.plain))?.[1](asked) ?? null;

const MOUNTS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:dob|dobs|dobsonian|alt-?az\w*)\b/u, 'altaz'],
  [/\bfork\b/u, 'fork'],
  [/\b(?:german|equatorial|gem|eq)\b/u, 'german'],
];
const TELLS_GEAR = /^(?:i have|i'?ve got|i use|i own|i got|my (?:mount|scope|telescope) is)\b/u;
const TELLS_SKY =
  /^(?:my |the |our )?(?:sky|skies)\b.*\b(?:is|are)\b|^(?:i have|i'?ve got) .*\b(?:sky|skies|bortle)\b/u;
const ASKS_MORE = /\b(?:what|which|see|look|up|when|how|can)\b/u;

/** "my scope is an 8 inch dob": what they observe with, kept as gear; "my skies are bortle 4": the site's sky. */
const own: Rule = (asked) => {
  const isTold = /^my (?:mount|scope|telescope) is\b/u.test(asked.plain);
  if (says(asked, ASKS_MORE) || (asked.targets.length > 0 && !isTold)) return null;
  const mount = MOUNTS.find(([pattern]) => pattern.test(asked.plain))?.[1];
  if (says(asked, TELLS_GEAR) && mount !== undefined) return { line: commandLine('gear', '', { mount }) };
  return says(asked, TELLS_SKY) && asked.sky !== null ? { line: commandLine('site', 'sky', { sky: asked.sky }) } : null;
};

const flip: Rule = (asked) => {
  const [target] = asked.targets;
  return target !== undefined && says(asked, /\bflips?\b|\bside of the (?:mount|pier)\b/u)
    ? instantLine('meridian', target, asked)
    : null;
};

export const ABOUT_GEAR: readonly Rule[] = [
  remind,
  miss,
  drift,
  latitudeAlone,
  trouble,
  saveSite,
  useSite,
  own,
  flip,
  named,
];
