/** Lines of outcomes/*.jsonl: a member's words on a remedy, and what came of it by them. */
import { NOTHING } from '../../bot/reading/examples/weights.js';
import { LEARNED_OUTCOMES } from '../../bot/reading/outcome/likely-outcome.js';

export interface OutcomeLine {
  /** The remedy that stood before the member, in a few words. */
  readonly remedy: string;
  /** NOTHING where it tells none. */
  readonly outcome: string;
  readonly text: string;
}

const KNOWN: ReadonlySet<string> = new Set([...LEARNED_OUTCOMES, 'nothing']);

/** @throws where a line names an outcome that there is not */
export const readOutcomes = (lines: string): readonly OutcomeLine[] =>
  lines
    .split('\n')
    .filter((line) => line.trim() !== '')
    .map((line) => JSON.parse(line) as OutcomeLine)
    .map(({ remedy, outcome, text }) => {
      if (!KNOWN.has(outcome)) throw new Error(`"${outcome}" is no outcome: ${text}`);
      return { remedy, outcome: outcome === 'nothing' ? NOTHING : outcome, text };
    });
