/** How text that is no command is read: by readers in order, each of which answers, names a line to run, or passes it on. */
export type { LineRead, WordsReader } from './command.js';
