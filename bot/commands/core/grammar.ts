/** The text grammar of Matrix, the console and one-shot use: `name value name:value name:"value with spaces"`. */
import { nearestName } from '../../ground/edit-distance.js';
import { problem, type Problem } from '../../ground/problem.js';
import { tidy, withoutUnseen } from '../../ground/tidy.js';
import type { Command } from './command.js';
import { tableOf } from '../../ground/table-of.js';

export interface ParsedLine {
  readonly command: Command;
  /** Option values as typed, by option name. */
  readonly raw: ReadonlyMap<string, string>;
}

export const LINE_LIMIT = 4000;

/** And of what is pasted: a Matrix event holds no more. */
export const PASTE_LIMIT = 65_536;

/** Where bare words are kept whose option is given by name as well: "tonight saturday site:Cork" means a night by its bare word. */
export const BARE_WORDS = '';

/** The option that bare words fill. */
export const bareOption = (command: Command): string | undefined =>
  command.bare ?? Object.entries(command.options).find(([, spec]) => spec.required)?.[0];

/** Other words people write for an option, best first. */
const OTHER_NAMES = tableOf<readonly string[]>({
  to: ['target'],
  object: ['target'],
  in: ['site'],
  place: ['site', 'position'],
  where: ['site', 'position'],
  near: ['site'],
  when: ['at', 'on'],
  time: ['at'],
  hour: ['at'],
  at: ['on'],
  on: ['at'],
  date: ['on', 'at'],
  night: ['on'],
  type: ['kind'],
  telescope: ['with'],
});

/** The command's own option that a name stands for; the name itself where there is none. */
const optionMeant = (key: string, command: Command, given: ReadonlyMap<string, string>): string => {
  if (Object.hasOwn(command.options, key) || !OTHER_NAMES.has(key)) return key;
  return OTHER_NAMES.get(key)?.find((name) => Object.hasOwn(command.options, name) && !given.has(name)) ?? key;
};

export const unknownCommand = (word: string, commands: readonly Command[], line = word): Problem => {
  const close = nearestName(
    word.toLowerCase(),
    commands.map(({ name }) => name),
  );
  return problem(
    'unknown-command',
    close === undefined
      ? `I do not know "${tidy(line, 40)}". Type a target such as M 42, or tonight, or help for the list.`
      : `There is no command "${tidy(word, 30)}". Did you mean ${close}? Type help for the list.`,
  );
};

/**
 * How the bot is spoken to by name, on whatever platform ("!pier tonight", "@Pierhand tonight", "pierhand, tonight"), and the console's
 * prompt, copied with the line behind it.
 */
const ADDRESS = /^\s*(?:[!/@]pier(?:hand)?(?=[\s,:]|$)|pierhand(?=\s*[,:>]))[\s,:>]*/iu;

/** The line without the name it is addressed to; the name alone asks for help. */
export const withoutAddress = (line: string): string => {
  const said = line.replace(ADDRESS, '');
  return said === '' && line.trim() !== '' ? 'help' : said;
};

/**
 * Reads one line. Bare words before the first `name:` fill the command's bare option; a value runs to the next
 * `name:` of this command, or between double quotes. Only the command's own option names open a value, so that
 * "at 22:30" and "16:41:42 +36:28" stay values; another word before a colon that looks like an option is refused.
 */
export const parseLine = (line: string, commands: readonly Command[]): ParsedLine | Problem => {
  const said = withoutAddress(withoutUnseen(line.slice(0, PASTE_LIMIT)).trim());
  // Before a command stands what one is used to from elsewhere.
  const clean = said.replace(/^[/!]\s*/u, '');
  const first = /^\S+/u.exec(clean)?.[0];
  if (first === undefined) return problem('empty-line', 'Nothing was asked. Type help for the list of commands.');
  const command = commands.find(({ name }) => name === first.toLowerCase());
  if (command === undefined) return unknownCommand(first, commands, clean);
  const rest = clean.slice(first.length);
  if (command.freeText === true) return readFreeText(command, rest);
  if (line.length > LINE_LIMIT) {
    return problem(
      'line-too-long',
      `That line has ${line.length} characters; at most ${LINE_LIMIT} are read. Please send a shorter one.`,
    );
  }
  return readOptions(command, rest.replace(/[“”]/gu, '"'));
};

const unknownOption = (command: Command, typed: string, key: string): Problem => {
  const guess = nearestName(key, Object.keys(command.options));
  const meant = guess === undefined ? '' : ` Did you mean ${guess}:?`;
  return problem(
    'unknown-option',
    `${command.name} has no option "${tidy(typed, 30)}:".${meant} ${optionsOf(command)}`,
  );
};

/** What follows a command's name, where it takes options. */
const readOptions = (command: Command, rest: string): ParsedLine | Problem => {
  const raw = new Map<string, string>();
  const bare = bareOption(command);
  let open: string | undefined = bare;
  let words: string[] = [];
  let opened = false;
  let bareIsSpoken = false;

  const close = (): Problem | undefined => {
    if (words.length === 0 && !opened) return undefined;
    const value = words.join(' ').trim();
    words = [];
    if (open === undefined) {
      return value === ''
        ? undefined
        : problem('unexpected-words', `"${tidy(value, 40)}" has no option name before it. ${optionsOf(command)}`);
    }
    if (value === '')
      return problem('empty-option', `${open}: has no value. Write it as ${open}:value, or leave it out.`);
    const spoken = open === bare ? raw.get(open) : undefined;
    if (spoken !== undefined && bareIsSpoken) {
      bareIsSpoken = false;
      raw.set(BARE_WORDS, spoken);
    } else if (raw.has(open)) return problem('option-twice', `${open}: is given twice. Give it once.`);
    if (open === bare && !opened) bareIsSpoken = true;
    raw.set(open, value);
    return undefined;
  };

  const token = /\s*(?:([A-Za-z_][\w-]*):(?!\/\/)|"((?:[^"\\]|\\.)*)"(?=\s|$)|(\S+))/guy;
  for (let match = token.exec(rest); match !== null; match = token.exec(rest)) {
    const [, name, quoted, word] = match;
    if (name !== undefined) {
      const key = optionMeant(name.toLowerCase(), command, raw);
      if (Object.hasOwn(command.options, key)) {
        const unfit = close();
        if (unfit !== undefined) return unfit;
        open = key;
        opened = true;
      } else if (key.length > 1 && !/^\s/u.test(rest.slice(token.lastIndex))) {
        return unknownOption(command, name, key);
      } else {
        words.push(`${name}:`);
      }
    } else if (quoted !== undefined) {
      words.push(quoted.replace(/\\(.)/gu, '$1'));
    } else if (word?.startsWith('"') === true) {
      // Elsewhere in a word a double quote is a seconds mark: +38°47'01".
      return problem('unclosed-quote', 'A double quote is opened and never closed. Close it, or leave it out.');
    } else {
      words.push(word ?? '');
    }
  }
  return close() ?? { command, raw };
};

/** One token of free text, and the option it names where it is one by its form. */
interface FreeToken {
  /** With what parts it from the token before. */
  readonly whole: string;
  readonly key: string | null;
  readonly value: string;
}

const freeTokensOf = (command: Command, bare: string | undefined, rest: string): readonly FreeToken[] =>
  [...rest.matchAll(/\s*(?:([A-Za-z][A-Za-z-]*):(?:"([^"]*)"(?!\S)|(\S+))|(\S+))/gu)].map(
    ([whole, name, quoted, value]) => {
      const key = name?.toLowerCase();
      const isOption = key !== undefined && key !== bare && Object.hasOwn(command.options, key);
      return { whole, key: isOption ? key : null, value: (quoted ?? value ?? '').trim() };
    },
  );

/**
 * For commands that take pasted text: everything is text but `name:value` of the command's own options, `name:"…"` included, before
 * or after the text; in the midst of it ("12:04 walk:abc lost") it belongs to the text.
 */
const readFreeText = (command: Command, rest: string): ParsedLine | Problem => {
  const raw = new Map<string, string>();
  const bare = bareOption(command);
  const tokens = freeTokensOf(command, bare, rest);
  const isText = tokens.map(({ key }) => key === null);
  const [firstText, lastText] = [isText.indexOf(true), isText.lastIndexOf(true)];
  let words = '';
  for (const [at, { whole, key, value }] of tokens.entries()) {
    if (key === null || (bare !== undefined && at > firstText && at < lastText)) {
      // Lines stay lines: in a log, order and beginnings tell much.
      const gap = whole.slice(0, whole.length - whole.trimStart().length).includes('\n') ? '\n' : ' ';
      words += `${words === '' ? '' : gap}${whole.trim()}`;
      continue;
    }
    if (raw.has(key)) return problem('option-twice', `${key}: is given twice. Give it once.`);
    raw.set(key, value);
  }
  if (bare !== undefined && words !== '')
    raw.set(bare, words.replace(new RegExp(`^${bare}:\\s*`, 'iu'), '').replace(/^"([^"]*)"$/u, '$1'));
  return { command, raw };
};

const optionsOf = (command: Command): string => {
  const names = Object.keys(command.options);
  return names.length === 0
    ? `${command.name} takes no options.`
    : `Its options are ${names.map((name) => `${name}:`).join(' ')}`;
};
