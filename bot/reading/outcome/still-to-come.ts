/** "Ordered a lead, it comes on Friday": what the remedy wants is on its way, and nothing of it is done. */

const DAY =
  '(?:mon|tues|wednes|thurs|fri|satur|sun)day|tomorrow|next week|(?:a|two|three|four|five|some|\\d+) (?:days?|weeks?)|the post';
const ON_ITS_WAY = new RegExp(
  `\\b(?:ordered|ordering|on order|on (?:its|the) way|in the post)\\b|\\b(?:comes?|coming|arrives?|arriving|due|delivered|delivery|here)(?: \\w+)? (?:on |in |by |with )?(?:${DAY})\\b|\\b(?:will|have to|need to|must|going to|gonna) (?:order|buy|borrow) \\w`,
  'iu',
);
/** It has come. */
const IS_HERE =
  /\b(?:now|works?|working|talks|answers|connects|finds|moves|slews|fixed|solved|came|arrived|here already|meanwhile|same|still)\b|\?/iu;

export const isStillToCome = (text: string): boolean => ON_ITS_WAY.test(text) && !IS_HERE.test(text);
