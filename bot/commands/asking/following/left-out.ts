/** "Can't see Vega, a tree", "without Capella", after stars to align on: the same question, that star left out. */
import { wordCountOf } from '../../../ground/fold-text.js';
import { isProblem } from '../../../ground/problem.js';
import { resolveTarget } from '../../../catalogue/index.js';
import { askedOf, type Known } from '../sentence/asked.js';
import { takes, type ToldLine } from './told-line.js';

const LEAVES_OUT =
  /\b(?:without|except|instead of|other than|rather than|not|no|can(?:'?t|not| not) (?:see|find|use)|hidden|behind|block(?:s|ed|ing)?|hides|in the way|too low|clouded)\b/u;
/** "Why not Vega" asks for a reason. */
const ASKS = /^(?:why|how|is|are|where|when)\b/u;
const MOST_WORDS = 10;

const starIn = (name: string, { catalogue }: Known): string | null => {
  const found = resolveTarget(catalogue, name);
  return isProblem(found) || found.isSlip === true || !/star/u.test(found.target.kind) ? null : found.target.name;
};

/** @returns null where no star is to be left out, or the line before has no use for it */
export const starLeftOut = (before: ToldLine, text: string, known: Known): ToldLine | null => {
  const plain = text.replace(/[’‘`]/gu, "'").toLowerCase();
  if (!takes(before, 'not') || wordCountOf(plain) > MOST_WORDS) return null;
  if (!LEAVES_OUT.test(plain) || ASKS.test(plain)) return null;
  const stars = askedOf(text, plain, known, text).targets.map((name) => starIn(name, known));
  const named = stars.filter((name) => name !== null);
  if (named.length === 0 || named.length < stars.length) return null;
  const already = before.values['not'];
  return {
    ...before,
    values: { ...before.values, not: [...(already === undefined ? [] : [already]), ...named].join(', ') },
  };
};
