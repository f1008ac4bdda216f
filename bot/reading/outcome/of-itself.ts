/** "It came back by itself", "works now, no idea why": whatever cured it, it was nothing that the member did. */

const NOTHING_DONE = [
  'by itself|on its own|of its own accord|out of (?:nowhere|the blue)|as if by magic',
  "(?:i |we )?(?:did ?n['\u2019]?t|did not|have ?n['\u2019]?t|have not) (?:do|done|touch|touched|change|changed) (?:anything|nothing)",
  // Without its "I" it is the remedy that did not do a thing.
  "(?:i|we) (?:did ?n['\u2019]?t|did not|have ?n['\u2019]?t|have not) (?:do|done|touch|touched|change|changed) a thing",
  '(?:i |we )(?:have )?(?:did|done|changed|touched) nothing|without (?:me |us )?(?:doing|touching|changing) (?:a thing|anything)',
].join('|');
const NO_IDEA = [
  "(?:(?:i|we) )?(?:have |got )?(?:no (?:idea|clue)|do ?n['\u2019]?t know|do not know|dunno|dont no|not sure|who knows|wonder|god knows) (?:why|what|how|which)(?: (?:it|that|was|is|did|fixed|happened|changed))*",
  '(?:dunno|no idea|who knows|god knows|beats me|search me|mystery)(?= *(?:[.,;!]|$))|for no (?:apparent )?reason',
].join('|');
const BY_NOBODY = new RegExp(`\\b(?:${NOTHING_DONE})\\b`, 'iu');
const UNEXPLAINED = new RegExp(
  `\\b(?:${NO_IDEA}|sudden(?:ly)?|strange(?:ly)?|weird(?:ly)?|funn(?:y|ily)|oddly)\\b`,
  'iu',
);
const ASIDE = new RegExp(`[,;.!-]?\\s*\\b(?:${NOTHING_DONE}|${NO_IDEA})(?![\\p{L}\\d])`, 'giu');

/** "Why did it change on its own": asked of what went wrong. */
const ASKS_WHY = /\b(?:why|how come)\b[^.;!?]*/giu;

/** Nothing was done for it. */
export const curedOfItself = (text: string): boolean => BY_NOBODY.test(text.replace(ASKS_WHY, ' '));

/** What was done for it the member cannot tell. */
export const curedUnexplained = (text: string): boolean => UNEXPLAINED.test(text);

/** The words on the cure alone; all of them where they are nothing else. */
export const withoutOfItself = (text: string): string => {
  const rest = text.replace(ASIDE, ' ');
  return /\p{L}/u.test(rest) ? rest : text;
};
