/** Sentences about the Sun's days, and no look at it: does it come up at all, when does it come back, how long is the day, the solstices. */
import { periodSaid } from './period-said.js';
import { nightAlone, nightLine, says, type Asked, type Reading, type Rule } from './asked.js';

const TURN =
  /\b(?:solstices?|equinox(?:es)?|(?:longest|shortest) (?:day|night)|turn of the year|midsummer|midwinter)\b/u;
const LENGTH =
  /\bday ?length\b|\blength of (?:the )?(?:day|daylight)\b|\bhow long (?:is|are|will|does)\b.*\b(?:day|daylight|days)\b(?! until)|\b(?:how many|number of) hours? of (?:day ?light|sun ?light|sun)\b|\bhours? of (?:day ?light|sun ?light|sun)\b|\b(?:day|sun) ?light hours?\b|\bhow much day ?light\b/u;
const POLAR = /\bpolar (?:nights?|days?)\b|\bmidnight sun\b/u;
const BACK =
  /\b(?:sun)\b.*\b(?:come|comes|coming|is|be|get|gets)\b.*\bback\b|\bsun\b.*\b(?:return\w*|reappear\w*)\b|\b(?:first|next) (?:sun ?rise|sun) (?:after|again)\b|\b(?:sun|sunrise)\b.*\bagain\b/u;
const UP_AT_ALL =
  /^(?:so )?(?:does|do|will|is|did|can) (?:the )?sun (?:even |ever |still |going to |gonna )*(?:comes?|coming|rises?|rising|gets?|getting|go|goes|going|up|above|show|appear)\b(?!.*\b(?:down|when|what time)\b)|\bsun\b.*\babove (?:the |my |our )?horizon\b.*\b(?:today|tomorrow|now|these days|at all|yes)\b|\bany (?:sun ?rise|daylight)\b.*\b(?:today|tomorrow|now|these days|at all)\b/u;
const NOW_OR_DAY =
  /\b(?:today|tomorrow|now|at all|these days|this week|this time of (?:the )?year|here|ever|yes or no)\b/u;
/** A look at it, a way past it, an eclipse, or a reminder is another question. */
const OTHERS =
  /\b(?:look\w*|see|seen|view\w*|watch\w*|observ\w*|imag\w*|photo\w*|filter\w*|scope|telescope|safe\w*|danger\w*|point\w*|slew\w*|aim\w*|near|close|from the sun|eclips\w*|remind\w*|ping|wake|warn|cap|track\w*|which (?:planets?|stars?)|epoch|j2000|coordinates|precess\w*|meridian|hour angle)\b/u;

const sunLine = (asked: Asked, first: string, more: Readonly<Record<string, string | null>> = {}): Reading =>
  nightLine('dark', '', { ...asked, when: nightAlone(asked.when), kit: null, sky: null }, { first, ...more });

const WHEN =
  "(?:(?:and|so|ok|but|hi|hey),? )*(?:(?:at )?(?:what|which) time|when(?:'?s)?|wen(?:'?s)?|how long (?:until|till|before)|how soon)";
const COMES_UP = '(?:comes?|coming|be|is|gets?|goes|going) up|ris(?:e|es|ing)|up';
const LIGHT = '(?:day ?)?(?:light|lite)';
/** "Sun up when", "when does it get light again", "daybreak". */
const SUNRISE = new RegExp(
  `^${WHEN}\\b.*\\b(?:sun[- ]?up|day ?break|day break|breaks?(?= of day)|sun(?:'?s)? (?:\\w+ )?(?:${COMES_UP})|(?:gets?|getting|be|is|becomes?|start\\w*)(?: \\w+)? ${LIGHT}|(?:it|sky|outside) (?:\\w+ )?${LIGHT}|daylight)\\b|^(?:the )?sun(?:'?s)? (?:is )?(?:${COMES_UP}) (?:when|at what time|what time)\\b|^(?:the )?(?:sun[- ]?up|day ?break|daylight)(?: (?:when|time|today|tomorrow|is|at what time|please|pls))*$`,
  'u',
);
const SUNSET = new RegExp(
  `^(?:the )?sun(?:'?s)? (?:is )?(?:down|sets?|goes down|going down) (?:when|at what time|what time)\\b|^${WHEN}\\b.*\\bsun(?:'?s)? (?:\\w+ )?(?:down|going down|goes down|go down|sets?|setting)\\b`,
  'u',
);
/** What is light weighs little, and twilights have their own names. */
const NO_SUNRISE =
  /\b(?:twilight|dark\w*|dawn|moon\w*|light ?weight|light(?:er)? (?:pollution|bucket|years?|time|curve|speed|filter)|speed of light|weigh\w*|red light|first light|enough)\b/u;

const riseOrSet = (asked: Asked): string | null => {
  if (says(asked, NO_SUNRISE)) return null;
  if (says(asked, SUNSET)) return 'sunset';
  return says(asked, SUNRISE) ? 'sunrise' : null;
};

/** "It runs until 7am, is that after sunrise": an hour against the Sun's own. */
const AGAINST =
  /\b(after|past|before|by|ahead of) (?:the )?(?:sun ?(rise|up|set|down)|sun (?:has |is |will )?(?:be |been )?(risen|rises|comes up|up|set|sets|goes down|down))\b/u;
const ASKS = /(?:^|[,.;:?!] ?|\b(?:and|so|but|then) )(?:is|are|will|would|does|do|am|was|isn't|won't|would)\b/u;
const UP_BY_THEN =
  /\bsun\b.{0,20}\b(?:up|out|risen|above the horizon)\b.{0,12}\b(?:by|before|at) (?:then|that (?:time|hour)|that)\b/u;

const againstSun = (asked: Asked): Reading | null => {
  const { hour } = asked.when;
  if (hour === null || /\bnow$/u.test(hour) || !says(asked, ASKS)) return null;
  if (says(asked, UP_BY_THEN)) return sunLine(asked, 'after-sunrise', { until: hour });
  const [, side, noun, verb] = AGAINST.exec(asked.plain) ?? [];
  if (side === undefined) return null;
  const way = /^(?:after|past)$/u.test(side) ? 'after' : 'before';
  const event = /^(?:rise|up|risen|rises|comes up)$/u.test(noun ?? verb ?? '') ? 'sunrise' : 'sunset';
  return sunLine(asked, `${way}-${event}`, { until: hour });
};

const turnOf = ({ plain }: Asked): string | null => {
  const season = /\b(summer|winter|spring|autumn|fall|vernal|june|december|march|september)\b/u.exec(plain)?.[1];
  const word = /\b(solstice|equinox)/u.exec(plain)?.[1];
  const extreme = /\b(longest|shortest)\b(?! night)/u.exec(plain)?.[1] ?? nightExtreme(plain);
  const named = season === undefined ? undefined : (SEASON_NAMES.get(season) ?? season);
  return [named, word, extreme].filter((part) => part !== undefined && part !== null).join(' ') || null;
};
const SEASON_NAMES = new Map([
  ['fall', 'autumn'],
  ['vernal', 'march'],
]);
/** The longest night is that of the shortest day. */
const nightExtreme = (plain: string): string | null => {
  const found = /\b(longest|shortest) night\b/u.exec(plain)?.[1];
  if (found === undefined) return null;
  return found === 'longest' ? 'shortest' : 'longest';
};

/** What the shadow of a stick tells. */
const SUNDIAL =
  /\bequation of time\b|\bapparent solar time\b|\bsun ?-?dials?\b(?=.*\b(?:off|fast|slow|ahead|behind|wrong|out|differ\w*|error|correct\w*|show\w*|late|early|read\w*)\b)|\b(?:off|fast|slow|ahead|behind|wrong|out|differ\w*|error|correct\w*|late|early)\b(?=.*\bsun ?-?dials?\b)/u;
const NOON =
  /\b(?:true|solar|local|apparent|real|astronomical|sun'?s?) (?:apparent |solar |true |local )*(?:noon|mid ?-?day)\b|\b(?:when|what time|at what time)\b.*\bsun\b.*\b(?:highest|due (?:south|north)|culminat\w*|at its (?:top|peak|height))\b|\bshortest shadows?\b|\bshadows?\b.*\bshortest\b/u;
/** Of the shadow a mount is set up by, or of the sky of a year, other answers tell. */
const NO_NOON = /\b(?:above|higher than|year|solstice|summer|winter|mars|moon)\b/u;
const ASKED = /\b(?:how|what|what's|whats|when|is|are|does|do|tell|give|show|which|equation|solar noon|true noon)\b/u;

/** When it is noon by the Sun, and how far the clock is off it. */
const shadowOf = (asked: Asked): Reading | null => {
  if (!says(asked, ASKED) || says(asked, NO_NOON)) return null;
  if (says(asked, SUNDIAL)) return sunLine(asked, 'sundial');
  return says(asked, NOON) ? sunLine(asked, 'solar-noon') : null;
};

export const sunDays: Rule = (asked) => {
  if (says(asked, OTHERS) || asked.targets.some((name) => name !== 'sun')) return null;
  if (says(asked, TURN))
    return nightLine(
      'ahead',
      'seasons',
      { ...asked, when: { ...nightAlone(asked.when), night: null, note: null }, kit: null, sky: null },
      { about: turnOf(asked), in: periodSaid(asked.plain) },
    );
  const shadow = shadowOf(asked);
  if (shadow !== null) return shadow;
  const against = againstSun(asked);
  if (against !== null) return against;
  const event = riseOrSet(asked);
  // "When did the Sun go down": today's that has been.
  if (event !== null && says(asked, /\bdid\b/u) && asked.when.night === null)
    return sunLine(asked, event, { on: 'today' });
  if (event !== null) return sunLine(asked, event);
  if (says(asked, LENGTH)) return sunLine(asked, 'day-length');
  if (says(asked, POLAR) || says(asked, BACK)) return sunLine(asked, 'sun-back');
  return says(asked, UP_AT_ALL) && says(asked, NOW_OR_DAY) ? sunLine(asked, 'sun-up') : null;
};
