/** A walk's question in a few words, for under an answer to something else: so that it is not lost where it scrolled away. */
import type { Choice } from '../../ground/problem.js';
import { onceOf } from '../../ground/once.js';
import { remember } from '../../ground/remember.js';
import { tidy } from '../../ground/tidy.js';
import { MS_PER_HOUR } from '../../ground/durations.js';
import { assess, type Assessment } from '../../triage/index.js';
import type { Deps, StandsAgain, WordsReader } from '../core/command.js';
import { answerChoices } from './answer-choices.js';
import { waitingWalk } from './find-walk.js';
import { NUMBERS_QUESTION, OPENING_QUESTIONS } from './step-data.js';
import { lowered } from './walk-words.js';
import { clubOutcomes, type Walk } from './walk-keeper.js';

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

const choicesOf = (walk: Walk, assessment: Assessment): readonly Choice[] => [
  ...answerChoices(walk, assessment),
  ...(assessment.step.kind === 'try' ? [{ label: 'Show the lines again', run: `triage walk:${walk.id}` }] : []),
];

/** The walks, as they were when, whose lists stand under an answer to something else already; in this process's memory alone, bounded. */
const shownIn = onceOf((_: Deps['store']['walks']) => new Set<string>());
const MOST_KEPT = 1000;

/** Whether the walk's list has been shown under another answer since the walk last went on; from now on it has. */
const wasShown = ({ store }: Deps, { id, updatedUtcMs }: Walk): boolean => {
  const shown = shownIn(store.walks);
  const key = `${id} ${updatedUtcMs}`;
  const was = shown.has(key);
  remember(shown, key, MOST_KEPT);
  return was;
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
  const back = { label: 'Back to the walk', run: `triage walk:${walk.id}` };
  if (wasShown(deps, walk))
    return { note: 'Your walk still waits: type “back” for its question.', choices: [back], back };
  return {
    note: `Your walk still waits: ${tidy(question, LONGEST)}`,
    choices: choicesOf(walk, assessment),
    back,
  };
};
