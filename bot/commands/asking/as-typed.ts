/**
 * Understands options as people type them, for every command alike: "up m42 saturday", "dark sydney", "altitude vega 9pm
 * 52.71,0.12", "tonight galaxies with binoculars", "site use fen". Which option takes what follows from the declaration.
 */
import { isNamed, resolveTarget } from '../../catalogue/index.js';
import { resolvePlace, withPlainPosition } from '../../places/index.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { UtcMs } from '../../sky/types.js';
import { isOfThatDate, namesHour, namesNight } from '../../times/index.js';
import type { Command, CompletionKind, OptionSpec, Deps } from '../core/command.js';
import { BARE_WORDS, bareOption } from '../core/grammar.js';
import { mendedOptions } from './spelling/known-words.js';
import { isOwnName } from './sentence/where.js';
import { askWhere, type Raw, type Typed } from './ask-where.js';
import { isPrivateWord, sameSiteName, savedSites } from './resolve-site.js';
import { withPlainDates } from './sentence/plain-dates.js';
import { withoutTrailing } from './trailing-words.js';

/** Options whose name people write as a word of the sentence: "with binoculars", "until 22:30". */
const SPOKEN_NAMES = ['with', 'until', 'above', 'brighter', 'sky', 'to', 'not', 'from', 'landed'] as const;
const FILLERS = /^(?:me|my|when|whenever|its|it's|is|it|the|a|please|again|up|on|high)$/iu;

/** "in march" is a month before it is a town. */
const MONTH = /^(?:january|february|march|april|may|june|july|august|september|october|november|december)$/iu;

const specOf = (command: Command, name: string): OptionSpec | undefined =>
  Object.hasOwn(command.options, name) ? command.options[name] : undefined;

const firstFree = (command: Command, raw: Raw, ...kinds: readonly CompletionKind[]): string | undefined =>
  Object.entries(command.options).find(
    ([name, { complete }]) => !raw.has(name) && complete !== undefined && kinds.includes(complete),
  )?.[0];

const fits = (spec: OptionSpec | undefined, word: string): boolean =>
  spec?.type === 'choice' && spec.schema.safeParse(word).success;

/** A choice that a word means and whose schema would not take any word at all. */
const choiceTaking = (command: Command, raw: Raw, word: string): string | undefined =>
  Object.entries(command.options).find(
    ([name, spec]) => !raw.has(name) && fits(spec, word) && !fits(spec, 'no such word'),
  )?.[0];

/** Moves "with binoculars", "until 22:30" and the like from the words to their options; gives back the words left. */
const takeSpoken = (command: Command, raw: Raw, text: string, nowUtcMs: UtcMs): string => {
  const names = SPOKEN_NAMES.filter((name) => specOf(command, name) !== undefined && !raw.has(name));
  const words = text.split(/\s+/u);
  const kept: string[] = [];
  for (let at = 0; at < words.length; at++) {
    const name = names.find((candidate) => candidate === words[at]?.toLowerCase());
    const value = words[at + 1];
    const isTime = name !== undefined && specOf(command, name)?.complete === 'time';
    if (name === undefined || value === undefined || raw.has(name) || (isTime && !namesHour(value, nowUtcMs)))
      kept.push(words[at] ?? '');
    else {
      const size = specOf(command, name)?.type === 'text' && !isTime ? words.length : at + 2;
      raw.set(name, words.slice(at + 1, size).join(' '));
      at = size - 1;
    }
  }
  return kept.join(' ');
};

/** Takes a leading or trailing word that only a choice of the command can mean: "galaxies", "fork". */
const takeChoices = (command: Command, raw: Raw, text: string): string => {
  const words = text.split(/\s+/u).filter((word) => word !== '');
  const taken = (word: string | undefined): boolean => {
    const name = word === undefined ? undefined : choiceTaking(command, raw, word);
    if (name !== undefined) raw.set(name, word);
    return name !== undefined;
  };
  const whole = words.length > 1 ? choiceTaking(command, raw, words.join(' ')) : undefined;
  if (whole !== undefined) {
    raw.set(whole, words.join(' '));
    return '';
  }
  while (words.length > 0 && taken(words[0])) words.shift();
  while (words.length > 0 && taken(words.at(-1))) words.pop();
  return words.join(' ');
};

/** Puts the night, hour and position from the end of the words into the options that take them; gives back the words left. */
const takeTrailing = ({ command, nowUtcMs }: Typed, raw: Raw, text: string, atLeastLeft: number): string => {
  const { head, night, hour, position } = withoutTrailing(text, atLeastLeft, nowUtcMs);
  const placeOption = firstFree(command, raw, 'site', 'place');
  const nightOption = firstFree(command, raw, 'date');
  const hourOption = firstFree(command, raw, 'time');
  const taken = [
    { words: night, by: nightOption ?? hourOption },
    { words: hour, by: hourOption },
    { words: position, by: placeOption },
  ];
  // What no option takes stays where it was, so that the answer says so.
  if (taken.some(({ words, by }) => words !== null && by === undefined)) return text;
  if (position !== null && placeOption !== undefined) raw.set(placeOption, position);
  const isOneInstant = night !== null && hour !== null && isOfThatDate(night, hour, nowUtcMs);
  const ofHour = nightOption === undefined || isOneInstant ? night : null;
  if (night !== null && nightOption !== undefined && !isOneInstant) raw.set(nightOption, night);
  const when = [ofHour, hour].filter((part) => part !== null).join(' ');
  if (when !== '' && hourOption !== undefined) raw.set(hourOption, when);
  return head;
};

const isTarget = (deps: Deps, text: string): boolean => isNamed(resolveTarget(deps.catalogue, text));

/** What is a target with a slip in it is no place; nor is a target's own name where a command asks for two of them. */
const mayBePlace = ({ deps, command }: Typed, text: string): boolean => {
  const found = resolveTarget(deps.catalogue, text);
  const targets = Object.values(command.options).filter(({ complete }) => complete === 'target');
  return isProblem(found) || (found.isSlip !== true && targets.length < 2);
};

/** "m42 cork", "vega 11pm from the hut": a saved site or a place at the end, when what is before it begins with a target. */
const takePlaceAfterTarget = async (typed: Typed, raw: Raw, text: string): Promise<string> => {
  const { deps, command, asker, nowUtcMs } = typed;
  const siteOption = firstFree(command, raw, 'site');
  const words = text.split(/\s+/u);
  if (siteOption === undefined || words.length < 2 || isTarget(deps, text)) return text;
  const saved = await savedSites(deps, asker);
  const names = [...saved.member, ...saved.club].map(({ name }) => name);
  for (let count = 1; count < words.length; count++) {
    const place = words
      .slice(count)
      .join(' ')
      .replace(/^(?:at|from|in|near)\s+(?:my\s+)?/iu, '');
    if (MONTH.test(place)) continue;
    const isPlace =
      names.some((name) => sameSiteName(name, place)) ||
      isPrivateWord(place) ||
      (/^\p{L}[\p{L}'’ .,-]{2,}$/u.test(place) && mayBePlace(typed, place) && isOwnName(deps.places(), place));
    const before = words.slice(0, count).join(' ');
    if (!isPlace || !isTarget(deps, withoutTrailing(before, 1, nowUtcMs).head)) continue;
    raw.set(siteOption, place);
    return isTarget(deps, before) ? before : takeTrailing(typed, raw, before, 1);
  }
  return text;
};

const isKnownPlace = (deps: Deps, text: string): boolean => {
  const found = resolvePlace(deps.places(), text);
  return !isProblem(found) || found.problem === 'ambiguous-place';
};

/** "add garden Norwich": the longest known place at the end, with at least a word before it for the name. */
const takePlaceAfterName = ({ deps, command }: Typed, raw: Raw, text: string): string => {
  const option = firstFree(command, raw, 'place');
  const words = text.split(/\s+/u);
  for (let count = 1; option !== undefined && count < words.length; count++) {
    const place = words
      .slice(count)
      .join(' ')
      .replace(/^(?:at|in|near)\s+/iu, '');
    if (!/^\p{L}/u.test(place) || !isKnownPlace(deps, place)) continue;
    raw.set(option, place);
    return words.slice(0, count).join(' ');
  }
  return text;
};

/** "sun" is the target that a reminder waits for, though "sunrise" begins so and Sunday is written so. */
const isWantedTarget = ({ deps, command }: Typed, raw: Raw, words: string): boolean =>
  firstFree(command, raw, 'target') !== undefined && isTarget(deps, words);

/** Takes all that an option of its own is for out of the words about a target or a name, which are left. */
const takeAround = (typed: Typed, raw: Raw, text: string): string => {
  const spoken = takeSpoken(typed.command, raw, text, typed.nowUtcMs);
  return isWantedTarget(typed, raw, spoken)
    ? spoken
    : takeTrailing(typed, raw, takeChoices(typed.command, raw, spoken), 0);
};

/** The action that a word means among the choices of an option; null where it means none. */
const actionNamed = (command: Command, option: string, word: string): string | null => {
  const spec = specOf(command, option);
  const meant = spec?.schema.safeParse(word);
  const action = meant?.success === true ? String(meant.data) : '';
  return spec?.choices?.includes(action.toLowerCase()) === true ? action : null;
};

/** An option that takes any word (a target, for remind) keeps the words, unless another option's choice means them. */
const isAnyWord = (typed: Typed, raw: Raw, option: string, text: string): boolean => {
  const [first = '', ...others] = text.split(/\s+/u);
  if (!fits(specOf(typed.command, option), text) || FILLERS.test(first)) return false;
  const mayBeChoice = others.length === 0 && !isWantedTarget(typed, raw, text);
  return !mayBeChoice || choiceTaking(typed.command, raw, text) === undefined;
};

/** "site swaffham": a place that is none of theirs is to be saved. */
const setPlace = ({ deps, command }: Typed, raw: Raw, words: string): boolean => {
  const option = firstFree(command, raw, 'place');
  if (option === undefined || !isKnownPlace(deps, words)) return false;
  raw.set(option, words);
  return true;
};

/** Commands whose first words are an action or a kind: `site use fen`, `gear dobsonian`, `remind sunrise`. */
const spreadAfterChoice = async (typed: Typed, raw: Raw, bare: string, text: string): Promise<void> => {
  const { command } = typed;
  const [first = '', ...others] = text.split(/\s+/u);
  const action = actionNamed(command, bare, first);
  if (action === null && isAnyWord(typed, raw, bare, text)) return;
  raw.delete(bare);
  if (action !== null) raw.set(bare, action);
  const said = action === null ? text.split(/\s+/u) : others;
  const words = action === null && FILLERS.test(first) ? said.filter((word) => !FILLERS.test(word)) : said;
  const named = takeAround(typed, raw, words.join(' '));
  const left = action === 'add' ? takePlaceAfterName(typed, raw, named) : named;
  if (left === '') return;
  const rest = firstFree(command, raw, 'target', 'own');
  const value = rest === undefined ? null : await ownValue(typed, rest, left, action !== null);
  if (rest !== undefined && value !== null) raw.set(rest, value);
  else if (action !== null || !setPlace(typed, raw, left)) raw.set(bare, text);
};

/**
 * What words mean for an option with suggestions of the command's own: the only suggestion there is ("network" →
 * "network-bridge"), else the words themselves; null when nothing said so far makes them likely.
 */
const ownValue = async (
  { deps, command, asker }: Typed,
  option: string,
  words: string,
  isExpected: boolean,
): Promise<string | null> => {
  if (specOf(command, option)?.complete !== 'own') return words;
  const offered = (await command.completeOwn?.(deps, option, words, asker)) ?? [];
  if (offered.length === 1 && !isExpected) return offered[0]?.value ?? words;
  return isExpected || offered.length > 0 || isPrivateWord(words) ? words : null;
};

/** Commands whose first words are a target: `up m42 saturday`. */
const spreadAfterTarget = async (typed: Typed, raw: Raw, bare: string, text: string): Promise<void> => {
  if (isTarget(typed.deps, text)) return;
  const head = takeTrailing(typed, raw, takeSpoken(typed.command, raw, text, typed.nowUtcMs), 1);
  raw.set(bare, await takePlaceAfterTarget(typed, raw, head));
};

/** "dark 28/11", "sidereal 2200": a date that can be read in one way alone, and an hour of the clock. */
const inFigures = (text: string, takesHour: boolean): string => {
  const figures = /^(\d{2})(\d{2})$/u.exec(text.trim());
  const dated = withPlainDates(figures === null || takesHour ? text : text.replace(/^\s*(\d{2})/u, '$1/'), null);
  if (figures !== null && takesHour && Number(figures[1]) < 24) return `${figures[1] ?? ''}:${figures[2] ?? ''}`;
  return dated.note === null || !takesHour ? dated.text : text;
};

/** Commands whose first words are a place, a night or an hour: `dark sydney`, `tonight galaxies cork`. */
const spreadPlace = (typed: Typed, raw: Raw, bare: string, words: string): void => {
  const { command, deps, nowUtcMs } = typed;
  raw.delete(bare);
  const text = inFigures(words, specOf(command, bare)?.complete !== 'date');
  const spoken = takeSpoken(command, raw, text, nowUtcMs);
  const left = takeTrailing(typed, raw, spoken, 0);
  // "Cape Town" is no town sky at a cape.
  const head = /\s/u.test(left) && isKnownPlace(deps, left) ? left : takeChoices(command, raw, left);
  // The rest is a place, where it does not begin with the night or the hour ("tonight cork").
  const [first = '', ...others] = head.split(/\s+/u);
  const isNight = namesNight(first, nowUtcMs);
  const option = firstFree(command, raw, ...(isNight ? (['date', 'time'] as const) : (['time'] as const)));
  const takesFirst = option !== undefined && (isNight || namesHour(first, nowUtcMs));
  if (takesFirst) raw.set(option, first);
  const place = (takesFirst ? others.join(' ') : head).replace(/^(?:at|from|in|near|for)\s+/iu, '');
  if (place !== '') raw.set(firstFree(command, raw, 'site') ?? bare, place);
};

const PLACE_OR_TIME: readonly (CompletionKind | undefined)[] = ['site', 'date', 'time'];

const spreadBare = async (typed: Typed, raw: Raw, bare: string, text: string): Promise<void> => {
  const spec = specOf(typed.command, bare);
  if (spec?.choices !== undefined) return spreadAfterChoice(typed, raw, bare, text);
  if (spec?.complete === 'target') return spreadAfterTarget(typed, raw, bare, text);
  if (PLACE_OR_TIME.includes(spec?.complete)) spreadPlace(typed, raw, bare, text);
};

/** Where names are given (a site's), words are as they were typed; so is the whole name of a target. */
const withoutSlips = ({ deps, command }: Typed, text: string): string => {
  const givesNames = Object.values(command.options).some(({ complete }) => complete === 'place');
  return givesNames || isTarget(deps, text) ? text : mendedOptions(text, deps);
};

/** The options as meant, or the question that has to be asked first. What was given by name is never changed. */
export const asTyped = async (
  deps: Deps,
  command: Command,
  given: ReadonlyMap<string, unknown>,
  by: Pick<Typed, 'asker' | 'nowUtcMs' | 'markPersonal'>,
): Promise<ReadonlyMap<string, unknown> | Problem> => {
  if (command.freeText === true) return given;
  const typed: Typed = { deps, command, ...by };
  const raw: Raw = new Map(given);
  const bare = bareOption(command);
  const named = bare !== undefined && raw.has(BARE_WORDS) ? raw.get(bare) : undefined;
  const text = bare === undefined ? undefined : (raw.get(BARE_WORDS) ?? raw.get(bare));
  if (raw.delete(BARE_WORDS) && bare !== undefined) raw.delete(bare);
  if (bare !== undefined && typeof text === 'string' && text.trim() !== '')
    await spreadBare(typed, raw, bare, withoutSlips(typed, withPlainPosition(text)));
  if (bare !== undefined && named !== undefined) {
    if (raw.has(bare)) return problem('option-twice', `${bare}: is given twice. Give it once.`);
    raw.set(bare, named);
  }
  return (await askWhere(typed, raw)) ?? raw;
};
