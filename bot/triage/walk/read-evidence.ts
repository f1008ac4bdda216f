/** Reads pasted text or a symptom in words: which patterns of the model it matches. */
import { agreedAnswers } from '../engine/belief.js';
import { foldText } from '../model/compile-pattern.js';
import type { TriageModel } from '../model/model.js';
import type { EvidenceEntry, System } from '../model/schema.js';

/** Longer texts are read up to here; the newest lines of a log stand last, so the end is kept. */
export const TEXT_LIMIT = 8000;

export interface ReadText {
  readonly matched: readonly EvidenceEntry[];
  /** Check id → answer id, where the patterns agree. */
  readonly answers: ReadonlyMap<string, string>;
  /** The one system the text can come from, or null. */
  readonly system: System | null;
}

export const readEvidence = (model: TriageModel, text: string): ReadText => {
  const folded = foldText(text.slice(-TEXT_LIMIT));
  const matched = model.evidence.filter(({ compiled }) => compiled.matches(folded));
  const systems = new Set(matched.flatMap(({ system }) => (system === undefined ? [] : [system])));
  return { matched, answers: agreedAnswers(matched), system: systems.size === 1 ? ([...systems][0] ?? null) : null };
};
