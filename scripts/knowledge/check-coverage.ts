/** What reviewers hold the fault model to beyond its references: nothing unreachable, unverifiable, untold apart or left out. */
import { CAUSE_TITLES } from '../../bot/commands/astray/astray-words.js';
import { cautions } from '../../bot/cautions/cautions.js';
import { appliesIn } from '../../bot/triage/model/context.js';
import { unfilled } from '../../bot/triage/model/fill-serial.js';
import type { KnowledgeProblem } from '../../bot/triage/model/knowledge-problem.js';
import { makeModel } from '../../bot/triage/model/model.js';
import type { EntryKind, ReadResult } from '../../bot/triage/model/read-entries.js';
import { SYSTEMS, type Only } from '../../bot/triage/model/schema.js';
import { situationFor, type Situation } from '../../bot/triage/engine/situation.js';
import { contextsOf } from './contexts.js';
import { engine } from './policies.js';
import { playWalk, remembering } from './sample-walks.js';

const LEAST = { faults: 70, checks: 45, evidence: 40 } as const;
/** Two faults are told apart by a check whose answers differ this much between them (total variation distance). */
const TOLD_APART = 0.3;

export interface CoverageOptions {
  /** Minimum counts hold for the shipped model only. */
  readonly shipped: boolean;
}

export const checkCoverage = (
  { entries, locate }: ReadResult,
  { shipped }: CoverageOptions,
): readonly KnowledgeProblem[] => {
  const problems: KnowledgeProblem[] = [];
  const complain = (kind: EntryKind, id: string, path: readonly (string | number)[], message: string): void => {
    problems.push({ ...locate(kind, id, path), entry: id, message: `${path.join('.')}: ${message}` });
  };
  const model = makeModel(entries);
  const contexts = contextsOf(model);
  const situations = contexts.map((context) => situationFor(model, context));
  const places = new Map<string, Situation[]>();
  for (const situation of situations) {
    for (const { id } of [...situation.faults, ...situation.checks.map(({ entry }) => entry)])
      places.set(id, [...(places.get(id) ?? []), situation]);
  }

  if (shipped) {
    for (const kind of ['faults', 'checks', 'evidence'] as const) {
      if (entries[kind].length < LEAST[kind])
        problems.push({
          file: `knowledge/connection/${kind}`,
          line: 1,
          entry: null,
          message: `${entries[kind].length} ${kind}, at least ${LEAST[kind]} wanted`,
        });
    }
  }
  for (const path of entries.paths) {
    for (const system of SYSTEMS)
      if (!path.systems.includes(system)) complain('paths', path.id, ['systems'], `${system} is left out`);
    for (const [i, stage] of path.stages.entries()) {
      const here = situations.filter(({ context }) => context.path === path.id);
      if (!here.some(({ faults }) => faults.some((fault) => fault.stage === stage)))
        complain('paths', path.id, ['stages', i], `no fault of this path is at stage "${stage}"`);
    }
  }

  const systemsCovered = (
    kind: 'faults' | 'checks',
    id: string,
    field: readonly string[],
    text: unknown,
    only: Only | undefined,
  ): void => {
    if (
      typeof text !== 'object' ||
      text === null ||
      Array.isArray(text) ||
      (text as { all?: unknown }).all !== undefined
    )
      return;
    for (const system of SYSTEMS) {
      if (
        appliesIn(only, { path: null, system, client: null }) &&
        (text as Record<string, unknown>)[system] === undefined
      )
        complain(kind, id, field, `nothing is said for ${system}`);
    }
  };
  const textsFilled = (kind: 'faults' | 'checks', id: string, field: string, value: unknown): void => {
    for (const brace of unfilled(JSON.stringify(value)))
      complain(kind, id, [field], `${brace} is no figure that can be worked out`);
  };
  const cautionsExist = (
    kind: 'faults' | 'checks',
    id: string,
    field: readonly string[],
    ids: readonly string[] | undefined,
  ): void => {
    for (const caution of ids ?? [])
      if (!cautions().has(caution))
        complain(kind, id, field, `there is no caution "${caution}" in knowledge/cautions.yaml`);
  };

  for (const fault of entries.faults) {
    const here = places.get(fault.id) ?? [];
    if (here.length === 0)
      complain('faults', fault.id, ['only'], 'it applies nowhere: no path has this stage under these conditions');
    systemsCovered('faults', fault.id, ['remedy', 'steps'], fault.remedy.steps, fault.only);
    textsFilled('faults', fault.id, 'remedy', fault.remedy);
    cautionsExist('faults', fault.id, ['remedy', 'cautions'], fault.remedy.cautions);
    for (const [i, cause] of (fault.astrayCauses ?? []).entries()) {
      if (!Object.hasOwn(CAUSE_TITLES, cause))
        complain('faults', fault.id, ['astrayCauses', i], `astray knows no cause "${cause}"`);
    }
    const { check, answer } = fault.verify;
    if ((check === undefined) !== (answer === undefined))
      complain('faults', fault.id, ['verify'], '`check` and `answer` go together');
    if (check !== undefined && answer !== undefined) {
      for (const situation of here) {
        const numbers = situation.checks[situation.checkIndex.get(check) ?? -1];
        if (numbers === undefined) {
          complain(
            'faults',
            fault.id,
            ['verify', 'check'],
            `"${check}" does not apply on ${situation.context.path ?? ''} under ${situation.context.system ?? ''}`,
          );
          break;
        }
        const odds = numbers.odds[numbers.answers.indexOf(answer)]?.[situation.faultIndex.get(fault.id) ?? -1] ?? 0;
        if (odds > 0.5) {
          complain(
            'faults',
            fault.id,
            ['verify', 'answer'],
            `"${check}" answers "${answer}" before the remedy too (${odds.toFixed(2)} on ${situation.context.path ?? ''})`,
          );
          break;
        }
      }
    }
    for (const id of Object.keys(fault.answers ?? {})) {
      const shared = here.some((situation) => situation.checkIndex.has(id));
      if (here.length > 0 && !shared)
        complain('faults', fault.id, ['answers', id], 'this check never applies where the fault does');
    }
  }
  for (const check of entries.checks) {
    const here = places.get(check.id) ?? [];
    if (here.length === 0)
      complain('checks', check.id, ['only'], 'it applies nowhere: no path has this stage under these conditions');
    systemsCovered('checks', check.id, ['how'], check.how, check.only);
    textsFilled('checks', check.id, 'how', check.how);
    cautionsExist('checks', check.id, ['cautions'], check.cautions);
    const tells = here.some(({ checks, checkIndex }) => {
      const numbers = checks[checkIndex.get(check.id) ?? -1];
      return numbers?.odds[numbers.answers.indexOf(check.good)]?.slice(0, -1).some((p) => p < 0.9) ?? false;
    });
    if (here.length > 0 && !tells) complain('checks', check.id, ['id'], 'no fault makes it answer anything but good');
    for (const { id } of check.answers) {
      const given = here.some(({ checks, checkIndex, unexplained }) => {
        const numbers = checks[checkIndex.get(check.id) ?? -1];
        return numbers?.odds[numbers.answers.indexOf(id)]?.some((p, h) => h < unexplained && p > 0.02) ?? false;
      });
      if (here.length > 0 && !given) complain('checks', check.id, ['answers'], `no fault gives the answer "${id}"`);
    }
  }

  const marked = new Set(
    entries.faults.flatMap(({ id, sameAs }) => (sameAs ?? []).flatMap((other) => [`${id} ${other}`, `${other} ${id}`])),
  );
  const told = new Map<string, string>();
  const together = new Set<string>();
  for (const situation of situations) {
    for (let a = 0; a < situation.faults.length; a++) {
      for (let b = a + 1; b < situation.faults.length; b++) {
        const pair = `${situation.faults[a]?.id} ${situation.faults[b]?.id}`;
        let widest = 0;
        let by = '';
        for (const { odds, entry } of situation.checks) {
          const distance = odds.reduce((sum, row) => sum + Math.abs((row[a] ?? 0) - (row[b] ?? 0)), 0) / 2;
          if (distance > widest) {
            widest = distance;
            by = entry.id;
          }
        }
        if (widest < TOLD_APART) together.add(pair);
        else told.set(pair, by);
      }
    }
  }
  for (const pair of together) {
    const [a = '', b = ''] = pair.split(' ');
    if (!marked.has(pair))
      complain(
        'faults',
        a,
        ['answers'],
        `no check tells it apart from "${b}"${told.has(pair) ? ' in some context' : ''}; add one, or mark it with sameAs`,
      );
  }
  for (const fault of entries.faults) {
    for (const [i, other] of (fault.sameAs ?? []).entries()) {
      const by = told.get(`${fault.id} ${other}`) ?? told.get(`${other} ${fault.id}`);
      const anywhere = together.has(`${fault.id} ${other}`) || together.has(`${other} ${fault.id}`);
      if (by !== undefined && !anywhere)
        complain(
          'faults',
          fault.id,
          ['sameAs', i],
          `check "${by}" tells it apart from "${other}" everywhere; take the mark off`,
        );
    }
  }

  const unreached = new Set(entries.faults.map(({ id }) => id).filter((id) => places.has(id)));
  for (const situation of situations) {
    const policy = remembering(engine);
    for (const [f, { id }] of situation.faults.entries()) {
      if (unreached.has(id) && playWalk(situation, policy, f, 0, 0).end === 'cured') unreached.delete(id);
    }
  }
  for (const id of unreached)
    complain('faults', id, ['answers'], 'the walk never comes to its remedy when this is the fault');
  return problems;
};
