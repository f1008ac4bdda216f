/** What stands above cost when the next step is picked: never the same words twice, free looks before costly remedies. */
import type { Belief } from './belief.js';
import type { Choice } from './choice.js';
import type { Evidence } from './evidence.js';
import type { FaultEntry } from '../model/schema.js';
import type { Situation } from './situation.js';

/** The other way to a cure is worth offering while its fault is at least this likely. */
const OTHERWISE_ABOVE = 0.2;
/** A cause this likely whose remedies are spent is handed on by name: no more questions, a person must do it. */
export const KNOWN_CAUSE = 0.6;
const PLAINLY_KNOWN = 0.8;

export const attempts = (evidence: Evidence, fault: number): number => evidence.attempts.get(fault) ?? 0;

/** Whether the member said that the remedy was done before the walk began. */
export const wasDone = (situation: Situation, { observations }: Evidence, fault: number): boolean => {
  const already = situation.faults[fault]?.remedy.already;
  return (
    already !== undefined &&
    observations.some(({ check, answer }) => {
      const numbers = situation.checks[check];
      return numbers?.entry.id === already.check && already.answers.includes(numbers.answers[answer] ?? '');
    })
  );
};

/** Whether the remedy's other way is what comes next of it. */
export const comesOtherwise = (situation: Situation, evidence: Evidence, fault: number): boolean =>
  situation.faults[fault]?.remedy.otherwise !== undefined &&
  (attempts(evidence, fault) > 0 || wasDone(situation, evidence, fault));

/** Of a cause whose own part a member calls sound unasked, the remedy would be met with anger below this. */
const RULED_OUT_BELOW = 0.2;

/** A cause shows itself as sound in its own part no likelier than this. */
const HARDLY_SOUND = 0.05;

/** "There is no VPN", "power saving is off": said in words, not picked in passing, that the one part which the cause lies in is as it should be. */
const isRuledOut = (situation: Situation, { observations }: Evidence, fault: number): boolean => {
  const { check: id, answer } = situation.faults[fault]?.verify ?? {};
  return observations.some((one, i) => {
    if (one.slip === undefined || one.before === true) return false;
    const numbers = situation.checks[one.check];
    if (numbers === undefined || one.answer !== numbers.good) return false;
    const { entry, odds, answers } = numbers;
    if (entry.scope === 'chain' || entry.byStage !== undefined) return false;
    if (observations.slice(i + 1).some(({ check }) => check === one.check)) return false;
    const isSet = entry.id === id && answers[one.answer] === answer;
    return isSet || (odds[one.answer]?.[fault] ?? 1) <= HARDLY_SOUND;
  });
};

/**
 * Never the same words twice: once the remedy; once more its other way, or where a look says that it has not taken. What was
 * done before the walk began is not asked for; its other way is, where there is one.
 */
export const mayTry = (situation: Situation, evidence: Evidence, fault: number, probability: number): boolean => {
  if (evidence.mended.has(fault)) return false;
  if (probability < RULED_OUT_BELOW && isRuledOut(situation, evidence, fault)) return false;
  const before = attempts(evidence, fault);
  if (wasDone(situation, evidence, fault))
    return before === 0 && situation.faults[fault]?.remedy.already?.otherwise === true;
  if (before === 0) return true;
  if (before > 1) return false;
  return (
    evidence.notTaken.has(fault) ||
    (situation.faults[fault]?.remedy.otherwise !== undefined && probability >= OTHERWISE_ABOVE)
  );
};

/** A remedy that takes the mount down or takes this long waits for a free look at the same thing, unless it is likely. */
const COSTLY_MINUTES = 8;
const LIKELY_ENOUGH = 0.3;

/** The remedy that the best step offers, where it is costly and its cause not yet likely. */
const costlyRemedy = (situation: Situation, belief: Belief, best: Choice | undefined): FaultEntry | null => {
  if (best?.kind !== 'try' || (belief.probabilities[best.fault] ?? 0) >= LIKELY_ENOUGH) return null;
  const fault = situation.faults[best.fault];
  const isCostly =
    fault !== undefined &&
    (fault.remedy.minutes >= COSTLY_MINUTES || fault.remedy.cautions?.includes('power-off-first') === true);
  return isCostly ? fault : null;
};

/** The index of the look that the best step's remedy always waits for. */
const confirmingLook = (situation: Situation, best: Choice | undefined): number | undefined =>
  best?.kind === 'try' && !best.otherwise
    ? situation.checkIndex.get(situation.faults[best.fault]?.remedy.confirm ?? '')
    : undefined;

/** The look that shows a costly remedy's cause, where it has not been taken. */
export const freeLookFirst = (situation: Situation, belief: Belief, ranked: readonly Choice[]): readonly Choice[] => {
  const confirming = confirmingLook(situation, ranked[0]);
  const confirms = (choice: Choice): boolean => choice.kind === 'ask' && choice.check === confirming && !choice.again;
  if (ranked.some(confirms)) return first(ranked, confirms);
  const fault = costlyRemedy(situation, belief, ranked[0]);
  const look = situation.checkIndex.get(fault?.verify.check ?? '');
  const entry = look === undefined ? undefined : situation.checks[look]?.entry;
  if (fault === null || entry === undefined) return ranked;
  if (entry.scope === 'chain' || entry.byStage !== undefined || entry.minutes > fault.remedy.minutes) return ranked;
  return first(ranked, (choice) => choice.kind === 'ask' && choice.check === look && !choice.again);
};

/** A remedy this quick and without a caution is done as soon as a question is answered … */
const QUICK_MINUTES = 5;
/** … and goes first where its cause is this likely and it is no more than this worse, in minutes, than the best look. */
const LIKELY_FOR_QUICK = 0.5;
const NEARLY_AS_GOOD = 1;

/** Done in so many minutes at most, and without a caution. */
export const isQuickAndHarmless = ({ minutes, cautions = [] }: FaultEntry['remedy'], mostMinutes: number): boolean =>
  minutes <= mostMinutes && cautions.length === 0;

/** A quick, harmless remedy of a cause that stands out, before a look that is worth hardly more. */
export const quickRemedyFirst = (
  situation: Situation,
  belief: Belief,
  ranked: readonly Choice[],
): readonly Choice[] => {
  const [best] = ranked;
  if (best?.kind !== 'ask') return ranked;
  const isQuick = (choice: Choice): boolean => {
    if (choice.kind !== 'try' || choice.otherwise || choice.minutes > best.minutes + NEARLY_AS_GOOD) return false;
    const remedy = situation.faults[choice.fault]?.remedy;
    if (remedy === undefined || !isQuickAndHarmless(remedy, QUICK_MINUTES)) return false;
    return (belief.probabilities[choice.fault] ?? 0) >= LIKELY_FOR_QUICK;
  };
  return first(ranked, isQuick);
};

/** The likeliest named cause and how likely it is. */
export const likeliest = (situation: Situation, { probabilities }: Belief): { fault: number; probability: number } => {
  let fault = 0;
  for (let f = 1; f < situation.unexplained; f++) if ((probabilities[f] ?? 0) > (probabilities[fault] ?? 0)) fault = f;
  return { fault, probability: probabilities[fault] ?? 0 };
};

/**
 * The quick, harmless remedy of a cause that stands out, whichever way the computer reaches the mount: `paths` are those that are
 * left open. Null where there is none: the way has to be known first.
 */
export const remedyOnAnyWay = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  paths: readonly string[],
): Choice | null => {
  const { fault, probability } = likeliest(situation, belief);
  const { only, remedy } = situation.faults[fault] ?? {};
  if (remedy === undefined || probability < LIKELY_FOR_QUICK || !mayTry(situation, evidence, fault, probability))
    return null;
  if (only?.paths !== undefined && !paths.every((path) => only.paths?.includes(path) === true)) return null;
  if (remedy.confirm !== undefined || !isQuickAndHarmless(remedy, QUICK_MINUTES)) return null;
  return { kind: 'try', fault, otherwise: comesOtherwise(situation, evidence, fault), minutes: remedy.minutes };
};

/** A cause that is plainly known and whose remedies are spent: what is left is to say so. */
export const plainlyKnown = (situation: Situation, evidence: Evidence, belief: Belief): boolean => {
  const { fault, probability } = likeliest(situation, belief);
  return (
    probability >= PLAINLY_KNOWN && attempts(evidence, fault) > 0 && !mayTry(situation, evidence, fault, probability)
  );
};

/** Nothing stands out below this; an answer is worth one more look before handing on once it is this likely mistaken. */
const STANDS_OUT = 0.35;
const LOAD_BEARING = 0.12;
/** A walk this old is handed on without more looks. */
const OLD_TURNS = 10;

/** Before handing on with no cause in sight, the answer most likely mistaken is asked for once more, once in a walk. */
export const lookAgainFirst = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  ranked: readonly Choice[],
): readonly Choice[] => {
  const { observations } = evidence;
  const [best] = ranked;
  if (best?.kind !== 'handOn' || evidence.turns >= OLD_TURNS || observations.some(({ look }) => look === 'relook'))
    return ranked;
  if (likeliest(situation, belief).probability >= STANDS_OUT) return ranked;
  const doubts = observations.slice(0, -1).flatMap(({ check, slip, before }, i) => {
    const mistaken = belief.mistaken[i] ?? 0;
    const asked =
      slip === undefined &&
      before !== true &&
      situation.checks[check]?.entry.lasting !== true &&
      !evidence.unsure.has(check) &&
      observations.filter((other) => other.check === check).length === 1;
    return asked && mistaken >= LOAD_BEARING ? [{ check, mistaken }] : [];
  });
  const doubt = doubts.sort((a, b) => b.mistaken - a.mistaken)[0];
  return doubt === undefined
    ? ranked
    : [{ kind: 'ask', check: doubt.check, again: true, minutes: best.minutes }, ...ranked];
};

export const first = (choices: readonly Choice[], wanted: (choice: Choice) => boolean): readonly Choice[] => [
  ...choices.filter(wanted),
  ...choices.filter((choice) => !wanted(choice)),
];
