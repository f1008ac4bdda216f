/** Words that answer another question of the walk than the one in hand: taken where they plainly do, else asked back. */
import { isProblem } from '../../ground/problem.js';
import { NO_CLIENT, takesBack, toldElsewhere, type Reading, type ToldElsewhere } from '../../reading/index.js';
import {
  answerInstead,
  answerStep,
  movedBy,
  wantsPlainWords,
  whatEachAnswerSays,
  type WalkState,
} from '../../triage/index.js';
import { fitted } from './fitted.js';
import { saidBefore } from './said-before.js';
import { lastSaidToIt } from './last-said.js';
import { changed, isAsked, type Began, type Turn } from './turn.js';
import { answerLine, briefOf } from './walk-words.js';

const LONGEST_LABEL = 70;

/** The opening question about the way to the mount. */
const WAY = 'path';

/** How likely each answer of a check is, as the walk stands; the way to the mount is anybody's. */
export const probabilityIn =
  ({ context: { model }, before }: Pick<Began, 'context' | 'before'>) =>
  (check: string, answer: string): number => {
    const entry = model.check(check);
    if (entry === undefined) return 1;
    const asked = { ...before, step: { kind: 'ask', id: check, opening: false, check: entry, because: null } } as const;
    const label = entry.answers.find(({ id }) => id === answer)?.label;
    return whatEachAnswerSays(asked).find((one) => one.label === label)?.probability ?? 0;
  };

const toldIn = (began: Began, text: string): ToldElsewhere | null => {
  const {
    context: { model },
    before,
  } = began;
  const checks = before.situation.checks.map(({ entry }) => ({
    id: entry.id,
    answers: entry.answers,
    good: entry.good,
    guards: wantsPlainWords(entry),
  }));
  const way = { id: WAY, answers: model.paths.map(({ id, title }) => ({ id, label: title })) };
  const told = (questions: typeof checks | readonly [typeof way, ...typeof checks]): ToldElsewhere | null =>
    toldElsewhere(model.reading, text, questions, before.step.id, probabilityIn(began));
  // Sockets and leads are spoken of in the words for the way: what tells of one part goes first.
  return told(checks) ?? told([way, ...checks]);
};

/** "Lead in socket: A guider or accessory one". */
const named = ({ context: { model } }: Began, { check, label }: ToldElsewhere): string => {
  const entry = model.check(check);
  if (check === WAY) return `The way: ${label}`;
  return fitted(`${entry === undefined ? check : briefOf(entry)}: ${label}`, LONGEST_LABEL);
};

const SURENESS = 0.75;
const BEARS = 0.1;

/** Among what was read from the words last told. */
const withFact = (state: WalkState, { check, answer }: ToldElsewhere, quote: string): WalkState => {
  const last = state.events.at(-1);
  if (last?.kind !== 'text') return state;
  const fact = { what: check, answer, sureness: SURENESS, quote: quote.slice(0, 120), by: 'words' as const };
  return { ...state, events: [...state.events.slice(0, -1), { ...last, facts: [...last.facts, fact] }] };
};

/** Nothing was read of the words, or only by the way what kind of link or system it is. */
const tellsNoFact = ({ facts }: Reading): boolean =>
  facts.every(({ what }) => what === WAY || what === 'system' || what === 'client');

/** An answer to a question already answered, or picked, in its place. */
const takenFor = (began: Began, told: WalkState, found: ToldElsewhere, text: string): WalkState => {
  const { context, walk } = began;
  const { model, by } = context;
  if (found.check === WAY) {
    const state = answerStep(model, told, WAY, found.answer, by);
    return isProblem(state) ? told : state;
  }
  const earlier = saidBefore(walk.state.events).get(found.check);
  const isOther = earlier !== undefined && earlier !== found.answer;
  return isOther || takesBack(text) ? answerInstead(model, told, found, by) : withFact(told, found, text.trim());
};

/** Whether it stands so already. */
const stands = ({ walk, before }: Began, { check, answer }: ToldElsewhere): boolean =>
  (check === WAY ? before.context.path : saidBefore(walk.state.events).get(check)) === answer;

/** What speaks for a cause or against one is no answer to another question. */
const mayAnswerAnother = (read: Reading): boolean =>
  read.by === 'words' &&
  read.suggested.length === 0 &&
  tellsNoFact(read) &&
  !read.facts.some(({ what, answer }) => what === 'client' && answer === NO_CLIENT);

/** Another way to the mount turns the whole walk: only where it takes the place of something. */
const isToBeTaken = ({ before }: Began, { isPlain, check }: ToldElsewhere, text: string): boolean =>
  isPlain && (check !== WAY || before.context.path === null || takesBack(text));

/** An answer that bears on nothing in question is none to be offered. */
const bears = ({ before }: Began, { check, answer }: ToldElsewhere): boolean =>
  check === WAY || movedBy(before, check, answer) >= BEARS;

/**
 * @param told the record with the words, of which nothing else was read
 * @param isNear they are near an answer to the question in hand
 */
export const takeElsewhere = (
  began: Began,
  text: string,
  told: WalkState,
  read: Reading,
  isNear: boolean,
): Turn | null => {
  const { walk, before } = began;
  if (!isAsked(began) || !mayAnswerAnother(read)) return null;
  const found = toldIn(began, text);
  // What was said already is not asked back, nor anything twice in a row.
  if (found === null || stands(began, found)) return null;
  const label = named(began, found);
  if (isToBeTaken(began, found, text))
    return changed(began, takenFor(began, told, found, text), {
      notes: [`I take it: ${label}.`],
      at: before.step,
      few: true,
    });
  // At a remedy what came of it is asked, and no other question beside it.
  if (isNear || !bears(began, found) || before.step.kind === 'try' || lastSaidToIt(began) !== null) return null;
  return changed(began, told, {
    notes: [`Did you mean “${label}”? Or tell me in other words; yours are kept.`],
    at: before.step,
    few: true,
    offers: { label, run: answerLine(walk, found.check, found.answer) },
    asks: { kind: 'guessed', guesses: [{ what: found.check, answer: found.answer }] },
  });
};
