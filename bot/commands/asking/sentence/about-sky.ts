/** Sentences about the sky: by day, how high, when up, the Moon, what is coming, when dark, what to look at. The first that fits reads. */
import { MS_PER_DAY } from '../../../ground/durations.js';
import { isProblem } from '../../../ground/problem.js';
import { commandLine } from '../question-parts.js';
import { air, figure } from './about-figures.js';
import { pair } from './about-pairs.js';
import { instantLine, nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';

const ECLIPSE = /\beclipses?\b/u;
const SHOWER =
  /\b(perseid|geminid|leonid|orionid|quadrantid|lyrid|taurid|ursid|draconid|eta aquarii?d|aquarii?d)s?\b|\b(?:meteors?|meteor showers?|shooting stars?)\b/u;
const PLANET = /\b(mercury|venus|mars|jupiter|saturn|uranus|neptune)\b/u;

/** Which night is without the Moon is asked, and not of one. */
const SEEKS_A_NIGHT = /\b(?:weekend|saturday|friday|sunday|night)s\b|\bweekend\b|\bnext\b|\bwhich\b/u;

/** Of one night, or some hour of it: what is moonless then. */
const isOfOneNight = ({ when, plain }: Asked): boolean =>
  when.night !== null || when.hour !== null || /\b(?:tonight|this evening|dark hours)\b/u.test(plain);

/** Weeks ahead: eclipses, showers, oppositions, meetings, moonless nights. */
const coming: Rule = (asked) => {
  const ahead = (kind: string, about?: string, on: string | null = null): Reading =>
    nightLine(
      'ahead',
      kind,
      { ...asked, when: { ...nightAlone(asked.when), night: null, note: null }, kit: null, sky: null },
      { about: about ?? null, on },
    );
  // "the eclipse of Algol" is its own.
  const isOfOthers = asked.targets.some((name) => name !== 'sun' && name !== 'moon');
  if (says(asked, ECLIPSE) && !isOfOthers) {
    if (says(asked, /\b(?:lunar|moon)\b/u)) return ahead('eclipses', 'Moon');
    return ahead('eclipses', says(asked, /\b(?:solar|sun)\b/u) ? 'Sun' : undefined);
  }
  const shower = SHOWER.exec(asked.plain);
  if (shower !== null) {
    const { night } = nightAlone(asked.when);
    const isOfNow = asked.when.hour !== null || asked.when.isMorning || says(asked, /\bnow\b/u);
    return ahead('showers', shower[1], night ?? (isOfNow ? 'tonight' : null));
  }
  const planet = PLANET.exec(asked.plain)?.[1];
  if (
    says(asked, /\b(?:oppositions?|elongations?)\b/u) ||
    (planet !== undefined && says(asked, /\b(?:closest|nearest|biggest|brightest)\b/u))
  )
    return ahead('planets', planet);
  if (
    says(asked, /\b(?:next to|near|beside|close to) the moon\b/u) &&
    says(asked, /\b(?:what|which|thing|planet|star)\b/u)
  )
    return ahead('meetings');
  if (says(asked, /\b(?:conjunctions?|close meetings?|line ?up|alignment of planets)\b/u)) return ahead('meetings');
  const isOfNights = !isOfOneNight(asked) || says(asked, SEEKS_A_NIGHT);
  if (
    isOfNights &&
    says(asked, /\bmoonless\b|\bno moon\b|\bdark(?:est)? (?:weekend|saturday|friday|sunday|night)s?\b/u)
  )
    return ahead('saturdays');
  return says(asked, /\b(?:what'?s|what is|anything) coming(?: up)?\b|\bcoming up\b|\bevents?\b/u) ? ahead('') : null;
};

/** One of the four by its name is one of them; "Europa" and "Io" alone may be asked about as any target. */
const MOONS =
  /\b(?:jup(?:iter)?|jovian)'?s? moons?\b|\bmoons of jup(?:iter)?\b|\bgalilean(?: moons| satellites)?\b|\b(?:io|europa|ganymede|callisto)(?:'?s)?\b.*\b(?:eclipsed?|transits?|transiting|shadows?|occult\w*|events?|behind|in front|before|crosses|crossing)\b|\b(?:eclipsed?|transits?|shadows?|occult\w*|events?|where|wheres|when)\b.*\b(?:io|europa|ganymede|callisto)\b|\bshadow transits?\b/u;

const MOON_EVENTS: readonly (readonly [RegExp, string])[] = [
  [/\bshadow/u, 'shadow-transit'],
  [/\btransit\w*|\bcross\w*|\bin front\b/u, 'transit'],
  [/\boccult\w*|\bbehind\b/u, 'occultation'],
  [/\beclips\w*/u, 'eclipse'],
];

/** "next io shadow transit": one moon's, or one kind's; all of a night else. */
/** Where something is to be moved, the Sun comes first. */
const MOVES = /\bsun\b|\b(?:slew\w*|swing|go ?to|move|moving|point|aim)\b/u;

/** Before the ways past the Sun: a shadow on Jupiter is no way to it. */
export const jupiterMoonEvents: Rule = (asked) => (says(asked, MOVES) ? null : jupiterMoons(asked));

const jupiterMoons: Rule = (asked) => {
  if (!says(asked, MOONS)) return null;
  const of = /\b(io|europa|ganymede|callisto)\b/u.exec(asked.plain)?.[1];
  const event = MOON_EVENTS.find(([pattern]) => says(asked, pattern))?.[1];
  const isNext =
    event !== undefined && says(asked, /\b(?:next|when|this week|this month|any|coming|soon|upcoming|first)\b/u);
  return instantLine(
    'moons',
    '',
    asked,
    isNext ? { ...(of === undefined ? {} : { of: `${of.charAt(0).toUpperCase()}${of.slice(1)}` }), event } : {},
  );
};

const isMoon = ({ targets, plain }: Asked): boolean =>
  targets.every((name) => name === 'moon') && /\bmoon(?:'?s|rise|set|light)?\b|\bmoon (?:rise|set)\b/u.test(plain);

const MOON_TIMES =
  /\bmoon ?(?:rise|set)s?\b|\b(?:rise|rises|rising|set|sets|setting|up|out|problem|bother|nuisance|interfere|in the way|trouble|visible|high)\b|\bis there (?:a|any|much) moon\b|\bsee\b/u;

/** "when is the next full moon": which quarter comes when. */
const NEXT_PHASE =
  /\b(?:when|next|what (?:day|date|time))\b.*\b(new|first|full|last|third)(?: (?:moon|quarter))\b|\bwhen\b.*\bmoon\b.*\b(full|new)\b/u;

/** The Moon is in the way of what is asked about. */
const DESPITE_MOON =
  /\b(?:despite|in spite of|besides?|apart from|away from|not|avoiding|without|with|after|once) (?:the )?moon(?:light|set| sets| has set| is down| goes down)?\b/u;

const moon: Rule = (asked) => {
  if (!isMoon(asked)) return null;
  const [, named, after] = NEXT_PHASE.exec(asked.plain) ?? [];
  const phase = named ?? after;
  if (phase !== undefined) return instantLine('moon', '', asked, { next: phase === 'third' ? 'last' : phase });
  if (
    says(
      asked,
      /\bphase|\b(?:full|new) moon\b|\bquarter\b|\bhow (?:full|bright|big|old)\b|\blit\b|\b(?:waxing|waning)\b/u,
    )
  )
    return instantLine('moon', '', asked);
  if (says(asked, /^(?:where|how high|which way|what direction)/u)) return null;
  if (says(asked, MOON_TIMES)) return nightLine('up', 'moon', { ...asked, kit: null, sky: null });
  return asked.left.length === 0 ? instantLine('moon', '', asked) : null;
};

const DARK =
  /\b(?:dark|darkness|sun ?set|sun ?rise|sundown|sun up|sun (?:sets?|rises?|go(?:es)? down|comes? up)|does the sun (?:set|rise)|twilight|dusk|dawn|first light)\b/u;
const DARK_ASKED =
  /^(?:moonless|moon ?rise|moon ?set|hours|when|astro\w*|nautical|civil|what|is|how|does|do|will|it|any|tell|sun|sun ?set|sun ?rise|sundown|dusk|dawn|twilight|dark|end|start|first)\b|\bdark yet\b/u;

const MILKY_WAY = /\bmilky way\b/u;
const MILKY_WAY_NOTE =
  'The Milky Way shows in the hours without the Moon, away from lights: in the evening of late summer and autumn it stands highest.';

/** "when is the moon out of the way". */
const MOON_AWAY = /^(?:when|what time|how long)\b.*\bmoon\b.*\bout (?:of )?(?:the|my) way\b/u;

const darkLine = (asked: Asked, more: Readonly<Record<string, string | null>> = {}): Reading =>
  nightLine('dark', '', { ...asked, when: nightAlone(asked.when), kit: null, sky: null }, more);

/** Of the dark and the Moon together, a yes or a no is asked. */
const WHETHER = /^(?:is|are|will|won't|wont|does|do|can|could|any|has|have|am|would|should|so is|but is)\b/u;
const MOON_COMES =
  /\bbefore (?:the )?moon ?(?:rise|rises|comes|is up|gets up|shows|turns up|appears|up)?\b|\bbefore moonrise\b/u;
const MOON_GOES = /\b(?:no|without (?:a |the |any )?) ?moon\b|\bmoonless\b|\bmoon[- ]free\b/u;
const SPOILS =
  /\bmoon(?:light|'?s)?\b.*\b(?:spoil\w*|ruin\w*|wash\w*|drown\w*|interfer\w*|problem|bother\w*|nuisance|trouble|too bright|in the way|in (?:my|our) way|get in|hurt|wreck\w*|affect\w*|mess\w*)\b|\b(?:spoil\w*|ruin\w*|drown\w*|washed|interfer\w*|wreck\w*|hide|hides|too much)\b.*\bmoon(?:light)?\b/u;

/** What the answer of `dark` begins with; null where no yes or no is asked. */
const darkFirstOf = (asked: Asked): Readonly<Record<string, string | null>> | null => {
  const isOfDark = says(asked, DARK);
  const isOfMoon = says(asked, /\bmoon/u);
  if (says(asked, MOON_GOES) && isOfDark && says(asked, /\bwhen\b/u)) return {};
  if (
    says(asked, MOON_GOES) &&
    !says(asked, SEEKS_A_NIGHT) &&
    (isOfDark || isOfOneNight(asked)) &&
    !says(asked, /\bwhen\b/u)
  ) {
    const { hour, isUntil } = asked.when;
    return { first: 'moonless', until: isUntil ? hour : null };
  }
  if (!says(asked, WHETHER)) return null;
  if (isOfDark && says(asked, MOON_COMES)) return { first: 'before-moonrise' };
  if (isOfDark && isOfMoon && says(asked, /\bmoon\b.*\b(?:when|by the time|once|after|as) \b/u))
    return { first: 'moon-at-dark' };
  if (isOfDark && !isOfMoon && isOfNow(asked)) return { first: 'now' };
  return null;
};

/** "yet", "enough now", and no other night or hour. */
const isOfNow = ({ when, plain }: Asked): boolean =>
  (when.hour === null || when.hour.endsWith('now')) &&
  /^(?:is|are|has)\b|\b(?:yet|now|already)\b/u.test(plain) &&
  when.night === null;

const dark: Rule = (asked) => {
  const isOfTarget = asked.targets.some((name) => name !== 'sun');
  const isOfOther = asked.targets.some((name) => name !== 'sun' && name !== 'moon');
  if (says(asked, MOON_AWAY)) return darkLine(asked);
  if (!isOfOther && says(asked, WHETHER) && says(asked, SPOILS)) return darkLine(asked, { first: 'moon-spoils' });
  const first = isOfOther || asked.kind !== null ? null : darkFirstOf(asked);
  if (first !== null) return darkLine(asked, first);
  if (says(asked, MILKY_WAY)) return { ...darkLine(asked), note: MILKY_WAY_NOTE };
  if (isOfTarget || asked.kind !== null || !says(asked, DARK) || !says(asked, DARK_ASKED)) return null;
  return darkLine(asked);
};

const HIGH =
  /\bhow (?:high|low)\b|\baltitude\b|\bazimuth\b|\balt ?\/? ?az\b|\belevation\b|\bwhere(?:'s| is| are| do| can| should|s)?\b|\b(?:which|what) (?:way|direction|part)\b|\bpoint me\b|\bfind me\b|\bshow me\b|\blocate\b/u;
const THROUGH_NIGHT = /\bhow high (?:does|do|can|could|will it ever)\b|\b(?:best|highest|max\w*)\b/u;

const COORDINATES = /\b(?:j ?2000|coordinates|right ascension|declination|precess\w*|epoch|jnow)\b/u;

const EPOCH = /\b(?:epoch|equinox)(?: of)? j?(\d{4}(?:\.\d+)?)\b/u;
const DAYS_IN_YEAR = 365.25;

/** "epoch 2026.9" as its day: a Julian year counts from the noon of 1 January 2000 (IAU 1976). J2000 itself is in every answer. */
const epochDate = (plain: string): string | null => {
  const year = EPOCH.exec(plain)?.[1];
  if (year === undefined || Number(year) === 2000) return null;
  const utcMs = Date.UTC(2000, 0, 1, 12) + (Number(year) - 2000) * DAYS_IN_YEAR * MS_PER_DAY;
  return new Date(utcMs).toISOString().slice(0, 10);
};

const coordinates: Rule = (asked) => {
  const [target] = asked.targets;
  if (target === undefined || !says(asked, COORDINATES)) return null;
  const at = epochDate(asked.plain);
  return at === null
    ? instantLine('epoch', target, { ...asked, place: null })
    : { line: commandLine('epoch', target, { at }) };
};

const height: Rule = (asked) => {
  const [target] = asked.targets;
  if (target === undefined || !says(asked, HIGH)) return null;
  const isOfNight = says(asked, THROUGH_NIGHT) || (asked.when.night !== null && asked.when.hour === null);
  return isOfNight ? nightLine('up', target, asked) : instantLine('altitude', target, asked);
};

/** Whatever else is said of a target, the answer on its night holds what was asked. */
const night: Rule = (asked) => {
  const [target, ...others] = asked.targets;
  if (target === undefined) return null;
  const reading = nightLine('up', target, asked);
  return others.length === 0
    ? reading
    : { ...reading, note: `One at a time: next ask up ${others.join(', then up ')}.` };
};

const LIST =
  /\b(?:faintest|brightest|biggest|largest|highest|what|what's|whats|which|anything|something|someplace|suggest\w*|recommend\w*|show me|show us|any|best|good|ideas?|targets?|things?|stuff|list|give me|worth|choose|pick|plan)\b/u;
const TO_LOOK =
  /\b(?:up|out|see|look\w*|observ\w*|imag\w*|photograph\w*|point\w*|tonight|worth|visible|sky|targets?|show|good|view\w*|find|watch|bright|overhead|above|rising|rises?|setting|sets|try|start|evening|hunt|suggest\w*|recommend\w*|objects?|stuff)\b/u;

const asksForList = (asked: Asked): boolean => {
  const { kind, left, place, kit, sky } = asked;
  if (asked.constellation !== null) return true;
  const isKind = kind !== null && (left.every((word) => kind.includes(word)) || says(asked, LIST));
  if (isKind || says(asked, BEDTIME) || (says(asked, LIST) && says(asked, TO_LOOK))) return true;
  const isMine = place !== null || kit !== null || sky !== null;
  return (says(asked, /\b(?:sky|tonight)\b/u) && left.length === 0) || (isMine && says(asked, /\b(?:see|look|up)\b/u));
};

/** "kids to bed at 7": what shows before it. */
const BEDTIME =
  /\b(?:kids?|child(?:ren)?|daughters?|sons?|little ones?|boys?|girls?|grand\w+|toddlers?)\b.*\b(?:bed|bed ?time|sleep)\b|\bbed ?time\b/u;

/** The hour from which to list; "now" is where a list begins anyhow. */
const listFrom = (asked: Asked): string | null => {
  const { hour, isUntil } = asked.when;
  if (isUntil || hour?.endsWith('now') === true) return null;
  return hour ?? (says(asked, /\b(?:morning|dawn)\b/u) ? '4am' : null);
};

const OVERHEAD =
  /\b(?:overhead|at the zenith|straight up|directly above|above (?:me|us|(?:my|our|the) (?:house|head|heads|home|garden|roof)))\b/u;
/** "in the north west", "low southeast", "facing south", "to the east". */
const DIRECTION =
  /\b(?:in|to|towards?|facing|looking|low|high|my|the|due) (?:the )?(north|south)?[ -]?(east|west)?(?:ern)?(?: sky| side| horizon)?(?= |$)/gu;

/** The part of the sky that is asked about, if one is. */
const towardsOf = ({ plain }: Asked): string | null => {
  if (OVERHEAD.test(plain)) return 'overhead';
  for (const [, first, second] of plain.matchAll(DIRECTION))
    if (first !== undefined || second !== undefined) return [first, second].filter(Boolean).join('-');
  return null;
};

/** "galaxies but not M 31": a list all the same. */
const EXCEPT =
  /\b(?:but not|not including|except(?: for)?|other than|apart from|excluding|besides) (?:the )?(.{2,40})$/u;
const listExcept: Rule = (asked) => {
  const [, except] = EXCEPT.exec(asked.plain) ?? [];
  if (except === undefined || asked.kind === null || asked.targets.length === 0) return null;
  const read = list({ ...asked, targets: [] });
  return read === null || isProblem(read) ? read : { ...read, note: `Not left out: ${except}.` };
};

/** "doubles despite the Moon": a list, and nothing about the Moon. */
const despiteMoon: Rule = (asked) =>
  (asked.kind !== null || asked.constellation !== null) && isMoon(asked) && says(asked, DESPITE_MOON)
    ? list({ ...asked, targets: [] })
    : null;

const list: Rule = (asked) => {
  if (!asksForList(asked)) return null;
  const { hour } = asked.when;
  const isUntil = asked.when.isUntil || (hour !== null && says(asked, BEDTIME));
  return nightLine(
    'tonight',
    '',
    { ...asked, when: nightAlone(asked.when) },
    {
      kind: asked.kind,
      from: isUntil ? null : listFrom(asked),
      until: isUntil ? hour : null,
      towards: towardsOf(asked),
      above: asked.above,
      brighter: asked.brighter,
      constellation: asked.constellation,
    },
  );
};

/** "bright star in the east at 8": one that was seen, and no list of targets. */
const BRIGHT_ONE =
  /\bbright(?:est)?\b(?: \w+){0,2}? (?:stars?|lights?|things?|objects?|dots?|planets?|one|twinkl\w+)\b|\b(?:stars?|lights?|things?|objects?|dots?) (?:is |so |very |really |that is |that's )*bright\b/u;

const brightOne: Rule = (asked) => {
  const towards = towardsOf(asked);
  if (towards === null || asked.targets.length > 0 || !says(asked, BRIGHT_ONE)) return null;
  const height = /\b(low|high)\b/u.exec(asked.plain)?.[1];
  // "this evening" begins when it is asked.
  const isNow = asked.when.hour === null && /^(?:tonight|this evening)$/u.test(asked.when.night ?? '');
  const when = isNow ? { ...asked.when, night: null } : asked.when;
  return instantLine('bright', '', { ...asked, when }, { towards, ...(height === undefined ? {} : { height }) });
};

/** What comes before the Sun by day, and what after it. */
export const ABOUT_COMING: readonly Rule[] = [jupiterMoons, coming];
export const ABOUT_SKY: readonly Rule[] = [
  dark,
  despiteMoon,
  listExcept,
  pair,
  air,
  figure,
  moon,
  coordinates,
  height,
  night,
  brightOne,
  list,
];
