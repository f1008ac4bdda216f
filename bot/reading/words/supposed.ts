/** What is only meant to be done, and what is said of a whole kind: neither is told of this mount. */
import { IS } from './asked.js';
import { clauseStart, has, hasAny } from './clause.js';
import type { PhraseMatch } from './phrases.js';
import type { Clauses } from './sentences.js';

/** "I will get a time-out" tells of what happens, not of what is meant to be done. */
const BEFALLS = /^(?:get|see|have|lose|find|be|not)$/u;

/** "I'll ping it tonight", "I'll look what it says when it is dark": not done yet. */
export const isPlanned = (own: Clauses, match: PhraseMatch): boolean => {
  if (!hasAny(own, IS.plan)) return false;
  const from = clauseStart(own, match.start, false);
  for (let i = match.end - 1; i >= from; i--) {
    if (own.tokens[i]?.word === 'then' && i < match.start) return false;
    if (has(own, i, IS.plan) && !match.taken.includes(i)) return !BEFALLS.test(own.tokens[i + 1]?.word ?? '');
  }
  return false;
};

const OWN_WORD = /^(?:i|me|my|mine|we|us|our|ours|it|its|this|the|there|tonight|now|today)$/u;
const ANY_OF = /^(?:an?|any|most|some)$/u;
const COUNTED = /^(?:\d+|both|all|two|three|four|five|several|no|other|these|those|his|her|their)$/u;
/** Where the subject of a sentence stands that speaks of a whole kind. */
const SUBJECT_WITHIN = 3;

const isBare = ({ tokens }: Clauses, at: number): boolean =>
  !tokens.slice(Math.max(0, at - 2), at).some(({ word }) => COUNTED.test(word));

/** "A port normally shows up", "weak signals cause drops as a rule": a kind is the subject. */
const namesKind = (own: Clauses): boolean =>
  ANY_OF.test(own.tokens[0]?.word ?? '') ||
  own.tokens.slice(0, SUBJECT_WITHIN).some(({ word }, at) => /[^su]s$/u.test(word) && isBare(own, at));

const GENERAL = IS['bare-kind'] | IS['holds-always'] | IS['as-a-rule'];

/** "Parked mounts refuse slews", "hubs without supply cause dropouts": said of the kind, by one who names nothing of theirs. */
export const isGeneral = (own: Clauses): boolean => {
  if (!hasAny(own, GENERAL)) return false;
  const kind = own.tokens.findIndex((_, at) => has(own, at, IS['bare-kind']));
  const speaksOfKind = (kind >= 0 && kind < SUBJECT_WITHIN && isBare(own, kind)) || hasAny(own, IS['holds-always']);
  if (!speaksOfKind && !(hasAny(own, IS['as-a-rule']) && namesKind(own))) return false;
  return !own.tokens.some(({ word }) => OWN_WORD.test(word));
};
