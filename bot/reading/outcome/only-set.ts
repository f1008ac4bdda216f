/**
 * "Entered the coordinates again, they are right now", "date fixed, reads 27 november": an entry or a setting stands right, and nothing is
 * told of what the mount does with it. That is the remedy done, and no cure yet.
 */

const ENTRY =
  '(?:coordinates?|positions?|lat(?:itude)?|long?(?:itude)?|dates?|days?|months?|years?|times?|clocks?|hours?|(?:time ?)?zones?|utc|gmt|offsets?|summer ?time|dst|daylight saving|sites?|places?|locations?|entr(?:y|ies)|numbers?|settings?|values?|figures?|letters?|signs?|speeds?|baud|parity|epoch|limits?|rates?)';
/** "They are right now"; “it is fine now” says more. */
const THEY = '(?:it|they|that|both|everything|all(?: of (?:it|them))?)';
const STANDS =
  '(?:right|correct|fixed|set|entered|typed|ok|okay|good|fine|changed|corrected|sorted|in|as (?:it|they) should(?: be)?|on|off|[ewns]|east|west|north|south|\\d[\\d.:]*)';
const NOW = '(?:now|again|finally|at last|both|all)';
const IS = "(?:\\s(?:is|are|was|reads?|says?|shows?|stands?|match(?:es)?)|['\\u2019]?s|['\\u2019]?re)";

const LEADS = '(?:(?:ok(?:ay)?|yes|yep|done|so|and|right|now|the|my|its|all) )*';
const SET = new RegExp(
  `^${LEADS}(?:${ENTRY}(?: (?:and|n|&) (?:the )?${ENTRY})*(?:${IS})?(?: ${NOW})*(?: ${STANDS})?|${THEY}${IS}(?: ${NOW})* (?:right|correct|set|entered|typed|changed|corrected|in|as (?:it|they) should(?: be)?))(?: ${NOW})*$`,
  'iu',
);
/** What was done to it, or what it reads. */
const DONE = new RegExp(
  `^(?:(?:ok(?:ay)?|yes|yep|so|and|then|i|we|just|now|have|had|did|re) ?)*(?:entered|typed|set|put|changed|corrected|fixed|re-?entered|read|reads|says|shows|switched|turned|took|wrote|keyed|saved|chose|picked|done|it now|now it)\\b(?!.*\\b(?:works?|connects?|moves?|slews?|finds?|lands?|tracks?|talks?|answers?|stays|goes|eyepiece|middle|cent(?:re|er)|view|field|did it|the trick|cured|solved|mended|on target|gone)\\b).*$`,
  'iu',
);
/** "It's on 9600 now", "com 7 now". */
const A_VALUE = new RegExp(
  `^${LEADS}(?:(?:it|that|they)(?:${IS})? (?:now )?)?(?:on|at|set to|to)? ?(?:com ?)?\\d[\\d.,:]*(?: ${NOW})*$`,
  'iu',
);
const NAMES_ENTRY = new RegExp(`\\b${ENTRY}\\b`, 'iu');
const BREATHS = /[,.;!\u2026\n]+(?!\d)|\s-+\s|\b(?:and|so)\b/iu;

/** @returns whether all that the words tell is that an entry was set, or stands right */
export const isOnlySet = (text: string): boolean => {
  if (!(NAMES_ENTRY.test(text) || /\d/u.test(text)) || text.includes('?')) return false;
  const breaths = text
    .split(BREATHS)
    .map((breath) => breath.trim().replace(/\s+/gu, ' '))
    .filter((breath) => breath !== '');
  return breaths.every((breath) => SET.test(breath) || DONE.test(breath) || A_VALUE.test(breath));
};
