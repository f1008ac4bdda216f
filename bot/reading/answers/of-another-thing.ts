/**
 * Whose screen, light or motion is told of: "no, the LAPTOP screen is black, not the handset", "my mate's scope only moves one way, mine
 * moves both". What is said of another thing is no answer about the mount's own.
 */

const PEOPLE =
  "(?:my|his|her|the|a|our) (?:mate|friend|neighbou?r|son|daughter|wife|husband|dad|father|mum|brother|sister|buddy|club ?mate)(?:['\\u2019]?s)?";
const OTHERS = `(?:lap ?top|note ?book|mac ?book|pc|computer|desktop|tablet|i ?pad|(?:smart|cell|mobile )?phone|i ?phone|mobile|camera|dslr|guide ?cam\\w*|monitor|tv|torch|power ?(?:tank|pack|bank)|tank|battery|${PEOPLE}|(?:the |an)?other (?:scope|mount|telescope|hand ?set|controller))`;
const SYSTEM = '(?:windows|macos|mac os|linux|android|ios|the system|operating system)';
const STATE = '(?:black|dark|off|out|asleep|blank|on|lit|dim|dead|red|green)';
const SHOWS = `(?:screen|display|light|led|lamp|lights|(?:goes|went|turns|turned|falls?|is|was|are|stays|has gone|['\\u2019]?s) (?:\\w+ )?(?:${STATE}|to sleep)|blinks?|dims?|(?:only |just )?moves?|sleeps?)`;
const LEADS =
  "(?:(?:no|yes|well|oh|sorry|but|and|so|its|it['\\u2019]s|it is|i mean|the|my|our|that|this|only|just|also|when|if) )*";
const OF_OTHER = new RegExp(
  `^${LEADS}${OTHERS}(?:['\\u2019]?s)? (?:(?:scope|mount|telescope|one|hand ?set|lap ?top|phone|own|power|next to (?:me|mine|it)|there|itself|by itself) )*${SHOWS}\\b`,
  'iu',
);
const OF_SYSTEM = new RegExp(
  `^${LEADS}${SYSTEM} (?:\\w+ )?(?:did|had|has|made|installed|ran|updated|got|wants|does|is doing|was)\\b`,
  'iu',
);
const DENIES = new RegExp(
  `^${LEADS}not (?:(?:of|on|in) )?(?:the |my )?(?:mount|scope|telescope|hand ?set|(?:hand )?controller|keypad)\\b[^a-z]*$`,
  'iu',
);
/** Goes on about the same. */
const GOES_ON = /^(?:(?:and|so|then|but) )*(?:it|its|it['\u2019]s|that|this|then|which|to)\b/iu;
const OF_OWN =
  /\b(?:mount|scope|telescope|hand ?set|(?:hand )?controller|keypad|mine|axis|axes|motors?|star|target|port|cable|adapter|program|app|bridge)\b/iu;
const CLAUSES = /[.,;!\n]+\s*|\s+-+\s+|\s(?=(?:but|and|while|whereas)\s)/iu;
/** Without any of these nothing is told of another. */
const MAY_BE = new RegExp(`\\b(?:${OTHERS}|${SYSTEM})\\b`, 'iu');

/** @returns the words without what they say of another thing; null where they say nothing of one */
export const withoutOtherThings = (text: string): string | null => {
  if (!MAY_BE.test(text)) return null;
  const kept: string[] = [];
  let isOther = false;
  let isAny = false;
  for (const clause of text.split(CLAUSES)) {
    const said = clause.trim();
    if (said === '') continue;
    const isNamed = OF_OTHER.test(said) || OF_SYSTEM.test(said);
    isOther = isNamed || DENIES.test(said) || (isOther && GOES_ON.test(said) && !OF_OWN.test(said));
    if (isNamed) isAny = true;
    if (!isOther && !/^no$/iu.test(said)) kept.push(said);
  }
  return isAny ? kept.join(', ') : null;
};
