/** Many findings made one reading: one answer a check (but several things tried), one system, one path or family, one weight a fault. */
import { tableOf } from '../ground/table-of.js';
import type { Finding } from './finding.js';
import { keyOf, type ReadFact, type Suggestion, type Understood } from './reading.js';
import { settlePath, type Families } from './settle-path.js';

interface Claim {
  readonly what: string;
  readonly answer: string;
  readonly from: Finding;
}

const claimsOf = (findings: readonly Finding[]): readonly Claim[] => {
  const claims: Claim[] = [];
  for (const from of findings) {
    const { answers, system, client } = from.entry;
    if (system !== undefined) claims.push({ what: 'system', answer: system, from });
    if (client !== undefined) claims.push({ what: 'client', answer: client, from });
    for (const what in answers) claims.push({ what, answer: answers[what] ?? '', from });
  }
  return claims;
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

const surenessOf = ({ from }: Claim, torn: boolean): number =>
  Math.round(100 * from.sureness * (torn ? CONTRADICTED : 1)) / 100;

/** A system named outright is surer than one that a port's name tells. */
const NEARLY_AS_SURE = 0.03;

/** Two systems in one text are none, unless the member's own words name just one of them, or one more surely. */
const oneSystem = (claims: readonly Claim[]): Claim | undefined => {
  const named = (list: readonly Claim[]): Claim | undefined =>
    new Set(list.map(({ answer }) => answer)).size === 1 ? list[0] : undefined;
  const worded = claims.filter(({ from }) => from.by === 'words');
  const surest = Math.max(...worded.map(({ from }) => from.sureness));
  return named(claims) ?? named(worded) ?? named(worded.filter(({ from }) => from.sureness > surest - NEARLY_AS_SURE));
};

export interface Gathered {
  readonly facts: readonly ReadFact[];
  readonly suggested: readonly Suggestion[];
  readonly understood: readonly Understood[];
}

const SYSTEM_LABELS = tableOf({ windows: 'Windows', macos: 'macOS', linux: 'Linux', phone: 'a phone or tablet' });

/** The best claim of each check, and whether another contradicts it. */
const bestClaims = (claims: readonly Claim[]): readonly { readonly claim: Claim; readonly torn: boolean }[] => {
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
  return [...best.values()];
};

/** An entry weighs once, however often it is met. */
const weightsOf = (findings: readonly Finding[]): readonly Suggestion[] => {
  const weights = new Map<string, number>();
  for (const { suggests } of new Map(findings.map(({ entry }) => [entry.id, entry])).values())
    for (const [faultId, weight] of Object.entries(suggests ?? {}))
      weights.set(faultId, (weights.get(faultId) ?? 1) * weight);
  return [...weights].map(([faultId, weight]) => ({ faultId, weight }));
};

/**
 * @param all in the order they stand in the text
 * @param quoteOf the words that a finding came from
 */
export const gather = (
  all: readonly Finding[],
  families: Families,
  quoteOf: (finding: Finding) => string,
): Gathered => {
  const { path, aside } = settlePath(all, families);
  const findings = all.filter((finding) => !aside.has(finding));
  const claims = claimsOf(findings);
  const facts: ReadFact[] = [];
  const understood: Understood[] = [];
  const take = (claim: Claim, torn: boolean, label: string | undefined): void => {
    const { what, answer, from } = claim;
    const fact: ReadFact = { what, answer, sureness: surenessOf(claim, torn), quote: quoteOf(from), by: from.by };
    facts.push(fact);
    if (label !== undefined) understood.push({ fact, label: label.replace(/\.$/u, '') });
  };

  const system = oneSystem(claims.filter(({ what }) => what === 'system'));
  if (system !== undefined) take(system, false, SYSTEM_LABELS.get(system.answer));
  if (path !== null)
    take(
      { what: 'path', answer: path.answer, from: path.from },
      false,
      // A single path is named by its title, which the reader of facts has.
      path.from.entry.label ?? families.families.find(({ id }) => id === path.answer)?.label ?? '',
    );
  const shown = new Set<string>();
  for (const { claim, torn } of bestClaims(claims)) {
    // What is said of the phone that steers the mount is told once, and as no contrast.
    const isOfItself = claim.what === 'works-with-phone' && system?.answer === 'phone';
    const label = isOfItself ? undefined : (claim.from.entry.label ?? claim.from.entry.says);
    // One entry may answer several checks; the member is told once.
    take(claim, torn, label !== undefined && !shown.has(label) ? label : undefined);
    if (label !== undefined) shown.add(label);
  }
  return { facts, understood, suggested: weightsOf(findings) };
};
