/** The door to reading: what a member wrote, pasted or photographed, as facts that each quote the words they came from. */
export type { ReadBy, ReadFact, Reading, Suggestion, Understood } from './reading.js';
export { readText } from './read-text.js';
export { TEXT_LIMIT } from './lines.js';
export { compilePattern, foldText, type Pattern } from './messages/compile-pattern.js';
export {
  CLIENTS,
  evidenceSchema,
  familySchema,
  sayingSchema,
  SYSTEMS,
  translationSchema,
  wordSchema,
  type Client,
  type EvidenceEntry,
  type FamilyEntry,
  type SayingEntry,
  type System,
  type Told,
  type TranslationEntry,
  type VocabularyEntries,
  type WordEntry,
} from './schema.js';
export { makeVocabulary, type Vocabulary } from './vocabulary.js';
export { checkExamples, checkVocabulary } from './check-vocabulary.js';
