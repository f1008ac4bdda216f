/** Which questions keep gear from harm. */
import type { CheckEntry } from './schema.js';

/** Its answer lets gear be put to use that a wrong one would destroy: by the first look, or by another at the same thing. */
export const guardsGear = ({ safety, secondLook }: CheckEntry): boolean => safety === true || secondLook !== undefined;
