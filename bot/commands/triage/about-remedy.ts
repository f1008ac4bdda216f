/** What is asked of a remedy that was shown: answered by the line or two of it that speak of that, and never by all of it again. */
import { tellingMarks } from '../../reading/index.js';
import type { Assessment, FaultEntry, TriageModel } from '../../triage/index.js';
import { remedyLines } from './step-data.js';
import { ownLines } from './walk-words.js';
import type { Walk } from './walk-keeper.js';

const MOST_LINES = 2;
const MOVES_IT = /\bstand clear\b/iu;

/** Where the thing is to be seen that the remedy speaks of. */
const whereToLook = (model: TriageModel, walk: Walk, { context }: Assessment, fault: FaultEntry): readonly string[] => {
  const check = fault.verify.check === undefined ? undefined : model.check(fault.verify.check);
  const lines = check === undefined ? [] : ownLines(check.how, context.system, walk.state);
  // How to move the mount is no place to look at.
  return lines.length === 0 || lines.some((line) => MOVES_IT.test(line)) ? [] : [`Where to look: ${lines.join(' ')}`];
};

/** @param asked the words that ask of it */
export const aboutRemedy = (
  model: TriageModel,
  walk: Walk,
  assessment: Assessment,
  asked: string,
): readonly string[] => {
  const { step } = assessment;
  if (step.kind !== 'try') return [];
  const { lexicon } = model.reading.sayings;
  const wanted = tellingMarks(lexicon, asked);
  const own = remedyLines(walk, assessment);
  const where = whereToLook(model, walk, assessment, step.fault);
  const told = [...own, ...where, `You should see: ${step.fault.verify.text}`].map((line) => ({
    line,
    shared: [...tellingMarks(lexicon, line)].filter((mark) => wanted.has(mark)).length,
  }));
  const best = [...told].sort((a, b) => b.shared - a.shared).slice(0, MOST_LINES);
  const speaking = told.filter((one) => one.shared > 0 && best.includes(one)).map(({ line }) => line);
  if (speaking.length > 0) return speaking;
  return where.length > 0 ? [...where, ...own.slice(0, 1)] : own.slice(0, MOST_LINES);
};
