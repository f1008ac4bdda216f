/**
 * Whether words at a remedy that sound like a cure, or are much like one, are plain enough to be taken for it: a word of a cure stands in
 * them, and none of doubt, of trouble, of another time or of a part alone. The others are asked back.
 */
import { hasWordOfCure, tellsAstray } from './no-word-of-cure.js';
import { isSpoiled } from './sounds-cured.js';
import { wordKindsOf } from './word-kinds.js';

/** Of such lines 19 in 20 tell a cure (test/reading/corpus/outcomes, none of which was fitted on). */
const LIKE_ENOUGH = 0.65;
/** Asked. */
const ASKS = /\?|^\W*(?:is|does|did|was|are|can|could|would|should|do|has|have) /iu;
/** Thanks alone tell of no cure. */
const OF_MORE_THAN_JOY: ReadonlySet<string> = new Set(['does', 'cured', 'up', 'stays', 'now', 'target', 'middle']);
const tellsMore = (text: string): boolean =>
  text
    .toLowerCase()
    .replace(/['\u2019]/gu, '')
    .split(/[^\p{L}\d]+/u)
    .some((word) => wordKindsOf(word).some((kind) => OF_MORE_THAN_JOY.has(kind)));

/** Soft doubts, days to come, the good half of a tale, hearsay, a place that the tube goes to, one axis, a setting and no more. */
const LEAVES_OPEN =
  /\b(?:ask(?:s|ing)|demo|simulat\w*|bad|worse|as ever|as before|longer|less|slower|fewer|better|just the|at first|in theory|supposed\w*|once(?! more)|unfortunately|sadly|alas|had to|success|round and round|on and on|think|guess|seems?|looks like|so far|for now|(?:mon|tues|wednes|thurs|fri|satur|sun)days?|next (?:week|time|night)|soon|later|tomorrow|north|south|east|west|dec|ra|axis|azimuth|altitude|said|says(?! (?:connected|online|it (?:is |has )?connected))|told|friends?|mates?)\b|\b(?:i|we) (?:can |do )?(?:now )?see (?:it|that|them|this|now|where|what|which|the (?:one|socket|port|plug|screw|switch|mistake))\b|\bfixed (?:the|it|my) [^,.;]*\b(?:to|on|onto|in)\b|\b(?:is|are|its|they['\u2019]?re) (?:now )?(?:set|correct|right|entered|typed|installed|tight|done|[a-z]|\d+)(?: now)?$|\b(?:done|finished|complete[d]?|successful(?:ly)?)\W*$/iu;

/** "Going to Arcturus now": it is on its way, and nobody knows yet where it ends. */
const ON_ITS_WAY =
  /(?:^|[.,;!\u2026] ?|\b(?:and|so) )(?:ok(?:ay)? |now |am |i am |i['\u2019]?m )*(?:slewing|going|moving|connecting|heading|sending it|pointing|aligning)\b(?! (?:fine|well|great|perfect\w*|nicely|smooth\w*|again|like|as it|all the way|at full))/iu;

/** @param said how likely a cure is, from 0 to 1, and how it is told */
export const isCureTaken = (
  said: { readonly what: string; readonly how: 'outright' | 'sounds' | 'like'; readonly cure: number },
  text: string,
): boolean => {
  if (said.what !== 'cured') return false;
  if (said.how === 'outright') return true;
  if (ASKS.test(text) || LEAVES_OPEN.test(text.trim()) || ON_ITS_WAY.test(text.trim())) return false;
  if (tellsAstray(text) || !hasWordOfCure(text) || !tellsMore(text)) return false;
  return said.how === 'sounds' || (said.cure >= LIKE_ENOUGH && !isSpoiled(text));
};
