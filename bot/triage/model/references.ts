/** What the fault model's entries may name, and complaints of a name that is not there. */
import { nearestName } from '../../ground/edit-distance.js';
import type { FieldPath } from './entry-words.js';
import type { EntryKind } from './read-entries.js';
import type { AnswerOdds, Only } from './schema.js';

/** What the entries may name, and where a complaint goes. */
export interface References {
  readonly paths: ReadonlySet<string>;
  readonly families: ReadonlySet<string>;
  readonly links: ReadonlySet<string>;
  readonly stages: ReadonlySet<string>;
  /** Those that a club's layer took out count: an entry that still names one is not wrong for it. */
  readonly faults: ReadonlySet<string>;
  readonly checks: ReadonlyMap<string, ReadonlySet<string>>;
  /** Checks that keep gear from harm, and the second looks at what those left open. */
  readonly guards: ReadonlySet<string>;
  /** Null: not known here. */
  readonly cautions: ReadonlySet<string> | null;
  readonly complain: (kind: EntryKind, id: string, path: FieldPath, message: string) => void;
}

/** Lists longer than this are no help in a complaint. */
const SHORT_LIST = 20;

/** A name that is not there, and which is meant, or where they are few, which there are. */
export const notThere = (
  what: string,
  name: string,
  known: ReadonlyMap<string, unknown> | ReadonlySet<string>,
): string => {
  const near = nearestName(name, known.keys(), 3);
  if (near !== undefined) return `there is no ${what} "${name}"; did you mean "${near}"?`;
  const all = known.size > SHORT_LIST ? '' : `; there are ${[...known.keys()].join(', ')}`;
  return `there is no ${what} "${name}"${all}`;
};

export const stageExists = (known: References, kind: EntryKind, id: string, path: FieldPath, stage: string): void => {
  if (!known.stages.has(stage)) known.complain(kind, id, path, notThere('stage', stage, known.stages));
};

export const linkExists = (known: References, kind: EntryKind, id: string, path: FieldPath, link: string): void => {
  if (!known.links.has(link)) known.complain(kind, id, path, notThere('link', link, known.links));
};

export const pathExists = (known: References, kind: EntryKind, id: string, field: FieldPath, path: string): void => {
  if (!known.paths.has(path)) known.complain(kind, id, field, notThere('path', path, known.paths));
};

export const faultExists = (known: References, kind: EntryKind, id: string, path: FieldPath, fault: string): void => {
  if (!known.faults.has(fault)) known.complain(kind, id, path, notThere('fault', fault, known.faults));
};

/** A caution that is none would be met by the member who needs it. */
export const cautionsExist = (
  { cautions, complain }: References,
  [kind, id]: readonly [EntryKind, string],
  path: FieldPath,
  named: readonly string[] = [],
): void => {
  if (cautions === null) return;
  for (const [i, caution] of named.entries())
    if (!cautions.has(caution)) complain(kind, id, [...path, i], notThere('caution', caution, cautions));
};

export const onlyExists = (known: References, kind: EntryKind, id: string, only: Only | undefined): void => {
  for (const [i, path] of (only?.paths ?? []).entries()) pathExists(known, kind, id, ['only', 'paths', i], path);
};

/** The check whose answers name what may not be there. */
export const NOT_HERE = 'not-here';

export const needsExist = (
  { checks, complain }: References,
  kind: EntryKind,
  id: string,
  needs: readonly string[] = [],
  path: FieldPath = ['needs'],
): void => {
  const parts = checks.get(NOT_HERE) ?? new Set();
  for (const part of needs) if (!parts.has(part)) complain(kind, id, path, notThere('thing to need', part, parts));
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
    known.complain(kind, id, path, notThere('check', checkId, known.checks));
    return;
  }
  for (const answer of typeof odds === 'string' ? [odds] : Object.keys(odds)) {
    if (answers.has(answer)) continue;
    const near = nearestName(answer, answers);
    const instead = near === undefined ? `it has ${[...answers].join(', ')}` : `did you mean "${near}"?`;
    known.complain(kind, id, path, `check "${checkId}" has no answer "${answer}"; ${instead}`);
  }
};
