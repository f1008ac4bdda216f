/** The Sun by what people call it without its name; and what is big and bright by day, which is the Sun. */

const NAMES =
  /\b(?:(?:the|our) )?(?:day ?star|(?:nearest|closest|own|local) star|lamp of (?:the )?day|yellow dwarf (?:next door|we orbit)|golden dis[ck]|solar dis[ck]|day ?time dis[ck]|thing that warms us(?: all)?)\b/gu;
const BRIGHT =
  /\b(?:the |that )?(?:big |huge |very |really )?(?:bright|yellow|hot|shiny|glowing) (?:yellow |bright )?(?:one|thing|ball|light|disc|disk)\b/u;
const BY_DAY =
  /\b(?:(?:at|around|over|by|after|before) (?:lunch\w*|noon|midday|day(?:light)?)|lunch ?time|this (?:morning|afternoon)|in (?:the )?(?:daylight|daytime)|[123] ?pm)\b/u;

/** @param said in lower case */
export const withSunNamed = (said: string): string => {
  const named = said.replace(NAMES, 'the sun');
  return BY_DAY.test(named) ? named.replace(BRIGHT, 'the sun') : named;
};
