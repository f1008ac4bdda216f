/** Cuts a text to fit its place where a reader would pause, never within a word. */
import { tidy } from '../../ground/tidy.js';

/** A clause shorter than this share of its place says too little to stand for the whole. */
const ENOUGH = 0.4;

/** The words that fit, and "…" for those that do not. */
export const wordsWithin = (text: string, limit: number): string => {
  const whole = tidy(text, text.length);
  if (Array.from(whole).length <= limit) return whole;
  const words = new RegExp(`^.{1,${limit - 1}}(?=\\s)`, 'su').exec(whole)?.[0];
  return words === undefined ? tidy(whole, limit) : `${words.replace(/[\s,;:.]+$/u, '')}…`;
};

/** Of our own texts the clauses that fit, which are whole as they stand; else the words. */
export const fitted = (text: string, limit: number): string => {
  const whole = tidy(text, text.length);
  if (Array.from(whole).length <= limit) return whole;
  const least = Math.ceil(ENOUGH * limit);
  const clauses = new RegExp(`^.{${least},${limit}}(?=[;:,.](?:\\s|$))`, 'su').exec(whole)?.[0];
  return clauses ?? wordsWithin(whole, limit);
};
