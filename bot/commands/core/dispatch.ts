/** From what a platform received to an Outcome: checks the options against the one declaration, runs, and lets nothing escape. */
import { wordCountOf } from '../../ground/fold-text.js';
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Problem } from '../../ground/problem.js';
import type { Outcome, Reply } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import { StoreError } from '../../store/store.js';
import { asTyped } from '../asking/as-typed.js';
import { keepLastAsked } from '../asking/following/last-asked.js';
import { withSunThings } from '../asking/sun-things.js';
import { keepFollowable } from '../asking/following/keep-followable.js';
import type { Asker, Command, OptionSpec, LineRead, SeveralRead, Deps } from './command.js';
import { parseLine, PASTE_LIMIT, withoutAddress, type ParsedLine } from './grammar.js';
import { inBrief } from './in-brief.js';
import { withSunJudged } from './judge-sun.js';
import { openPrivacy, type Privacy } from './privacy.js';
import { severalAnswers, type Answered } from './several-answers.js';
import { isOfWhatWaits, withStanding } from './stands-again.js';

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
  for (const name of raw.keys())
    if (!Object.hasOwn(command.options, name))
      return problem('unknown-option', `${command.name} has no option "${tidy(name, 30)}:".`);
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

/** Who asks, when, and who is told of what goes wrong; the platform gives it with every question. */
export interface Ask {
  readonly asker: Asker;
  readonly nowUtcMs: UtcMs;
  readonly onError: ErrorSink;
  /** Turns values as typed into what the options take: members' names into ids. Default: as they are. */
  readonly valuesOf?: (command: Command, raw: ReadonlyMap<string, string>) => ReadonlyMap<string, unknown> | Problem;
}

/** What is personal goes to the asker alone. */
const guarded = (outcome: Outcome, { isPersonal }: Privacy): Outcome =>
  isPersonal() ? { ...outcome, audience: 'asker' } : outcome;

/** What an answer is not sure of begins it, and it is not called good. */
const saidBefore = (answer: Reply, words: string): Reply => ({
  ...answer,
  level: answer.level === 'good' ? 'caution' : answer.level,
  summary: `${words} ${answer.summary}`,
});

/** An answer for another place than the member may have meant begins with that, and calls nothing good. */
const withUnreadSaid = (answer: Reply, { standsIn }: Privacy): Reply => {
  const instead = standsIn();
  return instead === null
    ? answer
    : saidBefore(
        answer,
        `Saved sites cannot be read just now: this is for ${instead}. Where you are, the sky and the Sun may stand otherwise.`,
      );
};

/** What holds for every outcome, whatever the command remembered: the Sun is judged, and what is personal is the asker's. */
const finished = (outcome: Outcome, privacy: Privacy, deps: Deps, nowUtcMs: UtcMs): Outcome =>
  guarded(
    isProblem(outcome) ? outcome : withUnreadSaid(withSunJudged(outcome, deps.sunLimits, nowUtcMs), privacy),
    privacy,
  );

/** What a member sees when something of ours went wrong; the log gets the rest. */
const failure = (error: unknown, name: string, onError: ErrorSink): Problem => {
  // A full list is the member's to clear, not a fault.
  if (!(error instanceof StoreError && error.code === 'store-limit')) onError(error, name);
  if (error instanceof StoreError) return problem(error.code, error.message);
  return problem(
    'internal',
    `Sorry, ${name} failed through a fault of mine. It is in the log; please try again or ask a helper.`,
  );
};

/** Runs one command. Never rejects: what goes wrong inside becomes a Problem and goes to `onError`. */
export const runCommand = async (
  deps: Deps,
  command: Command,
  raw: ReadonlyMap<string, unknown>,
  ask: Ask,
): Promise<Outcome> => {
  const outcome = await runGuarded(deps, command, raw, ask);
  const { memberId, clubId, channelId } = ask.asker;
  deps.onAnswered?.({
    command: command.name,
    outcome: isProblem(outcome) ? outcome.problem : outcome.level,
    audience: outcome.audience ?? 'everyone',
    memberId,
    clubId,
    channelId,
  });
  return outcome;
};

const runGuarded = async (
  deps: Deps,
  command: Command,
  raw: ReadonlyMap<string, unknown>,
  { asker, nowUtcMs, onError }: Ask,
): Promise<Outcome> => {
  if (command.access === 'manager' && !asker.isManager) {
    return problem('not-allowed', `${command.name} is for those who may change the club's settings here.`);
  }
  const { privacy, store } = openPrivacy(deps.store);
  try {
    const meant = await asTyped(deps, command, raw, { asker, nowUtcMs, markPersonal: privacy.markPersonal });
    if (isProblem(meant)) return guarded(meant, privacy);
    const checked = checkOptions(command, meant);
    if (isProblem(checked)) return guarded(checked, privacy);
    const request = { options: checked.values, asker, nowUtcMs, privacy };
    keepFollowable(deps, request, { command, values: meant });
    return finished(await command.run({ ...deps, store }, request), privacy, deps, nowUtcMs);
  } catch (error) {
    return guarded(failure(error, command.name, onError), privacy);
  }
};

const runParsed = async (deps: Deps, { command, raw }: ParsedLine, ask: Ask): Promise<Outcome> => {
  const values = ask.valuesOf?.(command, raw) ?? raw;
  return isProblem(values) ? values : runCommand(deps, command, values, ask);
};

/** What a reader's line answers, its note added. */
const runRead = async (deps: Deps, { line, note, unsure, ...how }: LineRead, ask: Ask): Promise<Outcome> => {
  const parsed = parseLine(line, deps.commands);
  if (how.isTyped === true && !isProblem(parsed)) return runTyped(deps, line, parsed, ask);
  const outcome = isProblem(parsed) ? parsed : await runParsed(deps, parsed, ask);
  if (isProblem(outcome)) return outcome;
  const answer = how.isBrief === true ? inBrief(outcome) : outcome;
  const told = note === undefined ? answer : { ...answer, notes: [...answer.notes, note] };
  return unsure === undefined ? told : saidBefore(told, unsure);
};

/** What asks for something and keeps nothing: it may be asked for again. */
const KEEPS = /^(?:remind|site|gear|forget)\b/u;

/** Each in its turn, so that a site saved first counts for what follows. */
const runSeveral = async (deps: Deps, { parts, left }: SeveralRead, privacy: Privacy, ask: Ask): Promise<Outcome> => {
  const answers: Answered[] = [];
  for (const { words, read } of parts) {
    const outcome =
      'line' in read ? await runRead(deps, read, ask) : finished(read.outcome, privacy, deps, ask.nowUtcMs);
    answers.push({ words, outcome, line: 'line' in read && !KEEPS.test(read.line) ? read.line : null });
  }
  return guarded(severalAnswers(answers, left), privacy);
};

/** The outcome of the first reader that has something to say of words that are no command; null when none has. */
const readWords = async (deps: Deps, text: string, ask: Ask, readers = deps.readers ?? []): Promise<Outcome | null> => {
  const { asker, nowUtcMs, onError } = ask;
  const shared = {};
  for (const reader of readers) {
    const { privacy, store } = openPrivacy(deps.store);
    try {
      const read = await reader.read({ ...deps, store }, { text, shared, asker, nowUtcMs, privacy });
      if (read !== null && reader.isOfWalk === true) keepLastAsked(deps.store, asker, null, nowUtcMs);
      if (read !== null && 'parts' in read) return await runSeveral(deps, read, privacy, ask);
      if (read !== null)
        return 'line' in read
          ? guarded(await runRead(deps, read, ask), privacy)
          : finished(read.outcome, privacy, deps, nowUtcMs);
    } catch (error) {
      // One reader's failure costs what it would have said, and no more.
      onError(error, reader.name);
    }
  }
  return null;
};

/** What a command says of words that it cannot read; they may be a sentence that begins with its name by chance. */
const NOT_READ: readonly string[] = [
  'bad-option',
  'bad-time',
  'missing-option',
  'unknown-place',
  'unknown-target',
  'unreadable-date',
  'unreadable-time',
  'unknown-command',
];
const LEAST_WORDS = 3;
const HAS_OPTIONS = /\s[a-z]{2,12}:\S/u;
/** `"NGC 7331" site:…`: marked off by its writer, and no sentence. */
const QUOTED_FIRST = /^"[^"]*"(?:\s+[a-z]{2,12}:\S|\s*$)/u;

const mendingReaders = (deps: Deps) => (deps.readers ?? []).filter(({ mendsCommands }) => mendsCommands === true);

/** Where a command says by which words it is spoken to in a sentence; null otherwise, and where no reader understands it. */
const readSentence = async (deps: Deps, line: string, command: Command, ask: Ask): Promise<Outcome | null> => {
  const rest = line.trim().replace(/^[/!]?\s*\S+\s*/u, '');
  const isCommand = HAS_OPTIONS.test(` ${rest}`.slice(0, 14)) || QUOTED_FIRST.test(rest);
  const isSentence = !isCommand && command.sentence?.test(rest) === true;
  return isSentence ? readWords(deps, line, ask, mendingReaders(deps)) : null;
};

const walkReaders = (deps: Deps) => (deps.readers ?? []).filter(({ isOfWalk }) => isOfWalk === true);
/** "Site add …", "remind me …": a command beyond doubt, whatever is wrong with the rest of it. */
const PLAINLY_COMMAND =
  /^\W*(?:site|gear|remind|forget)\s+(?:list|add|show|use|horizon|sky|rename|remove|cancel|set|me|us|all|everything)\b/iu;

/** A sentence that begins with a command's name by chance: "moon rise tomorrow", or to a walk "site is right, the zone is not". */
const mendedLine = async (deps: Deps, line: string, outcome: Outcome, ask: Ask): Promise<Outcome> => {
  const isSentence = wordCountOf(line) >= LEAST_WORDS && !HAS_OPTIONS.test(line);
  if (!isProblem(outcome) || !NOT_READ.includes(outcome.problem) || !isSentence) return outcome;
  const mended = await readWords(deps, line, ask, mendingReaders(deps));
  if (mended !== null || PLAINLY_COMMAND.test(line)) return mended ?? outcome;
  return (await readWords(deps, line, ask, walkReaders(deps))) ?? outcome;
};

/** What is said before a sentence that begins with a command's name is run. */
const saidFirst = async (deps: Deps, line: string, { command }: ParsedLine, ask: Ask): Promise<Outcome | null> => {
  const readers = (deps.readers ?? []).filter(({ beforeCommands }) => beforeCommands === true);
  const isSentence = wordCountOf(line) >= LEAST_WORDS && !HAS_OPTIONS.test(line) && !KEEPS.test(command.name);
  return isSentence && readers.length > 0 ? readWords(deps, line, ask, readers) : null;
};

/** A line that begins with a command, read as a sentence where it is one. */
const runTyped = async (deps: Deps, line: string, parsed: ParsedLine, ask: Ask): Promise<Outcome> => {
  const first = await saidFirst(deps, line, parsed, ask);
  if (first !== null) return first;
  const asSentence = await readSentence(deps, line, parsed.command, ask);
  return asSentence ?? mendedLine(deps, line, await runParsed(deps, parsed, ask), ask);
};

/** What the grammar says of words that may be a plain question; "moon tonight?" begins with a command's name by chance. */
const NO_COMMAND: readonly string[] = ['unknown-command', 'unexpected-words'];

/** What waits for the asker stands again under an answer to something else. */
const standingUnder = async (deps: Deps, outcome: Outcome, ask: Ask, command: string | null): Promise<Outcome> => {
  if (isOfWhatWaits(outcome)) return outcome;
  for (const { name, standsAgain } of deps.readers ?? []) {
    if (standsAgain === undefined || name === command) continue;
    try {
      const standing = await standsAgain(deps, ask);
      if (standing !== null) return withStanding(outcome, standing);
    } catch (error) {
      ask.onError(error, name);
    }
  }
  return outcome;
};

/**
 * Reads and runs one line. Text that begins with no command goes to `deps.readers` in order; the first that has something to
 * say answers, or names the line to run in its place; where none has, it is the usual "unknown command". Never rejects.
 */
export const runLine = async (deps: Deps, typed: string, ask: Ask): Promise<Outcome> => {
  const line = withSunThings(withoutAddress(typed));
  const parsed = parseLine(line, deps.commands);
  if (!isProblem(parsed)) return standingUnder(deps, await runTyped(deps, line, parsed, ask), ask, parsed.command.name);
  if (!NO_COMMAND.includes(parsed.problem)) return parsed;
  const answered = await readWords(deps, line.slice(0, PASTE_LIMIT), ask);
  return answered === null ? parsed : standingUnder(deps, answered, ask, null);
};
