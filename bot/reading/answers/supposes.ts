/** What a member supposes the cause to be, asked of the helper: "could it be the wrong socket?", "should I check where the lead goes?" */
import type { Vocabulary } from '../vocabulary.js';
import { sentencesOf } from '../words/sentences.js';
import { OF_OTHERS } from './suspects.js';

const LONGEST = 160;
/** So like what tells of a check that its look is worth taking; nothing is taken as said. */
const LIKE_ENOUGH = 0.04;
/** And where the check is named as well. */
const LIKE_AND_NAMED = 0.005;
const MOST_NAMING = 5;
/** So few words name a thing, and say nothing of it yet. */
const FEW = 3;

/** What opens it, and what is left of it is said as if it were so. */
const FRAMES: readonly RegExp[] = [
  /\b(?:could|can|might|may|would|wouldn['’]?t|couldn['’]?t) (?:it|that|this|they|there)(?: (?:just|still|also|maybe|perhaps|possibly|not|all|simply|have|something))* (?:be|been|do with|to do with)(?: (?:because(?: of)?|due to|from|with|that))?\b/giu,
  /\b(?:is|was) (?:it|that|this)(?: (?:just|maybe|perhaps|possibly|possible|likely|all|something))*(?: (?:because(?: of)?|due to|that|to do with))?\b/giu,
  /\b(?:could|can|might|may) (?=(?:the|my|our|his|her|a|an|some|another|something)\b)/giu,
  /\b(?:is|are|was|has|does|do) (?=(?:the|my|our|his|her|a|an|some|another)\b)/giu,
  /\b(?:should|shall|could|can) (?:i|we) (?:check|look(?: at| for| where| whether| if)?|test|try|see|change|swap|worry about)(?: (?:whether|if|where|that|out|for))*\b/giu,
  /\b(?:what|how) about\b|\bdo you (?:think|suspect|reckon)(?: (?:it(?:['’]?s| is)|that|the))?\b/giu,
  /\b(?:i (?:wonder|was wondering|suspect|bet|start to think)|wondering)(?: (?:if|whether|that|it(?:['’]?s| is)))*\b/giu,
  /\bmaybe (?:it(?:['’]?s| is)|that(?:['’]?s| is))\b/giu,
];

const REST =
  /^[\s,;:.-]+|\b(?:perhaps|maybe|possibly|then|though|or something|or so|please|do you (?:think|reckon|suspect)|the (?:problem|cause|culprit|reason))\b|[?]+/giu;

const OPENS =
  /^(?:(?:and|but|so|or|ok|okay|hm+|oh|um|er|well|hang on|wait),? )*(?:could|can|might|may|would|wouldn|couldn|is|are|was|has|does|do|should|shall|what about|how about|i wonder|i was wondering|wondering|i suspect|i bet|i start to think|maybe (?:it|that)(?:['’]?s)?)\b/iu;

/** The words of the cause without what makes a question of them; null where nothing is supposed. */
export const supposition = (text: string): string | null => {
  const said = text.trim();
  if (said.length > LONGEST || OF_OTHERS.test(said)) return null;
  const sentences = said.split(/(?<=[.!?])\s+|,\s+(?=(?:could|might|may|is|can) (?:it|that|this)\b)/iu);
  const asked = sentences.findLast((sentence) => OPENS.test(sentence.trim()));
  if (asked === undefined) return null;
  const frame = FRAMES.find((one) => asked.search(one) >= 0);
  if (frame === undefined) return null;
  const rest = asked.trim().replace(frame, ' ').replace(REST, ' ').replace(/\s+/gu, ' ').trim();
  // "…a little icon of the GPS thing, could that be it?", "…check where it goes? There are two that look alike": said beside it, it is meant.
  const beside = sentences.filter((one) => one !== asked).map((one) => one.trim());
  const own = /^(?:it|that|this|the one|why|so)?$/iu.test(rest) ? [] : [rest];
  return [...beside, ...own].join('. ') || null;
};

/** Checks bear the name of what they look at: of two, the one that is named by a word of the cause. */
const isNamedIn = (check: string, words: ReadonlySet<string>): boolean =>
  check.split('-').some((part) => part.length > 2 && words.has(part));

/** The checks that look at what is supposed, those it names and then the likeliest first; none where nothing is, or nothing like it is known. */
export const supposedChecks = ({ likeness, sayings }: Vocabulary, cause: string): readonly string[] => {
  const learnt = likeness();
  if (learnt === null) return [];
  const ways = cause.split(' ').length > FEW ? [cause] : [cause, `${cause} is wrong`];
  // Of more words some are beside the matter.
  const named = new Set(cause.split(' ').length > MOST_NAMING ? [] : cause.toLowerCase().split(/[^a-z]+/u));
  return ways
    .flatMap((words) =>
      [...learnt.weighClauses(sentencesOf(sayings.lexicon, words)).likeliest(LIKE_AND_NAMED)].sort(
        (a, b) => b.probability - a.probability,
      ),
    )
    .filter(({ check, probability }) => probability >= LIKE_ENOUGH || isNamedIn(check, named))
    .map(({ check }) => check)
    .sort((a, b) => Number(isNamedIn(b, named)) - Number(isNamedIn(a, named)));
};

/** So like what tells of a check that it is meant, whatever else the words share with others. */
const MEANT = 0.3;

/** The checks that what is supposed is plainly like, likeliest first. */
export const meantChecks = ({ likeness, sayings }: Vocabulary, words: string): readonly string[] =>
  [...(likeness()?.weighClauses(sentencesOf(sayings.lexicon, words)).likeliest(MEANT) ?? [])]
    .sort((a, b) => b.probability - a.probability)
    .map(({ check }) => check);
