/** A walk of a member who has one fault, and answers as it would have it: step by step, with where the fault stands. */
import { isProblem } from '../../bot/ground/problem.js';
import { appliesIn } from '../../bot/triage/model/context.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import { CLIENTS, SYSTEMS, type CheckEntry, type FaultEntry } from '../../bot/triage/model/schema.js';
import { answerStep, assess, startWalk, type Assessment } from '../../bot/triage/walk/walk.js';
import { UNSURE, type WalkState } from '../../bot/triage/walk/walk-state.js';

export interface Said {
  readonly check: CheckEntry;
  readonly answer: string;
  /** Whether the fault's own lines give it; else it was worked out from the check and the fault's stage. */
  readonly isOwn: boolean;
}

export interface Shown {
  /** The question, or the title of the remedy. */
  readonly text: string;
  /** What was answered; null at the remedy that the walk was for. */
  readonly answer: string | null;
  readonly standing: Standing | null;
}

export interface Standing {
  /** From 1. */
  readonly place: number;
  /** 0 to 1. */
  readonly probability: number;
}

export interface Course {
  readonly said: readonly Said[];
  /** The other faults whose remedies were tried before, in order. */
  readonly triedBefore: readonly FaultEntry[];
  /** Which step offers it: questions and remedies counted, from 1; null where the walk ends without. */
  readonly step: number | null;
  readonly shown: readonly Shown[];
}

/** More than a member would go along with. */
const LONGEST = 12;

export const standingOf = ({ situation, belief }: Assessment, faultId: string): Standing | null => {
  const f = situation.faultIndex.get(faultId);
  const probability = f === undefined ? undefined : belief.probabilities[f];
  if (probability === undefined) return null;
  const ahead = situation.faults.filter((_, other) => (belief.probabilities[other] ?? 0) > probability);
  return { place: ahead.length + 1, probability };
};

/** The answer that the fault makes likeliest, and how likely that is. */
export const likeliestAnswer = (
  { situation }: Pick<Assessment, 'situation'>,
  fault: FaultEntry,
  check: CheckEntry,
): { readonly answer: string; readonly probability: number } => {
  const numbers = situation.checks[situation.checkIndex.get(check.id) ?? -1];
  const f = situation.faultIndex.get(fault.id) ?? -1;
  const odds = numbers?.odds.map((row) => row[f] ?? 0) ?? [];
  const probability = Math.max(0, ...odds);
  return { answer: numbers?.answers[odds.indexOf(probability)] ?? check.good, probability };
};

export interface Wish {
  /** Check → an answer in place of the likeliest. */
  readonly instead?: ReadonlyMap<string, string>;
  /** Ends as well where this fault's remedy is offered. */
  readonly endsAt?: string;
}

/** The connections that the fault can have, on one computer and with one kind of program each. */
export const waysFor = (model: TriageModel, fault: FaultEntry) =>
  model.paths.flatMap((path) => {
    if (!path.stages.includes(fault.stage)) return [];
    const known = SYSTEMS.flatMap((system) => CLIENTS.map((client) => ({ path: path.id, system, client }))).find(
      (context) =>
        appliesIn(fault.only, context) &&
        path.systems.includes(context.system) &&
        path.clients.includes(context.client),
    );
    return known === undefined ? [] : [known];
  });

export type Way = ReturnType<typeof waysFor>[number];

/** What somebody with the fault meets and says at one step. */
interface Turn {
  readonly text: string;
  readonly answer: string;
  readonly label: string;
  readonly said?: Said;
  readonly tried?: FaultEntry;
}

const askedTurn = (now: Assessment, fault: FaultEntry, check: CheckEntry, { instead }: Wish): Turn => {
  const answer = instead?.get(check.id) ?? likeliestAnswer(now, fault, check).answer;
  return {
    text: check.question,
    answer,
    label: check.answers.find(({ id }) => id === answer)?.label ?? answer,
    said: { check, answer, isOwn: fault.answers?.[check.id] !== undefined },
  };
};

const OPENING_TEXTS = {
  path: 'How does the computer reach the mount?',
  system: 'Which computer is it?',
  client: 'How does the program talk to the mount?',
} as const;

/** Null where the walk ends. */
const turnAt = (model: TriageModel, now: Assessment, fault: FaultEntry, wish: Wish): Turn | null => {
  const { step } = now;
  if (step.kind === 'try') return { text: step.fault.title, answer: 'same', label: 'no change', tried: step.fault };
  if (step.kind === 'numbers') return { text: 'the numbers of a miss', answer: UNSURE, label: 'none now' };
  if (step.kind !== 'ask') return null;
  if (!step.opening) return askedTurn(now, fault, step.check, wish);
  const ways = step.id === 'path' ? waysFor(model, fault).filter(({ path }) => step.paths.includes(path)) : [];
  const answer = ways[0]?.path ?? UNSURE;
  return { text: OPENING_TEXTS[step.id], answer, label: model.path(answer)?.title ?? 'not sure' };
};

/** Where a member with this fault is led, from a walk that has begun. */
export const follow = (model: TriageModel, start: WalkState, fault: FaultEntry, wish: Wish = {}): Course => {
  const said: Said[] = [];
  const triedBefore: FaultEntry[] = [];
  const shown: Shown[] = [];
  let state = start;
  for (let step = 1; step <= LONGEST; step++) {
    const now = assess(model, state);
    const standing = standingOf(now, fault.id);
    const turn = turnAt(model, now, fault, wish);
    if (turn === null) break;
    const { text, answer, label, tried } = turn;
    if (tried?.id === fault.id) {
      shown.push({ text, answer: null, standing });
      return { said, triedBefore, step, shown };
    }
    shown.push({ text, answer: label, standing });
    if (turn.said !== undefined) said.push(turn.said);
    if (tried !== undefined) triedBefore.push(tried);
    if (tried !== undefined && tried.id === wish.endsAt) break;
    const after = answerStep(model, state, now.step.id, answer, 'member');
    if (isProblem(after)) break;
    state = after;
  }
  return { said, triedBefore, step: null, shown };
};

export const startOn = (known: Partial<Way>): WalkState => startWalk({ member: null, helper: null }, known);
