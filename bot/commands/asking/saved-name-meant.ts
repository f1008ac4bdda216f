/** Which saved name somebody means who does not write it in full. */
import { editDistance, forgivenSlips } from '../../ground/edit-distance.js';
import { siteNameKey } from '../../store/rows/site-name-key.js';

/** The words of a name that alone stand for it: "the hut" is "fen hut". */
const tellingWords = (name: string): readonly string[] => name.split(' ').filter((word) => word.length >= 3);

const isSlipOf = (typed: string, meant: string): boolean =>
  typed.charAt(0) === meant.charAt(0) && editDistance(typed, meant, 1) <= 1;

/** The saved name that is meant: with a slip, without its article or its gap, or by one word of it that no other has. */
export const savedNameMeant = (text: string, names: readonly string[]): string | null => {
  const typed = siteNameKey(text).replace(/^(?:my|our|the) /u, '');
  const solid = typed.replaceAll(' ', '');
  const only = (isMeant: (key: string) => boolean): string | null => {
    const found = names.filter((name) => isMeant(siteNameKey(name)));
    return found.length === 1 ? (found[0] ?? null) : null;
  };
  const most = forgivenSlips(solid.length);
  return (
    only((key) => key === typed) ??
    only((key) => editDistance(solid, key.replaceAll(' ', ''), most) <= most) ??
    only((key) => tellingWords(key).includes(typed)) ??
    (typed.length > 3 ? only((key) => tellingWords(key).some((word) => isSlipOf(typed, word))) : null)
  );
};
