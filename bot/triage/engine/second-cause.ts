/** When a remedy shows that two causes are at work, and what of the answers given under both still speaks of the second. */
import type { FaultEntry } from '../model/schema.js';
import type { TryOutcome } from '../walk/walk-state.js';
import type { Observation } from './mistakes.js';
import type { Gathering } from './observe.js';
import type { Situation } from './situation.js';

/** Of several answers that held by turns, those that the removed fault does not explain: they stand, and not as seen under it. */
const leftOf = ({ checks }: Situation, observation: Observation, fault: number): readonly Observation[] => {
  const { or, ...first } = observation;
  if (or === undefined) return [];
  const odds = checks[observation.check]?.odds ?? [];
  const under = (answer: number): number => odds[answer]?.[fault] ?? 0;
  const told = [observation.answer, ...or];
  const explained = told.reduce((best, answer) => (under(answer) > under(best) ? answer : best));
  const [answer, ...others] = told.filter((one) => one !== explained);
  if (answer === undefined || told.every((one) => under(one) === under(explained))) return [];
  return [{ ...first, answer, ...(others.length === 0 ? {} : { or: others }) }];
};

/** An answer is a cause's own where the cause gives it so much more often than the others do. */
const OWN_FROM = 2;

/** Whether what was told of a check is accounted for by one fault: what changed last need not speak of a second cause too. */
const isExplained = (
  { checks, priors }: Situation,
  observations: readonly Observation[],
  { check, fault }: { readonly check: number; readonly fault: number },
): boolean => {
  const numbers = checks[check];
  return observations.some((one) => {
    if (one.check !== check || one.or !== undefined || one.answer === numbers?.good) return false;
    const odds = numbers?.odds[one.answer];
    const usual = priors.reduce((sum, prior, h) => sum + prior * (odds?.[h] ?? 0), 0);
    return (odds?.[fault] ?? 0) >= OWN_FROM * usual;
  });
};

/**
 * After a remedy changed something without curing, two causes were at work: answers about the chain from that stage on, and
 * remedies tried there, were given under the removed fault and are set aside; what lies before it, settings looked at one by
 * one, history and contrasts still hold.
 */
export const takeChange = (state: Gathering, index: number): void => {
  const { situation } = state;
  const fault = situation.faults[index];
  if (fault === undefined) return;
  state.mended.add(index);
  const from = situation.stagePosition(fault.stage);
  const stale = (check: number): boolean => {
    const entry = situation.checks[check]?.entry;
    if (entry === undefined) return true;
    if (entry.lasting === true) return isExplained(situation, state.observations, { check, fault: index });
    if (fault.answers?.[entry.id] !== undefined || entry.under?.[fault.id] !== undefined) return true;
    return situation.stagePosition(entry.stage) >= from && (entry.scope === 'chain' || entry.byStage !== undefined);
  };
  // What changed last is told once: asked again, a member says the same.
  for (const { check } of state.observations)
    if (situation.checks[check]?.entry.lasting === true && stale(check)) state.unsure.add(check);
  const left = state.observations.flatMap((observation) => leftOf(situation, observation, index));
  const isLeft = (check: number): boolean => left.some((own) => own.check === check);
  state.setAside = new Set([
    ...state.setAside,
    ...state.observations.map(({ check }) => check).filter((check) => stale(check) && !isLeft(check)),
  ]);
  state.observations = [
    ...state.observations
      .filter(({ check }) => !stale(check) && !isLeft(check))
      .map((observation) => ({ ...observation, before: true as const })),
    ...left,
  ];
  state.tried = new Map(
    [...state.tried].filter(([i]) => situation.stagePosition(situation.faults[i]?.stage ?? '') < from),
  );
  state.factors = new Map();
  state.turns = 0;
};

/** A look shows a cause by an answer that is at least this likely under it, where it seldom finds all well. */
const SHOWN_FROM = 0.2;
const WELL_BELOW = 0.5;

/** The answer by which the look for a fault showed it, before its remedy. */
export const shownBefore = (
  { faults, checks, checkIndex }: Situation,
  observations: readonly Observation[],
  fault: number,
): Observation | undefined => {
  const check = checkIndex.get(faults[fault]?.verify.check ?? '');
  const numbers = checks[check ?? -1];
  if (numbers === undefined) return undefined;
  const odds = (answer: number): number => numbers.odds[answer]?.[fault] ?? 0;
  return observations.findLast(
    (one) =>
      one.check === check &&
      one.before !== true &&
      one.guessed !== true &&
      one.answer !== numbers.good &&
      odds(one.answer) >= SHOWN_FROM &&
      odds(numbers.good) < WELL_BELOW,
  );
};

/**
 * A look showed the fault, its remedy changed nothing, and the look now finds all well: it was there and is mended, and another
 * cause shows the same complaint. How far it gets still holds; other answers that the mended fault gave rise to are set aside.
 */
export const takeMended = (state: Gathering, index: number): void => {
  const { situation } = state;
  const fault = situation.faults[index];
  if (fault === undefined) return;
  state.mended.add(index);
  const stale = (check: number): boolean => {
    const entry = situation.checks[check]?.entry;
    if (entry === undefined) return true;
    if (entry.lasting === true || entry.scope === 'chain' || entry.byStage !== undefined) return false;
    return fault.answers?.[entry.id] !== undefined || entry.under?.[fault.id] !== undefined;
  };
  state.setAside = new Set([...state.setAside, ...state.observations.map(({ check }) => check).filter(stale)]);
  state.observations = state.observations.filter(({ check }) => !stale(check));
  state.turns = 0;
};

/** Whether what a remedy came to says that a second cause stands behind its own. `times`: how often the trouble came back after it. */
export const showsSecondCause = (fault: FaultEntry | undefined, outcome: TryOutcome, times: number): boolean =>
  outcome === 'changed' || (outcome === 'for-now' && (fault?.remedy.lasting === undefined || times > 1));
