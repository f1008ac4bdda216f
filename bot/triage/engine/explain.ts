/** Puts a walk into facts for people: causes still standing, why this step, answers that fit ill, who said what. */
import { applyAnswer, normalise } from './belief.js';
import type { TriageModel } from '../model/model.js';
import type { FaultEntry } from '../model/schema.js';
import type { Assessment } from '../walk/walk.js';

export const UNEXPLAINED = 'unexplained';

export interface Standing {
  readonly faultId: string;
  readonly title: string;
  readonly probability: number;
}

const UNEXPLAINED_TITLE = 'Something this guide does not know';

/** `unexplained`, or `unexplained-lead` where the path has links. */
const unknownId = (link: string | null): string => (link === null ? UNEXPLAINED : `${UNEXPLAINED}-${link}`);

const titleOf = ({ situation, linkTitle }: Assessment, h: number): string => {
  const link = situation.links[h] ?? null;
  return situation.faults[h]?.title ?? (link === null ? UNEXPLAINED_TITLE : `Something unknown in ${linkTitle(link)}`);
};

const standingOf = (assessment: Assessment, probabilities: Float64Array, least: number, limit: number): Standing[] =>
  [...probabilities]
    .map((probability, i) => ({ i, probability }))
    .filter(({ probability }) => probability >= least)
    .sort((a, b) => b.probability - a.probability || a.i - b.i)
    .slice(0, limit)
    .map(({ i, probability }) => ({
      faultId: assessment.situation.faults[i]?.id ?? unknownId(assessment.situation.links[i] ?? null),
      title: titleOf(assessment, i),
      probability,
    }));

/** Causes still standing, likeliest first; those below 1 % are left out. */
export const standing = (assessment: Assessment, limit = 8): readonly Standing[] =>
  standingOf(assessment, assessment.belief.probabilities, 0.01, limit);

/** What would be believed once a check was answered so, and how likely that answer is. */
const onceAnswered = (
  { situation, belief }: Assessment,
  check: number,
  answer: number,
): { readonly after: Float64Array; readonly probability: number } => {
  const after = Float64Array.from(belief.probabilities);
  applyAnswer(after, situation, { check, answer, look: 'look' });
  const probability = normalise(after);
  return { after, probability };
};

export interface WhatIf {
  readonly label: string;
  readonly probability: number;
  readonly likeliest: readonly Standing[];
}

/** For a check: what each answer would point to. Empty for other steps. */
export const whatEachAnswerSays = (assessment: Assessment): readonly WhatIf[] => {
  const { step, situation } = assessment;
  if (step.kind !== 'ask' || step.opening) return [];
  const check = situation.checkIndex.get(step.id);
  if (check === undefined) return [];
  return step.check.answers.map(({ label }, answer) => {
    const { after, probability } = onceAnswered(assessment, check, answer);
    return { label, probability, likeliest: standingOf(assessment, after, 0.1, 2) };
  });
};

/** How far an answer would move what is believed, as a total variation from 0 to 1: what no cause in question bears on moves nothing. */
export const movedBy = (assessment: Assessment, checkId: string, answerId: string): number => {
  const { situation, belief } = assessment;
  const check = situation.checkIndex.get(checkId);
  const answer = check === undefined ? -1 : (situation.checks[check]?.answers.indexOf(answerId) ?? -1);
  if (check === undefined || answer < 0) return 0;
  const { after } = onceAnswered(assessment, check, answer);
  return after.reduce((sum, own, f) => sum + Math.abs(own - (belief.probabilities[f] ?? 0)), 0) / 2;
};

export interface Doubt {
  readonly checkId: string;
  readonly question: string;
  readonly answer: string;
  readonly probability: number;
}

/** An answer is called a misfit once it is this likely to be mistaken. */
const MISFIT = 0.3;

/** Answers that the likeliest causes contradict. */
export const contradictions = ({ situation, evidence, belief }: Assessment): readonly Doubt[] =>
  evidence.observations.flatMap(({ check, answer }, i) => {
    const probability = belief.mistaken[i] ?? 0;
    const entry = situation.checks[check]?.entry;
    // Only the last look at a thing is still held to be true.
    if (
      entry === undefined ||
      probability < MISFIT ||
      evidence.observations.slice(i + 1).some((later) => later.check === check)
    )
      return [];
    return [{ checkId: entry.id, question: entry.question, answer: entry.answers[answer]?.label ?? '', probability }];
  });

export interface Speaking {
  readonly check: string;
  readonly answer: string;
}

/** An answer speaks for a fault where it is this many times likelier under it than over all. */
const SPEAKS = 2;

/** The answers that speak for a fault, loudest first. */
export const speaksFor = ({ situation, evidence }: Assessment, faultId: string): readonly Speaking[] => {
  const f = situation.faultIndex.get(faultId);
  if (f === undefined) return [];
  const said = evidence.observations.map(({ check, answer }) => {
    const odds = situation.checks[check]?.odds[answer];
    const overAll = odds?.reduce((sum, p, h) => sum + p * (situation.priors[h] ?? 0), 0) ?? 1;
    const entry = situation.checks[check]?.entry;
    return {
      check: entry?.id ?? '',
      answer: entry?.answers[answer]?.id ?? '',
      times: (odds?.[f] ?? 0) / Math.max(overAll, 1e-6),
    };
  });
  return said
    .filter(({ times }) => times >= SPEAKS)
    .sort((a, b) => b.times - a.times)
    .map(({ check, answer }) => ({ check, answer }));
};

export interface Located {
  readonly link: string;
  readonly title: string;
  readonly probability: number;
}

/** In which link of the chain the trouble lies, likeliest first, faults and unknowns together; empty where the path names no links. */
export const located = ({ situation, belief, linkTitle }: Assessment): readonly Located[] => {
  const shares = new Map<string, number>();
  for (const [h, link] of situation.links.entries())
    if (link !== null) shares.set(link, (shares.get(link) ?? 0) + (belief.probabilities[h] ?? 0));
  return [...shares]
    .map(([link, probability]) => ({ link, title: linkTitle(link), probability }))
    .sort((a, b) => b.probability - a.probability);
};

/** Faults that no check tells apart from this one, whose remedies come in turn. */
export const lookAlikes = (model: TriageModel, fault: FaultEntry): readonly FaultEntry[] =>
  (fault.sameAs ?? []).flatMap((id) => model.fault(id) ?? []);

export const SYSTEM_NAMES = { windows: 'Windows', macos: 'macOS', linux: 'Linux', phone: 'Phone or tablet' } as const;
export const CLIENT_NAMES = {
  direct: 'program opens the port itself',
  platform: 'program goes through a driver platform',
  none: 'no computer, the hand controller alone',
} as const;
