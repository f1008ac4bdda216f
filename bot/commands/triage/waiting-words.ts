/** Words that are no command, where a walk of the asker waits in that place: they are the member's own words about the mount. */
import { plainQuestion } from '../asking/plain-question.js';
import type { Deps } from '../core/deps.js';
import { LINE_LIMIT } from '../core/grammar.js';
import type { WordsReader } from '../core/command.js';
import { waitingWalk } from './find-walk.js';
import { triage } from './triage.js';

/** A whole question of another kind ("when is the next lunar eclipse", "hello"); a bare target may be one of the walk's answers. */
export const isAnotherQuestion = (text: string, deps: Deps): boolean => {
  if (text.length > LINE_LIMIT) return false;
  const read = plainQuestion(text, deps);
  if (read === null) return false;
  if (!('line' in read)) return true;
  const words = (line: string): string => line.toLowerCase().replace(/[^a-z0-9]+/gu, '');
  return !/^triage\b/u.test(read.line) && words(read.line) !== words(`up ${text}`);
};

export const waitingWords: WordsReader = {
  name: 'triage',
  read: async (deps, { text, ...request }) => {
    const walk = await waitingWalk(deps, request.asker, request.nowUtcMs);
    if (walk === null || isAnotherQuestion(text, deps)) return null;
    const options = { walk: walk.id, text, for: undefined, answer: undefined, do: undefined, file: undefined };
    return { outcome: await triage.run(deps, { ...request, options }) };
  },
};
