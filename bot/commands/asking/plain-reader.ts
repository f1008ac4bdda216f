/** Asks the sentence reader about words that are no command, with the names of the sites that the asker may mean. */
import { onceOf } from '../../ground/once.js';
import type { Deps, SaidWords, WordsReader } from '../core/command.js';
import { isProblem } from '../../ground/problem.js';
import { LINE_LIMIT } from '../core/grammar.js';
import { carried } from './following/carried.js';
import { keepLastAsked, lastAsked, lastPlace } from './following/last-asked.js';
import { keepTold, tellsOfOwn } from './following/told-here.js';
import type { PlainReading } from './not-known-here.js';
import { plainQuestion } from './plain-question.js';
import { commandLine } from './question-parts.js';
import { savedSites, usualSpot } from './resolve-site.js';
import type { Known } from './sentence/asked.js';
import { dayAt } from './sentence/day-at.js';
import { kitToldIn } from './sentence/told-kit.js';

const lookedUp = async (deps: Deps, { asker, privacy, nowUtcMs }: SaidWords): Promise<Known> => {
  const saved = await savedSites({ store: privacy.unmarked }, asker);
  const spot = usualSpot(saved, deps, asker);
  return {
    ...deps,
    allCommands: deps.commands,
    siteNames: [...saved.member, ...saved.club].map(({ name }) => name),
    nowUtcMs,
    day: spot === null ? null : dayAt(spot, nowUtcMs),
    usual: spot,
  };
};

/** What is known of the asker of these words, looked up once for all the readers. */
const knownOf = onceOf((_shared: object): { known?: Promise<Known> } => ({}));

/** What the sentence reader has to know of the one who asks; a member's own sites mark nothing. */
export const knownFor = (deps: Deps, said: SaidWords): Promise<Known> =>
  (knownOf(said.shared).known ??= lookedUp(deps, said));

/** Answers that hang on the aperture, where none is said; what moves through no telescope is none. */
const OF_KIT =
  /^(?:up (?!moon\b|sun\b)|tonight\b)(?!.* (?:with:|first:(?:split|aperture|magnitude|size|kind|constellation|names|season|distance)))/u;

/** With the telescope that was told a while ago, and said so. */
const withKitTold = <Read extends { readonly line: string; readonly note?: string }>(
  read: Read,
  { store }: Deps,
  { asker, nowUtcMs }: SaidWords,
): Read => {
  const kit = OF_KIT.test(read.line) ? lastAsked(store, asker, nowUtcMs, 'kit') : null;
  // What was told to be their own the command takes itself.
  if (kit === null || lastAsked(store, asker, nowUtcMs, 'scope') !== null) return read;
  const note = `For the ${kit.replace(/^(?:an?|the|my|our) /iu, '')} you told; say with: for another.`;
  return {
    ...read,
    line: `${read.line} ${commandLine('', '', { with: kit }).trim()}`,
    note: read.note === undefined ? note : `${read.note} ${note}`,
  };
};

/** For the night and the place that the talk is of, and said so. */
const withTalkBefore = <Read extends { readonly line: string; readonly note?: string }>(
  read: Read,
  known: Known,
  { store }: Deps,
  { asker, nowUtcMs, text }: SaidWords,
): Read => {
  const talk = { last: lastAsked(store, asker, nowUtcMs), place: lastPlace(store, asker, nowUtcMs) };
  const found = carried(read.line, text, talk, known);
  if (found === null) return read;
  return { ...read, line: found.line, note: read.note === undefined ? found.note : `${read.note} ${found.note}` };
};

/** That an open tube may not stand in the Sun is a warning of it as well. */
const OF_OPEN_TUBE = /\bwhile the Sun is up an uncapped\b/u;

/** What a topic goes on to may be followed: "and with an 8 inch" after whether binoculars show the rings. */
const keepTopic = (read: PlainReading, { store }: Deps, { asker, nowUtcMs }: SaidWords): void => {
  if (read !== null && 'outcome' in read && isProblem(read.outcome) && OF_OPEN_TUBE.test(read.outcome.message))
    keepLastAsked(store, asker, read.outcome.message, nowUtcMs, 'sun');
  if (read === null || !('outcome' in read) || read.isTopic !== true) return;
  const next = read.outcome.choices?.find(({ run }) => /^up \S/u.test(run));
  if (next !== undefined) keepLastAsked(store, asker, next.run, nowUtcMs);
};

const OF_GEAR = /^(?:gear|tonight|up|site)\b/u;
/** What is no telescope's aperture. */
const OF_PARTS = /\b(?:lens\w*|eye ?pieces?|camera|focal|finder\w*|barlow|guide ?scope|cable|screw|adapter)\b/iu;

/** "I have an 8 inch", "my scope is a 10 inch dob", "under a dark sky": for all that is asked this evening. */
const keepOwn = (line: string, { store }: Deps, said: SaidWords): void => {
  if (!OF_GEAR.test(line) || !tellsOfOwn(said.text)) return;
  const [, quoted, bare] = / with:(?:"([^"]+)"|(\S+))/u.exec(line) ?? [];
  const kit = quoted ?? bare ?? (OF_PARTS.test(said.text) ? null : kitToldIn(said.text));
  keepTold(store, said, { kit, sky: / sky:(\w+)/u.exec(line)?.[1] });
};

/** "How faint can my 10 inch go": answered by figures alone, it tells of the telescope all the same. */
const keepOfFigures = (read: PlainReading, { store }: Deps, said: SaidWords): void => {
  if (read === null || 'line' in read || isProblem(read.outcome) || !tellsOfOwn(said.text)) return;
  const kit = OF_PARTS.test(said.text) ? null : kitToldIn(said.text);
  if (kit !== null && kit !== 'binoculars') keepTold(store, said, { kit });
};

export const plainReader: WordsReader = {
  name: 'a plain question',
  mendsCommands: true,
  read: async (deps, said) => {
    const known = await knownFor(deps, said);
    const read = said.text.length > LINE_LIMIT ? null : plainQuestion(said.text, known);
    if (read !== null && 'line' in read) {
      keepOwn(read.line, deps, said);
      return withKitTold(withTalkBefore(read, known, deps, said), deps, said);
    }
    keepTopic(read, deps, said);
    keepOfFigures(read, deps, said);
    return read;
  },
};
