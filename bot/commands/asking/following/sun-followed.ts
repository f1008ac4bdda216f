/** What follows an answer near the Sun: "is it safe yet", "can i slew to it at 8am", "just a quick look", "and with my phone". Pure. */
import type { Problem } from '../../../ground/problem.js';
import { answerTo, sunHarmAnswer } from '../sentence/looking-at-sun.js';
import type { Known } from '../sentence/asked.js';
import type { SunCaution } from '../sentence/sun-guards.js';
import { CAMERA, GUARD, NEAR_SUN, plainHarm, PROJECTS, SAYS_NIGHT, SWEEPS, TUBE } from '../sentence/sun-harm.js';
import { asksWhySun, whyWords } from '../sentence/sun-briefly.js';
import { partsOf } from '../sentence/sun-parts.js';
import { commandLine } from '../question-parts.js';
import { readWhole } from './about-it.js';
import { toldLine } from './told-line.js';

const LEAD = '^(?:(?:so|and|but|ok|okay|then|well|now|even|or) )*';
const SAFE_ALONE = new RegExp(
  `${LEAD}(?:(?:is|would|will|was) )?(?:it|that|this)?(?: (?:be|really|still))* ?(?:safe|dangerous|risky)(?: (?:yet|now|then|enough|already|there|for (?:my|the|our) eyes|(?:to )?(?:look|do|try|point|slew|go)(?: (?:at it|to it|there|that))?))*$`,
  'u',
);
const MAY = '(?:can|could|may|should|shall|do|would|must)';
const GOES = new RegExp(
  `${LEAD}${MAY} (?:i|we|you) (?:\\w+ )?(?:slew|point|aim|go|goto|swing|move|turn|look|sweep|scan|search|hunt|wait)\\w*(?: \\w+){0,3}? (?:to|at|for|towards?|on|around for) (?:it|that|them)\\b`,
  'u',
);
const QUICK = 'quick(?:ly)?|short|brief(?:ly)?|tiny|fast|second|sec|moment|once|blink|peek|glance|glimpse';
const QUICK_ALONE = new RegExp(
  `${LEAD}(?:(?:what|how about|what about|if|i|we|can|could|may|just|only|take|have|do|a|an|one|very|really|it|is|ok|for|look|${QUICK}) ?)+(?: (?:then|it|in|into|at it))*$`,
  'u',
);
const IS_LOOK = /\b(?:look|peek|glance|peep|glimpse)\b/u;
const IS_QUICK = new RegExp(`\\b(?:${QUICK})\\b`, 'u');
/** "And with binoculars", "through my phone". */
const WITH_IT =
  /^(?:(?:so|ok|okay|well) )*(?:and|but|or|what about|how about|what if|even|not even|with|through|using|if (?:i|we)|then|und|mit|durch|y|con|e|col|et|avec|en|met|z|przez|com)\b/u;
/** In French "et" is no name of a cluster, and sunglasses are no Sun. */
const LED_ABROAD = /^(?:et|e|y|und|en|z) |\b(?:de|da|do) (?:soleil|sole|sol)\b/gu;
const MOST_WORDS = 9;
/** "Sunglasses then?" */
const MOST_IN_BRIEF = 3;

/** "Along the tube" is at the Sun, where the tube is turned to it. */
const ALONG_TUBE =
  /\b(?:look|sight|peek|squint|peer|eye)\w* (?:\w+ ){0,2}?(?:along|down|over|up|past) (?:the |my |its )?(?:tube|scope|telescope|ota|barrel|side)\b/u;
const PANS =
  /^(?:(?:ok|so|then|can|could) )*(?:(?:i|we)(?: ?ll| will| am| m| just| can| could)* |let me |just )(?:pan|scan|sweep|wander|move|look|search|hunt) (?:\w+ )?(?:around|about|round)\b/u;
/** Later in the day it is low, and the Sun still. */
const LATER_TODAY = new RegExp(
  `${LEAD}(?:what about|how about|what if|if|and|maybe|in|at|on|the|it is|its|it s|this|late|later|early|then) (?:(?:in|at|the|this|late|later|early|it is|its|it s|towards?) )*(?:evenings?|afternoons?|mornings?|dusk|dawn)(?: (?:sun|then|light|maybe))*$`,
  'u',
);
/** "When does it set", where the Sun was spoken of. */
const ITS_HOURS = new RegExp(
  `${LEAD}(?:(?:at )?(?:when|what time|how long (?:until|till|before)) (?:does |will |is |do )?(?:it|she|he) (?:set|sets|rise|rises|go down|goes down|come up|comes up|gone|down|up|setting|rising)|is it (?:up|down|set|still up)(?: (?:yet|now|still|already))?)(?: (?:then|today|tomorrow|here|again|tonight))*$`,
  'u',
);

const ofSunHours = (plain: string): string => {
  const day = /\b(?:today|tomorrow)\b/u.exec(plain)?.[0] ?? '';
  return `when is ${/\bris|\bcomes? up|\bup$/u.test(plain) && !/^is /u.test(plain) ? 'sunrise' : 'sunset'} ${day}`.trim();
};

/** A line to run in its place, or what to say first. */
export type SunFollowed = { readonly line: string } | { readonly harm: Problem };

interface Near {
  readonly name: string;
  /** It was asked of the Sun on the way. */
  readonly isByDay: boolean;
  readonly site?: string;
}

/** The target of the last line, where it is one that stands near the Sun, or the line was of the Sun. */
const targetOf = (last: string | null, known: Known): Near | null => {
  const told = last === null ? null : toldLine(last, known.allCommands ?? []);
  const name = told?.values['target'];
  if (told === null || name === undefined || !/^(?:sun|up|altitude|meridian)$/u.test(told.command.name)) return null;
  const isNear = told.command.name === 'sun' || NEAR_SUN.test(name.toLowerCase()) || known.day?.isSunUp('now') === true;
  const { site } = told.values;
  const isByDay = told.command.name === 'sun';
  return isNear ? { name, isByDay, ...(site === undefined ? {} : { site }) } : null;
};

const withSite = (line: string, site: string | undefined): string =>
  site === undefined || line.includes('site:') ? line : `${line} ${commandLine('', '', { site }).trim()}`;

const ofTarget = (plain: string, { name, site, isByDay }: Near, known: Known): SunFollowed | null => {
  if (SAFE_ALONE.test(plain)) return { line: commandLine('sun', name, { site }) };
  // "Just sweep about til i see it", after the way there by day.
  if ((isByDay || known.day?.isSunUp('now') === true) && (SWEEPS.test(plain) || PANS.test(plain)))
    return { harm: answerTo(plain, 'sun-sweep') };
  if (!GOES.test(plain)) return null;
  const words = plain.replace(/\b(?:it|that|them)\b/u, name);
  const harm = sunHarmAnswer(words, known);
  if (harm !== null) return { harm };
  const line = readWhole(words, known);
  return line === null ? null : { line: withSite(line, site) };
};

const isQuickLook = (plain: string): boolean => QUICK_ALONE.test(plain) && IS_LOOK.test(plain) && IS_QUICK.test(plain);

/** Somebody has looked, or an eye is not well: said of no Sun by name, after a warning. */
const HAS_LOOKED =
  /\b(?:(?:i|he|she|they|we|already|just|kids?|sons?|daughters?|child|children|boy|girl|lad|one|someone|somebody)(?: (?:have|has|had|already|just|only))* (?:looked|peeked|glanced|saw it|seen it)|(?:schon |hat |habe )?(?:reingeschaut|reingesehen|hingeschaut)|ha guardato|ho guardato|had a (?:go|turn|look|peek|glance|glimpse)|put (?:his|her|their|my) eye to it|he mirado|ha mirado|a regarde|ai regarde|heeft gekeken|patrzyl\w*|olhou|olhei)\b/u;
const EYE_UNWELL =
  /\b(?:eyes?|auge\w*|occhi\w*|ojos?|yeux|oeil|ogen|oog|oczy|olhos?)\b.*\b(?:hurt\w*|sore|spots?|blur\w*|cry\w*|water\w*|doctor|weh|tun|male|duele\w*|mal|pijn|bol\w*|doi|doem)\b|\b(?:hurt\w*|spots?|blur\w*|cry\w*|doctor|male|mal)\b.*\b(?:eyes?|auge\w*|occhi\w*|ojos?|yeux|oeil|ogen|oog|oczy|olhos?)\b|\b(?:dark|black|blind|bright|yellow|green|purple) (?:spot|patch|blob|dot)s?\b|\b(?:fleck(?:en)?|mancha|macchia|tache|vlek|plam\w+)\b|\b(?:everything|all) (?:looks|is|seems) (?:yellow|green|purple|dark|blurr\w+)\b/u;
/** What it looked through, or into which the Sun shines, is alight. */
const ALIGHT =
  /\b(?:on fire|melt\w*|smok(?!ed? (?:glass|film))\w*|burn\w*|stinks?|smells?|arde|brennt|raucht|fuma|brucia|fume|brule|rookt|dymi|pali)\b/u;
const FELL =
  /^(?:oh |oops |it |the |my |no |well )*(?:\w+ )?(?:just )?(?:fell|blew|came|dropped|slid|slipped) (?:off|down|away|loose)\b/u;
const OF_TOTALITY = /\b(?:diamond ring|bail(?:e?y|ey s|y s)? ?s? beads?|totality|corona)\b/u;
const IN_CLOUD = /\b(?:cloud\w*|haz[ey]|mist\w*|fog\w*|smog)\b/u;

const cautionIn = (plain: string): SunCaution | null => {
  if (HAS_LOOKED.test(plain) || EYE_UNWELL.test(plain)) return 'eyes';
  if (ALIGHT.test(plain) || FELL.test(plain)) return 'sun-now';
  if (OF_TOTALITY.test(plain)) return 'sun-totality';
  if (PROJECTS.test(plain)) return 'sun-projection';
  return IN_CLOUD.test(plain) ? 'sun-looking' : null;
};

/** "What if it's low and red", "it's only a crescent left", "a few layers of smoked glass then": said against a No a moment ago. */
const OBJECTS =
  /^(?:(?:but|and|so|ok|well|what if|what about|even if|only if|only when|just when|if|its|it s|it is|when|now|only|just|a few|some|two|three|with|through|behind) ).*\b(?:low|red|dim\w*|orange|crescent|sliver|covered|most(?:ly)? (?:gone|hidden)|cloud\w*|smoked|layers?|faint|weak|setting|sunset|sunrise)\b/u;
const OF_OTHERS =
  /\b(?:moon|mercury|venus|mars|jupiter|saturn|uranus|neptune|nebulas?|nebulae|galax\w+|clusters?|stars?|comet\w*|power|battery|light|lamp|torch|sky|skies)\b/u;
const MOST_OBJECTED = 12;
const isObjection = (plain: string): boolean =>
  plain.split(' ').length <= MOST_OBJECTED && OBJECTS.test(plain) && !OF_OTHERS.test(plain) && !SAYS_NIGHT.test(plain);

/** Said after a warning, and of nothing else. */
const isOfWarning = (plain: string, known: Known): boolean => {
  if (LATER_TODAY.test(plain)) return true;
  if (SAYS_NIGHT.test(plain)) return false;
  if (SAFE_ALONE.test(plain)) return true;
  const isBrief = plain.split(' ').length <= MOST_IN_BRIEF;
  const isWith = (isBrief || WITH_IT.test(plain)) && [TUBE, CAMERA, GUARD].some((one) => one.test(plain));
  return isWith && partsOf(plain.replace(LED_ABROAD, ''), known).named.length === 0;
};

/** Right after a warning: why, when the Sun sets, what has happened, and what is tried next. */
const inSunTalk = (plain: string, known: Known): SunFollowed | null => {
  if (asksWhySun(plain)) return { harm: { ...answerTo(plain), message: whyWords() } };
  const hours = ITS_HOURS.test(plain) ? readWhole(ofSunHours(plain), known) : null;
  if (hours !== null) return { line: hours };
  const grave = SAYS_NIGHT.test(plain) ? null : cautionIn(plain);
  if (grave !== null) return { harm: answerTo(plain, grave) };
  return isQuickLook(plain) || isOfWarning(plain, known) ? { harm: answerTo(plain) } : null;
};

const followedIn = (plain: string, last: string | null, isTalk: boolean, known: Known): SunFollowed | null => {
  const target = targetOf(last, known);
  const followed = target === null ? null : ofTarget(plain, target, known);
  if (followed !== null) return followed;
  if ((isTalk || target?.isByDay === true) && ALONG_TUBE.test(plain)) return { harm: answerTo(plain, 'sun-aim') };
  const inTalk = isTalk ? inSunTalk(plain, known) : null;
  if (inTalk !== null) return inTalk;
  const isSun = target !== null || known.day?.isSunUp('now') === true;
  return isSun && isQuickLook(plain) ? { harm: answerTo(plain) } : null;
};

/**
 * @param last the line asked last, while it is fresh
 * @param isTalk a warning of the Sun was said here a moment ago
 * @returns null: it follows nothing of the Sun
 */
export const sunFollowed = (text: string, last: string | null, isTalk: boolean, known: Known): SunFollowed | null => {
  const plain = plainHarm(text.replace(/[’‘`]/gu, "'"));
  if (isTalk && isObjection(plain)) return { harm: answerTo(plain, cautionIn(plain) ?? undefined) };
  return plain.split(' ').length > MOST_WORDS ? null : followedIn(plain, last, isTalk, known);
};
