/** Questions asked by a script, one run after another: what a run left open takes no words of the next that are not said to it. */
import type { Deps } from '../../commands/core/command.js';
import type { ErrorSink } from '../../commands/core/dispatch.js';
import { isProblem, problem } from '../../ground/problem.js';
import type { Outcome } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import { CONSOLE_ASKER, runConsoleLine } from './who-speaks.js';

export interface OneShotAnswer {
  readonly outcome: Outcome;
  /** What a person should know of the walk that an earlier run left open; null where it does not matter. */
  readonly hint: string | null;
}

/** A line of a file that is for whoever reads the file. */
export const isComment = (line: string): boolean => /^\s*#(?:\D|$)/u.test(line);

const COMMENT = problem('comment', 'A line that begins with # is a comment and is not asked.');

/** The reader that takes words for the walk that waits. */
const WALK_READER = 'triage';

const walkIdOf = (outcome: Outcome): string | null => {
  const id = isProblem(outcome) ? undefined : outcome.data['walkId'];
  return typeof id === 'string' ? id : null;
};

/** One run: its answers in order. A walk begun or named in it takes bare words from then on, as in a conversation. */
export const oneShotRun = (
  deps: Deps,
  now: () => UtcMs,
  onError: ErrorSink,
): { readonly answer: (line: string) => Promise<OneShotAnswer> } => {
  const { clubId, memberId } = CONSOLE_ASKER;
  const withoutWalk: Deps = { ...deps, readers: (deps.readers ?? []).filter(({ name }) => name !== WALK_READER) };
  let hasWalk = false;

  const leftOpen = async (): Promise<string | null> =>
    hasWalk ? null : ((await deps.store.walks.active(clubId, memberId).catch(() => null))?.id ?? null);

  const hintFor = (line: string, outcome: Outcome, before: string | null): string | null => {
    if (before === null) return null;
    if (isProblem(outcome))
      return outcome.problem === 'unknown-command'
        ? `Words for the walk that an earlier run left open: triage walk:${before} and the words.`
        : null;
    return walkIdOf(outcome) === before && !/\bwalk:/iu.test(line)
      ? 'This goes on with the walk that an earlier run left open. A new one: triage do:new and the words.'
      : null;
  };

  return {
    answer: async (line) => {
      if (isComment(line)) return { outcome: COMMENT, hint: null };
      const before = await leftOpen();
      const outcome = await runConsoleLine(hasWalk ? deps : withoutWalk, line, CONSOLE_ASKER, now(), onError);
      const hint = hintFor(line, outcome, before);
      hasWalk ||= walkIdOf(outcome) !== null;
      return { outcome, hint };
    },
  };
};
