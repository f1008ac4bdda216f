/** Whether a line of plain words is a question, a request or an answer by itself, and no piece of a pasted log. */

const LONGEST = 90;
/** What programs print and people seldom type. */
const PRINTED =
  /[[\]{}=<>|\\_#@;]|::|0x|^\s|\t|\s{2,}|\d\d:\d\d:\d\d|^\W|\b(?:usb|tty|hub) ?\d|\berr(?:or|no)\b|:\s*$/iu;
const LEADS = '(?:(?:and|also|then|ok(?:ay)?|so|please|pls|hi|hello|hey),? )*';
const ASKS = new RegExp(
  `^${LEADS}(?:whats?|what['\u2019]s|wots?|when['\u2019]?s?|where['\u2019]?s?|which|who|how['\u2019]?s?|why|is|are|can|could|will|would|does|do|did|should|any|show|list|tell|remind|give|find|next|tonight)\\b`,
  'iu',
);
/** "and saturn", "what about the moon", "from york". */
const GOES_ON = /^(?:and|what about|how about|or) (?:\S+ ){0,3}\S+$/iu;
const ANSWERS =
  /^(?:yes|yep|yeah|no|nope|none|neither|both|not sure|dunno|no idea|skip|next|same|works|back|why)[ .!]*$/iu;

export const asksAlone = (line: string): boolean => {
  const said = line.trimEnd();
  if (said.length > LONGEST || PRINTED.test(said)) return false;
  return said.endsWith('?') || ASKS.test(said) || GOES_ON.test(said) || ANSWERS.test(said);
};
