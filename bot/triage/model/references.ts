/** What the fault model's entries may name, and complaints of a name that is not there. */
import type { EntryKind } from './read-entries.js';
import type { AnswerOdds, Only } from './schema.js';

export type FieldPath = readonly (string | number)[];

/** What the entries may name, and where a complaint goes. */
export interface References {
  readonly paths: ReadonlySet<string>;
  readonly families: ReadonlySet<string>;
  readonly links: ReadonlySet<string>;
  readonly stages: ReadonlySet<string>;
  /** Those that a club's layer took out count: an entry that still names one is not wrong for it. */
  readonly faults: ReadonlySet<string>;
  readonly checks: ReadonlyMap<string, ReadonlySet<string>>;
  readonly complain: (kind: EntryKind, id: string, path: FieldPath, message: string) => void;
}

export const stageExists = (known: References, kind: EntryKind, id: string, path: FieldPath, stage: string): void => {
  if (!known.stages.has(stage)) known.complain(kind, id, path, `there is no stage "${stage}"`);
};

export const linkExists = (known: References, kind: EntryKind, id: string, path: FieldPath, link: string): void => {
  if (!known.links.has(link)) known.complain(kind, id, path, `there is no link "${link}"`);
};

export const onlyExists = (known: References, kind: EntryKind, id: string, only: Only | undefined): void => {
  for (const [i, path] of (only?.paths ?? []).entries())
    if (!known.paths.has(path)) known.complain(kind, id, ['only', 'paths', i], `there is no path "${path}"`);
};

export const oddsFit = (
  known: References,
  [kind, id]: readonly [EntryKind, string],
  path: FieldPath,
  checkId: string,
  odds: AnswerOdds,
): void => {
  const answers = known.checks.get(checkId);
  if (answers === undefined) {
    known.complain(kind, id, path, `there is no check "${checkId}"`);
    return;
  }
  for (const answer of typeof odds === 'string' ? [odds] : Object.keys(odds)) {
    if (!answers.has(answer))
      known.complain(kind, id, path, `check "${checkId}" has no answer "${answer}"; it has ${[...answers].join(', ')}`);
  }
};
