/** "No change. Then I put 7 in and off she goes": the remedy did nothing, and something else that the member did was the cure. */

const NO_CHANGE = [
  'no (?:change|difference|luck|joy|effect|good|help|use)',
  'not (?:that|it|this)',
  'nothing(?: changed| happened| at first| with that)?',
  '(?:(?:it|that|this) )?(?:did|made) (?:nothing|no (?:difference|odds))',
  "(?:(?:it|that|this) )?(?:did ?n['\u2019]?o?t|has ?n['\u2019]?o?t) (?:help(?:ed)?|work(?:ed)?|do it|do anything|chang\\w+|fix(?:ed)? it|cure it)",
  'same(?: as before| again)?',
].join('|');
const FIRST = new RegExp(
  `^\\s*(?:(?:hm+|well|sorry|ok|first|so),? )*(?:${NO_CHANGE})\\b[^.;,!]{0,30}?(?:[.;,!]+\\s*(?:and |but |so )?|\\s+(?=(?:then|but|until|till|before)\\b))(?<rest>.+)$`,
  'isu',
);
/** What the member did, or what it was. */
const DONE =
  /\b(?:i|we)(?: have|['\u2019]ve| then| just| also)* (?:put|set|chose|took|did|got|made|found|typed|picked|cut|let|turned|\w+ed)\b|\b(?:it|that) was (?:the|my|a)\b|\b\w+ing\b.{0,40}\b(?:did|fixed|cured|solved|helped)\b|\bthat (?:fixed|did|cured|solved)\b|\bnew \w+/iu;

/** The words on what cured it; null where they say no such thing. */
export const saidBesides = (text: string): string | null => {
  const rest = FIRST.exec(text)?.groups?.['rest'];
  return rest !== undefined && DONE.test(rest) ? rest : null;
};
