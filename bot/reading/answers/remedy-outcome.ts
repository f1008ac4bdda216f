/** What a member's words say of a remedy just tried. */
import type { Vocabulary } from '../vocabulary.js';
import { doesRightly } from './does-rightly.js';
import { isPlainCure } from './plain-cure.js';
import { saidText } from './said-words.js';

export type RemedyOutcome = 'works' | 'same' | 'changed' | 'could-not';

/** Longer than this is a story or a paste, not a word on how the remedy went. */
const LONGEST_WORDS = 45;

const GOOD = '(?:works?|working|connects?|connected|moves|moving|goes|responds|answers|better|fixed|ok|fine)';
/** On mended words, clauses parted by " | "; the first that fits decides. */
const CURED = GOOD.replace('|better|fixed|ok|fine)', '|stays?|opens?|finds?|holds?|tracks?|lands right)');
/** It works, and does not last: "for a second", "now and then". */
const UNSTEADY = new RegExp(
  `\\b(?:${GOOD}|worked|talks|slews|tracks)(?: [^ |]+){0,2} (?:for (?:[^ |]+ ){1,3}(?:seconds?|secs?|minutes?|mins?|moment|bit|while)|(?:now and|on and|every now and) (?:then|again|off)|sometimes)\\b`,
  'u',
);
const SAYINGS: readonly (readonly [RegExp, RemedyOutcome])[] = [
  [/\bthere (?:it|she|he) goes again\b/u, 'same'],
  // Of all its lines at once.
  [
    /(?:^|\| )(?:[^ |]+ ){0,3}(?:tried|did|done|checked|went through|gone through|been through|looked at|all of (?:that|it)) (?:already )?(?:it |them |that |those |these )?(?:all|both|every|each|lot|the lot|everything|that|this|them|those|these)(?: of (?:that|it|them|those|these))?(?: [^ |]+){0,4}$/u,
    'same',
  ],
  [
    /\b(?:none|nothing|neither) of (?:it|that|this|them|those|these) (?:has |have )?(?:help|work|did|do|made|make|chang|cur|fix)[a-z]*\b/u,
    'same',
  ],
  [
    /\b(?:all|it|they|everything)(?: of)?(?: that| it| them| those)? (?:was|were|is|are) (?:all )?(?:fine|ok|right|good|on|tight|in|home|well|set|correct)(?: already| before| anyway| [a-z]+ly)*$/u,
    'same',
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
    'works',
  ],
  // "The program connects", "lands spot on now", "whole sky at full speed now": the good end, with nothing said against it.
  [/(?:^|\| )(?:the |my )?(?:program|app|software|laptop|computer) (?:now )?connects?(?: now| fine)?$/u, 'works'],
  [
    /\b(?:spot on|dead on|on target|full speed|first (?:time|try)|every time|times) (?:fine|now|good|again)\b/u,
    'works',
  ],
  [/\bnow it (?:says|shows|does|goes|stops|moves|lands|drops)\b/u, 'changed'],
  [/\b(?:is|it|made it|got|getting|even|now) (?:even |much |only )*worse\b/u, 'changed'],
  [/\bnow (?:[^ |]+ ){1,4}(?:is |are |has )?(?:out|dead|dark|gone|off|silent) (?:too|as well)\b/u, 'changed'],
  [/\b(?:no|not any|not much) (?:change|odds|difference|luck|joy|effect|improvement|better|good|use)\b/u, 'same'],
  [/\bsame (?:thing|result|error|again|as before|problem|message|here|story|time|out)\b/u, 'same'],
  [/(?:^|\| )(?:(?:it|that) is )?(?:still |just |exactly |all |always )*the same\b/u, 'same'],
  [/(?:^|\| )same\b/u, 'same'],
  [
    /\b(?:does|did|has|do) not (?:really )?(?:help|helped|work|worked|change|changed|do anything|fix|fixed|cure)\b/u,
    'same',
  ],
  [/\bnothing (?:changed|changes|new|different|happens|happened|at all)\b/u, 'same'],
  [
    /\bstill (?:not|no|nothing|refuse|refused|refuses|drops?|times?|fails?|says?|dead|silent|the same|will not|does not|can not|did not|out|lands?|misses)\b/u,
    'same',
  ],
  [/\b(?:already (?:did|done|tried|closed|checked|set|swapped|have)|(?:have|had|is|was|are) already)\b/u, 'same'],
  [/(?:^|\| )(?:it |that )?(?:can not be|(?:is|was) not (?:it|that))\b/u, 'same'],
  [
    /(?:^|\| )(?:there is |there was |i see |it is )?nothing (?:else |there )*(?:to|runs?|running|open|there|in it)\b/u,
    'same',
  ],
  [/(?:^|\| )(?:it|that|they|this|those) (?:is|was|are|were) (?:all )?(?:fine|ok|right|good|correct)\b/u, 'same'],
  [/\b(?:wrong|broken|dead|gone|bad|lost) again\b/u, 'same'],
  // Of what was so before, or is so whatever was done.
  [/\b(?:exactly|just|all|same|still|it is|is) (?:as|like) (?:before|it was|ever|always)\b/u, 'same'],
  [
    /\b(?:triangle|mark|error|message|problem|trouble|fault|it) (?:is |are |was )?still (?:there|here|shows?|on)\b/u,
    'same',
  ],
  [/\bstill (?!works?|connect|mov|track|talk|answer|fine|ok|good|on|up|running|well)[a-z]+s\b/u, 'same'],
  [
    /\b(?:does|did|do|has|have|it|that) not (?:really )?(?:change|changed|help|helped|do|done|make|made) (?:nothing|anything|a thing|any|much|it)\b/u,
    'same',
  ],
  [
    /^(?:hm |well |sorry |oh )*(?:no|nope|nah|nada|nothing|zilch|nil|negative)(?: sorry| mate| thanks| here| at all)*$/u,
    'same',
  ],
  [
    /\b(?:there|same|so|does|do|is|happens|comes|shows|says|dims|drops|fails|blinks|stays)\b(?: it)?(?: just)? (?:the same |as well |too |also |even )+(?:with|without|when|if|on|at|after)\b/u,
    'same',
  ],
  [/\b(?:there is|i have|it is|i see) (?:only|just) (?:this |that |the )?one\b/u, 'same'],
  [/\balready\b(?! (?:works?|connects?|better|moves))(?<!(?:works?|connects?|better|moves|fine) already)/u, 'same'],
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
    'works',
  ],
  [
    /(?:^|\| )(?:yes |yay |great |ok |brilliant |wow )*(?:that|it) (?:did it|was it|works|worked|fixed it|cured it|solved it)\b/u,
    'works',
  ],
  [
    /(?:^|\| )(?:yes |yay |great )*(?:it is )?(?:all )?(?:fixed|solved|sorted|cured|works|connected)(?: now)?$/u,
    'works',
  ],
];

/** An installer's error code: it could not be done. */
const INSTALLER_CODE = /\b0x8[0-9a-f]{7}\b/iu;

/** Mended, with clauses parted by " | "; null where it asks back or tells a story. */
const lineOf = ({ sayings }: Vocabulary, text: string): string | null => {
  const { words, asks } = saidText(sayings.lexicon, text);
  if (asks === 'plainly' || words.length === 0 || words.length > LONGEST_WORDS) return null;
  let line = '';
  let clause = words[0]?.clause ?? 0;
  for (const word of words) {
    line += word.clause === clause ? ` ${word.word}` : ` | ${word.word}`;
    clause = word.clause;
  }
  return line.trim().replace(/\b(it|that)s\b/gu, '$1 is');
};

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

/** Words that say the trouble is over, wherever they are said. */
export const saysCured = (vocabulary: Vocabulary, text: string): boolean => {
  const line = lineOf(vocabulary, text);
  return line !== null && !UNSTEADY.test(line) && (isPlainCure(line) || doesRightly(line) === 'plain');
};

/** Words on what the mount does that may mean a cure, or a step on the way to it. */
export const mayBeCured = (vocabulary: Vocabulary, text: string): boolean => {
  const line = lineOf(vocabulary, text);
  return line !== null && !UNSTEADY.test(line) && doesRightly(line) === 'likely';
};

/** @returns null where the words do not say, ask back, or tell a story */
export const remedyOutcome = (vocabulary: Vocabulary, text: string): RemedyOutcome | null => {
  const spelt = lineOf(vocabulary, text);
  if (spelt === null) return null;
  if (INSTALLER_CODE.test(text)) return 'could-not';
  if (UNSTEADY.test(spelt)) return 'changed';
  if (isPlainCure(spelt)) return 'works';
  const doing = doesRightly(spelt);
  if (doing !== null) return doing === 'plain' ? 'works' : null;
  const said = SAYINGS.find(([pattern]) => pattern.test(spelt))?.[1] ?? null;
  if (said !== 'works') return said;
  if (NOT_YET.test(spelt)) return null;
  if (ASTRAY.test(spelt)) return 'changed';
  return SOMEWHERE.test(spelt) ? null : said;
};
