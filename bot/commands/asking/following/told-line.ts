/** A command line as its command and values, and back: what a follow-up changes and what it leaves. */
import { isProblem } from '../../../ground/problem.js';
import { isOfThatDate } from '../../../times/index.js';
import type { UtcMs } from '../../../sky/types.js';
import type { Command } from '../../core/command.js';
import { bareOption, parseLine } from '../../core/grammar.js';
import { commandLine } from '../question-parts.js';
import { takeWhen } from '../sentence/when.js';
import { sentenceOf } from '../sentence/words.js';

export interface ToldLine {
  readonly command: Command;
  readonly values: Readonly<Record<string, string>>;
}

/** @returns null where it is no line of a command */
export const toldLine = (line: string, commands: readonly Command[]): ToldLine | null => {
  const parsed = parseLine(line, commands);
  return isProblem(parsed) ? null : { command: parsed.command, values: Object.fromEntries(parsed.raw) };
};

/** The bare option stands first, by its words alone where the grammar reads them back so. */
export const lineOf = ({ command, values }: ToldLine): string => {
  const bare = command.options['target'] === undefined ? undefined : bareOption(command);
  const { [bare ?? '']: first = '', ...named } = values;
  const isPlain = !/[:"“”\\]/u.test(first);
  return commandLine(command.name, isPlain ? first : '', isPlain ? named : { ...values });
};

export const takes = ({ command }: Pick<ToldLine, 'command'>, option: string): boolean =>
  Object.hasOwn(command.options, option);

/** With which glass the Sun is looked at is never a line of mine to answer. */
export const isOfSun = ({ command, values }: ToldLine): boolean =>
  command.name === 'sun' || /^(?:the )?sun$/iu.test(values['target'] ?? values['about'] ?? '');

/** What a new line keeps of the one before. */
const INHERITED = ['site', 'with', 'sky'] as const;

/** The new line with what it does not say itself, and has a use for, taken from the one before. */
export const inherited = (before: ToldLine, asked: ToldLine): ToldLine => {
  const kept = INHERITED.flatMap((name) => {
    const value = before.values[name];
    return value === undefined || asked.values[name] !== undefined || !takes(asked, name)
      ? []
      : [[name, value] as const];
  });
  return { ...asked, values: { ...asked.values, ...Object.fromEntries(kept) } };
};

/** What a small question changes: a figure of the same target, site and night is asked for. */
const SMALL: readonly string[] = ['first', 'above', 'at', 'facing'];

/** Whether a line asks `up` of the same as the one before, and of a figure or an hour alone. */
export const isSmallAfter = (before: ToldLine, asked: ToldLine): boolean => {
  if (before.command.name !== 'up' || asked.command.name !== 'up') return false;
  const names = [...Object.keys(before.values), ...Object.keys(asked.values)];
  return (
    names.every((name) => SMALL.includes(name) || isSameValue(before.values[name], asked.values[name])) &&
    ['first', 'above', 'at'].some((name) => asked.values[name] !== undefined)
  );
};
/** "Tonight" is what is meant where no night is said. */
const isSameValue = (one: string | undefined, other: string | undefined): boolean =>
  (one ?? 'tonight').toLowerCase() === (other ?? 'tonight').toLowerCase();

/** Which night and which hour, as typed; null: none was said. */
export interface Times {
  readonly night: string | null;
  readonly hour: string | null;
}

const ISO = /^(\d{4}-\d\d-\d\d)[T ](\d\d:\d\d)$/u;

const timesIn = (text: string, nowUtcMs: UtcMs): Times => {
  const [, date, clock] = ISO.exec(text) ?? [];
  if (date !== undefined && clock !== undefined) return { night: date, hour: clock };
  const sentence = sentenceOf(text);
  const { night, hour } = takeWhen(sentence, nowUtcMs);
  return sentence.taken.every((used) => used) ? { night, hour } : { night: null, hour: text };
};

/** Where a line has a night of its own, its hour is of that night. */
export const timesOf = ({ values }: ToldLine, nowUtcMs: UtcMs): Times => {
  const { on = null, at = null } = values;
  if (at === null) return { night: on, hour: null };
  const { night, hour } = timesIn(at, nowUtcMs);
  return { night: night ?? on, hour };
};

/** "now" and "tonight" are what is meant where nothing is said. */
const said = (word: string | null): string | null =>
  word === null || /^(?:now|right now|tonight|today|this evening)$/u.test(word) ? null : word;

/** The line for that night and hour; null where the command has no use for them. */
export const withTimes = (told: ToldLine, times: Times, nowUtcMs: UtcMs): ToldLine | null => {
  const { on: _on, at: _at, ...rest } = told.values;
  const night = said(times.night);
  const hour = said(times.hour);
  if (takes(told, 'on') && takes(told, 'at')) {
    const isOneInstant = night !== null && hour !== null && isOfThatDate(night, hour, nowUtcMs);
    if (isOneInstant) return { ...told, values: { ...rest, at: `${night} ${hour}` } };
    return {
      ...told,
      values: { ...rest, ...(night === null ? {} : { on: night }), ...(hour === null ? {} : { at: hour }) },
    };
  }
  if (takes(told, 'on')) {
    if (hour !== null) return null;
    return { ...told, values: night === null ? rest : { ...rest, on: night } };
  }
  if (!takes(told, 'at')) return night === null && hour === null ? told : null;
  const at = [night, hour].filter((part) => part !== null).join(' ');
  return { ...told, values: at === '' ? rest : { ...rest, at } };
};

/** What is told first of an hour as well: whether it is up then, and its figures. */
const OF_AN_HOUR =
  /^(?:seen|up|down|late|early|hour-angle|parallactic-angle|airmass|moonlight|find|reaches|low|high)$/u;

/** "At 4?", after its best hour or its setting: how it stands at that hour. */
export const withoutOtherFirst = (told: ToldLine): ToldLine => {
  const { first, ...values } = told.values;
  return told.command.name !== 'up' || first === undefined || OF_AN_HOUR.test(first) ? told : { ...told, values };
};
