/** A command whose name has a slip of the thumb in it: "tonigt norwich", "hlep". */
import type { WordsReader } from '../core/command.js';
import { LINE_LIMIT } from '../core/grammar.js';
import { beginsWithCity } from './sentence/city-words.js';
import { commandMeant } from './spelling/known-words.js';

const FIRST = /^\s*\/?(\S+)/u;

export const slippedCommand: WordsReader = {
  name: 'a command with a slip',
  read: (deps, { text }) => {
    const first = FIRST.exec(text)?.[1] ?? '';
    const meant = text.length > LINE_LIMIT || beginsWithCity(text, deps) ? null : commandMeant(first, deps);
    const line = text.replace(FIRST, meant ?? first);
    return Promise.resolve(meant === null || meant === first ? null : { line, isTyped: true });
  },
};
