/** What each check answers under each cause, named or unknown, as probabilities before members' mistakes. */
import type { TriageModel } from '../model/model.js';
import type { AnswerOdds, CheckEntry, FaultEntry } from '../model/schema.js';
import { contrastOdds } from './contrast.js';

/** A fault of the model, or what no list holds in one link of the chain. */
export interface Suspect {
  readonly fault: FaultEntry | null;
  /** For an unknown: the first stage at which a fault of its link shows. */
  readonly stage: string;
  readonly link: string | null;
}

export interface OddsContext {
  readonly model: TriageModel;
  /** Position of a stage along the path. */
  readonly position: (stage: string) => number;
}

const idsOf = (check: CheckEntry): readonly string[] => check.answers.map(({ id }) => id);

const spread = (odds: AnswerOdds, answers: readonly string[]): number[] => {
  if (typeof odds === 'string') return answers.map((answer) => (answer === odds ? 1 : 0));
  const named = Object.values(odds).reduce((sum, value) => sum + value, 0);
  const silent = answers.filter((answer) => odds[answer] === undefined).length;
  if (silent === 0) return answers.map((answer) => (odds[answer] ?? 0) / named);
  return answers.map((answer) => odds[answer] ?? Math.max(0, 1 - named) / silent);
};

const scaled = (values: readonly number[]): number[] => {
  const sum = values.reduce((total, value) => total + value, 0);
  return values.map((value) => value / sum);
};

const notGood = (check: CheckEntry, answers: readonly string[]): number[] => {
  const others = answers.length - 1;
  if (check.bad === undefined) return answers.map((answer) => (answer === check.good ? 0 : 1 / others));
  return answers.map((answer) => {
    if (answer === check.good) return 0;
    if (answer !== check.bad) return 0.1 / (others - 1);
    return others === 1 ? 1 : 0.9;
  });
};

/** A coarser check's odds, each of its answers split among the finer ones by weight. */
const refined = (suspect: Suspect, check: CheckEntry, context: OddsContext): number[] | undefined => {
  const coarse = check.refines === undefined ? undefined : context.model.check(check.refines.check);
  if (check.refines === undefined || coarse === undefined) return undefined;
  const { answers } = check.refines;
  const above = oddsUnder(suspect, coarse, context);
  const fine = idsOf(check);
  const odds = fine.map(() => 0);
  for (const [i, coarseAnswer] of idsOf(coarse).entries()) {
    const weights = answers[coarseAnswer] ?? {};
    const leaning = fine.map(
      (answer) => (weights[answer] ?? 0) * (check.leans?.[answer]?.[suspect.fault?.id ?? ''] ?? 1),
    );
    const total = leaning.reduce((sum, weight) => sum + weight, 0);
    if (total === 0) continue;
    for (const [a, weight] of leaning.entries()) odds[a] = (odds[a] ?? 0) + ((above[i] ?? 0) * weight) / total;
  }
  // What leans strongly overall is also said more often overall: half of the lean tells between groups.
  return scaled(odds.map((p, a) => p * Math.sqrt(check.leans?.[fine[a] ?? '']?.[suspect.fault?.id ?? ''] ?? 1)));
};

const base = (suspect: Suspect, check: CheckEntry, answers: readonly string[], context: OddsContext): number[] => {
  if (check.contrast !== undefined) return contrastOdds(check.contrast, answers, suspect.link);
  const named = check.byStage?.[suspect.stage] ?? check.usual;
  if (named !== undefined) return spread(named, answers);
  if (check.scope === 'chain' && context.position(suspect.stage) < context.position(check.stage))
    return notGood(check, answers);
  return answers.map((answer) => (answer === check.good ? 1 : 0));
};

/**
 * An array beside the check's answers: as the fault says; else as the check says for the fault; else from the coarser check,
 * the links of a contrast, the fault's stage, the usual; else, for a check of the whole chain behind the fault, not good;
 * else good. Then what the check adds or leans for the fault.
 */
export const oddsUnder = (suspect: Suspect, check: CheckEntry, context: OddsContext): number[] => {
  const answers = idsOf(check);
  const { fault } = suspect;
  const own = fault?.answers?.[check.id] ?? (fault === null ? undefined : check.under?.[fault.id]);
  const finer = own === undefined ? refined(suspect, check, context) : undefined;
  if (finer !== undefined) return finer;
  const odds = own === undefined ? base(suspect, check, answers, context) : spread(own, answers);
  if (fault === null || (check.leans === undefined && check.adds === undefined)) return odds;
  return scaled(
    odds.map(
      (p, a) =>
        p * (check.leans?.[answers[a] ?? '']?.[fault.id] ?? 1) + (check.adds?.[answers[a] ?? '']?.[fault.id] ?? 0),
    ),
  );
};

/** How far what no list holds fails where its stage does; a check that knows every stage is surer than one of the chain. */
const LIKE_ITS_STAGE = { byStage: 0.9, chain: 0.6 } as const;
/** A look at one part finds nothing wrong with what no list holds this often. */
const PART_LOOKS_GOOD = 0.8;

/** What a check answers when the cause is one that no list holds, in a link or, without links, anywhere. */
export const oddsOfUnknown = (suspect: Suspect, check: CheckEntry, context: OddsContext): number[] => {
  const answers = idsOf(check);
  const anything = answers.map((answer) => (answer === check.good ? 0.5 : 0.5 / (answers.length - 1)));
  if (suspect.link === null) return anything;
  if (check.contrast !== undefined) return contrastOdds(check.contrast, answers, suspect.link);
  const chain = check.scope === 'chain' || check.byStage !== undefined || check.refines !== undefined;
  if (!chain)
    return answers.map((answer) =>
      answer === check.good ? PART_LOOKS_GOOD : (1 - PART_LOOKS_GOOD) / (answers.length - 1),
    );
  const like = oddsUnder(suspect, check, context);
  const share = check.byStage === undefined ? LIKE_ITS_STAGE.chain : LIKE_ITS_STAGE.byStage;
  return answers.map((_, a) => share * (like[a] ?? 0) + (1 - share) * (anything[a] ?? 0));
};
