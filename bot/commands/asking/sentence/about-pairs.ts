/** Sentences about two targets side by side: how far apart, which is higher or brighter, which to look at first. */
import { APART, instantLine, says, type Asked, type Rule } from './asked.js';

const WITHIN = /\bwithin (?:about )?(\d{1,3}(?:\.\d+)?) ?(?:°|deg(?:rees?)?\b)/u;
const FIRST = /\b(?:first|sooner|start with|begin with|before)\b/u;
const BRIGHTER = /\b(?:brighter|brightest|fainter|dimmer|easier|easiest|harder|hardest)\b/u;
/** Asked in the present it is of this minute. */
const STANDS_HIGHER =
  /\b(?:is|are|stands?|'s|whats|which)\b.*\b(?:higher|highest|lower|lowest)\b(?!.*\b(?:gets?|goes|at (?:its|their) best|culminat\w*)\b)/u;
const LARGER = /\b(?:bigger|biggest|larger|largest|smaller|smallest|wider|widest)\b/u;
const HIGHER = /\b(?:higher|highest|lower|better|best|nicer|worth|well placed|up)\b/u;
/** "the position angle of Titan from Saturn": the second is the one it is counted at. */
const OF_FROM = /\bposition angle\b.* of .* (?:from|as seen from|relative to|to|about) /u;
/** One or the other is asked for. */
const OR = / or | than |\bwhich\b|\bwho(?:'s| is)\b/u;
const COMPARES = /\b(?:which|what|who|is|are|should|shall|would|better|best|compare|or)\b/u;
/** Both in one view, ways from one to the other, misses, and what is waited for are other questions. */
const OTHERS =
  /\b(?:sun|remind\w*|landed|lands|missed|slew\w*|goto|go to|swing|move|moving|point\w*|align\w*|flip\w*|drift\w*|sent|same (?:field|view)|field of view|conjunction|occult\w*|transits?|eclipses?|moons)\b/u;

/** Both names in the order they stand in; the Moon is looked for beside a target, where it is none of a place in the sky. */
const pairIn = ({ targets, plain }: Asked): readonly [string, string] | null => {
  const named = targets.filter((name) => name !== 'sun');
  const [one, other] = named;
  if (named.length === 2 && one !== undefined && other !== undefined) return [one, other];
  const moonAt = /(?<!full |new |half )\bmoon\b/u.exec(plain)?.index;
  if (named.length !== 1 || one === undefined || one === 'moon' || moonAt === undefined) return null;
  return moonAt < plain.indexOf(one) ? ['moon', one] : [one, 'moon'];
};

const firstOf = (asked: Asked): string | null => {
  if (says(asked, APART)) return 'apart';
  if (!says(asked, OR) && !says(asked, /^compare\b/u)) return null;
  if (says(asked, BRIGHTER)) return 'brighter';
  if (says(asked, LARGER)) return 'larger';
  if (says(asked, FIRST)) return 'sooner';
  if (
    says(asked, STANDS_HIGHER) &&
    !says(asked, /^compare\b/u) &&
    asked.when.night === null &&
    asked.when.hour === null
  )
    return 'higher-now';
  return says(asked, HIGHER) || says(asked, COMPARES) ? 'higher' : null;
};

export const pair: Rule = (asked) => {
  const both = says(asked, OTHERS) ? null : pairIn(asked);
  if (both === null) return null;
  const within = WITHIN.exec(asked.plain)?.[1];
  const first = within === undefined ? firstOf(asked) : undefined;
  if (first === null) return null;
  const [one, other] = says(asked, OF_FROM) ? [both[1], both[0]] : both;
  const isTonight = /^(?:tonight|this evening)$/u.test(asked.when.night ?? '') && asked.when.hour === null;
  const when = isTonight ? { ...asked.when, night: null } : asked.when;
  const more = { other, ...(first === undefined ? {} : { first }), ...(within === undefined ? {} : { within }) };
  return instantLine('compare', one, { ...asked, when }, more);
};
