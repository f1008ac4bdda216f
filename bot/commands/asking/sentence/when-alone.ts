/** A day or an hour and nothing else. */
import { nightAlone, nightLine, type Rule } from './asked.js';

/** Beside a day or an hour these say no more. */
const BESIDE_WHEN =
  /^(?:and|or|so|ok|what|how|about|on|at|for|from|by|around|then|the|of|say|night|evening|late|later)$/u;

/** "8pm", "on 25/12", "what about 10pm": what is worth seeing then. */
export const whenAlone: Rule = (asked) => {
  const { when, unread, targets, kind, kit, sky, above } = asked;
  const isSaid = when.night !== null || (when.hour !== null && when.hour !== 'now');
  const isAll = [kind, kit, sky, above].every((part) => part === null) && targets.length === 0;
  if (!isSaid || !isAll || when.isUntil || !unread.every(({ plain }) => BESIDE_WHEN.test(plain))) return null;
  const read = nightLine('tonight', '', { ...asked, when: nightAlone(when) }, { at: when.hour });
  return { ...read, note: read.note ?? 'Taken to ask what is worth seeing then.', usesAll: true };
};
