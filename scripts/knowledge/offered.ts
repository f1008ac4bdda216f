/** Where the walk comes to a fault of the club's own when a member answers as the fault's lines say; and what was taken for granted. */
import { isProblem } from '../../bot/ground/problem.js';
import { appliesIn } from '../../bot/triage/model/context.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import { CLIENTS, SYSTEMS, type CheckEntry, type FaultEntry } from '../../bot/triage/model/schema.js';
import { answerStep, assess, startWalk, type Assessment } from '../../bot/triage/walk/walk.js';
import type { WalkState } from '../../bot/triage/walk/walk-state.js';

interface Said {
  readonly check: CheckEntry;
  readonly answer: string;
  /** Whether the fault's own lines give it; else it was worked out from the check and the fault's stage. */
  readonly isOwn: boolean;
}

interface Course {
  readonly said: readonly Said[];
  /** Titles of the other remedies that were tried before, in order. */
  readonly triedBefore: readonly string[];
  /** Which step offers it: questions and remedies counted, from 1; null where the walk ends without. */
  readonly step: number | null;
}

/** More than a member would go along with. */
const LONGEST = 12;

const likeliestAnswer = ({ situation }: Assessment, fault: FaultEntry, check: CheckEntry): string => {
  const numbers = situation.checks[situation.checkIndex.get(check.id) ?? -1];
  const f = situation.faultIndex.get(fault.id) ?? -1;
  const odds = numbers?.odds.map((row) => row[f] ?? 0) ?? [];
  return numbers?.answers[odds.indexOf(Math.max(...odds))] ?? check.good;
};

const follow = (
  model: TriageModel,
  start: WalkState,
  fault: FaultEntry,
  instead: ReadonlyMap<string, string> = new Map(),
): Course => {
  const said: Said[] = [];
  const triedBefore: string[] = [];
  let state = start;
  for (let step = 1; step <= LONGEST; step++) {
    const now = assess(model, state);
    const next = now.step;
    if (next.kind === 'try' && next.fault.id === fault.id) return { said, triedBefore, step };
    let answer = 'unsure';
    if (next.kind === 'try') {
      triedBefore.push(next.fault.title);
      answer = 'same';
    } else if (next.kind === 'ask' && !next.opening) {
      const { check } = next;
      answer = instead.get(check.id) ?? likeliestAnswer(now, fault, check);
      said.push({ check, answer, isOwn: fault.answers?.[check.id] !== undefined });
    } else if (next.kind !== 'numbers' && next.kind !== 'ask') break;
    const after = answerStep(model, state, next.id, answer, 'member');
    if (isProblem(after)) break;
    state = after;
  }
  return { said, triedBefore, step: null };
};

/** A walk on each connection that the fault can have, on one computer and with one kind of program. */
const startsFor = (model: TriageModel, fault: FaultEntry): readonly (readonly [path: string, start: WalkState])[] =>
  model.paths.flatMap((path) => {
    if (!path.stages.includes(fault.stage)) return [];
    const known = SYSTEMS.flatMap((system) => CLIENTS.map((client) => ({ path: path.id, system, client }))).find(
      (context) =>
        appliesIn(fault.only, context) &&
        path.systems.includes(context.system) &&
        path.clients.includes(context.client),
    );
    return known === undefined ? [] : [[path.id, startWalk({ member: null, helper: null }, known)]];
  });

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
        .filter((id) => id !== answer && follow(model, start, fault, new Map([[check.id, id]])).step === null);
      return hides.length === 0 ? [] : [`${check.id} (with ${hides.join(', ')} it is not offered)`];
    });

/** Lines about one fault: offered where, or why not, and what to add to its `answers`. */
export const offeredLines = (model: TriageModel, fault: FaultEntry): readonly string[] => {
  const courses = startsFor(model, fault).map(([path, start]) => ({ path, start, ...follow(model, start, fault) }));
  const reached = courses.filter(({ step }) => step !== null);
  const missed = courses.filter(({ step }) => step === null);
  const lines: string[] = [];
  if (reached.length > 0) {
    const where =
      missed.length === 0 ? 'every connection that has its stage' : reached.map(({ path }) => path).join(', ');
    lines.push(`offered at step ${steps(reached.flatMap(({ step }) => step ?? []))} on ${where}`);
  }
  for (const { path, said, triedBefore } of missed) {
    const before = triedBefore.length === 0 ? 'it is handed to a person' : `it tries “${triedBefore.join('”, “')}”`;
    const answers = said.map(({ check, answer }) => `${check.id} → ${answer}`).join(', ');
    lines.push(`not reached on ${path}, because ${answers === '' ? 'at once' : `after ${answers}`} ${before}`);
  }
  const shown = reached[0] ?? missed[0];
  if (shown === undefined) return ['not reached, because no connection has its stage'];
  const assumed = shown.said.filter(({ isOwn }) => !isOwn).map(({ check, answer }) => `${check.id} → ${answer}`);
  if (assumed.length > 0)
    lines.push(`taken for granted, as its answers do not say: ${assumed.join(', ')}. Write what a member would say.`);
  const hidden = reached[0] === undefined ? [] : hiding(model, reached[0].start, fault, reached[0]);
  if (hidden.length > 0) lines.push(`hangs on ${hidden.join('; ')}`);
  return lines;
};
