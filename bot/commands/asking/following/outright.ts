/** Follow-ups that are told by their words as they came: a star left out, the same event again, the Moon beside a list. */
import { cleanText } from '../../../ground/fold-text.js';
import type { Known } from '../sentence/asked.js';
import { moonBeside } from './about-it.js';
import { starLeftOut } from './left-out.js';
import { ofTheSame } from './next-one.js';
import { lineOf, type ToldLine } from './told-line.js';

/** Null: it is none of them. */
export const outrightLine = (before: ToldLine, text: string, known: Known): string | null => {
  const without = starLeftOut(before, text, known);
  if (without !== null) return lineOf(without);
  const clean = cleanText(text);
  if (ofTheSame(before, clean.toLowerCase().replace(/[?!.\s]+$/u, ''))) return lineOf(before);
  return moonBeside(before, clean, known);
};
