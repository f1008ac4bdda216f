/** Holds the fault model's entries together: every id that an entry names exists, and every pattern compiles and fits its example. */
import { checkVocabulary, type Told } from '../../reading/index.js';
import type { KnowledgeProblem } from './knowledge-problem.js';
import type { EntryKind, ReadResult } from './read-entries.js';
import type { AnswerOdds, Only } from './schema.js';

/** All problems that would make the engine misread the model. Style and coverage are the reviewers' command's business. */
export const checkReferences = ({ entries, locate }: ReadResult): readonly KnowledgeProblem[] => {
  const problems: KnowledgeProblem[] = [];
  const paths = new Map(entries.paths.map((path) => [path.id, path]));
  const stages = new Set(entries.stages.map(({ id }) => id));
  const families = new Set(entries.families.map(({ id }) => id));
  const faults = new Set(entries.faults.map(({ id }) => id));
  const checks = new Map(entries.checks.map((check) => [check.id, new Set(check.answers.map(({ id }) => id))]));

  const complain = (kind: EntryKind, id: string, path: readonly (string | number)[], message: string): void => {
    problems.push({ ...locate(kind, id, path), entry: id, message: `${path.join('.')}: ${message}` });
  };
  const stageExists = (kind: EntryKind, id: string, path: readonly (string | number)[], stage: string): void => {
    if (!stages.has(stage)) complain(kind, id, path, `there is no stage "${stage}"`);
  };
  const onlyExists = (kind: EntryKind, id: string, only: Only | undefined): void => {
    for (const [i, path] of (only?.paths ?? []).entries())
      if (!paths.has(path)) complain(kind, id, ['only', 'paths', i], `there is no path "${path}"`);
  };
  const oddsFit = (
    kind: EntryKind,
    id: string,
    path: readonly (string | number)[],
    checkId: string,
    odds: AnswerOdds,
  ): void => {
    const answers = checks.get(checkId);
    if (answers === undefined) {
      complain(kind, id, path, `there is no check "${checkId}"`);
      return;
    }
    for (const answer of typeof odds === 'string' ? [odds] : Object.keys(odds)) {
      if (!answers.has(answer))
        complain(kind, id, path, `check "${checkId}" has no answer "${answer}"; it has ${[...answers].join(', ')}`);
    }
  };

  for (const path of entries.paths)
    for (const [i, stage] of path.stages.entries()) stageExists('paths', path.id, ['stages', i], stage);
  for (const fault of entries.faults) {
    stageExists('faults', fault.id, ['stage'], fault.stage);
    onlyExists('faults', fault.id, fault.only);
    if (checks.has(fault.id)) complain('faults', fault.id, ['id'], 'a check has the same id');
    for (const [i, { path }] of (fault.weightOn ?? []).entries()) {
      if (path !== undefined && !paths.has(path))
        complain('faults', fault.id, ['weightOn', i, 'path'], `there is no path "${path}"`);
    }
    for (const [checkId, odds] of Object.entries(fault.answers ?? {}))
      oddsFit('faults', fault.id, ['answers', checkId], checkId, odds);
    if (fault.verify.check !== undefined)
      oddsFit('faults', fault.id, ['verify', 'check'], fault.verify.check, fault.verify.answer ?? {});
    for (const [i, same] of (fault.sameAs ?? []).entries())
      if (!faults.has(same)) complain('faults', fault.id, ['sameAs', i], `there is no fault "${same}"`);
  }
  for (const check of entries.checks) {
    stageExists('checks', check.id, ['stage'], check.stage);
    onlyExists('checks', check.id, check.only);
    oddsFit('checks', check.id, ['good'], check.id, check.good);
    if (check.usual !== undefined) oddsFit('checks', check.id, ['usual'], check.id, check.usual);
    if (check.bad !== undefined) oddsFit('checks', check.id, ['bad'], check.id, check.bad);
    if (check.bad === check.good) complain('checks', check.id, ['bad'], 'the bad answer is the good one');
    if (new Set(check.answers.map(({ id }) => id)).size < check.answers.length)
      complain('checks', check.id, ['answers'], 'two answers have the same id');
    if (check.answers.some(({ id }) => id === 'unsure'))
      complain('checks', check.id, ['answers'], 'the answer "unsure" is added to every check; leave it out');
    for (const [stage, odds] of Object.entries(check.byStage ?? {})) {
      stageExists('checks', check.id, ['byStage', stage], stage);
      oddsFit('checks', check.id, ['byStage', stage], check.id, odds);
    }
  }
  const told = (kind: 'evidence' | 'sayings', entry: Told): void => {
    for (const [checkId, answer] of Object.entries(entry.answers ?? {}))
      oddsFit(kind, entry.id, ['answers', checkId], checkId, answer);
    for (const fault of Object.keys(entry.suggests ?? {}))
      if (!faults.has(fault)) complain(kind, entry.id, ['suggests', fault], `there is no fault "${fault}"`);
    if (entry.path !== undefined && !paths.has(entry.path) && !families.has(entry.path))
      complain(kind, entry.id, ['path'], `there is no path or family "${entry.path}"`);
    const { answers, suggests, system, path, client } = entry;
    const hides = 'hides' in entry ? entry.hides : undefined;
    if ([answers, suggests, system, path, client, hides].every((part) => part === undefined))
      complain(kind, entry.id, ['answers'], 'it neither answers a check nor suggests a fault, a system or a path');
  };
  for (const { id, paths: own } of entries.families)
    for (const [i, path] of own.entries())
      if (!paths.has(path)) complain('families', id, ['paths', i], `there is no path "${path}"`);
  for (const entry of entries.evidence) told('evidence', entry);
  for (const entry of entries.sayings) told('sayings', entry);
  for (const { kind, id, path, message } of checkVocabulary(entries)) complain(kind, id, path, message);
  return problems;
};
