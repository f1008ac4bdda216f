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

const sunLine = (asked: Asked, first: string): Reading =>
  nightLine('dark', '', { ...asked, when: nightAlone(asked.when), kit: null, sky: null }, { first });

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

export const sunDays: Rule = (asked) => {
  if (says(asked, OTHERS) || asked.targets.some((name) => name !== 'sun')) return null;
  if (says(asked, TURN))
    return nightLine(
      'ahead',
      'seasons',
      { ...asked, when: { ...nightAlone(asked.when), night: null, note: null }, kit: null, sky: null },
      { about: turnOf(asked), in: periodSaid(asked.plain) },
    );
  if (says(asked, LENGTH)) return sunLine(asked, 'day-length');
  if (says(asked, POLAR) || says(asked, BACK)) return sunLine(asked, 'sun-back');
  return says(asked, UP_AT_ALL) && says(asked, NOW_OR_DAY) ? sunLine(asked, 'sun-up') : null;
};
