/** What a pane of the page sends, as a question to run: a typed line, a pressed choice, or a filled form; each may bring a file. */
import type { Asker, Command, Deps } from '../../commands/core/command.js';
import { runCommand, runLine, type Ask } from '../../commands/core/dispatch.js';
import { parseLine, PASTE_LIMIT } from '../../commands/core/grammar.js';
import { isMemberFile, type MemberFile } from '../../ground/member-file.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import { tidy } from '../../ground/tidy.js';
import type { Outcome } from '../../reply/reply.js';
import { MEMBERS, memberNamed } from './members.js';
import { formOf } from './write-message.js';

export interface AskedQuestion {
  /** How the question reads in the channel. */
  readonly text: string;
  readonly run: (ask: Ask) => Promise<Outcome>;
  /** A file comes with it, which may take long to read. */
  readonly bringsFile: boolean;
}

const fileSent = (value: ReturnType<FormData['get']>): MemberFile | undefined => {
  if (value === null || typeof value === 'string' || value.size === 0) return undefined;
  return {
    name: tidy(value.name, 80),
    sizeBytes: value.size,
    load: async () => new Uint8Array(await value.arrayBuffer()),
  };
};

const fileOption = ({ options }: Command): string | undefined =>
  Object.entries(options).find(([, { type }]) => type === 'file')?.[0];

/** Members by name become ids; a file goes where the command takes one. */
const valuesFor =
  (asker: Asker, file: MemberFile | undefined) =>
  (command: Command, raw: ReadonlyMap<string, string>): ReadonlyMap<string, unknown> | Problem => {
    const values = new Map<string, unknown>(raw);
    for (const [name, value] of raw) {
      if (command.options[name]?.type !== 'member') continue;
      const named = memberNamed(value, asker);
      if (named === undefined) {
        const names = [...MEMBERS.values()].map(({ displayName }) => displayName).join(' and ');
        return problem('unknown-member', `There is no "${tidy(value, 40)}" here, only ${names}.`);
      }
      values.set(name, named.memberId);
    }
    const option = file === undefined ? undefined : fileOption(command);
    if (option !== undefined) values.set(option, file);
    return values;
  };

const OLD_FORM = problem('old-form', 'That form is from an older version of me. Please ask again.');

/** A form's fields by their options, and what has none joined into the form's own. */
const formQuestion = (deps: Deps, sent: FormData, run: string, name: string): AskedQuestion => {
  const form = formOf(deps.commands, run, name);
  const parsed = parseLine(run, deps.commands);
  if (form === undefined || isProblem(parsed)) return { text: run, run: async () => OLD_FORM, bringsFile: false };
  const raw = new Map<string, unknown>(parsed.raw);
  const joined: string[] = [];
  const said: string[] = [];
  for (const { id, option, kind } of form.fields) {
    const value = sent.get(`field-${id}`);
    if (kind === 'file') {
      const file = fileSent(value);
      if (file === undefined || option === undefined) continue;
      raw.set(option, file);
      said.push(file.name);
    } else if (typeof value === 'string' && value.trim() !== '') {
      said.push(value.trim());
      if (option === undefined) joined.push(`${id} ${value.trim()}`);
      else raw.set(option, value.trim());
    }
  }
  if (form.into !== undefined && joined.length > 0) raw.set(form.into, joined.join('; '));
  return {
    text: [form.title, ...said].join('\n'),
    run: (ask) => runCommand(deps, parsed.command, raw, ask),
    bringsFile: [...raw.values()].some(isMemberFile),
  };
};

const stringIn = (sent: FormData, name: string): string => {
  const value = sent.get(name);
  return typeof value === 'string' ? value.slice(0, PASTE_LIMIT) : '';
};

/** A file alone, or with words that are no command, is for the connection walk. */
const lineFor = (deps: Deps, text: string, file: MemberFile | undefined): string => {
  if (file === undefined) return text;
  const parsed = parseLine(text, deps.commands);
  return isProblem(parsed) ? `triage ${text}`.trim() : text;
};

/** Null where nothing was asked. */
export const readQuestion = (deps: Deps, sent: FormData, asker: Asker): AskedQuestion | null => {
  const run = stringIn(sent, 'run');
  const form = stringIn(sent, 'form');
  if (form !== '') return formQuestion(deps, sent, run, form);
  const text = run === '' ? stringIn(sent, 'text').trim() : run;
  const file = fileSent(sent.get('file'));
  if (text === '' && file === undefined) return null;
  const label = stringIn(sent, 'label');
  const words = label === '' ? text : label;
  return {
    text: [words, file?.name ?? ''].filter((part) => part !== '').join('\n'),
    run: (ask) => runLine(deps, lineFor(deps, text, file), { ...ask, valuesOf: valuesFor(asker, file) }),
    bringsFile: file !== undefined,
  };
};
