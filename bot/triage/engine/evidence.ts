/** What of a walk's record still counts, in a situation: which answers, which remedies, what texts made likelier. */
import { tableOf } from '../../ground/table-of.js';
import { takenBackAfter, UNSURE, type KeptFact, type WalkEvent } from '../walk/walk-state.js';
import type { Observation } from './mistakes.js';
import { observe, type Gathering } from './observe.js';
import { showsSecondCause, shownBefore, takeChange, takeMended } from './second-cause.js';
import type { Situation } from './situation.js';

export interface Evidence {
  readonly observations: readonly Observation[];
  /** Fault index → how many times its remedy (the other way included) was tried without a cure. */
  readonly tried: ReadonlyMap<number, number>;
  /** Fault index → how many times its remedy was offered and answered, whatever came of it. */
  readonly attempts: ReadonlyMap<number, number>;
  /** Faults whose remedy was done and had not taken when looked at: it may come once more. */
  readonly notTaken: ReadonlySet<number>;
  /** Faults whose remedy was done and changed something: mended as far as one can tell. */
  readonly mended: ReadonlySet<number>;
  /** Likelihood factors from texts and from the numbers of a miss, by fault index. */
  readonly factors: ReadonlyMap<number, number>;
  /** Checks whose last look gave "not sure". */
  readonly unsure: ReadonlySet<number>;
  /** Questions answered and remedies tried since the walk began or something last changed; what words said is not counted. */
  readonly turns: number;
  /** Checks whose answers were set aside when a remedy changed something. */
  readonly setAside: ReadonlySet<number>;
}

const FOUND_FACTOR = 30;
/** Sureness of a text, as the chance that it was not meant so. */
const LEAST_TEXT_SLIP = 0.05;
const MOST_TEXT_SLIP = 0.4;
/** A guess weighs little beside what is said. */
const LEAST_GUESS_SLIP = 0.5;
/** What was read and confirmed with one press counts as if looked at. */
const CONFIRMED_SLIP = 0.06;
/** A text makes a fault at most so many times likelier or less likely. */
const MOST_SUGGESTED = 40;

/** A question that words did not answer comes again only after so many others, and once. */
const PASSED_FOR = 3;

/** What was answered to a check was a slip. */
const forget = (state: Gathering, checkId: string): void => {
  const check = state.situation.checkIndex.get(checkId);
  state.observations = state.observations.filter((observation) => observation.check !== check);
};

const suggest = (state: Gathering, faultId: string, factor: number): void => {
  const index = state.situation.faultIndex.get(faultId);
  if (index === undefined) return;
  const bounded = Math.min(MOST_SUGGESTED, Math.max(1 / MOST_SUGGESTED, factor));
  state.factors.set(index, (state.factors.get(index) ?? 1) * bounded);
};

const slipOfFact = ({ sureness }: KeptFact): number =>
  Math.min(MOST_TEXT_SLIP, Math.max(LEAST_TEXT_SLIP, 1 - sureness));

/** A cause shows itself in an answer from here on. */
const SHOWS = 0.5;

const shows = (
  { faultIndex, checkIndex, checks }: Situation,
  faultId: string,
  { what, answer }: Pick<KeptFact, 'what' | 'answer'>,
): boolean => {
  const numbers = checks[checkIndex.get(what) ?? -1];
  return (numbers?.odds[numbers.answers.indexOf(answer)]?.[faultIndex.get(faultId) ?? -1] ?? 0) >= SHOWS;
};

/** What a look that found something tells of how far they get, which it is asked after. */
const FAR = tableOf<readonly [string, ...string[]]>({ guiding: ['guiding'], 'mount-does': ['no-move', 'elsewhere'] });
export const HOW_FAR = 'how-far';

/** Whose star runs away in guiding has told how far they get, too. */
const howFarIn = ({ checks, checkIndex }: Situation, facts: readonly KeptFact[]): readonly KeptFact[] => {
  if (facts.some(({ what }) => what === HOW_FAR)) return [];
  return facts.flatMap((fact): KeptFact[] => {
    const far = FAR.get(fact.what);
    if (far === undefined || fact.answer === checks[checkIndex.get(fact.what) ?? -1]?.entry.good) return [];
    const [answer, ...or] = far;
    return [{ ...fact, what: HOW_FAR, answer, or }];
  });
};

/** @param read what became of the facts read: those taken back later, and whether the rest was confirmed */
const takeText = (
  state: Gathering,
  event: Extract<WalkEvent, { kind: 'text' }>,
  read: { readonly denied: ReadonlySet<string> | undefined; readonly confirmed: boolean },
): void => {
  const take = (fact: KeptFact, isGuess: boolean): void => {
    if (read.denied?.has(fact.what) === true) return;
    const said = isGuess ? Math.max(LEAST_GUESS_SLIP, slipOfFact(fact)) : slipOfFact(fact);
    const slip = read.confirmed ? Math.min(CONFIRMED_SLIP, said) : said;
    observe(state, fact.what, fact.answer, {
      slip,
      isGuess: isGuess && !read.confirmed,
      ...(fact.or === undefined ? {} : { or: fact.or }),
    });
  };
  for (const fact of event.facts) take(fact, false);
  for (const fact of howFarIn(state.situation, event.facts)) take(fact, false);
  for (const fact of event.guesses) take(fact, true);
  // What was taken back speaks for no cause that shows itself so.
  const wrong = event.facts.filter(({ what }) => read.denied?.has(what) === true);
  for (const { faultId, weight } of event.suggests)
    if (weight < 1 || !wrong.some((fact) => shows(state.situation, faultId, fact))) suggest(state, faultId, weight);
};

/** What `astray` calls the cause where the numbers fit none. */
const NONE_FOUND = 'unknown';

const takeFound = ({ situation, factors }: Gathering, event: Extract<WalkEvent, { kind: 'found' }>): void => {
  const shares = new Map(
    (event.causes.length > 0 ? event.causes : [{ id: event.cause, probability: 0.97 }]).map(({ id, probability }) => [
      id,
      probability,
    ]),
  );
  shares.delete(NONE_FOUND);
  const inAll = [...shares.values()].reduce((sum, share) => sum + share, 0);
  for (const [i, { handsOverTo, astrayCauses }] of situation.faults.entries()) {
    if (handsOverTo === undefined) continue;
    const share = (astrayCauses ?? []).reduce((sum, cause) => Math.max(sum, shares.get(cause) ?? 0), 0);
    // From 1/30 for what the numbers rule out to 30 for what they single out. A tube that shifts or a gear shows in no
    // numbers of one miss: what they single out speaks against it, and nothing else.
    const leaning = astrayCauses === undefined ? -Math.min(1, inAll) : 2 * Math.min(1, share * 1.03) - 1;
    factors.set(i, (factors.get(i) ?? 1) * FOUND_FACTOR ** leaning);
  }
};

const takeTry = (state: Gathering, event: Extract<WalkEvent, { kind: 'try' }>): void => {
  const index = state.situation.faultIndex.get(event.fault);
  if (index === undefined || event.outcome === UNSURE) return;
  state.attempts.set(index, (state.attempts.get(index) ?? 0) + 1);
  state.notTaken.delete(index);
  state.unverified = event.outcome === 'same' ? index : null;
  if (event.outcome === 'same') state.tried.set(index, (state.tried.get(index) ?? 0) + 1);
  const cameBack = event.outcome === 'for-now' ? (state.cameBack.get(index) ?? 0) + 1 : 0;
  if (cameBack > 0) state.cameBack.set(index, cameBack);
  if (showsSecondCause(state.situation.faults[index], event.outcome, cameBack)) takeChange(state, index);
  // What helped was the cause, and still is.
  else if (cameBack > 0) suggest(state, event.fault, FOUND_FACTOR);
};

/**
 * A look at what the remedy just done should have changed. As it should be: the remedy was done, so its fault is the less
 * likely. Still wrong: it was not done, and may come once more, or another cause shows itself the same way.
 */
const takeVerifying = (state: Gathering, event: Extract<WalkEvent, { kind: 'answer' }>): boolean => {
  const index = state.unverified;
  const verify = index === null ? undefined : state.situation.faults[index]?.verify;
  if (index === null || verify?.check !== event.check || event.answer === UNSURE) return false;
  state.unverified = null;
  if (event.answer !== verify.answer) {
    if ((state.attempts.get(index) ?? 0) < 2) state.notTaken.add(index);
    return false;
  }
  if (shownBefore(state.situation, state.observations, index) !== undefined) {
    takeMended(state, index);
    return false;
  }
  state.tried.set(index, (state.tried.get(index) ?? 0) + 1);
  const check = state.situation.checkIndex.get(event.check);
  state.observations = state.observations.filter((o) => o.check !== check);
  return false;
};

const takePassed = ({ situation, passed, unsure }: Gathering, checkId: string, at: number): void => {
  const check = situation.checkIndex.get(checkId);
  if (check === undefined) return;
  unsure.add(check);
  passed.set(check, [...(passed.get(check) ?? []), at]);
};

/** What was passed over once, some questions ago, and answered by nothing since, may be asked again. */
const bringBackPassed = ({ passed, unsure }: Gathering, events: readonly WalkEvent[]): void => {
  for (const [check, times] of passed) {
    const [first, second] = times;
    if (first === undefined || second !== undefined) continue;
    const since = events
      .slice(first + 1)
      .filter(({ kind }) => kind === 'answer' || kind === 'try' || kind === 'passed');
    if (since.length >= PASSED_FOR) unsure.delete(check);
  }
};

/** A finer check that was answered takes the place of the coarser one it refines. */
const withoutRefined = ({ situation, observations }: Gathering): readonly Observation[] => {
  const coarse = new Set(
    observations.flatMap(({ check }) => {
      const id = situation.checks[check]?.entry.refines?.check;
      return id === undefined ? [] : [situation.checkIndex.get(id)];
    }),
  );
  return observations.filter(({ check }) => !coarse.has(check));
};

/** What came of a remedy and cannot be told yet: the card stands, and nothing was gone on from it. */
const takesATurn = (event: WalkEvent): boolean =>
  event.kind === 'answer' || event.kind === 'found' || (event.kind === 'try' && event.outcome !== UNSURE);

/** Replays the events in order. */
export const gatherEvidence = (situation: Situation, events: readonly WalkEvent[]): Evidence => {
  const state: Gathering = {
    situation,
    observations: [],
    tried: new Map(),
    attempts: new Map(),
    notTaken: new Set(),
    cameBack: new Map(),
    unverified: null,
    mended: new Set(),
    factors: new Map(),
    unsure: new Set(),
    passed: new Map(),
    turns: 0,
    setAside: new Set(),
  };
  const takenBack = takenBackAfter(events);
  const confirmedAt = events.findLastIndex(({ kind }) => kind === 'right');
  for (const [at, event] of events.entries()) {
    if (takesATurn(event)) state.turns++;
    if (event.kind === 'text') takeText(state, event, { denied: takenBack[at], confirmed: at < confirmedAt });
    if (event.kind === 'slip') forget(state, event.check);
    if (event.kind === 'passed') takePassed(state, event.check, at);
    if (event.kind === 'answer' && !takeVerifying(state, event)) observe(state, event.check, event.answer);
    if (event.kind === 'found') takeFound(state, event);
    if (event.kind === 'try') takeTry(state, event);
  }
  bringBackPassed(state, events);
  const { tried, attempts, notTaken, mended, factors, unsure, turns, setAside } = state;
  return { observations: withoutRefined(state), tried, attempts, notTaken, mended, factors, unsure, turns, setAside };
};
