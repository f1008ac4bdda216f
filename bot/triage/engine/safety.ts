/** What stands above cost for safety's sake: whose the safety looks are, when a second one is due, and what a bad answer calls for. */
import type { CheckEntry } from '../model/schema.js';
import type { Belief } from './belief.js';
import type { Choice } from './choice.js';
import type { Evidence } from './evidence.js';
import { attempts } from './rules-of-order.js';
import { isTheirs, type CheckNumbers, type Situation } from './situation.js';

/** Safety looks that may be theirs after all: the way to the mount is not known, so they are not asked. */
export const unaskedSafety = (situation: Situation): readonly CheckEntry[] =>
  situation.checks.filter((numbers) => !isTheirs(situation, numbers)).map(({ entry }) => entry);

type Said = Pick<Evidence, 'observations' | 'unsure'>;

/** Read from words less surely than this, an answer says nothing about the safety of gear. */
const DOUBTFUL = 0.25;

type Answers = NonNullable<CheckEntry['inUse']>['proved'];

/** Whether one of these was said. `plainly`: no guess, no "either", and not read from words unsurely. */
const isSaid = (situation: Situation, { observations }: Said, wanted: Answers, plainly: boolean): boolean =>
  observations.some(({ check, answer, guessed, or, slip = 0 }) => {
    if (plainly && (guessed === true || or !== undefined || slip >= DOUBTFUL)) return false;
    const numbers = situation.checks[check];
    return wanted.some((one) => one.check === numbers?.entry.id && one.answers.includes(numbers.answers[answer] ?? ''));
  });

/** Whether what a safety look is for is about to be put to use for the first time, as far as was said. */
const isAnew = (situation: Situation, evidence: Said, { inUse }: CheckEntry): boolean =>
  inUse !== undefined && isSaid(situation, evidence, inUse.anew, false);

/** Whether it has long been in use here, and did no harm. */
const isProved = (situation: Situation, evidence: Said, look: CheckEntry): boolean =>
  look.inUse !== undefined &&
  isSaid(situation, evidence, look.inUse.proved, true) &&
  !isAnew(situation, evidence, look);

/** The last answer to a check: its id, 'unsure', or null where it was not asked. */
const lastAnswer = ({ checkIndex, checks }: Situation, { observations, unsure }: Said, id: string): string | null => {
  const index = checkIndex.get(id) ?? -1;
  if (unsure.has(index)) return 'unsure';
  const said = observations.findLast(({ check }) => check === index);
  return said === undefined ? null : (checks[index]?.answers[said.answer] ?? null);
};

/** Whether an answer leaves it to another look. */
const isLeftOpen = ({ checks }: Situation, id: string, answer: string): boolean =>
  checks.some(({ entry }) => entry.secondLook?.of === id && entry.secondLook.answers.includes(answer));

/** Whether a look has shown harm. */
const isBad = (situation: Situation, look: CheckEntry, answer: string | null): boolean =>
  answer !== null && answer !== 'unsure' && answer !== look.good && !isLeftOpen(situation, look.id, answer);

/** A look that keeps gear from harm, or the other look at the same thing where that one has left it open. */
export const isPressing = (situation: Situation, evidence: Said, { entry }: Pick<CheckNumbers, 'entry'>): boolean => {
  if (entry.safety === true)
    return !isProved(situation, evidence, entry) || isBad(situation, entry, lastAnswer(situation, evidence, entry.id));
  const { secondLook } = entry;
  const first = situation.checks[situation.checkIndex.get(secondLook?.of ?? '') ?? -1];
  if (secondLook === undefined || first === undefined) return false;
  const answer = lastAnswer(situation, evidence, secondLook.of);
  const isLeftOpen = ([check, answers]: readonly [string, readonly string[]]): boolean =>
    answers.includes(lastAnswer(situation, evidence, check) ?? '');
  const leads = [[secondLook.of, secondLook.answers] as const, ...Object.entries(secondLook.also ?? {})].some(
    isLeftOpen,
  );
  return secondLook.alone === true ? leads : isPressing(situation, evidence, first) && (leads || answer === 'unsure');
};

/** Looks that another's answer alone has made pressing, and that were not taken yet. */
export const pressingAlone = (situation: Situation, evidence: Said): readonly CheckEntry[] =>
  situation.checks
    .filter(
      (numbers) =>
        numbers.entry.secondLook?.alone === true &&
        isPressing(situation, evidence, numbers) &&
        lastAnswer(situation, evidence, numbers.entry.id) === null,
    )
    .map(({ entry }) => entry);

/** So surely must the cause lie in the computer's settings for a look at a lead to wait. */
const IN_COMPUTER = 0.7;

/** Whether a step handles the computer alone, so that no lead is plugged or made for it. */
const staysInComputer = ({ faults, checks, isInComputer }: Situation, step: Choice | undefined): boolean => {
  const entry = step?.kind === 'try' ? faults[step.fault] : step?.kind === 'ask' && checks[step.check]?.entry;
  return typeof entry === 'object' && isInComputer(entry);
};

/** Whether a safety look may wait: all signs point into the computer, the step in view stays there, and nothing new is plugged. */
export const mayWait = (
  situation: Situation,
  evidence: Said,
  { probabilities }: Belief,
  { look, best }: { readonly look: CheckEntry | undefined; readonly best: Choice | undefined },
): boolean => {
  if (look?.inUse === undefined || isAnew(situation, evidence, look)) return false;
  const share = situation.faults.reduce(
    (sum, fault, f) => sum + (situation.isInComputer(fault) ? (probabilities[f] ?? 0) : 0),
    0,
  );
  return share >= IN_COMPUTER && staysInComputer(situation, best);
};

/** The pressing looks that lead to one another: the safety look, then those at what it left open. */
const pressingLooks = (situation: Situation, evidence: Said): readonly CheckNumbers[] =>
  situation.checks.filter((numbers) => isTheirs(situation, numbers) && isPressing(situation, evidence, numbers));

/** Below this a fault is not what a safety answer warns of. */
const WARNED_OF = 0.1;

/** The faults that show themselves in one of these answers. */
const warnedBy = ({ faults }: Situation, { entry, odds, answers }: CheckNumbers, bad: readonly string[]): number[] =>
  faults.flatMap((fault, f) =>
    fault.answers?.[entry.id] !== undefined &&
    answers.some((answer, a) => bad.includes(answer) && (odds[a]?.[f] ?? 0) >= WARNED_OF)
      ? [f]
      : [],
  );

/** What the looks have come to: the one that shows harm, or the first of them where none showed anything at all. */
const alarm = (
  situation: Situation,
  evidence: Said,
): { readonly look: CheckNumbers; readonly bad: readonly string[] } | null => {
  const looks = pressingLooks(situation, evidence);
  const answered = looks.map((look) => ({ look, answer: lastAnswer(situation, evidence, look.entry.id) }));
  const shows = answered.findLast(({ look, answer }) => isBad(situation, look.entry, answer));
  if (shows !== undefined) return { look: shows.look, bad: [shows.answer ?? ''] };
  const badOf = (look: CheckNumbers): ReturnType<typeof alarm> => ({
    look,
    bad: look.answers.filter((answer) => answer !== look.entry.good),
  });
  const untold = answered.find(({ look, answer }) => look.entry.secondLook?.alone === true && answer === 'unsure');
  if (untold !== undefined) return badOf(untold.look);
  const [first] = looks;
  return first === undefined || looks.length < 2 || !answered.every(({ answer }) => answer === 'unsure')
    ? null
    : badOf(first);
};

/**
 * What a bad answer to a safety look calls for at once, or that nobody could tell by any look: the remedy of the likeliest fault
 * it warns of, unless one was tried.
 */
export const safetyRemedy = (situation: Situation, evidence: Evidence, belief: Belief): number | undefined => {
  const found = alarm(situation, evidence);
  if (found === null) return undefined;
  const warnedOf = warnedBy(situation, found.look, found.bad);
  if (warnedOf.some((f) => attempts(evidence, f) > 0 || evidence.mended.has(f))) return undefined;
  return warnedOf.sort((f, g) => (belief.probabilities[g] ?? 0) - (belief.probabilities[f] ?? 0) || f - g)[0];
};

/** Whether a look that keeps gear from harm, or the remedy it calls for, waits: nothing else comes before it. */
export const safetyWaits = (situation: Situation, evidence: Evidence, belief: Belief): boolean =>
  safetyRemedy(situation, evidence, belief) !== undefined ||
  pressingLooks(situation, evidence).some(({ entry }) => lastAnswer(situation, evidence, entry.id) === null);

/** Whether no look could tell, so that the remedy is for prudence alone. */
export const isForPrudence = (situation: Situation, evidence: Said): boolean =>
  (alarm(situation, evidence)?.bad.length ?? 0) > 1;
