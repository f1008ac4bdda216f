/** Two answers to the question in hand in one line: "one kind when it slews, the other when nothing happens for long". */
import { answerMeant, holdsEither, readText, takesBack, type AnswerMeant, type Reading } from '../../reading/index.js';
import type { WalkState } from '../../triage/index.js';
import { readWords } from './read-notes.js';
import { answersOf } from './step-data.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';

/** Words that set two things side by side. */
const BESIDE = 'and|also|or|plus|either|other(?:s| times?| ones?| kinds?)?|another|sometimes|two';
const BETWEEN_PARTS = new RegExp(`[.;:,/]+|\\b(?:${BESIDE}|second(?:ly)?)\\b|(?<=\\s)[1-3]\\)`, 'iu');
/** Named to say that it is not so, or no more. */
const SET_APART =
  /\b(?:not?|never|without|fine|ok(?:ay)?|well|perfect(?:ly)?|used to|last (?:year|month|week)|before|until|thought|works?|isn['’]?t|doesn['’]?t|don['’]?t|won['’]?t)\b/iu;
/** "When nothing happens", "if nobody touches it" are moments. */
const IN_QUIET =
  /\b(?:no ?(?:thing|body|one)|not (?:touch\w*|us\w*|mov\w*|do\w*)|no (?:motion|movement|slew\w*|use))\b/giu;
/** At no clear moment: it says nothing beside two that are named. */
const VAGUE = 'random';
/** A comma alone stands between the parts of any account. */
const SIDE_BY_SIDE = new RegExp(`\\b(?:${BESIDE}|both)\\b|[1-3]\\)`, 'iu');
/** Beside one that is sure, a part need only be likely where such a word says that there are two. */
const NEAR_ENOUGH = 0.6;
const SURENESS = 0.8;
/** More of them are a list read out. */
const MOST = 3;

const meantBy = ({ context: { model }, before }: Began, part: string, least: number): AnswerMeant | null => {
  if (part.trim() === '' || SET_APART.test(part.replace(IN_QUIET, ' '))) return null;
  const { step } = before;
  const good = model.check(step.id)?.good;
  const answers = answersOf(before).filter(({ id }) => model.check(step.id)?.answers.some((own) => own.id === id));
  const told = readText(model.reading, part).facts.findLast(({ what, or }) => what === step.id && or === undefined);
  const found = answers.find(({ id }) => id === told?.answer);
  const meant =
    found === undefined
      ? answerMeant(model.reading, part, { id: step.id, answers, good })
      : { ...found, score: 1, isSure: true };
  return meant !== null && meant.id !== good && (meant.isSure || meant.score >= least) ? meant : null;
};

/** The two or three answers that the parts of a line hold; none where it holds one. */
const bothIn = (began: Began, text: string): readonly AnswerMeant[] => {
  const { step } = began.before;
  if (step.kind !== 'ask' || step.opening || !holdsEither(step.id) || takesBack(text)) return [];
  const least = SIDE_BY_SIDE.test(text) ? NEAR_ENOUGH : Infinity;
  const meant = text.split(BETWEEN_PARTS).flatMap((part) => meantBy(began, part, least) ?? []);
  const apart = [...new Map(meant.map((one) => [one.id, one])).values()];
  const clear = apart.filter((one) => one.id !== VAGUE);
  if (clear.length > 1 && clear.length <= MOST && clear.some(({ isSure }) => isSure)) return clear;
  return apart.length > 1 && apart.length <= MOST && apart.some(({ isSure }) => isSure) ? apart : [];
};

/**
 * @param told the record with the words, and what else was read of them
 * @returns null where they hold one answer or none
 */
export const takeBothSaid = (began: Began, text: string, told: WalkState, read: Reading): Turn | null => {
  const last = told.events.at(-1);
  if (read.by !== 'words' || !isAsked(began) || last?.kind !== 'text') return null;
  const { id } = began.before.step;
  if (read.facts.some(({ what, or }) => what === id && or !== undefined)) return null;
  const [first, ...others] = bothIn(began, text);
  if (first === undefined) return null;
  const fact = {
    what: id,
    answer: first.id,
    or: others.map((other) => other.id),
    sureness: SURENESS,
    quote: text.trim().slice(0, 120),
    by: 'words' as const,
  };
  const rest = <One extends { readonly what: string }>(facts: readonly One[]): One[] =>
    facts.filter(({ what }) => what !== id);
  const label = [first, ...others].map((one) => one.label).join('; ');
  const state = {
    ...told,
    events: [...told.events.slice(0, -1), { ...last, facts: [...rest(last.facts), fact], guesses: rest(last.guesses) }],
  };
  const all: Reading = {
    ...read,
    understood: [{ fact, label }, ...read.understood.filter((one) => one.fact.what !== id)],
    perhaps: rest(read.perhaps),
  };
  return changed(began, state, { notes: readWords(began.context.model, all), at: began.before.step });
};
