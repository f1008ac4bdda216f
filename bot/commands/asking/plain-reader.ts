/** Asks the sentence reader about words that are no command, with the names of the sites that the asker may mean. */
import type { WordsReader } from '../core/command.js';
import { LINE_LIMIT } from '../core/grammar.js';
import { plainQuestion } from './plain-question.js';
import { savedSites, usualSpot } from './resolve-site.js';
import { dayAt } from './sentence/day-at.js';

export const plainReader: WordsReader = {
  name: 'a plain question',
  mendsCommands: true,
  read: async (deps, { text, asker, privacy, nowUtcMs }) => {
    if (text.length > LINE_LIMIT) return null;
    const saved = await savedSites({ store: privacy.unmarked }, asker);
    const siteNames = [...saved.member, ...saved.club].map(({ name }) => name);
    const spot = usualSpot(saved, deps, asker);
    return plainQuestion(text, {
      ...deps,
      siteNames,
      nowUtcMs,
      day: spot === null ? null : dayAt(spot, nowUtcMs),
      usual: spot,
    });
  },
};
