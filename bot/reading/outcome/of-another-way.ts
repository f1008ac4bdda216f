/** "Tried the hand controller, that works perfectly": it tells where the trouble is not, and no cure. */

const WAY =
  "(?:hand ?-?(?:controller|set|pad|box)|key ?pad|paddle|phone|tablet|i ?pad|(?:other|another|second|old|work|friend\\w*|wife\\w*|son\\w*|neighbou?r\\w*) (?:laptop|pc|computer|mac|machine|one)|(?:friend|mate|neighbou?r|wife|husband|son|daughter)['\u2019]?s)";
const WORKS =
  '(?:works?|working|drives?|moves?|slews?|connects?|answers?|finds?|runs?|is (?:fine|ok|okay|good)|does|perfect\\w*)';
const OF_ANOTHER = new RegExp(
  `\\b(?:tried|try|trying|used|using|with|on|from|by|via)(?: (?:it|the|my|his|her|our|a|an|only|just|alone))* ${WAY}\\b.{0,25}\\b${WORKS}\\b|\\b${WORKS}\\b.{0,12}\\b(?:with|on|from|by|via)(?: (?:the|my|his|her|our|a|an))*(?: \\w+)? ${WAY}\\b|^(?:the |my |with |only )*${WAY} (?:in|on|back|plugged|there|alone|only|instead|by itself)[ ,:a-z]{0,12}\\b${WORKS}\\b`,
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
