/** What words ask by themselves, whoever says them: with no sites, and at no place. */
import { onceOf } from '../../ground/once.js';
import type { UtcMs } from '../../sky/types.js';
import type { Deps } from '../core/command.js';
import type { PlainReading } from './not-known-here.js';
import { plainQuestion } from './plain-question.js';
import type { Known } from './sentence/asked.js';

type Needed = Pick<Deps, 'catalogue' | 'commands' | 'places'>;

/** The newest one, so that words that are asked about twice are read once. */
const lastOf = onceOf((_deps: Needed): { known?: Known } => ({}));

export const plainAlone = (text: string, deps: Needed, nowUtcMs: UtcMs): PlainReading => {
  const last = lastOf(deps);
  if (last.known?.nowUtcMs !== nowUtcMs) last.known = { ...deps, siteNames: [], nowUtcMs };
  return plainQuestion(text, last.known);
};
