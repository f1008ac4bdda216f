/** The answers of a question as words: each label and its pieces, and the phrases that members put it in. */
import type { Vocabulary } from '../vocabulary.js';
import { leadOf, type Lead } from './lead.js';
import type { AnswerLabel, QuestionInHand } from './question-in-hand.js';
import { carries, saidText, type SaidWord } from './said-words.js';

export interface Part {
  readonly words: readonly SaidWord[];
  readonly isWhole: boolean;
  readonly by: 'label' | 'phrase';
}

export interface Weighed extends AnswerLabel {
  readonly lead: Lead['says'] | null;
  readonly parts: readonly Part[];
}

/** "No, or it runs apart": each way of saying an answer by itself, and the whole. */
const partsOf = (vocabulary: Vocabulary, label: string): readonly Part[] => {
  const whole = saidText(vocabulary.sayings.lexicon, label).words;
  const pieces = label
    .split(/,? or |[,;:/]/u)
    .map((piece) => saidText(vocabulary.sayings.lexicon, piece).words)
    .filter((words) => words.some(({ word }) => carries(word)));
  return [
    { words: whole, isWhole: true, by: 'label' },
    ...(pieces.length > 1 ? pieces.map((words) => ({ words, isWhole: false, by: 'label' as const })) : []),
  ];
};

export const weigh = (vocabulary: Vocabulary, { id: check, answers }: QuestionInHand): readonly Weighed[] =>
  answers.map((answer) => {
    const parts = partsOf(vocabulary, answer.label);
    const phrases = vocabulary
      .wordedAnswers(check, answer.id)
      .map((words) => ({ words, isWhole: true, by: 'phrase' as const }));
    return { ...answer, parts: [...parts, ...phrases], lead: leadOf(parts[0]?.words ?? [], 0)?.says ?? null };
  });
