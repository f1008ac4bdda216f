/** "I've only got 10x50s", "all we have is a 70 mm": told after a list or a target, it is what both are asked for. Pure. */
import { plainQuestion } from '../plain-question.js';
import { askedOf, type Known } from '../sentence/asked.js';
import { inherited, isOfSun, lineOf, takes, timesOf, toldLine, withTimes, type ToldLine } from './told-line.js';

const TELLS_KIT =
  /^(?:(?:and|but|ok|okay|so|well|oh|ah|sorry|btw|fyi),? )*(?:(?:i|we)(?:'?ve| have)? (?:(?:just|only|really) )*(?:have|has|use|own|got|get|not have)|(?:all|what) (?:i|we)(?:'?ve)?(?: have| got)* (?:is|are)|(?:only|just) got|(?:i'?m|we'?re|i am|we are) (?:just |only )*using) (?=\S)/iu;

/** Whether it is worth looking closer. */
export const mayTellKit = (text: string): boolean => TELLS_KIT.test(text.trim());

/** Nothing but what one looks with; null where more is said. */
const kitIn = (text: string, known: Known): string | null => {
  const rest = text
    .trim()
    .replace(TELLS_KIT, '')
    .replace(/[\s.!]+$/u, '');
  const { kit, left, targets, place } = askedOf(rest, rest.toLowerCase(), known, rest);
  return left.length > 0 || targets.length > 0 || place !== null ? null : kit;
};

/** The line before for what was told to be there; null: nothing is told, or a telescope that is kept with one's gear. */
export const forKitTold = (before: ToldLine, text: string, known: Known): string | null => {
  if (!mayTellKit(text) || isOfSun(before) || /\?\s*$/u.test(text)) return null;
  const kit = kitIn(text, known);
  const read = kit === null ? null : plainQuestion(text, known);
  if (kit === null || (read !== null && 'line' in read && !read.line.startsWith('tonight '))) return null;
  if (takes(before, 'with')) return lineOf({ ...before, values: { ...before.values, with: kit } });
  const target = before.values['target'];
  if (target === undefined || before.command.name !== 'altitude') return null;
  const up = toldLine('up moon', known.allCommands ?? []);
  if (up === null) return null;
  const seen = inherited(before, { ...up, values: { target, first: 'seen', with: kit } });
  return lineOf(withTimes(seen, timesOf(before, known.nowUtcMs), known.nowUtcMs) ?? seen);
};
