/** Many findings made one reading: one answer a check (but several things tried), one system, one path or family, one weight a fault. */
import { tableOf } from '../ground/table-of.js';
import type { Finding } from './finding.js';
import { oneSystem } from './one-system.js';
import { holdsEither, keyOf, type ReadFact, type Suggestion, type Understood } from './reading.js';
import { otherWays } from './one-way.js';
import { settlePath, type Families } from './settle-path.js';

interface Claim {
  readonly what: string;
  readonly answer: string;
  /** It tells this one or one of these. */
  readonly or?: readonly string[] | undefined;
  readonly from: Finding;
}

const claimsOf = (findings: readonly Finding[]): readonly Claim[] => {
  const claims: Claim[] = [];
  for (const from of findings) {
    const { answers, or, system, client } = from.entry;
    if (system !== undefined) claims.push({ what: 'system', answer: system, from });
    if (client !== undefined) claims.push({ what: 'client', answer: client, from });
    for (const what in answers) claims.push({ what, answer: answers[what] ?? '', or: or?.[what], from });
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

/** The answer to "When does it fail?" that leaves no other moment. */
const NO_MOMENT = 'never';

/** What a contradiction leaves of a claim. */
const CONTRADICTED = 0.7;

const surenessOf = ({ from }: Claim, torn: boolean): number =>
  Math.round(100 * from.sureness * (torn ? CONTRADICTED : 1)) / 100;

export interface Gathered {
  readonly facts: readonly ReadFact[];
  readonly suggested: readonly Suggestion[];
  readonly understood: readonly Understood[];
}

const SYSTEM_LABELS = tableOf({ windows: 'Windows', macos: 'macOS', linux: 'Linux', phone: 'a phone or tablet' });

interface Best {
  readonly claim: Claim;
  /** Another contradicts it. */
  readonly torn: boolean;
  /** Others that were told beside it and do not contradict it, in the order they stand in the text. */
  readonly beside: readonly Claim[];
}

const isOneOf = (claim: Claim, { answer, or = [] }: Claim): boolean =>
  or.includes(claim.answer) || claim.answer === answer;

/** "When I slew, and when it is left alone": both told in the member's own words, neither of them "every time". */
const standBeside = (a: Claim, b: Claim): boolean =>
  holdsEither(a.what) && [a, b].every(({ answer, from }) => from.by === 'words' && answer !== NO_MOMENT);

/** At no clear moment: it says nothing beside a moment that is named. */
const isVague = ({ answer }: Claim): boolean => answer === 'random';

/** What two claims of one check leave. */
const withClaim = (before: Best, claim: Claim): Best => {
  const { claim: own, torn, beside } = before;
  // "Could not open the port: access denied": which of the two it is.
  if (own.or !== undefined || claim.or !== undefined) {
    const [wide, narrow] = claim.or === undefined ? [own, claim] : [claim, own];
    if (narrow.or === undefined && isOneOf(narrow, wide)) return { claim: narrow, torn, beside };
  }
  const isOther = own.answer !== claim.answer;
  if (isOther && standBeside(own, claim)) {
    const told = [own, ...beside.filter((one) => one.answer !== claim.answer), claim];
    const clear = told.filter((one) => !isVague(one));
    const [first = own, ...others] = clear.length > 1 ? clear : told;
    return { claim: first, torn, beside: others };
  }
  return { claim: beats(claim, own) ? claim : own, torn: torn || isOther, beside };
};

/** The best claim of each check, what contradicts it, and what stands beside it. */
const bestClaims = (claims: readonly Claim[]): readonly Best[] => {
  const best = new Map<string, Best>();
  for (const claim of claims) {
    if (claim.what === 'system') continue;
    const key = keyOf(claim.what, claim.answer);
    const before = best.get(key);
    best.set(key, before === undefined ? { claim, torn: false, beside: [] } : withClaim(before, claim));
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
 * @param text folded
 */
export const gather = (
  all: readonly Finding[],
  families: Families,
  quoteOf: (finding: Finding) => string,
  text: string,
): Gathered => {
  const shareWay = (a: string, b: string): boolean =>
    families.family(a).some((way) => families.family(b).includes(way));
  const others = otherWays(all, text, shareWay);
  const inHand = all.filter((finding) => !others.has(finding));
  const { path, aside } = settlePath(inHand, families);
  const findings = inHand.filter((finding) => !aside.has(finding));
  const claims = claimsOf(findings);
  const facts: ReadFact[] = [];
  const understood: Understood[] = [];
  const take = (claim: Claim, torn: boolean, label: string | undefined, beside: readonly Claim[] = []): void => {
    const { what, answer, from } = claim;
    const others = [...(claim.or ?? []), ...beside.flatMap((one) => [one.answer, ...(one.or ?? [])])];
    const or = [...new Set(others)].filter((other) => other !== answer);
    const fact: ReadFact = {
      what,
      answer,
      ...(or.length === 0 ? {} : { or }),
      sureness: surenessOf(claim, torn),
      quote: quoteOf(from),
      by: from.by,
    };
    facts.push(fact);
    if (label !== undefined) understood.push({ fact, label: label.replace(/\.$/u, '') });
  };

  const system = oneSystem(
    claims.filter(({ what }) => what === 'system'),
    text,
  );
  if (system !== undefined) take(system, false, SYSTEM_LABELS.get(system.answer));
  if (path !== null)
    take(
      { what: 'path', answer: path.answer, from: path.from },
      false,
      // A single path is named by its title, which the reader of facts has.
      path.from.entry.label ?? families.families.find(({ id }) => id === path.answer)?.label ?? '',
    );
  const shown = new Set<string>();
  for (const { claim, torn, beside } of bestClaims(claims)) {
    // What is said of the phone that steers the mount is told once, and as no contrast.
    const isOfItself = claim.what === 'works-with-phone' && system?.answer === 'phone';
    const labels = [claim, ...beside].flatMap(({ from: { entry } }) => entry.label ?? entry.says ?? []);
    const label = isOfItself || labels.length === 0 ? undefined : [...new Set(labels)].join('; ');
    // One entry may answer several checks; the member is told once.
    take(claim, torn, label !== undefined && !shown.has(label) ? label : undefined, beside);
    if (label !== undefined) shown.add(label);
  }
  return { facts, understood, suggested: weightsOf(findings) };
};
