/** Text in, facts out. Pure; the time it takes grows with the text, and the text is cut to TEXT_LIMIT. */
import { foldText } from './compile-pattern.js';
import type { ReadBy, ReadFact, Reading, Suggestion, Understood } from './reading.js';
import { QUOTE_LIMIT } from './reading.js';
import type { Vocabulary } from './vocabulary.js';

/** Longer texts are read up to here; the newest lines of a log stand last, so the end is kept. */
export const TEXT_LIMIT = 8000;

const LOOKS_PRINTED = /[[\]{}<>=|\\/]|\b\d+[:.]\d+|0x|error -|::|\(\d/u;

/** Answers on which the entries agree; where two differ, neither counts. */
const agreed = <T extends { readonly answers?: Readonly<Record<string, string>> | undefined }>(
  entries: readonly T[],
): ReadonlyMap<string, { readonly answer: string; readonly entry: T }> => {
  const found = new Map<string, { answer: string; entry: T }>();
  const torn = new Set<string>();
  for (const entry of entries) {
    for (const [check, answer] of Object.entries(entry.answers ?? {})) {
      if ((found.get(check)?.answer ?? answer) !== answer) torn.add(check);
      found.set(check, { answer, entry });
    }
  }
  for (const check of torn) found.delete(check);
  return found;
};

/**
 * @param by how the text came, where the caller knows it; else it is judged from the text
 */
export const readText = (vocabulary: Vocabulary, text: string, by?: ReadBy): Reading => {
  const folded = foldText(text.slice(-TEXT_LIMIT));
  const own: ReadBy = by ?? (LOOKS_PRINTED.test(folded) ? 'log' : 'words');
  const matched = vocabulary.evidence.filter(({ compiled }) => compiled.matches(folded));
  const systems = new Set(matched.flatMap(({ system }) => (system === undefined ? [] : [system])));
  const quote = folded.slice(0, QUOTE_LIMIT);
  const facts: ReadFact[] = [];
  const understood: Understood[] = [];
  const [system] = systems;
  if (systems.size === 1 && system !== undefined)
    facts.push({ what: 'system', answer: system, sureness: 0.95, quote, by: own });
  for (const [what, { answer, entry }] of agreed(matched)) {
    const fact: ReadFact = { what, answer, sureness: own === 'words' ? 0.8 : 0.95, quote, by: own };
    facts.push(fact);
    understood.push({ fact, label: entry.says.replace(/\.$/u, '') });
  }
  const weights = new Map<string, number>();
  for (const { suggests } of matched)
    for (const [faultId, weight] of Object.entries(suggests ?? {}))
      weights.set(faultId, (weights.get(faultId) ?? 1) * weight);
  const suggested: Suggestion[] = [...weights].map(([faultId, weight]) => ({ faultId, weight }));
  return {
    by: own,
    facts,
    suggested,
    understood,
    says: matched.map(({ says }) => says),
    met: matched.map(({ id }) => id),
  };
};
