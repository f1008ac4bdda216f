/** What becomes of a fault of the club's own: where a member who has it is led to it, who else is, and what was taken for granted. */
import { situationFor, type Situation } from '../../bot/triage/engine/situation.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import type { FaultEntry } from '../../bot/triage/model/schema.js';
import type { WalkState } from '../../bot/triage/walk/walk-state.js';
import { tellText } from '../../bot/triage/walk/tell-text.js';
import { follow, likeliestAnswer, startOn, waysFor, type Course, type Way } from './courses.js';

const steps = (numbers: readonly number[]): string => {
  const [least, most] = [Math.min(...numbers), Math.max(...numbers)];
  return least === most ? `${least}` : `${least} to ${most}`;
};

/** Other answers to what was taken for granted with which the fault is no longer come to. */
const hiding = (model: TriageModel, start: WalkState, fault: FaultEntry, course: Course): readonly string[] =>
  course.said
    .filter(({ isOwn }) => !isOwn)
    .flatMap(({ check, answer }) => {
      const hides = check.answers
        .map(({ id }) => id)
        .filter(
          (id) => id !== answer && follow(model, start, fault, { instead: new Map([[check.id, id]]) }).step === null,
        );
      return hides.length === 0 ? [] : [`${check.id} (with ${hides.join(', ')} it is not offered)`];
    });

/** Every walk asks this early: who answers it otherwise is not led to the fault. */
const FIRST = 'how-far';
const HARDLY = 0.05;

const startsAlike = (model: TriageModel, situation: Situation, fault: FaultEntry, other: FaultEntry): boolean => {
  const check = model.check(FIRST);
  if (check === undefined) return true;
  const { answer } = likeliestAnswer({ situation }, other, check);
  const numbers = situation.checks[situation.checkIndex.get(FIRST) ?? -1];
  const row = numbers?.odds[numbers.answers.indexOf(answer)];
  return row === undefined || (row[situation.faultIndex.get(fault.id) ?? -1] ?? 0) > HARDLY;
};

/** A walk that begins with the fault's own words, where it has some: others may use them too. */
const wordedStart = (model: TriageModel, way: Way, { words = [] }: FaultEntry): WalkState => {
  const plain = words.find((one) => /^[\p{L}\d ',-]+$/u.test(one));
  return plain === undefined ? startOn(way) : tellText(model, startOn(way), plain, 'member').state;
};

/**
 * The other faults whose members are offered this one's remedy before their own: each walked once, on the first connection
 * that both can have.
 */
export const takenFrom = (model: TriageModel, fault: FaultEntry): readonly FaultEntry[] => {
  const walked = new Set([fault.id]);
  return waysFor(model, fault).flatMap((way) => {
    const situation = situationFor(model, way);
    return situation.faults.filter((other) => {
      if (walked.has(other.id) || !startsAlike(model, situation, fault, other)) return false;
      walked.add(other.id);
      const { triedBefore } = follow(model, wordedStart(model, way, fault), other, { endsAt: fault.id });
      return triedBefore.some(({ id }) => id === fault.id);
    });
  });
};

/** How a line begins that asks for a second look. */
export const LOOK = 'LOOK:';
const MOST_NAMED = 4;

/** A question of its own that only this fault answers so. */
const ownQuestion = (model: TriageModel, fault: FaultEntry): string | undefined =>
  Object.keys(fault.answers ?? {})
    .flatMap((id) => model.check(id) ?? [])
    .filter(
      ({ id, byStage, under }) =>
        byStage === undefined &&
        under === undefined &&
        !model.faults.some((other) => other.id !== fault.id && other.answers?.[id] !== undefined),
    )
    .sort((a, b) => a.minutes - b.minutes)[0]?.id;

const takenLines = (model: TriageModel, fault: FaultEntry): readonly string[] => {
  const taken = takenFrom(model, fault);
  if (taken.length === 0) return [];
  const named = taken.slice(0, MOST_NAMED).map(({ id }) => id);
  const more = taken.length > named.length ? ` and ${taken.length - named.length} more` : '';
  const question = ownQuestion(model, fault);
  const advice = ((): string => {
    if (fault.remedy.confirm !== undefined) return `a smaller weight than ${fault.weight} lets the others come first`;
    return question === undefined
      ? 'write a question that tells it from those, answer it under `answers`, and name it under `remedy` as `confirm:`'
      : `write \`confirm: ${question}\` under \`remedy\`: then that question is asked before it is offered`;
  })();
  return [`${LOOK} members with other faults are offered it before their own: ${named.join(', ')}${more}; ${advice}`];
};

const wayNames = (courses: readonly { readonly path: string }[]): string => courses.map(({ path }) => path).join(', ');

const offeredAt = (model: TriageModel, fault: FaultEntry) =>
  waysFor(model, fault).map((way) => {
    const start = startOn(way);
    return { path: way.path, start, ...follow(model, start, fault) };
  });

const courseLines = (courses: ReturnType<typeof offeredAt>): readonly string[] => {
  const reached = courses.filter(({ step }) => step !== null);
  const missed = courses.filter(({ step }) => step === null);
  const where = missed.length === 0 && reached.length > 1 ? 'each connection that can have it' : wayNames(reached);
  return [
    ...(reached.length > 0 ? [`offered at step ${steps(reached.flatMap(({ step }) => step ?? []))} on ${where}`] : []),
    ...missed.map(({ path, said, triedBefore }) => {
      const titles = triedBefore.map(({ title }) => title);
      const before = titles.length === 0 ? 'it is handed to a person' : `it tries “${titles.join('”, “')}”`;
      const answers = said.map(({ check, answer }) => `${check.id} → ${answer}`).join(', ');
      return `not reached on ${path}, because ${answers === '' ? 'at once' : `after ${answers}`} ${before}`;
    }),
  ];
};

/** Lines about a shipped fault that the club has changed: where it is offered now. */
export const changedLines = (model: TriageModel, fault: FaultEntry): readonly string[] =>
  courseLines(offeredAt(model, fault)).map((line) => `ships, changed by you; ${line}`);

/** Lines about one fault: offered where, or why not, whom it is offered before its turn, and what to add to its `answers`. */
export const offeredLines = (model: TriageModel, fault: FaultEntry): readonly string[] => {
  const courses = offeredAt(model, fault);
  const reached = courses.filter(({ step }) => step !== null);
  const [shown] = reached.length > 0 ? reached : courses;
  if (shown === undefined) return ['not reached, because no connection has its stage'];
  const assumed = shown.said.filter(({ isOwn }) => !isOwn).map(({ check, answer }) => `${check.id} → ${answer}`);
  const hidden = reached[0] === undefined ? [] : hiding(model, reached[0].start, fault, reached[0]);
  return [
    ...courseLines(courses),
    ...takenLines(model, fault),
    ...(assumed.length > 0
      ? [`taken for granted, as its answers do not say: ${assumed.join(', ')}. Write what a member would say.`]
      : []),
    ...(hidden.length > 0 ? [`hangs on ${hidden.join('; ')}`] : []),
  ];
};
