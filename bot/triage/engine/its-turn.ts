/** Whether a check's turn has come by the other checks it hangs on: the one it follows, and the coarser one it refines. */
import type { Belief } from './belief.js';
import type { Evidence } from './evidence.js';
import type { CheckNumbers, Situation } from './situation.js';

/** So likely must the answer be that opens a check, where it was not given: a "not sure" or one misreading shuts nothing. */
const AS_GOOD_AS_SAID = 0.6;

/** How likely the thing a check looks at truly is one of these, by all that was said. */
const share = (numbers: CheckNumbers, answers: readonly string[], { probabilities }: Belief): number =>
  numbers.answers.reduce((sum, id, a) => {
    const odds = numbers.odds[a];
    if (odds === undefined || !answers.includes(id)) return sum;
    let all = 0;
    for (let h = 0; h < probabilities.length; h++) all += (probabilities[h] as number) * (odds[h] as number);
    return sum + all;
  }, 0);

/** Whether what must be answered before this check has been, in a way that makes it worth asking, or is as good as known. */
export const itsTurn = (
  situation: Situation,
  evidence: Evidence,
  belief: Belief,
  { entry: { after } }: CheckNumbers,
): boolean => {
  if (after === undefined) return true;
  const index = situation.checkIndex.get(after.check) ?? -1;
  const before = situation.checks[index];
  if (before === undefined) return true;
  const said = evidence.observations.filter(({ check }) => check === index);
  if (said.some(({ answer, or = [] }) => [answer, ...or].some((a) => after.answers.includes(before.answers[a] ?? ''))))
    return true;
  const spokenOf = said.length > 0 || evidence.unsure.has(index);
  return spokenOf && share(before, after.answers, belief) >= AS_GOOD_AS_SAID;
};

/** Whether the newest answer to another check leaves nothing for this one to tell. */
export const isBarred = (
  { checkIndex, checks }: Situation,
  { observations }: Evidence,
  { entry }: CheckNumbers,
): boolean =>
  (entry.barredBy ?? []).some(({ check, answers }) => {
    const index = checkIndex.get(check);
    const said = observations.findLast((observation) => observation.check === index);
    return (
      said !== undefined && said.or === undefined && answers.includes(checks[said.check]?.answers[said.answer] ?? '')
    );
  });

/** A finer look tells nothing more where the coarser answer leaves one of its answers this likely. */
const SAID_ENOUGH = 0.65;

/** Whether the coarser check was answered in a way that says what this finer one would. */
export const isSaidCoarsely = (
  { checkIndex, checks }: Situation,
  { observations }: Evidence,
  { entry }: CheckNumbers,
): boolean => {
  const index = checkIndex.get(entry.refines?.check ?? '');
  const said = observations.findLast(({ check }) => check === index);
  const answer = said?.or !== undefined || said === undefined ? '' : (checks[said.check]?.answers[said.answer] ?? '');
  const weights = Object.values(entry.refines?.answers[answer] ?? {});
  return Math.max(...weights) > SAID_ENOUGH * weights.reduce((sum, weight) => sum + weight, 0);
};
