/** In one turn the same words are read again and again: what was made of a text lately is kept. */
import { createKept } from '../ground/kept.js';
import { onceOf } from '../ground/once.js';
import { TEXT_LIMIT } from './lines.js';

/** Texts kept, half as many at least. */
const MOST = 16;

/** @param make of the same text always the same; it must not be changed by whoever gets it */
export const rememberLately = <Of extends object, Made>(
  make: (of: Of, text: string) => Made,
): ((of: Of, text: string) => Made) => {
  const keptOf = onceOf((_: Of) => createKept<string, Made>(MOST));
  return (of, text) => (text.length > TEXT_LIMIT ? make(of, text) : keptOf(of)(text, () => make(of, text)));
};

/** The same for what hangs on the text alone. */
export const rememberLines = <Made>(make: (text: string) => Made): ((text: string) => Made) => {
  const kept = createKept<string, Made>(MOST);
  return (text) => (text.length > TEXT_LIMIT ? make(text) : kept(text, () => make(text)));
};
