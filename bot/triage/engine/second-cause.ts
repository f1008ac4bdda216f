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

/** How likely an answer is before anything is known. */
const usually = (priors: Float64Array, odds: Float64Array | undefined): number =>
  priors.reduce((sum, prior, h) => sum + prior * (odds?.[h] ?? 0), 0);

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
    return (odds?.[fault] ?? 0) >= OWN_FROM * usually(priors, odds);
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

/** The look for a cause shows it by an answer that is at least this likely under it, where it seldom finds all well … */
const SHOWN_FROM = 0.2;
const WELL_BELOW = 0.5;
/** … and another look at the same stage does by an answer as likely as this, and so many times likelier than under all causes. */
const SHOWN_BESIDE_FROM = 0.5;
const TIMES_LIKELIER = 5;

/** The answer by which a look showed a fault, before its remedy: the look for it, or else a coarser one. */
export const shownBefore = (
  { faults, checks, checkIndex, priors }: Situation,
  observations: readonly Observation[],
  fault: number,
): Observation | undefined => {
  const own = checkIndex.get(faults[fault]?.verify.check ?? '');
  const shows = ({ check, answer, before, guessed }: Observation): boolean => {
    const numbers = checks[check];
    if (numbers === undefined || before === true || guessed === true || answer === numbers.good) return false;
    const under = (one: number): number => numbers.odds[one]?.[fault] ?? 0;
    if (check === own) return under(answer) >= SHOWN_FROM && under(numbers.good) < WELL_BELOW;
    const { scope, byStage, lasting, stage } = numbers.entry;
    if (stage !== faults[fault]?.stage) return false;
    if (scope === 'chain' || byStage !== undefined || lasting === true || under(answer) < SHOWN_BESIDE_FROM)
      return false;
    return under(answer) >= TIMES_LIKELIER * usually(priors, numbers.odds[answer]);
  };
  // Where the look for it found all well even then, that it does so now says nothing.
  const good = checks[own ?? -1]?.good;
  if (observations.some(({ check, answer }) => check === own && answer === good)) return undefined;
  const shown = observations.filter(shows);
  return shown.findLast(({ check }) => check === own) ?? shown.at(-1);
};

/**
 * A look showed the fault, its remedy changed nothing, and the look now finds all well: it was there and is mended, and another
 * cause shows the same complaint. How far it gets still holds; other answers that the mended
 * fault gave rise to are set aside, and half of the turns are given back for the search.
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
  state.turns = Math.floor(state.turns / 2);
};

/** Whether what a remedy came to says that a second cause stands behind its own. `times`: how often the trouble came back after it. */
export const showsSecondCause = (fault: FaultEntry | undefined, outcome: TryOutcome, times: number): boolean =>
  outcome === 'changed' || (outcome === 'for-now' && (fault?.remedy.lasting === undefined || times > 1));
