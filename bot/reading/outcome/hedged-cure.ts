/** "It's working now I think", "seems fixed": a cure told with a doubt. What it came from may be guessed at, and leaves the cure as it is. */

const DOUBTS = new RegExp(
  `\\b(?:${[
    'i (?:do )?(?:think|thought|guess|suppose|reckon|believe|assume|imagine|hope)|think(?= (?:it|that|its|thats)\\b)|guessing',
    'may ?be|perhaps|possibly|probably|presumably|apparently|prob(?:s|bly)',
    '(?:might|could|should|ought to)(?: now)? (?:be|have|work|do)|seem(?:s|ed)?|appears?|looks (?:like|as if|ok|good|fine)|(?:sort|kind) of|sorta|kinda|as far as i',
    "(?:not|n['\u2019]?t) (?:\\w+ )?(?:sure|certain|positive)|unsure|(?:fairly|pretty|almost) (?:sure|certain)|touch wood|fingers crossed|hopefully",
  ].join('|')})\\b`,
  'iu',
);
const OF_THE_CAUSE =
  /\b(?:was|were|had|has been|have been|must have|because|cos|caused?|due to|did (?:it|that)|why|what|which|who)\b|\b(?:where|as|what) (?:it|they) should\b/iu;
/** Where one breath of it ends. */
const BREATHS = /[.,;!\u2026]+|\b(?:and|but|so|since|after)\b/iu;

/** @returns whether the cure itself, and not what it came from, is told with a doubt */
export const hedgesCure = (text: string): boolean =>
  text.split(BREATHS).some((breath) => DOUBTS.test(breath) && !OF_THE_CAUSE.test(breath));
