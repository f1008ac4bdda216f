/** Which answer to the step in hand a member's words are: to a question, of a remedy, at the end of a mended walk. */
import {
  allWell,
  answerMeant,
  isCalledRight,
  labelHalf,
  namesLacked,
  NO_CLIENT,
  oddOne,
  type OddOne,
  outcomeSaid,
  readText,
  supplyFigures,
  withoutOtherThings,
  withoutSaidAlready,
  type AnswerMeant,
  type Reading,
} from '../../reading/index.js';
import { wordCountOf } from '../../ground/fold-text.js';
import { UNSURE, wantsPlainWords, type Step } from '../../triage/index.js';
import { afterCure } from './at-the-end.js';
import { tellsNoAnswer } from './corrected-opening.js';
import { probabilityIn } from './elsewhere.js';
import { SHOWN_BY_IT } from './kept-words.js';
import { lastSaidToIt, lastSaidToRemedy } from './last-said.js';
import { isAffirmed, isShortCure, saysWorksSo } from './short-cure.js';
import { answersOf } from './step-data.js';
import { isDenied, outcomeIn, outcomeLike } from './told-at-card.js';
import type { Began } from './turn.js';

/** A look that keeps gear from harm. */
export const isSafetyLook = (step: Step): boolean =>
  step.kind === 'ask' && !step.opening && wantsPlainWords(step.check);

export const questionOf = ({ context, before }: Began) => ({
  id: before.step.id,
  answers: answersOf(before).filter(({ id }) => id !== UNSURE),
  good: context.model.check(before.step.id)?.good,
});

/** Of the question in hand, what words are so like is taken: they were said to it. */
const TAKEN_WHERE_ASKED = 0.7;

/** What words are only like: less than that is asked back. */
const guessed = (
  answers: readonly { readonly id: string; readonly label: string }[],
  { perhaps }: Reading,
  check: string,
): AnswerMeant | null => {
  const like = perhaps.find(({ what }) => what === check);
  const found = answers.find(({ id }) => id === like?.answer);
  return like === undefined || found === undefined
    ? null
    : { ...found, score: like.sureness, isSure: like.sureness >= TAKEN_WHERE_ASKED };
};

/** What came of the remedy in hand; what words are only like is asked back. */
const outcomeMeant = (
  began: Began,
  text: string,
  read: Reading,
  meant: (id: string | null | undefined) => AnswerMeant | null,
): AnswerMeant | null => {
  const told = meant(outcomeIn(began, text, read));
  const said = outcomeSaid(began.context.model.reading, text);
  const like = outcomeLike(said);
  const found = told === null && like !== null ? meant(like.id) : null;
  return found === null || like === null ? told : { ...found, score: said.sureness, isSure: like.isSure };
};

/** Asks for the supply's volts and amps beside the mount's. */
const SUPPLY_LABEL = 'supply-amps';

/** Of all that the question asks after, the one that the words set apart from the rest; null where they set none apart. */
export const oddIn = (began: Began, text: string): OddOne | null => {
  const { context, before } = began;
  if (before.step.kind !== 'ask' || before.step.opening || isSafetyLook(before.step)) return null;
  const { answers, good } = questionOf(began);
  return oddOne(context.model.reading.sayings.lexicon, text, answers, good);
};

/** By the figures that are asked for, of all that the question lists, or in an option's own words. */
const saidOutright = (began: Began, step: Extract<Step, { kind: 'ask' }>, text: string): string | null => {
  if (step.id === SUPPLY_LABEL) return supplyFigures(text);
  if (isSafetyLook(step)) return null;
  const { answers, good } = questionOf(began);
  const well = allWell(text, answers, good);
  return (well ?? (step.opening ? null : labelHalf(text, answers)))?.id ?? null;
};

/** It answers whichever question of a computer is asked, and is one of none. */
const isNoComputer = ({ what, answer }: Reading['facts'][number]): boolean => what === 'client' && answer === NO_CLIENT;

/** "It does now", to a question whose yes says just that. */
const worksSo = (began: Began, text: string): string | null =>
  isShortCure(began, text) || isAffirmed(text)
    ? (answersOf(began.before).find(({ label }) => saysWorksSo(label))?.id ?? null)
    : null;

/** "Neither. The list shows the mouse and the hub": said ahead of all else, such a word is the answer, and what follows explains it. */
const SAID_FIRST =
  /^\W*(?<first>(?:neither|none|both|nothing|all|no|not|only)(?: (?:of (?:them|those|it)|listed|there|at all|match(?:es)?|flicker|change|light|lights|lit|one|two|both))?)\s*(?:[.,;!:\u2013-]\s|\bbut\b)\s*\S/iu;
const LEAST_SCORE = 0.75;
const saidFirst = (began: Began, step: Extract<Step, { kind: 'ask' }>, text: string): string | null => {
  const first = SAID_FIRST.exec(text)?.groups?.['first'];
  // A bare "no" may be said against what was asked before.
  if (first === undefined || /^(?:no|not|only|all)$/iu.test(first) || isSafetyLook(step)) return null;
  const meant = answerMeant(began.context.model.reading, first, questionOf(began));
  return meant === null || meant.score < LEAST_SCORE ? null : meant.id;
};

type Odd = OddOne | null;

/** The one set apart, or what is said outright; null where neither is. */
const saidOfItems = (began: Began, step: Extract<Step, { kind: 'ask' }>, text: string, odd: Odd): string | null =>
  saidFirst(began, step, text) ?? (odd === null ? (worksSo(began, text) ?? saidOutright(began, step, text)) : odd.id);

/** What all that was told leaves so unlikely is not asked back of words that are only near it. */
const HARDLY = 0.02;
const isHardlySo = (began: Began, step: Extract<Step, { kind: 'ask' }>, { id, isSure }: AnswerMeant): boolean =>
  !isSure && !step.opening && probabilityIn(began)(step.id, id) < HARDLY;

/** The answer that the words are nearest to. */
const nearestTo = (
  began: Began,
  step: Extract<Step, { kind: 'ask' }>,
  text: string,
  read: Reading,
  odd: Odd,
): AnswerMeant | null => {
  const { model } = began.context;
  const question = questionOf(began);
  const guards = isSafetyLook(step);
  // What is set apart says which it is.
  const meant = answerMeant(model.reading, odd?.words ?? text, {
    ...question,
    guards,
    isAside: wordCountOf(text) > SHORT && read.facts.some(({ what }) => model.check(what) !== undefined),
  });
  const like = guessed(answersOf(began.before), read, step.id);
  const isBorneOut = !guards && like?.isSure === true && (meant === null || meant.id === like.id);
  const best = isBorneOut ? like : (meant ?? (like === null ? null : { ...like, isSure: false }));
  // Something is set apart, though it is not clear what: it is not all well.
  return odd !== null && best?.id === question.good ? null : best;
};

/** … and that may be so, as the walk stands. */
const nearTo: typeof nearestTo = (began, step, ...said) => {
  const best = nearestTo(began, step, ...said);
  return best !== null && isHardlySo(began, step, best) ? null : best;
};

/** "Not lit": so few words are said to the question, whatever else they are said of. */
const SHORT = 3;

/** One of the lines that were read out, told by what is wrong with it. */
const ENTRY_TOLD: ReadonlyMap<string, string> = new Map([
  ['site-entries.east-west', 'longitude'],
  ['site-entries.north-south', 'latitude'],
  ['site-entries.another-place', 'place'],
  ['zone-entries.summer-time', 'summer-time'],
  ['zone-entries.sign', 'offset'],
  ['zone-entries.offset', 'offset'],
  ['date-entries.swapped', 'date'],
  ['date-entries.day-off', 'date'],
  ['date-entries.half-day', 'time'],
  ['date-entries.clock-off', 'time'],
  ['date-entries.reset', 'date'],
]);
const ENTRIES = 'entries-screen';
const entryTold = (read: Reading, check: string): string | undefined =>
  check === ENTRIES
    ? read.facts.map(({ what, answer }) => ENTRY_TOLD.get(`${what}.${answer}`)).find((one) => one !== undefined)
    : undefined;

/** "Dont own a multimeter": what the question in hand needs is not there. */
const isWithoutIt = (began: Began, text: string): boolean => {
  const { step } = began.before;
  if (step.kind !== 'ask' || step.opening) return false;
  const { question, how, brief } = step.check;
  return namesLacked(text, `${question} ${JSON.stringify(how ?? '')} ${brief ?? ''}`);
};

/** The answer that says so itself. */
const noneAmong = (began: Began): string | undefined =>
  answersOf(began.before).find(
    ({ id, label }) => id === 'none' || /^no (?:other|second|hand controller)\b/iu.test(label),
  )?.id;

/** Told outright it is in the record; a family of ways leaves the question which. */
const isInRecord = ({ before }: Began, told: string): boolean => answersOf(before).some(({ id }) => id === told);

/** "USB adapter" leaves two ways to the mount, and no other that the words are near to. */
const ofTold = (
  { context: { model } }: Began,
  step: Extract<Step, { kind: 'ask' }>,
  told: string,
  near: AnswerMeant | null,
): AnswerMeant | null => {
  const isOther = step.opening && step.id === 'path' && model.reading.family(told)?.includes(near?.id ?? '') === false;
  return isOther ? null : near;
};

/** "A 12 V adapter": what feeds the mount is no way to it. */
const OF_POWER = /^(?:power|supply)-/u;
const isOfSupply = ({ before: { step } }: Began, { facts }: Reading): boolean =>
  step.id === 'path' && facts.some(({ what }) => OF_POWER.test(what)) && !facts.some(({ what }) => what === step.id);

/** "It asked to stay connected without internet": of the network, and no word that the program connects. */
const OF_THE_NETWORK: readonly string[] = ['asked-to-stay', 'connected-without-internet', 'no-internet-alone'];
const isOfNetwork = ({ before: { step } }: Began, { facts, met }: Reading): boolean =>
  met?.some((id) => OF_THE_NETWORK.includes(id)) === true && !facts.some(({ what }) => what === step.id);

/** "Tried all USB sockets, same", "still 12.4 at the battery": what was tried changed nothing, or was measured, and is not what changed. */
const CHANGED_LAST = 'changed-last';
const OF_TRIALS =
  /^(?:other-(?:cable|usb-socket|computer|supply|adapter|program)|works-with-\w+|tried-already|power-saving|battery-volts|power-lead)$/u;
const isTrial = ({ before: { step } }: Began, { facts }: Reading): boolean =>
  step.id === CHANGED_LAST &&
  facts.some(({ what }) => OF_TRIALS.test(what)) &&
  !facts.some(({ what }) => what === CHANGED_LAST);

const isOfElse = (began: Began, read: Reading): boolean =>
  read.facts.some(isNoComputer) || isOfSupply(began, read) || isOfNetwork(began, read) || isTrial(began, read);

/** The answer to the question in hand. */
const answerToQuestion = (
  began: Began,
  text: string,
  read: Reading,
  sure: (id: string | null | undefined) => AnswerMeant | null,
): AnswerMeant | null => {
  const { before } = began;
  const { step } = before;
  if (step.kind !== 'ask') return null;
  if (isWithoutIt(began, text)) return sure(noneAmong(began) ?? UNSURE);
  const odd = oddIn(began, text);
  const outright = saidOfItems(began, step, text, odd);
  if (outright !== null) return sure(outright);
  const told = read.facts.findLast(({ what }) => what === step.id);
  // One of two answers: the record has it so.
  if (told?.or !== undefined) return null;
  const answer = told?.answer ?? entryTold(read, step.id);
  if (answer !== undefined && !step.opening) return sure(answer);
  if (tellsNoAnswer(began, text, read) || isOfElse(began, read)) return null;
  if (told === undefined) return nearTo(began, step, text, read, odd);
  return isInRecord(began, told.answer) ? null : ofTold(began, step, told.answer, nearTo(began, step, text, read, odd));
};

/** The answer to the step in hand that a member's words are, beside all else they tell; the nearest one where that is unsure. */
export const answerInWords = (began: Began, said: string, read: Reading): AnswerMeant | null => {
  const { context, before } = began;
  const whole = withoutSaidAlready(said) ?? said;
  const text = (SHOWN_BY_IT.has(before.step.id) ? withoutOtherThings(whole) : null) ?? whole;
  const sure = (id: string | null | undefined): AnswerMeant | null => {
    const found = answersOf(before).find((one) => one.id === id);
    return found === undefined ? null : { ...found, score: 1, isSure: true };
  };
  if (read.by !== 'words' || text === '') return null;
  // "As I told, it is disabled": what was said already is the answer.
  if (isDenied(began, said)) return sure('same');
  if (before.step.kind === 'try') return outcomeMeant(began, text, read, sure);
  if (before.step.kind === 'done') return afterCure(context.model, text, read);
  const answer = answerToQuestion(began, text, read, sure);
  return answer !== null && isCalledRight(text, `${before.step.id}.${answer.id}`) ? null : answer;
};

/** The answer that was asked back of the words before. */
export const nearestBefore = (began: Began): AnswerMeant | null => {
  const { reading } = began.context.model;
  const said = lastSaidToIt(began);
  if (said !== null) return answerInWords(began, said, readText(reading, said));
  const toRemedy = lastSaidToRemedy(began);
  const like = toRemedy === null ? null : outcomeLike(outcomeSaid(reading, toRemedy));
  const found = answersOf(began.before).find(({ id }) => id === like?.id);
  return found === undefined || like === null ? null : { ...found, score: 1, isSure: like.isSure };
};
