/** The vocabulary as the reader uses it: entries with their patterns compiled. Read-only once made. */
import { compilePattern, type Pattern } from './compile-pattern.js';
import type { EvidenceEntry } from './schema.js';

export interface VocabularyEntries {
  readonly evidence: readonly EvidenceEntry[];
}

export interface Vocabulary {
  readonly evidence: readonly (EvidenceEntry & { readonly compiled: Pattern })[];
  /** The path ids of a family, or of a path: itself. */
  readonly family: (id: string) => readonly string[];
}

/** @throws where a pattern is not RE2 syntax; the knowledge checker finds those first. */
export const makeVocabulary = (entries: VocabularyEntries): Vocabulary => ({
  evidence: entries.evidence.map((entry) => ({ ...entry, compiled: compilePattern(entry.pattern) })),
  family: (id) => [id],
});
