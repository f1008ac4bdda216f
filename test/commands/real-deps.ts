/** The real catalogue, gazetteer and fault model with a store in memory: what command tests run against. */
import { isProblem, type Problem } from '../../bot/ground/problem.js';
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { allCommands, allReaders } from '../../bot/commands/all-commands.js';
import { createPictureReader } from '../../bot/pictures/picture-reader.js';
import { type Outcome, type Reply } from '../../bot/reply/reply.js';
import { openStore } from '../../bot/store/open-store.js';
import { shippedCatalogue, shippedModel, shippedPlaces } from '../shipped.js';

export const realDeps = async (over: Partial<Deps> = {}): Promise<Deps> => ({
  catalogue: shippedCatalogue(),
  places: shippedPlaces,
  store: await openStore({ memory: true }),
  triage: shippedModel,
  pictures: createPictureReader(),
  clubSiteText: null,
  sunLimits: { dangerDeg: 15, cautionDeg: 45 },
  commands: allCommands,
  readers: allReaders,
  ...over,
});

export const ODALYS: Asker = {
  platform: 'console',
  memberId: 'console:odalys',
  displayName: 'Odalys',
  clubId: 'console:fenwold',
  channelId: 'console',
  isManager: false,
  isPrivate: true,
};

/** A new member with every call, to whom nothing was said before. The names are invented, and no two files share one. */
export const strangers = (name: string): (() => Asker) => {
  let met = 0;
  return () => {
    met += 1;
    return { ...ODALYS, memberId: `console:${name}-${met}`, channelId: `${name}-${met}` };
  };
};

/** So far apart lines of a talk are said. */
const BETWEEN_LINES_MS = 20_000;

const failLoudly = (error: unknown): never => {
  throw error instanceof Error ? error : new Error(String(error));
};

export const ask = (deps: Deps, line: string, nowUtcMs: number, asker: Asker = ODALYS): Promise<Outcome> =>
  runLine(deps, line, { asker, nowUtcMs, onError: failLoudly });

export const answer = async (deps: Deps, line: string, nowUtcMs: number, asker: Asker = ODALYS): Promise<Reply> => {
  const outcome = await ask(deps, line, nowUtcMs, asker);
  if (isProblem(outcome)) throw new Error(`${line}: ${outcome.problem}: ${outcome.message}`);
  return outcome;
};

export const refusal = async (deps: Deps, line: string, nowUtcMs: number, asker: Asker = ODALYS): Promise<Problem> => {
  const outcome = await ask(deps, line, nowUtcMs, asker);
  if (!isProblem(outcome)) throw new Error(`${line} was answered: ${outcome.summary}`);
  return outcome;
};

/** What each of lines is answered that one member says one after the other. */
export const talk = async (
  deps: Deps,
  lines: readonly string[],
  startUtcMs: number,
  asker: Asker,
): Promise<readonly Outcome[]> => {
  const outcomes: Outcome[] = [];
  for (const [i, line] of lines.entries())
    outcomes.push(await ask(deps, line, startUtcMs + i * BETWEEN_LINES_MS, asker));
  return outcomes;
};
