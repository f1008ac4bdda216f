/** A question asked in one breath with what came of a remedy: "tightened both, same. so is it the clutch or the gears?" */

const LEADS = '(?:(?:and|so|but|ok(?:ay)?|then|hm+|well|or),? )*';
const OPENS =
  '(?:is|isn|was|are|were|could|can|may|might|does|do|did|should|shall|would|will|what|which|how|why|where|who)';
/** Of a thing that is named, or of when, where and why: "is it well now" without a mark may be told as well. */
const OF_SOMETHING =
  "(?:(?:is|are|will|does|do) (?:jupiter|saturn|mars|venus|mercury|uranus|neptune|orion|andromeda|the (?:moon|sun|sky|weather|planets?|comet)|m ?\\d+|ngc ?\\d+)|(?:does|do|would|will|is) (?:it|that|this) (?:matter|hurt|harm|happen|always|worth|normal|usual|common)|what(?:['\u2019]?s| is| are) (?:up|the (?:best|moon|weather|time|next|ring|easiest|sky)|on|good|worth|visible)|when (?:does|do|is|will|are|can|should)|how (?:long|often|high|much|many|do|does|should|would|come)|why (?:is|was|did|does|do|are|were|would|should)|where (?:is|are|do|does|can|should)|which \\w+ (?:is|are|should|do|to))";
/** Behind an end of a breath; or without one behind "so". */
const APART = [
  new RegExp(`^(?<told>.*\\S)\\s*[.!,;\\u2026\\u2013\\n]+\\s*(?<asks>${LEADS}${OPENS}\\b[^.!?]*\\?+)\\s*$`, 'isu'),
  new RegExp(`^(?<told>.*\\S)\\s*[.!;\\u2026\\n]+\\s*(?<asks>${LEADS}${OPENS}\\b[^.!?]*\\bor\\b[^.!?]*)$`, 'isu'),
  new RegExp(
    `^(?<told>.*\\S)\\s+(?<asks>so (?:is|was|could|can|may|might) (?:it|that|this|the)\\b[^.!?]*\\??)\\s*$`,
    'isu',
  ),
  // Phones leave the question mark out.
  new RegExp(
    `^(?<told>.*\\S)\\s*[.!;\\u2026\\n]+\\s*(?<asks>${LEADS}(?:how|where|what) (?:do|can|should|would) (?:i|we)\\b[^.!?]*)$`,
    'isu',
  ),
  // … and ask of the sky, or of why it was so.
  new RegExp(
    `^(?<told>.*\\S)\\s*[.!;\\u2026\\n]+\\s*(?<asks>${LEADS}(?:btw,? |also,? |oh,? |by the way,? )*${OF_SOMETHING}\\b[^.!?]*)$`,
    'isu',
  ),
];
const LONGEST = 240;

export interface QuestionBeside {
  /** What is told ahead of it. */
  readonly told: string;
  readonly asks: string;
}

/** @returns null where the words ask nothing, or nothing but that */
export const questionBeside = (text: string): QuestionBeside | null => {
  const said = text.trim();
  if (said.length > LONGEST) return null;
  for (const pattern of APART) {
    const { told, asks } = pattern.exec(said)?.groups ?? {};
    if (told !== undefined && asks !== undefined) return { told, asks };
  }
  return null;
};

/** What is told, without what is asked behind it. */
export const toldIn = (text: string): string => questionBeside(text)?.told ?? text;

const EITHER =
  /\b(?:is|was|could|can|may|might|are|were)(?:n['\u2019]?t)? (?:it|that|this|they)?(?: be| just| more| rather| now)* ?(?:the |my |a |an )?(?<one>[^?]+?) or (?:is it |was it |rather |is |the |my |a |an )*(?<other>[^?]+?)(?: then| now| that| here)*\?*$/iu;

/** The two that are asked of: "the clutch", "the gears"; null where it is no such question. */
export const eitherAsked = (asks: string): readonly [string, string] | null => {
  const { one, other } = EITHER.exec(asks.trim())?.groups ?? {};
  return one === undefined || other === undefined ? null : [one.trim(), other.trim()];
};
