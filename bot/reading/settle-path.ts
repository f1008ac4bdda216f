/** The one way to the mount that a text leaves, out of all that it names: the surest first, each narrowing what is left. */
import type { Finding } from './finding.js';
import type { FamilyEntry } from './schema.js';

export interface Families {
  readonly families: readonly FamilyEntry[];
  readonly family: (id: string) => readonly string[];
}

export interface SettledPath {
  /** A path, or the narrowest family that holds all that are left; null where nothing is told or equals contradict. */
  readonly path: { readonly answer: string; readonly from: Finding } | null;
  /** Findings about another way than the one settled on: the computer's own wireless beside a mount on a cable. */
  readonly aside: ReadonlySet<Finding>;
}

/** A claim this much less sure than the surest gives way to it; of nearer ones that contradict each other none holds. */
const GIVES_WAY = 0.08;

const NOTHING: SettledPath = { path: null, aside: new Set() };

const namedBy = (paths: readonly string[], from: Finding, { families }: Families): SettledPath['path'] => {
  const [only] = paths;
  if (paths.length === 1 && only !== undefined) return { answer: only, from };
  const fitting = families
    .filter((one) => paths.every((path) => one.paths.includes(path)))
    .sort((a, b) => a.paths.length - b.paths.length);
  const [narrowest] = fitting;
  return narrowest === undefined ? null : { answer: narrowest.id, from };
};

export const settlePath = (findings: readonly Finding[], families: Families): SettledPath => {
  const surestFirst = findings
    .flatMap((finding) => (finding.entry.path === undefined ? [] : [{ finding, id: finding.entry.path }]))
    .sort((a, b) => b.finding.sureness - a.finding.sureness);
  const [first] = surestFirst;
  if (first === undefined) return NOTHING;
  const aside = new Set<Finding>();
  let left = families.family(first.id);
  let from = first.finding;
  for (const { finding, id } of surestFirst) {
    const own = families.family(id);
    const both = left.filter((path) => own.includes(path));
    if (both.length > 0) {
      // The narrower claim is the one to quote.
      if (both.length < left.length) from = finding;
      left = both;
    } else if (finding.sureness <= first.finding.sureness - GIVES_WAY) aside.add(finding);
    else return NOTHING;
  }
  return { path: namedBy(left, from, families), aside };
};
