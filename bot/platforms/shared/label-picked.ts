/** A line of a walk's reply picked by its label. */
import type { Choice } from '../../ground/problem.js';
import { labelSaid } from '../../ground/label-said.js';

const OF_WALK = /^triage walk:/u;
/** The walk itself reads the words of its answers, and consent is given by a pick alone. */
const READ_BY_WALK = /^triage walk:\S+ (?:answer:(?!read\.)|do:(?:accept|release))/u;
const LONGEST = 80;

/** "Dark" is a command as well: an answer of that one word comes first. */
const isAnswerItself = ({ label, run }: Choice, line: string): boolean =>
  / answer:/u.test(run) && !/\s/u.test(label) && label.toLowerCase() === line.trim().toLowerCase();

/** The one choice beside a walk's answers whose label a typed line is, or the answer that is typed word for word; null where it is none, or might be two. */
export const labelPicked = (line: string, choices: readonly Choice[]): string | null => {
  if (line.length > LONGEST || !choices.some(({ run }) => OF_WALK.test(run))) return null;
  const [only, second] = choices.filter(({ label }) => labelSaid(label, line));
  if (only === undefined || second !== undefined) return null;
  return READ_BY_WALK.test(only.run) && !isAnswerItself(only, line) ? null : only.run;
};
