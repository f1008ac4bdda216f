/** Words that are no command, where a walk of the asker waits in that place: they are the member's own words about the mount. */
import type { Asker } from '../core/command.js';
import type { Deps } from '../core/deps.js';
import { waitingWalk } from './find-walk.js';
import { triage } from './triage.js';

export interface WaitingWords {
  readonly command: typeof triage;
  readonly raw: ReadonlyMap<string, unknown>;
}

/** Null where no walk waits; else the line as `triage` takes it. */
export const waitingWords = async (deps: Deps, line: string, asker: Asker): Promise<WaitingWords | null> => {
  if (line.trim() === '') return null;
  const walk = await waitingWalk(deps, asker);
  return walk === null
    ? null
    : {
        command: triage,
        raw: new Map<string, unknown>([
          ['walk', walk.id],
          ['text', line],
        ]),
      };
};
