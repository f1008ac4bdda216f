/** Loads the fault model, with a club's folder over it, or says what is wrong with the files. */
import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decodeNet, decodeWeights } from '../../reading/index.js';
import { checkReferences } from './check-references.js';
import { readCollecting } from './collecting.js';
import { readCompiled } from './compiled-entries.js';
import { checkExamples } from '../../reading/index.js';
import { KnowledgeError, type KnowledgeProblem } from './knowledge-problem.js';
import { makeModel, type Fitted, type TriageModel } from './model.js';
import { readEntries, type ReadResult } from './read-entries.js';

/** What a club's folder is held to beyond those that ship, which are when they are tested. */
export interface HeldTo {
  /** Ids of the cautions that there are. */
  readonly cautions: ReadonlySet<string>;
}

/**
 * What makes entries unfit to walk with. Whatever names an entry that could not be read would be called wrong as well, and so on.
 */
export const mistakesIn = (result: ReadResult, heldTo?: HeldTo): readonly KnowledgeProblem[] => {
  if (result.problems.length > 0) return result.problems;
  const misfits = checkReferences(result, heldTo?.cautions);
  if (misfits.length > 0 || heldTo === undefined || !result.changesReading) return misfits;
  return checkExamples(result.entries).map(({ kind, id, path, message }) => ({
    ...result.locate(kind, id, path),
    entry: id,
    message: `${path.join('.')}: ${message}`,
  }));
};

/** Made by scripts/reading/fit-examples.ts and the like, the net by scripts/reading/net. */
const fittedIn = (folder: string): Fitted => {
  const bytesOf = (name: string): Uint8Array | null => {
    const file = join(folder, 'reading', `${name}.bin`);
    return existsSync(file) ? readFileSync(file) : null;
  };
  return {
    weights: (name) => {
      const bytes = bytesOf(name);
      return bytes === null ? null : decodeWeights(bytes);
    },
    net: () => {
      const bytes = bytesOf('net');
      return bytes === null ? null : decodeNet(bytes);
    },
  };
};

/**
 * @param folder the shipped model ("knowledge/connection")
 * @param overlayFolder the club's own entries, in the same file layout; an entry with a shipped id changes the fields it gives
 * @param compiledFile the shipped model as the build left it (compiled-entries.ts); without it, or with a club's folder, the YAML is read
 * @param heldTo what a club's folder is held to besides
 * @throws KnowledgeError naming file, line and entry of each problem
 */
export const loadTriage = (
  folder: string,
  overlayFolder?: string,
  compiledFile?: string,
  heldTo?: HeldTo,
): TriageModel => {
  const compiled =
    overlayFolder === undefined && compiledFile !== undefined ? readCompiled(folder, compiledFile) : null;
  const fitted = fittedIn(folder);
  if (compiled !== null) return makeModel(compiled, readCollecting(folder), fitted);
  const result = readEntries(folder, overlayFolder);
  const problems = [...mistakesIn(result, overlayFolder === undefined ? undefined : heldTo)];
  if (problems.length === 0 && result.entries.faults.length === 0) {
    problems.push({
      file: folder,
      line: 1,
      entry: null,
      message: 'no faults found; expected paths.yaml, stages.yaml, faults/, checks/ and evidence.yaml here',
    });
  }
  if (problems.length > 0) throw new KnowledgeError(problems);
  return makeModel(result.entries, readCollecting(folder), fitted);
};
