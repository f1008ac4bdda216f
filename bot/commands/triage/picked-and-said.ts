/** "2. it says it cannot open the port": an answer picked by its number, and words about it. */
import { wordCountOf } from '../../ground/fold-text.js';
import { isProblem } from '../../ground/problem.js';
import { isHedged, readText, sharesWords, type AnswerMeant, type Reading } from '../../reading/index.js';
import { answerStep, tellText, UNSURE } from '../../triage/index.js';
import { keptWords, withoutFactsOf } from './kept-words.js';
import { readWords } from './read-notes.js';
import { answersOf } from './step-data.js';
import { saidAfter } from './said-after.js';
import { answerInWords } from './answer-in-words.js';
import { changed, type Began, type Turn } from './turn.js';

/** A word of doubt and no more tells nothing about the pick. */
const LEAST_TOLD_WORDS = 3;

const labelOf = ({ before }: Began, answer: string): string | undefined =>
  answersOf(before).find(({ id }) => id === answer)?.label;

/** What the words surely say instead of the answer picked; null where they share a word with it, or say no other. */
const saidInstead = (began: Began, picked: string, text: string, read: Reading): AnswerMeant | null => {
  const { context, before } = began;
  const label = labelOf(began, picked) ?? '';
  const said = answerInWords(began, text, read);
  if (said?.isSure !== true || said.id === picked) return null;
  // A remedy's outcomes shade into each other, but for the cure.
  if (before.step.kind === 'try') return said.id === 'works' || picked === 'works' ? said : null;
  return sharesWords(context.model.reading.sayings.lexicon, text, label) ? null : said;
};

/** The path told in the words, where it is not the one picked. */
const otherPathSaid = ({ context: { model } }: Began, picked: string, read: Reading): string | null => {
  const told = read.facts.find(({ what }) => what === 'path')?.answer;
  if (told === undefined || told === picked || model.reading.family(told)?.includes(picked) === true) return null;
  return model.path(told) === undefined ? null : told;
};

const rivalOf = (began: Began, picked: string, text: string, read: Reading): string | undefined =>
  began.before.step.id === 'path'
    ? (otherPathSaid(began, picked, read) ?? undefined)
    : saidInstead(began, picked, text, read)?.id;

/**
 * A number with words about it: the number is the answer, and the words are read as well. Where they say another, which of the two is
 * meant is asked.
 * @returns null where the pick is not of the step in hand, or the words tell nothing
 */
export const takePickedAndSaid = (began: Began, picked: string, text: string): Turn | null => {
  const { context, walk, before } = began;
  const { model, by } = context;
  const { id } = before.step;
  if (wordCountOf(text) < LEAST_TOLD_WORDS && isHedged(text)) return null;
  const read = readText(model.reading, text);
  const label = labelOf(began, picked);
  if (label === undefined || read.by !== 'words') return null;
  const rival = picked === UNSURE ? undefined : rivalOf(began, picked, text, read);
  if (rival !== undefined)
    return changed(began, keptWords(by, walk.state, text), {
      notes: [`Your number says “${label}”, your words “${labelOf(began, rival) ?? rival}”. Which is it?`],
      at: before.step,
      first: [picked, rival],
      few: true,
    });
  const understood = read.understood.filter(({ fact }) => fact.what !== id);
  const notes = readWords(model, { ...read, understood }, { id: picked, label, score: 1, isSure: true });
  const after = saidAfter(began, text, picked);
  if (after !== null) return changed(began, after, { notes });
  const told = tellText(model, walk.state, text, by).state;
  const state = answerStep(model, picked === UNSURE ? told : withoutFactsOf(told, id), id, picked, by);
  return isProblem(state) ? null : changed(began, state, { notes });
};
