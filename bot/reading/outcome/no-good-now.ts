/** Good words that are of other gear, of what comes and goes, or beside a new trouble. */
import { isOfOtherGear } from './of-other-gear.js';
import { tellsNewTrouble } from './new-trouble.js';
import { isUnsteady } from './unsteady.js';
import { rememberLines } from '../lately.js';

export const isNoGoodNow = rememberLines(
  (text: string): boolean => isOfOtherGear(text) || isUnsteady(text) || tellsNewTrouble(text),
);
