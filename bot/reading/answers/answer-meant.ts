/** Which answer to the question in hand a member's words mean: as weighed, where what is learnt bears it out; else the likeliest, to be asked back. */
import type { Vocabulary } from '../vocabulary.js';
import { guessAnswer } from './guess-answer.js';
import { isHedged } from './hedged.js';
import type { AnswerMeant, QuestionInHand } from './question-in-hand.js';
import { isSaidPlainly } from './said-plainly.js';
import { saidText } from './said-words.js';
import { weighWords, type WeighedWords } from './weigh-words.js';

/** How likely it must be that an answer is meant: to be taken where its words say so, and to be asked back at all. */
const SURE_ENOUGH = 0.4;
const WORTH_ASKING = 0.45;

const orLikeliest = (weighed: WeighedWords, { isAside }: QuestionInHand): AnswerMeant | null => {
  const { answers, meant, isPlain } = weighed;
  if (isAside === true || (isPlain && meant?.isSure === true)) return meant;
  const guess = guessAnswer(weighed);
  if (guess === null) return meant;
  if (meant?.isSure === true && meant.id === guess.id && guess.probability >= SURE_ENOUGH) return meant;
  if (guess.probability < WORTH_ASKING) return null;
  const { label = '' } = answers.find(({ id }) => id === guess.id) ?? {};
  return { id: guess.id, label, score: guess.probability, isSure: false };
};

/** "I don't know which speed it wants", "not sure if it blinks": a doubt about a thing says nothing of it for sure. */
const BEGINS_IN_DOUBT =
  /^\W*(?:(?:sorry|well|hm+|um+|ok|honestly|and|but),? )*(?:i(?:['\u2019]?m| am)? )?(?:(?:do ?n['\u2019]?t|do not|dont) (?:really )?know|dunno|not (?:really |quite )?sure|no idea|unsure) (?:which|what|how|whether|if|where|about)\b/iu;

/** That all is well is not asked back of a doubt. */
const inDoubt = (meant: AnswerMeant | null, { good }: QuestionInHand): AnswerMeant | null =>
  meant === null || meant.id === good ? null : { ...meant, isSure: false };

/** @returns null where the words say none of the answers, ask back, are a story, or only guess at what must be looked at */
export const answerMeant = (vocabulary: Vocabulary, text: string, question: QuestionInHand): AnswerMeant | null => {
  const weighed = weighWords(vocabulary, text, question);
  if (weighed === null) return null;
  const likeliest = orLikeliest(weighed, question);
  const meant = BEGINS_IN_DOUBT.test(text) ? inDoubt(likeliest, question) : likeliest;
  if (meant === null || question.guards !== true || meant.id !== question.good) return meant;
  // What keeps gear from harm is not suggested to anyone.
  const own = weighed.answers.find(({ id }) => id === meant.id);
  const isPlain =
    meant.isSure && own !== undefined && isSaidPlainly(own, saidText(vocabulary.sayings.lexicon, text), text);
  return isPlain && !isHedged(text) ? meant : null;
};

/** Whether the words hold an answer well enough to be taken; sooner told than which one is likeliest. */
export const saysAnswer = (vocabulary: Vocabulary, text: string, question: QuestionInHand): boolean => {
  const weighed = weighWords(vocabulary, text, question);
  return weighed?.meant?.isSure === true && orLikeliest(weighed, question)?.isSure === true;
};
