/** Towns that are called like words of every day (Nice, Orange, Bath, Tea, Normal): whether the town is meant, or the word. */
import { populationFound, resolvePlace } from '../../../places/index.js';
import type { PlaceKnowledge } from './place-knowledge.js';
import { isLittle, type Run, type Sentence } from './words.js';

export const NO_TOWN =
  /^(?:the|this|that|here|there|now|tonight|today|tomorrow|it|my|our|your|an?|which|what|north|south|east|west)$/u;
export const LEADS_TO_TOWN = /^(?:from|in|near|outside|use|save|store|add)$/u;

/** "In normal conditions", "in nice light": what is said of a thing behind it. */
const A_THING =
  /^(?:conditions?|circumstances|light|sky|skies|weather|terms|mode|order|ways?|times?|detail|views?|position|shape|seeing|words|nights?|evenings?|colou?rs?|hours?)$/u;
export const isOfThing = ({ words }: Sentence, { at, count, typed }: Run): boolean =>
  count === 1 && !/^\p{Lu}/u.test(typed) && A_THING.test(words[at + count]?.plain ?? '');

/** "After tea", "in the bath", "for a nice": what leads to a thing or to a quality. */
const LEADS_TO_THING =
  /^(?:the|an?|my|our|your|his|her|this|that|after|before|with|of|some|any|no|so|too|very|really|more|most|was|were|looks?|looking|got|like)$/u;
/** "Saturn tonight reading", "is Jupiter up bath": the town may stand behind these. */
const LEADS_FROM_HOUR =
  /^(?:up|out|visible|risen|tonight|now|today|tomorrow|evening|morning|night|\p{L}+day|\d{1,2}|\d{1,2}[:.]?\d\d|\d{1,2} ?[ap]m)$/u;

/** An ordinary word that is a town's name as well, and is said as a word: Tea, Orange, Nice, Bath, Reading. */
export const isSaidAsWord = (
  { words }: Sentence,
  { at, typed, plain, count }: Run,
  known: PlaceKnowledge,
  isTargetNamed: boolean,
): boolean => {
  if (count > 1 || /^\p{Lu}/u.test(typed)) return false;
  const before = words[at - 1]?.plain ?? '';
  if (LEADS_TO_THING.test(before)) return true;
  return isTargetNamed && known.isWord(plain) && !LEADS_TO_TOWN.test(before) && !LEADS_FROM_HOUR.test(before);
};

/** "Is Mars up in nice": a great city at the end of the words, capital or none. */
const GREAT_CITY = 100_000;
export const isGreatCity = ({ plain, typed, count }: Run, before: string, { places }: PlaceKnowledge): boolean =>
  count === 1 &&
  isLittle(plain) &&
  /^(?:from|in|near)$/u.test(before) &&
  !NO_TOWN.test(plain) &&
  (populationFound(resolvePlace(places(), typed)) ?? 0) >= GREAT_CITY;
