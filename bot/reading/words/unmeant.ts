/** What a member writes and does not mean of their own mount: words quoted from a guide, and irony. */

/** From where to before where in the text. */
export interface Unmeant {
  readonly start: number;
  readonly end: number;
}

/** A page of a router or bridge shows how things are, and is none of these. */
const GUIDE = 'manual|handbook|guide|forum|faq|wiki|article|instructions?|tutorial|video|booklet|leaflet|docs|readme';
const SAYS = 'says?|said|reads?|states?|writes?|tells (?:me|you|us)|goes|warns?|has it';
const QUOTED = `"[^"]{1,400}"?|“[^”]{1,400}”?|«[^»]{1,400}»?|‘[^’]{1,400}’?|'(?:[^']|'\\w){1,400}'?`;
/** "The guide on the forum says: '…'", as against "the manual says nothing about 'access denied'". */
const OF_GUIDE = new RegExp(
  `\\b(?:${GUIDE})\\b[\\w ]{0,30}?(?:\\b(?:${SAYS})(?: that| this| only)?[:,]?|:) *(${QUOTED})`,
  'giu',
);

const ABSURD =
  "made of cheese|pigs (?:can |might |will )?fly|(?:i'm|i am|i’m) the (?:pope|queen|king|emperor|tooth)|earth is flat|father christmas|tooth fairy";
/**
 * "Yeah right, and the fuse is blown", "…, the moon is made of cheese": none of the sentence is so. The latter is looked for from the
 * sentence's beginning alone: from each of its letters, a long paste without a full stop would take a third of a second.
 */
const IRONY = new RegExp(
  `(?:^|[.!?\\n] *)(?:oh|yeah|yes)[, ]+(?:sure|right|of course)[, ]+and\\b[^.!?\\n]*|(?<![^.!?\\n])[^.!?\\n]*\\b(?:${ABSURD})\\b[^.!?\\n]*`,
  'giu',
);

const MAY_QUOTE = /["“«‘']/u;
const MAY_JEST =
  /cheese|pigs|(?:oh|yeah|yes)[, ]+(?:sure|right|of)|the (?:pope|queen|king|emperor|tooth)|flat|christmas/iu;
const NONE: readonly Unmeant[] = [];

/** @param text a line */
export const unmeantIn = (text: string): readonly Unmeant[] => {
  const [quotes, jests] = [MAY_QUOTE.test(text), MAY_JEST.test(text)];
  if (!quotes && !jests) return NONE;
  const spans: Unmeant[] = [];
  for (const match of quotes ? text.matchAll(OF_GUIDE) : []) {
    const end = match.index + match[0].length;
    spans.push({ start: end - (match[1] ?? '').length, end });
  }
  for (const { 0: whole, index } of jests ? text.matchAll(IRONY) : [])
    spans.push({ start: index, end: index + whole.length });
  return spans;
};
