/**
 * What a member says of the talk itself rather than of the mount: that it was not understood, was asked before, was the wrong log, has to
 * wait. Pure; every clause has to say so or nothing, so that "wait, it works now" is none.
 */
import type { Vocabulary } from '../vocabulary.js';
import { sentencesOf } from '../words/sentences.js';

export const TALK_KINDS = [
  'takes-back',
  'later',
  'lost',
  'repeat',
  'so-far',
  'misread',
  'why',
  'asked-before',
  'how-long',
  'idle',
] as const;
export type OfTheTalk = (typeof TALK_KINDS)[number];

const LONGEST = 140;
/** The check under which the examples hold these kinds; no walk asks it. */
const TALK = 'talk';
const LIKELY = 0.6;
/** So likely beside it, something is told of the mount. */
const BESIDE = 0.3;

const whole = (...forms: readonly string[]): RegExp => new RegExp(`^(?:${forms.join('|')})$`, 'u');

const I = "(?:i|we)(?:'?ve|'?m|'?ll|'?d| have| am| will| would| had)?";
const MESSAGE =
  '(?:message|msg|line|post|answer|reply|bit|part|sentence|paste|text|thing|one|log|screenshot|picture|photo|file|mount|scope|telescope|laptop|computer|pc|walk|thread|window|button|number)';
const LAST = '(?:(?:the|my|that|this|what|a) )?(?:last|latest|previous|earlier|other|first|second|wrong)?';
const DAY =
  "(?:now|later|soon|tomorrow|tonight|today|then|yet|next (?:week|time|weekend|clear night|session)|in the morning|in an hour|in a bit|in a while|at the weekend|(?:on |this )?(?:mon|tues|wednes|thurs|fri|satur|sun)day|when (?:i am|i'm|im|we are|it is|it's|its|i get|i have|i can|the|there is|there's)[^|]{0,40}|after (?:dinner|tea|work|lunch|this|that|the)[^|]{0,20}|first)";
const QUESTION =
  '(?:question|step|instruction|sentence|bit|part|word|that|this|it|thing|one|what you (?:mean|said|want|ask))s?';
const WELL = '(?:really|quite|at all|just|still|even|properly|totally|completely)';

const KINDS: readonly (readonly [OfTheTalk, RegExp])[] = [
  [
    'takes-back',
    whole(
      `(?:please )?(?:ignore|disregard|delete|scrap|strike|cancel|undo|forget|drop|skip) (?:(?:about|all|of) )*(?:that|this|it|me|${LAST} ?${MESSAGE}?|what i (?:just )?(?:said|wrote|typed|told you|posted|sent|pasted)|everything i (?:said|wrote))(?: (?:i|we) (?:just )?(?:sent|wrote|said|typed|posted|pasted))?(?: (?:above|before|again))?`,
      `(?:(?:that|this|it) (?:was|is|were)|that's|thats|i (?:posted|sent|pasted|pressed|gave you|typed|meant|picked|was (?:on|in|at)))? ?(?:(?:in|to|from|for|of|with|at) )?(?:the |a )?(?:wrong ${MESSAGE}|(?:someone|somebody) else'?s ${MESSAGE}|(?:for|from) (?:my|the|an)? ?other ${MESSAGE}|not (?:for|meant for) (?:here|you|this ${MESSAGE}))`,
      'undo|take (?:that|it) back|i take (?:that|it) back|never ?mind (?:that|what i said)|not that',
    ),
  ],
  [
    'later',
    whole(
      `(?:${I} )?(?:not|haven'?t|havent|have not|hasn'?t) (?:${WELL} )?(?:done|tried|looked|checked|been (?:out|there|able)|got (?:to|round to|around to)|had (?:time|a chance|the chance|a go))(?: (?:it|that|this|so|for it|at it|to (?:look|try|check|do (?:it|that))))*(?: (?:yet|so far|till now|${DAY}))?`,
      `(?:(?:i|we)(?:'?ll| will| shall|'?m going to| am going to| gonna)|will|let me) (?:${WELL} )?(?:have to |need to |try to )?(?:try|do|look|check|test|see|go|get back(?: to you)?|report(?: back)?|come back|let you know|answer)(?: (?:it|that|this|so|you|at it|and see|to (?:it|that|you)))*(?: ${DAY})+`,
      `(?:will|gonna|going to|shall)? ?(?:try|do|look|check|test)(?: (?:it|that|this))? (?:tomorrow|later|tonight|at the weekend|in the morning|next (?:time|week))`,
      `(?:${I} )?(?:can'?t|cannot|cant|not able to|unable to) (?:${WELL} )?(?:do|try|look|check|test|go|get (?:out|there|to it))(?: (?:it|that|this|so|at it|out|there))*(?: ${DAY})+`,
      `not (?:now|tonight|today|at home|at the (?:scope|mount|telescope)|near (?:it|the (?:scope|mount)))(?: ${DAY})?|(?:${I} )?(?:not|away from) (?:at |near |with )?(?:the |my )?(?:scope|mount|telescope|computer|laptop)(?: ${DAY})?`,
      `(?:it'?s|it is|its) (?:now )?(?:raining|pouring|snowing|cloudy|too (?:late|cold|dark|wet|windy)|past midnight|bed ?time|freezing)(?: ${DAY}| here| outside)*`,
    ),
  ],
  [
    'lost',
    whole(
      `(?:sorry )?(?:${I} )?(?:(?:do not|don'?t|dont|did not|didn'?t|didnt|can'?t|cannot|cant) (?:${WELL} )?(?:understand|get|follow|know what (?:you mean|that means|this means|that is|you want|to do))|not (?:following|understanding|getting)|no idea what (?:you mean|that means|you want|to do))(?: (?:the|your|a|any|of|what)? ?${QUESTION})*(?: at all| sorry)*`,
      `(?:${I} )?(?:${WELL} )?(?:lost|confused|stuck|puzzled)(?: (?:here|now|again))*`,
      `(?:(?:it|this|that)(?:'?s| is| was)|that'?s|all)? ?(?:too|very|so|a bit) (?:complicated|hard|difficult|technical|much)(?: (?:for (?:me|us)|to (?:follow|understand)))*`,
      `(?:what|how) (?:do|did|does|on earth do) (?:you|it|that|this) mean(?: (?:by that|with that|there))?|what(?:'s| is| does) (?:that|this)(?: mean)?|meaning|pardon|huh|eh|what|come again`,
      `(?:can|could|would) you (?:please )?(?:say|put|explain|word|tell(?: me)?)(?: (?:it|that|this))?(?: (?:to me|again|simpler|more simply|in (?:plain|simple|other|easy|normal) (?:words|english|terms|language)|differently|please))*|(?:please )?explain(?: (?:it|that|this|again|please|to me))*|(?:in )?(?:plain|simple) (?:english|words)|simpler|easier words`,
      `(?:slow(?:er)?|slow down|slowly|not so fast|too fast|easy|one (?:thing|step|question) at a time|step by step)`,
    ),
  ],
  [
    'repeat',
    whole(
      `where (?:were|was|are) (?:we|i)(?: (?:now|again|before|at))?|what (?:was|is|were)(?: it| that)? ?(?:the|your|my|that)? ?(?:last |next |current )?(?:question|step|task)(?: again| please)*|(?:can|could|would|will) you (?:please )?(?:repeat|ask|show|say)(?: (?:me|it|that|the|your|last|this|question|step|again|once more))+|(?:say|ask|show)(?: me)? (?:it|that|the (?:last )?(?:question|step))? ?(?:again|once more)|repeat(?: (?:it|that|the|your|last|question|step|please))*|what (?:did|do) you (?:ask|want)(?: me)?(?: (?:to do|from me|again|now))*|what (?:now|next|do i do (?:now|next)|should i do (?:now|next)|am i to do)|and now|now what`,
    ),
  ],
  [
    'so-far',
    whole(
      `what (?:do|did|have) you (?:got|know|have|read|understood|understand|learnt?|noted|take|took|taken|think)(?: (?:so far|till now|already|now|from (?:that|me)|of (?:that|it|me)|about (?:it|my mount)|it (?:is|was)))+|what have we (?:got|done|tried)(?: so far)?|(?:show|give|tell) me what (?:you|we) (?:know|have|read|understood|got)(?: so far)?|(?:sum(?: it)? up|recap|overview|status)(?: please| so far)*`,
    ),
  ],
  [
    'misread',
    whole(
      `(?:no |but )*(?:that'?s|thats|that is|that was|this is) not what (?:i|we) (?:said|meant|wrote|asked|typed|told you)|(?:${I} )?(?:never|did not|didn'?t|didnt) (?:say|said|mean|meant|write|wrote)(?: (?:that|this|so|anything like that))+|(?:you|u)(?:'?ve| have)? (?:${WELL} )?(?:misunderstood|misunderstand|misread|got (?:it|that|me) (?:all )?wrong|(?:are|'?re) (?:wrong|mistaken)|read (?:it|that|me) (?:all )?wrong(?:ly)?)(?: (?:me|that|it|something|there))*|(?:no )?(?:that'?s|thats|that is|this is|it'?s|its) (?:all |completely |totally |just )?(?:wrong|not right|not true|incorrect|nonsense|rubbish)|wrong`,
    ),
  ],
  [
    'why',
    whole(
      `(?:and |but )?why(?: (?:do|did|are|would|should) (?:you|i|we) (?:ask(?:ing)?|want|need|think|say)(?: (?:that|this|me|so|it|to know|all (?:that|this)))*| (?:that|this|is that|does (?:that|it) matter))?|(?:are|r) you (?:really )?sure(?: about that)?|(?:what|how) (?:does|has) (?:that|this|it) (?:have|got)? ?(?:to do with (?:it|that|this|anything|the mount|my (?:mount|problem))|matter|help)|how do you know(?: that)?|what makes you (?:say|think) (?:so|that)`,
    ),
  ],
  [
    'asked-before',
    whole(
      `(?:you|u)(?:'?ve| have)? (?:already |just |still )*(?:asked|said|told|had)(?: (?:me|us|that|this|it|for that))+(?: (?:already|before|twice|once|again))*|(?:but )?(?:${I} )?(?:already |just )*(?:told|said|answered|wrote|mentioned|gave)(?: (?:you|it|this|so|to you))*(?: that)?(?: (?:already|before|above|twice|earlier|once|just now))+|(?:but )?(?:${I} )?(?:already|just) (?:told|said|answered|wrote|mentioned)(?: (?:you|it|this|that|so))*|(?:same|that) question (?:again|as before)|(?:the )?same question(?: again)?|again the same|not again|as (?:i|we) (?:said|told you|wrote)(?: (?:already|before|above))?|see above`,
    ),
  ],
  [
    'how-long',
    whole(
      `how (?:many|much)(?: more)? (?:questions?|steps?|longer|time)(?: (?:more|are there|is there|left|to go|still|will (?:it|this) take|do you have|does (?:it|this) take|are left))*|how (?:much longer|long)(?: (?:will|does|is) (?:it|this|that)(?: (?:take|last|going to take|go on))?)?|(?:is|will) (?:this|it) (?:going to )?(?:take|be|last)(?: (?:very|much|too))* (?:long|longer)|(?:are we )?(?:nearly )?there yet`,
    ),
  ],
];

const FILLER =
  /^(?:ok|okay|right|well|so|anyway|oh|ah|um|hm+|er|no|sorry|my (?:bad|mistake|fault|apologies)|apologies|oops|ups|whoops|please|pls|thanks|thank you|mate|wait|hang on|hold on)$/u;
const LEADING = /^(?:(?:ok|okay|right|well|so|anyway|oh|ah|um|and|but|then|please|sorry|oops|no|wait|hm+|er) )+(?=\S)/u;
const TRAILING = /(?: (?:please|pls|sorry|thanks|mate|again|now|here))+$/u;

/** By the forms that say so plainly; null where anything else is said beside it. */
const plainly = (text: string): OfTheTalk | null => {
  const clauses = text
    .toLowerCase()
    .replace(/[’‘`]/gu, "'")
    .split(/[,.;:!?…]+|\s[-–—]+\s/u)
    .map((clause) => clause.replace(/\s+/gu, ' ').trim())
    .filter((clause) => clause !== '' && !FILLER.test(clause));
  let kind: OfTheTalk | null = null;
  for (const clause of clauses) {
    const bare = clause.replace(LEADING, '');
    const forms = [clause, bare, bare.replace(TRAILING, '')];
    const own = KINDS.find(([, form]) => forms.some((words) => form.test(words)))?.[0];
    if (own === undefined) return null;
    kind ??= own;
  }
  return kind;
};

/** By what members' lines of that kind are like: likelier than not, and nothing of the mount beside it. */
const byLikeness = ({ likeness, sayings }: Vocabulary, text: string): OfTheTalk | null => {
  const likely = likeness()?.weighClauses(sentencesOf(sayings.lexicon, text), true).likeliest(BESIDE) ?? [];
  const talk = likely.find(({ check, probability }) => check === TALK && probability >= LIKELY);
  if (talk === undefined || likely.some(({ check }) => check !== TALK)) return null;
  return TALK_KINDS.find((kind) => kind === talk.answer) ?? null;
};

/** @returns null where the words are, or may be, of the mount */
export const ofTheTalk = (vocabulary: Vocabulary, text: string): OfTheTalk | null =>
  text.length > LONGEST || text.trim().includes('\n') ? null : (plainly(text) ?? byLikeness(vocabulary, text));
