/** Words that say no more than that their writer cannot tell. */

const BEFORE = '(?:(?:um+|er+|hm+|sorry|oh|well|honestly|no|ok|okay|i think)[,.]? )*';
const CANNOT_TELL = [
  "(?:i(?: a|['\u2019]?)m |im )?(?:really |still |just |honestly )*not (?:really |too |very |quite |so |at all |all that )*(?:sure|certain)",
  'unsure|uncertain',
  "(?:i )?(?:really |honestly |still )*(?:don['\u2019]?t|do not|dont) (?:really )?know",
  "(?:i )?(?:really |honestly |still )*(?:can['\u2019]?t|cannot|can not|cant|couldn['\u2019]?t|could not) (?:really )?(?:tell|say)",
  "(?:i )?dunno|idk|(?:i(?:['\u2019]ve| have)? )?(?:no|not an?|haven['\u2019]?t an?|have no) (?:idea|clue)|(?:it(?:['\u2019]?s| is) )?hard to (?:tell|say)|who knows",
].join('|');
const AFTER =
  "(?:,? (?:about|on|what|how|where|which|whether|if|that|this|it|is|to|tell|see|check|look|find|them|those|means?|one|here|either|really|at all|sorry|tbh|to be honest|honestly|yet|i['\u2019]?m afraid|mate|though))*";

const UNSURE = new RegExp(`^${BEFORE}(?:${CANNOT_TELL})${AFTER}[ .!?\u2026]*$`, 'iu');
const LONGEST = 80;

export const saysUnsure = (text: string): boolean => {
  const said = text.trim();
  return said.length <= LONGEST && UNSURE.test(said);
};
