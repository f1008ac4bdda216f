/** A complaint about the fault model's files, naming file, entry and line, and the error a loader throws with them. */

export interface KnowledgeProblem {
  /** As given to the loader, with the folder. */
  readonly file: string;
  /** 1-based; 1 where the whole file is meant, null where it is a folder. */
  readonly line: number | null;
  /** The entry's id, or null where it has none. */
  readonly entry: string | null;
  readonly message: string;
}

/** `knowledge/connection/faults/cable.yaml:12: null-modem: verify.check: there is no check "x"`. */
export const problemLine = ({ file, line, entry, message }: KnowledgeProblem): string =>
  `${file}${line === null ? '' : `:${line}`}: ${entry === null ? '' : `${entry}: `}${message}`;

/** The fault model cannot be used; `message` lists the first few problems, a line each. */
export class KnowledgeError extends Error {
  constructor(readonly problems: readonly KnowledgeProblem[]) {
    const shown = problems.slice(0, 10).map(problemLine).join('\n');
    super(problems.length > 10 ? `${shown}\n… and ${problems.length - 10} more` : shown);
  }
}
