/** The door to reading: what a member wrote, pasted or photographed, as facts that each quote the words they came from. */
export type { ReadBy, ReadFact, Reading, Suggestion, Understood } from './reading.js';
export { QUOTE_LIMIT } from './reading.js';
export { readText, TEXT_LIMIT } from './read-text.js';
export { compilePattern, foldText, type Pattern } from './compile-pattern.js';
export { CLIENTS, evidenceSchema, SYSTEMS, type Client, type EvidenceEntry, type System } from './schema.js';
export { makeVocabulary, type Vocabulary } from './vocabulary.js';
