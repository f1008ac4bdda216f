/** Takes one turn of a walk: an answer, words or a paste, the numbers of a miss, a file, or a word about the walk itself. */
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import { forAnother, leavesWalk, readText, type Another, type Understood } from '../../reading/index.js';
import { CAUSE_IDS } from '../../pointing/miss/astray-types.js';
import {
  answerStep,
  assess,
  NUMBERS,
  stepBack,
  tellText,
  UNSURE,
  wordsIn,
  type WalkState,
} from '../../triage/index.js';
import { askedIfFixed, STILL_GOOD, takeFixedReply, takeSoundsCured } from './asks-fixed.js';
import { count, mayEnd, takeClosing } from './closing.js';
import { notHasty } from './not-hasty.js';
import { plainAnswer, splitAnswer } from './plain-answer.js';
import { doesWhatFailed } from './told-at-card.js';
import { takeCuredInWords } from './cured-in-words.js';
import { doingTyped } from './doing-typed.js';
import { named, type Found } from './find-walk.js';
import { takePickedAndSaid } from './picked-and-said.js';
import { asking, takeGuessed, takeListed } from './asked-beside.js';
import { takeReply } from './replied.js';
import { takeOfTheTalk } from './said-of-the-talk.js';
import { takeAsksOfStep } from './take-asks-step.js';
import { takeNoComputer } from './no-computer.js';
import { harmNear, sunHarmNear } from './harm-near.js';
import { keptWords } from './kept-words.js';
import {
  numbersSaid,
  placedNumbers,
  plainlyNumbers,
  readNumbers,
  takeNumbers,
  type TypedNumbers,
} from './take-numbers.js';
import { entriesAndPlace } from './entries-told.js';
import { keepPlace, takePlace } from './place-in-walk.js';
import { withoutDenied } from './denied-first.js';
import { takeTerm, withoutTerm } from './take-term.js';
import { answersOf } from './step-data.js';
import { onlySureCures } from './only-sure-cures.js';
import { isGuessAtSafety, NO_GUESS, takeWords } from './take-words.js';
import {
  changed,
  SHOWINGS,
  wordsAlone,
  type Began,
  type Doing,
  type SaidInTurn,
  type Turn,
  type TurnContext,
} from './turn.js';
import type { Walk } from './walk-keeper.js';
import { hasBegun } from './walk-words.js';

const answerProblem = (allowed: readonly string[], walk: Walk): Problem =>
  allowed.length === 0
    ? problem(
        'unknown-answer',
        `That answers no question of this walk. See where it stands with: triage walk:${walk.id}`,
      )
    : problem('unknown-answer', `The answer must be one of: ${allowed.join(', ')}.`);

/** What `astray` may have found; `unknown`: none of its causes fits. */
const FOUND = new Set<string>([...CAUSE_IDS, 'unknown']);

const HOW_TO_TELL =
  'Do once more what failed before. If it goes now, it works; if it says or does the same as before, that is “No change”.';

/** Whether what came of this remedy was not to be told a moment ago. */
const isUnclear = (last: WalkState['events'][number] | undefined, fault: string): boolean =>
  last?.kind === 'try' && last.fault === fault && last.outcome === UNSURE;

const takeAnswer = async (began: Began, typed: string): Promise<Turn | Problem> => {
  const { context, walk, before } = began;
  const [step, answer] = splitAnswer(before, typed);
  if (step === 'count') return count(context, walk, answer, { step: before.step });
  if (step === 'found' && !FOUND.has(answer))
    return problem(
      'unknown-answer',
      `"${tidy(answer, 40)}" is no cause that astray names. Ask astray again, and take one of the causes it offers.`,
    );
  const unclear = answer === UNSURE && before.step.kind === 'try' && before.step.id === step;
  const wasUnclear = unclear && isUnclear(walk.state.events.at(-1), step);
  const state = answerStep(context.model, walk.state, step, wasUnclear ? 'could-not' : answer, context.by);
  if (isProblem(state))
    return state.problem === 'walk-too-long'
      ? problem('walk-too-long', 'This walk has grown too long. Start afresh with: triage do:new')
      : answerProblem(state.allowed, walk);
  const again =
    walk.state.events.some((event) => event.kind === 'answer' && event.check === step) &&
    !(before.step.kind === 'ask' && before.step.id === step);
  if (unclear && !wasUnclear) return changed(began, state, { notes: [HOW_TO_TELL], at: before.step });
  return changed(began, state, {
    notes: again ? ['You have answered that before; both looks count, the second one more.'] : [],
  });
};

const HOW_FAR = { check: 'how-far', answer: 'elsewhere' } as const;

/** Who types where the tube landed says that it moves and lands elsewhere. */
const movesAndMisses = ({ context, walk }: Began): WalkState['events'] =>
  context.model.check(HOW_FAR.check) === undefined ||
  walk.state.events.some((event) => event.kind === 'answer' && event.check === HOW_FAR.check)
    ? []
    : [{ kind: 'answer', ...HOW_FAR, by: context.by }];

const withWords = ({ walk, context: { by } }: Began, line: string): Walk => ({
  ...walk,
  state: keptWords(by, walk.state, line),
});

/** "York, England", to "There is more than one York": the numbers just told, with that place. */
const withPlaceTold = ({ context, walk, before }: Began, text: string): TypedNumbers | null => {
  if (before.step.kind !== NUMBERS) return null;
  const words = wordsIn(walk.state).at(-1);
  return words === undefined ? null : placedNumbers(words, text, context.deps, context.nowUtcMs);
};

const takeMiss = async (began: Began, line: string): Promise<Turn | null> => {
  const { context, walk } = began;
  const isAsked = began.before.step.kind === NUMBERS;
  const placed = withPlaceTold(began, line);
  const numbers = placed ?? readNumbers(line) ?? (isAsked ? numbersSaid(line, context.deps, context.nowUtcMs) : null);
  if (numbers === null) return null;
  const taken = await takeNumbers(context.deps, context, numbers, context.by);
  // Not asked for, a line that does not work out as numbers may still be words.
  if (isProblem(taken) && !isAsked) return null;
  // The words are kept: the place that is asked for completes them.
  if (isProblem(taken)) return { walk: withWords(began, line), notes: [...began.notes, taken.message], show: 'step' };
  const kept = placed?.site === undefined ? [] : await keepPlace(context, placed.site);
  return changed(
    began,
    { ...walk.state, events: [...walk.state.events, ...movesAndMisses(began), taken.event] },
    { notes: [...kept, ...taken.notes], rests: taken.reply },
  );
};

const takeBack = ({ context, walk, notes }: Began): Turn | Problem => {
  const state = stepBack(walk.state);
  if (state === null)
    return problem('nothing-to-take-back', 'Nothing has been said in this walk yet, so there is no step to go back.');
  const gone = walk.state.events.at(-1);
  const note = gone?.kind === 'text' ? `Taken back: “${tidy(gone.words, 60)}”` : 'Taken back one step.';
  const before = { ...walk, state, endedUtcMs: null, updatedUtcMs: context.nowUtcMs };
  return { walk: before, notes: [...notes, note], show: 'step' };
};

const withoutHelper = (walk: Walk): Walk => ({
  ...walk,
  helperId: null,
  state: { ...walk.state, names: { ...walk.state.names, helper: null } },
});

const takeDoing = (began: Began, doing: Doing): Turn | Problem | null => {
  const { context, walk, notes } = began;
  const showing = SHOWINGS.find((one) => one === doing);
  if (showing !== undefined) return { walk, notes, show: showing };
  if (doing === 'release')
    return walk.helperId === null
      ? problem('no-helper', 'This walk has no helper.')
      : {
          walk: withoutHelper(walk),
          notes: [...notes, 'The helper has left this walk.'],
          show: 'step',
        };
  if (doing === 'end' && !mayEnd(walk, context.by))
    return problem(
      'not-yours-to-end',
      `Only the one whose mount it is ends this walk. To leave it yourself: triage walk:${walk.id} do:release`,
    );
  if (doing === 'end')
    return { walk: { ...walk, endedUtcMs: walk.endedUtcMs ?? context.nowUtcMs }, notes, show: 'summary' };
  return doing === 'back' ? takeBack(began) : null;
};

const leaving = (began: Began, text: string): ReturnType<typeof leavesWalk> =>
  doesWhatFailed(began, text) ? null : leavesWalk(began.context.model.reading, text);

/** A wish for a person, or for a note to show to one, is never taken for an answer. */
const takePerson = (began: Began, { text, answer }: SaidInTurn): Turn | null => {
  const { context, walk } = began;
  // Before the first words there is nothing to hand on.
  if (text === undefined || answer !== undefined || !hasBegun(walk) || leaving(began, text) !== 'person') return null;
  // "I am on a phone, can someone help": what else it tells is kept.
  const { facts } = readText(context.model.reading, text);
  return facts.length === 0
    ? { walk, notes: began.notes, show: 'person' }
    : changed(began, tellText(context.model, walk.state, text, context.by).state, { show: 'person' });
};

/** A typed yes or no to "Is it fixed?", which is no answer to the remedy behind it. */
const takeIfFixed = (began: Began, { text, answer }: SaidInTurn): Turn | Problem | null => {
  const replied = text === undefined || answer !== undefined ? null : takeFixedReply(began, text);
  return replied === 'end' ? takeDoing({ ...began, notes: [...began.notes, STILL_GOOD] }, 'end') : replied;
};

/** What "Did you mean …?" was answered, and a cure told by the way. */
const takeAnsweredBack = (began: Began, text: string): Turn | Problem | null => {
  return (
    takeTerm(began, text) ??
    takeNoComputer(began, text) ??
    takeReply(began, text) ??
    takeOfTheTalk(began, text, (doing) => takeDoing(began, doing)) ??
    takeSoundsCured(began, text)
  );
};

const takeLast = async (began: Began, text: string): Promise<Turn | Problem | null> =>
  takeAnsweredBack(began, text) ??
  (leaving(began, text) === 'end' ? takeDoing(began, 'end') : null) ??
  takeClosing(began, text);

/** A press, a number or an answer's own words; null where the turn is none of these. */
const takePicked = (began: Began, { answer, text }: SaidInTurn): Promise<Turn | Problem> | Turn | null => {
  const { step } = began.before;
  // "2 maybe": the sound answer picked by its number, with a doubt beside it.
  const isSound = step.kind === 'ask' && !step.opening && answer === `${step.id}.${step.check.good ?? ''}`;
  if (isSound && text !== undefined && isGuessAtSafety(began, text))
    return { walk: began.walk, notes: [...began.notes, NO_GUESS], show: 'step' };
  // "2. it says it cannot open the port": the number answers, and the words are heard.
  const [ofStep, picked] = answer === undefined ? [] : splitAnswer(began.before, answer);
  const both =
    text === undefined || picked === undefined || ofStep !== step.id ? null : takePickedAndSaid(began, picked, text);
  if (both !== null) return both;
  const typed = answer ?? (text === undefined ? undefined : plainAnswer(began.before, text));
  return typed === undefined ? null : takeAnswer(began, typed);
};

const takeAnswered = (began: Began, said: SaidInTurn): Promise<Turn | Problem> | Turn | Problem | null =>
  takeListed(began, said) ??
  takeIfFixed(began, said) ??
  takeCuredInWords(began, said) ??
  takeGuessed(began, said) ??
  takePicked(began, said);

/** Numbers of a miss, entries read out, where one lives, or words. */
const takeTyped = async (began: Began, text: string, entries: readonly Understood[]): Promise<Turn | Problem> => {
  const { before } = began;
  const miss = before.step.kind === NUMBERS || plainlyNumbers(text) ? await takeMiss(began, text) : null;
  if (miss !== null) return miss;
  if (entries.length > 0) return takeWords({ ...began, known: entries }, text);
  return askedIfFixed(began, text, takeWords(began, text));
};

/** "New", where an answer is that it is new: said to the question, and no wish for another walk. */
const doingAsked = (before: Began['before'], text: string | undefined): Doing | undefined => {
  const doing = doingTyped(text);
  const isOfAnswer = doing === 'new' && answersOf(before).some(({ label }) => /\bnew\b/iu.test(label));
  return isOfAnswer ? undefined : doing;
};

const takeSaid = async (began: Began, said: SaidInTurn): Promise<Turn | Problem> => {
  const { walk, notes } = began;
  const doing = said.do ?? doingAsked(began.before, said.text);
  const done = doing === undefined ? null : takeDoing(began, doing);
  if (done !== null) return done;
  const answered = takePerson(began, said) ?? takeAsksOfStep(began, said) ?? takeAnswered(began, said);
  if (answered !== null) return answered;
  if (said.file !== undefined) return isProblem(said.file) ? said.file : takeWords(began, said.file.text, said.file.by);
  if (said.text === undefined || doing !== undefined) return { walk, notes, show: 'step' };
  const { began: placed, entries } = await entriesAndPlace(began, said.text);
  if (withPlaceTold(began, said.text) !== null) return takeTyped(placed, said.text, entries);
  const place = entries.length === 0 ? await takePlace(began, said.text) : null;
  const left = place ?? (await takeLast(placed, said.text));
  return left ?? takeTyped(placed, said.text, entries);
};

/** What the asker saved of their own gear is none of the other's. */
const aboutAnother = (walk: Walk, { who }: Another): Walk => ({
  ...walk,
  state: { ...walk.state, about: who.slice(0, 40), events: walk.state.events.filter(({ by }) => by !== null) },
});
const ofAnother = ({ who }: Another): string => `For ${who}, then: what you tell me is taken of that mount.`;

export const takeTurn = async (context: TurnContext, found: Found, said: SaidInTurn): Promise<Turn | Problem> => {
  const another = found.isNew && found.walk.helperId === null ? forAnother(said.text ?? '') : null;
  const walk = named(another === null ? found.walk : aboutAnother(found.walk, another), context.by, context.asker);
  const notes = [...(found.note === null ? [] : [found.note]), ...(another === null ? [] : [ofAnother(another)])];
  const before = assess(context.model, walk.state, context.outcomes);
  const first: Began = { context, walk, before, notes, isOpening: found.isNew };
  const [began, heard] = withoutDenied(...withoutTerm(first, said));
  const taken = await takeSaid(began, heard);
  if (isProblem(taken)) return taken;
  const words = wordsAlone(said);
  const turn = words === null ? taken : notHasty(began, words, onlySureCures(began, words, taken));
  const harm = said.text === undefined ? null : (harmNear(said.text) ?? sunHarmNear(said.text));
  return asking(context, harm === null ? turn : { ...turn, notes: [harm, ...turn.notes] });
};
