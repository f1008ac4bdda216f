/** Whether a member at a step wants to leave the walk: for a person who helps, or for good. */
import type { Vocabulary } from '../vocabulary.js';
import { saidText } from './said-words.js';
import { wantsNote } from './wants-note.js';

type LeavesWalk = 'person' | 'end';

/** Longer than this is a story, not a word about the walk. */
const LONGEST_WORDS = 22;

const PERSON =
  '(?:(?:an?|the|some|another|my) )?(?:real |actual |live |human |club |proper )?(?:someone|somebody|anyone|anybody|person|human|people|helper|helpers|expert|mentor|member|members)(?: else| real)?';
const HELPS =
  '(?:help|helps|look|come|take (?:over|this|it)|talk|speak|ring|call|step in|have a (?:look|go)|do (?:this|it)|fix|sort|show me|assist|explain|knows?)';
const WANTS = '(?:want|need|like|prefer|love|rather|can|could|may|let|get|please|must|how do|possible)';

const FOR_A_PERSON: readonly RegExp[] = [
  new RegExp(
    `\\b${WANTS}(?: [^ |]+){0,4} (?:speak|talk|chat|write|get through|turn|message|ask|reach|contact|find|have|get|need)(?: (?:to|with|from|for|hold of))* ${PERSON}(?: |$)(?!connect|open|us)`,
    'u',
  ),
  new RegExp(`(?:^| )(?:need|want|get me|fetch|call|would like|bring) ${PERSON}(?: |$)`, 'u'),
  new RegExp(
    `\\b(?:can|could|would|will|is|who|does|let|have|like|know)(?: [^ |]+){0,2} ${PERSON} (?:[^ |]+ ){0,5}${HELPS}\\b`,
    'u',
  ),
  new RegExp(
    `\\bwho (?:[^ |]+ ){0,5}(?:can|could|would|will|might) (?:i (?:ask|call|ring|talk|speak)|help|look|come)\\b`,
    'u',
  ),
  new RegExp(
    `\\b(?:(?:hand|pass|send|refer|transfer) (?:me|this|it)|put me) (?:[^ |]+ )?(?:on|over|through|to ${PERSON})(?: |$)|\\bput (?:this|it) (?:[^ |]+ )?(?:through|to ${PERSON})(?: |$)|(?:^|\\| |please |now |can you )(?:hand|pass) (?:on|over) to ${PERSON}(?: |$)`,
    'u',
  ),
  new RegExp(`^(?:please )?${PERSON}(?: please| at the club| from the club)*$`, 'u'),
  new RegExp(
    `(?:^| )${PERSON} (?:that |who )?(?:i|we) (?:can|could|may|might) (?:ask|call|ring|talk|speak|contact|message|write)`,
    'u',
  ),
  /\bwho (?:do|should|shall|can|could) (?:i|we) (?:ask|call|ring|speak|talk|contact|message)\b/u,
  new RegExp(`^(?:please )?${PERSON} (?:please )?(?:help|come)\\b|\\bhelp (?:me |us )?(?:please )?${PERSON}$`, 'u'),
  /^(?:i |we )?(?:[^ |]+ ){0,2}(?:like|want|going|ready|have) to give up$/u,
  /^hand on$/u,
  /(?:^|\| )(?:(?:ok|oh|right|sorry|no|well|honestly|and|so) )*(?:i (?:just )?(?:give|am giving) up|i surrender)(?: now| here| on this| with this)*(?: \||$)/u,
];

const LEADING = '(?:(?:ok|okay|please|just|no|right|oh|well|sorry|now|and|so|thanks) )*';
const TRAILING =
  '(?: (?:please|thanks|thank you|now|here|this|it|there|ok|for (?:now|tonight|today)|tonight|today|asking|then|the walk|with this))*';
const THE_WALK =
  '(?:(?:this|the|that|my|our|all) )*(?:walk|triage|fault finding|trouble ?shooting|questions|questioning|quiz|interrogation)';
const WALK_ENDS = `(?:(?:stop|quit|exit|cancel|end|close|finish|abandon|forget|leave|drop|scrap|ditch|kill|skip|delete)s?(?: (?:about|with))? ${THE_WALK}|(?:i am |we are )?(?:done|finished|through|fed up) with (?:this|it all|all this|all of this|${THE_WALK})|(?:enough|no more) (?:of )?(?:this|these questions|${THE_WALK}))`;
/** Each breath of it says so, and nothing else. */
const ENDS = new RegExp(
  `^${LEADING}(?:(?:(?:i think )?(?:i (?:want to|will|would like to|have to|must|am going to)|let us|lets|let s|we can|can we) ))?(?:stop|quit|exit|cancel|end|abandon|forgets? (?:about )?it|never mind|nevermind|nvm|scrap (?:it|that)|leaves? it|drops? it|enough|that is enough|i have had enough|had enough|call it a night|pack (?:it )?(?:in|up)|i am (?:off to bed|packing up)|i want out|(?:i am |we are )?done for (?:tonight|today)|bye|good night|goodnight|${WALK_ENDS})${TRAILING}$`,
  'u',
);

const THANKS = /^(?:(?:but|and) )?(?:thanks|thank you|cheers|ta|sorry)(?: anyway| all the same| for [^|]+)?$/u;

/** Told of others, or of another time. */
const TOLD = /\b(?:nobody|said|says|told|looked|helped|asked|already|before|until|unless|when|while)\b/u;

/** @returns null where the words are about the mount, or are pasted lines */
export const leavesWalk = ({ sayings }: Vocabulary, text: string): LeavesWalk | null => {
  if (/\n\s*\S/u.test(text.trim())) return null;
  if (wantsNote(text)) return 'person';
  const { words } = saidText(sayings.lexicon, text);
  if (words.length === 0 || words.length > LONGEST_WORDS) return null;
  const breaths: string[][] = [];
  let clause: number | null = null;
  for (const said of words) {
    if (said.clause !== clause) breaths.push([]);
    clause = said.clause;
    breaths.at(-1)?.push(said.word);
  }
  const lines = breaths.map((breath) => breath.join(' '));
  const whole = lines.join(' | ');
  if (!TOLD.test(whole) && FOR_A_PERSON.some((pattern) => pattern.test(whole))) return 'person';
  const meant = lines.filter((line) => !THANKS.test(line));
  return meant.length > 0 && meant.every((line) => ENDS.test(line)) ? 'end' : null;
};
