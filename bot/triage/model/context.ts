/** What a walk knows about the connection before any fault is looked for: path, system, client. */
import { NO_CLIENT, type Client, type Only, type System } from './schema.js';

export interface WalkContext {
  /** A path id; null: not known, every path counts. */
  readonly path: string | null;
  /** Where the path is not known: the paths that the member's words leave open. */
  readonly paths?: readonly string[] | undefined;
  readonly system: System | null;
  readonly client: Client | null;
  /** What the member has not got, in order, as the answers of the check `not-here` call it. */
  readonly lacks?: readonly string[] | undefined;
}

const admits = (allowed: readonly string[] | undefined, value: string | null): boolean =>
  allowed === undefined || value === null || allowed.includes(value);

/** Whether an entry belongs in this context; what is not known excludes nothing. */
export const appliesIn = (only: Only | undefined, context: WalkContext): boolean =>
  admits(only?.paths, context.path) &&
  (only?.paths === undefined || context.paths === undefined || only.paths.some((id) => context.paths?.includes(id))) &&
  admits(only?.systems, context.system) &&
  admits(only?.clients, context.client);

/** What a phone has not: ports and drivers of a system. */
const STAGES_OF_COMPUTERS: ReadonlySet<string> = new Set(['system-port', 'driver']);

/** What one who uses the hand controller alone has not: anything between it and a program. */
const STAGES_OF_THE_LINK: ReadonlySet<string> = new Set([
  'cable',
  'adapter',
  'radio',
  'network',
  'system-port',
  'port-settings',
  'driver',
]);

interface Placed {
  readonly stage: string;
  readonly only?: Only | undefined;
  readonly notOnPhone?: boolean | undefined;
  readonly needs?: readonly string[] | undefined;
}

/** Whether all is there that an entry needs; what it does not say, its stage says. */
export const isAllThere = (
  needs: readonly string[] | undefined,
  { lacks = [] }: Pick<WalkContext, 'lacks'>,
  stageNeeds: readonly string[] = [],
): boolean => !(needs ?? stageNeeds).some((part) => lacks.includes(part));

const saysToPhone = (lines: unknown): boolean =>
  typeof lines !== 'object' || lines === null || Array.isArray(lines) || 'all' in lines || 'phone' in lines;

/**
 * Whether a fault or a check can be at all: what is for phones alone waits until one is told of, and a phone is spared
 * what only computers have, or what has words for computers alone.
 * @param lines its directions, which may differ by system
 */
export const canBeIn = ({ stage, only, notOnPhone }: Placed, lines: unknown, context: WalkContext): boolean => {
  if (!appliesIn(only, context)) return false;
  if (context.client === NO_CLIENT && STAGES_OF_THE_LINK.has(stage)) return false;
  if (context.system !== 'phone') return only?.systems?.some((system) => system !== 'phone') !== false;
  return notOnPhone !== true && !STAGES_OF_COMPUTERS.has(stage) && saysToPhone(lines);
};

export const contextKey = ({ path, paths = [], system, client, lacks = [] }: WalkContext): string =>
  `${path ?? ['?', ...paths].join('|')}/${system ?? '?'}/${client ?? '?'}/${lacks.join('|')}`;
