/** A wish for what was found, in writing and for somebody else: "report please", "give me something to send to the club". */

const LONGEST = 160;

const ASKS =
  "(?:(?:please|pls|plz|ok|okay|so|and|now|then|hi|can|could|would|will|may|might|i|we|you|u|me|us|just|like to|love to|want to|need to|want|need|like|have|get|give|got|make|write|do|print|show|send|let|prepare|create|i['’]?d|have you got|is there|out|up)[, ]+)*";
const WRITING = '(?:report|summary|write-? ?up|handover(?: note| sheet)?|hand-over(?: note)?|overview)';
const SHORT_OF = '(?:(?:a|an|the|my|your|this|some|short|little|full|whole|quick|brief|written) )*';
const READER =
  '(?:(?:the|my|our|a|an|some|another|that|this) )?(?:\\p{L}+ )?(?:friend|mate|buddy|helper|expert|technician|engineer|club|group|forum|colleague|neighbou?r|someone|somebody|anyone|human|person|people|other people|chairman|chair|shop|dealer|seller|repairer|guy|man|lady|father|dad|son|daughter|husband|wife|brother|him|her|them|others|someone else|somebody else|who(?:ever)? (?:helps?|knows))';
const PASSES_ON = '(?:send|show|give|forward|mail|e-?mail|post|pass(?: on)?|hand(?: on| over)?|print|take|copy|share)';
const ALL_OF_IT =
  '(?:it|this|that|all|all this|all of (?:it|this)|everything|what (?:we|you|i) (?:found|have|did|know|saw|tried))';

const WISHES: readonly RegExp[] = [
  // "Report please", "can i have a summary for the helper", "make a report".
  new RegExp(
    `^${ASKS}${SHORT_OF}${WRITING}(?: (?:please|pls|plz|now|then|thanks|of (?:this|it|all|everything)[^.]*))*[.!?]*$`,
    'iu',
  ),
  new RegExp(
    `(?:^|[.,;!?] *)${ASKS}${SHORT_OF}(?:${WRITING}|notes?|text|message|letter|mail) (?:for|to) ${READER}\\b`,
    'iu',
  ),
  new RegExp(
    `^${ASKS}(?:have|get|give|make|write|need|want|print|do|see)(?: me)? ${SHORT_OF}(?:${WRITING}) (?:for|to) \\p{L}`,
    'iu',
  ),
  // "Something to send to the club", "a text that I can show".
  new RegExp(
    `\\b(?:something|anything|notes?|text|message|letter|sheet|${WRITING}) (?:(?:that|which) )?(?:(?:i|we) (?:can|could|may|might) |to |for me to )${PASSES_ON}\\b`,
    'iu',
  ),
  // "Write it up for my friend", "sum up everything so i can mail it".
  new RegExp(
    `\\b(?:write|sum|put|note|type) (?:${ALL_OF_IT} )?(?:all )?(?:up|down|together|out)\\b(?: ${ALL_OF_IT})?(?: (?:please|pls))*(?:[.!?]*$| (?:for|to) ${READER}| so (?:that )?(?:i|we) can| that (?:i|we) can)`,
    'iu',
  ),
  new RegExp(
    `\\b(?:write|send|text|mail|post) (?:a |the |this |it |all )*(?:message |mail |letter |note |text )?(?:to|for) ${READER} for (?:me|us)\\b`,
    'iu',
  ),
  new RegExp(`\\b(?:have you|have you got|do you have|is there) ${SHORT_OF}${WRITING}\\b`, 'iu'),
  // "What should i tell the guy in the shop".
  new RegExp(
    `\\bwhat (?:do|should|shall|can|could|must) (?:i|we) (?:tell|write to|say to|show|send) ${READER}\\b`,
    'iu',
  ),
  // "I'd like to send this to the forum", "can i get this all as a text for someone else".
  new RegExp(`(?:^|[.,;!?] *)${ASKS}${PASSES_ON} ${ALL_OF_IT}(?: all)? (?:on )?to ${READER}\\b`, 'iu'),
  new RegExp(
    `\\b(?:get|have) ${ALL_OF_IT}(?: all)? (?:as|in) (?:a |one )?(?:text|message|mail|writing|note|file)\\b`,
    'iu',
  ),
  new RegExp(`\\bgive (?:me |him |her |them |us )?(?:the|your|all(?: the)?) (?:notes|summary|report)\\b`, 'iu'),
];

/** Told of a screen, or of what others said. */
const TOLD =
  /\b(?:says?|said|shows|event log|log file|gives me|gave|wrote|told|reports|reported|error report|microsoft)\b/iu;

/** @returns false where a report or note is only spoken of */
export const wantsNote = (text: string): boolean =>
  text.length <= LONGEST && !TOLD.test(text) && WISHES.some((wish) => wish.test(text.trim()));
