/** How much fits beside the rest on the sheet for a helper, which is to be one screen of a phone. */
import type { Fact } from '../../reply/reply.js';

/** A phone's screen of 44 columns, its title and first words taken off, and the column that the labels stand in. */
const LINES = 21;
const COLUMNS = 26;

const linesOf = ({ value }: Fact): number =>
  value.split('\n').reduce((lines, line) => lines + Math.max(1, Math.ceil(line.length / COLUMNS)), 0);

/** @returns characters; none or fewer where the rest fills the screen by itself */
export const roomBeside = (facts: readonly Fact[]): number =>
  (LINES - facts.reduce((sum, fact) => sum + linesOf(fact), 0)) * (COLUMNS - 2);
