/** The stretch of a text that leads up to a place: of its sentence, or of a part of it. */

/**
 * @param reach so many characters at most
 * @param ends what parts one stretch from the next
 */
export const stretchBefore = (text: string, at: number, reach: number, ends: RegExp): string =>
  text
    .slice(Math.max(0, at - reach), at)
    .split(ends)
    .at(-1) ?? '';
