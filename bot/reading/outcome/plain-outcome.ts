/** What a member's words say of a remedy outright, by the sayings of it. */
import { doesRightly } from './does-rightly.js';
import { isPlainCure } from './plain-cure.js';

/** `changed`: helped in part, or another trouble stands in its place. */
export type PlainOutcome = 'cured' | 'unchanged' | 'changed' | 'could-not';

const GOOD = '(?:works?|working|connects?|connected|moves|moving|goes|responds|answers|better|fixed|ok|fine)';
/** On mended words, clauses parted by " | "; the first that fits decides. */
const CURED = GOOD.replace('|better|fixed|ok|fine)', '|stays?|opens?|finds?|holds?|tracks?|lands right)');
/** It works, and does not last: "for a second", "now and then". */
const UNSTEADY = new RegExp(
  `\\b(?:${GOOD}|worked|talks|slews|tracks)(?: [^ |]+){0,2} (?:for (?:[^ |]+ ){1,3}(?:seconds?|secs?|minutes?|mins?|moment|bit|while)|(?:now and|on and|every now and) (?:then|again|off)|sometimes)\\b`,
  'u',
);
const SAYINGS: readonly (readonly [RegExp, PlainOutcome])[] = [
  [/\bthere (?:it|she|he) goes again\b/u, 'unchanged'],
  // Of all its lines at once.
  [
    /(?:^|\| )(?:[^ |]+ ){0,3}(?:tried|did|done|checked|went through|gone through|been through|looked at|all of (?:that|it)) (?:already )?(?:it |them |that |those |these )?(?:all|both|every|each|lot|the lot|everything|that|this|them|those|these)(?: of (?:that|it|them|those|these))?(?: [^ |]+){0,4}$/u,
    'unchanged',
  ],
  [
    /\b(?:none|nothing|neither) of (?:it|that|this|them|those|these) (?:has |have )?(?:help|work|did|do|made|make|chang|cur|fix)[a-z]*\b/u,
    'unchanged',
  ],
  [
    /\b(?:all|it|they|everything)(?: of)?(?: that| it| them| those)? (?:was|were|is|are) (?:all )?(?:fine|ok|right|good|on|tight|in|home|well|set|correct)(?: already| before| anyway| [a-z]+ly)*$/u,
    'unchanged',
  ],
  [new RegExp(`\\b(?:${GOOD}|talks|slews|tracks)\\b(?: [^ ]+){0,6} (?:but|only|except|yet)\\b`, 'u'), 'changed'],
  [/\b(?:spot on|dead on|on target|full speed)\b(?: [^ ]+){0,6} (?:but|only|except)\b/u, 'changed'],
  [/\b(?:gone|better|less|improved|longer|further) (?:now )?(?:\| )?(?:but|only|though)\b/u, 'changed'],
  [/\bnow (?:[^ |]+ ){1,8}(?:\| )?(?:but|only)\b/u, 'changed'],
  [/\b(?:another|different|new|other) (?:error|message|code|problem|fault)\b/u, 'changed'],
  [
    new RegExp(
      `\\b(?:now (?:\\| )?(?:and )?(?:it|the mount|everything) (?:is )?|(?:it|mount|everything) is )(?:${CURED})\\b(?! (?:for|to|until|the (?:other|wrong)|back|off|out|dark|dead|wrong))`,
      'u',
    ),
    'cured',
  ],
  // "The program connects", "lands spot on now", "whole sky at full speed now": the good end, with nothing said against it.
  [/(?:^|\| )(?:the |my )?(?:program|app|software|laptop|computer) (?:now )?connects?(?: now| fine)?$/u, 'cured'],
  [
    /\b(?:spot on|dead on|on target|full speed|first (?:time|try)|every time|times) (?:fine|now|good|again)\b/u,
    'cured',
  ],
  [/\bnow it (?:says|shows|does|goes|stops|moves|lands|drops)\b/u, 'changed'],
  [/\b(?:is|it|made it|got|getting|even|now) (?:even |much |only )*worse\b/u, 'changed'],
  [/\bnow (?:[^ |]+ ){1,4}(?:is |are |has )?(?:out|dead|dark|gone|off|silent) (?:too|as well)\b/u, 'changed'],
  [/\b(?:no|not any|not much) (?:change|odds|difference|luck|joy|effect|improvement|better|good|use)\b/u, 'unchanged'],
  [/\bsame (?:thing|result|error|again|as before|problem|message|here|story|time|out)\b/u, 'unchanged'],
  [/(?:^|\| )(?:(?:it|that) is )?(?:still |just |exactly |all |always )*the same\b/u, 'unchanged'],
  [/(?:^|\| )same\b/u, 'unchanged'],
  [
    /\b(?:does|did|has|do) not (?:really )?(?:help|helped|work|worked|change|changed|do anything|fix|fixed|cure)\b/u,
    'unchanged',
  ],
  [/\bnothing (?:changed|changes|new|different|happens|happened|at all)\b/u, 'unchanged'],
  [
    /\bstill (?:not|no|nothing|refuse|refused|refuses|drops?|times?|fails?|says?|dead|silent|denied|denies|unreachable|blocked|busy|taken|held|in use|missing|parked|stuck|greyed|yellow|there is|shows?|the same|will not|does not|can not|did not|out|lands?|misses)\b/u,
    'unchanged',
  ],
  [/\b(?:already (?:did|done|tried|closed|checked|set|swapped|have)|(?:have|had|is|was|are) already)\b/u, 'unchanged'],
  [/(?:^|\| )(?:it |that )?(?:can not be|(?:is|was) not (?:it|that))\b/u, 'unchanged'],
  [
    /(?:^|\| )(?:there is |there was |i see |it is )?nothing (?:else |there )*(?:to|runs?|running|open|there|in it)\b/u,
    'unchanged',
  ],
  [/(?:^|\| )(?:it|that|they|this|those) (?:is|was|are|were) (?:all )?(?:fine|ok|right|good|correct)\b/u, 'unchanged'],
  [/\b(?:wrong|broken|dead|gone|bad|lost) again\b/u, 'unchanged'],
  // Of what was so before, or is so whatever was done.
  [/\b(?:exactly|just|all|same|still|it is|is) (?:as|like) (?:before|it was|ever|always)\b/u, 'unchanged'],
  [
    /\b(?:triangle|mark|error|message|problem|trouble|fault|it) (?:is |are |was )?still (?:there|here|shows?|on)\b/u,
    'unchanged',
  ],
  [/\bstill (?!works?|connect|mov|track|talk|answer|fine|ok|good|on|up|running|well)[a-z]+s\b/u, 'unchanged'],
  [
    /\b(?:does|did|do|has|have|it|that) not (?:really )?(?:change|changed|help|helped|do|done|make|made) (?:nothing|anything|a thing|any|much|it)\b/u,
    'unchanged',
  ],
  [
    /^(?:hm |well |sorry |oh )*(?:no|nope|nah|nada|nothing|zilch|nil|negative)(?: sorry| mate| thanks| here| at all)*$/u,
    'unchanged',
  ],
  [
    /\b(?:there|same|so|does|do|is|happens|comes|shows|says|dims|drops|fails|blinks|stays)\b(?: it)?(?: just)? (?:the same |as well |too |also |even )+(?:with|without|when|if|on|at|after)\b/u,
    'unchanged',
  ],
  [/\b(?:there is|i have|it is|i see) (?:only|just) (?:this |that |the )?one\b/u, 'unchanged'],
  [
    /\balready\b(?! (?:works?|connects?|better|moves))(?<!(?:works?|connects?|better|moves|fine) already)/u,
    'unchanged',
  ],
  [/\b(?:will|would|did|does|do) not (?:give|lend|tell|share|let|allow) (?:me|us)\b/u, 'could-not'],
  [
    /\bnot in the sudoers\b|\bcommand not found\b|\bgr[ae]y(?:ed)? out\b|\b(?:is|was|it is|are|all|just|only|stays|button|option|one) gr[ae]y(?:ed)?\b|\bgr[ae]y(?:ed)$/u,
    'could-not',
  ],
  // What is to be pressed is not there, or cannot be.
  [
    /\b(?:can ?not|could not|will not let me) (?:be )?(?:click(?:ed)?|press(?:ed)?|tap(?:ped)?|select(?:ed)?|tick(?:ed)?|chosen)\b|\b(?:button|option|tab|menu|entry|tick ?box) (?:is |was )?(?:missing|disabled|inactive|not there|not available|unavailable|dead|dimmed)\b|\bunavailable\b|\b(?:is|was) not (?:clickable|offered|selectable)\b/u,
    'could-not',
  ],
  [/\b(?:there is |i have |i see )?no (?:\w+ ){0,3}(?:option|button|tab|menu|entry|tick ?box)\b/u, 'could-not'],
  [/\b(?:has|have|there is|i see|i find|got) no such\b|\b(?:i|we) (?:do|did) not have\b/u, 'could-not'],
  [
    /\b(?:can|could) not (?:do|install|open|find|change|run|get|set|switch|reach|buy|try|test|borrow|measure|update|check)\b/u,
    'could-not',
  ],
  [/\b(?:unable to|not allowed to|no way to|will not let me|would not let me|not possible)\b/u, 'could-not'],
  [/\b(?:no|without) (?:\w+ )?(?:internet|spare|signal|tools?|meter|admin|password|permission)\b/u, 'could-not'],
  [/\bdo not (?:have|own) (?:a|an|any|one|that|it|the|another)\b/u, 'could-not'],
  [/\b(?:there is|i see|i have) no such\b/u, 'could-not'],
  [
    new RegExp(
      `(?:^|\\| |\\b(?:it|that|everything|all|mount|scope|now) )(?:now |all |just )*(?:${GOOD.replace('|ok|fine', '')})(?: (?:now|again|fine|perfectly|great))+`,
      'u',
    ),
    'cured',
  ],
  [
    /(?:^|\| )(?:yes |yay |great |ok |brilliant |wow )*(?:that|it) (?:did it|was it|works|worked|fixed it|cured it|solved it)\b/u,
    'cured',
  ],
  [
    /(?:^|\| )(?:yes |yay |great )*(?:it is )?(?:all )?(?:fixed|solved|sorted|cured|works|connected)(?: now)?$/u,
    'cured',
  ],
];

/** An installer's error code: it could not be done. */
const INSTALLER_CODE = /\b0x8[0-9a-f]{7}\b/iu;

/** A cure that hangs on something, is hoped for, or is of the buttons alone is none yet. */
const NOT_YET =
  /\b(?:if|unless|until|whenever|only (?:works?|connects?|when|if)|would|should|hoped?|wish|thought|(?:with|on|from|by) (?:the |my |its )?(?:buttons|keys|handset|keypad|hand|arrows|joystick|phone))\b|^(?:will|can|could) /u;

const GOES = '(?:goes|going|moves|moving|lands|points|slews|turns|tracks)';
/** It goes, and not where it should. */
const ASTRAY = new RegExp(
  `\\b${GOES}\\b[^|]*\\b(?:almost|nearly|below|under|beside|instead|short of|next to|near|close to|degrees?|horizon|ground|floor|fence|trees?|wall|backwards?|opposite|wrong|corner|edge)\\b`,
  'u',
);
/** It goes somewhere, which may be a cure or a new trouble. */
const SOMEWHERE = new RegExp(
  `\\bnow it ${GOES} (?:only |more |far |too |well |right |a bit )*(?:to the |past|beyond|north|south|east|west|left|up|down)\\b`,
  'u',
);

/** Tells a cure that is one wherever it is said from words that are one after a remedy alone. */
export interface Plainly {
  readonly outcome: PlainOutcome;
  readonly isCureAnywhere: boolean;
}

const plainly = (outcome: PlainOutcome, isCureAnywhere = false): Plainly => ({ outcome, isCureAnywhere });

/**
 * @param line mended words, clauses parted by " | ", "it's" written out
 * @param text as it was typed
 * @returns `perhaps`: what the mount does now may be a cure, or a step on the way to it; null where nothing of it is said
 */
export const plainOutcome = (line: string, text: string): Plainly | 'perhaps' | null => {
  if (INSTALLER_CODE.test(text)) return plainly('could-not');
  if (UNSTEADY.test(line)) return plainly('changed');
  if (isPlainCure(line)) return plainly('cured', true);
  const doing = doesRightly(line);
  if (doing !== null) return doing === 'plain' ? plainly('cured', true) : 'perhaps';
  const said = SAYINGS.find(([pattern]) => pattern.test(line))?.[1];
  if (said === undefined) return null;
  if (said !== 'cured') return plainly(said);
  if (NOT_YET.test(line)) return null;
  if (ASTRAY.test(line)) return plainly('changed');
  return SOMEWHERE.test(line) ? null : plainly(said);
};
