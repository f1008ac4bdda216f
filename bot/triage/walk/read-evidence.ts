/** Reads pasted text or a symptom in words: which patterns of the model it matches. */
import { agreedAnswers } from '../engine/belief.js';
import { foldText, TEXT_LIMIT, type EvidenceEntry } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import type { System } from '../model/schema.js';

export { TEXT_LIMIT };

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
