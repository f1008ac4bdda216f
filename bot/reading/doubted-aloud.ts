/** "How can it be the socket when the tablet works?": no question, but a cause denied and the reason for it told. */

const DOUBT =
  /\b(?:how|why) (?:can|could|would|should|on earth (?:can|could)) (?:it|that|this|the [a-z]+) be\b[^.?!,;\n]{0,40}?\b(?:when|if|since|because|as|while)\b(?=[^.?!\n]{0,60}\b(?:works?|worked|connects?|connected|fine|ok|okay|good|goes|finds?|sees?|runs?|does|charges?|lights?)\b)/iu;
const ASKED_BEHIND = /\?+/u;

export const doubtsAloud = (text: string): boolean => DOUBT.test(text);

/** The reason alone, each letter where it stood. */
export const reasonTold = (text: string): string => {
  const found = DOUBT.exec(text);
  if (found === null) return text;
  const behind = text.slice(found.index + found[0].length);
  const told = behind.replace(ASKED_BEHIND, (marks) => '.'.padEnd(marks.length));
  return `${text.slice(0, found.index)}${' '.repeat(found[0].length)}${told}`;
};
