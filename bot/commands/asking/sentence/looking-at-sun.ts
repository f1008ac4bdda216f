/** Whether one may look at the Sun itself, by whatever and through whatever: a plain No, before any other reading of the words. */
import { isEyeHurt } from './eyes-hurt.js';
import { cautionText } from '../../../cautions/cautions.js';
import { problem, type Choice, type Problem } from '../../../ground/problem.js';
import { commandLine } from '../question-parts.js';
import { fittingChoices } from '../../../reply/reply.js';
import type { DayAt } from './day-at.js';
import { partsOf } from './sun-parts.js';
import type { Known, Reading, Rule } from './asked.js';
import { harmByDay } from './sun-by-day.js';
import { nextEclipseWords } from './next-eclipse-words.js';
import { asksToAim, isFilterHurt, isOfWelding, isPinholeInCard, type SunCaution } from './sun-guards.js';
import { asksFilterInTotality, plainHarm, PROJECTS, sunCautionFor, sunHarm, WAITS } from './sun-harm.js';
import { sunKind } from './sun-kinds.js';
import { isSunNow } from './sun-now.js';
import { solarFilterFor } from './solar-filter.js';
import { hourOf } from './sun-hour.js';

/** The Sun, or what is seen on it. */
const SUN =
  /\bsun(?:'?s)?\b|\beclipse (?:glasses|viewers?|specs|shades|goggles)\b|\bsunspots?\b|\bsolar (?:disc|disk|surface|film|foil|glasses|observ\w*|imag\w*|photo\w*|view\w*|prominences?|flares?|filters?|telescope|scope|astronomy|project\w*)\b|\bprominences\b|\bsolar$/u;
const ON_IT = /\bsunspots?\b|\bsolar\b|\bprominences\b|\b(?:h ?-? ?alpha|hydrogen alpha|white light)\b/u;
const ECLIPSE = /\beclipses?\b/u;
/** What one looks with, and who looks. */
const WITH =
  'eye ?pieces?|(?:view)?finders?|finder ?scopes?|scope|telescopes?|refractors?|reflectors?|newtonians?|dobs?(?:onian)?|bino\\w*|bins|cameras?|phones?|lens(?:es)?|glass(?:es)?|sun ?glasses|shades|filters?|film|smoked|welding|welders?|mirror|sensor|clouds?|cloudy|haz[ey]|mist|fog|kids?|child(?:ren)?|pupils?|students?|class|school|daughters?|sons?|grand\\w+|baby|toddlers?|family|public|guests?|visitors?|eyes?|squint\\w*|barlow';
const SEES =
  'look\\w*|see|sees|seeing|seen|view\\w*|watch\\w*|peek\\w*|peep\\w*|glanc\\w*|glimps\\w*|star(?:e|ing)|gaz(?:e|ing)|observ\\w*|imag(?:e|es|ing)|photo\\w*|pics?|pictures?|snap\\w*|shoot\\w*|film\\w*|video\\w*|record\\w*|show\\w*|spot|catch|admire|enjoy|study|sketch\\w*|draw\\w*|safe\\w*|dangerous|blind\\w*';
const POINTS =
  'point\\w*|aim\\w*|slew\\w*|go ?to|track\\w*|follow\\w*|find|finding|cent(?:er|re)\\w*|align\\w*|sync\\w*|focus\\w*|turn|swing|sweep\\w*|locate|get the sun';
const LOOKS = new RegExp(`${PROJECTS.source}|\\b(?:${WITH}|${SEES}|${POINTS})\\b`, 'u');
const LOOKED_WITH = new RegExp(`${PROJECTS.source}|\\b(?:${WITH}|safe\\w*)\\b`, 'u');
/** Words of looking are names of none, though some are near to one. */
const NO_NAMES = new RegExp(
  `${PROJECTS.source}|\\b(?:${WITH}|${SEES}|${POINTS}|sunspots?|solar|prominences|disc|disk|surface|h ?-? ?alpha|using|use|through|thru)\\b`,
  'giu',
);
const WHAT_IS_NEAR =
  /\b(?:what|what's|whats|which|anything|something|any|planets?|stars?)\b.*\b(?:near\w*|clos\w*|next to|around|beside)\b.*\bsun\b/u;
/** "My laptop in the sun" is of the weather. */
const IN_SUNSHINE =
  /\b(?:laptop|screen|display|ports?|cables?|leads?|batter(?:y|ies)|panels?|hub|driver|router|wi-?fi|gps|mount|hand ?set|controller|tablet|car|shed)\b(?! \w+ (?:at|into)\b).{0,30}\bin (?:the )?(?:full |hot |direct |bright )?sun\b/u;
/** "before the sun rises" is an hour; "the sun is setting, can I look at it" is not. */
const SUN_AS_HOUR =
  /\b(?:before|after|until|till|once|while|with|as soon as|by)\s+(?:the\s+)?sun(?:'s|s| is| has)?(?: still| yet)?\s+(?:\w+ing|rises?|rose|sets?|go(?:es|ne)? down|comes? up|up|down)\b/gu;
const OF_EYES = /\b(?:look\w*|eye ?pieces?|finders?|scope|telescope|binos?|binoculars|filters?)\b/u;
const ASKS_WHEN = /\b(?:when|what time|where|how (?:long|high|big|far|hot|old|large|bright))\b/u;
const MAY_I =
  /\b(?:safe\w*|ok|okay|allowed|at it|look at|eye ?pieces?|(?:view)?finders?|through|point|aim|my (?:scope|telescope|camera|dob|bino\w*))\b/u;
/** What is held against the Sun, and looking into it: the Sun is what is looked at, whatever else bears the name of a target. */
const GUARDS =
  /\b(?:filters?|film|foil|goggles|shades|welding|welders?|smoked|negatives?|(?:sun|eclipse) ?glass(?:es)?|glass(?:es)?|pinholes?|finder (?:cap|cover))\b/u;
const INTO_IT =
  /\b(?:look|star|gaz|peek|peer|glanc|squint)(?:e|es|ed|ing|s)?\b.{0,24}\b(?:at|into|towards?) (?:the |a )?sun\b|\bsun (?:(?:through|thru|with) (?:the|my|a|an|our|his|her|their)|in (?:my|an|our|his|her|their))\b/u;
/** The setting Sun is the Sun, however red; "look at Venus at sunset" is not of it. */
const SUN_AT_EDGE =
  /\b(?:look\w*|star(?:e|es|ing)|gaz\w+|peek\w*|glanc\w*|squint\w*|point\w*|aim\w*|turn|swing)\b(?: \w+){0,6}? (?:at|into|to|towards?|on) (?:the |a )?(?:rising |setting )?(?:sunset|sunrise)\b|\b(?:watch\w*|view\w*|observ\w*|photograph\w*|see|enjoy\w*|magnify) (?:the |a )(?:sunset|sunrise)\b|\b(?:sunset|sunrise)\b.*\b(?:look|point|aim|watch|view|magnify)\b.*\bit\b|\b(?:sunset|sunrise) (?:through|thru|in|with) (?:my|the|a|an|our)\b/u;
const AS_HOUR = /\b(?:before|after|until|till|since|around|by) (?:the )?(?:sunset|sunrise)\b/u;
const ASKED_OF_SAFETY = new RegExp(
  `\\b(?:${WITH})\\b|\\b(?:safe\\w*|ok|okay|danger\\w*|harm\\w*|hurt\\w*|damage\\w*)\\b`,
  'u',
);

/** It has happened: eyes come first. */
const LOOKED =
  /\beyes? (?:has|have|got) a (?:\w+ )?spot\b|\b(?:looked|glanced|stared|peeked|peered|gazed|squinted)\b.{0,40}\bsun\b|\b(?:blind|dark|black|bright|gr[ae]y|purple|green) spots? in (?:my|his|her|their|the) (?:eyes?|sight|vision|view)\b|\bafter-? ?images?\b|\beyes? (?:hurts?|aches?|burns?|is sore|are sore|is blurr\w+|are blurr\w+)\b/u;
/** The same in six more languages, folded; from memory. */
const LOOKED_ABROAD =
  /\b(?:regarde|guardato|mirado|reingeschaut|angeschaut|gekeken|patrzyl\w*|olhei|olhou)\b.{0,40}\b(?:sun|soleil|sole|sol|sonne|zon|slonc\w+)\b|\b(?:sonne|zon|sun)\b.{0,30}\b(?:reingeschaut|angeschaut|gekeken)\b/u;
const hasLookedIn = (said: string, plain = plainHarm(said)): boolean =>
  LOOKED.test(said) || LOOKED_ABROAD.test(plain) || isEyeHurt(plain);
/** A telescope left out is another question. */
const LEFT_OUT = /\b(?:leav(?:e|ing)|left|park\w*)\b/u;

/** Whether a guard is needed at all, in whatever order it is asked: a No would be heard as "not needed". */
const NEEDS =
  /\b(?:need|needs|needed|necessary|must|have to|has to|got to|should|supposed to|requires?d?|ought|compulsory|mandatory)\b/u;
const A_GUARD =
  /\b(?:cover\w*|cap(?:s|ped)?|filter\w*|film|remov\w*|take (?:it |the finder |my finder )?off|unscrew|protect\w*|guard|one)\b/u;
/** "Film over my finder too?" */
const FILM_ON_FINDER =
  /\b(?:film|foil|filters?)\b.*\bfinder\w*\b.*\b(?:too|as well|also)\b|\bfinder\w*\b.*\b(?:film|foil|filters?)\b.*\b(?:too|as well|also)\b/u;
/** A finder has a filter against the Sun alone. */
const FINDER_FILTER = /\bfinder\w*\b.*\bfilter\w*\b|\bfilter\w*\b.*\bfinder\w*\b/u;
/** "must not", "no need", "why": those are other questions, or no question. */
const OTHER_NEED = /\b(?:not need|no need|needn'?t|don'?t need|do not need|without|why|which|what)\b/u;

const COVER = '(?:caps?|covers?|lids?|filters?|film)';
/** Whether one is to come off: the Yes of the guards would be heard as a Yes to that. */
const UNCOVERS = new RegExp(
  `\\b(?:need|needs|have|has|got|ought|supposed|necessary|required|must|should)(?: to)?(?: (?:i|we|you|one|be))* (?:` +
    `(?:take|pull|get|leave|have|keep) (?:\\w+ ){0,3}${COVER} off|(?:take|pull|get|leave|keep) off (?:\\w+ ){0,2}${COVER}|` +
    `(?:remove|unscrew|lift) (?:\\w+ ){0,2}${COVER})\\b|` +
    `\\b${COVER}(?: (?:need|needs|have|has|got|ought|must|should|to|be|come|taken|left|kept|pulled))+ (?:off|removed)\\b(?! or\\b)`,
  'u',
);

const asksNeed = (plain: string): boolean => NEEDS.test(plain) && A_GUARD.test(plain) && !OTHER_NEED.test(plain);

/** A safe way to do it is asked for: "No" would be no answer. */
const ASKS_HOW =
  /^(?:hi |hey |so )*(?:i|we)(?:'d| would)? (?:want|like|wanna|wish|hope)(?: to)? (?:see|look|watch|view|observe|photograph|image)\b.*\b(?:sun ?spots?|prominences?|flares?|faculae|granul\w*|h ?-? ?alpha)\b|^(?:(?:so|and|ok|hi|hey|please|whats|what's|what is),? )*(?:how (?:do|can|could|should|would|to)\b.*\b(?:safe\w*|proper\w*|right|correct\w*|sunspots?)|(?:the )?(?:safe(?:st)?|best|right|proper) way)\b/u;

const cautionFor = (plain: string): SunCaution => {
  if (hasLookedIn(plain)) return 'eyes';
  if (asksFilterInTotality(plain)) return 'sun-totality-filter';
  if (isPinholeInCard(plain)) return 'sun-pinhole';
  if (isFilterHurt(plain)) return 'sun-hole';
  if (isOfWelding(plain)) return 'sun-welding';
  if (FILM_ON_FINDER.test(plain)) return 'sun-guards';
  if (asksNeed(plain)) return UNCOVERS.test(plain) ? 'sun-caps' : 'sun-guards';
  const caution = sunCautionFor(plain);
  if ((caution === 'sun-looking' || caution === 'sun-camera') && asksToAim(plain)) return 'sun-aim';
  return caution === 'sun-looking' && ASKS_HOW.test(plain) ? 'sun-how' : caution;
};

const OF_TOTALITY: readonly SunCaution[] = ['sun-totality', 'sun-totality-filter'];

/** Whether it is total where they stand decides it: told where that is known, asked for where not. */
const totalityTo = (caution: SunCaution, { usual, nowUtcMs }: Known): Problem =>
  problem(
    'not-safe',
    `${cautionText(caution)}${usual == null ? '' : ` ${nextEclipseWords(usual, nowUtcMs)}`}`,
    fittingChoices([
      { label: 'Is one total where I am?', run: 'ahead eclipses about:Sun total:yes' },
      { label: 'When it is dark', run: 'dark' },
    ]),
  );

const NEXT_ECLIPSES = { label: 'When the next eclipses come', run: 'ahead eclipses about:Sun' };
const WHEN_DARK = { label: 'When it is dark', run: 'dark' };

/** What to ask next; nothing, while it is happening. */
const choicesAfter = (caution: SunCaution, plain: string): readonly Choice[] => {
  if (caution === 'sun-now') return [];
  if (caution === 'sun-left') return [{ label: 'Warn me before sunrise', run: 'remind sunrise' }, WHEN_DARK];
  const near = { label: 'How near the Sun a target is, such as Venus', run: 'sun Venus' };
  return ECLIPSE.test(plain) ? [NEXT_ECLIPSES, near, WHEN_DARK] : [near, WHEN_DARK];
};

/** @param plain of what is asked where the Sun is spoken of, in lower case; names the Sun or not */
export const answerTo = (plain: string, caution = cautionFor(plain)): Problem => {
  const choices = choicesAfter(caution, plain);
  return problem('not-safe', cautionText(caution), choices.length === 0 ? undefined : choices);
};

/** What one may ask of the Sun without looking at it. */
export const ASKS_WHERE =
  /\b(?:up|down|ris\w+|sets?|setting|high\w*|low\w*|where|when|noon|transit\w*|altitude|azimuth|time)\b/u;

const ASKS_ABOUT = /^(?:why|what|who|which|how (?:far|big|hot|old|large|heavy|bright))\b/u;

const isInSunshine = (plain: string): boolean => IN_SUNSHINE.test(plain) && !OF_EYES.test(plain);

/** Last of all: the Sun and nothing else is named, in words that say nothing of where it stands. */
export const sunAlone: Rule = ({ plain, targets }) =>
  targets.length > 0 &&
  targets.every((name) => name === 'sun') &&
  !ASKS_WHERE.test(plain) &&
  !ASKS_ABOUT.test(plain) &&
  !isInSunshine(plain)
    ? answerTo(plain)
    : null;

const asksToLook = (plain: string): boolean => {
  if (isInSunshine(plain)) return false;
  // An eclipse is told of with its own caution, unless it is asked what to look with.
  if (ECLIPSE.test(plain)) return LOOKED_WITH.test(plain);
  return ON_IT.test(plain) || LOOKS.test(plain);
};

/** Of looking into it and of nothing else, though words of it may be names. */
const isOfLooking = (plain: string): boolean =>
  !WAITS.test(plain) && (GUARDS.test(plain) || INTO_IT.test(plain) || hasLookedIn(plain));

const isOfSunset = (said: string): boolean =>
  SUN_AT_EDGE.test(said) && ASKED_OF_SAFETY.test(said) && !AS_HOUR.test(said) && !WAITS.test(said);

/** A question of eyes though no word names the Sun itself: of the sunset, of a filter for the finder. */
const isOfUnnamedSun = (said: string): boolean =>
  isOfSunset(said) || FILM_ON_FINDER.test(said) || (FINDER_FILTER.test(said) && asksNeed(said));

/** How a line stands to the Sun. */
interface Said {
  /** In lower case. */
  readonly said: string;
  /** Folded, see plainHarm. */
  readonly plain: string;
  readonly hasLooked: boolean;
  readonly isSunUp: boolean;
}

/** What is happening, and what has an answer of its own. */
const firstIn = ({ said, plain, hasLooked, isSunUp }: Said, day: DayAt | null): SunCaution | null => {
  if (WAITS.test(said)) return null;
  return isSunNow(plain, isSunUp) && !hasLooked ? 'sun-now' : sunKind(plain, day);
};

/** By day and beside the Sun; null where something else of the Sun is asked or told. */
const nearIn = ({ said, plain, hasLooked }: Said, harm: SunCaution | null, day: DayAt | null): SunCaution | null => {
  const isPlain = harm === null || harm === 'sun-looking' || harm === 'sun-camera';
  const near = isPlain && !hasLooked ? harmByDay(plain, day) : null;
  // "No: cap it" would be heard as "no filter needed".
  return near === 'sun-open' && SUN.test(said) && asksNeed(said) ? null : near;
};

/**
 * What is to be said first; what is needed, or has happened, before all.
 * @param said in lower case
 * @param day where the asker usually stands; null where nobody knows
 * @returns null: it comes near no such harm
 */
export const sunCautionIn = (said: string, day: DayAt | null): SunCaution | null => {
  const plain = plainHarm(said);
  const hasLooked = hasLookedIn(said, plain);
  const line = { said, plain, hasLooked, isSunUp: day?.isSunUp('now') === true };
  const first = firstIn(line, day);
  if (first !== null) return first;
  if (isEyeHurt(plain)) return 'eyes';
  const harm = sunHarm(plain, line.isSunUp);
  const near = nearIn(line, harm, day);
  if (near !== null) return near;
  return harm === null || harm === 'sun-sweep' || harm === 'eyes' ? harm : cautionFor(said);
};

/** What is answered before anything that waits, in whatever words it is met; null: nothing of it hurts. */
export const sunHarmAnswer = (typed: string, known: Known): Problem | null => {
  const said = typed.toLowerCase();
  const harm = sunCautionIn(said, known.day ?? null);
  if (harm === null || solarFilterFor(typed, known) !== null) return null;
  return OF_TOTALITY.includes(harm) ? totalityTo(harm, known) : answerTo(said, harm);
};

/** Null: it is not asked about, or beside a target. */
export const lookingAtSun = (typed: string, known: Known): Reading | Problem | null =>
  solarFilterFor(typed, known) ?? sunHarmAnswer(typed, known) ?? lookingAtNamedSun(typed, known);

/** "Align on sun": no day of the week. */
const TURNED_ON_IT =
  /\b(?:align|sync|focus|cent(?:er|re)|point|aim|guide|track|calibrat)\w* (?:\w+ ){0,2}(?:on|to) (?:the )?sun\b(?! (?:evening|night|morning|afternoon|\d))/u;

const isOfSunday = (plain: string, night: string | null): boolean =>
  /\bsun/u.test(night ?? '') && !TURNED_ON_IT.test(plain);

const lookingAtNamedSun = (typed: string, known: Known): Reading | Problem | null => {
  const said = typed.toLowerCase();
  if (isOfUnnamedSun(said)) return answerTo(said);
  const plain = said.replace(SUN_AS_HOUR, ' ');
  if (!SUN.test(plain)) return null;
  if (isOfLooking(plain)) return answerTo(plain);
  if (WAITS.test(plain) || LEFT_OUT.test(plain)) return null;
  const isNear = WHAT_IS_NEAR.test(plain);
  if (!isNear && (!asksToLook(plain) || (ASKS_WHEN.test(plain) && !MAY_I.test(plain)))) return null;
  const parts = partsOf(typed.replace(NO_NAMES, ' '), known);
  if (parts.named.length > 0 || isOfSunday(plain, parts.when.night)) return null;
  if (!isNear) return answerTo(plain);
  return { line: commandLine('sun', 'Sun', { at: hourOf(plain, parts), site: parts.site ?? undefined }) };
};
