/** Which questions keep gear from harm. */
import type { CheckEntry } from './schema.js';

/** Its answer lets gear be put to use that a wrong one would destroy: by the first look, or by another at the same thing. */
export const guardsGear = ({ safety, secondLook }: CheckEntry): boolean => safety === true || secondLook !== undefined;

/** Volts, plus and minus, levels, pins: found as they should be only by what is plainly said to the question itself. */
export const wantsPlainWords = (check: CheckEntry): boolean => guardsGear(check) || check.plainly === true;
