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
