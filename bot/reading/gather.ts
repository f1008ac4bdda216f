/** Many findings made one reading: one answer a check (but several things tried), one system, one path or family, one weight a fault. */
import { keyOf, type ReadBy, type ReadFact, type Suggestion, type Understood } from './reading.js';
import type { FamilyEntry, Told } from './schema.js';
import { tableOf } from '../ground/table-of.js';

/** One entry of the vocabulary met in the text. */
export interface Finding {
  readonly entry: Told & { readonly says?: string | undefined; readonly label?: string | undefined };
  readonly sureness: number;
  readonly quote: string;
  readonly by: ReadBy;
}

interface Claim {
  readonly what: string;
  readonly answer: string;
  readonly from: Finding;
}

const claimsOf = (from: Finding): readonly Claim[] => {
  const { answers, system, client } = from.entry;
  return [
    ...(system === undefined ? [] : [{ what: 'system', answer: system, from }]),
    ...(client === undefined ? [] : [{ what: 'client', answer: client, from }]),
    ...Object.entries(answers ?? {}).map(([what, answer]) => ({ what, answer, from })),
  ];
};

/** Printed lines: what stands last holds. Words: what is said more surely, then what is said last. */
const beats = (later: Claim, earlier: Claim): boolean => {
  const [a, b] = [later.from, earlier.from];
  if (a.by !== 'words' && b.by !== 'words') return true;
  if (a.by !== b.by) return a.by !== 'words';
  return a.sureness >= b.sureness;
};

/** What a contradiction leaves of a claim. */
const CONTRADICTED = 0.7;

const factOf = ({ what, answer, from }: Claim, torn: boolean): ReadFact => ({
  what,
  answer,
  sureness: Math.round(100 * from.sureness * (torn ? CONTRADICTED : 1)) / 100,
  quote: from.quote,
  by: from.by,
});

/** Two systems in one text are none, unless the member's own words name just one of them. */
const oneSystem = (claims: readonly Claim[]): Claim | undefined => {
  const named = (list: readonly Claim[]): Claim | undefined =>
    new Set(list.map(({ answer }) => answer)).size === 1 ? list[0] : undefined;
  return named(claims) ?? named(claims.filter(({ from }) => from.by === 'words'));
};

export interface Families {
  readonly families: readonly FamilyEntry[];
  readonly family: (id: string) => readonly string[];
}

/** What all path claims together leave: a path, the family that is just that, or nothing where they contradict one another. */
const onePath = (
  findings: readonly Finding[],
  { families, family }: Families,
): { readonly answer: string; readonly from: Finding } | null => {
  let left: readonly string[] | null = null;
  let from: Finding | null = null;
  for (const finding of findings) {
    if (finding.entry.path === undefined) continue;
    const own = family(finding.entry.path);
    const both: readonly string[] = left === null ? own : left.filter((path) => own.includes(path));
    // The narrower claim is the one to quote; words over prints where they contradict.
    if (both.length === 0) return null;
    if (left === null || both.length < left.length) from = finding;
    left = both;
  }
  if (left === null || from === null) return null;
  const paths = left;
  const [only] = paths;
  if (paths.length === 1 && only !== undefined) return { answer: only, from };
  const fitting = families
    .filter((one) => paths.every((path) => one.paths.includes(path)))
    .sort((a, b) => a.paths.length - b.paths.length);
  const [narrowest] = fitting;
  return narrowest === undefined ? null : { answer: narrowest.id, from };
};

export interface Gathered {
  readonly facts: readonly ReadFact[];
  readonly suggested: readonly Suggestion[];
  readonly understood: readonly Understood[];
}

const SYSTEM_LABELS = tableOf({ windows: 'Windows', macos: 'macOS', linux: 'Linux' });

/** @param findings in the order they stand in the text */
export const gather = (findings: readonly Finding[], families: Families): Gathered => {
  const claims = findings.flatMap(claimsOf);
  const facts: ReadFact[] = [];
  const understood: Understood[] = [];
  const take = (fact: ReadFact, label: string | undefined): void => {
    facts.push(fact);
    if (label !== undefined) understood.push({ fact, label: label.replace(/\.$/u, '') });
  };

  const system = oneSystem(claims.filter(({ what }) => what === 'system'));
  if (system !== undefined) take(factOf(system, false), SYSTEM_LABELS.get(system.answer));
  const path = onePath(findings, families);
  if (path !== null)
    take(
      factOf({ what: 'path', answer: path.answer, from: path.from }, false),
      path.from.entry.label ?? families.families.find(({ id }) => id === path.answer)?.label,
    );

  const best = new Map<string, { claim: Claim; torn: boolean }>();
  for (const claim of claims) {
    if (claim.what === 'system') continue;
    const key = keyOf(claim.what, claim.answer);
    const before = best.get(key);
    if (before === undefined) best.set(key, { claim, torn: false });
    else {
      const torn = before.torn || before.claim.answer !== claim.answer;
      best.set(key, { claim: beats(claim, before.claim) ? claim : before.claim, torn });
    }
  }
  const shown = new Set<string>();
  for (const { claim, torn } of best.values()) {
    const label = claim.from.entry.label ?? claim.from.entry.says;
    // One entry may answer several checks; the member is told once.
    take(factOf(claim, torn), label !== undefined && !shown.has(label) ? label : undefined);
    if (label !== undefined) shown.add(label);
  }

  const weights = new Map<string, number>();
  const counted = new Set<string>();
  for (const { entry } of findings) {
    if (counted.has(entry.id)) continue;
    counted.add(entry.id);
    for (const [faultId, weight] of Object.entries(entry.suggests ?? {}))
      weights.set(faultId, (weights.get(faultId) ?? 1) * weight);
  }
  return { facts, understood, suggested: [...weights].map(([faultId, weight]) => ({ faultId, weight })) };
};
