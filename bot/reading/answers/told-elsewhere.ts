/**
 * Which other question of a walk words answer that are no answer to the one in hand: the one question that they speak of far more than
 * of any other, where its answers hold one that they surely are.
 */
import { onceOf } from '../../ground/once.js';
import type { Vocabulary } from '../vocabulary.js';
import { answerMeant } from './answer-meant.js';
import type { QuestionInHand } from './question-in-hand.js';
import { carries, saidText, type SaidText, type SaidWord } from './said-words.js';
import { speaksOf } from './speaks-of.js';
import { takesBack } from './takes-back.js';

export interface ToldElsewhere {
  readonly check: string;
  readonly answer: string;
  readonly label: string;
  /** Plainly: to be taken; else to be asked back. */
  readonly isPlain: boolean;
}

/** How far they speak of it, and how much further than of any other, to be taken. */
const PLAINLY = { ratio: 3, ahead: 1 } as const;
/** Said against something told before, it need be less plain. */
const PLAINLY_INSTEAD = { ratio: 2.4, ahead: 0.5 } as const;
/** To be asked back: with so much between it and the next, every second of strangers' lines meant it; with less, one in five. */
const LIKELY = { ratio: 1.9, ahead: 1 } as const;
/** As the walk stands: a rarer answer is not taken so, or not even asked back. */
const TAKEN_ABOVE = 0.06;
const ASKED_ABOVE = 0.01;
const LEAST_WORDS = 3;
const MOST_WORDS = 30;
/** One word that carries something says too little. */
const LEAST_CARRYING = 2;

const labelsIn = onceOf((_: Vocabulary) => new Map<string, readonly (readonly SaidWord[])[]>());

const labelsOf = (vocabulary: Vocabulary, { id, answers }: QuestionInHand): readonly (readonly SaidWord[])[] => {
  const known = labelsIn(vocabulary);
  const before = known.get(id);
  if (before !== undefined) return before;
  const labels = answers.map(({ label }) => saidText(vocabulary.sayings.lexicon, label).words);
  known.set(id, labels);
  return labels;
};

const tellsSomething = ({ words, asks }: SaidText): boolean =>
  asks === 'no' &&
  words.length >= LEAST_WORDS &&
  words.length <= MOST_WORDS &&
  words.filter(({ word }) => carries(word)).length >= LEAST_CARRYING;

/** What only leads up to it. */
const LEADS_UP =
  /^(?:(?:oh|ah|no|ok|sorry|wait|hang on|hold on|actually|by the way|btw|fyi|just saw|i (?:just )?(?:saw|see|noticed|found|remember(?:ed)?|forgot to (?:say|mention|tell you)|should (?:say|mention|add))(?: that| now)?|i was (?:wrong|mistaken)|silly me|my mistake|oops|correction|no wait|i see now|must say|also)[,.:; ]+)+/iu;

/** How surely it is said, and nothing of what. */
const IN_DOUBT = /\b(?:may ?be|perhaps|possibly|probably|i (?:think|guess|suppose|reckon)|or so)\b/giu;

/** How far the words speak of the question nearest to them; null: not far enough for anything. */
const standing = (ratio: number, next: number, text: string, words: readonly SaidWord[]) => {
  const ahead = ratio - next;
  // "On usb, not wifi" speaks of both.
  const plainly = takesBack(text) && !words.some(({ word }) => word === 'not') ? PLAINLY_INSTEAD : PLAINLY;
  const isAhead = ratio >= plainly.ratio && ahead >= plainly.ahead;
  const isLikely = ratio >= LIKELY.ratio && ahead >= LIKELY.ahead;
  return isAhead || isLikely ? { isAhead, isLikely } : null;
};

/**
 * @param inHand the id of the question that stands: where the words speak most of it, they tell nothing else
 * @param probabilityOf how likely an answer is as the walk stands, 0 to 1
 * @returns null where no one question stands out, or none of its answers is surely said
 */
export const toldElsewhere = (
  vocabulary: Vocabulary,
  text: string,
  questions: readonly QuestionInHand[],
  inHand: string,
  probabilityOf: (check: string, answer: string) => number,
): ToldElsewhere | null => {
  const own = text.trim().replace(LEADS_UP, '').replace(IN_DOUBT, ' ');
  const said = saidText(vocabulary.sayings.lexicon, own);
  const { words } = said;
  if (!tellsSomething(said)) return null;
  const counts = vocabulary.phraseCounts();
  const ranked = questions
    .map((question) => ({
      question,
      ratio: speaksOf(counts, question.id, labelsOf(vocabulary, question), words) ?? Number.NEGATIVE_INFINITY,
    }))
    .sort((a, b) => b.ratio - a.ratio);
  const [best, next] = ranked;
  if (best === undefined || best.question.id === inHand) return null;
  const stands = standing(best.ratio, next?.ratio ?? Number.NEGATIVE_INFINITY, text, words);
  const meant = best.question.guards === true || stands === null ? null : answerMeant(vocabulary, own, best.question);
  if (meant?.isSure !== true || stands === null) return null;
  const { id, label } = meant;
  const probability = probabilityOf(best.question.id, id);
  const isPlain = stands.isAhead && probability >= TAKEN_ABOVE;
  const isTold = isPlain || (stands.isLikely && probability >= ASKED_ABOVE);
  return isTold ? { check: best.question.id, answer: id, label, isPlain } : null;
};
