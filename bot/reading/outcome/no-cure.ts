/** Words that say that the trouble stands, or tell of something else than its end: no cure is to be read from them. */
import { isNoGoodNow } from './no-good-now.js';
import { wasGoodThen, withoutOtherWays } from './of-another-way.js';
import { isOnlyASign } from './only-a-sign.js';
import { isOnlySet } from './only-set.js';
import { statesFailure } from './states-failure.js';

/** A failure, a mere setting, a mere sign, another way to the mount, another's gear, what comes and goes, or a new trouble. */
export const tellsNoCure = (text: string): boolean =>
  statesFailure(text) ||
  isOnlySet(text) ||
  isOnlyASign(text) ||
  withoutOtherWays(text) !== null ||
  wasGoodThen(text) ||
  isNoGoodNow(text);
