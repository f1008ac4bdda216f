/** Which causes' remedies a member's account of a cure tells of: "i swapped the lead and now it works" is one of the leads, whatever was likeliest. */
import { onceOf } from '../../ground/once.js';
import { curedByDeed, readText, tellingMarks, type ReadFact } from '../../reading/index.js';
import type { TriageModel } from '../model/model.js';
import type { FaultEntry } from '../model/schema.js';
import type { Assessment } from './walk.js';

export interface RemedyTold {
  readonly fault: FaultEntry;
  /** How far the words are those of this remedy, above 0; rarer words weigh more. */
  readonly told: number;
  /** … and how likely its cause stands besides: what they are ordered by. */
  readonly score: number;
  /** How much of what the words carry stands in this remedy, 0 to 1. */
  readonly share: number;
}

/** That it works, and how well, tells nothing of what was done. */
const OF_THE_CURE =
  /\b(?:(?:it|all|everything|they|the (?:mount|scope|goto|program|app)|now|and|so)(?:['’]s| is| are)? )*(?:now |just |all |fully |perfectly )*(?:works?|working|connects?|connected|sorted|fixed|solved|solid|alive|talks?|talking|great|fine|perfect\w*|lovely|happy|thanks?|cheers|a treat|in the eyepiece|straight away|hours?|minutes?|clear skies)\b|\b(?:no|without|not|never) (?:a |an |any |one |more |single |another )*(?:drops?|drop-?outs?|errors?|troubles?|problems?|disconnect\w*)\b|\b(?:it|that|everything|all targets?|they|and|off) (?:hits?|lands?|guides?|finds?|stays?|it (?:went|goes)|she (?:went|goes))\b[^,.;!]*/giu;

/** "Set to 21:40". */
const TIME_OF_DAY = /(?<![\d:.])(?:[01]?\d|2[0-3]):[0-5]\d(?:\s?[ap]m)?(?![\d:])/giu;

/** A number by itself that is put somewhere is a port's; so is its name. */
const PORT_NUMBER =
  /\bcom ?port? ?\d{1,3}\b|\bcom ?\d{1,3}\b|(?<=\b(?:put|typed?|entered|picked|chose|chosen|took|selected|set|opened|changed|with)(?: in)? (?:it )?(?:as |to |with |on |the |number )*)(?:\d{1,2}|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b(?! ?(?:v|volts?|amps?|m|metres?|hours?|minutes?|degrees?|stars?|screws?))/giu;

/** What a program is for says nothing of the mount: "the polar alignment program was still open". */
const PROGRAM_FOR =
  /\b(?:polar[ -]?align\w*|align\w*|guid\w+|captur\w+|imag\w+|camera|plate[ -]?solv\w*|planetarium|focus\w*|weather|dome|video) (?:program(?:me)?|app|software|tool|assistant|routine)\b/giu;

/** A letter by itself is a half of the globe; "a 5 A one" is a supply. */
const numbersNamed = (text: string): string =>
  text
    .replace(PROGRAM_FOR, 'program')
    .replace(/\bdst\b|\bdaylight[ -]?savings?(?: time)?\b/giu, 'summer time')
    .replace(TIME_OF_DAY, 'time')
    .replace(PORT_NUMBER, 'port number')
    .replace(/(?<![\p{L}\d'’-])w(?![\p{L}\d'’-])/giu, 'west')
    .replace(/(?<![\p{L}\d'’-])e(?![\p{L}\d'’-])/giu, 'east')
    .replace(/\b\d+(?:[.,]\d+)? ?(?:a|amps?|ampere)\b/giu, 'amps supply');

/** How much a word counts by where it stands. */
const [IN_TITLE, IN_STEPS, BESIDE] = [1, 1, 0.6];
/** What one does to anything says little of which; how long it has held, nothing. */
const DOING_WEIGHT = 0.4;
const DOINGS = new Set(
  'allow permit through borrow buy bought use used run ran try tried swap chang put plug turn switch took tak mov mak mad set chos pick tri us got get new another anoth other old fresh good put start found find right wrong check add look'.split(
    ' ',
  ),
);
const OF_TIME = new Set('hour minut min half night even day week last sinc first time second twice again'.split(' '));
/** Nor does who did it, and where. */
const OF_PEOPLE = new Set(
  'back front side left top bottom end son wif husband boy lad friend mat neighbour dad mum brother sister stupid mysel'.split(
    ' ',
  ),
);
/** Remedies at length hold more of any words. */
const BY_LENGTH = 0.35;
/** A phrase that members put this remedy in, all of it said; and a part of one says less than its share. */
const [IN_PHRASE, OF_PART] = [1.2, 1.5];
/** A word that no remedy has may be a name or a slip of the finger: it says no more than this against all of them. */
const MOST_CARRIED = 3.5;
/** Its own sign is told; or a look that shows its remedy has taken, less where many remedies show it. */
const [SIGN, SEEN_SET] = [2, 2];
/** What is far likelier as the walk stands is told sooner; never by itself. */
const BY_LIKELIHOOD = 0.2;
const LEAST_LIKELY = 1e-3;
/** On another way to the mount. */
const ELSEWHERE = 1e-4;

const textsOf = (lines: unknown): string => {
  if (typeof lines === 'string') return lines;
  return typeof lines === 'object' && lines !== null ? Object.values(lines).map(textsOf).join('. ') : '';
};

type Marks = ReadonlyMap<string, number>;

interface Phrase {
  /** The cause whose remedy members put so. */
  readonly fault: string;
  readonly marks: ReadonlySet<string>;
  /** What all of its words are worth. */
  readonly whole: number;
}

interface Remedies {
  readonly of: ReadonlyMap<string, Marks>;
  /** Word → the phrases that hold it. */
  readonly phrasesWith: ReadonlyMap<string, readonly Phrase[]>;
  /** Rarer words carry more. */
  readonly worth: (mark: string) => number;
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
  const { deeds, sayings } = model.reading;
  const phrases = new Map(
    model.faults.map(({ id }) => [id, deeds(id).map((phrase) => tellingMarks(sayings.lexicon, numbersNamed(phrase)))]),
  );
  const counts = new Map<string, number>();
  for (const [id, marks] of of)
    for (const mark of new Set([...marks.keys(), ...(phrases.get(id) ?? []).flatMap((phrase) => [...phrase])]))
      counts.set(mark, (counts.get(mark) ?? 0) + 1);
  const worth = (mark: string): number => {
    const rarity = Math.log((of.size + 1) / ((counts.get(mark) ?? 0) + 1));
    return rarity * (DOINGS.has(mark) ? DOING_WEIGHT : 1);
  };
  const phrasesWith = new Map<string, Phrase[]>();
  for (const [fault, own] of phrases)
    for (const marks of own) {
      const phrase = { fault, marks, whole: sumOf(marks, worth) };
      for (const mark of marks) phrasesWith.set(mark, [...(phrasesWith.get(mark) ?? []), phrase]);
    }
  return { of, phrasesWith, worth };
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

const sumOf = (marks: Iterable<string>, of: (mark: string) => number): number => {
  let total = 0;
  for (const mark of marks) total += of(mark);
  return total;
};

/** Fault → its phrases that hold one of the words at least. */
const phrasesIn = ({ phrasesWith }: Remedies, said: ReadonlySet<string>): ReadonlyMap<string, ReadonlySet<Phrase>> => {
  const found = new Map<string, Set<Phrase>>();
  for (const mark of said)
    for (const phrase of phrasesWith.get(mark) ?? []) {
      const own = found.get(phrase.fault);
      if (own === undefined) found.set(phrase.fault, new Set([phrase]));
      else own.add(phrase);
    }
  return found;
};

/** How far the phrase most like it is said. */
const phrased = (phrases: Iterable<Phrase>, said: ReadonlySet<string>, worth: (mark: string) => number): number =>
  [...phrases].reduce((best, { marks, whole }) => {
    const matched = sumOf(marks, (mark) => (said.has(mark) ? worth(mark) : 0));
    return matched === 0 ? best : Math.max(best, matched * (matched / whole) ** OF_PART);
  }, 0);

/** What was done, in the words that carry something. */
const deedMarks = (model: TriageModel, text: string): ReadonlySet<string> => {
  const { deed } = curedByDeed(text);
  const marks = tellingMarks(
    model.reading.sayings.lexicon,
    numbersNamed(deed === '' ? text.replace(OF_THE_CURE, ' ') : deed),
  );
  return new Set([...marks].filter((mark) => !OF_TIME.has(mark) && !OF_PEOPLE.has(mark)));
};

/** What it was done with or to; "swapped them" names nothing. */
export const thingsNamed = (model: TriageModel, text: string): readonly string[] =>
  [...deedMarks(model, text)].filter((mark) => !mark.startsWith('<') && !DOINGS.has(mark));

/** Causes whose remedies the words tell of, nearest first. */
export const remediesTold = (
  model: TriageModel,
  { situation, belief }: Assessment,
  text: string,
): readonly RemedyTold[] => {
  const remedies = remediesOf(model);
  const { of, worth } = remedies;
  const said = deedMarks(model, text);
  const phrases = phrasesIn(remedies, said);
  const { facts } = readText(model.reading, text);
  const carried = sumOf(said, (mark) => Math.min(MOST_CARRIED, worth(mark)));
  return model.faults
    .flatMap((fault) => {
      const marks = of.get(fault.id) ?? new Map<string, number>();
      const own = [...(phrases.get(fault.id) ?? [])];
      const inPhrase = (mark: string): boolean => own.some((phrase) => phrase.marks.has(mark));
      const matched = sumOf(said, (mark) => (marks.get(mark) ?? 0) * worth(mark));
      const told =
        matched / marks.size ** BY_LENGTH + IN_PHRASE * phrased(own, said, worth) + factsFor(model, fault, facts);
      if (told === 0) return [];
      const index = situation.faultIndex.get(fault.id);
      const likely = index === undefined ? ELSEWHERE : Math.max(LEAST_LIKELY, belief.probabilities[index] ?? 0);
      const shared = sumOf(said, (mark) =>
        marks.has(mark) || inPhrase(mark) ? Math.min(MOST_CARRIED, worth(mark)) : 0,
      );
      const share = carried === 0 ? 0 : shared / carried;
      return [{ fault, told, score: told + BY_LIKELIHOOD * Math.log(likely), share }];
    })
    .sort((one, other) => other.score - one.score);
};
