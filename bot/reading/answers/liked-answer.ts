/** Which answer to the question in hand the words are most like, by what thousands of members' words told of the same matter. */
import { rememberLately } from '../lately.js';
import { sentencesOf } from '../words/sentences.js';
import type { Vocabulary } from '../vocabulary.js';
import type { AnswerLabel, QuestionInHand } from './question-in-hand.js';

export interface LikedAnswer extends AnswerLabel {
  /** 0 to 1: how likely the words tell it at all, whatever was asked. */
  readonly probability: number;
  /** 0 to 1: of what speaks for any answer of the question, the part that speaks for this one. */
  readonly share: number;
}

/** Several questions are held against the same words in one turn. */
const probabilityIn = rememberLately(
  ({ likeness, sayings: { lexicon } }: Vocabulary, text) =>
    likeness()?.weighClauses(sentencesOf(lexicon, text)).probabilityOf ?? null,
);

/** @returns null where one of the answers keeps gear from harm: those are left to plain words */
export const likedAnswer = (
  vocabulary: Vocabulary,
  text: string,
  { id: check, answers }: QuestionInHand,
): LikedAnswer | null => {
  const known = vocabulary.likeness();
  if (known === null || !answers.every(({ id }) => known.isOpen(`${check}.${id}`))) return null;
  const probabilityOf = probabilityIn(vocabulary, text);
  if (probabilityOf === null) return null;
  const all = answers.map(({ id, label }) => ({ id, label, probability: probabilityOf(`${check}.${id}`) }));
  const total = all.reduce((sum, { probability }) => sum + probability, 0);
  const [best] = all.sort((one, other) => other.probability - one.probability);
  return best === undefined ? null : { ...best, share: total === 0 ? 0 : best.probability / total };
};
