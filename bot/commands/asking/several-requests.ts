/** Several requests in one line ("whats up at 9 and moon rise and remind me at ten to eight"): each is answered, none silently left. */
import { wordCountOf } from '../../ground/fold-text.js';
import { once } from '../../ground/once.js';
import { isProblem } from '../../ground/problem.js';
import { withPlainPosition } from '../../places/index.js';
import { namesHour } from '../../times/index.js';
import type { WordsRead, WordsReader } from '../core/command.js';
import { LINE_LIMIT, parseLine } from '../core/grammar.js';
import { knownFor } from './plain-reader.js';
import { plainQuestion } from './plain-question.js';
import type { Known } from './sentence/asked.js';
import { talkIn } from './talk-among-people.js';
import { mended } from './spelling/known-words.js';
import { lookingAtSun } from './sentence/looking-at-sun.js';
import { inEnglishNames } from './bodies-abroad.js';
import { withSunMadePlain } from './sentence/sun-words.js';

const BREAK =
  /\s*(?:;|[.?!]+\s+(?=\p{L})|,?\s+(?:and(?:\s+(?:also|then))?|also|then|plus|oh and|&|n)(?=\s)(?!\s+(?:mon|tues|wednes|thurs|fri|satur|sun)days\b)|,\s+(?:then|also)?)\s*/giu;
const MOST_ANSWERED = 3;

/** Words with which a request begins. */
const BEGINS =
  /^(?:also |then |and |please |pls )*(?:what|what's|whats|wots|wot|when|whens|when's|wen|where|wheres|where's|which|how|hows|how's|is|are|can|could|will|does|do|did|show|list|remind|tell|save|add|use|set|cancel|delete|give|find|warn|wake|let me know|any|next)\b/iu;
/** Words that make a request of a name: "moon rise", "m42 at midnight" has its hour. */
const SAYS_ENOUGH =
  /\b(?:moon ?rises?|moon ?sets?|sun ?rise|sun ?set|rises?|sets?|phase|moon|minim(?:um|a)|shadow|transits?|sidereal|hour angle|air ?mass|separation|meteors?|twilight|moonless|polaris|tonight|dark|best|altitude|alt|height|flip|eclipses?|iss|weather|forecast|moons|midnight|reminders?|dusk|dawn|\d{1,2}(?:[:.]\d\d)? ?(?:am|pm)|at \S+|sites?)\b/iu;
const STANDS =
  /^(?:(?:hi|hello|ok|so),? )*(?:i'?m|i am|we'?re|we are|observing|based|camped|camping|staying|set up)\b/iu;
/** What is not wanted of the first is no second one. */
const NOT_WANTED = /^(?:and |but )?(?:(?:i|we) )?(?:do not|don['’]?t|not|no|without|nothing|away from|far from)\b/iu;
/** What is one question though it has two parts: of a way, of a miss, of a drift. */
const ONE_QUESTION =
  /\b(?:slew\w*|swing\w*|landed|lands?|sent|drift\w*|path|between|distance|separation|apart|how (?:close|near|far)|together|each other|same field|in one (?:field|view)|instead|compared?|from \S+ to|then (?:to|go|on)|go(?:es|ing)? (?:to|from)|mov(?:e|ing) (?:to|from)|point\w*)\b/iu;
/** "The moon and jupiter": what stands between them parts nothing. */
const OF_A_PAIR = /^ahead meetings .*about:/u;
const ONE_COMMAND = /^(?:triage|astray|drift|help)\b/u;
/** What is to be remembered at a reminder's hour may hold an "and" of its own. */
const REMINDER_OF_WORDS = /\bremind(?:er)?\b.*\bto\b/iu;

const readAlone = (words: string, known: Known): WordsRead | null => {
  const read = plainQuestion(words, known);
  if (read !== null) return 'line' in read ? read : { outcome: read.outcome };
  const parsed = parseLine(words, known.allCommands ?? []);
  return isProblem(parsed) || wordCountOf(words) > 5 ? null : { line: words, isTyped: true };
};

const lineOf = (read: WordsRead | null): string => (read !== null && 'line' in read ? read.line : '');

interface Part {
  readonly words: string;
  readonly read: WordsRead;
}

/** Lines of a target and an hour. */
const OF_TARGET = /^(?:up|altitude|meridian|epoch|sun) (.+?)(?= [a-z]+:|$)/u;
const TAKES_HOUR = /^(?:up|altitude|compare|bright|moons|sidereal|pole|remind)\b/u;
const AT = / at:(?:"(?:[^"\\]|\\.)*"|\S+)/u;
const HOUR_ALONE = /^(?:at|around|about|by|@) \S+(?: \S+)?$/iu;
const FIGURE_ALONE =
  /^(?:also |then )?(?:the |its |it's |their )?(?:azimuth|altitude|height|hour angle|air ?mass|parallactic angle|constellation|declination|coordinates)\b/iu;
/** "when does it get dark": nothing that was named. */
const IMPERSONAL = /\bit(?:'s| is| will)?\b.*\b(?:dark\w*|light|late|cloudy|twilight|dusk|dawn|cold|wet)\b/iu;
const THEY = /\b(?:it|its|it's|them|their)\b/iu;

const hourIn = (words: string): string => words.trim().replace(/^(?:at|around|about|@) /iu, '');

/** "and at 01:00": the request before, for another hour. */
const atOtherHour = (words: string, line: string, known: Known): string | null => {
  if (!AT.test(line) || !TAKES_HOUR.test(line)) return null;
  const hour = hourIn(words);
  if (namesHour(hour, known.nowUtcMs)) return line.replace(AT, ` at:"${hour}"`);
  const target = OF_TARGET.exec(line)?.[1];
  if (target === undefined || !HOUR_ALONE.test(words)) return null;
  const [other] = AT.exec(lineOf(readAlone(`${target} ${words}`, known))) ?? [];
  return other === undefined ? null : line.replace(AT, other);
};

/** "and its azimuth": of the target of the request before, and at its hour where no other is said. */
const ofSameTarget = (words: string, line: string, known: Known): string | null => {
  const target = OF_TARGET.exec(line)?.[1];
  const isOfIt = FIGURE_ALONE.test(words) || (BEGINS.test(words) && THEY.test(words) && !IMPERSONAL.test(words));
  if (target === undefined || !isOfIt) return null;
  const named = words.replace(/\b(?:its|it's|their)\b/iu, `${target}'s`).replace(/\b(?:it|them)\b/iu, target);
  const found = lineOf(readAlone(named === words ? `${words} of ${target}` : named, known));
  if (found === '' || ONE_COMMAND.test(found)) return null;
  return TAKES_HOUR.test(found) && !/ (?:at|on):/u.test(found) ? `${found}${AT.exec(line)?.[0] ?? ''}` : found;
};

const FIGURE_OF_HOUR = / first:(?:hour-angle|parallactic-angle|airmass)\b/u;
/** "sidereal time at 21:00 and the hour angle of Polaris": at that hour too. */
const atSameHour = (words: string, before: string, known: Known): string | null => {
  const [hour] = AT.exec(before) ?? [];
  if (hour === undefined || !SAYS_ENOUGH.test(words)) return null;
  const found = lineOf(readAlone(words, known));
  return FIGURE_OF_HOUR.test(found) && !/ (?:at|on):/u.test(found) ? `${found}${hour}` : null;
};

/** What is left out of a request stands in the one before it. */
const afterLast = (words: string, last: Part, known: Known): Part | null => {
  const before = lineOf(last.read);
  const line =
    atOtherHour(words, before, known) ?? ofSameTarget(words, before, known) ?? atSameHour(words, before, known);
  return line === null ? null : { words, read: { line } };
};

const requestIn = (words: string, known: Known): Part | null => {
  if (words.length < 3 || NOT_WANTED.test(words) || !(BEGINS.test(words) || SAYS_ENOUGH.test(words))) return null;
  // "What a nice night, is Jupiter up": one request.
  if (talkIn(words)?.unless === null) return null;
  const read = readAlone(words, known);
  if (read === null || ('line' in read ? ONE_COMMAND.test(read.line) : false)) return null;
  // "I'm in York tonight, is Saturn up": where one stands is of the question.
  if (lineOf(read).startsWith('site ') && STANDS.test(words)) return null;
  return { words, read };
};

/** The text at its breaks: words and what stands between them, in turn. */
const atBreaks = (text: string): readonly { readonly words: string; readonly gap: string }[] => {
  const pieces: { words: string; gap: string }[] = [];
  let from = 0;
  let gap = '';
  for (const found of text.matchAll(BREAK)) {
    pieces.push({ words: text.slice(from, found.index), gap });
    gap = found[0];
    from = found.index + gap.length;
  }
  return [...pieces, { words: text.slice(from), gap }].filter(({ words }) => words.trim() !== '');
};

/** What a piece asks is worked out when it is asked for: most lines told come to one piece, of which nothing need be known. */
interface Piece {
  readonly words: string;
  readonly part: () => Part | null;
}

/** Whether words may ask something by themselves, or with what was asked before them. */
const mayAsk = (words: string, { nowUtcMs }: Known): boolean =>
  BEGINS.test(words) ||
  SAYS_ENOUGH.test(words) ||
  FIGURE_ALONE.test(words) ||
  HOUR_ALONE.test(words) ||
  namesHour(hourIn(words), nowUtcMs);

/** What words ask after another request; null where there is none before them, or where they go on with it. */
const askedAfter = (last: Piece, words: string, known: Known): Part | null => {
  const isOfReminder = REMINDER_OF_WORDS.test(last.words) && !BEGINS.test(words);
  const before = isOfReminder || !mayAsk(words, known) ? null : last.part();
  return before === null ? null : (afterLast(words, before, known) ?? requestIn(words, known));
};

/** The requests, each with as many of the pieces as make it; null where one of them is none by itself. */
const partsIn = (text: string, known: Known): readonly Part[] | null => {
  const asking = (words: string): Piece => ({ words, part: once(() => requestIn(words, known)) });
  const runs: Piece[] = [];
  for (const { words, gap } of atBreaks(text)) {
    const last = runs.at(-1);
    const part = last === undefined ? null : askedAfter(last, words, known);
    if (last === undefined) runs.push(asking(words));
    else if (part !== null) runs.push({ words, part: () => part });
    else runs[runs.length - 1] = asking(`${last.words}${gap}${words}`);
  }
  if (runs.length < 2) return null;
  const parts = runs.map(({ part }) => part()).filter((part) => part !== null);
  return parts.length < runs.length ? null : parts;
};

const SITE = / site:(?:"(?:[^"\\]|\\.)*"|\S+)/u;
/** Lines that are answered for a place. */
export const OF_A_PLACE =
  /^(?:up|altitude|compare|tonight|dark|moon|moons|ahead|sun|meridian|alignment|pole|entries|sidereal|remind)\b(?! (?:list|cancel))/u;

/** A place that one of them names is meant for all. */
const withSharedPlace = (parts: readonly Part[]): readonly Part[] => {
  const places = parts.flatMap(({ read }) => ('line' in read ? (SITE.exec(read.line) ?? []) : []));
  const [place] = places;
  if (place === undefined || places.some((other) => other !== place)) return parts;
  return parts.map((part) =>
    'line' in part.read && OF_A_PLACE.test(part.read.line) && !SITE.test(part.read.line)
      ? { ...part, read: { ...part.read, line: `${part.read.line}${place}` } }
      : part,
  );
};

/** What is said first aside, the answer is the same: of the dark, and of a culmination, which tells the height and the airmass. */
const sameAnswer = (line: string): string => {
  const plain = line.replace(' on:tonight', '');
  return /^dark\b/u.test(plain) ? plain.replace(/ (?:first|until):\S+/gu, '') : plain;
};
/** Two that come to the same are one request. */
const isRepeated = (parts: readonly Part[], whole: string): boolean =>
  (/ first:transit\b/u.test(whole) && parts.every(({ read }) => /^(?:up|altitude) /u.test(lineOf(read)))) ||
  new Set(parts.map(({ read }) => sameAnswer(lineOf(read)) || read)).size < parts.length;

/** The parts of a line that holds several requests; null where it is one. */
export const severalIn = (text: string, known: Known): readonly Part[] | null => {
  const plain = withSunMadePlain(mended(inEnglishNames(withPlainPosition(text), known), known));
  if (ONE_QUESTION.test(plain)) return null;
  const parts = partsIn(plain, known);
  if (parts === null || lookingAtSun(plain, known) !== null) return null;
  const whole = readAlone(plain, known);
  const isOfSun = whole !== null && /^sun\b/u.test(lineOf(whole));
  // By day one target after another is a way past the Sun, unless each is a question.
  if (isOfSun && !parts.every(({ words }) => BEGINS.test(words))) return null;
  if (whole !== null && (ONE_COMMAND.test(lineOf(whole)) || OF_A_PAIR.test(lineOf(whole)))) return null;
  const meant = withSharedPlace(parts);
  return isRepeated(meant, lineOf(whole)) ? null : meant;
};

export const severalRequests: WordsReader = {
  name: 'several requests',
  mendsCommands: true,
  read: async (deps, said) => {
    if (said.text.length > LINE_LIMIT) return null;
    const parts = severalIn(said.text, await knownFor(deps, said));
    return parts === null
      ? null
      : {
          parts: parts.slice(0, MOST_ANSWERED),
          left: parts.slice(MOST_ANSWERED).map(({ words }) => words),
        };
  },
};
