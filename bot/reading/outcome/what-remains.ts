/** Of words that tell of a trouble half gone: those on the half that is left. */

/** What stands behind these is left. */
const TURN = /(?:^|[\s,.;!])(?:but|except|only|however|though|although|yet)[\s,]+(?:that )?(?<rest>\S.*)$/isu;
const BREATHS = /[,.;!\n]+/u;
/** A breath that says so without them. */
const LEFT = /\b(?:still|remains?|is left|left over|stays|as (?:before|ever)|not (?:yet|quite))\b/iu;

/** @returns null where it is not said */
export const whatRemains = (text: string): string | null => {
  const rest = TURN.exec(text)?.groups?.['rest'];
  if (rest !== undefined) return rest.trim();
  const breaths = text.split(BREATHS).map((breath) => breath.trim());
  const left = breaths.findIndex((breath, at) => at > 0 && LEFT.test(breath));
  return left < 0 ? null : breaths.slice(left).join(', ').trim();
};
