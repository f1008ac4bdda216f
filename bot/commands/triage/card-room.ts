/** How many lines of a phone's screen a card takes. */

/** A screen that is read at a glance: so many lines of so many characters, the title among them. */
const [CARD_LINES, COLUMNS] = [9, 60];
const [TITLE, INDENT] = [1, 2];

/** Lines of one paragraph, wrapped at words. */
const linesOf = (text: string): number => {
  let [lines, used] = [1, 0];
  for (const { length } of text.split(' ')) {
    const isNext = used > 0 && used + 1 + length > COLUMNS - INDENT;
    lines += isNext ? 1 : 0;
    used = isNext || used === 0 ? length : used + 1 + length;
  }
  return lines;
};

/** Whether a card of these paragraphs fits. */
export const fitsCard = (paragraphs: readonly string[]): boolean =>
  TITLE + paragraphs.reduce((sum, text) => sum + linesOf(text), 0) <= CARD_LINES;
