/** What the tests of a club's questions of the night share: an evening in York, and all that an answer tells. */
import { isProblem } from '../../bot/ground/problem.js';
import type { Deps } from '../../bot/commands/core/command.js';
import type { Reply } from '../../bot/reply/reply.js';
import { answer, ask, realDeps } from './real-deps.js';

/** A Friday. */
export const EVENING = Date.parse('2026-11-27T19:10Z');

/** A member whose site is saved. */
export const at = async (site: string): Promise<Deps> => {
  const deps = await realDeps();
  await answer(deps, `site add home ${site}`, EVENING);
  return deps;
};

export const said = ({ title, summary, facts, notes }: Reply): string =>
  [title, summary, ...facts.map(({ label, value }) => `${label}: ${value}`), ...notes].join('\n');

export const wordsOf = async (deps: Deps, line: string, nowUtcMs = EVENING): Promise<string> => {
  const outcome = await ask(deps, line, nowUtcMs);
  return isProblem(outcome) ? `${outcome.problem}: ${outcome.message}` : said(outcome);
};
