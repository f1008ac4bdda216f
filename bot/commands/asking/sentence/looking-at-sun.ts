/** Whether one may look at the Sun itself, by whatever and through whatever: a plain No, before any other reading of the words. */
import { cautionText } from '../../../cautions/cautions.js';
import { problem, type Problem } from '../../../ground/problem.js';
import { answered, partsOf } from './about-sun.js';
import type { Known, Reading } from './asked.js';

const SUN = /\bsun(?:'?s)?\b/u;
/** Names of stars are near to these. */
const NO_NAMES = /\b(?:haz[ey]|mist|fog|shades|squint\w*|peek\w*|finders?)\b/giu;
const PROJECTS = /\bproject(?:s|ed|ing|ion)?\b/u;
const LOOKS = new RegExp(
  `${PROJECTS.source}|\\b(?:look\\w*|see|seeing|view\\w*|watch\\w*|peek\\w*|peep\\w*|glanc\\w*|star(?:e|ing)|gaz(?:e|ing)|squint\\w*|eye ?pieces?|(?:view)?finders?|finder ?scope|sun ?glasses|shades|clouds?|cloudy|haz[ey]|mist|fog|kids?|child(?:ren)?|safe\\w*|eyes?|bino\\w*)\\b`,
  'u',
);
const WHAT_IS_NEAR =
  /\b(?:what|what's|whats|which|anything|something|any)\b.*\b(?:near\w*|clos\w*|next to|around|beside)\b.*\bsun\b/u;
/** "before the sun rises" is an hour; "the sun is setting, can I look at it" is not. */
const SUN_AS_HOUR =
  /\b(?:before|after|until|till|once|while|with|as soon as|by)\s+(?:the\s+)?sun(?:'s|s| is| has)?(?: still| yet)?\s+(?:\w+ing|rises?|rose|sets?|go(?:es|ne)? down|comes? up|up|down)\b/gu;
const ASKS_WHEN = /\b(?:when|what time|where|how (?:long|high|big|far|hot|old|large|bright))\b/u;
const MAY_I = /\b(?:safe\w*|ok|okay|allowed|at it|look at|eye ?pieces?|(?:view)?finders?|through)\b/u;
/** Other questions: of eclipses, reminders, a telescope left out. */
const NOT_OURS = /\beclipses?\b|\b(?:remind\w*|warn|alert|wake|ping|let me know|tell me when|leav(?:e|ing)|left)\b/u;

const answerTo = (plain: string): Problem =>
  problem('not-safe', cautionText(PROJECTS.test(plain) ? 'sun-projection' : 'sun-looking'), [
    { label: 'How near the Sun a target is, such as Venus', run: 'sun Venus' },
    { label: 'When it is dark', run: 'dark' },
  ]);

/** Null: it is not asked about, or beside a target. */
export const lookingAtSun = (typed: string, known: Known): Reading | Problem | null => {
  const plain = typed.toLowerCase().replace(SUN_AS_HOUR, ' ');
  const isNear = WHAT_IS_NEAR.test(plain);
  if (!SUN.test(plain) || NOT_OURS.test(plain) || !(isNear || LOOKS.test(plain))) return null;
  if (!isNear && ASKS_WHEN.test(plain) && !MAY_I.test(plain)) return null;
  const parts = partsOf(typed.replace(NO_NAMES, ' '), known);
  // "on sun" is the day.
  const isDay = /\bsun/u.test(parts.when.night ?? '');
  if (parts.named.length > 0 || isDay) return null;
  return isNear ? answered(plain, parts) : answerTo(plain);
};
