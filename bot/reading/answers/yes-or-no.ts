/** A yes or a no to what was asked back, in whatever tongue it comes: "aye", "yeah thats it", "ja", "no, the other socket". */

const FILLERS = '(?:oh|ah|ok|okay|um+|er+m?|hm+|well|so|and|but|sorry|ooh|ha|haha)';
const YES = [
  'y(?:es|eah|ea|ep|up|ip|h|e|a|us|ess)?|yes+|yeah+|aye+|ay|yas',
  'correct(?:o)?|right|exactly|precisely|indeed|absolutely|definitely|certainly|sure(?: thing)?|of course|affirmative|affirm|true|agreed|confirmed|positive|bingo|roger',
  'spot on|bang on|dead right|quite(?: right| so)?|just so|too right|you (?:got|have|guessed) it|got it in one|u got it|youve got it',
  "(?:that|this|it)(?:['\u2019]?s| is| was| would be)? ?(?:it|the one|the very one|right|correct|so|one|true|the case|what i (?:meant?|said|see|saw|have|had|get|got))",
  'that|that one|this one|i (?:did|do|have|was|am)|(?:it|that|they) (?:is|does|was|did|has|are|do)',
  'ja(?:wohl|a)?|jep|jo|genau|richtig|stimmt|s[i\u00ed]|claro|eso(?: es)?|exacto|correcto|oui|ouais|voil[a\u00e0]|da|tak|sim|hai|ano|igen|evet|esatto|certo',
  'uh[ -]?huh|mm?h[ -]?m+|mhm|ok(?:ay)?|\u{1F44D}\\p{Emoji_Modifier}?|\u2713|\u2714\uFE0F?|\u2705|\u{1F44C}',
].join('|');
const NO = [
  'no+|nope|nah+|na|nay|nein|non|nee|niet|nej|nem|neg(?:ative)?|wrong|incorrect|not (?:that|this|it|the one|right|quite|really|so|correct)(?: one)?(?: at all)?',
  "(?:that|it|this)(?:['\u2019]?s| is|t)? not(?: (?:it|that|the one|right|so|what i (?:meant?|said)))?|(?:that|it)(?: is|'?s)? wrong|(?:that|it) isn['\u2019]?t(?: it| the one| right)?",
  "(?:neither|none|no[nt]e? one)(?: of (?:them|those|these|that|it))?(?: really)?|i (?:did not|didn['\u2019]?t|do not|don['\u2019]?t)(?: mean (?:that|it))?",
  '\u{1F44E}\\p{Emoji_Modifier}?|\u274C',
].join('|');
const END = '(?=$|[\\s,.;:!?\u2026\u2013-])';
const BETWEEN = '[\\s,.;:!?\u2026\u2013-]*';
/** Round a yes, without changing it. */
const ROUND =
  "(?:mate|thanks?|thank you|cheers|please|pls|then|one|there|i (?:think|guess|suppose|reckon|believe)|i['\u2019]?d say|more or less|pretty much|sort of|kind of|i mean[t]?|now|sir|love|pal|bro|dear|indeed)";

const leadWith = (words: string): RegExp =>
  new RegExp(`^${BETWEEN}(?:${FILLERS}${END}${BETWEEN})*(?:(?:${words})${END}${BETWEEN})+`, 'iu');
const LEADS_YES = leadWith(YES);
const LEADS_NO = leadWith(NO);
const MERELY_ROUND = new RegExp(`^(?:${BETWEEN}(?:${ROUND}|${FILLERS})${END})*${BETWEEN}$`, 'iu');
const OPENS_REST = new RegExp(
  `^(?:(?:${FILLERS}|rather|more like|i (?:mean|meant|said)|it['\u2019]?s|it is|it was|more|actually)${END}${BETWEEN})+`,
  'iu',
);

export interface YesOrNo {
  readonly says: 'yes' | 'no';
  /** What else is said behind it; empty where nothing is. */
  readonly rest: string;
}

const LONGEST = 120;

/** Without a pause only these answer what was asked: "no light" and "right socket" tell something. */
const ANSWERS_ALONE = {
  yes: /(?:^|\s)(?:y(?:es|eah|ea|ep|up|ip|h)|aye|ja|oui|exactly|correct|indeed|absolutely|definitely)\s*$/iu,
  no: /(?:^|\s)(?:nope|nah|nay|nein|neither|none|(?:neither|none) of \w+|neither really|negative)\s*$/iu,
} as const;
const GOES_ON =
  /^(?:it|its|it['\u2019]s|i|im|i['\u2019]m|when|the|only|more|rather|they|my|at|in|on|after|before|during|actually|cos|because)\b/iu;

/** Whether what stands behind the yes or no is a breath of its own. */
const isApart = (says: 'yes' | 'no', lead: string, rest: string): boolean =>
  /[,.;:!\u2026\u2013-]\s*$/u.test(lead) ||
  ANSWERS_ALONE[says].test(lead) ||
  (says === 'no' && /(?:^|\s)no+\s*$/iu.test(lead) && GOES_ON.test(rest));

/** @returns null where the line begins with neither */
export const yesOrNo = (text: string): YesOrNo | null => {
  const said = text.trim();
  if (said.length > LONGEST) return null;
  for (const [says, leads] of [
    ['no', LEADS_NO],
    ['yes', LEADS_YES],
  ] as const) {
    const lead = leads.exec(said)?.[0];
    if (lead === undefined) continue;
    const behind = said.slice(lead.length).trim();
    if (behind === '' || MERELY_ROUND.test(behind)) return { says, rest: '' };
    if (!isApart(says, lead, behind)) return null;
    return { says, rest: behind.replace(says === 'no' ? OPENS_REST : /^$/u, '') };
  }
  return null;
};
