/** Whether a whole line asks how, where or with what the step in hand is done: "where is this limit?", "what I must do now?" */

const LONGEST = 100;

const LEAD =
  '(?:(?:ok|okay|but|and|so|sorry|um|er|hm+|please|pls|yes|no|well|then|now|right|hi|thanks|could you|can you|would you|i ask)[, ]+)*';
const WE = '(?:i|we|you|one|u)';
const MODAL = '(?:do|does|can|could|should|shall|must|would|will|have|need|am|are|to)';
const DOES =
  '(?:do|make|get|go|find|reach|see|look|set|change|open|click|press|type|choose|pick|select|enter|put|write|try|begin|start|switch|turn|tap)';
const TAIL = '(?: (?:please|pls|then|now|exactly|here|there|in|on|at|it|that|this|first|next))*[ ?!.]*$';
const ONE = '(?:first|second|third|fourth|last|next)';

const OF_THE_SKY =
  /\b(?:tonight|evening|tomorrow|sky|moon|planets?|stars?|galax\w+|nebula\w*|clusters?|comets?|sun)\b/iu;

export type AsksOfStep = 'how' | 'where';

const WHERE: readonly RegExp[] = [
  new RegExp(`^${LEAD}(?:where|whre|wher|were) (?:exactly|(?:is|are|was|would|${MODAL})\\b.{0,60})${TAIL}`, 'iu'),
  new RegExp(`^${LEAD}(?:where|wher)${TAIL}`, 'iu'),
  new RegExp(
    `^${LEAD}(?:in |on |at |under )?(?:which|what) (?:menu|button|setting|settings|option|tab|page|window|key|field|program|driver|list|screen|icon)\\b.{0,40}$`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}(?:i )?(?:can(?:not|['’]?t| not)|do(?:n['’]?t| not)|dont) (?:find|see) (?:it|that|this|them)\\b.{0,12}\\b(?:where|how|which)\\b.{0,30}$`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}(?:i(?:['’]?m| am)? )?(?:do(?:n['’]?t| not) (?:know|see)|dont (?:know|see)|not (?:know|see)|(?:really |quite )?not (?:really |quite )?sure|no idea|dunno)[ ,]+where\\b.{0,40}$`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}(?:what(?:['’]?s| is) the way|how do ${WE} get|how to get|how can ${WE} get) (?:to|there|into)\\b.{0,40}$`,
    'iu',
  ),
];

const HOW: readonly RegExp[] = [
  new RegExp(
    `^${LEAD}how(?: ${MODAL})?(?: ${WE})?(?: (?:do|make|go about|start|begin))?(?: (?:it|that|this|so|these))?${TAIL}`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}what (?:${MODAL} )?${WE} (?:(?:must|should|shall|can|could|supposed|meant|want me|have|need|to|exactly) )*${DOES}\\b.{0,40}$`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}what (?:(?:is|are|comes|to do|shall|now|next|then|do i do)\\b *)*(?:now|next|then|to do|do i do|to do now)${TAIL}`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}(?:explain|show|tell|describe|walk)(?: (?:me|us))?(?: (?:how|what|that|this|it|again|more|in detail|step by step|through (?:it|that|this)|(?:the )?${ONE} (?:step|line|point|part)|the steps?|step \\w+|line \\w+|to|do|i|must|shall|should|can|exactly|slowly|please))*[ ?!.]*$`,
    'iu',
  ),
  new RegExp(
    `^${LEAD}(?:i )?(?:do(?:n['’]?t| not)|dont|not|no idea|dunno)(?: (?:know|understand|get|see))? (?:how|what (?:to|i|we|you))\\b.{0,40}$`,
    'iu',
  ),
  new RegExp(`^${LEAD}(?:step by step|the steps|which steps)${TAIL}`, 'iu'),
  new RegExp(`^${LEAD}what (?:about|is|was) (?:the )?${ONE} (?:step|line|point|part)\\b.{0,20}$`, 'iu'),
];

/** "Where are they? all the same, I believe": what stands behind the question answers. */
const ANSWERS_ITSELF =
  /\?\s*(?:oh |ah |ok |well |but |and )*(?:all|both|they|everything|none|nothing|each)\b(?!.*\?)/iu;

export const answersItself = (text: string): boolean => ANSWERS_ITSELF.test(text);

/** @returns null where the line asks something else, or tells anything besides */
export const asksOfTheStep = (text: string): AsksOfStep | null => {
  const said = text.trim();
  if (said.length > LONGEST || said.includes('\n') || OF_THE_SKY.test(said)) return null;
  if (answersItself(said)) return null;
  if (WHERE.some((form) => form.test(said))) return 'where';
  return HOW.some((form) => form.test(said)) ? 'how' : null;
};

const ORDINALS: readonly RegExp[] = [
  /\bfirst\b|\bstep (?:1|one|a)\b/iu,
  /\bsecond\b|\bstep (?:2|two|b)\b/iu,
  /\bthird\b|\bstep (?:3|three|c)\b/iu,
];

/** Which line of the step is asked for, from 0; null where none is named. */
export const lineAsked = (text: string): number | null => {
  const at = ORDINALS.findIndex((form) => form.test(text));
  return at < 0 ? null : at;
};

const NAMES_NOTHING = new RegExp(
  `\\b(?:${MODAL}|${WE}|${DOES}|how|where|what|which|it|that|this|there|so|these|them|now|please|exactly|get|to|the|me)\\b|[^\\p{L}]`,
  'giu',
);

/** "How do I stop the phone going back" names what it asks after. */
export const namesWhatItAsks = (text: string): boolean => text.replace(NAMES_NOTHING, '') !== '';
