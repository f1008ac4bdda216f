/** Makes any text literal on Discord (no mark-up, mention, link or emoji comes of it), and cuts it to a limit without breaking an escape. */

const ALWAYS = new Set(['\\', '`', '*', '_', '~', '|', '<', '>', '@', '[', ']']);
const AT_LINE_START = new Set(['#', '-', '+']);
// Everything Discord turns into a link by itself starts with one of these.
const LINK_SCHEME = /(?:https?|discord|ftp|mailto|tel|steam):/iuy;
const LIST_NUMBER = /\d+(?=[.)])/uy;

/** Without any of these a text needs no escape; what has one may still need none. */
const PERHAPS_MARKED = /[\\`*_~|<>@[\]]|[a-z]:|^[ \t]*(?:[#+-]|\d+[.)])/imu;

/** The text as units that must not be cut apart; joined they are the escaped text. */
const escapedUnits = (text: string): readonly string[] => {
  const units: string[] = [];
  let lineStart = true;
  for (let i = 0; i < text.length;) {
    LINK_SCHEME.lastIndex = i;
    const scheme = LINK_SCHEME.exec(text)?.[0];
    if (scheme !== undefined) {
      units.push(`${scheme.slice(0, -1)}\\:`);
      i += scheme.length;
      lineStart = false;
      continue;
    }
    LIST_NUMBER.lastIndex = i;
    const number = lineStart ? LIST_NUMBER.exec(text)?.[0] : undefined;
    if (number !== undefined) {
      units.push(number, `\\${text.charAt(i + number.length)}`);
      i += number.length + 1;
      lineStart = false;
      continue;
    }
    const character = String.fromCodePoint(text.codePointAt(i) ?? 0x20);
    units.push(ALWAYS.has(character) || (lineStart && AT_LINE_START.has(character)) ? `\\${character}` : character);
    i += character.length;
    lineStart = character === '\n' || (lineStart && (character === ' ' || character === '\t'));
  }
  return units;
};

const joinWithin = (units: readonly string[], limit: number): string => {
  const whole = units.join('');
  if (whole.length <= limit) return whole;
  let length = 1;
  let kept = 0;
  for (const unit of units) {
    if (length + unit.length > limit) break;
    length += unit.length;
    kept++;
  }
  return `${units.slice(0, kept).join('')}…`;
};

/** Literal text of at most `limit` characters for places that read mark-up; cut text ends in "…". */
export const escapeWithin = (text: string, limit: number): string => {
  if (limit < 1) return '';
  return text.length <= limit && !PERHAPS_MARKED.test(text) ? text : joinWithin(escapedUnits(text), limit);
};

/** Text of at most `limit` characters for places that read no mark-up (labels, footers, alternative text). */
export const plainWithin = (text: string, limit: number): string => {
  if (limit < 1) return '';
  return text.length <= limit ? text : joinWithin(Array.from(text), limit);
};
