/** Where in the catalogue the stars stand that a text names by letter or number and constellation. */
import { positionsAt } from './catalogue-index.js';
import type { Catalogue } from './catalogue.js';
import { bayerKey, flamsteedKey, starDesignations } from './designation.js';

/**
 * A Latin letter in the case it was typed in where the text shows that case was minded (p Pup and P Pup are two stars),
 * in both where it was not ("P PUP", "p pup"); a Greek code as it is.
 */
const letterSpellings = (letter: string, text: string): readonly string[] => {
  if (letter.length > 1) return [letter];
  const minded = text !== text.toLowerCase() && text !== text.toUpperCase();
  const typed = /\p{L}/u.exec(text)?.[0] ?? letter;
  const other = typed === typed.toLowerCase() ? typed.toUpperCase() : typed.toLowerCase();
  return minded && (typed === letter || typed.toLowerCase() === letter) ? [typed] : [typed, other];
};

/** `loose`: several are of the letter as parts of it, unnumbered. */
export const starPositions = (catalogue: Catalogue, text: string): { positions: readonly number[]; loose: boolean } => {
  const { exact, unnumbered } = catalogue.index;
  const positions: number[] = [];
  let loose = false;
  for (const { letter, letterNumber, flamsteed, constellation } of starDesignations(text)) {
    if (letter === null) {
      if (flamsteed !== null) positions.push(...positionsAt(exact, flamsteedKey(flamsteed, constellation)));
      continue;
    }
    const spellings = letterSpellings(letter, text);
    const whole = spellings.flatMap((l) => positionsAt(exact, bayerKey(l, letterNumber, constellation)));
    const parts =
      letterNumber === null && whole.length === 0
        ? spellings.flatMap((l) => positionsAt(unnumbered, bayerKey(l, null, constellation)))
        : [];
    // "3 Alpha Lyrae" gives both: the number must agree, or it is another star.
    const agreed = [...whole, ...parts].filter(
      (p) => flamsteed === null || positionsAt(exact, flamsteedKey(flamsteed, constellation)).includes(p),
    );
    positions.push(...agreed);
    loose ||= parts.length > 1;
  }
  return { positions, loose };
};
