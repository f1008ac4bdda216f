/** How text that is no command is read: by readers in order, each of which answers, names a line to run, or passes it on. */
import type { Outcome } from '../../reply/reply.js';
import type { Request } from './command.js';
import type { Deps } from './deps.js';

/** What a member said, as it came: at most PASTE_LIMIT characters. */
export interface SaidWords extends Omit<Request<unknown>, 'options'> {
  readonly text: string;
}

/** The command line that was meant; it is run as if it had been typed. */
export interface LineRead {
  readonly line: string;
  /** Stands under the answer: how the words were taken. */
  readonly note?: string;
}

export type WordsRead = LineRead | { readonly outcome: Outcome };

export interface WordsReader {
  /** For the log. */
  readonly name: string;
  /** Null: not for this reader. What it rejects with goes to the log, and the next one is asked. */
  readonly read: (deps: Deps, said: SaidWords) => Promise<WordsRead | null>;
}
