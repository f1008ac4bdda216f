/**
 * Which answer to the question in hand a member's own words mean: "the time, 2 hours early" for "The time", "no, both are on the wifi" for
 * "None of them". It weighs the words of each answer by how many of the answers share them, so that it works for any question
 * whose answers are told apart by their words. Nothing is taken where two answers are nearly as good.
 */
import type { Vocabulary } from '../vocabulary.js';
import { byLabels, weigh, type Part, type Weighed } from './answers-as-words.js';
import { isBareNo, LEADING, leadOf } from './lead.js';
import { likeliestAnswer } from './likeliest-answer.js';
import type { AnswerMeant, QuestionInHand } from './question-in-hand.js';
import { approvesOf, readsOut } from './reads-out.js';
import { onceOf } from '../../ground/once.js';
import { saidText, type SaidText, type SaidWord } from './said-words.js';
import { speaksOf } from './speaks-of.js';

/** Longer than this tells a story; it is read for what it says, not for which answer it is. */
const LONGEST_ANSWER_WORDS = 40;
const SHORT_ANSWER_WORDS = 14;
const SHORT_OPENING_WORDS = 4;
const SURE = 0.6;
const NEAREST = 0.45;
const AHEAD = 0.1;
/** Of the second opinion: enough beside the first, and enough by itself. */
const LIKELY = 0.5;
const CERTAIN = 0.95;
/** The same kind of thing by another word. */
const BY_ENTRY = 0.6;
/** Of two answers that were said whole, the one of more and rarer words. */
const FOR_MORE = 0.15;
const MOST_FOR_MORE = 2;
/** A single word of a long answer says little. */
const LEAST_OF_SAID = 0.25;

const likeness = (a: SaidWord, b: SaidWord): number => {
  if (a.stem === b.stem) return 1;
  for (const id of a.entries) if (b.entries.has(id)) return BY_ENTRY;
  return 0;
};

interface Share {
  /** Of the answer's words, weighed by their rarity, lower where they were said of the contrary; to 1. */
  readonly share: number;
  /** The weight of the words found. */
  readonly found: number;
  /** The words of the text that were taken for the answer's. */
  readonly taken: ReadonlySet<SaidWord>;
}

const shareSaid = (part: Part, said: SaidText, commonness: (word: SaidWord) => number): Share => {
  let whole = 0;
  let found = 0;
  const taken = new Set<SaidWord>();
  for (const own of part.words) {
    if (!own.isTelling) continue;
    const weight = 1 / commonness(own);
    whole += weight;
    let best = 0;
    let of: SaidWord | null = null;
    for (const word of said.words) {
      const like = word.isTelling ? likeness(own, word) : 0;
      if (like <= Math.abs(best)) continue;
      best = word.denied === own.denied ? like : -like;
      of = word;
    }
    found += weight * best;
    if (of !== null && best > 0) taken.add(of);
  }
  return { share: whole === 0 ? 0 : (found / whole) * (part.isWhole ? 1 : 0.95), found: Math.max(0, found), taken };
};

/** How many answers have the word. */
const commonnessIn = onceOf((all: readonly Weighed[]): ((own: SaidWord) => number) => {
  const counts = new Map<string, number>();
  for (const { parts } of all)
    for (const stem of new Set(parts.flatMap(({ words }) => words.map((word) => word.stem))))
      counts.set(stem, (counts.get(stem) ?? 0) + 1);
  return ({ stem }) => counts.get(stem) ?? 1;
});

interface Scored extends AnswerMeant {
  /** The score, and something for each word said: what answers are compared by. */
  readonly rank: number;
}

const scored = ({ id, label, parts }: Weighed, said: SaidText, commonness: (word: SaidWord) => number): Scored => {
  const carrying = said.words.filter(({ isTelling }) => isTelling).length;
  const ranked = parts
    .map((part) => shareSaid(part, said, commonness))
    .map(({ share, found, taken }) => ({
      share,
      rank: share + FOR_MORE * Math.min(found, MOST_FOR_MORE),
      isAside: taken.size < 2 && taken.size < LEAST_OF_SAID * carrying,
    }))
    .sort((a, b) => b.rank - a.rank);
  const { share = 0, rank = 0, isAside = true } = ranked[0] ?? {};
  return { id, label, score: isAside ? Math.min(share, NEAREST) : share, rank, isSure: false };
};

const scoresOf = (all: readonly Weighed[], said: SaidText): readonly Scored[] => {
  const commonness = commonnessIn(all);
  return all.map((answer) => scored(answer, said, commonness)).sort((a, b) => b.rank - a.rank);
};

/** Where it begins with yes or no, only answers that do may be meant, if there are any. */
const byLead = (all: readonly Weighed[], said: SaidText): AnswerMeant | null | undefined => {
  const lead = leadOf(said.words, 2) ?? (isBareNo(said) ? { says: 'no', isBare: true } : null);
  const led = all.filter((answer) => answer.lead === lead?.says);
  const [only, second] = led;
  if (lead === null || only === undefined) return undefined;
  if (lead.isBare && second === undefined) return { id: only.id, label: only.label, score: 0.85, isSure: true };
  const best = byScore(led, said);
  if (!lead.isBare || best !== undefined) return best;
  // "No" to "No, or it runs apart" and "No, but the mount says so": the plain one, if one is plain.
  const plain = led.filter(({ parts }) => parts[0]?.words.every(({ isTelling }) => !isTelling) === true);
  if (plain.length !== 1 || plain[0] === undefined) return null;
  return { id: plain[0].id, label: plain[0].label, score: SURE, isSure: said.words.length <= 3 };
};

const byScore = (led: readonly Weighed[], said: SaidText): AnswerMeant | undefined => {
  const [best, next] = scoresOf(led, said);
  if (best === undefined || best.score < NEAREST) return undefined;
  return { ...best, isSure: best.rank - (next?.rank ?? 0) >= AHEAD };
};

/** May stand behind an answer without changing it. */
const TRAILING = new Set(
  'mate please thanks cheers ta sorry honestly bro pal love sir dear here there though tbh'.split(' '),
);

const wordsAlone = onceOf((words: readonly SaidWord[]): string => {
  const from = Math.max(
    0,
    words.findIndex(({ word }) => !LEADING.has(word)),
  );
  const past = words.findLastIndex(({ word }) => !TRAILING.has(word)) + 1;
  return words
    .slice(from, Math.max(past, from))
    .map(({ word }) => word)
    .join(' ');
});

/** Said word for word as members put one of the answers. */
const wordForWord = (all: readonly Weighed[], { words }: SaidText): AnswerMeant | null => {
  const line = wordsAlone(words);
  const [only, second] = all.filter(({ parts }) => parts.some((part) => wordsAlone(part.words) === line));
  if (only === undefined || second !== undefined) return null;
  return { id: only.id, label: only.label, score: 1, isSure: true };
};

/** "The time. 2 hours early …": the first few words before a pause, where they stand by themselves. */
const openingClause = ({ words, asks }: SaidText): SaidText | null => {
  const own = words.filter(({ clause }) => clause === words[0]?.clause);
  return own.length < words.length && own.length <= SHORT_OPENING_WORDS ? { words: own, asks } : null;
};

const bestOf = (all: readonly Weighed[], said: SaidText): AnswerMeant | null => {
  const [best, next] = scoresOf(all, said);
  if (best === undefined || best.score < NEAREST) return null;
  if (best.rank - Math.max(0, next?.rank ?? 0) < AHEAD) return null;
  return { ...best, isSure: best.score >= (said.words.length <= SHORT_ANSWER_WORDS ? SURE : SURE + 0.15) };
};

interface Opening {
  readonly said: SaidText;
  /** The answer that they are by themselves. */
  readonly best: AnswerMeant | null;
}

const openingOf = (all: readonly Weighed[], said: SaidText): Opening | null => {
  const opening = openingClause(said);
  return opening === null ? null : { said: opening, best: bestOf(all, opening) };
};

/** By the words of the labels and phrases alone. */
const byWords = (all: readonly Weighed[], said: SaidText): AnswerMeant | null => {
  const led = byLead(all, said);
  if (led !== undefined) return led !== null && led.score >= NEAREST ? led : null;
  const meant = openingOf(all, said)?.best;
  return meant?.isSure === true ? meant : bestOf(all, said);
};

/** By the weighing of words, and by the likeliest answer where phrases are known. */
const byBoth = (all: readonly Weighed[], said: SaidText): AnswerMeant | null => {
  const meant = byWords(all, said);
  if (leadOf(said.words, 2) !== null || !all.some(({ parts }) => parts.some(({ by }) => by === 'phrase'))) return meant;
  const likeliest = likeliestAnswer(all, said.words);
  if (likeliest === null) return meant;
  if (meant?.id === likeliest.id && likeliest.probability >= LIKELY) return meant;
  // By the label itself, unless the phrases speak plainly for another.
  const labelled = byWords(byLabels(all), said);
  if (labelled?.isSure === true && likeliest.probability < CERTAIN) return labelled;
  if (likeliest.probability < CERTAIN || likeliest.known < 2)
    return meant === null ? null : { ...meant, isSure: false };
  const { label = '' } = all.find(({ id }) => id === likeliest.id) ?? {};
  return { id: likeliest.id, label, score: likeliest.probability, isSure: true };
};

/** What speaks of something else by so much is no sure answer, or none at all. */
const SPEAKS_SURELY = -0.5;
const SPEAKS_AT_ALL = -2;

const labelsOf = onceOf((all: readonly Weighed[]): readonly (readonly SaidWord[])[] =>
  all.flatMap(({ parts }) => parts.filter(({ by, isWhole }) => by === 'label' && isWhole).map(({ words }) => words)),
);

/** How far the words, or the opening ones that answer by themselves, speak of what the question asks, as `speaksOf` tells. */
const ratioOf = (
  vocabulary: Vocabulary,
  all: readonly Weighed[],
  check: string,
  said: SaidText,
  opening: Opening | null,
): number | null => {
  const own = labelsOf(all);
  const counts = vocabulary.phraseCounts();
  const whole = speaksOf(counts, check, own, said.words);
  const ofOpening = opening?.best?.isSure === true ? speaksOf(counts, check, own, opening.said.words) : null;
  return whole === null ? null : Math.max(whole, ofOpening ?? whole);
};

/** The nearest of a few answers is found in any sentence: what speaks of another matter is not taken for it. */
const ifOfThat = (meant: AnswerMeant, ratio: number | null): AnswerMeant | null => {
  if (ratio === null || ratio >= SPEAKS_SURELY) return meant;
  return ratio >= SPEAKS_AT_ALL ? { ...meant, isSure: false } : null;
};

export interface WeighedWords {
  readonly answers: readonly Weighed[];
  /** The words that tell: all of them, or the first few before a pause. */
  readonly said: SaidText;
  /** Beside the learnt guess. */
  readonly meant: AnswerMeant | null;
  /** Said word for word as members put it, or by a bare yes or no: nothing is to be weighed. */
  readonly isPlain: boolean;
  /** Above 0: they speak of what the question asks; null: nothing to judge by. */
  readonly ratio: number | null;
}

/** The opening words where the answer rests on them. */
const tellingWords = (opening: Opening | null, said: SaidText, meant: AnswerMeant | null): SaidText =>
  opening !== null && meant?.isSure === true && opening.best?.id === meant.id ? opening.said : said;

/** The answer by its words alone; null where they ask back, or are a story. */
export const weighWords = (vocabulary: Vocabulary, text: string, question: QuestionInHand): WeighedWords | null => {
  const said = saidText(vocabulary.sayings.lexicon, text);
  const isAnswer = said.asks !== 'plainly' && said.words.length > 0 && said.words.length <= LONGEST_ANSWER_WORDS;
  if (!isAnswer || readsOut(text, question)) return null;
  const answers = weigh(vocabulary, question);
  const exact = wordForWord(answers, said);
  if (exact !== null) return { answers, said, meant: exact, isPlain: true, ratio: null };
  const nearest = question.isAside === true ? byWords(byLabels(answers), said) : byBoth(answers, said);
  const opening = openingOf(answers, said);
  const ratio = ratioOf(vocabulary, answers, question.id, said, opening);
  const meant = nearest === null ? null : ifOfThat(nearest, ratio);
  const isOfOther = meant !== null && approvesOf(meant, said, question);
  return {
    answers,
    said: tellingWords(opening, said, meant),
    meant: isOfOther ? { ...meant, isSure: false } : meant,
    isPlain: leadOf(said.words, 2)?.isBare === true || isBareNo(said),
    ratio,
  };
};
