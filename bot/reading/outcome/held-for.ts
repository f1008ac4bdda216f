/** "Been 45 min and still connected", "20 minutes and Vega has not moved a hair": a time told, and that it held through it. */

import { STAR, TROUBLES } from './word-kinds.js';

const WHILE = new RegExp(
  [
    '(?:\\d+|an?|one|two|three|four|five|six|ten|twenty|thirty|forty|half an?|quarter of an|a good|over an?|nearly an?|almost an?|a whole|the whole|several|a couple of)(?: and a half| good| solid| whole)? ?(?:hours?|hrs?|h|minutes?|mins?|nights?|evenings?|sessions?)\\b',
    '(?:all|whole|the whole|entire) (?:night|evening|session|time)',
  ].join('|'),
  'iu',
);
const NOT = "(?:not|never|n['\\u2019]?o?t|\\w+n['\\u2019]?t)";
const HOLDS = new RegExp(
  [
    '\\bstill (?:connected|con+ected|linked|on(?:line)?|up|running|going|holding|tracking|guiding|alive|there|talking|working|good|fine|ok|steady|stable|solid|centred|centered|in (?:the )?(?:middle|centre|center|eyepiece|field|view))\\b',
    `\\b${STAR}\\b(?: (?:has|have|is|are|did))?(?: ?${NOT})?(?: (?:has|have|is|are|did))? ?${NOT} (?:\\w+ )?(?:moved?|drifted|drift|budged?|shifted|left|wandered|moving)\\b`,
    `\\b${STAR}\\b (?:\\w+ )?(?:sits?|stays?|stayed|stands?|is|remains?) (?:still|put|there|centred|centered|dead still|rock steady|in (?:the )?(?:middle|centre|center|eyepiece|field|view))\\b`,
    `\\b(?:has|have|did|is|was)? ?${NOT} (?:once )?(?:dropped|drop|lost it|lose it|disconnected|cut out|stopped|failed|reset|restarted)\\b`,
    `\\b(?:no|not (?:a|one)(?: single)?|zero) (?:more )?${TROUBLES}\\b`,
    "\\b(?:its|it['\\u2019]?s|it is|been|and|is) holding\\b|\\b(?:rock )?solid\\b",
    '\\b(?:holding|holds|held|stays?|stayed|staying|keeps?|kept) (?:on|up|fine|well|steady|firm|connected|conected|linked|the (?:link|connection)|going|its place)\\b',
  ].join('|'),
  'iu',
);
/** It ended, hangs on something, or was so before. */
const SPOILS =
  /\b(?:but|until|till|then|before|after (?:that|which) (?:it|the)|every (?:\d+|few|ten|half)|except|only|if|when|whenever|yesterday|last (?:night|week|time)|used to|again (?:it|drops)|drops|dies|freezes|same|wrong|always|so far)\b|\bfor (?:[a-z\d]+ ){1,3}(?:hours?|minutes?|mins?|seconds?)\b(?! (?:now|already|and))|\?/iu;

/** It goes on and on, without a time told. */
const STRONG =
  /\b(?:still |is |it['\u2019]?s |its )(?:going|running|holding|tracking|guiding|connected and going) strong\b/iu;

export const heldFor = (text: string): boolean =>
  (STRONG.test(text) || (WHILE.test(text) && HOLDS.test(text))) && !SPOILS.test(text);
