/** "Tried the hand controller, that works perfectly": it tells where the trouble is not, and no cure. */

const WAY =
  "(?:hand ?-?(?:controller|set|pad|box)|key ?pad|paddle|phone|tablet|i ?pad|(?:other|another|second|old|work|friend\\w*|wife\\w*|son\\w*|neighbou?r\\w*) (?:laptop|pc|computer|mac|machine|one)|(?:friend|mate|neighbou?r|wife|husband|son|daughter)['\u2019]?s)";
const WORKS =
  '(?:works?|working|drives?|moves?|slews?|connects?|answers?|finds?|runs?|is (?:fine|ok|okay|good|gone)|no (?:trouble|problem|error|drop)s?|does|perfect\\w*)';
const COMPUTER =
  "(?:(?:other|old|second|work|spare) (?:\\w+ )?(?:laptop|pc|computer|mac|machine|one|program|app)|desktop|phone|tablet|i ?pad|(?:friend|mate|neighbou?r|wife|husband|son|daughter|brother|sister|dad|mum)['\u2019]?s (?:laptop|pc|computer|mac|phone|tablet|one))";
const SURE = '(?:always|still|just|also|can|does)';
/** What draws on the link or the supply is off: it tells what bears on it. */
const WITHOUT_IT =
  '\\b(?:with|when|while)(?: the| my)? (?:camera|cooler|guider|guide camera|focuser|filter wheel|heaters?|dew \\w+)s?(?: is| are)? (?:unplugged|off|out|disconnected|removed|away)\\b|\\bwithout (?:the |my )?(?:camera|cooler|guider|focuser|heaters?)\\b';
const OF_ANOTHER = new RegExp(
  `\\b(?:tried|try|trying|used|using|with|on|from|by|via)(?: (?:it|the|my|his|her|our|a|an|only|just|alone))* ${WAY}\\b.{0,25}\\b${WORKS}\\b|\\b${WORKS}\\b.{0,12}\\b(?:with|on|from|by|via)(?: (?:the|my|his|her|our|a|an))*(?: \\w+)? ${WAY}\\b|^(?:the |my |with |only )*${WAY} (?:in|on|back|plugged|there|alone|only|instead|by itself)[ ,:a-z]{0,12}\\b${WORKS}\\b|\\b(?:my|the|his|her|our) (?:\\w+['\u2019]s )?${COMPUTER} (?:${SURE} )*${WORKS}\\b|${WITHOUT_IT}`,
  'u',
);
/** Said of what is otherwise than it was. */
const OF_NOW = /\b(?:now|again|at last|finally|since|too|as well)\b/u;

/** The sentences without those; null where there are none. */
export const withoutOtherWays = (text: string): string | null => {
  const sentences = text.split(/(?<=[.!?;\n])\s+/u);
  const own = sentences.filter((sentence) => {
    const said = sentence.toLowerCase();
    return !OF_ANOTHER.test(said) || OF_NOW.test(said);
  });
  return own.length === sentences.length ? null : own.join(' ');
};

const AS_EVER =
  /\b(?:as|like) (?:it |they )?(?:before|ever|always)(?: did| was| has| does| were| have)?\b|\b(?:it|they|that|which|and|,) ?always (?:did|was|has|does|were|have)\b/u;
const NOW_OR_GLAD =
  /\b(?:now|again|at last|finally|once more|thanks?|thx|cheers|great|perfect|brilliant|hoo?ray|yay|fixed|sorted|solved)\b|!/u;

/** "It connects, as it always did": that was never in doubt; "it connects again as before" is another matter. */
export const wasSoAllAlong = (text: string): boolean => {
  const said = text.toLowerCase();
  return AS_EVER.test(said) && !NOW_OR_GLAD.test(said);
};

const THEN =
  '(?:last (?:year|week|month|season|winter|summer|spring|autumn|fall|session|time|night)|yesterday|back then|(?:years?|months?|weeks?|days?) ago|until (?:then|last \\w+))';
const WAS_GOOD =
  '(?:was|were|had been) (?:all |just |always |still )?(?:ok(?:ay)?|fine|good|great|all right|alright|well|perfect|working|stable)|(?:worked|connected|went|ran|tracked|guided)\\b';
const GOOD_THEN = new RegExp(
  `\\b${THEN}\\b[^.;!]{0,40}\\b(?:${WAS_GOOD})|\\b(?:${WAS_GOOD})[^.;!]{0,25}\\b${THEN}\\b`,
  'u',
);

const OF_THIS_HOUR = /\b(?:now|again|at last|finally|thanks?|thx|tonight)\b|!/u;

/** "Last year the hill was ok": good of another time says nothing of now. */
export const wasGoodThen = (text: string): boolean => {
  const said = text.toLowerCase();
  return GOOD_THEN.test(said) && !OF_THIS_HOUR.test(said);
};
