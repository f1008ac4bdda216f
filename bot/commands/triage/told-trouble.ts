/**
 * A member's account of a mount that will not do what it should, told where no walk waits: it begins one. What is told at length is read
 * by the walk's own reader, since the words of a fault ("nothing in the scope", "Vega", "the clocks") are those of other questions too.
 */
import { wordCountOf } from '../../ground/fold-text.js';
import { onceOf } from '../../ground/once.js';
import { isProblem } from '../../ground/problem.js';
import { resolvePlace } from '../../places/index.js';
import { readText, tellsAstray } from '../../reading/index.js';
import type { TriageModel } from '../../triage/index.js';
import type { PlainReading } from '../asking/not-known-here.js';
import { plainQuestion } from '../asking/plain-question.js';
import { sameSiteName } from '../asking/resolve-site.js';
import { knownFor } from '../asking/plain-reader.js';
import type { Known, Reading } from '../asking/sentence/asked.js';
import { severalIn } from '../asking/several-requests.js';
import type { WordsRead, WordsReader } from '../core/command.js';
import { LINE_LIMIT, parseLine } from '../core/grammar.js';
import { namesFault } from './names-fault.js';
import { isOfTheMount } from './waiting-words.js';
import { triage } from './triage.js';
import { commandLine } from '../asking/question-parts.js';

/** From so many words on, a guess at what they tell counts too, and an answer of the sentence reader may give way. */
const AT_LENGTH = 10;
/** Fewer words are a question to be read as one. */
const LEAST_WORDS = 5;
/** Commands that a sentence names all the parts of, and the walk itself. */
const MEANT_FOR_SURE =
  /^(?:triage|astray|drift|altitude|compare|refraction|dark|remind|meridian|site|mydata|forget)\b|^tonight\b.* (?:brighter|above|below|larger|wider|messier|constellation):|^alignment\b.* (?:stars|side):|^up\b.* above:|^moon\b.* (?:feature|first):|^ahead (?:meetings|seasons)\b/u;
/** Of the Sun those speak who warn: it stands first by day, and wherever it is named. */
const OF_THE_SUN = /^sun\b/u;
const NAMES_THE_SUN = /\bsun(?:'?s|light|rise|set)?\b/iu;
/** So many words of which the answer makes nothing may tell why it was not asked for. */
const MANY_UNREAD = 3;
/** Somewhere in the words something is asked: an answer to it gives way less easily than one to what is only told. */
const ASKED =
  /\?|(?:^|[,.;:!]\s*|\b(?:and|so|but) )(?:what|which|when|where|how|who|why|is(?! from\b)|are|do|does|can|could|should|would|will|may)\b/iu;
/** What is told of a mount that works as well: a new camera makes no trouble of a question. */
const IS_HISTORY: readonly string[] = ['worked-before', 'changed-last', 'controller-screen'];

/** Gear of the walk's, named where nobody knows what else was meant. */
const NAMES_GEAR =
  /\b(?:mounts?|scope|telescope|go ?to|hand ?set|(?:hand )?controller|keypad|com ?ports?|ports?|usb|dongle|adapt[eo]r|cables?|leads?|drivers?|router|wi-?fi|bluetooth|laptop|macbook|pc|computer|app|motors?|firmware|device|align\w*|battery|power)\b/iu;
/** Buying, lending, meeting and praising: of gear, and of no trouble. */
const OF_OTHER_BUSINESS =
  /\b(?:sell\w*|sold|buy\w*|bought|order\w*|borrow\w*|lend\w*|spare|prices?|cheap\w*|cost\w*|pounds|quid|euros?|dollars|recommend\w*|second ?hand|collect|left (?:my|his|her|the|it)|seen my|thanks?|thank you|great|love|lovely|nice|named|arrived|given|gift|present|birthday|look at|see|show|first|bring\w*|carry\w*|lift|talk|party|meeting|anyone coming)\b/iu;
const OPENS_A_QUESTION =
  /^(?:(?:hi|hello|hey|so|and|ok),? )*(?:what|which|when|where|how|who|why|is|are|do|does|did|can|could|should|would|will|may|has|have)\b|\?\s*$/iu;
/** Asked for all the same. */
const ASKS_FOR_HELP =
  /\bhelp\b.*\b(?:me|us|with)\b|\bneed help\b|\bhow (?:do|can|should|would) (?:i|we|you) (?:connect|hook|link|get)\b.*\b(?:mount|scope|telescope|handset|controller)\b/iu;

/** Words of gear that no reader knows an answer to: the walk asks what is wrong, which is more than to say they were not followed. */
const isOfGear = (text: string): boolean =>
  NAMES_GEAR.test(text) &&
  !OF_OTHER_BUSINESS.test(text) &&
  (!OPENS_A_QUESTION.test(text.trim()) || ASKS_FOR_HELP.test(text));

/** Fewer words name gear and tell nothing of it. */
const LEAST_OF_GEAR = 4;

type Standing = 'stands' | 'gives way to symptoms' | 'leaves words' | 'hardly stands' | 'no answer';

/** A site that stands nowhere is part of what is told: "it looks at the roof". */
const isNowhere = ({ line }: Reading, { allCommands, places, siteNames }: Known): boolean => {
  const parsed = parseLine(line, allCommands ?? []);
  const site = isProblem(parsed) ? undefined : parsed.raw.get('site');
  return (
    site !== undefined && !siteNames.some((name) => sameSiteName(name, site)) && isProblem(resolvePlace(places(), site))
  );
};

/** By day it stands; where nobody knows whether it is day, the walk's own cautions do as well for a trouble told. */
const standingBesideSun = (text: string, { day }: Known): Standing => {
  if (NAMES_THE_SUN.test(text) || day?.isSunUp('now') === true) return 'stands';
  return day === undefined || day === null ? 'gives way to symptoms' : 'hardly stands';
};

/** So many words that ask nothing tell more than a miss to be reckoned. */
const A_TALE = 14;
const isToldAtLength = (text: string): boolean => !ASKED.test(text) && wordCountOf(text) >= A_TALE;
const A_MISS = /^astray\b/u;

const standingOfLine = (read: Reading, text: string, known: Known): Standing => {
  // Told at length, "near the pole too" is no target to be reckoned for; by day the answer's own warning comes first.
  if (A_MISS.test(read.line) && isToldAtLength(text) && known.day?.isSunUp('now') !== true)
    return 'gives way to symptoms';
  if (MEANT_FOR_SURE.test(read.line)) return 'stands';
  if (OF_THE_SUN.test(read.line)) return standingBesideSun(text, known);
  const unread = read.unread ?? 0;
  if (unread >= MANY_UNREAD || isNowhere(read, known)) return 'hardly stands';
  if (unread > 0) return 'leaves words';
  return ASKED.test(text) ? 'gives way to symptoms' : 'no answer';
};

/** How firmly the sentence reader's answer stands against a trouble told. */
const standingOf = (read: PlainReading, text: string, known: Known): Standing => {
  if (read === null) return 'no answer';
  if ('line' in read) return standingOfLine(read, text, known);
  // "I was given my first telescope, what shall I look at": the topic answers what is asked, unless a trouble is told beside it.
  if (read.isTopic === true) {
    if (OPENS_A_QUESTION.test(text.trim())) return 'gives way to symptoms';
    return ASKED.test(text) ? 'hardly stands' : 'no answer';
  }
  // It asks for what the walk would ask.
  if (isOfTheMount(read.outcome)) return isToldAtLength(text) ? 'hardly stands' : 'gives way to symptoms';
  if (!isProblem(read.outcome) || read.outcome.problem === 'not-safe') return 'stands';
  const whereAsked = ASKED.test(text) ? 'gives way to symptoms' : 'no answer';
  return read.outcome.problem === 'not-known-here' ? whereAsked : 'no answer';
};

/** Checks that a mount answers by what it does on the sky. */
const ON_THE_SKY: ReadonlySet<string> = new Set(['how-far', 'mount-does', 'refused-where', 'slew', 'when-drops']);

/** The sayings that tell of it, likely or not: those whose words are few are often unlike all that is known. */
const sayingsOnTheSky = onceOf((model: TriageModel): ReadonlySet<string> => {
  const entries = model.reading.sayings.candidates.map(({ saying }) => saying.entry);
  const isOnTheSky = (check: string): boolean => ON_THE_SKY.has(check);
  return new Set(entries.filter(({ answers }) => Object.keys(answers ?? {}).some(isOnTheSky)).map(({ id }) => id));
});

/** The different things the words tell that a walk asks about. */
const toldIn = (model: TriageModel, text: string, isGuessed: boolean): readonly string[] => {
  const { facts, perhaps, met } = readText(model.reading, text);
  const told = [...facts, ...(isGuessed ? perhaps : [])].map(({ what }) => what);
  const onTheSky = met.some((id) => sayingsOnTheSky(model).has(id)) ? ['how-far'] : [];
  return [...new Set([...told, ...onTheSky])].filter((what) => model.check(what) !== undefined);
};

/** "Just got my first scope what should i look at": a question of the sky, though no mark stands before it. */
const isAnswered = (read: PlainReading): boolean =>
  read !== null && 'line' in read && (read.unread ?? 0) === 0 && !/^triage\b/u.test(read.line);

/** What is told must weigh as much as the answer that it sets aside. */
const isEnough = (standing: Standing, told: readonly string[], read: PlainReading): boolean => {
  const symptoms = told.filter((what) => !IS_HISTORY.includes(what));
  if (standing === 'no answer') return (isAnswered(read) ? symptoms : told).length > 0;
  if (standing === 'hardly stands') return symptoms.length > 0;
  return symptoms.length > 1 || (standing === 'leaves words' && symptoms.some((what) => ON_THE_SKY.has(what)));
};

/** It has no answer but a question back, which the walk asks better: told at length, and nothing asked. */
const asksOnly = (read: NonNullable<PlainReading>, text: string): boolean =>
  'outcome' in read &&
  isProblem(read.outcome) &&
  (isOfTheMount(read.outcome) || read.outcome.problem === 'which-target') &&
  isToldAtLength(text);

/** So many pieces of gear, and a topic that only shares a word with them: "linux handset adapter permission". */
const PIECES = 2;
const isListOfGear = (read: NonNullable<PlainReading>, text: string): boolean =>
  'outcome' in read &&
  read.isTopic === true &&
  !ASKED.test(text) &&
  (text.match(new RegExp(NAMES_GEAR.source, 'giu')) ?? []).length >= PIECES;

/** Of words that name gear. */
const isPlainlyTrouble = (text: string, read: PlainReading, wordCount: number, standing: Standing): boolean => {
  const isUnanswered = read === null || asksOnly(read, text) || isListOfGear(read, text);
  if (wordCount >= LEAST_OF_GEAR && isUnanswered) return true;
  // "Stars fly out of view and gotos go to silly places": what flies, and where, are no names.
  // A No to what hurts, and by day the Sun, stand whatever is told.
  return wordCount >= LEAST_WORDS && tellsAstray(text) && !ASKED.test(text) && standing !== 'stands';
};

/** Whether the words are a trouble told, whatever the sentence reader made of them. */
const isTrouble = (model: TriageModel, text: string, read: PlainReading, known: Known): boolean => {
  const wordCount = wordCountOf(text);
  const standing = standingOf(read, text, known);
  if (isOfGear(text) && isPlainlyTrouble(text, read, wordCount, standing)) return true;
  const isUnasked = !ASKED.test(text) && read !== null && 'outcome' in read && isOfTheMount(read.outcome);
  if (isUnasked && toldIn(model, text, false).some((what) => ON_THE_SKY.has(what))) return true;
  const isBrief = read === null || standing === 'leaves words' || standing === 'hardly stands';
  if (standing === 'stands' || wordCount < (isBrief ? LEAST_WORDS : AT_LENGTH)) return false;
  // A guess sets no answer to a question aside that leaves words over: those may be of anything.
  const isGuessed = wordCount >= AT_LENGTH && (standing === 'no answer' || !ASKED.test(text));
  return isEnough(standing, toldIn(model, text, isGuessed), read);
};

const MOVES_THERE = /\b(?:go ?to|goto\w*|slew\w*|point\w*|send\w*|aim\w*)\b/iu;
const OF_TARGET = /^(?:up|altitude)$/u;

/** By day the way to what it is sent to comes first: it is tried once more at once. */
const sunFirst = (read: PlainReading, text: string, { day, allCommands }: Known): WordsRead | null => {
  if (day?.isSunUp('now') !== true || read === null || !('line' in read) || !MOVES_THERE.test(text)) return null;
  const parsed = parseLine(read.line, allCommands ?? []);
  const target = isProblem(parsed) || !OF_TARGET.test(parsed.command.name) ? undefined : parsed.raw.get('target');
  return typeof target === 'string'
    ? {
        line: commandLine('sun', target, {}),
        note: 'By day the Sun comes first. Then tell me the trouble once more, after: triage',
      }
    : null;
};

export const toldTrouble: WordsReader = {
  name: 'a trouble told',
  read: async (deps, said) => {
    const { text, ...request } = said;
    const known = await knownFor(deps, said);
    const read = text.length > LINE_LIMIT ? null : plainQuestion(text, known);
    // Several questions of the sky in one line are no account of a trouble.
    if (read !== null && severalIn(text, known) !== null) return null;
    const mayBe = namesFault(text) || tellsAstray(text);
    if (!mayBe || !isTrouble(deps.triage(), text, read, known)) return null;
    const first = sunFirst(read, text, known);
    if (first !== null) return first;
    const options = { text, walk: undefined, for: undefined, answer: undefined, do: undefined, file: undefined };
    return { outcome: await triage.run(deps, { ...request, options }) };
  },
};
