/** Sentences about the sky: by day, how high, when up, the Moon, what is coming, when dark, what to look at. The first that fits reads. */
import { MS_PER_DAY } from '../../../ground/durations.js';
import { isProblem } from '../../../ground/problem.js';
import { commandLine } from '../question-parts.js';
import { COMING } from './about-coming.js';
import { dark } from './about-dark.js';
import { towardsIn } from './directions.js';
import { splitAtPower } from './split-at-power.js';
import { whether } from './about-whether.js';
import { air, figure } from './about-figures.js';
import { brightOne } from './about-bright.js';
import { bestHour, ofItself } from './about-itself.js';
import { clearsObstacle } from './about-horizon.js';
import { finding } from './about-finding.js';
import { pair } from './about-pairs.js';
import { jupiterMoons } from './about-jupiter-moons.js';
import { instantLine, nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';
import { whenAlone } from './when-alone.js';

const isMoon = ({ targets, plain }: Asked): boolean =>
  targets.every((name) => name === 'moon') && /\bmoon(?:'?s|rise|set|light)?\b|\bmoon (?:rise|set)\b/u.test(plain);

const MOON_TIMES =
  /\bmoon ?(?:rise|set)s?\b|\b(?:rise|rises|rising|set|sets|setting|up|out|problem|bother|nuisance|interfere|in the way|trouble|visible|high)\b|\bis there (?:a|any|much) moon\b|\bsee\b/u;

/** "when is the next full moon": which quarter comes when. */
const NEXT_PHASE =
  /\b(?:when|next|what (?:day|date|time))\b.*\b(new|first|full|last|third|half)(?: (?:moon|quarter))\b|\bwhen\b.*\bmoon\b.*\b(full|new|half)\b(?! (?:past|an hour|\d))|^(?:the )?(new|full|first|last|third|half) (?:moon|quarter)(?: (?:when|next|date|is|it))*$/u;

/** "Full moon dates this winter", "list the new moons of 2027": several of them. */
const MANY_PHASES =
  /\b(new|full) moons\b|\b(new|full) moon (?:dates|days|nights|calendar|list)\b|\b(?:dates|list|days|calendar) (?:of|for) (?:the |all |all the )*(new|full) moon\b/u;
const A_YEAR = '13';
const SOME = '6';
/** From when: a year that was named, else from now on. */
const manyPhases = (asked: Asked, next: string): Reading => {
  const year = /\b(20\d\d)\b/u.exec(asked.plain)?.[1];
  const count = year !== undefined || says(asked, /\byear\b/u) ? A_YEAR : SOME;
  const at = year === undefined ? {} : { at: `${year}-01-01` };
  return instantLine(
    'moon',
    '',
    { ...asked, when: { ...asked.when, night: null, hour: null } },
    { ...at, next, count },
  );
};

/** The Moon is in the way of what is asked about. */
const DESPITE_MOON =
  /\b(?:despite|in spite of|besides?|apart from|away from|not|avoiding|without|with|after|once) (?:the )?moon(?:light|set| sets| has set| is down| goes down)?\b/u;

const QUARTER_ALONE =
  /\b(?:when|next)\b.*\b(?:first|last|third) quarter\b|^(?:the )?(?:first|last|third) quarter(?: (?:when|next|date|is|it|then))*$/u;

/** When a quarter comes next, or several of them; null: that is not asked. */
const phaseAsked = (asked: Asked): Reading | null => {
  const many = MANY_PHASES.exec(asked.plain);
  if (many !== null) return manyPhases(asked, many[1] ?? many[2] ?? many[3] ?? 'full');
  const [, named, after, alone] = NEXT_PHASE.exec(asked.plain) ?? [];
  const phase = named ?? after ?? alone;
  return phase === undefined
    ? null
    : instantLine('moon', '', asked, {
        next: phase === 'third' ? 'last' : phase,
        ...(says(asked, /\b(?:was|previous|last (?:full|new)|most recent)\b/u) ? { later: '-1' } : {}),
      });
};

const moon: Rule = (asked) => {
  if (!isMoon(asked) && !says(asked, QUARTER_ALONE)) return null;
  const phase = phaseAsked(asked);
  if (phase !== null) return phase;
  if (
    says(
      asked,
      /\bphase|\b(?:full|new) moon\b|\bmoon\b.*\b(?:be|is|nearly|quite|still) (?:full|new)\b|\b(?:is|will|was) (?:it |the |this )*moon (?:be )?(?:\w+ )?(?:full|new)\b|\bquarter\b|\bhow (?:full|bright|big|old)\b|\blit\b|\billuminat\w*|\bpercent(?:age)?\b|\b(?:waxing|waning)\b/u,
    )
  )
    return instantLine('moon', '', asked);
  if (says(asked, /^(?:where|how high|which way|what direction)/u)) return null;
  if (says(asked, MOON_TIMES)) return nightLine('up', 'moon', { ...asked, kit: null, sky: null });
  return asked.left.length === 0 ? instantLine('moon', '', asked) : null;
};

const HIGH =
  /\bhow (?:high|low)\b|\baltitude\b|\bazimuth\b|\balt ?\/? ?az\b|\belevation\b|\bwhere(?:'s| is| are| do| can| should|s)?\b|\b(?:which|what) (?:way|direction|part)\b|\bpoint me\b|\bfind me\b|\bshow me\b|\blocate\b/u;
const THROUGH_NIGHT =
  /\bhow high (?:does|do|can|could|will it ever|becomes?|comes?|gets?|goes|climbs?|stands?|will (?:the )?\S+ (?:get|go|come|climb))\b|\b(?:best|highest|max\w*)\b/u;

const HOW_HIGH_AT_BEST = /\bhow high\b/u;

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
  const first = says(asked, HOW_HIGH_AT_BEST) ? 'best' : null;
  return isOfNight ? nightLine('up', target, asked, { first }) : instantLine('altitude', target, asked);
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
  /\b(?:up|out|see|look\w*|observ\w*|imag\w*|photograph\w*|point\w*|tonight|worth|visible|high|sky|targets?|show|good|view\w*|find|watch|bright|overhead|above|rising|rises?|setting|sets|try|start|evening|hunt|suggest\w*|recommend\w*|objects?|stuff)\b/u;

/** All there is within a limit is asked for: "everything brighter than mag 8 in the south". */
const EVERYTHING = /\b(?:everything|anything|all|objects?|targets?|things|whatever)\b/u;
const isLimited = ({ above, below, brighter, larger, wider, plain }: Asked): boolean =>
  [above, below, brighter, larger, wider, towardsIn(plain)].some((limit) => limit !== null);

/** The list says by itself that it is one: a constellation, Messier's own, a size, all within a limit. */
const isPlainlyList = (asked: Asked): boolean =>
  asked.constellation !== null ||
  asked.isMessierOnly ||
  asked.larger !== null ||
  asked.wider !== null ||
  (isLimited(asked) && says(asked, EVERYTHING));

const isOfKind = (asked: Asked): boolean => {
  const { kind, kindsToo, left } = asked;
  const kinds = kind === null ? [] : [kind, ...kindsToo];
  const isWordOfKind = (word: string): boolean => kinds.some((name) => name.includes(word)) || KIND_WORDS.test(word);
  return kind !== null && (left.every(isWordOfKind) || says(asked, LIST) || says(asked, TO_DO_WITH_THEM));
};
/** "Variables I can follow", "nice doubles to split". */
const TO_DO_WITH_THEM =
  /\b(?:faint|bright|colou?rful|colou?red|nice|nicest|pretty|prettiest|fine|easy|easiest|lovely)\b|\b(?:i|we|you|one) (?:can|could|should|might)\b|\b(?:wants?|would like|wishes|'d like) (?:to )?(?:see|look|spot|find|view)\b|\bto (?:split|follow|see|watch|observe|look at|try|image|find|hunt|show)\b/u;

const KIND_WORDS = /^(?:nebs?|gals|planetary|open|stars?|double|globular)$/u;

const asksForList = (asked: Asked): boolean => {
  const { left, place, kit, sky } = asked;
  if (isPlainlyList(asked) || isOfKind(asked)) return true;
  if (says(asked, EASY_ONES) && !says(asked, OF_MOUNT)) return true;
  if (says(asked, BEDTIME) || (says(asked, LIST) && says(asked, TO_LOOK))) return true;
  const isMine = place !== null || kit !== null || sky !== null;
  return (
    (says(asked, /\b(?:sky|tonight)\b/u) && left.length === 0) ||
    (isMine && says(asked, kit === 'eyes' ? /\b(?:see|look|up|best|good)\b/u : /\b(?:see|look|up)\b/u))
  );
};

/** "Something easy in the south", "a nice easy target", "anything for my daughter". */
const EASY_ONES =
  /^(?:(?:is there|are there|have you|got|give me|show me|suggest|any|a|an|some|nice|good) )*(?:(?:anything|something|things|stuff|targets?|objects?) (?:(?:nice|good|really|very|quite|fun|cool) )*(?:easy|simple)|(?:easy|simple) (?:targets?|objects?|ones?|things?))\b(?! to (?:fix|do|try|check|use|set|install|buy|make|build))|^(?:(?:is there|have you|got|give me|show me|any|a) )*(?:anything|something|things|stuff) (?:(?:good|nice|easy|cool|fun) )*for (?:my|our|the|an?) (?:\w+ )?(?:son|daughter|kid|child|boy|girl|niece|nephew|grand|class|school|\d|year)/u;

const OF_MOUNT =
  /\b(?:mount\w*|cables?|ports?|usb|drivers?|connect\w*|fix\w*|check\w*|balanc\w*|align\w*|collimat\w*|adapters?|laptop|handset|controller)\b/u;

/** "kids to bed at 7": what shows before it. */
const BEDTIME =
  /\b(?:kids?|child(?:ren)?|daughters?|sons?|little ones?|boys?|girls?|grand\w+|toddlers?)\b.*\b(?:bed|bed ?time|sleep)\b|\bbed ?time\b/u;

/** The hour from which to list; "now" is where a list begins anyhow. */
const listFrom = (asked: Asked): string | null => {
  const { hour, isUntil } = asked.when;
  if (isUntil || hour?.endsWith('now') === true) return null;
  return hour ?? (says(asked, /\b(?:morning|dawn)\b/u) ? '4am' : null);
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

/** The hour alone, or from which and until which. */
const listHours = (asked: Asked): Readonly<Record<'at' | 'from' | 'until', string | null>> => {
  const { between, when } = asked;
  if (between !== null) return { at: null, ...between };
  const isUntil = when.isUntil || (when.hour !== null && says(asked, BEDTIME));
  if (isUntil) return { at: null, from: null, until: when.hour };
  const at = hourAlone(asked);
  return { at, from: at === null ? listFrom(asked) : null, until: null };
};

const list: Rule = (asked) => {
  if (!asksForList(asked)) return null;
  const [also, ...more] = asked.kindsToo;
  const split = splitAtPower(asked);
  const read = nightLine(
    'tonight',
    '',
    { ...asked, when: nightAlone(asked.when) },
    {
      kind: asked.kind,
      also: also ?? null,
      ...listHours(asked),
      towards: towardsIn(asked.plain),
      above: asked.above,
      brighter: asked.brighter,
      constellation: asked.constellation,
      below: asked.below,
      messier: asked.isMessierOnly ? 'yes' : null,
      larger: asked.larger,
      smaller: asked.smaller,
      wider: asked.wider ?? split?.leastArcsec ?? null,
    },
  );
  const notes = [
    ...(split === null ? [] : [split.words]),
    ...(more.length === 0 ? [] : [`Two kinds at a time: not ${more.join(', ')}.`]),
    ...(says(asked, A_RANGE) ? ['Not used: the most that they may be apart.'] : []),
    ...(says(asked, BY_MOON) ? ['Not used: the hour of the Moon; say from: or until: with it.'] : []),
    ...(asked.smaller === null
      ? []
      : [
          `Those from ${asked.larger ?? ''} to ${asked.smaller} arcminutes long, which fill some of that field and fit it.`,
        ]),
    ...(read.note === undefined ? [] : [read.note]),
  ];
  return notes.length === 0 ? read : { ...read, note: notes.join(' ') };
};

const A_RANGE = /\d ?(?:to|-|–|and) ?\d+(?:\.\d+)? ?(?:arc ?sec|as\b|"|″|'')/u;

/** "after moonset". */
const BY_MOON =
  /\b(?:after|before|once|until|till|from) (?:the )?moon ?(?:set|sets|rise|rises|is down|goes down|comes up)\b/u;

/** "At 04:30" is then, and not from then on; "from Cork" is no hour. */
const AT_AN_HOUR =
  /(?:\b(?:at|around|about)|@) ?(?:about |around |exactly )?(?:\d|noon|midnight|half|quarter|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)/u;
const BEGINS_THEN =
  /\b(?:after|since|onwards?|start\w*|begin\w*|from (?:about |around )?(?:\d|now|noon|midnight|half|quarter|one\b|two\b|three\b|four\b|five\b|six\b|seven\b|eight\b|nine\b|ten\b|eleven\b|twelve\b))/u;

/** Where a height or a side of the sky is asked for at an hour, it is of that hour and no other. */
const hourAlone = (asked: Asked): string | null => {
  const isOfPlace = asked.above !== null || asked.below !== null || towardsIn(asked.plain) !== null;
  const { hour } = asked.when;
  const isAt = hour !== null && says(asked, AT_AN_HOUR);
  if (!(isOfPlace || isAt) || says(asked, BEGINS_THEN)) return null;
  return hour ?? (says(asked, /\b(?:right now|now|at the moment)\b/u) ? 'now' : null);
};

/** What comes before the Sun by day, and what after it. */
export const ABOUT_COMING: readonly Rule[] = [jupiterMoons, ...COMING];
export const ABOUT_SKY: readonly Rule[] = [
  brightOne,
  dark,
  despiteMoon,
  listExcept,
  pair,
  clearsObstacle,
  finding,
  ofItself,
  whether,
  air,
  figure,
  bestHour,
  moon,
  coordinates,
  height,
  night,
  list,
  whenAlone,
];
