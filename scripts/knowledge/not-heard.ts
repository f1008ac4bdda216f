/** Checks whose answers no member's words are known for: they are answered by number, or by the words of their labels alone. */
import type { Entries, ReadResult } from '../../bot/triage/model/read-entries.js';
import { LOOK } from './offered.js';

interface NotHeard {
  readonly id: string;
  /** The answers without a phrase. */
  readonly answers: readonly string[];
}

export const notHeard = ({ checks, wordedAnswers }: Entries): readonly NotHeard[] => {
  const said = new Map(wordedAnswers.map((entry) => [entry.id, entry.said]));
  return checks
    .map(({ id, answers }) => ({
      id,
      answers: answers.map((answer) => answer.id).filter((answer) => (said.get(id)?.[answer] ?? []).length === 0),
    }))
    .filter(({ answers }) => answers.length > 0);
};

/** For the reviewer, a check each: nothing breaks without the words, but the recipe asks for them. */
export const notHeardLines = ({ entries, locate }: ReadResult): readonly string[] =>
  notHeard(entries).map(({ id, answers }) => {
    const { file, line } = locate('checks', id, []);
    return `${file}:${line}: ${id}:\n  ${LOOK} nothing in reading/answers/ says how members put ${answers.join(', ')}`;
  });
