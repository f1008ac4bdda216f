/** The cautions of a step: its own, and those of a lead that may be there while the way to the mount is not known. */
import {
  pressingAlone,
  unaskedSafety,
  type Assessment,
  type CheckEntry,
  type FaultEntry,
  type Step,
} from '../../triage/index.js';
import { cautionLinesAfter } from './walk-words.js';

const POWER_OFF = 'power-off-first';

/** Where leads to the computer are handled: elsewhere a mount is off for its weights, its clock or its motors. */
const OF_LEADS: readonly string[] = ['cable', 'adapter', 'system-port'];

type Handled = Pick<CheckEntry | FaultEntry, 'stage' | 'only'>;

/** It may be about the lead that the look is at: one of its stage, or mount off and pulled or plugged, on a way that both have. */
const mayBeOf = (look: CheckEntry, { stage, only }: Handled, cautions: readonly string[]): boolean =>
  (look.stage === stage || (OF_LEADS.includes(stage) && cautions.includes(POWER_OFF))) &&
  (only?.paths === undefined ||
    look.only?.paths === undefined ||
    look.only.paths.some((path) => only.paths?.includes(path)));

const withLeads = (handled: Handled, own: readonly string[], { situation }: Assessment): readonly string[] => {
  const possible = unaskedSafety(situation).filter((look) => mayBeOf(look, handled, own));
  return [...own, ...possible.flatMap(({ cautions }) => cautions ?? [])];
};

const ofCheck = (check: CheckEntry, assessment: Assessment): readonly string[] => {
  const own = [...(check.powerOffFirst === true ? [POWER_OFF] : []), ...(check.cautions ?? [])];
  // A look is harmless in itself; only what is swapped for it is not.
  return check.powerOffFirst === true && check.sameLeads !== true ? withLeads(check, own, assessment) : own;
};

/** @param isFirstWay another way, and what makes it last, may swap a lead after all */
const ofRemedy = (fault: FaultEntry, assessment: Assessment, isFirstWay = true): readonly string[] => {
  const { cautions = [], sameLeads } = fault.remedy;
  return sameLeads === true && isFirstWay ? cautions : withLeads(fault, cautions, assessment);
};

/** What a look in hand keeps from harm is kept from it while the set-up is asked for, too. */
const ofOpenLooks = ({ situation, evidence }: Assessment): readonly string[] =>
  pressingAlone(situation, evidence).flatMap(({ cautions = [] }) => cautions.filter((id) => id !== POWER_OFF));

const ofStep = (step: Step | undefined, assessment: Assessment): readonly string[] => {
  if (step?.kind === 'try') return ofRemedy(step.fault, assessment, !step.otherwise && step.lasting !== true);
  if (step?.kind !== 'ask') return [];
  return step.opening ? ofOpenLooks(assessment) : ofCheck(step.check, assessment);
};

/** The cautions that the card of this step bears. */
export const cautionsOf = (assessment: Assessment): readonly string[] => ofStep(assessment.step, assessment);

/**
 * In full the first time that a walk gives them, then by name.
 * @param given by earlier replies of the walk
 */
export const stepCautions = (given: readonly string[], assessment: Assessment): readonly string[] =>
  cautionLinesAfter(cautionsOf(assessment), new Set(given));
