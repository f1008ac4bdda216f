/** The thing that a member takes for the cause, in their words: "my suspicion is the electric fence", "could it be the VPN?" */
import { rememberLines } from '../lately.js';

const LONGEST = 160;

/** Asked of the doing and of the talk, and not what the cause may be. */
export const OF_OTHERS =
  /\b(?:you need|you want|safe|danger|how (?:do|can|long|many)|where (?:do|can) i (?:find|get|see)|help me|somebody|someone|a person|(?:first|second|third|next|last) (?:step|line|question))\b/iu;

const IT = '(?:it|that|this|they|all (?:this|that)|(?:the|my) (?:trouble|problem|fault|error|culprit|cause|reason))';
const SOFT =
  "(?:(?:just|still|also|maybe|perhaps|possibly|possible|not|n['’]?t|simply|really|all|likely|actually|rather|somehow)\\s+)*";
const OWNED =
  "(?:the|my|our|a|an|some|old|bad|this|his|her|their|something (?:in|with|from|on|of)|another|\\p{L}+['’]s?|neighbou?rs)\\b";
/** No thing: who does it, or a filler of the sentence. */
const NO_THING =
  '(?!(?:i|you|we|it|that|this|he|she|they|there|be|have|not|someone|somebody|anyone|nobody|nothing|one|so|all|what|why|how|which|who|where|when|me|us)\\b)';
const THING = `${NO_THING}[^.?!;]{2,60}?`;
const REST = '[^.?!;,]+';
const DOES_IT =
  '(?:(?:really|maybe|just|also|even|ever)\\s+)*(?:have (?:something|anything|a thing|to) (?:to )?do (?:with|here)\\b.*|be \\p{L}{3,}ing\\b.*|be (?:it|why|behind|guilty|responsible|(?:the |a )?(?:cause|reason|problem|culprit|trouble)|to blame|at fault|in the way)\\b.*|(?:cause|disturb|affect|provoke|trigger|spoil|block|interfere|jam|matter|produce)\\b.*|(?:grab|open|take|hold|steal|occupy|lock|use|eat|kill|stop|slow|drain|cut)\\b.*\\b(?:port|adapter|link|connection|it|mount|usb|signal|power|wi-?fi)\\b.*|(?:do|make|explain) (?:it|this|that|such|the|these|those|so)\\b.*)';
const GUILTY =
  '(?:(?:maybe|perhaps|really|just|simply)\\s+)*(?:(?:the |a |my )?(?:culprit|cause|reason|guilty one|troublemaker)|behind (?:it|this|that|all this)|to blame|guilty|responsible|at fault|(?:doing|causing|making|disturbing|blocking) (?:it|this|that|the)|the (?:problem|trouble))\\b';
const SAYS_SO = '(?:suspect|bet(?: on)?|blame|reckon|fear|guess|believe|think|assume|say|feel|would say)';
const WHO_ELSE =
  '(?:my|our|the|a) (?:husband|wife|friend|mate|son|daughter|dad|father|mum|mother|brother|sister|neighbou?r|colleague|partner|boyfriend|girlfriend|dealer|seller|electrician)';
const MAYBE = '(?:may ?be|perhaps|possibly|probably)';
const BEGINS = '(?:^|[.?!;,]\\s*)(?:(?:and|but|so|or|ok|okay|hm+|oh|um|er|well|now|then|hang on|wait|sorry),?\\s+)*';

const forms = (...sources: readonly string[]): readonly RegExp[] => sources.map((source) => new RegExp(source, 'iu'));

const NAMES_A_CAUSE: readonly RegExp[] = forms(
  // "I wonder whether the fence could be doing it", "do you think that the mast may disturb it", "is it likely that the adapter makes this".
  `\\b(?:wonder(?:ing)?(?: (?:if|whether))?|do you (?:think|suspect|reckon)|is it (?:likely|possible)|may it be|i (?:think|believe|guess|feel))(?: (?:that|if|whether))?\\s+(?<cause>${THING})\\s+(?:(?:could|can|might|may|would|will|does|did)\\s+(?:not |n['’]?t )?${DOES_IT}|(?:makes|causes|disturbs|does|blocks|interferes)\\b.*)$`,
  `${BEGINS}(?:could|can|might|may|would|will|does|do|did|has|have)(?:n['’]?t)? (?<cause>${THING}) ${DOES_IT}`,
  `${BEGINS}(?:is|are|was|were|could|might|may) (?<cause>${THING}) (?:be )?${GUILTY}`,
  `(?:^|[.?!;,]\\s*|\\b(?:that|whether|if|feeling|suspicion|hunch|idea|${MAYBE}|i (?:rather |really |do )*(?:think|believe|guess|suspect))\\s+)(?<cause>${THING}) (?:is|are|was|were|may be|might be|could be) ${GUILTY}`,
  `\\b(?:could|can|might|may|would|couldn['’]?t|wouldn['’]?t|can['’]?t) ${IT} ${SOFT}be ${SOFT}(?:because(?: of)?|due to|from|down to|caused by|(?:something )?to do with)?\\s*(?<cause>${REST})`,
  `\\b(?:could|can|might|may|would|does|do)(?:n['’]?t)? ${IT} ${SOFT}(?:come|comes|coming|stem|result|be coming) (?:from|of)\\s+(?<cause>${REST})`,
  `\\b(?:is|was|has|have|does|do) ${IT} ${SOFT}(?:because(?: of)?|due to|down to|caused by|(?:have )?(?:something |anything )?to do with)\\s+(?<cause>${REST})`,
  `\\b(?:isn['’]?t|wasn['’]?t) it ${SOFT}(?<cause>${OWNED}${REST})`,
  `${BEGINS}(?:is|are|was|were) (?<cause>(?:the|my|our|a|an|some)\\b[^.?!;,]{2,40}?) (?:wired|crossed|swapped|reversed|broken|damaged|loose|faulty|fake|dead|worn|too \\p{L}+|(?:the )?wrong\\p{L}*)\\b`,
  `${BEGINS}${MAYBE} (?:i|we)(?:['’]?ve)? (?:have|use|used|am using|took|chose|picked|plugged (?:it )?in(?:to)?|set|put|got|entered|typed)\\s+(?<cause>(?:the |a |an )?wrong ${REST})`,
  `\\b(?:is|isn['’]?t|wasn['’]?t) it ${SOFT}(?<cause>${OWNED}${REST})\\?\\s*$`,
  `\\bi (?:do |really |still |rather |start to |started to |would |'?d )*${SAYS_SO}(?: (?:that|on))*\\s+(?:${IT}|its|it['’]?s|that['’]?s)(?:['’]?s| is| comes| came)?(?: (?:from|because of|due to|down to|on|in|with))?\\s+(?<cause>${OWNED}${REST})`,
  `\\bi (?:do |really |still |rather |start to |started to )*(?:suspect|bet|blame|fear)(?: (?:that|on))*\\s+(?:it['’]?s |it is |its )?(?<cause>${NO_THING}${REST})`,
  `\\bi (?:do |really |still |rather )*(?:have|['’]?ve|got)(?: got)?(?: (?:a|the|an|this))? (?:strong |slight |bad )*(?:suspicion|feeling|hunch|idea|fear)(?: (?:that|of))?\\s+(?:it['’]?s|it is|its|it comes from|it has to do with|on)?\\s*(?<cause>${NO_THING}${REST})`,
  `\\b(?:my|our|the) (?:own |first |best |only |main )*(?:suspicion|suspect|guess|hunch|bet|theory|idea|money)(?: (?:is|are|was|would be|falls|goes|lies))(?: (?:on|to|with|that))*\\s+(?:it['’]?s |it is |its )?(?<cause>${REST})`,
  `${BEGINS}(?:${MAYBE},?\\s+)?suspect(?:ing|ed)?(?: (?:that|it['’]?s|it is|its|on))*\\s+(?<cause>${NO_THING}${REST})`,
  `\\b${WHO_ELSE} (?:thinks|says|suspects|reckons|believes|guesses|blames|bets|means)(?: (?:that|it['’]?s|it is|its|on|it comes from|it could be|it might be|it may be))*\\s+(?<cause>${OWNED}${REST})`,
  `\\b(?:i(?:['’]?m| am)|am|i)\\s+(?:just |also )*wonder(?:ing|ed)? about\\s+(?<cause>${REST})`,
  `\\b(?:wouldn['’]?t|would not) be surprised if\\s+(?:it['’]?s |it is |its |that is |that['’]?s )?(?<cause>${REST})`,
  `${BEGINS}what if\\s+(?:it['’]?s |it is |its )?(?<cause>${NO_THING}${REST})`,
  `${BEGINS}(?:what|how) about (?<cause>${OWNED}${REST})\\?`,
  `${BEGINS}it(?:['’]?s| is|s) (?<cause>${OWNED}[^.?!;,]+),? (?:isn['’]?t it|is it not|right|no|i (?:think|bet|guess|suspect|fear))\\b`,
  `${BEGINS}${MAYBE} (?:it['’]?s|it is|its|that['’]?s|it comes from)(?: (?:because of|due to))?\\s+(?<cause>${OWNED}${REST})`,
  `${BEGINS}${MAYBE} (?<cause>(?:the|my|our|some)\\b[^.?!;,]+)`,
  `${BEGINS}${MAYBE} (?<cause>${NO_THING}[^.?!;,]{3,40})\\?\\s*$`,
  `${BEGINS}(?<cause>${NO_THING}[^.?!;,]{3,30}?) ${MAYBE}\\?`,
  `${BEGINS}(?:might|could|may) be (?<cause>${OWNED}${REST})`,
  `\\b(?:could|might) (?<cause>${NO_THING}[^.?!;,]{3,30}?) be (?:too |so |not )?(?:\\p{L}+(?:ed|en|y)|off|wrong|loose|bad|worn|weak|old|low|missing|short|dirty|fake|full|long)\\b`,
  `\\b(?:could|can|might|may) (?<cause>(?:the|my|our|a|an|some)\\b[^.?!;,]+?) (?:matter|be (?:off|wrong|loose|bad|broken|dirty|worn))\\b`,
);

const TRAILING =
  /(?:[,\s]+(?:tbh|lol|haha|imho|imo|perhaps|maybe|possibly|though|then|or something|or so|please|do you think|you think|i think|i guess|by the way|btw|is it|isn['’]?t it|really|somehow|now|too|as well|(?:is|are|was|may be|might be|could be) (?:the )?(?:culprit|cause|reason|to blame|it|problem)))+\s*[.…]*\s*$/iu;
const LEADING = /^(?:(?:that|rather|maybe|perhaps|possibly|just|simply|only|on|in|with|from|of|by|because of)\s+)+/iu;

/** Names of standards carry figures. */
const NAMED_WITH_FIGURES =
  /\b(?:rs ?-?\d{3}|usb ?-?\d(?:\.\d)?|\d(?:\.\d)? ?v(?:olts?)?|windows ?\d+|\d+ ?-?bit|[a-z]+\d+[a-z]*)\b/giu;
/** Figures and places of the sky are no causes, nor is what is meant to be done. */
const NO_CAUSE =
  /\d|^(?:yes|no|not|nothing|ok|okay|fine|right|wrong|same|the same|it|later|tomorrow|true|better|worse|gone|fixed|you|i)\b|\b(?:first|second|third|last|left|right|other|same) (?:one|step|line|question|answer|option|choice)\b|\b(?:degrees?|minutes?|hours?|something|anything|more|else|done|fixed|possible)\s*$|(?<!\b(?:in|on|of|at|with|behind|under|near|for|to|from|inside) )\b(?:it|that|this)\s*$|\b(?:best|better|way|plan|next (?:time|step|week)|tomorrow|later|again|help)\b/iu;
const LEAST_OF_A_THING = /\p{L}{3,}/u;

const causeIn = (text: string): string | null => {
  const said = text.trim();
  if (said.length > LONGEST || OF_OTHERS.test(said)) return null;
  for (const frame of NAMES_A_CAUSE) {
    const found = frame.exec(said)?.groups?.['cause']?.trim().replace(TRAILING, '').replace(LEADING, '').trim();
    if (found === undefined || !LEAST_OF_A_THING.test(found)) continue;
    if (!NO_CAUSE.test(found.replace(NAMED_WITH_FIGURES, ' '))) return found;
  }
  return null;
};

/** @returns null where no cause is named outright */
export const suspectedCause = rememberLines(causeIn);

const BEHIND_A_THING =
  /\s(?:on|at|in|of|under|from|behind|beside|next|near|with|for|that|which|is|be|goes?|sitting|lying)\b.*$/iu;

/** "The mast on the hill" is a mast. */
export const thingOf = (cause: string): string => cause.replace(BEHIND_A_THING, '').trim();
