/** What words at the end of a mended walk say of counting its cause: yes, no, or that it was another. */

const POLITE =
  "(?:[ ,.!]+(?:please|thanks?|thank you|cheers|ta|sure|of course|do|go on|go ahead|count it|you (?:may|can)|that(?:['\u2019]?s| is) (?:fine|ok)|just end|rather not|not this one))*";
const YES = new RegExp(
  `^(?:yes|yeah|yep|yup|sure|of course|ok|okay|please do|go ahead|count it|you may)${POLITE}[ .!]*$`,
  'iu',
);
const NO = new RegExp(
  `^(?:no|nope|nah|please don['\u2019]?t|rather not|don['\u2019]?t count it|do not count it)${POLITE}[ .!]*$`,
  'iu',
);
const OTHER =
  /\b(?:something|somewhat|sth|anything|nothing) else\b|\b(?:was|were|had) (?:really |actually |in fact )?(?:not (?:that|this|it)|another|two|both|the other|an? (?:different|other))\b|\b(?:two|other|different|another) (?:things|causes?|faults?|reasons?)\b|(?:^|[,.;] ?)(?:no|well|actually|it)?[, ]*it was (?:really |actually |just )?(?:the|my|a|an) \w+/iu;
/** The trouble is back, or another has come. */
const GOES_ON =
  /\b(?:again|back|stopped|stops|not any ?more|no longer|fail(?:s|ed)|lost|gone|drops?|dropped|only|still|now it)\b/iu;

export const closingMeant = (text: string): 'yes' | 'no' | 'other' | null => {
  const said = text.trim();
  if (YES.test(said)) return 'yes';
  if (NO.test(said)) return 'no';
  return OTHER.test(said) && !GOES_ON.test(said) ? 'other' : null;
};
