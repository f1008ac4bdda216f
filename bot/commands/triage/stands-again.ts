/** A walk's question in a few words, for under an answer to something else: so that it is not lost where it scrolled away. */
import { tidy } from '../../ground/tidy.js';
import { MS_PER_HOUR } from '../../ground/durations.js';
import { assess, type Assessment } from '../../triage/index.js';
import type { StandsAgain, WordsReader } from '../core/command.js';
import { waitingWalk } from './find-walk.js';
import { NUMBERS_QUESTION, OPENING_QUESTIONS } from './step-data.js';
import { lowered } from './walk-words.js';
import { clubOutcomes } from './walk-keeper.js';

/** A walk left for longer is hardly in mind; it still takes words. */
const IN_MIND_MS = MS_PER_HOUR;

const LONGEST = 140;

/** What waits for a word; null where the walk is at its end. */
const questionOf = ({ step }: Assessment): string | null => {
  if (step.kind === 'numbers') return NUMBERS_QUESTION;
  if (step.kind === 'try') return `what came of the remedy (${lowered(step.fault.title)})?`;
  if (step.kind !== 'ask') return null;
  return step.opening ? OPENING_QUESTIONS[step.id] : step.check.question;
};

/** The reader's answer to what waits once something else was answered. */
export const walkStandsAgain: NonNullable<WordsReader['standsAgain']> = async (
  deps,
  { asker, nowUtcMs },
): Promise<StandsAgain | null> => {
  const walk = await waitingWalk(deps, asker, nowUtcMs);
  if (walk === null || nowUtcMs - walk.updatedUtcMs > IN_MIND_MS) return null;
  const assessment = assess(deps.triage(), walk.state, await clubOutcomes(deps.store, walk.clubId));
  const question = questionOf(assessment);
  if (question === null) return null;
  return {
    note: `Your walk still waits: ${tidy(question, LONGEST)} For its list type “back”.`,
    back: { label: 'Back to the walk', run: `triage walk:${walk.id}` },
  };
};
