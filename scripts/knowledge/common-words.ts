/** Whether a club's words are heard in what members say of other things: the examples of the sayings that ship, read with them. */
import { readText } from '../../bot/reading/index.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import type { ReadResult } from '../../bot/triage/model/read-entries.js';

export interface CommonWords {
  /** The saying of the club. */
  readonly id: string;
  /** What is said of other things and held it. */
  readonly heardIn: readonly string[];
}

/** One may be chance, or mean the same thing. */
const LEAST = 2;

export const commonWords = (model: TriageModel, { entries, from }: ReadResult): readonly CommonWords[] => {
  const own = new Map<string, string[]>(
    entries.sayings.flatMap(({ id }) => (from('sayings', id) === 'club' ? [[id, []] as const] : [])),
  );
  if (own.size === 0) return [];
  for (const { id, examples } of entries.sayings) {
    if (own.has(id)) continue;
    for (const example of examples) for (const met of readText(model.reading, example).met) own.get(met)?.push(example);
  }
  return [...own].flatMap(([id, heardIn]) => (heardIn.length < LEAST ? [] : [{ id, heardIn }]));
};
