/**
 * "All match now except it says E", "speed ok, parity not": of several things that a question asks after, all are well but one. What is
 * meant is the one, however much is said of the others.
 */
import { rememberLines } from '../lately.js';
import type { AnswerLabel } from './question-in-hand.js';
import { saidText, type SaidText } from './said-words.js';
import type { Lexicon } from '../words/lexicon.js';

const WELL =
  '(?:fine|ok(?:ay)?|right|correct|good|well|same|match(?:es|ing)?|agrees?|in order|identical|true|yes|check|tick|as (?:it|they|the \\w+) (?:should(?: be)?|says?)|bene|giusto|gut|richtig|stimmt|bien|bon)';
const ALL =
  '(?:all|everything|every (?:one|line|other \\w+)|each|the (?:rest|others?|lot)|others?|rest|they|these|those|both|nothing (?:wrong|else|really|much|at all|like that|of that|of (?:it|them|those|these))|none(?: of (?:it|them|those|these|that))?|tutto|alles|todo|tout|only (?:thing|one|line|bit)|just)';
/** What stands behind it is the odd one. */
const EXCEPT =
  '(?:except(?:ing)?(?: for)?|apart from|aside from|other than|save(?: for)?|bar(?:ring)?|besides|well(?=,? (?:my|the|i|we|there|a|an|it)\\b)|with the exception of|(?:all )?but(?: not| for)?|only|just|bis auf|ausser|außer|nur|salvo|sauf|menos|tranne|solo)';
const BY_EXCEPTION = new RegExp(`\\b${ALL}\\b(?<well>.*?)[,;.\\s]+\\b${EXCEPT}\\b\\s+(?<odd>\\S.*)$`, 'isu');
const ONLY_ONE = new RegExp(
  "^\\W*(?:(?:the )?only (?:thing|one|line|bit|difference)(?: that['\\u2019]?s| that is| thats| which is)?(?: (?:off|wrong|odd|different|not right|amiss))?(?: is| are|:)|only|just|nur|solo) (?<odd>\\S.*)$",
  'isu',
);
/** Without one of these, or a word that all is well, nothing is set apart. */
const SETS_APART = new RegExp(`\\b${EXCEPT}\\b`, 'iu');
const APPROVED = new RegExp(`\\b${WELL}\\b`, 'iu');
const DENIED =
  /\b(?:not?|nope|wrong|off|differs?|different|other|another|bad|swapped|missing|nothing$|dead|n['’]?t|nicht|non|pas)\b/iu;
/** Not wrong is well. */
const NOT_WRONG =
  /\b(?:no|not|nothing|none|never|without|\w+n['\u2019]t)\b.{0,20}\b(?:loose|wrong|off|differ\w*|odd|missing|bad|broken|amiss|damaged|dirty|bent|faults?|trouble|problems?)\b/iu;
const UNSURE =
  /\b(?:not (?:so |quite |really )?(?:sure|certain)|(?:do not|don['\u2019]?t|dont) know|no idea|unsure|think)\b|(?<!\b(?:isnt it|isn['\u2019]?t it|is it|right|no|or|innit))\?/iu;
const IS_DENIED = new RegExp(`\\b(?:not|n['\\u2019]?t|never) (?:\\w+ )?${WELL}\\b`, 'iu');
const PARTS = /[,;.!\n]+(?!\d)|\s-+\s|\b(?:but|and|while|whereas)\b/iu;
const LONGEST = 160;
const LONGEST_ODD = 90;

interface SetApart {
  readonly words: string;
  /** Said to be wrong; else it stands behind several that are well, and only what it names tells. */
  readonly isPlain: boolean;
}

const LEAST_WELL = 2;
/** Of several asked after, some are answered with no. */
const NO_TO_SOME = /\bno to (?:the )?(?:first|other|others|last|rest|both|most)\b/iu;

/** Each part says that something is well or that it is not: those that say the latter, or that follow several which are well. */
const oddParts = (text: string): SetApart | null => {
  const parts = text
    .split(PARTS)
    .map((part) => part.trim())
    .filter((part) => part !== '');
  const isWell = (part: string): boolean =>
    NOT_WRONG.test(part) || NO_TO_SOME.test(part) || (APPROVED.test(part) && !IS_DENIED.test(part));
  const isOdd = (part: string): boolean =>
    !NOT_WRONG.test(part) &&
    !NO_TO_SOME.test(part) &&
    (IS_DENIED.test(part) || (DENIED.test(part) && !APPROVED.test(part)));
  const behind = (at: number): string =>
    parts
      .slice(at)
      .filter((part) => !isWell(part))
      .join(', ');
  if (!parts.some(isWell)) return null;
  const odd = parts.filter(isOdd);
  // What follows says more of it: "parity not, its even".
  if (odd.length === 1) return { words: behind(parts.findIndex(isOdd)), isPlain: true };
  const isNo = parts.some((part) => NO_TO_SOME.test(part));
  const isListed = isNo || (text.match(new RegExp(APPROVED.source, 'giu')) ?? []).length >= LEAST_WELL;
  const rest = isListed && odd.length === 0 ? behind(parts.findLastIndex(isWell) + 1) : '';
  return rest === '' ? null : { words: rest, isPlain: false };
};

const apartIn = (text: string): SetApart | null => {
  const said = text.trim().replace(/\s+/gu, ' ');
  if (said.length > LONGEST || !(SETS_APART.test(said) || APPROVED.test(said)) || UNSURE.test(said)) return null;
  const { odd } = BY_EXCEPTION.exec(said)?.groups ?? ONLY_ONE.exec(said)?.groups ?? {};
  return odd === undefined ? oddParts(said) : { words: odd.slice(0, LONGEST_ODD), isPlain: true };
};

const setApart = rememberLines(apartIn);

/** Letters of the globe name its number. */
const named = (odd: string): string =>
  odd
    .replace(/(?<![\p{L}'’])(?:[EW]|east|west)(?![\p{L}'’])/gu, 'longitude')
    .replace(/(?<![\p{L}'’])(?:[NS]|north|south)(?![\p{L}'’])/gu, 'latitude');

const stemsOf = ({ words }: SaidText): ReadonlySet<string> =>
  new Set(words.flatMap(({ stem, isTelling }) => (isTelling ? [stem] : [])));

/** How the sound answer begins where a question goes through several things. */
const OF_ALL = /^(?:none|nothing|all|everything|both|yes|they|it matches)\b/iu;
/** Of several, one. */
const ONE = /^(?:only )?one\b|\bonly one\b/iu;

export interface OddOne {
  readonly id: string | null;
  /** What is said of it. */
  readonly words: string;
}

/**
 * The answer that names the odd one.
 * @returns null where no one is set apart; `id` null where it is, and no answer, or more than one, names it
 */
export const oddOne = (
  lexicon: Lexicon,
  text: string,
  answers: readonly AnswerLabel[],
  good: string | undefined,
): OddOne | null => {
  const sound = answers.find(({ id }) => id === good);
  if (sound === undefined || !OF_ALL.test(sound.label)) return null;
  const odd = setApart(text);
  if (odd === null) return null;
  const others = answers.filter(({ id }) => id !== good);
  const said = stemsOf(saidText(lexicon, named(odd.words)));
  const scored = others
    .map(({ id, label }) => ({
      id,
      shared: [...stemsOf(saidText(lexicon, label))].filter((stem) => said.has(stem)).length,
    }))
    .sort((a, b) => b.shared - a.shared);
  const [first, second] = scored;
  if (first !== undefined && first.shared > 0 && first.shared > (second?.shared ?? 0))
    return { id: first.id, words: odd.words };
  return odd.isPlain ? { id: others.find(({ label }) => ONE.test(label))?.id ?? null, words: odd.words } : null;
};
