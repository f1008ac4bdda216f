/**
 * What a member's words say of a remedy, or of whatever was tried: the one reader of it, asked at a remedy, at a question, at the end and
 * after "Is it fixed?". Sayings tell it outright; where they are silent, the line's likeness to others tells how likely it is.
 */
import { rememberLately } from '../lately.js';
import { saidText, type SaidText } from '../answers/said-words.js';
import type { Vocabulary } from '../vocabulary.js';
import { NOTHING } from '../examples/weights.js';
import { likelyOutcomes, type LearnedOutcome } from './likely-outcome.js';
import { plainOutcome, type Plainly } from './plain-outcome.js';
import { saidBesides } from './cured-besides.js';
import { isSpoiled, soundsCured } from './sounds-cured.js';
import { isCureTaken } from './cure-taken.js';
import { questionBeside } from './question-beside.js';
import { withoutOfItself } from './of-itself.js';
import { withoutOutAndIn } from './out-and-in.js';
import { withoutSomethingElse } from './something-else.js';
import { curedByDeed } from './cured-by-deed.js';
import { heldFor } from './held-for.js';
import { wasSoAllAlong, withoutOtherWays } from './of-another-way.js';
import { isOnlyASign } from './only-a-sign.js';
import { isNoGoodNow } from './no-good-now.js';
import { isOfOtherTime } from './of-other-time.js';
import { asksWhatItIs, isNotDoneYet } from './not-done-yet.js';
import { isOnlySet } from './only-set.js';
import { isStillToCome } from './still-to-come.js';
import { statesFailure } from './states-failure.js';
import { whatRemains } from './what-remains.js';

export interface SaidOutcome {
  /**
   * `partly`: better, or one trouble of two is gone; `worse`: another trouble, or more of it; `done`: the remedy was done, or what it looks
   * for was found, without what came of it.
   */
  readonly what: LearnedOutcome | 'nothing';
  /** `sounds`: in words that sound so, wherever they are said; `like`: they are like those that say so. Both are to be asked back. */
  readonly how: 'outright' | 'sounds' | 'like';
  /** How likely the trouble is over, from 0 to 1. */
  readonly cure: number;
  /** A cure wherever it is said; other words are one after a remedy alone. */
  readonly isCureAnywhere: boolean;
  /** How likely `what` is, from 0 to 1. */
  readonly sureness: number;
  /** Plain enough at the remedy itself: taken, and not asked back. */
  readonly isCureAtRemedy?: true;
  /** A question asked in one breath with it. */
  readonly asks?: string;
  /** Unchanged by the remedy, and cured by something else that the member did. */
  readonly isCuredBesides?: true;
  /** Of what helped in part: the words on what is left, where they are said. */
  readonly remains: string | null;
}

/** Longer than this is a story or a paste, not a word on how a remedy went. */
const [LONGEST_WORDS, LONGEST_TEXT] = [45, 600];
/** A line that sounds cured, or tells of a right doing, is at least so likely a cure. */
const [SOUNDS, DOES_RIGHTLY] = [0.9, 0.7];
/** Less likely than this it is as good as not said. */
const LIKELY = 0.5;

const NOTHING_SAID: SaidOutcome = {
  what: 'nothing',
  how: 'like',
  cure: 0,
  isCureAnywhere: false,
  sureness: 0,
  remains: null,
};

/** Mended, with clauses parted by " | ". */
const lineOf = ({ words }: SaidText): string => {
  let line = '';
  let clause = words[0]?.clause ?? 0;
  for (const word of words) {
    line += word.clause === clause ? ` ${word.word}` : ` | ${word.word}`;
    clause = word.clause;
  }
  return line.trim().replace(/\b(it|that)s\b/gu, '$1 is');
};

/** Words as unlike their saying as this, and so like another's, are taken for the other's. */
const [UNLIKE, RIVAL] = [0.1, 0.8];

const OTHERS = ['partly', 'worse', 'unchanged', 'could-not', 'not-yet', 'asks-back'] as const;

interface Odds {
  readonly of: (what: LearnedOutcome) => number;
  /** Over, or the remedy done. */
  readonly cure: number;
  /** Of the likeliest. */
  readonly most: number;
  /** That they tell nothing of it: of another time, another's mount, a part that was never in doubt. */
  readonly nothing: number;
}

const oddsOf = ({ outcomes }: Vocabulary, said: SaidText): Odds => {
  const weights = outcomes();
  if (weights === null) return { of: () => 0, cure: 0, most: 0, nothing: 0 };
  const likely = likelyOutcomes(weights, said);
  const of: Odds['of'] = (what) => likely.get(what) ?? 0;
  const cure = of('cured') + of('done');
  return { of, cure, most: Math.max(...likely.values()), nothing: likely.get(NOTHING) ?? 0 };
};

const isRivalled = ({ most }: Odds, own: number): boolean => own < UNLIKE && most >= RIVAL;
const isNoCure = ({ cure, nothing }: Odds): boolean => cure < UNLIKE && nothing >= RIVAL;

/** @param atLeast how likely its words make a cure by themselves */
const likelySaid = (odds: Odds, atLeast: number, text: string): SaidOutcome => {
  const cure = Math.max(isNoCure(odds) ? 0 : atLeast, odds.cure);
  if (cure >= LIKELY) {
    const what = atLeast < LIKELY && odds.of('done') > odds.of('cured') ? 'done' : 'cured';
    return { ...NOTHING_SAID, what, how: atLeast >= SOUNDS ? 'sounds' : 'like', cure, sureness: cure };
  }
  const what = OTHERS.reduce((best, one) => (odds.of(one) > odds.of(best) ? one : best));
  const sureness = odds.of(what);
  if (sureness < LIKELY) return { ...NOTHING_SAID, cure };
  return { ...NOTHING_SAID, what, cure, sureness, remains: what === 'partly' ? whatRemains(text) : null };
};

/** @returns null where the words are nothing like it */
const plainlySaid = ({ outcome, isCureAnywhere }: Plainly, odds: Odds, text: string): SaidOutcome | null => {
  const own: SaidOutcome = { ...NOTHING_SAID, how: 'outright', sureness: 1 };
  if (outcome === 'cured') return isNoCure(odds) ? null : { ...own, what: 'cured', cure: 1, isCureAnywhere };
  if (outcome !== 'changed') return isRivalled(odds, odds.of(outcome)) ? null : { ...own, what: outcome };
  if (isRivalled(odds, odds.of('partly') + odds.of('worse'))) return null;
  return odds.of('worse') > odds.of('partly')
    ? { ...own, what: 'worse' }
    : { ...own, what: 'partly', remains: whatRemains(text) };
};

/** So likely must it be that the rest tells a cure. */
const CURED_BESIDES = 0.7;

const besidesOf = (vocabulary: Vocabulary, text: string): SaidOutcome | null => {
  const rest = saidBesides(text);
  const told = rest === null ? null : outcomeOf(vocabulary, rest.replace(/^(?:then|but|until|till|before)\b\s*/iu, ''));
  return told === null || told.what !== 'cured' || told.cure < CURED_BESIDES
    ? null
    : { ...NOTHING_SAID, what: 'unchanged', how: 'outright', sureness: 1, isCuredBesides: true };
};

/** Nothing came of it so far, by its own words: it was not done, or is asked about. */
const asideIn = (text: string): SaidOutcome | null => {
  const outright = { ...NOTHING_SAID, how: 'outright', sureness: 1 } as const;
  if (isNotDoneYet(text)) return { ...outright, what: 'not-yet' };
  return asksWhatItIs(text) ? { ...outright, what: 'asks-back' } : null;
};

const outcomeIn = (vocabulary: Vocabulary, text: string): SaidOutcome => {
  const beside = asideIn(text) ?? besidesOf(vocabulary, text);
  if (beside !== null) return beside;
  if (statesFailure(text)) return { ...NOTHING_SAID, what: 'unchanged', how: 'outright', sureness: 1 };
  if (heldFor(text)) return { ...NOTHING_SAID, what: 'cured', how: 'outright', cure: 1, sureness: 1 };
  const said = saidText(vocabulary.sayings.lexicon, text);
  const sounds = soundsCured(text) ? SOUNDS : 0;
  if (said.words.length === 0 || said.words.length > LONGEST_WORDS) return NOTHING_SAID;
  const odds = oddsOf(vocabulary, said);
  if (said.asks === 'plainly') {
    const asked: SaidOutcome = { ...NOTHING_SAID, what: 'asks-back', how: 'outright', sureness: 1 };
    return sounds > 0 && !isNoCure(odds) ? likelySaid(odds, sounds, text) : asked;
  }
  const plain = plainOutcome(lineOf(said), text);
  const outright = plain === null || plain === 'perhaps' ? null : plainlySaid(plain, odds, text);
  return outright ?? likelySaid(odds, Math.max(sounds, plain === 'perhaps' ? DOES_RIGHTLY : 0), text);
};

/** What a program believes, and a mount that stays while its numbers run, are no cure. */
const ONLY_BELIEVED =
  /\b(?:it|program|programme|software|app|screen|computer|laptop|handset|controller|mount)(?:['\u2019]?s)? (?:still |only |just |all )*(?:thinks?|thinking|believes?|claims?|reckons?|pretends?|imagines?)\b/iu;
const STAYS =
  /\b(?:tube|telescope|scope|mount|axis|ra|dec)\b[^,.;!?]{0,16}(?:\bnot|n['\u2019]?t|\bnever)\b[^,.;!?]{0,8}\b(?:mov|turn|budg|follow)\w*(?! (?:off|away|by itself|any))/iu;

/** What was to be done is still to do. */
const STILL_TO_DO =
  /\b(?:have|has|had) ?n['\u2019]?t (?:yet )?(?:got|typed|done|tried|set|put|changed|bought|opened|found|ordered|swapped)\b|\bstill (?:in the post|to come|on its way)\b|\bon order\b/iu;

const isNoneYet = (text: string): boolean =>
  ONLY_BELIEVED.test(text) ||
  STAYS.test(text) ||
  STILL_TO_DO.test(text) ||
  isStillToCome(text) ||
  wasSoAllAlong(text) ||
  isNoGoodNow(text) ||
  isOfOtherTime(text);

const GLAD_OR_NOW =
  /\b(?:now|at last|finally|thanks?|thank you|thx|ta|cheers|danke|merci|gracias|grazie|yay|hoo?ray|great|brilliant|lovely|as well)\b|!/iu;

/** What was done, and that it does as it should since: told in words that no saying has. */
const outcomeOrDeed = (vocabulary: Vocabulary, text: string): SaidOutcome => {
  const said = outcomeIn(vocabulary, text);
  const isSilent = said.what === 'nothing' || (said.what === 'cured' && said.how === 'like' && said.cure < SOUNDS);
  return isSilent && GLAD_OR_NOW.test(text) && !isSpoiled(text) && curedByDeed(text).isCured
    ? { ...NOTHING_SAID, what: 'cured', how: 'sounds', cure: SOUNDS, sureness: SOUNDS }
    : said;
};

const isOfAnotherWay = (vocabulary: Vocabulary, text: string): boolean => {
  const own = withoutOtherWays(text);
  return own !== null && (own === '' || outcomeOrDeed(vocabulary, own).what !== 'cured');
};

const outcomeOf = (vocabulary: Vocabulary, text: string): SaidOutcome => {
  const said = outcomeOrDeed(vocabulary, text);
  if (said.what === 'unchanged' && isFineSince(text))
    return { ...NOTHING_SAID, what: 'cured', cure: SOUNDS, sureness: SOUNDS };
  if (said.what !== 'cured' && DONE_NOT_TESTED.test(text))
    return { ...NOTHING_SAID, what: 'done', how: 'outright', sureness: 1 };
  const isGood = said.what === 'cured' || said.what === 'done';
  if (isGood && (isNoneYet(text) || isOfAnotherWay(vocabulary, text))) return NOTHING_SAID;
  if (isGood && (isOnlySet(text) || isOnlyASign(text)))
    return { ...said, what: 'done', how: 'like', isCureAnywhere: false };
  return isCureTaken(said, text) ? { ...said, isCureAtRemedy: true } : said;
};

/** "Power cycled the mount and it's ok": something was done for it; of what was looked at, it says that it was found right. */
const IS_FINE =
  /^(?<deed>.*\b(?:\w+ed|put|set|took|new)\b.*?)[,.;]? *\b(?:and|so|then|now)?,? *(?:its|it['\u2019]s|it is|all is|everything is|all) (?:now |all )?(?:ok(?:ay)?|fine|good|well)(?: now| again)?\W*$/isu;
const ONLY_LOOKED =
  /\b(?:check\w*|look\w*|test\w*|measur\w*|inspect\w*|saw|see|seen|read|felt|tried|was|were|already|same|still|no|not|is|are)\b|n['\u2019]t\b/iu;
const isFineSince = (text: string): boolean => {
  const deed = IS_FINE.exec(text)?.groups?.['deed'];
  return deed !== undefined && !ONLY_LOOKED.test(deed);
};

/** "I have changed to SID but there are clouds, I can not test it": the remedy is done. */
const DONE_NOT_TESTED =
  /\b(?:(?:did|done) (?:it|this|that) already|(?:i|we) (?:have |had |did |already )?(?:changed?|set|switched|swapped|replaced|typed|entered|removed|moved|put|did|done)|is (?:set|changed|done)|(?:changed|done|set) it)\b.*\b(?:can ?n[o'\u2019]?t|cannot|could ?n[o'\u2019]?t|not able to|have ?n[o'\u2019]?t|not yet|only not|did ?n[o'\u2019]?t) (?:yet |been able to )?(?:test|tested|try|tried|check|checked|see|look|prove)\b/isu;

const TELLS_NOTHING: ReadonlySet<SaidOutcome['what']> = new Set(['nothing', 'asks-back', 'not-yet']);

/** What came of it stands, whatever is asked behind it. */
const outcomeOrAsked = (vocabulary: Vocabulary, text: string): SaidOutcome => {
  const beside = questionBeside(text);
  const told = beside === null ? null : outcomeOf(vocabulary, beside.told);
  return beside === null || told === null || TELLS_NOTHING.has(told.what)
    ? outcomeOf(vocabulary, text)
    : { ...told, asks: beside.asks };
};

/** They say nothing that the words beside them do not; alone they are no words at all. */
const GLAD_SIGNS =
  /[\u{1F44D}\u{1F389}\u{1F973}\u{1F600}-\u{1F60E}\u{1F642}\u{1F64C}\u{1F4AA}\u{2705}\u{1F680}\u{2728}]\p{Emoji_Modifier}?\u{FE0F}?/gu;
const withoutGladSigns = (text: string): string => (/\p{L}/u.test(text) ? text.replace(GLAD_SIGNS, ' ') : text);

/** "0 drops" counts as "no drops" does, and "yesss" is a yes. */
const asWords = (text: string): string =>
  withoutOutAndIn(withoutOfItself(withoutSomethingElse(withoutGladSigns(text))))
    .replace(
      /(?<![\d.,])(?:0|zero|nil|not (?:a single|one)) (?=(?:errors?|drops?|dropouts?|disconnects?|problems?|trouble|issues?|time-?outs?)\b)/giu,
      'no ',
    )
    .replace(/(\p{L})\1{2,}/gu, '$1');

const outcomeLately = rememberLately((vocabulary: Vocabulary, text) => outcomeOrAsked(vocabulary, asWords(text)));

export const outcomeSaid = (vocabulary: Vocabulary, text: string): SaidOutcome =>
  text.length > LONGEST_TEXT ? NOTHING_SAID : outcomeLately(vocabulary, text);
