/**
 * Whether words tell what was found or what happened: "if I bend the wire it comes back on", "carried it over in the car". A "hang on"
 * ahead of it puts nothing off, and a "done" in it is no end of the trouble.
 */
import { wordCountOf } from '../../ground/fold-text.js';
import { rememberLines } from '../lately.js';

const LEADS_UP =
  /^\W*(?:(?:oh|ah|um|er|well|no|yes|ok(?:ay)?|so|and|but|right|sorry|wait|hang on|hold on|one (?:sec|moment)|moment|actually|by the way|btw|funny(?: thing)?|interesting|weird|strange|odd)\b[\s,.:;!-]*)+/iu;

/** Of what is to come, or done this minute. */
const OF_LATER =
  /\b(?:later|tomorrow|tonight|soon|not (?:yet|done|tried|had|right)|will|shall|would|gonna|gotta|going to|have to|has to|need(?:s|ed)? to|must|let me|about to|till|until|afterwards|first|patience|hope(?:d|fully)?|waiting|(?:look|check|try|test|charg|download|install|fetch|gett|boot|do)ing|raining|cloud\w*|overnight|(?:mon|tues|wednes|thurs|fri|satur|sun)day|week ?end|next (?:week|time|night))\b|['\u2019]ll\b|\bgive me\b|\bback (?:in|at) \w/iu;

const THING = '(?:it|that|this|they|everything|(?:the|my|its|a) [a-z]+(?: [a-z]+)?)';
const DOES =
  '(?:comes?|goes|go|works?|shows?|stays?|lights?|drops?|dies|stops?|starts?|flickers?|flash\\w*|blinks?|beeps?|connects?|disconnects?|jumps?|moves?|appears?|vanish\\w*|disappears?|is|are|gets?|runs?|resets?|reboots?|freezes?|responds?|answers?|says?|turns?|cuts?)';
/** What happens when something is done to it, or in which state it is found. */
const HAPPENS = new RegExp(
  [
    `\\b(?:if|when(?:ever)?|as soon as|every time|each time|the moment|once|while)\\b[^.!?;]{3,60}\\b${THING} ${DOES}\\b`,
    `\\b${THING} ${DOES}\\b[^.!?;]{0,40}\\b(?:if|when(?:ever)?|as soon as|every time|each time|while) (?:i|we|it|the|you)\\b`,
    '\\b(?:wiggl|bend|push|press|twist|squeez|touch|mov|pull|knock|tapp)(?:e|ing|s)?\\b[^.!?;]{2,40}\\b(?:fixes|helps|brings|makes|gets|kills|breaks|cuts|stops|does)\\b',
  ].join('|'),
  'iu',
);
/** What was done to it, told as over. */
const WAS_DONE =
  /^(?:i |we |(?:my|the) [a-z]+ )?(?:had |just |have |only )?(?:carried|took|taken|drove|driven|brought|lent|borrowed|moved|dropped|knocked|bought|swapped|changed|updated|upgraded|packed|stored|left|got|used|plugged|unplugged|cleaned|opened|lost|spilt|spilled|stood|put)\b/iu;
const LEAST_WORDS = 4;

const findingIn = (text: string): boolean => {
  const said = text.trim().replace(LEADS_UP, '');
  if (wordCountOf(said) < LEAST_WORDS || OF_LATER.test(said)) return false;
  return HAPPENS.test(said) || WAS_DONE.test(said);
};

export const tellsFinding = rememberLines(findingIn);
