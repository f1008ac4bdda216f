/** Takes one answer into what a walk's record has gathered so far: beside, or in place of, what was said of the same check before. */
import { holdsSeveral } from '../../reading/index.js';
import { UNSURE } from '../walk/walk-state.js';
import type { Observation } from './mistakes.js';
import { isTheirs, type Situation } from './situation.js';

export interface Gathering {
  readonly situation: Situation;
  observations: Observation[];
  tried: Map<number, number>;
  readonly attempts: Map<number, number>;
  readonly notTaken: Set<number>;
  /** Fault index → how often the trouble came back after its remedy had cured it. */
  readonly cameBack: Map<number, number>;
  /** The fault whose remedy changed nothing a moment ago: the next look at its verify check says whether it was done. */
  unverified: number | null;
  readonly mended: Set<number>;
  factors: Map<number, number>;
  readonly unsure: Set<number>;
  /** Check index → the events at which it was passed over. */
  readonly passed: Map<number, readonly number[]>;
  turns: number;
  setAside: Set<number>;
}

/** One of several things that hold at once: beside the others; "none" holds only where nothing else does. */
const takeBesides = (state: Gathering, own: Observation, none: number): void => {
  const others = state.observations.filter(({ check, answer }) => check === own.check && answer !== own.answer);
  if (own.answer === none && others.length > 0) return;
  state.observations = [
    ...state.observations.filter((o) => o.check !== own.check || (o.answer !== own.answer && o.answer !== none)),
    own,
  ];
};

/** One answer a check: beside, or in place of, what was said before. */
const takeAgain = (state: Gathering, own: Observation): void => {
  const before = state.observations.filter(({ check }) => check === own.check);
  // A guess adds nothing to what was said, and gives way to it.
  if (own.guessed === true && before.length > 0) return;
  // Said again: the second look counts beside the first; a third replaces the second. An own answer replaces what was read.
  const replaced =
    before.find(({ guessed }) => guessed === true) ??
    (before.length > 1 ? before[1] : before.find(({ slip }) => slip !== undefined && own.slip === undefined));
  const kept = state.observations.filter((o) => o !== replaced);
  const isSecond = before.length > 0 && replaced !== before[0] && own.slip === undefined;
  state.observations = [...kept, { ...own, look: isSecond ? 'relook' : 'look' }];
};

/** How an answer that stood in a text was read. */
interface ReadAs {
  readonly slip?: number;
  readonly isGuess?: boolean;
  readonly or?: readonly string[];
}

export const observe = (
  state: Gathering,
  checkId: string,
  answerId: string,
  { slip, isGuess = false, or = [] }: ReadAs = {},
): void => {
  const check = state.situation.checkIndex.get(checkId);
  const numbers = check === undefined ? undefined : state.situation.checks[check];
  // A nine-pin plug is no danger where no lead to a motor board was spoken of.
  if (check === undefined || numbers === undefined || !isTheirs(state.situation, numbers)) return;
  if (answerId === UNSURE) {
    state.passed.delete(check);
    state.unsure.add(check);
    return;
  }
  const answer = numbers.answers.indexOf(answerId);
  if (answer < 0) return;
  state.unsure.delete(check);
  state.setAside.delete(check);
  const others = or.map((id) => numbers.answers.indexOf(id)).filter((other) => other >= 0 && other !== answer);
  const how = {
    ...(slip === undefined ? {} : { slip }),
    ...(isGuess ? { guessed: true as const } : {}),
    ...(others.length === 0 ? {} : { or: others }),
  };
  if (holdsSeveral(checkId)) {
    takeBesides(state, { check, answer, look: 'look', ...how }, numbers.good);
    return;
  }
  takeAgain(state, { check, answer, look: 'look', ...how });
};
