/** The fault model as the engine uses it: entries, look-ups, compiled patterns. Read-only once made. */
import { compilePattern, type Pattern } from './compile-pattern.js';
import type { Entries } from './read-entries.js';
import type { CheckEntry, EvidenceEntry, FaultEntry, PathEntry, StageEntry } from './schema.js';

export interface TriageModel {
  readonly paths: readonly PathEntry[];
  readonly stages: readonly StageEntry[];
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckEntry[];
  readonly evidence: readonly (EvidenceEntry & { readonly compiled: Pattern })[];
  readonly path: (id: string) => PathEntry | undefined;
  readonly stage: (id: string) => StageEntry | undefined;
  readonly fault: (id: string) => FaultEntry | undefined;
  readonly check: (id: string) => CheckEntry | undefined;
}

const byId = <T extends { readonly id: string }>(entries: readonly T[]): ((id: string) => T | undefined) => {
  const map = new Map(entries.map((entry) => [entry.id, entry]));
  return (id) => map.get(id);
};

/** Entries must have passed check-references.ts; a pattern that is not RE2 throws. */
export const makeModel = (entries: Entries): TriageModel => ({
  ...entries,
  evidence: entries.evidence.map((entry) => ({ ...entry, compiled: compilePattern(entry.pattern) })),
  path: byId(entries.paths),
  stage: byId(entries.stages),
  fault: byId(entries.faults),
  check: byId(entries.checks),
});
