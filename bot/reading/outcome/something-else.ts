/** Whether a member puts a cure down to something else than the remedy that was shown: "works now but not from that", "it was something else". */

const THAT = '(?:that|this|it|yours?|your \\w+|the (?:card|remedy|step|advice))';
const ELSE = [
  '\\b(?:something|somewhat|sth|sthg|anything|nothing you|another thing) else\\b',
  `\\b(?:but )?not (?:from|because of|cos of|by|thanks to|due to|through|with|down to) ${THAT}\\b`,
  `\\b(?:it |that )?(?:was ?n['\u2019]?t|was not|wasnt) (?:${THAT}|any of (?:that|it|these|those))\\b`,
  '\\b(?:it |that )?(?:was|were|had) (?:really |actually |in fact )?(?:another|a (?:different|completely different|totally different)) \\w+\\b',
  '\\b(?:not what you (?:said|thought)|nothing to do with (?:that|it|this|the card))\\b',
];
const SAYS_ELSE = new RegExp(ELSE.join('|'), 'iu');
const ALL_OF_IT = new RegExp(`[,.;-]?\\s*(?:${ELSE.slice(1, 3).join('|')})`, 'giu');

export const saysSomethingElse = (text: string): boolean => SAYS_ELSE.test(text);

/** The words on the cure itself: "but not from that" takes none of it back. */
export const withoutSomethingElse = (text: string): string => text.replace(ALL_OF_IT, ' ');
