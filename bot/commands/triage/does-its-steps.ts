/** Whether what a member says was done are the steps of the remedy on show, told at once or by and by: its kind of deed, on one of its things. */
import { onceOf } from '../../ground/once.js';
import { curedByDeed, deedKindsIn, tellingMarks, type DeedKind } from '../../reading/index.js';
import { thingsNamed, type FaultEntry } from '../../triage/index.js';
import { lastSaidToRemedy } from './last-said.js';
import { remedyLines } from './step-data.js';
import type { Began } from './turn.js';

/** Less likely, a remedy is not offered for its kind of deed alone. */
const LIKELY = 0.005;

/** Of so many kinds, what they were done to need not be named. */
const ENOUGH_KINDS = 2;

/** "30 to 5" is of whatever has figures. */
const FIGURE = /^(?:[\d.:]+|port|number)$/u;

const deedOf = (text: string): string => {
  const { deed } = curedByDeed(text);
  return deed === '' ? text : deed;
};

export interface StepsDone {
  /** They are this remedy's. */
  readonly isDone: boolean;
  /** Another kind of deed is told than any of its own. */
  readonly isOther: boolean;
}

const stepsIn = (began: Began, text: string): StepsDone => {
  const { context, walk, before } = began;
  const { step } = before;
  if (step.kind !== 'try') return { isDone: false, isOther: false };
  const lines = [...remedyLines(walk, before), step.fault.title].join('. ');
  const own = deedKindsIn(lines);
  const deed = deedOf(text);
  const told: readonly DeedKind[] = [...deedKindsIn(deed)];
  const shared = told.filter((kind) => own.has(kind));
  const { model } = context;
  const things = tellingMarks(model.reading.sayings.lexicon, lines);
  const named = thingsNamed(model, deed);
  const isOnItsThing = named.some((thing) => things.has(thing));
  return {
    isDone:
      shared.length >= ENOUGH_KINDS ||
      (shared.length > 0 && (isOnItsThing || named.every((thing) => FIGURE.test(thing)))),
    isOther: told.length > 0 && shared.length === 0 && !isOnItsThing,
  };
};

/** @returns neither where no remedy is on show, or no deed is told */
export const stepsDone = (began: Began, text: string): StepsDone => {
  const now = stepsIn(began, text);
  const before = now.isDone ? null : lastSaidToRemedy(began);
  return before !== null && curedByDeed(before).isDone && stepsIn(began, before).isDone
    ? { isDone: true, isOther: false }
    : now;
};

export interface DeedAlike {
  /** A deed of some kind is told. */
  readonly isDeed: boolean;
  /** A kind of deed is told that stands among this remedy's steps. */
  readonly isOfKind: (fault: FaultEntry) => boolean;
  /** … and it may be the cure here. */
  readonly mayBe: (fault: FaultEntry) => boolean;
}

const kindsOf = onceOf(({ title, remedy: { steps, otherwise } }: FaultEntry) =>
  deedKindsIn(`${title}. ${JSON.stringify([steps, otherwise])}`),
);

export const deedAlike = ({ before: { situation, belief } }: Began, text: string): DeedAlike => {
  const told = [...deedKindsIn(deedOf(text))];
  const isOfKind = (fault: FaultEntry): boolean => told.some((kind) => kindsOf(fault).has(kind));
  const isLikely = ({ id }: FaultEntry): boolean =>
    (belief.probabilities[situation.faultIndex.get(id) ?? -1] ?? 0) >= LIKELY;
  return { isDeed: told.length > 0, isOfKind, mayBe: (fault) => isLikely(fault) && isOfKind(fault) };
};
