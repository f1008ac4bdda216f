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

export const measure = (model: TriageModel, own: Case): Measured => {
  const reading = readText(model.reading, own.text);
  const groups = new Map<string, Tally>();
  const group = (name: string): Tally => {
    const found = groups.get(name) ?? tally();
    groups.set(name, found);
    return found;
  };
  const missed: string[] = [];
  const beyond: string[] = [];
  const pairs = new Set(reading.facts.map(({ what, answer }) => `${what}.${answer}`));
  const raised = new Set(reading.suggested.flatMap(({ faultId, weight }) => (weight > 1 ? [faultId] : [])));
  const usual = new Set(firstThree(model, own, ''));
  const likely = firstThree(model, own, own.text);
  const fresh = new Set(likely.filter((id) => !usual.has(id)));

  for (const { what, answer } of reading.facts) {
    const pair = `${what}.${answer}`;
    if (what === 'system' || what === 'path') {
      const expected = what === 'system' ? own.system !== null : own.paths.length > 0;
      const right =
        own.also.includes(pair) ||
        (what === 'system' ? own.system === answer : pathIsRight(model, answer, own.paths)) ||
        (what === 'path' && !expected && own.way !== null && pathIsRight(model, answer, [own.way]));
      group(what)[right ? 'right' : 'wrong'] += 1;
      if (!right) beyond.push(pair);
    } else {
      const right = own.also.includes(pair) || own.says.some(({ answers }) => answers.includes(pair));
      group(what === 'how-far' ? 'stage' : 'fact')[right ? 'right' : 'wrong'] += 1;
      if (!right) beyond.push(pair);
    }
  }
  const expect = (name: string, label: string, met: boolean): void => {
    group(name).said += 1;
    if (met) group(name).read += 1;
    else missed.push(label);
  };
  const isWords = own.kind === 'words';
  if (own.system !== null && isWords) expect('system', `system.${own.system}`, pairs.has(`system.${own.system}`));
  if (own.paths.length > 0) {
    const answer = reading.facts.find(({ what }) => what === 'path')?.answer;
    expect('path', `path.${own.paths.join('|')}`, answer !== undefined && pathIsRight(model, answer, own.paths));
  }
  for (const { name, group: kind, answers, causes } of own.says) {
    const met =
      answers.some((pair) => pairs.has(pair)) ||
      [...causes, ...(isWords ? answers : [])].some((id) => raised.has(id) || fresh.has(id));
    expect(kind, name, met);
  }
  const causes = own.says.flatMap((label) => label.causes);
  const fallen = own.not.filter((one) => pairs.has(one) || raised.has(one));
  return {
    own,
    reading,
    groups,
    missed,
    beyond,
    causeFound: causes.length === 0 || isWords ? null : likely.some((id) => causes.includes(id)),
    fallen,
  };
};
