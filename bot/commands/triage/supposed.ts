/** "Could it be the wrong socket?": what the member wonders about is looked at next, where a check of this walk looks at it. */
import {
  meantChecks,
  supposedChecks,
  supposition,
  suspectedCause,
  thingOf,
  type Reading,
} from '../../reading/index.js';
import {
  lookOf,
  supposeCheck,
  supposing,
  suspectedFault,
  type CheckEntry,
  type Suspected,
  type WalkState,
} from '../../triage/index.js';
import { isLittle } from '../asking/sentence/words.js';
import { withOwnSuspicion, type Kept } from './own-suspicion.js';
import type { Began } from './turn.js';

const LEAST_LETTERS = 3;
/** What a word counts in the question itself. */
const IN_QUESTION = 2;
/** A word that so many checks speak of names none of them. */
const MOST_CHECKS = 5;

const wordsIn = (text: string): readonly string[] =>
  [...text.toLowerCase().matchAll(/[\p{L}\d]+/gu)].map(([word]) => word.replace(/(?<=\p{L}{3})(?:e?s|ed|ing)$/u, ''));

/** Told of the past and of the complaint itself: no look at anything. */
const NO_LOOK: readonly string[] = [
  'tried-already',
  'changed-last',
  'worked-before',
  'how-far',
  'message',
  'when-drops',
];

interface Spoken {
  readonly id: string;
  /** In what is asked, and in the answers. */
  readonly asked: ReadonlySet<string>;
  readonly answers: ReadonlySet<string>;
}

const spokenOf = ({ id, brief, question, answers }: CheckEntry): Spoken => ({
  id,
  asked: new Set(wordsIn(`${id} ${brief ?? ''} ${question}`)),
  answers: new Set(wordsIn(answers.map(({ label }) => label).join(' '))),
});

const OF_NO_THING = new Set(['itself', 'maybe', 'new', 'old', 'other']);
const contentOf = (cause: string): readonly string[] =>
  wordsIn(cause).filter((word) => word.length >= LEAST_LETTERS && !isLittle(word) && !OF_NO_THING.has(word));

/** Of "the tram line" a question that speaks of lines knows half. */
const isMostly = ({ asked, answers }: Spoken, cause: string): boolean => {
  const words = contentOf(cause);
  const isKnown = (word: string): boolean => asked.has(word) || answers.has(word);
  const head = contentOf(thingOf(cause)).at(-1);
  return 2 * words.filter(isKnown).length > words.length && (head === undefined || isKnown(head));
};

/** By the names of things alone: "my VPN", "the clutches". */
const byName = (checks: readonly CheckEntry[], cause: string, least = 1): readonly string[] => {
  const spoken = checks.map(spokenOf);
  const named = wordsIn(cause).filter((word) => {
    if (word.length < LEAST_LETTERS || isLittle(word)) return false;
    const count = spoken.filter(({ asked, answers }) => asked.has(word) || answers.has(word)).length;
    return count > 0 && count <= MOST_CHECKS;
  });
  const scoreOf = ({ asked, answers }: Spoken): number =>
    named.reduce((sum, word) => sum + (asked.has(word) ? IN_QUESTION : 0) + (answers.has(word) ? 1 : 0), 0);
  return spoken
    .map((one) => ({ id: one.id, score: scoreOf(one) }))
    .filter(({ score }) => score >= least)
    .sort((a, b) => b.score - a.score)
    .map(({ id }) => id);
};

/** Checks bear the name of what they look at: "socket-used". */
const bearsItsName = (check: string, cause: string): boolean => {
  const words = wordsIn(cause);
  return wordsIn(check.replaceAll('-', ' ')).some((part) => part.length >= LEAST_LETTERS && words.includes(part));
};

/** What was answered to a check last, and not only guessed. */
const answerOf = ({ situation, evidence }: Began['before'], check: string): string | null => {
  const index = situation.checkIndex.get(check) ?? -1;
  const last = evidence.observations.findLast((one) => one.check === index && one.guessed !== true);
  return last === undefined ? null : (situation.checks[index]?.answers[last.answer] ?? null);
};

/** The looks at what is supposed, nearest first: a thing shares a word with many, so likeness, or two words, must speak for one as well. */
const looksAt = ({ context: { model }, before }: Began, cause: string): readonly string[] => {
  const open = before.situation.checks.map(({ entry }) => entry);
  const spoken = byName(open, cause);
  const known = new Map(open.map((check) => [check.id, spokenOf(check)]));
  const isOfIt = (check: string): boolean => {
    const own = known.get(check);
    return own !== undefined && isMostly(own, cause);
  };
  return [
    ...supposedChecks(model.reading, cause).filter(
      (check) => (spoken.includes(check) && isOfIt(check)) || bearsItsName(check, cause),
    ),
    ...byName(open, cause, IN_QUESTION).filter(isOfIt),
  ].filter((one) => !NO_LOOK.includes(one));
};

/** That remedy, or that look, stands before the member already. */
const isInHand = ({ before: { step } }: Began, found: Suspected | null): string | null => {
  if (found === null) return null;
  const { fault } = found;
  if (step.kind === 'try' && step.id === fault.id)
    return 'That is what this remedy is for: try it, and tell me what came of it.';
  return step.kind === 'ask' && step.id === lookOf(fault) ? 'This question looks at just that.' : null;
};

/** "The GPS time service be opening it": the cause and what is said of it. */
const sentenceFrom = (cause: string, text: string): string =>
  text.slice(Math.max(0, text.indexOf(cause))).split(/[.?!;]/u)[0] ?? cause;

const looksOf = (found: Suspected | null): readonly string[] =>
  found === null ? [] : [lookOf(found.fault) ?? []].flat();

/** The record with that look next, or with the member's own suspicion; null where nothing is supposed, or it was looked at. */
export const supposedNext = (
  began: Began,
  text: string,
  state: WalkState,
  { by, facts, named: toldOutright }: Reading,
): Kept | null => {
  const { context, before } = began;
  const { model } = context;
  if (by !== 'words' || toldOutright.length > 0) return null;
  const outright = suspectedCause(text);
  const isTold = began.isOpening === true || facts.some(({ what }) => model.check(what) !== undefined);
  const cause = outright ?? (isTold ? null : supposition(text));
  if (cause === null) return null;
  const fault = suspectedFault(model, before, cause, text);
  const inHand = isInHand(began, fault);
  if (inHand !== null) return { state, note: inHand };
  const meant = meantChecks(model.reading, sentenceFrom(cause, text)).filter((one) => !NO_LOOK.includes(one));
  for (const check of [...meant, ...looksAt(began, cause), ...looksOf(fault)]) {
    // What it is about was looked at: another look by a word in common is none at it.
    if (answerOf(before, check) !== null) return null;
    const next = supposeCheck(before, state, check, { by: context.by, said: outright ?? '' });
    if (next !== null) return { state: next, note: null };
  }
  return outright === null || fault !== null ? null : withOwnSuspicion(began, outright, state);
};

/** So many causes named in one breath are looked at. */
const MOST_NAMED = 3;

/** The record with the looks at the causes that the words name; as it was where they name none. */
export const withNamed = ({ context: { by } }: Began, state: WalkState, { named }: Reading): WalkState =>
  named.slice(0, MOST_NAMED).reduce((at, { check, quote }) => supposing(at, check, quote, by), state);

/** "Clutches: One gives way. …" where what the member wonders about was told or looked at; null otherwise. */
export const supposedStands = (began: Began, text: string): string | null => {
  const { context, before } = began;
  const { model } = context;
  const suspected = suspectedCause(text);
  const cause = suspected ?? supposition(text);
  if (cause === null) return null;
  const open = before.situation.checks.map(({ entry }) => entry);
  const like =
    suspected === null ? [...supposedChecks(model.reading, cause), ...byName(open, cause)] : looksAt(began, cause);
  const [first] = [...looksOf(suspectedFault(model, before, cause)), ...like].filter((one) => !NO_LOOK.includes(one));
  const answer = first === undefined ? null : answerOf(before, first);
  const check = model.check(first ?? '');
  const label = check?.answers.find(({ id }) => id === answer)?.label;
  if (check === undefined || label === undefined) return null;
  const told = `${check.brief ?? check.question}: ${label}, as you told me.`;
  return check.good === answer ? `${told} So hardly.` : `${told} That speaks for it.`;
};
