/** `play WORDS…`: what is read of a member's words, and the walk of somebody who has the fault they should lead to. Keeps and counts nothing. */
import { assess, tellText } from '../../bot/triage/walk/walk.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import type { FaultEntry } from '../../bot/triage/model/schema.js';
import { follow, standingOf, startOn, type Standing } from './courses.js';

const percent = (probability: number): string =>
  probability < 0.01 ? 'under 1 %' : `${Math.round(100 * probability)} %`;

const ENDINGS: ReadonlyMap<string, string> = new Map([
  ['one', 'st'],
  ['two', 'nd'],
  ['few', 'rd'],
]);
const ORDINALS = new Intl.PluralRules('en', { type: 'ordinal' });

const placed = (standing: Standing | null): string => {
  if (standing === null) return 'not possible here';
  const { place, probability } = standing;
  return `${place}${ENDINGS.get(ORDINALS.select(place)) ?? 'th'}, ${percent(probability)}`;
};

/** The faults that stand first after these words. */
export const likeliestAfter = (model: TriageModel, words: string, most: number): readonly FaultEntry[] => {
  const { situation, belief } = assess(model, tellText(model, startOn({}), words, 'member').state);
  const shares = new Map(situation.faults.map((fault, f) => [fault, belief.probabilities[f] ?? 0]));
  return [...shares]
    .sort(([, a], [, b]) => b - a)
    .slice(0, most)
    .map(([fault]) => fault);
};

/**
 * @param own the faults to be led to; the likeliest of them is walked
 */
export const playLines = (model: TriageModel, words: string, own: readonly FaultEntry[]): readonly string[] => {
  const { state, read } = tellText(model, startOn({}), words, 'member');
  const { facts, suggested } = read;
  const now = assess(model, state);
  const standings = own
    .map((fault) => ({ fault, standing: standingOf(now, fault.id) }))
    .sort((a, b) => (b.standing?.probability ?? 0) - (a.standing?.probability ?? 0));
  const [first] = standings;
  const lines = [
    facts.length + suggested.length === 0 ? 'Nothing was read of these words.' : 'Read of these words:',
    ...facts.map(({ what, answer, quote }) => `  ${what} → ${answer}  (“${quote}”)`),
    ...suggested.map(({ faultId, weight }) => `  ${faultId} ${weight} times as likely`),
  ];
  if (first === undefined) return lines;
  const { shown, step } = follow(model, state, first.fault);
  return [
    ...lines,
    'Your faults then, among all that ship:',
    ...standings.map(({ fault, standing }) => `  ${fault.id}: ${placed(standing)}`),
    `Somebody with ${first.fault.id} is asked, and answers:`,
    ...shown.map(({ text, answer, standing }, at) =>
      answer === null
        ? `  ${at + 1}. OFFERED: ${text}  (${placed(standing)})`
        : `  ${at + 1}. ${text} → ${answer}  (${placed(standing)})`,
    ),
    ...(step === null ? ['  and then a person is called: it is not offered'] : []),
  ];
};
