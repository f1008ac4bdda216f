/** A question asked in one breath with what came of a remedy: "tightened both, same. so is it the clutch or the gears?" */

const LEADS = '(?:(?:and|so|but|ok(?:ay)?|then|hm+|well|or),? )*';
const OPENS =
  '(?:is|isn|was|are|were|could|can|may|might|does|do|did|should|shall|would|will|what|which|how|why|where|who)';
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

const EITHER =
  /\b(?:is|was|could|can|may|might|are|were)(?:n['\u2019]?t)? (?:it|that|this|they)?(?: be| just| more| rather| now)* ?(?:the |my |a |an )?(?<one>[^?]+?) or (?:is it |was it |rather |is |the |my |a |an )*(?<other>[^?]+?)(?: then| now| that| here)*\?*$/iu;

/** The two that are asked of: "the clutch", "the gears"; null where it is no such question. */
export const eitherAsked = (asks: string): readonly [string, string] | null => {
  const { one, other } = EITHER.exec(asks.trim())?.groups ?? {};
  return one === undefined || other === undefined ? null : [one.trim(), other.trim()];
};
