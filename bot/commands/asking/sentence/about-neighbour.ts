/** "What is the star below the Pleiades": a bright one by what it stands beside, and on which side. */
import { colourSaid } from './about-bright.js';
import { instantLine, says, type Asked, type Rule } from './asked.js';

const ONE = '(?:bright )?(?:stars?|planets?|lights?|dots?|things?|objects?|ones?|points?)';
const ASKS = /\b(?:what|what's|whats|which|wat|who|name|called|identify|is that|the)\b/u;

const SIDES: readonly (readonly [RegExp, string | null])[] = [
  [/\b(?:below|under|underneath|beneath|lower than|down from)\b/u, 'below'],
  [/\b(?:above|over|on top of|higher than|up from)\b/u, 'above'],
  [/\b(?:left of|(?:to|on) the left (?:side )?of)\b/u, 'left'],
  [/\b(?:right of|(?:to|on) the right (?:side )?of)\b/u, 'right'],
  [/\b(?:next to|beside|besides|near(?:by)?|close to|by|after|behind|following|follows|alongside)\b/u, null],
];
const IS_ONE = new RegExp(`\\b${ONE}\\b`, 'u');
/** How one finds a target from a star is another question, and so is what is in the way, or to be done. */
const OTHERS =
  /\b(?:find|hop\w*|align\w*|remind\w*|slew\w*|go ?to|landed|lands|points?|sync\w*|sun|double|doubles|galax\w*|nebul\w*|cluster\w*|when|how|degrees?|brighter than|moon|eyepiece|variable|guide|calibrat\w*)\b|\b(?:which|what|nearest|closest) (?:bright )?stars? (?:is |are )?(?:near|next to|close to|beside|to|by)\b/u;

/** Of a name in two words, such as "the three stars of the belt", the stars are no target. */
const targetOf = ({ targets }: Asked): string | null => {
  const [target, ...others] = targets.filter((name) => name !== 'moon' && name !== 'sun');
  return target === undefined || others.length > 0 ? null : target;
};

export const neighbour: Rule = (asked) => {
  const target = targetOf(asked);
  if (target === null || !says(asked, ASKS) || OTHERS.test(asked.plain.replace(target, ' '))) return null;
  const before = asked.plain.slice(0, asked.plain.lastIndexOf(target.split(' ')[0] ?? target));
  const found = SIDES.find(([pattern]) => pattern.test(before));
  if (found === undefined || !IS_ONE.test(before)) return null;
  const [, side] = found;
  const colour = colourSaid(asked);
  const isNow = asked.when.hour === null && /^(?:tonight|this evening)$/u.test(asked.when.night ?? '');
  const when = isNow ? { ...asked.when, night: null } : asked.when;
  const read = instantLine(
    'bright',
    '',
    { ...asked, when },
    { near: target, ...(side === null ? {} : { side }), ...(colour === undefined ? {} : { colour }) },
  );
  return { ...read, usesAll: true };
};
