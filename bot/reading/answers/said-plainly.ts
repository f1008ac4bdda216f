/**
 * Whether words say an answer outright: all of one of its sayings, with no volts beside it that the saying does not name, and not as what
 * follows from something else. What makes gear safe to use is taken from no less.
 */
import type { Weighed } from './answers-as-words.js';
import type { SaidText, SaidWord } from './said-words.js';

/** "It's usb so 5v", "same plug, must be right": concluded, and not looked at. */
const CONCLUDED =
  /\b(?:so|thus|hence|because|cos) (?:(?:it|its|it['\u2019]s|that|thats|they|the|must|should)\b|\d)|\b(?:anyway|obviously|naturally|of course|always has|has always|fits?|came with)\b/iu;
const VOLTS = /(\d+(?:[.,]\d+)?) ?v(?:olts?|dc)?\b/giu;

const isSaidOf = (own: SaidWord, { words }: SaidText): boolean =>
  words.some(({ stem, isTelling, denied }) => isTelling && stem === own.stem && denied === own.denied);

const isWhole = (part: readonly SaidWord[], said: SaidText, volts: readonly string[]): boolean => {
  const telling = part.filter(({ isTelling }) => isTelling);
  // A bare yes: nothing else may be told beside it.
  if (telling.length === 0) return said.words.every(({ isTelling }) => !isTelling);
  const named = new Set(part.map(({ word }) => word));
  return telling.every((own) => isSaidOf(own, said)) && volts.every((one) => named.has(one));
};

export const isSaidPlainly = ({ parts }: Weighed, said: SaidText, text: string): boolean => {
  if (CONCLUDED.test(text)) return false;
  const volts = [...text.matchAll(VOLTS)].map(([, figure = '']) => figure);
  return parts.some(({ words }) => isWhole(words, said, volts));
};
