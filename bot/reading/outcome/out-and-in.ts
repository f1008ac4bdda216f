/** "Logged out and in", "pulled it out and back in": the second half of a deed, which "and I am in" is not. */
const OUT_AND_IN =
  /\b(out|off),?(?: (?:and|then|n|&))*(?: (?:back|again|straight))* (?:in|on)\b(?: again)?(?=\s*(?:$|[.,;!]|and\b|then\b|but\b|now\b))/giu;

/** The words without it. */
export const withoutOutAndIn = (text: string): string => text.replace(OUT_AND_IN, '$1');
