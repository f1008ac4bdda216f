/** The answers of a question as words: each label and its pieces, and the phrases that members put it in. */
import { createKept } from '../../ground/kept.js';
import type { Vocabulary } from '../vocabulary.js';
import { leadOf, type Lead } from './lead.js';
import type { AnswerLabel, QuestionInHand } from './question-in-hand.js';
import { onceOf } from '../../ground/once.js';
import { saidText, type SaidWord } from './said-words.js';

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
    .filter((words) => words.some(({ isTelling }) => isTelling));
  return [
    { words: whole, isWhole: true, by: 'label' },
    ...(pieces.length > 1 ? pieces.map((words) => ({ words, isWhole: false, by: 'label' as const })) : []),
  ];
};

const weighed = (vocabulary: Vocabulary, { id: check, answers }: QuestionInHand): readonly Weighed[] =>
  answers.map((answer) => {
    const parts = partsOf(vocabulary, answer.label);
    const phrases = vocabulary
      .wordedAnswers(check, answer.id)
      .map((words) => ({ words, isWhole: true, by: 'phrase' as const }));
    return { ...answer, parts: [...parts, ...phrases], lead: leadOf(parts[0]?.words ?? [], 0)?.says ?? null };
  });

/** About as many questions as two dozen walks have in hand. */
const MOST_QUESTIONS = 60;

const questionsOf = onceOf((_: Vocabulary) => createKept<string, readonly Weighed[]>(MOST_QUESTIONS));

/** The same question's answers are the same object as before, so that what is worked out of them may be kept beside them. */
export const weigh = (vocabulary: Vocabulary, question: QuestionInHand): readonly Weighed[] =>
  questionsOf(vocabulary)(JSON.stringify([question.id, question.answers.map(({ id, label }) => [id, label])]), () =>
    weighed(vocabulary, question),
  );

/** The answers by their labels alone. */
export const byLabels = onceOf((all: readonly Weighed[]): readonly Weighed[] =>
  all.map((answer) => ({ ...answer, parts: answer.parts.filter(({ by }) => by === 'label') })),
);
