/** Holds the fault model's entries together: every id that an entry names exists, and every pattern compiles and fits its example. */
import {
  checkVocabulary,
  type EvidenceEntry,
  type SayingEntry,
  type Told,
  type WordedAnswersEntry,
} from '../../reading/index.js';
import { checkCheckReferences } from './check-check-references.js';
import type { FieldPath } from './entry-words.js';
import { guardsGear } from './guards-gear.js';
import type { KnowledgeProblem } from './knowledge-problem.js';
import type { ReadResult } from './read-entries.js';
import {
  cautionsExist,
  faultExists,
  linkExists,
  needsExist,
  notThere,
  oddsFit,
  onlyExists,
  pathExists,
  stageExists,
  type References,
} from './references.js';
import type { FaultEntry } from './schema.js';

const checkRemedy = (known: References, { id, remedy }: FaultEntry): void => {
  const { already, otherwise, confirm, cautions, followedBy } = remedy;
  cautionsExist(known, ['faults', id], ['remedy', 'cautions'], cautions);
  if (confirm !== undefined) oddsFit(known, ['faults', id], ['remedy', 'confirm'], confirm, {});
  if (followedBy !== undefined) faultExists(known, 'faults', id, ['remedy', 'followedBy'], followedBy);
  if (already === undefined) return;
  for (const answer of already.answers) oddsFit(known, ['faults', id], ['remedy', 'already'], already.check, answer);
  if (already.otherwise && otherwise === undefined)
    known.complain('faults', id, ['remedy', 'already', 'otherwise'], 'the remedy has no other way');
};

const checkFault = (known: References, fault: FaultEntry): void => {
  const complain = (path: FieldPath, message: string): void => known.complain('faults', fault.id, path, message);
  stageExists(known, 'faults', fault.id, ['stage'], fault.stage);
  if (fault.link !== undefined) linkExists(known, 'faults', fault.id, ['link'], fault.link);
  onlyExists(known, 'faults', fault.id, fault.only);
  needsExist(known, 'faults', fault.id, fault.needs);
  if (known.checks.has(fault.id)) complain(['id'], 'a check has the same id');
  for (const [i, { path }] of (fault.weightOn ?? []).entries())
    if (path !== undefined) pathExists(known, 'faults', fault.id, ['weightOn', i, 'path'], path);
  for (const [checkId, odds] of Object.entries(fault.answers ?? {}))
    oddsFit(known, ['faults', fault.id], ['answers', checkId], checkId, odds);
  if (fault.verify.check !== undefined)
    oddsFit(known, ['faults', fault.id], ['verify', 'check'], fault.verify.check, fault.verify.answer ?? {});
  checkRemedy(known, fault);
  for (const [i, same] of (fault.sameAs ?? []).entries()) faultExists(known, 'faults', fault.id, ['sameAs', i], same);
};

const quietedExist = (known: References, kind: 'evidence' | 'sayings', entry: Partial<SayingEntry>): void => {
  for (const quieted of entry.quiets ?? []) {
    const [check = '', answer] = quieted.split('.');
    oddsFit(known, [kind, entry.id ?? ''], ['quiets'], check, answer ?? {});
  }
};

const checkTold = (
  known: References,
  kind: 'evidence' | 'sayings',
  entry: Told & Partial<SayingEntry & EvidenceEntry>,
): void => {
  const complain = (path: FieldPath, message: string): void => known.complain(kind, entry.id, path, message);
  for (const [checkId, answer] of Object.entries(entry.answers ?? {}))
    oddsFit(known, [kind, entry.id], ['answers', checkId], checkId, answer);
  for (const [checkId, others] of Object.entries(entry.or ?? {}))
    for (const answer of others) oddsFit(known, [kind, entry.id], ['or', checkId], checkId, answer);
  for (const fault of Object.keys(entry.suggests ?? {})) faultExists(known, kind, entry.id, ['suggests', fault], fault);
  if (entry.path !== undefined && !known.paths.has(entry.path) && !known.families.has(entry.path))
    complain(['path'], notThere('path or family', entry.path, new Set([...known.paths, ...known.families])));
  if (entry.names !== undefined) oddsFit(known, [kind, entry.id], ['names'], entry.names, {});
  quietedExist(known, kind, entry);
  const { answers, suggests, system, path, client, hides, quiets, sign, aside, names } = entry;
  if ([answers, suggests, system, path, client, hides, quiets, sign, aside, names].every((part) => part === undefined))
    complain(['answers'], 'it neither answers a check nor suggests a fault, a system or a path');
};

const checkPath = (known: References, path: ReadResult['entries']['paths'][number]): void => {
  const { id, stages, links = [] } = path;
  needsExist(known, 'paths', id, path.needs);
  for (const [i, stage] of stages.entries()) stageExists(known, 'paths', id, ['stages', i], stage);
  for (const [i, link] of links.entries()) linkExists(known, 'paths', id, ['links', i], link);
};

/** The opening question about the way to the mount is answered by the paths. */
const WAY = 'path';

const checkWorded = (known: References, { id, said }: WordedAnswersEntry): void => {
  if (id === WAY) {
    for (const path of Object.keys(said)) pathExists(known, 'wordedAnswers', id, ['said', path], path);
    return;
  }
  for (const answer of Object.keys(said)) oddsFit(known, ['wordedAnswers', id], ['said', answer], id, answer);
};

const checkStages = (known: References, { stages, links }: ReadResult['entries']): void => {
  for (const { id, link, needs } of stages) {
    needsExist(known, 'stages', id, needs);
    if (link !== undefined) linkExists(known, 'stages', id, ['link'], link);
  }
  for (const { id, needs } of links) needsExist(known, 'links', id, needs);
};

/**
 * All problems that would make the engine misread the model. Style and coverage are the reviewers' command's business.
 * @param cautions the ids that remedies and questions may name; without them those are not looked at
 */
export const checkReferences = (
  { entries, locate, removed, from }: ReadResult,
  cautions: ReadonlySet<string> | null = null,
): readonly KnowledgeProblem[] => {
  const problems: KnowledgeProblem[] = [];
  const known: References = {
    paths: new Set(entries.paths.map(({ id }) => id)),
    families: new Set(entries.families.map(({ id }) => id)),
    links: new Set(entries.links.map(({ id }) => id)),
    stages: new Set(entries.stages.map(({ id }) => id)),
    faults: new Set([...entries.faults.map(({ id }) => id), ...removed]),
    checks: new Map(entries.checks.map((check) => [check.id, new Set(check.answers.map(({ id }) => id))])),
    guards: new Set(entries.checks.flatMap((check) => (guardsGear(check) ? [check.id] : []))),
    cautions,
    complain: (kind, id, path, message) => {
      problems.push({ ...locate(kind, id, path), entry: id, message: `${path.join('.')}: ${message}` });
    },
  };
  for (const path of entries.paths) checkPath(known, path);
  checkStages(known, entries);
  for (const fault of entries.faults) checkFault(known, fault);
  for (const check of entries.checks) checkCheckReferences(known, check);
  for (const { id, paths } of entries.families)
    for (const [i, path] of paths.entries()) pathExists(known, 'families', id, ['paths', i], path);
  for (const entry of entries.wordedAnswers) if (!removed.has(entry.id)) checkWorded(known, entry);
  for (const { id } of entries.deeds) faultExists(known, 'deeds', id, ['id'], id);
  for (const entry of entries.evidence) checkTold(known, 'evidence', entry);
  for (const entry of entries.sayings) checkTold(known, 'sayings', entry);
  for (const { kind, id, path, message } of checkVocabulary(entries, (word) => from('words', word) === 'club'))
    known.complain(kind, id, path, message);
  return problems;
};
