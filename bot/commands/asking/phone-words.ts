/** Slips of a thumb and short forms that mean one thing, mended before words are read; names are left alone. */

const SLIPS: readonly (readonly [RegExp, string])[] = [
  [/\b(?:tonite|2nite|2night|tonigth|tonihgt|tonght|tnight)\b/giu, 'tonight'],
  [/\b(?:tomorow|tommorow|tommorrow|tomorrrow|tmrw|tmw|2moro|2morrow)\b/giu, 'tomorrow'],
  [/\bwheres\b/giu, 'where is'],
  [/\bwhats\b/giu, "what's"],
  [/\bwhens\b/giu, 'when is'],
  [/\b(?:eclpise|eclips|ecplise)\b/giu, 'eclipse'],
  [/\b(?:wth|wiht)\b/giu, 'with'],
  [/\b(?:pls|plz)\b/giu, 'please'],
];

/** The words with such slips mended and the marks at their end gone. */
export const mended = (text: string): string =>
  SLIPS.reduce((words, [slip, meant]) => words.replace(slip, meant), text)
    .replace(/(?<=\p{L})\s*[?!.…]+$/u, '')
    .trim();
