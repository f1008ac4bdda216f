/** Last of all readers: ordinary words that nothing understood get what can be asked, rather than that they are no command. */
import { problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import type { WordsReader } from '../core/command.js';
import { isLittle } from './sentence/words.js';
import { spellerFor } from './spelling/known-words.js';

const LEAST_WORDS = 3;

const notFollowed = (text: string): Problem =>
  problem(
    'unknown-command',
    `I did not follow "${tidy(text, 40)}". Ask me what is up tonight, where a target such as M 42 stands, or tell me what your mount will not do.`,
    [
      { label: "What's up tonight?", run: 'tonight' },
      { label: 'The mount does not work', run: 'triage' },
      { label: 'Help', run: 'help' },
    ],
  );

export const lostWords: WordsReader = {
  name: 'words not understood',
  read: (deps, { text }) => {
    const [first = '', ...others] = text.trim().toLowerCase().split(/\s+/u);
    const isOrdinary = isLittle(first) || spellerFor(deps).isKnown(first) || others.length + 1 >= LEAST_WORDS;
    const isCommand = deps.commands.some(({ name }) => name === first);
    return Promise.resolve(isOrdinary && !isCommand ? { outcome: notFollowed(text) } : null);
  },
};
