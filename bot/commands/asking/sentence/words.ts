/** A sentence as words that parts are taken from: each word once, so that what an hour was made of is not a target as well. */
import { onceOf } from '../../../ground/once.js';
import { tableOf } from '../../../ground/table-of.js';
import { isHeldCity, withCitiesLoose } from './city-words.js';

export interface Word {
  /** As typed, without the marks around it. */
  readonly typed: string;
  readonly plain: string;
  readonly hasComma: boolean;
  /** All of a city's name behind a word that leads to a place. */
  readonly isCity: boolean;
}

/** The words, and which of them a part has been made of. */
export interface Sentence {
  readonly words: readonly Word[];
  readonly taken: boolean[];
}

/** A run of words that no part has been made of. */
export interface Run {
  readonly at: number;
  readonly count: number;
  /** As typed, with the commas inside it. */
  readonly typed: string;
  /** In lower case, without them. */
  readonly plain: string;
  /** One word that is a city's whole name. */
  readonly isCity: boolean;
}

const bare = (word: string): string =>
  word
    .replace(/[’‘`]/gu, "'")
    .replace(/^[("“”'¿¡]+/u, '')
    .replace(/[)!?.,;:…“”']+$/u, '')
    .replace(/^(?!\d)(.*)"$/u, '$1');

export const sentenceOf = (text: string): Sentence => {
  const words = text
    .split(/\s+/u)
    .map((word) => {
      const typed = withCitiesLoose(bare(word));
      return { typed, plain: typed.toLowerCase(), hasComma: word.endsWith(','), isCity: isHeldCity(word) };
    })
    .filter(({ typed }) => typed !== '');
  return { words, taken: words.map(() => false) };
};

const makeRun = (words: readonly Word[], at: number, count: number): Run => {
  const run = words.slice(at, at + count);
  return {
    at,
    count,
    typed: run.map(({ typed, hasComma }, i) => (hasComma && i < count - 1 ? `${typed},` : typed)).join(' '),
    plain: run.map(({ plain }) => plain).join(' '),
    isCity: count === 1 && run[0]?.isCity === true,
  };
};

/** Of a sentence's words, by count and then by place: every reader of a part goes through them anew. */
const runsMade = onceOf((_: readonly Word[]): Run[][] => []);

export const runAt = ({ words, taken }: Sentence, at: number, count: number): Run | null => {
  if (at + count > words.length) return null;
  for (let i = at; i < at + count; i++) if (taken[i] === true) return null;
  const ofCount = (runsMade(words)[count] ??= []);
  return (ofCount[at] ??= makeRun(words, at, count));
};

/** All runs of at most so many words, the longest first, then from the left. */
export const runsOf = (sentence: Sentence, longest: number): readonly Run[] => {
  const runs: Run[] = [];
  for (let count = Math.min(longest, sentence.words.length); count >= 1; count--)
    for (let at = 0; at + count <= sentence.words.length; at++) {
      const run = runAt(sentence, at, count);
      if (run !== null) runs.push(run);
    }
  return runs;
};

export const take = ({ taken }: Sentence, { at, count }: Pick<Run, 'at' | 'count'>): void => {
  for (let i = at; i < at + count; i++) taken[i] = true;
};

/** The word before a run, "" at the beginning. */
export const wordBefore = ({ words }: Sentence, at: number): string => words[at - 1]?.plain ?? '';

/** The first run that reads as a part, with the word before it; its words are taken, and that word where it belongs to the part. */
export const takeFirst = (
  sentence: Sentence,
  longest: number,
  read: (run: Run, before: string) => string | null,
  belongs: RegExp,
): { readonly text: string; readonly before: string; readonly at: number; readonly count: number } | null => {
  for (const run of runsOf(sentence, longest)) {
    const before = wordBefore(sentence, run.at);
    const text = read(run, before);
    if (text === null) continue;
    take(sentence, run);
    if (belongs.test(before)) take(sentence, { at: run.at - 1, count: 1 });
    return { text, before, at: run.at, count: run.count };
  }
  return null;
};

/** Words that are no target, place or name by themselves, and that begin and end none. */
export const LITTLE_WORDS: ReadonlySet<string> = new Set(
  `a able about actually broad after again ago all alone already also alright am an and another any anyone anything are around as ask at away
  be because been before being best better big both bright brighter but by bye called came can cannot cant can't cheers clear close closer closest come
  comes coming could couldnt couldn't day daylight daytime dark dear degrees did didn't do does doesnt doesn't doing done don't down drifts drift during each early easy
  either else end ended even evening ever every everyone everything eye eyes fair far few find finding first flip folks for found from get gets getting give go goes
  going gone gonna good got great guys had has hasn't have haven't having he hello help here hey hi high higher highest him his hiya hour hours how how's hows
  however i i'd i'll i'm i've if ill im image imaging in instead into is isn't it it's its ive just keep kids know landed last late later less let let's like little live lol look
  looking looks lot low made make many may maybe me mean midnight might mind minute minutes month more morning most mount much must my name near need never new next
  nice night no none noon not nothing now object objects observe observing of off ok okay on once one only onto or other our out over own part
  past peak peaks people photograph picture place please point pointed pointing possible problem probably properly put question quick quite really right rise rises risen rising safe said same saw say see seen
  seeing send sent set sets setting shall she should show sit site sky slew slewed slewing so some somebody someone something sometime soon sort spot stand start
  still stuff stop such sun sure take target targets tell than thank thanks that that's thats the their them then there there's theres these they thing things think thinking this those
  though through till time to today together told tomorrow tonight too took transit transits tried try trying two under until up upon us use using usual very view viewing visible want wanted was
  wasn't watch way we week weekend well went were what what's whats when when's whens where where's wheres whether which while who whole who's why will with without won't wont
  wondering work working worth would wouldn't wrong yeah year yes yet you you're your
  scope telescope binoculars bins binos dob dobsonian camera eyepiece mount tripod garden home house balcony observatory hut field
  north south east west left sunset sunrise sundown dusk dawn twilight moonrise moonset moonlight
  cap caps add save store remember register change switch
  rings drown visible observable zenith altitude azimuth direction elevation position beginners beginner`.split(/\s+/u),
);

export const isLittle = (word: string): boolean => LITTLE_WORDS.has(word) || /^[\d.,:]+$/u.test(word);

const NUMBERS = tableOf({
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  six: 6,
  seven: 7,
  eight: 8,
  nine: 9,
  ten: 10,
  eleven: 11,
  twelve: 12,
  fifteen: 15,
  twenty: 20,
  thirty: 30,
  forty: 40,
  'forty-five': 45,
  fifty: 50,
  sixty: 60,
  ninety: 90,
});

/** "ten", "10"; null for other words. */
export const numberOf = (word: string): number | null =>
  NUMBERS.get(word) ?? (/^\d{1,3}(?:\.\d+)?$/u.test(word) ? Number(word) : null);
