/** `play WORDS…`: what is read of a member's words, and the walk of somebody who has the fault they should lead to. Keeps and counts nothing. */
import type { WalkState } from '../../bot/triage/walk/walk-state.js';
import { tellText } from '../../bot/triage/walk/tell-text.js';
import { assess, type Assessment } from '../../bot/triage/walk/walk.js';
import type { ReadFact } from '../../bot/reading/index.js';
import type { TriageModel } from '../../bot/triage/model/model.js';
import type { FaultEntry } from '../../bot/triage/model/schema.js';
import { follow, likeliestAnswer, standingOf, startOn, type Standing } from './courses.js';

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

/** What a fact says, in the words that members read. */
const factLine = (model: TriageModel, words: string, { what, answer, quote }: ReadFact): string => {
  const ways = model.reading.family(answer).map((id) => model.path(id)?.title ?? id);
  const label = model.check(what)?.answers.find(({ id }) => id === answer)?.label;
  const said = what === 'path' ? ways.join(', or ') : `${answer}${label === undefined ? '' : ` (${label})`}`;
  return `  ${what} → ${said}${quote.length < words.trim().length ? `  from “${quote}”` : ''}`;
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

/** Below this an answer speaks against a fault. */
const AGAINST = 0.1;

/** What was read that members with this fault would hardly say. */
const againstLines = (
  model: TriageModel,
  { situation }: Pick<Assessment, 'situation'>,
  facts: readonly ReadFact[],
  fault: FaultEntry,
): readonly string[] => {
  const f = situation.faultIndex.get(fault.id) ?? -1;
  return facts.flatMap(({ what, answer }) => {
    const check = model.check(what);
    const numbers = situation.checks[situation.checkIndex.get(what) ?? -1];
    const odds = numbers?.odds[numbers.answers.indexOf(answer)]?.[f];
    if (check === undefined || odds === undefined || odds >= AGAINST) return [];
    const own = likeliestAnswer({ situation }, fault, check).answer;
    return [
      `  AGAINST ${fault.id}: ${what} → ${answer}. If members with it may say either, write ${what}: { ${own}: 0.6, ${answer}: 0.4 }`,
    ];
  });
};

const walkLines = (model: TriageModel, start: WalkState, fault: FaultEntry): readonly string[] => {
  const { shown, step } = follow(model, start, fault);
  return [
    `Somebody with ${fault.id} is asked, and answers:`,
    ...shown.map(({ text, answer, standing }, at) =>
      answer === null
        ? `  ${at + 1}. OFFERED: ${text}  (${placed(standing)})`
        : `  ${at + 1}. ${text} → ${answer}  (${placed(standing)})`,
    ),
    ...(step === null ? ['  It is not offered: a person is called.'] : []),
  ];
};

/** Less likely than this after a member's words, a fault is not what they lead to. */
const LED_TO = 0.01;

/**
 * @param own the faults to be led to; the likeliest of them is walked
 * @param always whether it is walked even where the words do not lead to it
 */
export const playLines = (
  model: TriageModel,
  words: string,
  own: readonly FaultEntry[],
  always = false,
): readonly string[] => {
  const { state, read } = tellText(model, startOn({}), words, 'member');
  const { facts, suggested, perhaps } = read;
  const now = assess(model, state);
  const standings = own
    .map((fault) => ({ fault, standing: standingOf(now, fault.id) }))
    .sort((a, b) => (b.standing?.probability ?? 0) - (a.standing?.probability ?? 0));
  const [first] = standings;
  const lines = [
    facts.length + suggested.length + perhaps.length === 0
      ? 'Nothing was read of these words.'
      : 'Read of these words:',
    ...facts.map((fact) => factLine(model, words, fact)),
    ...suggested.map(({ faultId, weight }) => `  ${faultId} ${weight} times as likely`),
    ...perhaps.map((guess) => factLine(model, words, guess).replace(/^ */u, '  Perhaps: ')),
  ];
  if (first === undefined) return lines;
  const isLedTo = always || (first.standing?.probability ?? 0) >= LED_TO;
  return [
    ...lines,
    'Where that leaves these faults, among all:',
    ...standings.map(({ fault, standing }) => `  ${fault.id}: ${placed(standing)}`),
    ...againstLines(model, now, facts, first.fault),
    ...(isLedTo
      ? walkLines(model, state, first.fault)
      : ['The words lead to none of them. With --fault ID its walk is shown all the same.']),
  ];
};
