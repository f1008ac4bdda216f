/** What is read of a text, set right by what the whole of it says of one thing. */
import type { Judged } from './examples/likeness.js';
import { withPhoneInHand } from './phone-in-hand.js';
import { withoutCalledRight } from './without-called-right.js';

export const asMeant = (text: string, judged: Judged): Judged =>
  withPhoneInHand(text, withoutCalledRight(text, judged));
