/** Place names as they are compared: no case, accents, punctuation or spaces; letters that no accent explains spelt out. */

const LETTERS: ReadonlyMap<string, string> = new Map(
  Object.entries({
    ø: 'o',
    ł: 'l',
    æ: 'ae',
    œ: 'oe',
    ß: 'ss',
    đ: 'd',
    ð: 'd',
    þ: 'th',
    ı: 'i',
    ħ: 'h',
    ŋ: 'ng',
    ə: 'a',
  }),
);

/** "Saint-Jérôme" → "saintjerome", "Łódź" → "lodz", "St. John's" → "stjohns", "東京" stays. */
export const foldPlace = (text: string): string => {
  return text
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[øłæœßđðþıħŋə]/g, (letter) => LETTERS.get(letter) ?? letter)
    .replace(/[^\p{L}\p{N}]+/gu, '');
};
