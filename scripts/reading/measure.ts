/** How much of what texts plainly say is read, and how much of what is read they say. */
import { readText, SYSTEMS, type Reading } from '../../bot/reading/index.js';
import { assess, startWalk, tellText, type TriageModel } from '../../bot/triage/index.js';
import type { Case } from './corpus.js';

export interface Tally {
  said: number;
  read: number;
  right: number;
  wrong: number;
}
export const tally = (): Tally => ({ said: 0, read: 0, right: 0, wrong: 0 });

export interface Measured {
  readonly own: Case;
  readonly reading: Reading;
  /** group ('system', 'path', 'stage', 'fact') → figures of this text. */
  readonly groups: ReadonlyMap<string, Tally>;
  readonly missed: readonly string[];
  readonly beyond: readonly string[];
  /** Whether a sensible cause is among the first three; null where the labels name none. */
  readonly causeFound: boolean | null;
  /** For a trap: what it must not say and does. */
  readonly fallen: readonly string[];
}

/** The three likeliest faults of a walk that was told the text; without text, of one that was told nothing. */
const firstThree = (model: TriageModel, own: Case, text: string): readonly string[] => {
  const known = { path: own.way, system: SYSTEMS.find((one) => one === own.system) ?? null };
  const told = tellText(model, startWalk({ member: null, helper: null }, known), text, 'member');
  const { situation, belief } = assess(model, told.state);
  return situation.faults
    .map(({ id }, index) => ({ id, p: belief.probabilities[index] ?? 0 }))
    .sort((a, b) => b.p - a.p)
    .slice(0, 3)
    .map(({ id }) => id);
};

/** A path label is met by one of its paths, or by a family that holds no other than them and is not everything. */
const pathIsRight = (model: TriageModel, answer: string, paths: readonly string[]): boolean => {
  const family = model.reading.family(answer);
  return paths.some((one) => family.includes(one));
};

/** Whether what was read of system or path is what the text says, or at least nothing against it. */
const isRightOfSetUp = (model: TriageModel, own: Case, what: 'system' | 'path', answer: string): boolean => {
  if (own.also.includes(`${what}.${answer}`)) return true;
  if (what === 'system') return own.system === answer;
  if (pathIsRight(model, answer, own.paths)) return true;
  return own.paths.length === 0 && own.way !== null && pathIsRight(model, answer, [own.way]);
};

const isRightFact = (own: Case, pair: string): boolean =>
  own.also.includes(pair) || own.says.some(({ answers }) => answers.includes(pair));

/** What a text raised beyond what is usual: by its words, or by what they make likely. */
interface Raised {
  readonly pairs: ReadonlySet<string>;
  readonly faults: ReadonlySet<string>;
  readonly likely: readonly string[];
  readonly fresh: ReadonlySet<string>;
}

const raisedBy = (model: TriageModel, own: Case, reading: Reading): Raised => {
  const usual = new Set(firstThree(model, own, ''));
  const likely = firstThree(model, own, own.text);
  return {
    pairs: new Set(reading.facts.map(({ what, answer }) => `${what}.${answer}`)),
    faults: new Set(reading.suggested.flatMap(({ faultId, weight }) => (weight > 1 ? [faultId] : []))),
    likely,
    fresh: new Set(likely.filter((id) => !usual.has(id))),
  };
};

/** What the labels of a text say, each with its group and whether it was read. */
const expectations = (
  model: TriageModel,
  own: Case,
  reading: Reading,
  { pairs, faults, fresh }: Raised,
): readonly { readonly group: string; readonly label: string; readonly isMet: boolean }[] => {
  const isWords = own.kind === 'words';
  const path = reading.facts.find(({ what }) => what === 'path')?.answer;
  const system = `system.${own.system}`;
  return [
    ...(own.system !== null && isWords ? [{ group: 'system', label: system, isMet: pairs.has(system) }] : []),
    ...(own.paths.length > 0
      ? [
          {
            group: 'path',
            label: `path.${own.paths.join('|')}`,
            isMet: path !== undefined && pathIsRight(model, path, own.paths),
          },
        ]
      : []),
    ...own.says.map(({ name, group, answers, causes }) => ({
      group,
      label: name,
      isMet:
        answers.some((pair) => pairs.has(pair)) ||
        [...causes, ...(isWords ? answers : [])].some((id) => faults.has(id) || fresh.has(id)),
    })),
  ];
};

export const measure = (model: TriageModel, own: Case): Measured => {
  const reading = readText(model.reading, own.text);
  const groups = new Map<string, Tally>();
  const tallyOf = (name: string): Tally => {
    const found = groups.get(name) ?? tally();
    groups.set(name, found);
    return found;
  };
  const beyond: string[] = [];
  for (const { what, answer } of reading.facts) {
    const pair = `${what}.${answer}`;
    const isSetUp = what === 'system' || what === 'path';
    const isRight = isSetUp ? isRightOfSetUp(model, own, what, answer) : isRightFact(own, pair);
    const ofFacts = what === 'how-far' ? 'stage' : 'fact';
    tallyOf(isSetUp ? what : ofFacts)[isRight ? 'right' : 'wrong'] += 1;
    if (!isRight) beyond.push(pair);
  }
  const raised = raisedBy(model, own, reading);
  const missed: string[] = [];
  for (const { group, label, isMet } of expectations(model, own, reading, raised)) {
    tallyOf(group).said += 1;
    if (isMet) tallyOf(group).read += 1;
    else missed.push(label);
  }
  const causes = own.says.flatMap((label) => label.causes);
  return {
    own,
    reading,
    groups,
    missed,
    beyond,
    causeFound: causes.length === 0 || own.kind === 'words' ? null : raised.likely.some((id) => causes.includes(id)),
    fallen: own.not.filter((one) => raised.pairs.has(one) || raised.faults.has(one)),
  };
};
