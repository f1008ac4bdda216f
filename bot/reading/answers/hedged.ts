/** Whether a member is not sure of what is said: "5 V i think", "should be", "not sure". */

const HEDGES = new RegExp(
  `\\b(?:${[
    "i (?:think|thought|guess|suppose|reckon|believe|assume|hope|imagine|suspect)|i(?: a|['\u2019])?m guessing|guess(?:ing)?",
    'may ?be|perhaps|possibly|probably|presumably|apparently|supposedly|allegedly|most likely|likely|prob(?:s|bly)?',
    'might|could be|should(?: be| say|ve| have)?|must be|ought to|supposed to|seems?|looks like|sort of|kind of',
    "(?:not|n['\u2019]?t|hardly) (?:\\w+ )?(?:sure|certain|positive|know|remember)|unsure|dunno|no idea|afaik|iirc|idk",
    'as far as i|if i (?:remember|recall)|from memory|or so|or something',
  ].join('|')})\\b|\\?`,
  'iu',
);

export const isHedged = (text: string): boolean => HEDGES.test(text);
