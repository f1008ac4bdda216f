/** Loads the fault model, with a club's folder over it, or says what is wrong with the files. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodeWeights, type Weights } from '../../reading/index.js';
import { checkReferences } from './check-references.js';
import { readCollecting } from './collecting.js';
import { readCompiled } from './compiled-entries.js';
import { KnowledgeError } from './knowledge-problem.js';
import { makeModel, type TriageModel } from './model.js';
import { readEntries } from './read-entries.js';

/** Made by scripts/reading/fit-examples.ts. */
const WEIGHTS = join('reading', 'examples.bin');

const weightsIn = (folder: string) => (): Weights | null => {
  const file = join(folder, WEIGHTS);
  return existsSync(file) ? decodeWeights(readFileSync(file)) : null;
};

/**
 * @param folder the shipped model ("knowledge/connection")
 * @param overlayFolder the club's own entries, in the same file layout; an entry with a shipped id changes the fields it gives
 * @param compiledFile the shipped model as the build left it (compiled-entries.ts); without it, or with a club's folder, the YAML is read
 * @throws KnowledgeError naming file, line and entry of each problem
 */
export const loadTriage = (folder: string, overlayFolder?: string, compiledFile?: string): TriageModel => {
  const compiled =
    overlayFolder === undefined && compiledFile !== undefined ? readCompiled(folder, compiledFile) : null;
  const weights = weightsIn(folder);
  if (compiled !== null) return makeModel(compiled, readCollecting(folder), weights);
  const result = readEntries(folder, overlayFolder);
  const problems = [...result.problems, ...(result.problems.length === 0 ? checkReferences(result) : [])];
  if (problems.length === 0 && result.entries.faults.length === 0) {
    problems.push({
      file: folder,
      line: 1,
      entry: null,
      message: 'no faults found; expected paths.yaml, stages.yaml, faults/, checks/ and evidence.yaml here',
    });
  }
  if (problems.length > 0) throw new KnowledgeError(problems);
  return makeModel(result.entries, readCollecting(folder), weights);
};
