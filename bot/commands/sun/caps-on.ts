/** A warning that stands though nobody knows where the asker is. */
import { MESSAGE_LIMIT, type Problem } from '../../ground/problem.js';

/** Whoever cannot be answered yet is told what keeps their eyes safe meanwhile. */
export const withCapsOn = (asked: Problem): Problem =>
  asked.problem === 'no-site'
    ? {
        ...asked,
        message: `By day keep the caps on until you know: the Sun blinds. ${asked.message}`.slice(0, MESSAGE_LIMIT),
      }
    : asked;
