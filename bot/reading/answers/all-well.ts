/** "None of it", "nothing of that", "all fine there": one word on all the things that a question lists. */
import type { AnswerLabel } from './question-in-hand.js';

const BEFORE =
  '(?:(?:no|nope|nah|well|oh|ok|okay|yes|yep|sorry|hm+|checked|checked (?:it|them|the lot|everything|every one)(?: all)?|looked(?: at (?:all|them|it)(?: of (?:it|them))?)?|i (?:have )?(?:checked|looked at|went through|gone through|been through) (?:it|them|the lot|everything|every one|all)(?: of (?:it|them))?|been through (?:it|them|the lot)(?: all)?|already said(?: so| that)?|i (?:already )?(?:said|told you)|as i said|honestly|all checked|far as i can (?:see|tell)|as far as i (?:can )?(?:see|tell|know))[,.:; ]+(?:and |but |it is |its )?)*';
const THESE =
  '(?:it|that|this|them|these|those|the (?:above|list|lot|lines|things|doubts|entries|plugs|rest|four|six)|your (?:list|doubts|questions))';
const AFTER =
  '(?:[,. ]+(?:here|there|apply|applies|apply here|is true|are true|true|at all|mate|thanks|sorry|tonight|now|as well|is the case|really|either|whatsoever|far as i can (?:see|tell)|as far as i (?:can )?(?:see|tell|know)|i checked|(?:i )?(?:have )?(?:just )?(?:double )?(?:checked|looked)(?: it| them)?(?: twice| again| all)?|honestly|for sure|with (?:it|that|them|these|those)|i can (?:see|find)|with (?:my|the) (?:phone|manual|sheet|list|book|watch)|on (?:it|them|that)|in (?:it|them|that)|of (?:it|them|that|those|these)|to be (?:found|seen)|nothing|none|i (?:think|believe|guess)))*[ .!]*';
const NONE = [
  `(?:none|nothing|not one|not any|nowt|neither|no|never a one|zero|not a (?:single )?(?:one|thing))(?: (?:at all )?(?:of|in|on|from|to) (?:any |all |either )?(?:of )?${THESE})`,
  `no (?:to (?:all|each|every one|everything|both)(?: of ${THESE})?|doubts?(?: (?:here|at all|on my side))?|such (?:thing|doubts?))`,
  '(?:none|nothing|nowt|not one|zero|nought|nil)',
  '(?:none|nothing|no(?:ne)? ?(?:one)?) (?:of (?:these|those|them) )?(?:appl(?:y|ies)|(?:is|are) true|fits?|(?:is|was) the case|there)',
  `(?:i )?(?:have|had|got|can see|see|find|found|do|did) (?:none|nothing)(?: of ${THESE})?`,
  `(?:it|that)(?:['\u2019]?s| is) none(?: of ${THESE})?`,
];
const GOOD =
  '(?:fine|ok|okay|right|correct|good|well|in order|as (?:it|they) should(?: be)?|alright|all right|sound|perfect|spot on|tight|home|on|in|firm|true|match(?:es|ing)?|agree(?:s|ing)?|the same|normal|clean|proper|there)';
const SUBJECT = `(?:(?:all|everything|every (?:one|line|plug|entry|single one|bit)|each(?: one| line)?|both|they(?: all)?|it all|it is all|it['\u2019]?s all|its all|the lot|the whole lot|these|those|all of ${THESE}|everything (?:on|in|of|along) (?:it|that|the list|there))|all (?:the )?(?:lines|plugs|entries|four|five|six|settings))`;
const ONE_GOOD =
  '(?:the )?(?!(?:not|no|nothing|none|never|hardly|isnt|half)\\b)\\p{L}+(?: time| zone)?(?: is|:)? (?:ok|okay|fine|right|correct|good|matches)';
const ALL_GOOD = [
  `${SUBJECT}(?:['\u2019]?s| is| are| was| were| looks?| seems?| reads?| checks? out| agrees?| match(?:es)?)?(?: (?:all|both|quite|to be|also|exactly|perfectly))*(?: ${GOOD})?(?: (?:and|n|&) ${GOOD})*`,
  `(?:nothing|none|not one|nowt)(?: (?:is|are|was|looks|seems))? (?:wrong|off|amiss|odd|loose|different|missing|out of (?:order|place)|bad|unusual)(?: (?:with|in|on|about|at|among) (?:any(?: of)? )?${THESE})?`,
  // "Date ok, time ok, longitude ok, latitude ok": one by one, and fewer may leave some out.
  `(?:${ONE_GOOD}(?:,? and |[,;.] ?)){3,}${ONE_GOOD}`,
  '(?:no|not any|not an?) (?:wrong|fault|mistake|error|problem|difference)s?(?: (?:there|anywhere|at all|in (?:it|them|any)|at all|that i can see))?',
];

const whole = (sayings: readonly string[]): RegExp => new RegExp(`^${BEFORE}(?:${sayings.join('|')})${AFTER}$`, 'iu');
const SAYS_NONE = whole(NONE);
const SAYS_ALL_GOOD = whole(ALL_GOOD);

const LONGEST = 90;

const ASKED_FIRST = /^(?:where|how|which|what) [^?]{1,50}\? (?=\p{L})/iu;

/** @returns whether the words say of all that the question lists that none is so, or that all is as it should be */
const saysOfAll = (text: string): 'none' | 'all-good' | null => {
  const said = text.trim().replace(/\s+/gu, ' ').replace(ASKED_FIRST, '');
  if (said.length > LONGEST || said.includes('?')) return null;
  if (SAYS_NONE.test(said)) return 'none';
  return SAYS_ALL_GOOD.test(said) ? 'all-good' : null;
};

/** How the sound answer begins where a question goes through several things. */
const NOTHING_WRONG = /^(?:none|nothing|no\b)/iu;
const ALL_RIGHT = /^(?:none|nothing|all|everything|both|yes\b|they\b|it works properly)/iu;

/** "None, look, it moves": of the list, with something else behind it that takes none of it back. */
const NONE_FIRST = /^(?:no[, ]+)?none(?: of (?:them|these|those|it))?(?:[,.;!:]+ |$)/iu;
const NONE_BUT =
  /\b(?:but|except|apart|besides?|only|unless|maybe|perhaps|though|although|however|well|wait|actually|sorry|or)\b/iu;
const NONE_OF_THEM = /^none of (?:them|these|those)\b/iu;

const noneFirst = (text: string, answers: readonly AnswerLabel[]): AnswerLabel | null => {
  const said = text.trim();
  if (!NONE_FIRST.test(said) || NONE_BUT.test(said)) return null;
  return answers.find(({ label }) => NONE_OF_THEM.test(label)) ?? null;
};

/** @returns the sound answer where the words say it of all at once, or the one that is none of those listed */
export const allWell = (
  text: string,
  answers: readonly AnswerLabel[],
  good: string | undefined,
): AnswerLabel | null => {
  const none = noneFirst(text, answers);
  if (none !== null) return none;
  const sound = answers.find(({ id }) => id === good);
  if (sound === undefined) return null;
  const says = saysOfAll(text);
  if (says === 'none') return NOTHING_WRONG.test(sound.label) ? sound : null;
  return says === 'all-good' && ALL_RIGHT.test(sound.label) ? sound : null;
};
