/** What commands are given to work with. It is declared beside Command, since each names the other. */
export type { Deps } from './command.js';
