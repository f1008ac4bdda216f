/** What reviewers hold the fault model to beyond its references: nothing unreachable, unverifiable, untold apart or left out. */
import { CAUSE_TITLES } from '../../bot/commands/astray/astray-words.js';
import { appliesIn } from '../../bot/triage/model/context.js';
import { unfilled } from '../../bot/triage/model/fill-serial.js';
import type { KnowledgeProblem } from '../../bot/triage/model/knowledge-problem.js';
import { makeModel } from '../../bot/triage/model/model.js';
import type { Entries, EntryKind, ReadResult } from '../../bot/triage/model/read-entries.js';
import { SYSTEMS, type CheckEntry, type FaultEntry, type Only } from '../../bot/triage/model/schema.js';
import { situationFor, type Situation } from '../../bot/triage/engine/situation.js';
import { contextsOf, phoneContextsOf } from './contexts.js';
import { engine } from './policies.js';
import { playWalk, remembering } from './sample-walks.js';

const LEAST = { faults: 70, checks: 45, evidence: 40 } as const;
/** Two faults are told apart by a check whose answers differ this much between them (total variation distance). */
const TOLD_APART = 0.3;

export interface CoverageOptions {
  /** Minimum counts hold for the shipped model only. */
  readonly shipped: boolean;
}

/** What every check of this file looks at, and where it says what it finds. */
interface Coverage {
  readonly entries: Entries;
  readonly situations: readonly Situation[];
  /** The situations in which a fault or a check applies, by its id; none where it has no entry. */
  readonly places: ReadonlyMap<string, readonly Situation[]>;
  readonly complain: (kind: EntryKind, id: string, path: readonly (string | number)[], message: string) => void;
}

const placesIn = (situations: readonly Situation[]): ReadonlyMap<string, readonly Situation[]> => {
  const places = new Map<string, Situation[]>();
  for (const situation of situations) {
    for (const { id } of [...situation.faults, ...situation.checks.map(({ entry }) => entry)])
      places.set(id, [...(places.get(id) ?? []), situation]);
  }
  return places;
};

/** What is said by system is said for each of these; what says nothing for a phone is left out there. */
const COMPUTERS = SYSTEMS.filter((system) => system !== 'phone');

const tooFew = (entries: Entries): readonly KnowledgeProblem[] =>
  (['faults', 'checks', 'evidence'] as const)
    .filter((kind) => entries[kind].length < LEAST[kind])
    .map((kind) => ({
      file: `knowledge/connection/${kind}`,
      line: 1,
      entry: null,
      message: `${entries[kind].length} ${kind}, at least ${LEAST[kind]} wanted`,
    }));

const checkPaths = ({ entries, situations, complain }: Coverage): void => {
  for (const path of entries.paths) {
    for (const system of COMPUTERS)
      if (!path.systems.includes(system)) complain('paths', path.id, ['systems'], `${system} is left out`);
    const here = situations.filter(({ context }) => context.path === path.id);
    for (const [i, stage] of path.stages.entries()) {
      if (!here.some(({ faults }) => faults.some((fault) => fault.stage === stage)))
        complain('paths', path.id, ['stages', i], `no fault of this path is at stage "${stage}"`);
    }
  }
};

/** What is checked alike in a fault's remedy and in a check's directions. */
interface Told {
  readonly kind: 'faults' | 'checks';
  readonly id: string;
  readonly only: Only | undefined;
  /** Where the lines stand that may differ by system, and the lines. */
  readonly linesAt: readonly string[];
  readonly lines: unknown;
  /** The field with all that is said, and its value. */
  readonly field: string;
  readonly value: unknown;
}

/** Lines by system; null for lines that are said to all. */
const bySystem = (lines: unknown): Readonly<Partial<Record<(typeof SYSTEMS)[number], unknown>>> | null => {
  if (typeof lines !== 'object' || lines === null || Array.isArray(lines)) return null;
  return 'all' in lines && lines.all !== undefined ? null : lines;
};

const checkTold = (complain: Coverage['complain'], told: Told): void => {
  const { kind, id, only } = told;
  const lines = bySystem(told.lines);
  for (const system of COMPUTERS) {
    const isMissing = lines !== null && lines[system] === undefined;
    if (isMissing && appliesIn(only, { path: null, system, client: null }))
      complain(kind, id, told.linesAt, `nothing is said for ${system}`);
  }
  for (const brace of unfilled(JSON.stringify(told.value)))
    complain(kind, id, [told.field], `${brace} is no figure that can be worked out`);
};

const NOWHERE = 'it applies nowhere: no path has this stage under these conditions';

/** What shows that a remedy worked must apply wherever the fault does, and must not answer so before the remedy. */
const checkVerify = ({ places, complain }: Coverage, { id, verify: { check, answer } }: FaultEntry): void => {
  if ((check === undefined) !== (answer === undefined))
    complain('faults', id, ['verify'], '`check` and `answer` go together');
  if (check === undefined || answer === undefined) return;
  // A phone cannot look at everything: there the words of `verify` may stand alone.
  const here = (places.get(id) ?? []).filter(
    ({ context, checkIndex }) => context.system !== 'phone' || checkIndex.has(check),
  );
  for (const { context, checks, checkIndex, faultIndex } of here) {
    const numbers = checks[checkIndex.get(check) ?? -1];
    if (numbers === undefined) {
      const message = `"${check}" does not apply on ${context.path ?? ''} under ${context.system ?? ''}`;
      return complain('faults', id, ['verify', 'check'], message);
    }
    const odds = numbers.odds[numbers.answers.indexOf(answer)]?.[faultIndex.get(id) ?? -1] ?? 0;
    if (odds > 0.5) {
      const share = `${odds.toFixed(2)} on ${context.path ?? ''}`;
      const message = `"${check}" answers "${answer}" before the remedy too (${share})`;
      return complain('faults', id, ['verify', 'answer'], message);
    }
  }
};

const checkFault = (coverage: Coverage, fault: FaultEntry): void => {
  const { places, complain } = coverage;
  const { id, only, remedy } = fault;
  const here = places.get(id) ?? [];
  if (here.length === 0) complain('faults', id, ['only'], NOWHERE);
  checkTold(complain, {
    kind: 'faults',
    id,
    only,
    linesAt: ['remedy', 'steps'],
    lines: remedy.steps,
    field: 'remedy',
    value: remedy,
  });
  for (const [i, cause] of (fault.astrayCauses ?? []).entries()) {
    if (!Object.hasOwn(CAUSE_TITLES, cause))
      complain('faults', id, ['astrayCauses', i], `astray knows no cause "${cause}"`);
  }
  checkVerify(coverage, fault);
  for (const check of Object.keys(fault.answers ?? {})) {
    const isShared = here.some((situation) => situation.checkIndex.has(check));
    if (here.length > 0 && !isShared)
      complain('faults', id, ['answers', check], 'this check never applies where the fault does');
  }
};

/** A check must have an answer but the good one, and each of its answers a fault that gives it. */
const checkAnswers = ({ places, complain }: Coverage, { id, good, answers }: CheckEntry): void => {
  const here = (places.get(id) ?? []).flatMap(({ checks, checkIndex, unexplained }) => {
    const numbers = checks[checkIndex.get(id) ?? -1];
    return numbers === undefined ? [] : [{ numbers, unexplained }];
  });
  if (here.length === 0) return;
  const tells = here.some(
    ({ numbers }) => numbers.odds[numbers.answers.indexOf(good)]?.slice(0, -1).some((p) => p < 0.9) ?? false,
  );
  if (!tells) complain('checks', id, ['id'], 'no fault makes it answer anything but good');
  for (const answer of answers) {
    const isGiven = here.some(
      ({ numbers, unexplained }) =>
        numbers.odds[numbers.answers.indexOf(answer.id)]?.some((p, h) => h < unexplained && p > 0.02) ?? false,
    );
    if (!isGiven) complain('checks', id, ['answers'], `no fault gives the answer "${answer.id}"`);
  }
};

const checkCheck = (coverage: Coverage, check: CheckEntry): void => {
  const { places, complain } = coverage;
  if (!places.has(check.id)) complain('checks', check.id, ['only'], NOWHERE);
  checkTold(complain, {
    kind: 'checks',
    id: check.id,
    only: check.only,
    linesAt: ['how'],
    lines: check.how,
    field: 'how',
    value: check.how,
  });
  checkAnswers(coverage, check);
};

/** The check whose answers differ most between two faults of a situation, and by how much. */
const widestBetween = (
  { checks }: Situation,
  a: number,
  b: number,
): { readonly widest: number; readonly by: string } => {
  let widest = 0;
  let by = '';
  for (const { odds, entry } of checks) {
    const distance = odds.reduce((sum, row) => sum + Math.abs((row[a] ?? 0) - (row[b] ?? 0)), 0) / 2;
    if (distance > widest) [widest, by] = [distance, entry.id];
  }
  return { widest, by };
};

/** Pairs of faults, "a b": by which check they are told apart somewhere, and which are not told apart somewhere. */
const pairsOf = (
  situations: readonly Situation[],
): { readonly told: ReadonlyMap<string, string>; readonly together: ReadonlySet<string> } => {
  const told = new Map<string, string>();
  const together = new Set<string>();
  for (const situation of situations) {
    for (let a = 0; a < situation.faults.length; a++) {
      for (let b = a + 1; b < situation.faults.length; b++) {
        const pair = `${situation.faults[a]?.id} ${situation.faults[b]?.id}`;
        const { widest, by } = widestBetween(situation, a, b);
        if (widest < TOLD_APART) together.add(pair);
        else told.set(pair, by);
      }
    }
  }
  return { told, together };
};

const bothWays = (one: string, other: string): readonly string[] => [`${one} ${other}`, `${other} ${one}`];

const checkToldApart = ({ entries, situations, complain }: Coverage): void => {
  const marked = new Set(
    entries.faults.flatMap(({ id, sameAs }) => (sameAs ?? []).flatMap((other) => bothWays(id, other))),
  );
  const { told, together } = pairsOf(situations);
  for (const pair of together) {
    if (marked.has(pair)) continue;
    const [a = '', b = ''] = pair.split(' ');
    const where = told.has(pair) ? ' in some context' : '';
    complain('faults', a, ['answers'], `no check tells it apart from "${b}"${where}; add one, or mark it with sameAs`);
  }
  for (const { id, sameAs } of entries.faults) {
    for (const [i, other] of (sameAs ?? []).entries()) {
      const pairs = bothWays(id, other);
      const by = pairs.map((pair) => told.get(pair)).find((check) => check !== undefined);
      if (by !== undefined && !pairs.some((pair) => together.has(pair)))
        complain(
          'faults',
          id,
          ['sameAs', i],
          `check "${by}" tells it apart from "${other}" everywhere; take the mark off`,
        );
    }
  }
};

const checkReached = ({ entries, situations, places, complain }: Coverage): void => {
  const unreached = new Set(entries.faults.map(({ id }) => id).filter((id) => places.has(id)));
  for (const situation of situations) {
    const policy = remembering(engine);
    for (const [f, { id }] of situation.faults.entries()) {
      if (unreached.has(id) && playWalk(situation, policy, f, 0, 0).end === 'cured') unreached.delete(id);
    }
  }
  for (const id of unreached)
    complain('faults', id, ['answers'], 'the walk never comes to its remedy when this is the fault');
};

export const checkCoverage = (
  { entries, locate }: ReadResult,
  { shipped }: CoverageOptions,
): readonly KnowledgeProblem[] => {
  const problems: KnowledgeProblem[] = shipped ? [...tooFew(entries)] : [];
  const model = makeModel(entries);
  const situations = [...contextsOf(model), ...phoneContextsOf(model)].map((context) => situationFor(model, context));
  const coverage: Coverage = {
    entries,
    situations,
    places: placesIn(situations),
    complain: (kind, id, path, message) => {
      problems.push({ ...locate(kind, id, path), entry: id, message: `${path.join('.')}: ${message}` });
    },
  };
  checkPaths(coverage);
  for (const fault of entries.faults) checkFault(coverage, fault);
  for (const check of entries.checks) checkCheck(coverage, check);
  checkToldApart(coverage);
  checkReached(coverage);
  return problems;
};
