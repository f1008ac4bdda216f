/** A question that asks which of several lines is wrong, answered by reading the lines out: that finds none of them wrong. */
import type { AnswerLabel, QuestionInHand } from './question-in-hand.js';
import type { SaidText } from './said-words.js';

/** How the sound answer begins where a question asks which of several things is wrong. */
const ASKS_WHAT_IS_WRONG = /^(?:none|all|everything|nothing|no)\b/iu;

const LISTED = /\b(?:com ?\d+|tty\w+|\d{4,6}|[5-8][noe][12]|\d+ ?m?s)\b|\d[.:\u00b0]\d/giu;
const FOUND_WRONG =
  /\b(?:wrong|not|n['\u2019]?t|differ\w*|other|another|instead|should|was|off|bad|missing|changed|swapped|mixed|only|too|no)\b/iu;

/** Read out line by line as it stands, which says of no line that it is wrong. */
export const readsOut = (text: string, { answers, good }: QuestionInHand): boolean =>
  answers.some(({ id, label }) => id === good && ASKS_WHAT_IS_WRONG.test(label)) &&
  (text.match(LISTED) ?? []).length >= 2 &&
  !FOUND_WRONG.test(
    text.replace(
      /\bno (?:\w+ )?(?:flow|hand)\w*|\bflow control (?:is )?off\b|\bno (?:idea|clue)\b|\bnot sure\b/giu,
      '',
    ),
  );

/** What is found as it should be. */
const APPROVES = new Set('fine ok okay right correct good matches perfect alright'.split(' '));

/** "The time is right" does not say that the time is what is wrong, where the sound answer is that nothing is. */
export const approvesOf = (meant: AnswerLabel, said: SaidText, { answers, good }: QuestionInHand): boolean =>
  meant.id !== good &&
  answers.some(({ id, label }) => id === good && ASKS_WHAT_IS_WRONG.test(label)) &&
  said.words.some(({ word, denied }) => APPROVES.has(word) && !denied && !meant.label.toLowerCase().includes(word));
