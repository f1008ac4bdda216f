/** Sentences about the weeks to come: eclipses, meteors, oppositions, meetings, moonless nights. */
import { isOfBrightOne } from './about-bright.js';
import { isOfOneNight, SEEKS_A_NIGHT } from './about-dark.js';
import { CONTACT } from './eclipse-kind.js';
import { periodSaid } from './period-said.js';
import { instantLine, nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';

const ECLIPSE =
  /\beclipses?\b|\b(?:path|zone|line|band|cent(?:re|er) ?line) of (?:totality|annularity)\b|\btotality\b|\bring of fire\b|\bannular\b|\btotal (?:lunar|solar)\b|\b(?:lunar|solar) total\b|\b(?:is|will|was) (?:it|this|that) (?:be )?(?:fully )?total (?:here|from here|at|in|where|for me|for us|on)\b/u;
const OF_SUN_ALONE = /\b(?:solar|sun|annular|ring of fire|totality|annularity)\b/u;
const NAMED_SHOWER = 'perseid|geminid|leonid|orionid|quadrantid|lyrid|taurid|ursid|draconid|eta aquarii?d|aquarii?d';
const SHOWERS = new RegExp(`\\b(${NAMED_SHOWER})s?\\b`, 'gu');
const BEST_SHOWER =
  /\b(?:best|better|richest|strongest|stronger|biggest|bigger|most|more|top)\b|\bworth\b.*\bor\b|\b(?:vs|versus)\b|\b(?:compare|or)\b/u;
const SHOWER =
  /\b(?:perseid|geminid|leonid|orionid|quadrantid|lyrid|taurid|ursid|draconid|eta aquarii?d|aquarii?d)s?\b|\b(?:meteors?|meteor showers?|(?:shooting|falling) stars?)\b|(?<!\b(?:rain|snow|heavy|light|hail) )\bshowers?\b(?!.*\b(?:rain\w*|cloud\w*|wet|weather|forecast)\b)/u;
const PLANET = /\b(mercury|venus|mars|jupiter|saturn|uranus|neptune)\b/u;

const aheadLine = (
  asked: Asked,
  kind: string,
  about?: string,
  on: string | null = null,
  more: Readonly<Record<string, string | null>> = {},
): Reading =>
  nightLine(
    'ahead',
    kind,
    { ...asked, when: { ...nightAlone(asked.when), night: null, note: null }, kit: null, sky: null },
    { about: about ?? null, on, in: on === null ? periodSaid(asked.plain) : null, ...more },
  );

/** A day of a month, not "tonight"; a month alone is taken by its middle, and is none. */
const OF_A_DATE = /\d/u;
/** Several are asked for: a list. */
const ECLIPSES_LISTED =
  /\b(?:list|all|every|upcoming|eclipses|which (?:ones|years?)|how many|calendar|dates)\b(?!.*\b(?:first|next one)\b)/u;
const CONTACTS = new RegExp(`\\b(?:${CONTACT})\\b`, 'u');

const shapeSaid = (asked: Asked): Readonly<Record<string, string | null>> => {
  if (says(asked, /\btotal(?:ity)?\b/u)) return { total: 'yes' };
  if (says(asked, /\b(?:annular\w*|ring of fire|a ring)\b/u)) return { shape: 'annular' };
  return says(asked, /\bpartial\b/u) ? { shape: 'partial' } : {};
};

const eclipsesAsked: Rule = (asked) => {
  const hasContacts = says(asked, CONTACTS);
  // "the eclipse of Algol" is its own; C2 is no number of a list.
  const isOfOthers = asked.targets.some(
    (name) => name !== 'sun' && name !== 'moon' && !(hasContacts && /^c ?[1-4]$/u.test(name)),
  );
  if (!says(asked, ECLIPSE) || isOfOthers) return null;
  const { night } = nightAlone(asked.when);
  const on = night !== null && asked.when.note === null && OF_A_DATE.test(night) ? night : null;
  const isOfOne = !says(asked, ECLIPSES_LISTED) && (on !== null || periodSaid(asked.plain) === null);
  const one = hasContacts ? 'contacts' : 'next';
  const more = { ...shapeSaid(asked), first: hasContacts || isOfOne ? one : null };
  if (says(asked, /\b(?:lunar|moon)\b/u)) return aheadLine(asked, 'eclipses', 'Moon', on, more);
  return aheadLine(asked, 'eclipses', says(asked, OF_SUN_ALONE) || hasContacts ? 'Sun' : undefined, on, more);
};

/** Whether any are left. */
const IS_OVER =
  /\b(?:over|missed|miss|finished|ended|done|past|still (?:on|active|going|visible|about|there)|too late)\b/u;

/** Which of them are named, as `ahead` takes them. */
const showersNamed = ({ plain }: Asked): readonly string[] => [
  ...new Set([...plain.matchAll(SHOWERS)].map(([, name = '']) => name.replace('aquarid', 'aquariid'))),
];

/** The best of several, or of a month or a year; null: one is asked about, or a night. */
const bestShower = (asked: Asked, named: readonly string[]): Reading | null => {
  const period = periodSaid(asked.plain);
  if (period !== null && named.length === 0) return aheadLine(asked, 'showers', undefined, null, { best: 'yes' });
  const isOfSeveral = named.length > 1 || (named.length === 0 && asked.when.night === null);
  return isOfSeveral && says(asked, BEST_SHOWER)
    ? aheadLine(asked, 'showers', aboutOf(named), null, { best: 'yes' })
    : null;
};
const aboutOf = (named: readonly string[]): string | undefined => (named.length === 0 ? undefined : named.join(' or '));

/** Of one night where one is said: whether there are any. */
const showersAsked: Rule = (asked) => {
  if (!says(asked, SHOWER)) return null;
  const named = showersNamed(asked);
  const best = bestShower(asked, named);
  if (best !== null) return best;
  const isOfNow = asked.when.hour !== null || asked.when.isMorning || says(asked, /\bnow\b/u) || says(asked, IS_OVER);
  const night = nightAlone(asked.when).night ?? (isOfNow ? 'tonight' : null);
  return aheadLine(asked, 'showers', aboutOf(named), periodSaid(asked.plain) === null ? night : null);
};

/** Two of the planets, and how they meet: "when do Venus and Jupiter meet", "closest approach of Mars and Jupiter". */
const MEET =
  /\bconj(?:unctions?|s)?\b|\bmeet(?:s|ing|ings)?\b|\bclosest\b|\bclose (?:together|approach|meeting)\b|\bline ?up\b|\bapproach\w*\b|\bpass(?:es|ing)? (?:close|each other|by)\b|\bget together\b|\bnext to each other\b|\bpair(?:ing|s)?\b/u;
const NOT_OF_THEM = /\b(?:moon|earth|to (?:us|earth)|remind\w*|slew\w*|go ?to)\b/u;
/** How they stand now. */
const HOW_FAR = /\bhow (?:many|far|close|near)\b.*|\bapart\b|\bseparation\b/u;
const TO_COME = /\b(?:when|next|will|get|come|coming|closest|date)\b/u;
const pairAsked: Rule = (asked) => {
  const named = [...new Set([...asked.plain.matchAll(new RegExp(PLANET, 'gu'))].map(([name]) => name))];
  const isOfNow = says(asked, HOW_FAR) && !says(asked, TO_COME);
  const isOfTwo = named.length === 2 && says(asked, MEET) && !says(asked, NOT_OF_THEM) && !isOfNow;
  // How they stand to each other in a night or at an hour is another question.
  return isOfTwo && asked.when.hour === null && !says(asked, /\b(?:tonight|now|tomorrow)\b/u)
    ? aheadLine(asked, 'meetings', named.join(' and '))
    : null;
};

/** "Elongation of Mercury tomorrow", "what is its elongation": of that day or now, and not its greatest. */
const isOfADay = (asked: Asked): boolean =>
  says(asked, /\belongation\b/u) &&
  !says(asked, /\b(?:greatest|max\w*|next|when|biggest|largest|coming|dates?|this year|20\d\d)\b/u);

const BRIGHTEST =
  /\bbrightest\b(?! (?:star|planet|thing|object))|\bbrillianc[ey]\b|\bmost brilliant\b|\bmax\w* (?:brightness|magnitude)\b|\bpeak (?:brightness|magnitude)\b|\bhow bright\b.*\b(?:get|gets|become|becomes)\b/u;

const planetsAsked: Rule = (asked) => {
  const planet = PLANET.exec(asked.plain)?.[1];
  const [other] = planet === undefined ? asked.targets.filter((name) => name !== 'moon' && name !== 'sun') : [];
  // What no table here has is told of by the target's own answer.
  if (other !== undefined && says(asked, /\boppositions?\b/u)) return nightLine('up', other, asked);
  if (planet !== undefined && isOfADay(asked)) {
    const isNow = asked.when.night === null && asked.when.hour === null;
    return instantLine('sun', planet, asked, { first: 'apart', ...(isNow ? { at: 'now' } : {}) });
  }
  const isInner = planet === 'venus' || planet === 'mercury';
  if (isInner && says(asked, BRIGHTEST)) return aheadLine(asked, 'planets', planet, null, { best: 'yes' });
  const isOfOne = planet !== undefined && says(asked, /\b(?:closest|nearest|biggest|brightest)\b/u);
  return isOfOne || says(asked, /\b(?:oppositions?|elongations?)\b/u) ? aheadLine(asked, 'planets', planet) : null;
};

const BESIDE_MOON =
  /\b(?:next to|near(?:by|est)?(?: to)?|beside|besides|close to|closest to|close by|by|around|alongside|under|below|above|left of|right of) (?:the )?moon\b/u;
const BESIDE_WHAT = /\b(?:what|what's|whats|which|one|dot|light|thing|planets?|stars?|anything|something|objects?)\b/u;

const meetingsAsked: Rule = (asked) => {
  const isBesideMoon = says(asked, BESIDE_MOON) && says(asked, BESIDE_WHAT);
  if (isBesideMoon && !says(asked, /\b(?:when|next time|coming|this (?:week|month)|soon)\b/u))
    return aheadLine(asked, 'meetings', undefined, nightAlone(asked.when).night ?? 'tonight');
  return isBesideMoon || says(asked, /\b(?:conjunctions?|close meetings?|line ?up|alignment of planets)\b/u)
    ? aheadLine(asked, 'meetings')
    : null;
};

const MOONLESS_NIGHTS = /\bmoonless\b|\bno moon\b|\bdark(?:est)? (?:weekend|saturday|friday|sunday|night)s?\b/u;
const moonlessAsked: Rule = (asked) =>
  says(asked, MOONLESS_NIGHTS) && !isOfBrightOne(asked) && (!isOfOneNight(asked) || says(asked, SEEKS_A_NIGHT))
    ? aheadLine(asked, 'saturdays')
    : null;

const eventsAsked: Rule = (asked) =>
  says(asked, /\b(?:what'?s|what is|anything) coming(?: up)?\b|\bcoming up\b|\bevents?\b/u)
    ? aheadLine(asked, '')
    : null;

/** All of Messier's in a night, in the coming spring or that of a year. */
const marathonAsked: Rule = (asked) =>
  says(asked, /\bmarathons?\b/u) && (says(asked, /\bmessier\b/u) || asked.plain.startsWith('marathon'))
    ? aheadLine({ ...asked, place: /\bmarathon\b/u.test(asked.place ?? '') ? null : asked.place }, 'messier')
    : null;

/** Weeks ahead: eclipses, showers, oppositions, meetings, moonless nights. */
export const COMING: readonly Rule[] = [
  marathonAsked,
  eclipsesAsked,
  showersAsked,
  pairAsked,
  planetsAsked,
  meetingsAsked,
  moonlessAsked,
  eventsAsked,
];
