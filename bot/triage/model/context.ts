/** What a walk knows about the connection before any fault is looked for: path, system, client. */
import type { Client, Only, System } from './schema.js';

export interface WalkContext {
  /** A path id; null: not known, every path counts. */
  readonly path: string | null;
  /** Where the path is not known: the paths that the member's words leave open. */
  readonly paths?: readonly string[] | undefined;
  readonly system: System | null;
  readonly client: Client | null;
}

const admits = (allowed: readonly string[] | undefined, value: string | null): boolean =>
  allowed === undefined || value === null || allowed.includes(value);

/** Whether an entry belongs in this context; what is not known excludes nothing. */
export const appliesIn = (only: Only | undefined, context: WalkContext): boolean =>
  admits(only?.paths, context.path) &&
  (only?.paths === undefined || context.paths === undefined || only.paths.some((id) => context.paths?.includes(id))) &&
  admits(only?.systems, context.system) &&
  admits(only?.clients, context.client);

export const contextKey = ({ path, paths = [], system, client }: WalkContext): string =>
  `${path ?? ['?', ...paths].join('|')}/${system ?? '?'}/${client ?? '?'}`;
