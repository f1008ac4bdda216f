/** The question in hand with its answers as words: each label and its pieces, and the phrases that members put it in. */
import type { Vocabulary } from '../vocabulary.js';
import { leadOf, type Lead } from './lead.js';
import { carries, saidText, type SaidWord } from './said-words.js';

export interface AnswerLabel {
  readonly id: string;
  /** As a member reads it. */
  readonly label: string;
}

export interface QuestionInHand {
  /** The check's. */
  readonly id: string;
  /** "Not sure" aside. */
  readonly answers: readonly AnswerLabel[];
  /** The answer of a sound set-up, where the question has one. */
  readonly good?: string | undefined;
  /** The sound answer lets gear be put to use that a wrong one would destroy: a guess is not enough for it. */
  readonly guards?: boolean | undefined;
  /** The words told something else already: they answer this too only where they use the answer's own words. */
  readonly isAside?: boolean | undefined;
}

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
