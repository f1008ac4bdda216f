/**
 * Which other question of a walk words answer that are no answer to the one in hand: the one question that they speak of far more than
 * of any other, where its answers hold one that they surely are.
 */
import type { Vocabulary } from '../vocabulary.js';
import { answerMeant } from './answer-meant.js';
import type { QuestionInHand } from './question-in-hand.js';
import { carries, saidText, type SaidWord } from './said-words.js';
import { speaksOf } from './speaks-of.js';

export interface ToldElsewhere {
  readonly check: string;
  readonly answer: string;
  readonly label: string;
  /** Plainly: to be taken; else to be asked back. */
  readonly isPlain: boolean;
}

/** How far they speak of it, and how much further than of the next: to be taken, and to be asked back. */
const PLAINLY = { ratio: 3, ahead: 1 } as const;
const LIKELY = { ratio: 1.8, ahead: 0.5 } as const;
const LEAST_WORDS = 3;
const MOST_WORDS = 30;
/** One word that carries something says too little. */
const LEAST_CARRYING = 2;

const LABELS = new WeakMap<Vocabulary, Map<string, readonly (readonly SaidWord[])[]>>();

const labelsOf = (vocabulary: Vocabulary, { id, answers }: QuestionInHand): readonly (readonly SaidWord[])[] => {
  const known = LABELS.get(vocabulary) ?? new Map<string, readonly (readonly SaidWord[])[]>();
  LABELS.set(vocabulary, known);
  const before = known.get(id);
  if (before !== undefined) return before;
  const labels = answers.map(({ label }) => saidText(vocabulary.sayings.lexicon, label).words);
  known.set(id, labels);
  return labels;
};

/**
 * @param inHand the id of the question that stands: where the words speak most of it, they tell nothing else
 * @returns null where no one question stands out, or none of its answers is surely said
 */
export const toldElsewhere = (
  vocabulary: Vocabulary,
  text: string,
  questions: readonly QuestionInHand[],
  inHand: string,
): ToldElsewhere | null => {
  const { words, asks } = saidText(vocabulary.sayings.lexicon, text);
  if (asks !== 'no' || words.length < LEAST_WORDS || words.length > MOST_WORDS) return null;
  if (words.filter(({ word }) => carries(word)).length < LEAST_CARRYING) return null;
  const counts = vocabulary.phraseCounts();
  const ranked = questions
    .map((question) => ({
      question,
      ratio: speaksOf(counts, question.id, labelsOf(vocabulary, question), words) ?? Number.NEGATIVE_INFINITY,
    }))
    .sort((a, b) => b.ratio - a.ratio);
  const [best, next] = ranked;
  if (best === undefined || best.question.id === inHand) return null;
  const reaches = ({ ratio, ahead }: typeof PLAINLY | typeof LIKELY): boolean =>
    best.ratio >= ratio && best.ratio - (next?.ratio ?? Number.NEGATIVE_INFINITY) >= ahead;
  if (best.question.guards === true || !reaches(LIKELY)) return null;
  const meant = answerMeant(vocabulary, text, best.question);
  if (meant?.isSure !== true) return null;
  return { check: best.question.id, answer: meant.id, label: meant.label, isPlain: reaches(PLAINLY) };
};
