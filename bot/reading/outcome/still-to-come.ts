/** "Ordered a lead, it comes on Friday", "my mate brings his on sunday": what the remedy wants is on its way, and nothing of it is done. */

const WEEKDAY =
  '(?:mon|tues?|wed(?:nes)?|thu(?:r|rs)?|fri|satur|sun)day|(?:on |by |next )(?:mon|tue|tues|wed|weds|thu|thur|thurs|fri|sat)\\b|(?:thurs?|tues|weds)\\b';
const DAY = `(?:${WEEKDAY}|tomorrow|tmrw|tomoz|tomoro\\w*|next (?:week|month|weekend|time|meeting|club night)|(?:at |on |over |this )?(?:the )?weekend|(?:in )?(?:an?|one|two|three|four|five|six|a few|some|couple of|\\d+)(?:-\\d+| to \\d+)? (?:days?|weeks?|months?)(?! (?:ago|now|old|later|back))|later this week|end of (?:the )?week|soon)`;
const THING =
  '(?:one|it|them|some|another|an?|the|new|my|his|her|their|our|other|different|better|shorter|proper|spare|(?:usb|serial|power|data) ?)';
const LEND = '(?:brings?|bringing|lends?|lending|gives?|giving|posts?|sends?|sending|loans?|drops? (?:off|round))';
const WILL =
  "(?:will|i['\u2019]?ll|we['\u2019]?ll|he['\u2019]?ll|she['\u2019]?ll|have to|has to|need to|must|going to|gonna|shall|planning to|plan to|want to)";
const GET = '(?:order|buy|borrow|fetch|lend|bring|pick up|collect|get hold of|send for)';
const PATTERNS = [
  '(?<!\\b(?:in|out of|correct|right|wrong|reverse|alphabetical) )(?<!\\bi )\\b(?:pre-?)?(?:order+e?d|oderd|oredered|ordering)\\b(?! (?:by|alphabetically|them by))|\\bi (?:have )?(?:pre-?)?order+e?d\\b',
  '\\bon (?:back-? ?)?order\\b|\\b(?:in|on) (?:its|the|their) way\\b|\\bin the (?:post|mail)\\b|\\b(?:dispatched|shipped|being (?:sent|shipped|delivered))\\b|\\bback-?ordered\\b',
  '\\bwait(?:ing)? (?:for|on) (?:the |my |a |an |it |his )(?!mount|scope|telescope|star|program)[^.;!?]{0,40}\\b(?:to (?:come|arrive|turn up|get here)|delivery|parcel|post)\\b',
  "(?:\\bnot|n['\u2019]?t|\\byet to) (?:(?:here|there|come) yet|yet (?:here|there|come)|(?:yet )?(?:arrived?|delivered|turned up))\\b",
  `\\b(?:comes?|coming|arrives?|arriving|due|delivered|delivery|gets? here|turns? up|be here|here)(?: (?!up\\b|on\\b|off\\b)\\w+)? (?:on |in |by |with |is )?(?:${DAY}|the post\\b)`,
  `\\b${WILL} (?:\\w+ )?${GET} \\w`,
  `\\b(?:will|i['\u2019]?ll|we['\u2019]?ll|going to|gonna|getting|buying|borrowing|fetching|collecting|picking up)(?: get)? [^.;!?]{0,40}\\b${DAY}`,
  `\\b${LEND} (?:me |us )?${THING}[^.;!?]{0,30}\\b${DAY}`,
  `\\b(?:one|another|new \\w+|replacement)\\b[^.;!?]{0,30}\\b(?:coming|comes|on (?:its|the) way)\\b`,
];
const ON_ITS_WAY = new RegExp(PATTERNS.join('|'), 'iu');
/** "Not here yet" is no arrival, and what is "still in the post" no old trouble. */
const NOT_HERE =
  /(?:\bnot|n['\u2019]?t|\byet to) (?:yet )?(?:here|arrived?|come|delivered)\b|\bstill (?:in the post|on (?:its|the) way|to come|on order|waiting)\b/giu;
/** It has come. */
const IS_HERE =
  /\b(?:now|works?|working|talks|answers|connects|finds|moves|slews|fixed|solved|came|arrived|here already|meanwhile|same|still)\b|\?/iu;

export const isStillToCome = (text: string): boolean =>
  ON_ITS_WAY.test(text) && !IS_HERE.test(text.replace(NOT_HERE, ' '));
