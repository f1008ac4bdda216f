/** A yes or a no to "Did you mean …?", alone or with more about it. */
import { isProblem } from '../../ground/problem.js';
import { answerMeant, readText, yesOrNo, type AnswerMeant, type Reading } from '../../reading/index.js';
import { answerStep, tellText } from '../../triage/index.js';
import { keptWords, withoutFactsOf } from './kept-words.js';
import { notPlaced, readWords } from './read-notes.js';
import { answersOf } from './step-data.js';
import { answerInWords, isSafetyLook, nearestBefore, questionOf } from './answer-in-words.js';
import { changed, type Began, type Turn } from './turn.js';

/** Longer than this behind a yes is a tale of its own. */
const LONGEST_BEHIND_YES = 80;

/** "Yes" to "Did you mean …?", alone or with more about it. */
const takeYes = (began: Began, asked: AnswerMeant, rest: string): Turn | null => {
  const { context, walk, before } = began;
  const { model, by } = context;
  if (rest.length > LONGEST_BEHIND_YES) return null;
  const instead = rest === '' ? null : answerInWords(began, rest, readText(model.reading, rest));
  if (instead?.isSure === true && instead.id !== asked.id) return null;
  const told = rest === '' ? null : tellText(model, walk.state, rest, by);
  const state = answerStep(
    model,
    told === null ? walk.state : withoutFactsOf(told.state, before.step.id),
    before.step.id,
    asked.id,
    by,
  );
  if (isProblem(state)) return null;
  return changed(began, state, told === null ? {} : { notes: readWords(model, told.read, { ...asked, isSure: true }) });
};

const BEGINS_WITH_NO = /^no\b/iu;
/** With another refused outright, what the words are nearest to by so much is meant. */
const MEANT_INSTEAD = 0.5;

/** What stands behind a "no": the answer that it is instead, among the others. */
const insteadOf = (began: Began, asked: AnswerMeant, rest: string, told: Reading | null): AnswerMeant | null => {
  const { context, before } = began;
  const { model } = context;
  const question = questionOf(began);
  const others = question.answers.filter(({ id }) => id !== asked.id);
  const [only, second] = others;
  if (told === null) return only === undefined || second !== undefined ? null : { ...only, score: 1, isSure: true };
  const named = told.facts.findLast(({ what }) => what === before.step.id)?.answer;
  const found = others.find(({ id }) => id === named);
  if (found !== undefined) return { ...found, score: 1, isSure: true };
  const guards = isSafetyLook(before.step);
  const meant = answerMeant(model.reading, rest, { ...question, answers: others, guards });
  return meant !== null && !guards && meant.score >= MEANT_INSTEAD ? { ...meant, isSure: true } : meant;
};

const offeredInstead = (meant: AnswerMeant | null, rest: string): Partial<Turn> =>
  meant === null
    ? { notes: ['Not that one, then. Pick, or tell me in other words.'] }
    : { notes: [notPlaced(rest, meant)], first: [meant.id] };

/** "No" to it, alone or with what it is instead. */
const takeNo = (began: Began, asked: AnswerMeant, text: string, rest: string): Turn | null => {
  const { context, walk, before } = began;
  const { model, by } = context;
  // "No" to “No, just the same” agrees with it; of answers that begin so it is one itself.
  if (BEGINS_WITH_NO.test(asked.label)) return rest === '' ? takeYes(began, asked, '') : null;
  if (questionOf(began).answers.some(({ label }) => BEGINS_WITH_NO.test(label))) return null;
  const told = rest === '' ? null : tellText(model, walk.state, rest, by);
  const meant = insteadOf(began, asked, rest, told?.read ?? null);
  const state = told?.state ?? keptWords(by, walk.state, text);
  const after = meant?.isSure === true ? answerStep(model, state, before.step.id, meant.id, by) : null;
  if (after !== null && !isProblem(after))
    return changed(began, after, { notes: told === null ? [] : readWords(model, told.read, meant) });
  return changed(began, state, { ...offeredInstead(meant, rest), at: before.step, few: true });
};

const THEN_THIS = 'Good. Then on with this one:';

/** "Yes" to what was said back: "I take it: …" stands, and the question is still to be answered. */
const takeAgreed = (began: Began, text: string): Turn | null => {
  const { context, walk, before } = began;
  const { events, turns } = walk.state;
  const last = events.slice(turns.at(-1) ?? 0).findLast(({ kind }) => kind === 'text');
  const wasSaidBack = last?.kind === 'text' && last.facts.length > 0;
  const isOfYesOrNo = answersOf(before).some(({ label }) => /^(?:yes|no)\b/iu.test(label));
  if (before.step.kind !== 'ask' || !wasSaidBack || isOfYesOrNo) return null;
  return changed(began, keptWords(context.by, walk.state, text), { notes: [THEN_THIS], at: before.step, few: true });
};

/** What a yes or a no to "Did you mean …?" comes to; null where nothing was asked back, or neither was said. */
export const takeReply = (began: Began, text: string): Turn | null => {
  const reply = yesOrNo(text);
  const asked = reply === null ? null : nearestBefore(began);
  if (reply?.says === 'yes' && reply.rest === '' && asked === null) return takeAgreed(began, text);
  if (reply === null || asked === null || asked.isSure) return null;
  return reply.says === 'yes' ? takeYes(began, asked, reply.rest) : takeNo(began, asked, text, reply.rest);
};
