/**
 * A member's account of a mount that will not do what it should, told where no walk waits: it begins one. What is told at length is read
 * by the walk's own reader, since the words of a fault ("nothing in the scope", "Vega", "the clocks") are those of other questions too.
 */
import { isProblem } from '../../ground/problem.js';
import { readText } from '../../reading/index.js';
import type { TriageModel } from '../../triage/index.js';
import { plainQuestion, type PlainReading } from '../asking/plain-question.js';
import { knownFor } from '../asking/plain-reader.js';
import { severalIn } from '../asking/several-requests.js';
import type { WordsReader } from '../core/command.js';
import { LINE_LIMIT } from '../core/grammar.js';
import { isOfTheMount } from './waiting-words.js';
import { triage } from './triage.js';

/** From so many words on, a guess at what they tell counts too, and an answer of the sentence reader may give way. */
const AT_LENGTH = 10;
/** Fewer words are a question to be read as one. */
const LEAST_WORDS = 5;
/** Commands that a sentence names all the parts of, the walk itself, and the Sun, of which those speak who warn. */
const MEANT_FOR_SURE =
  /^(?:triage|sun|astray|drift|altitude|compare|refraction|dark|remind|meridian|site|mydata|forget)\b/u;
/** Somewhere in the words something is asked: an answer to it gives way less easily than one to what is only told. */
const ASKED =
  /\?|(?:^|[,.;:!]\s*|\b(?:and|so|but) )(?:what|which|when|where|how|who|why|is|are|do|does|can|could|should|would|will|may)\b/iu;
/** What is told of a mount that works as well: a new camera makes no trouble of a question. */
const IS_HISTORY: readonly string[] = ['worked-before', 'changed-last', 'controller-screen'];

type Standing = 'stands' | 'gives way to symptoms' | 'no answer';

/** How firmly the sentence reader's answer stands against a trouble told. */
const standingOf = (read: PlainReading, text: string): Standing => {
  if (read === null) return 'no answer';
  const whereAsked = ASKED.test(text) ? 'gives way to symptoms' : 'no answer';
  if ('line' in read) return MEANT_FOR_SURE.test(read.line) ? 'stands' : whereAsked;
  if (read.isTopic === true || isOfTheMount(read.outcome)) return 'no answer';
  if (!isProblem(read.outcome) || read.outcome.problem === 'not-safe') return 'stands';
  return read.outcome.problem === 'not-known-here' ? whereAsked : 'no answer';
};

/** The different things the words tell that a walk asks about; guesses only where the words are many. */
const toldIn = (model: TriageModel, text: string, wordCount: number): readonly string[] => {
  const { facts, perhaps } = readText(model.reading, text);
  const told = [...facts, ...(wordCount < AT_LENGTH ? [] : perhaps)].map(({ what }) => what);
  return [...new Set(told)].filter((what) => model.check(what) !== undefined);
};

/** Whether the words are a trouble told, whatever the sentence reader made of them. */
const isTrouble = (model: TriageModel, text: string, read: PlainReading): boolean => {
  const wordCount = text.trim().split(/\s+/u).length;
  const standing = standingOf(read, text);
  if (standing === 'stands' || wordCount < (read === null ? LEAST_WORDS : AT_LENGTH)) return false;
  const told = toldIn(model, text, wordCount);
  if (standing === 'no answer') return told.length > 0;
  return told.filter((what) => !IS_HISTORY.includes(what)).length > 1;
};

export const toldTrouble: WordsReader = {
  name: 'a trouble told',
  read: async (deps, said) => {
    const { text, ...request } = said;
    const known = await knownFor(deps, said);
    const read = text.length > LINE_LIMIT ? null : plainQuestion(text, known);
    // Several questions of the sky in one line are no account of a trouble.
    if (read !== null && severalIn(text, known) !== null) return null;
    if (!isTrouble(deps.triage(), text, read)) return null;
    const options = { text, walk: undefined, for: undefined, answer: undefined, do: undefined, file: undefined };
    return { outcome: await triage.run(deps, { ...request, options }) };
  },
};
