/** Sentences about the dark: when it comes, whether it is there, and what the Moon does to it. */
import { nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';

/** Which night is without the Moon is asked, and not of one. */
export const SEEKS_A_NIGHT = /\b(?:weekend|saturday|friday|sunday|night)s\b|\bweekend\b|\bnext\b|\bwhich\b/u;

/** Of one night, or some hour of it: what is moonless then. */
export const isOfOneNight = ({ when, plain }: Asked): boolean =>
  when.night !== null || when.hour !== null || /\b(?:tonight|this evening|dark hours)\b/u.test(plain);

const DARK =
  /\b(?:dark|darkness|sun ?set|sun ?rise|sundown|sun up|sun (?:sets?|rises?|go(?:es)? down|comes? up)|does the sun (?:set|rise)|twilight|dusk|dawn|first light(?! (?:target|object|for|with|of|night|sug|list)\w*))\b/u;
const DARK_ASKED =
  /^(?:at what time|time of|time for|time between|evening|morning|moonless|moon ?rise|moon ?set|hours|when|astro\w*|nautical|civil|what|is|how|does|do|will|it|any|tell|sun|sun ?set|sun ?rise|sundown|dusk|dawn|twilight|dark|end|start|first)\b|\bdark yet\b/u;

const MILKY_WAY = /\bmilky way\b/u;
/** "When is the core back": its season, and no one night's. */
const CORE =
  /\b(?:milky way|galaxy)(?:'?s)? (?:core|cent(?:re|er)|bulge)\b|\bgalactic (?:core|cent(?:re|er)|bulge)\b|\bcore (?:of (?:the|our) (?:milky way|galaxy)|season)\b|\bcent(?:re|er) of (?:the|our) (?:milky way|galaxy)\b|\bmilky way season\b/u;
/** Of one night or hour it is asked as any target is. */
const OF_CORE_ITSELF =
  /\b(?:where\w*|how (?:high|low|far|big)|which way|altitude|azimuth|rise\w*|sets?|setting|transit\w*|culminat\w*|meridian|constellation|remind\w*|point\w*|slew\w*)\b/u;
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

/** "Worth setting up with the Moon this bright". */
const WORTH_DESPITE =
  /\b(?:worth|point|bother\w*|sense|use|good|any good)\b.*\b(?:set(?:ting)? (?:it |the \w+ )?up|go(?:ing)? out|com(?:e|ing) out|(?:observ\w*|imag\w*)(?! (?:the )?moon)|tonight|even(?:ing)?)\b.*\bmoon\w*\b|\bmoon\w*\b.*\bworth (?:it|setting up|going out|bothering)\b/u;

/** Whether some dark is without the Moon, up to an hour where one ends it; when that is, the answer tells anyhow. */
const moonlessOf = (asked: Asked): Readonly<Record<string, string | null>> | null => {
  const isOfDark = says(asked, DARK);
  if (!says(asked, MOON_GOES)) return null;
  if (says(asked, /\bwhen\b/u)) return isOfDark ? {} : null;
  if (says(asked, SEEKS_A_NIGHT) || (!isOfDark && !isOfOneNight(asked))) return null;
  const { hour, isUntil } = asked.when;
  return { first: 'moonless', until: isUntil ? hour : null };
};

/** What the answer of `dark` begins with; null where no yes or no is asked. */
const darkFirstOf = (asked: Asked): Readonly<Record<string, string | null>> | null => {
  const moonless = moonlessOf(asked);
  if (moonless !== null || !says(asked, WHETHER) || !says(asked, DARK)) return moonless;
  if (says(asked, MOON_COMES)) return { first: 'before-moonrise' };
  if (says(asked, /\bmoon\b.*\b(?:when|by the time|once|after|as) \b/u)) return { first: 'moon-at-dark' };
  return !says(asked, /\bmoon/u) && isOfNow(asked) ? { first: 'now' } : null;
};

/** "yet", "enough now", and no other night or hour. */
const isOfNow = ({ when, plain }: Asked): boolean =>
  (when.hour === null || when.hour.endsWith('now')) &&
  /^(?:is|are|has)\b|\b(?:yet|now|already)\b/u.test(plain) &&
  when.night === null;

/** "What can I see from a dark site": where one stands, and not when it gets dark. */
const UNDER_DARK =
  /\b(?:from|in|under|at|with) (?:(?:a|an|the|my|really|very|truly) )*dark (?:sky site|sky|skies|site|place|spot|location)\b/u;

/** "When is it dark enough for galaxies": when, and not which. */
const DARK_ENOUGH = /^(?:when|what time|how long (?:until|till))\b.*\bdark enough (?:for|to)\b/u;

/** The Sun's own setting or rising, and no word of the dark. */
const SUNSET = /\b(?:sun ?set|sundown|sun (?:sets?|goes? down)|(?:does|will) the sun (?:set|go down))\b/u;
const SUNRISE = /\b(?:sun ?rise|sun ?up|sun (?:rises?|comes? up)|(?:does|will) the sun (?:rise|come up))\b/u;
const OF_DARK = /\b(?:dark\w*|twilight|dusk|dawn|first light|moon\w*|between|until|till|hours)\b/u;
const sunFirstOf = (asked: Asked): string | null => {
  if (says(asked, OF_DARK)) return null;
  const isSunset = says(asked, SUNSET);
  if (isSunset === says(asked, SUNRISE)) return null;
  return isSunset ? 'sunset' : 'sunrise';
};

const milkyWayOf = (asked: Asked, isOfOther: boolean): Reading | null => {
  if (says(asked, CORE) && !says(asked, OF_CORE_ITSELF))
    return darkLine({ ...asked, when: { ...asked.when, note: null } }, { first: 'core' });
  return says(asked, MILKY_WAY) && !isOfOther
    ? { ...darkLine(asked, { first: 'milky-way' }), note: MILKY_WAY_NOTE }
    : null;
};

/** "How long is the night on Saturday": its dark hours. */
const HOW_LONG_A_NIGHT =
  /\bhow (?:long|many hours)\b.{0,25}\b(?:the night|nights?|the dark\w*|dark hours|it (?:be |stay )?dark)\b(?!.*\b(?:until|till|before|visible|see|up|above)\b)|\blength of (?:the )?night\b/u;

/** "What time do the stars come out". */
const STARS_OUT =
  /^(?:when|what time|at what time|how long (?:until|till|before))\b.*\b(?:the )?stars? (?:(?:come|comes|be|are|get) out|appear\w*|show(?: up)?|start|visible|will be (?:out|visible))\b/u;

const isOfItsHours = (asked: Asked): boolean => says(asked, HOW_LONG_A_NIGHT) || says(asked, STARS_OUT);

const ofMoonlight = (asked: Asked): Reading | null => {
  if (says(asked, WORTH_DESPITE)) return darkLine(asked, { first: 'worth' });
  return says(asked, WHETHER) && says(asked, SPOILS) ? darkLine(asked, { first: 'moon-spoils' }) : null;
};

/** Pictures of the empty sky in twilight, to even out others. */
const SKY_FLATS =
  /\b(?:sky|twilight|dawn|dusk|morning|evening|sunrise|sunset)[ -]?flats?\b|\bflats?\b.{0,20}\b(?:at|in|during|of) (?:the |this )?(?:dawn|dusk|twilight|morning|evening)\b/u;
const FLATS_NOTE =
  'Sky flats: some 20 minutes of twilight, in the morning from about when the Sun is 6° below on, in the evening until then; high up, on the side away from the Sun, cap on well before it rises. Common practice, no source.';

const flats: Rule = (asked) =>
  says(asked, SKY_FLATS) ? { ...darkLine(asked, { below: '6' }), note: FLATS_NOTE } : null;

export const dark: Rule = (asked) => flats(asked) ?? darkAsked(asked);

const darkAsked: Rule = (asked) => {
  const isOfOther = asked.targets.some((name) => name !== 'sun' && name !== 'moon');
  if (says(asked, MOON_AWAY) || (!isOfOther && isOfItsHours(asked))) return darkLine(asked);
  const moon = isOfOther ? null : ofMoonlight(asked);
  if (moon !== null) return moon;
  const first = isOfOther || asked.kind !== null ? null : darkFirstOf(asked);
  if (first !== null) return darkLine(asked, first);
  const milkyWay = milkyWayOf(asked, isOfOther);
  if (milkyWay !== null) return milkyWay;
  if (says(asked, DARK_ENOUGH)) return darkLine(asked);
  const isOfTarget = asked.targets.some((name) => name !== 'sun');
  const isOfDark = DARK.test(asked.plain.replace(UNDER_DARK, '')) && says(asked, DARK_ASKED);
  return isOfDark && !isOfTarget && asked.kind === null ? darkLine(asked, { first: sunFirstOf(asked) }) : null;
};
