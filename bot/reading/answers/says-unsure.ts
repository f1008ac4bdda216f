/** Words that say no more than that their writer cannot tell. */
import { onceOf } from '../../ground/once.js';

const BEFORE = '(?:(?:um+|er+|hm+|sorry|oh|well|honestly|no|ok|okay|i think)[,.]? )*';
const CANNOT_TELL = [
  "(?:i(?: a|['\u2019]?)m |im )?(?:really |still |just |honestly )*not (?:really |too |very |quite |so |at all |all that )*(?:sure|certain)",
  'unsure|uncertain',
  "(?:i )?(?:really |honestly |still )*(?:don['\u2019]?t|do not|dont) (?:really )?know",
  "(?:i )?(?:really |honestly |still )*(?:can['\u2019]?t|cannot|can not|cant|couldn['\u2019]?t|could not) (?:really )?(?:tell|say)",
  "(?:i |we )?(?:really |still |just )*(?:can['\u2019]?t|cannot|can not|cant|couldn['\u2019]?t|could not|couldnt)(?: (?:do|try|check|test|measure|look))?",
  'not possible|no way(?: to)?|impossible',
  "(?:i )?dunno|idk|(?:i(?:['\u2019]ve| have)? )?(?:no|not an?|haven['\u2019]?t an?|have no) (?:idea|clue)|(?:it(?:['\u2019]?s| is) )?hard to (?:tell|say)|who knows",
].join('|');
const AFTER =
  "(?:,? (?:about|on|what|how|where|which|whether|if|that|this|it|is|to|tell|see|check|look|find|them|those|means?|one|here|either|really|at all|now|tonight|so|sorry|tbh|to be honest|honestly|yet|i['\u2019]?m afraid|mate|though))*";

const UNSURE = new RegExp(`^${BEFORE}(?:${CANNOT_TELL})${AFTER}[ .!?\u2026]*$`, 'iu');
const LONGEST = 80;

const BEGINS_UNSURE = new RegExp(`^${BEFORE}(?:${CANNOT_TELL})${AFTER} *[.,;!\u2026]`, 'iu');

/** "Dunno, I see only black": that it cannot be told, and something beside it. */
export const beginsUnsure = (text: string): boolean => BEGINS_UNSURE.test(text.trim());

export const saysUnsure = (text: string): boolean => {
  const said = text.trim();
  return said.length <= LONGEST && UNSURE.test(said);
};

const HAS =
  "(?:there (?:is|are)(?: not|n['\u2019]?t)?|there['\u2019]?s|there (?:isnt|arent)|(?:it|this|that|mine|this one|that one|(?:the|my|this|that) \\w+|i|we) (?:can |really )?(?:has|have|had|got|has got|have got|see|saw|find|own)|(?:i |we |it |mine )?(?:do(?:es)?(?: not|n['\u2019]?t)|can(?: ?not|['\u2019]?t))(?: even| really)? (?:see|find|have|own|get)|see|got|found)";
const WHERE =
  '(?: (?:on|in|at|for|to|near|by|here|there|it|its|mine|this|that|them|one|thing|the|my|me|hand|adapter|cable|lead|plug|box|all|be|seen|see|anywhere|whatsoever|i|can|could|with|us|found|tonight))*';

const DENIES = /\b(?:no|not|none|without|zero|cannot)\b|n['\u2019]?t\b/u;

/** Written out once for the things of each question. */
const noneFormsOf = onceOf((things: readonly string[]): readonly RegExp[] => {
  const thing = `(?:other |second |spare |single |such |own |little )*(?:${things.join('|')})s?`;
  const end = `${WHERE}[ .!?\u2026]*$`;
  const before = `^${BEFORE}(?:but |and |sorry |hm |well )*`;
  return [
    new RegExp(`${before}${HAS} (?:none|one|any)${end}`, 'u'),
    new RegExp(
      `^${BEFORE}(?:it|mine|this|that|the \\w+) (?:came|comes|is|was) without (?:an? |any )?${thing}${end}`,
      'u',
    ),
    new RegExp(`${before}${HAS} (?:even )?(?:no|any|an?|another|not an?|not any)(?: one)? ${thing}${end}`, 'u'),
    // "I don't think it has a light", "mine hasn't got one".
    new RegExp(
      `${before}(?:i )?(?:do(?: not|n['\u2019]?t)) (?:think|believe|reckon|know) (?:that )?(?:it|there|mine|this|that|the \\w+) (?:even )?(?:has|have|had|is|are|got|comes with)(?: got)?(?: (?:an?|any|one|such an?))?(?: ${thing})?${end}`,
      'u',
    ),
    new RegExp(
      `${before}(?:it|this|that|mine|this one|that one|the \\w+) (?:has(?: not|n['\u2019]?t)|have(?: not|n['\u2019]?t)) (?:got )?(?:an?|any|one)(?: ${thing})?${end}`,
      'u',
    ),
    // In the English of many: "no have light".
    new RegExp(`${before}(?:no|not) (?:have|has|got|there|is|exist) ${thing}${end}`, 'u'),
    new RegExp(
      `${before}(?:no|without|not a|zero) ${thing} (?:on|at|to|here|there|in|that|anywhere|whatsoever)\\b${end}`,
      'u',
    ),
  ];
});

/** "There is no light on it", "i have no meter": the thing that the look needs is not there, or not seen; never that it stays dark. */
export const saysNone = (things: readonly string[], text: string): boolean => {
  const said = text.trim().toLowerCase();
  if (things.length === 0 || said.length > LONGEST || !DENIES.test(said)) return false;
  return noneFormsOf(things).some((form) => form.test(said));
};
