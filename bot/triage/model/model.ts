/** The fault model as the engine uses it: entries, look-ups, compiled patterns. Read-only once made. */
import { once } from '../../ground/once.js';
import { makeVocabulary, makeWeighing, type NetParts, type Vocabulary, type Weights } from '../../reading/index.js';
import type { CollectingLine } from './collecting.js';
import { wantsPlainWords } from './guards-gear.js';
import { fillSerial } from './fill-serial.js';
import type { Entries } from './read-entries.js';
import type { CheckEntry, FaultEntry, LinkEntry, PathEntry, StageEntry } from './schema.js';

export interface TriageModel {
  readonly paths: readonly PathEntry[];
  readonly links: readonly LinkEntry[];
  readonly stages: readonly StageEntry[];
  readonly faults: readonly FaultEntry[];
  readonly checks: readonly CheckEntry[];
  readonly evidence: Vocabulary['evidence'];
  /** What readText reads with. */
  readonly reading: Vocabulary;
  /** Lines whose output answers many questions at once, one a system. */
  readonly collecting: readonly CollectingLine[];
  readonly path: (id: string) => PathEntry | undefined;
  readonly link: (id: string) => LinkEntry | undefined;
  readonly stage: (id: string) => StageEntry | undefined;
  readonly fault: (id: string) => FaultEntry | undefined;
  readonly check: (id: string) => CheckEntry | undefined;
}

const byId = <T extends { readonly id: string }>(entries: readonly T[]): ((id: string) => T | undefined) => {
  const map = new Map(entries.map((entry) => [entry.id, entry]));
  return (id) => map.get(id);
};

/** Every text of an entry with its figures worked out; ids and patterns hold no braces that fillSerial knows. */
const filled = <T>(value: T): T => {
  if (typeof value === 'string') return fillSerial(value) as T;
  if (Array.isArray(value)) return value.map(filled) as T;
  if (typeof value === 'object' && value !== null)
    return Object.fromEntries(Object.entries(value).map(([key, part]) => [key, filled(part as unknown)])) as T;
  return value;
};

/** Of `examples` is told what a text says, of `outcomes` what came of a remedy, of `talk` what is said of the talk itself. */
export type FittedName = 'examples' | 'outcomes' | 'talk';

/** What was fitted before the bot was built. */
export interface Fitted {
  /** null: that is told by sayings alone. */
  readonly weights: (name: FittedName) => Weights | null;
  /** Asked beside the weights of `examples`; null: they are asked alone. */
  readonly net: () => NetParts | null;
}

const NOT_FITTED: Fitted = { weights: () => null, net: () => null };

/** What the likeness of clauses may tell; what keeps gear from harm is left to plain words, and that volts and pins are right as well. */
const likenessFrom = (
  weights: Weights,
  net: NetParts | null,
  { checks, paths }: Pick<TriageModel, 'checks' | 'paths'>,
): ReturnType<Vocabulary['likeness']> => {
  const open = new Set(
    checks
      .filter(({ safety }) => safety !== true)
      .flatMap((check) => {
        const told = wantsPlainWords(check) ? check.answers.filter(({ id }) => id !== check.good) : check.answers;
        return told.map((answer) => `${check.id}.${answer.id}`);
      }),
  );
  const known = new Set(weights.answers);
  const ways = new Set(paths.map(({ id }) => id));
  const waysOf = new Map(checks.map(({ id, only }) => [id, only?.paths]));
  return {
    weighClauses: makeWeighing(weights, net),
    isOpen: (answer) => open.has(answer) && known.has(answer),
    bears: (check, path) => !ways.has(path) || waysOf.get(check)?.includes(path) !== false,
  };
};

/**
 * Entries must have passed check-references.ts; a pattern that is not RE2 throws.
 * @param fitted asked for once each, when first needed
 */
export const makeModel = (
  entries: Entries,
  collecting: readonly CollectingLine[] = [],
  fitted: Fitted = NOT_FITTED,
): TriageModel => {
  const faults = entries.faults.map(filled);
  const checks = entries.checks.map(filled);
  const likeness = once(() => {
    const own = fitted.weights('examples');
    return own === null ? null : likenessFrom(own, fitted.net(), { checks, paths: entries.paths });
  });
  const reading = makeVocabulary(entries, {
    likeness,
    outcomes: once(() => fitted.weights('outcomes')),
    talk: once(() => fitted.weights('talk')),
  });
  return {
    ...entries,
    faults,
    checks,
    collecting,
    evidence: reading.evidence,
    reading,
    path: byId(entries.paths),
    link: byId(entries.links),
    stage: byId(entries.stages),
    fault: byId(faults),
    check: byId(checks),
  };
};
