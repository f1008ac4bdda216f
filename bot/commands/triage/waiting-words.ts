/** Words that are no command, where a walk of the asker waits in that place: they are the member's own words about the mount. */
import type { WordsReader } from '../core/words-reader.js';
import { waitingWalk } from './find-walk.js';
import { triage } from './triage.js';

export const waitingWords: WordsReader = {
  name: 'triage',
  read: async (deps, { text, ...request }) => {
    const walk = await waitingWalk(deps, request.asker, request.nowUtcMs);
    if (walk === null) return null;
    const options = { walk: walk.id, text, for: undefined, answer: undefined, do: undefined, file: undefined };
    return { outcome: await triage.run(deps, { ...request, options }) };
  },
};
