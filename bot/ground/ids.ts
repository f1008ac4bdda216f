/** Ids that a member may have to type. */
import { randomInt } from 'node:crypto';

/** Letters and digits that are not taken for one another on a phone at night. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz23456789';

/** A random id; 31^7 ≈ 2.7·10^10 of seven letters, 31^6 ≈ 8.9·10^8 of six. */
export const typableId = (length: number): string =>
  Array.from({ length }, () => LETTERS[randomInt(LETTERS.length)]).join('');
