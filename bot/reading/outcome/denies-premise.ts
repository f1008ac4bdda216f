/**
 * Whether words at a remedy deny what it is for: the thing was looked at already, stands as it should, was never touched, is not what
 * the remedy takes it to be. To the walk that is the remedy done, with nothing changed.
 */
import { doubtsAloud } from '../doubted-aloud.js';

const NOT = "(?:not|never|no|nothing|none|neither|nor|without|aint|isnt|arent|wasnt|werent|\\w+n['\u2019]t)";
const IT = '(?:it|that|this|them|those|these|they|all|both|everything)';

/** Looked at before the remedy was shown. */
const LOOKED_BEFORE = [
  '\\b(?:checked|looked|verified|tested|made sure|seen to|examined|tightened|tried|did|done|been through|went through|set|read|compared)\\b[^.!?;]{0,40}\\b(?:first(?: thing| of all)?|already|at the (?:start|beginning|outset)|earlier|twice|three times|a (?:hundred|dozen) times|before (?:i|we|you|writing|asking|coming|that|starting)|beforehand|yesterday|every time|each time)\\b',
  '\\b(?:already|first thing|i always|have long|long since)\\b[^.!?;]{0,20}\\b(?:checked|looked|verified|tested|made sure|tightened|locked?|do(?:ne)? that|did that|set|read|check)\\b',
  '\\b(?:told|tell|said|say|wrote|mentioned)\\b[^.!?;]{0,16}\\b(?:already|before|twice|that|you|so)\\b[^.!?]{0,50}\\b(?:tight|firm|locked|right|correct|fine|ok|set|closed|off)\\b',
  "\\b(?:tight|firm|locked|right|correct|fine|ok|set|closed|off)\\b.{0,24}\\b(?:i|we)(?:['\u2019]ve| have)? (?:told|said|wrote|mentioned)\\b",
];
/** Never touched. */
const UNTOUCHED = [
  `\\b(?:i|we|nobody|no one|no-one)\\b[^.!?;,]{0,20}\\b(?:${NOT} )?(?:\\w+ )?(?:chang\\w*|touch\\w*|mov(?:e|ed)|alter\\w*|adjust\\w*|fiddled|set|altered)\\b[^.!?;,]{0,16}\\b(?:it|that|this|these|those|them|limits?|settings?|values?|numbers?|entr(?:y|ies))\\b`,
];
/** Cannot be it. */
const CANNOT_BE = [
  `\\b(?:cannot|can not|can['\u2019]?t|could not|couldn['\u2019]?t) (?:possibly )?be (?:it|that|this|the \\w+)\\b`,
  `\\b(?:it|that|this|the (?:cause|problem|trouble|fault|reason)) (?:is not|isn['\u2019]?t|isnt|aint|was not|wasn['\u2019]?t) (?:it|that|this|the (?:cause|problem|trouble|fault|reason|clutch(?:es)?|limit|port|cable|speed))\\b`,
  `\\bhas nothing to do with\\b`,
];
const GOOD_STATE =
  '(?:tight|firm|locked|done up|clamped|snug|solid|right|correct|fine|good|ok|okay|free|closed|shut|set|charged|full|seated|home|plugged in|off|on|in order|as (?:it|they) should(?: be)?|true|level)';
/** It stands as it should, said with weight: "they ARE tight", "both levers are locked, I always lock them". */
const STANDS = [
  `\\b(?:${IT}|clutch(?:es)?|levers?|knobs?|screws?|plugs?|sockets?|the [a-z]+(?: [a-z]+)?)\\b (?:is|are|were|was)(?: (?:all|both|already|really|very|quite|most definitely|definitely|certainly|always|nice and|good and))* ${GOOD_STATE}\\b`,
];
const WEIGHTY =
  /\b(?:already|always|both|all|checked|told|said|how (?:often|many)|stupid|idiot|dumb|daft|definitely|certainly|of course|obviously|honestly|swear|first thing|again)\b|!{2,}|^\s*no\b/iu;
/** Typed loud. */
const LOUD = /\b(?:ARE|IS|AM|WAS)\b/u;

/** Done just now, still to do, asked, or told with what came of it. */
const OTHERWISE =
  /\b(?:now|moment|hang on|hold on|wait|going to|gonna|will (?:try|do|look|check)|later|tomorrow|should i|do i|can i|how do|how can|where is|which one|works|working|connects|connected|fixed|cured|except|instead|turned out|it was (?:the|un|loose|off)|found (?:it|that|one))\b|\?/iu;

const LOOKED = new RegExp([...LOOKED_BEFORE, ...CANNOT_BE].join('|'), 'iu');
const NEVER_TOUCHED = new RegExp(UNTOUCHED.join('|'), 'iu');
/** What could not be touched is another matter. */
const COULD_NOT = /\b(?:can|could|cannot|can['\u2019]?t|couldn['\u2019]?t|unable|able|let me|allowed?)\b/iu;
const HAS_NOT = new RegExp(`\\b${NOT}\\b|\\bnobody\\b|\\bno one\\b`, 'iu');
const STANDS_WELL = new RegExp(STANDS.join('|'), 'iu');

const STATE_IN_TITLE = /\b(?:is|are|has been|has|was)\b (?:set |chosen |plugged )?(.+)$/iu;
/** Of what a title says these are no state that a member denies. */
const PLAIN = new Set(
  'the a an its their it in on at of to for by and or not no than from with into another other one wrong wrongly cannot be mount program'.split(
    ' ',
  ),
);
const LEAST_LETTERS = 3;

/** "Loose" of "A clutch is loose", "parked" of "The mount is parked": what is denied by "it is not loose". */
const statesIn = (title: string): readonly string[] => {
  const told = STATE_IN_TITLE.exec(title)?.[1] ?? '';
  if (/\b(?:not|no|without|cannot|never)\b/iu.test(told)) return [];
  return told
    .toLowerCase()
    .split(/[^a-z]+/u)
    .filter((word) => word.length >= LEAST_LETTERS && !PLAIN.has(word));
};

const deniesState = (text: string, title: string): boolean =>
  statesIn(title).some((state) => new RegExp(`\\b${NOT} (?:[a-z]+ ){0,2}${state}\\b`, 'iu').test(text));

/** "No, not doing that, it is fine there": refused, as what it would mend is in order. */
const REFUSES =
  /\b(?:not|never|won['\u2019]?t|wont|will not|rather not|don['\u2019]?t want to|dont want to|no need to|no way i['\u2019]?m|refuse to) (?:(?:be|going to|gonna|want to) )?(?:do|doing|touch|touching|reset|resetting|try|trying|chang(?:e|ing)|wip(?:e|ing)|risk|risking) (?:that|it|this|all that|any of that)\b/iu;
const IN_ORDER =
  /\b(?:it|that|this|they|everything|all|(?:the|my) [a-z]+)(?:['\u2019]?s|['\u2019]?re| is| are| works?| was)?(?: (?:all|already|quite|just|perfectly))* (?:fine|good|ok|okay|right|there|listed|joined|in order|well|working|works)\b/iu;
export const refusesAsFine = (text: string): boolean => REFUSES.test(text) && IN_ORDER.test(text.replace(REFUSES, ' '));

/** "It was fine all summer": of the whole, and of then. */
const OF_A_SEASON =
  /\b(?:was|were|worked|works|ran|went|had been|has been)\b.{0,30}\b(?:all|last|until|till|the whole|through(?: the)?|this) (?:the )?(?:summer|spring|winter|autumn|fall|season|year|month|week)\b|\b(?:was|were|worked|ran|went)\b.{0,30}\bfor (?:\w+ )?(?:years|months|weeks)\b/iu;

/** @param title of the fault that the remedy in hand is for */
export const deniesPremise = (text: string, title: string): boolean => {
  if (doubtsAloud(text)) return true;
  if (OTHERWISE.test(text) || OF_A_SEASON.test(text)) return false;
  if (deniesState(text, title) || LOOKED.test(text)) return true;
  if (NEVER_TOUCHED.test(text) && HAS_NOT.test(text) && !COULD_NOT.test(text)) return true;
  return (
    STANDS_WELL.test(text) && !HAS_NOT.test(text.replace(/^\s*no\b/iu, '')) && (WEIGHTY.test(text) || LOUD.test(text))
  );
};
