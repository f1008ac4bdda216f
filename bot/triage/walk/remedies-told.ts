/** Which causes' remedies a member's account of a cure tells of: "i swapped the lead and now it works" is one of the leads, whatever was likeliest. */
import { onceOf } from '../../ground/once.js';
import { readText, tellingMarks, type ReadFact } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import type { FaultEntry } from '../model/schema.js';
import type { Assessment } from './walk.js';

export interface RemedyTold {
  readonly fault: FaultEntry;
  /** How far the words are those of this remedy, above 0; rarer words weigh more. */
  readonly score: number;
  /** How much of what the words carry stands in this remedy, 0 to 1; its title counts in full. */
  readonly share: number;
}

/** That it works, and how well, tells nothing of what was done. */
const OF_THE_CURE =
  /\b(?:(?:it|all|everything|they|the (?:mount|scope|goto|program|app)|now|and|so)(?:['’]s| is| are)? )*(?:now |just |all |fully |perfectly )*(?:works?|working|connects?|connected|sorted|fixed|solved|solid|alive|talks?|talking|great|fine|perfect\w*|lovely|happy|thanks?|cheers|a treat|in the eyepiece|straight away|hours?|minutes?|clear skies)\b|\b(?:no|without|not|never) (?:a |an |any |one |more |single |another )*(?:drops?|drop-?outs?|errors?|troubles?|problems?|disconnect\w*)\b|\b(?:it|that|everything|all targets?|they|and|off) (?:hits?|lands?|guides?|finds?|stays?|it (?:went|goes)|she (?:went|goes))\b[^,.;!]*/giu;

/** A number by itself that is put somewhere is a port's; so is its name. */
const PORT_NUMBER =
  /\bcom ?port? ?\d{1,3}\b|\bcom ?\d{1,3}\b|(?<=\b(?:put|typed?|entered|picked|chose|chosen|took|selected)(?: in)? (?:it as |the |number )?)(?:\d{1,2}|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b(?! ?(?:v|volts?|amps?|m|metres?|hours?|minutes?|degrees?|stars?|screws?))/giu;

/** How much a word counts by where it stands. */
const [IN_TITLE, IN_STEPS, BESIDE] = [1, 1, 0.6];
/** What one does to anything says little of which; how long it has held, nothing. */
const DOING_WEIGHT = 0.4;
const DOINGS = new Set(
  'swap chang put plug turn switch took tak mov mak mad set chos pick tri us got get new anoth other old fresh good put start found find right wrong check add look'.split(
    ' ',
  ),
);
const OF_TIME = new Set('hour minut min half night even day week last sinc first time second twice again'.split(' '));
/** Remedies at length hold more of any words. */
const BY_LENGTH = 0.35;
/** Its own sign is told; or a look that shows its remedy has taken, less where many remedies show it. */
const [SIGN, SEEN_SET] = [2, 2];
/** What is far likelier as the walk stands is told sooner; never by itself. */
const BY_LIKELIHOOD = 0.2;
const LEAST_LIKELY = 1e-4;
/** On another way to the mount. */
const ELSEWHERE = 1e-6;

const textsOf = (lines: unknown): string => {
  if (typeof lines === 'string') return lines;
  return typeof lines === 'object' && lines !== null ? Object.values(lines).map(textsOf).join('. ') : '';
};

type Marks = ReadonlyMap<string, number>;

interface Remedies {
  readonly of: ReadonlyMap<string, Marks>;
  readonly rarity: (mark: string) => number;
}

const isOfOnePart = (model: TriageModel, check: string): boolean => {
  const entry = model.check(check);
  return entry !== undefined && entry.scope !== 'chain' && entry.byStage === undefined;
};

/** How members see this cause and hardly another: the labels of what its own looks show. */
const SHOWS_OFTEN = 0.5;
const signsOf = (model: TriageModel, { answers = {} }: FaultEntry): string =>
  Object.entries(answers)
    .flatMap(([id, odds]) => {
      const check = model.check(id);
      if (check === undefined || !isOfOnePart(model, id)) return [];
      return check.answers
        .filter(
          (one) =>
            one.id !== check.good &&
            (odds === one.id || (typeof odds === 'object' && (odds[one.id] ?? 0) > SHOWS_OFTEN)),
        )
        .map(({ label }) => `${label}, ${check.brief ?? ''}`);
    })
    .join('. ');

const marksOf = (model: TriageModel, fault: FaultEntry): Marks => {
  const { title, why, remedy, verify } = fault;
  const { lexicon } = model.reading.sayings;
  const marks = new Map<string, number>();
  const add = (text: string, weight: number): void => {
    for (const mark of tellingMarks(lexicon, text)) marks.set(mark, Math.max(weight, marks.get(mark) ?? 0));
  };
  add(title, IN_TITLE);
  add(textsOf(remedy.steps), IN_STEPS);
  add(textsOf(remedy.otherwise), BESIDE);
  add(`${why}. ${verify.text}`, BESIDE);
  add(signsOf(model, fault), BESIDE);
  return marks;
};

/** The words of all remedies; worked out ahead, or else while the first member who tells of a cure waits. */
export const remediesOf = onceOf((model: TriageModel): Remedies => {
  const of = new Map(model.faults.map((fault) => [fault.id, marksOf(model, fault)]));
  const counts = new Map<string, number>();
  for (const marks of of.values()) for (const mark of marks.keys()) counts.set(mark, (counts.get(mark) ?? 0) + 1);
  return { of, rarity: (mark) => Math.log((of.size + 1) / ((counts.get(mark) ?? 0) + 1)) };
});

/** How many remedies each look shows to have taken. */
const shownBy = onceOf((model: TriageModel): ReadonlyMap<string, number> => {
  const counts = new Map<string, number>();
  for (const { verify } of model.faults)
    if (verify.check !== undefined) counts.set(verify.check, (counts.get(verify.check) ?? 0) + 1);
  return counts;
});

const isOwnSign = (model: TriageModel, { answers = {} }: FaultEntry, { what, answer }: ReadFact): boolean => {
  const odds = answers[what];
  if (odds === undefined || model.check(what)?.good === answer || !isOfOnePart(model, what)) return false;
  return odds === answer || (typeof odds === 'object' && (odds[answer] ?? 0) > SHOWS_OFTEN);
};

const factsFor = (model: TriageModel, fault: FaultEntry, facts: readonly ReadFact[]): number => {
  const { check = '', answer } = fault.verify;
  const isSeen = facts.some((fact) => fact.what === check && fact.answer === answer);
  const seen = isSeen ? SEEN_SET / (shownBy(model).get(check) ?? 1) : 0;
  return seen + (facts.some((fact) => isOwnSign(model, fault, fact)) ? SIGN : 0);
};

/** Causes whose remedies the words tell of, nearest first. */
export const remediesTold = (
  model: TriageModel,
  { situation, belief }: Assessment,
  text: string,
): readonly RemedyTold[] => {
  const deed = text.replace(OF_THE_CURE, ' ').replace(PORT_NUMBER, 'port number');
  const { of, rarity } = remediesOf(model);
  const said = [...tellingMarks(model.reading.sayings.lexicon, deed)].filter((mark) => !OF_TIME.has(mark));
  const { facts } = readText(model.reading, text);
  const carried = said.reduce((sum, mark) => sum + rarity(mark), 0);
  const worth = (mark: string): number => rarity(mark) * (DOINGS.has(mark) ? DOING_WEIGHT : 1);
  return model.faults
    .flatMap((fault) => {
      const marks = of.get(fault.id) ?? new Map<string, number>();
      const matched = said.reduce((sum, mark) => sum + (marks.get(mark) ?? 0) * worth(mark), 0);
      const told = matched / marks.size ** BY_LENGTH + factsFor(model, fault, facts);
      if (told === 0) return [];
      const index = situation.faultIndex.get(fault.id);
      const likely = index === undefined ? ELSEWHERE : Math.max(LEAST_LIKELY, belief.probabilities[index] ?? 0);
      return [{ fault, score: told + BY_LIKELIHOOD * Math.log(likely), share: carried === 0 ? 0 : matched / carried }];
    })
    .sort((one, other) => other.score - one.score);
};
