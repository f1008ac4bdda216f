/** Which answer to the question in hand a member's words mean: what they are like, and what their words weigh, held against each other. */
import type { Vocabulary } from '../vocabulary.js';
import { guessAnswer } from './guess-answer.js';
import { isHedged } from './hedged.js';
import { approvesOf } from './reads-out.js';
import { likedAnswer, type LikedAnswer } from './liked-answer.js';
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

/**
 * So likely it is told whatever was asked, and so clear of the question's other answers, what the words are like is taken: of strangers'
 * replies 98 in 100 are then right.
 */
const [TOLD, CLEAR] = [0.2, 0.8];
/** Less is enough where the words were weighed for the same, or to be asked back. */
const [LIKE, FAINTLY] = [0.05, 0.01];
/** Beside something else that was told. */
const TOLD_ASIDE = 0.5;
/** What is like none of the answers is asked back where their own words are so near. */
const NEAR = 0.7;
/** "Older", "the date": so few words are said to the question, and like nothing by themselves. */
const [FEW, WHOLE] = [2, 0.9];

const meantBy = ({ id, label, share }: LikedAnswer, isSure: boolean): AnswerMeant => ({
  id,
  label,
  score: share,
  isSure,
});

const isTold = ({ probability, share }: LikedAnswer, isAside: boolean): boolean =>
  share >= CLEAR && probability >= (isAside ? TOLD_ASIDE : TOLD);

/** What was weighed, held against what the words are like, which of two is right more often. */
const borneOut = (meant: AnswerMeant | null, liked: LikedAnswer, isAside: boolean): AnswerMeant | null => {
  const { probability, share } = liked;
  if (isTold(liked, isAside)) return meantBy(liked, true);
  const isSame = meant?.id === liked.id;
  if (isAside) return isSame || probability < LIKE ? meant : null;
  if (isSame && meant.isSure && probability >= LIKE) return meant;
  if (probability >= (share >= CLEAR ? FAINTLY : LIKE)) return meantBy(liked, false);
  const isNear = meant !== null && (meant.isSure || meant.score >= NEAR);
  return isNear ? { ...meant, isSure: false } : null;
};

/** As weighed, or as the words are like; null where neither tells. */
const heardAs = (
  vocabulary: Vocabulary,
  text: string,
  question: QuestionInHand,
  weighed: WeighedWords,
): AnswerMeant | null => {
  const meant = orLikeliest(weighed, question);
  const { said, isPlain } = weighed;
  if (meant?.isSure === true && isPlain) return meant;
  const liked = likedAnswer(vocabulary, text, question);
  if (liked === null || approvesOf(liked, said, question)) return meant;
  if (meant?.isSure === true && said.words.length <= FEW && meant.score >= WHOLE && liked.probability < FAINTLY)
    return meant;
  return borneOut(meant, liked, question.isAside === true);
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
  const likeliest = heardAs(vocabulary, text, question, weighed);
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
  return weighed?.meant?.isSure === true && heardAs(vocabulary, text, question, weighed)?.isSure === true;
};
