/** Asks the sentence reader about words that are no command, with the names of the sites that the asker may mean. */
import { onceOf } from '../../ground/once.js';
import type { Deps, SaidWords, WordsReader } from '../core/command.js';
import { LINE_LIMIT } from '../core/grammar.js';
import { plainQuestion } from './plain-question.js';
import { savedSites, usualSpot } from './resolve-site.js';
import type { Known } from './sentence/asked.js';
import { dayAt } from './sentence/day-at.js';

const lookedUp = async (deps: Deps, { asker, privacy, nowUtcMs }: SaidWords): Promise<Known> => {
  const saved = await savedSites({ store: privacy.unmarked }, asker);
  const spot = usualSpot(saved, deps, asker);
  return {
    ...deps,
    allCommands: deps.commands,
    siteNames: [...saved.member, ...saved.club].map(({ name }) => name),
    nowUtcMs,
    day: spot === null ? null : dayAt(spot, nowUtcMs),
    usual: spot,
  };
};

/** What is known of the asker of these words, looked up once for all the readers. */
const knownOf = onceOf((_shared: object): { known?: Promise<Known> } => ({}));

/** What the sentence reader has to know of the one who asks; a member's own sites mark nothing. */
export const knownFor = (deps: Deps, said: SaidWords): Promise<Known> =>
  (knownOf(said.shared).known ??= lookedUp(deps, said));

export const plainReader: WordsReader = {
  name: 'a plain question',
  mendsCommands: true,
  read: async (deps, said) =>
    said.text.length > LINE_LIMIT ? null : plainQuestion(said.text, await knownFor(deps, said)),
};
