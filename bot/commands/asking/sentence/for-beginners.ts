/** A list that is asked for children, or by who has never looked before: few things, bright and early. Pure. */
import type { Asked, Reading } from './asked.js';

const FOR_CHILDREN =
  /\b(?:kids?|child(?:ren)?|toddlers?|little (?:one|girl|boy)s?|(?:my|our|the) (?:son|daughter|grand ?\w+|nephews?|nieces?|boys?|girls?)s?|scouts?|cubs|brownies|guides|school|class|pupils|year[- ]?olds?|yr[- ]?olds?|(?:aged?|is) (?:[4-9]|1[0-2])\b(?! ?(?:inch|mm|cm))|famil(?:y|ies)|beginners?|newbies?|newcomers?|first[- ]tim\w+|first time|never (?:used|looked|had|done|seen)|new to (?:this|astronomy)|just starting|outreach|star party|open (?:evening|night|day)|(?:easy|simple) (?:things?|targets?|objects?|ones?|stuff)|(?:easiest|simple) (?:things?|targets?|objects?)|(?:anything|something|things|stuff) (?:\\w+ ){0,2}?(?:easy|simple))\b/u;

/** Of the list of an evening alone, and only where it was not narrowed already. */
export const withEasy = (read: Reading, { plain, kind }: Asked): Reading =>
  /^tonight\b/u.test(read.line) && kind === null && FOR_CHILDREN.test(plain) && !/ easy:/u.test(read.line)
    ? { ...read, line: `${read.line} easy:yes` }
    : read;
