/** The target that a follow-up names, beside the line before. Pure. */
import { isProblem } from '../../../ground/problem.js';
import { resolveTarget } from '../../../catalogue/index.js';
import type { Asked, Known } from '../sentence/asked.js';
import { spellerFor } from '../spelling/known-words.js';
import type { ToldLine } from './told-line.js';

const nameOf = (text: string, { catalogue }: Known): string | null => {
  const found = resolveTarget(catalogue, text);
  return isProblem(found) ? null : found.target.name;
};

/** As it is called, and no slip for it. */
export const isTarget = (text: string, { catalogue }: Known): boolean => {
  const found = resolveTarget(catalogue, text.replace(/^the /iu, ''));
  return !isProblem(found) && found.isSlip !== true;
};

const isSameTarget = (a: string, b: string, known: Known): boolean => {
  const name = nameOf(a, known);
  return name !== null && name === nameOf(b, known);
};

/** The one target that is named; null where none is, undefined where there is no telling which. */
export const targetIn = (asked: Asked, before: ToldLine, known: Known): string | null | undefined => {
  const { targets, plain } = asked;
  const isDenied = /\bnot\b|\binstead of\b|\brather than\b/u.test(plain);
  const meant = isDenied
    ? targets.filter((name) => !isSameTarget(name, before.values['target'] ?? '', known))
    : targets;
  const [target, ...others] = meant;
  if (target === undefined) return targets.length === 0 ? null : undefined;
  if (others.length > 0 || target === 'sun') return undefined;
  const found = resolveTarget(known.catalogue, target);
  // A name of nothing, or of several things, is a question by itself.
  if (isProblem(found)) return undefined;
  // An ordinary word is no slip of a name, and beside the Sun nothing is.
  const isSlip = found.isSlip === true;
  return isSlip && (before.command.name === 'sun' || target.split(' ').some((word) => spellerFor(known).isKnown(word)))
    ? undefined
    : target;
};
