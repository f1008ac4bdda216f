/** From what a platform received to an Outcome: checks the options against the one declaration, runs, and lets nothing escape. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { Outcome } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import { StoreError } from '../../store/store.js';
import { asTyped } from '../asking/as-typed.js';
import type { Asker, Command, OptionSpec } from './command.js';
import type { Deps } from './deps.js';
import { plainQuestion } from '../asking/plain-question.js';
import { parseLine, type ParsedLine } from './grammar.js';

/** Told of errors that are ours, never the member's; the member gets a short apology. */
export type ErrorSink = (error: unknown, commandName: string) => void;

const expectation = (spec: OptionSpec): string => {
  switch (spec.type) {
    case 'number':
      return `a number from ${spec.min} to ${spec.max}`;
    case 'integer':
      return `a whole number from ${spec.min} to ${spec.max}`;
    case 'choice':
      return `one of ${spec.choices?.join(', ')}`;
    case 'flag':
      return 'yes or no';
    case 'member':
      return 'a member';
    case 'file':
      return 'a file or picture sent along with the question';
    case 'text':
      return `1 to ${spec.maxLength} characters`;
  }
};

/** Checks raw option values (strings from text, typed values from Discord) against a command's declaration. */
export const checkOptions = (
  command: Command,
  raw: ReadonlyMap<string, unknown>,
): { readonly values: Readonly<Record<string, unknown>> } | Problem => {
  const values: Record<string, unknown> = Object.create(null) as Record<string, unknown>;
  for (const name of raw.keys()) {
    if (!Object.hasOwn(command.options, name))
      return problem('unknown-option', `${command.name} has no option "${tidy(name, 30)}:".`);
  }
  for (const [name, spec] of Object.entries(command.options)) {
    const value = raw.get(name);
    if (value === undefined) {
      if (spec.required)
        return problem(
          'missing-option',
          `${command.name} needs ${name}: ${spec.description}. For example: ${command.examples[0]}`,
        );
      continue;
    }
    const checked = spec.schema.safeParse(value);
    if (!checked.success)
      return problem(
        'bad-option',
        `${name}: "${tidy(typeof value === 'string' ? value : (JSON.stringify(value) ?? ''), 40)}" does not fit; it takes ${expectation(spec)}.`,
      );
    values[name] = checked.data;
  }
  return { values };
};

/** Runs one command. Never rejects: what goes wrong inside becomes a Problem and goes to `onError`. */
export const runCommand = async (
  deps: Deps,
  command: Command,
  raw: ReadonlyMap<string, unknown>,
  asker: Asker,
  nowUtcMs: UtcMs,
  onError: ErrorSink,
): Promise<Outcome> => {
  if (command.access === 'manager' && !asker.isManager) {
    return problem('not-allowed', `${command.name} is for those who may change the club's settings here.`);
  }
  try {
    const meant = await asTyped(deps, command, raw, asker, nowUtcMs);
    if (isProblem(meant)) return meant;
    const checked = checkOptions(command, meant);
    if (isProblem(checked)) return checked;
    return await command.run(deps, { options: checked.values, asker, nowUtcMs });
  } catch (error) {
    // A full list is the member's to clear, not a fault.
    if (!(error instanceof StoreError && error.code === 'store-limit')) onError(error, command.name);
    if (error instanceof StoreError) return problem(error.code, error.message);
    return problem(
      'internal',
      `Sorry, ${command.name} failed through a fault of mine. It is in the log; please try again or ask a helper.`,
    );
  }
};

/** A line as one command with its options; words that are no command are read as a plain question first. */
export const readLine = (deps: Deps, line: string): ParsedLine | { readonly outcome: Outcome } => {
  const parsed = parseLine(line, deps.commands);
  if (!isProblem(parsed)) return parsed;
  const reading = ['unknown-command', 'unexpected-words'].includes(parsed.problem) ? plainQuestion(line, deps) : null;
  if (reading === null) return { outcome: parsed };
  if ('outcome' in reading) return reading;
  const meant = parseLine(reading.line, deps.commands);
  return isProblem(meant) ? { outcome: meant } : meant;
};

/** Reads and runs one line of the text grammar. */
export const runLine = async (
  deps: Deps,
  line: string,
  asker: Asker,
  nowUtcMs: UtcMs,
  onError: ErrorSink,
): Promise<Outcome> => {
  const read = readLine(deps, line);
  return 'outcome' in read ? read.outcome : runCommand(deps, read.command, read.raw, asker, nowUtcMs, onError);
};
