/** The conversation on a terminal: remembers only the last numbered choices and who speaks. */
import { tidy } from '../../ground/tidy.js';
import { isProblem, problem, type Choice, type Problem } from '../../ground/problem.js';
import type { Asker, Command } from '../../commands/core/command.js';
import { completeOption } from '../../commands/core/complete.js';
import type { Deps } from '../../commands/core/command.js';
import type { ErrorSink } from '../../commands/core/dispatch.js';
import { bareOption, parseLine } from '../../commands/core/grammar.js';
import { NOWHERE, type Outcome } from '../../reply/reply.js';
import { reply } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';
import { asksAlone } from './asks-alone.js';
import type { LineKind } from './gather-pastes.js';
import { splitForms } from '../shared/form-lines.js';
import { labelPicked } from '../shared/label-picked.js';
import { numberLed, numberSaid, runOfLed, runOfPick } from '../shared/number-said.js';
import { askerNamed, CONSOLE_ASKER, runConsoleLine, speakerNamed } from './who-speaks.js';

export { CONSOLE_ASKER };

export interface ConsoleSession {
  /** The name of whoever speaks now. */
  readonly speaker: () => string;
  /**
   * Answers one line; a bare number, or in a walk a label, picks from the choices last shown, "as Tamsin" says who speaks from now on.
   * Never rejects.
   */
  readonly answer: (line: string) => Promise<Outcome>;
  /** Whether a line stands by itself, or may be a piece of something pasted. */
  readonly kindOf: (line: string) => LineKind;
  /** Readline's completer: suggestions and the part of the line they replace. */
  readonly complete: (line: string) => Promise<[string[], string]>;
}

interface OpenOption {
  /** Undefined where a bare word belongs to no option. */
  readonly optionName: string | undefined;
  /** Opened by its name, as in "site:". */
  readonly isNamed: boolean;
  readonly partial: string;
}

/** The option whose value is being typed at the end of what stands behind a command's name. */
const openOption = (command: Command, rest: string): OpenOption => {
  const opened = [...rest.matchAll(/(?:^|\s)([a-z-]+):/giu)]
    .filter(([, name]) => Object.hasOwn(command.options, name?.toLowerCase() ?? ''))
    .at(-1);
  return opened === undefined
    ? { optionName: bareOption(command), isNamed: false, partial: rest.trimStart() }
    : {
        optionName: opened[1]?.toLowerCase(),
        isNamed: true,
        partial: rest.slice(opened.index + opened[0].length).trimStart(),
      };
};

const wordsOf = (line: string): LineKind => (asksAlone(line) ? 'asks' : 'words');

const LONGEST_OFFERED = 60;

/** "2 or 3": what was offered stays, under its numbers. */
const whichOf = (numbers: readonly number[], picks: readonly Choice[]): Problem =>
  problem(
    'several-choices',
    `Which fits best? ${numbers.map((number, at) => `${number}: ${tidy(picks[at]?.label ?? '', LONGEST_OFFERED)}`).join('; ')}. Type one of the numbers, or tell me what you see.`,
  );

/** The line that a number runs, or what is to be said of it; null where none is picked. */
const pickIn = (line: string, choices: readonly Choice[]): string | Problem | null => {
  const isBare = /^\s*\d{1,2}\s*$/u.test(line);
  const said = numberSaid(line);
  if (said === null) {
    const led = numberLed(line);
    const run = led === null ? undefined : choices[led.number - 1]?.run;
    return led === null || run === undefined ? null : runOfLed(run, led);
  }
  const picks = said.numbers.flatMap((number) => choices[number - 1] ?? []);
  const [only, second] = picks;
  if (only !== undefined && second === undefined && said.numbers.length === 1)
    return isBare ? only.run : runOfPick(only.run, line, said);
  // With words round it, a number is a pick where it fits, and words where it does not.
  if (!isBare) return picks.length > 1 && picks.length === said.numbers.length ? whichOf(said.numbers, picks) : null;
  return problem(
    'no-such-choice',
    choices.length === 0
      ? 'There is nothing to choose from just now. Type a question, or help.'
      : `Choose ${choices.length === 1 ? '1' : `a number from 1 to ${choices.length}`}, or type another question.`,
  );
};

/** What is kept of whoever presses it: offered to one, it is nobody else's. */
const OF_ONESELF = /^(?:remind|site|gear|forget|mydata|causes)\b/u;

const offeredTo = (shownTo: Asker): Problem =>
  problem(
    'not-offered-to-you',
    `That was offered to ${shownTo === CONSOLE_ASKER ? 'whoever sits here ("as me")' : shownTo.displayName}. Ask for it yourself, and it is yours.`,
  );

export const consoleSession = (deps: Deps, now: () => UtcMs, onError: ErrorSink): ConsoleSession => {
  let choices: readonly Choice[] = [];
  let asker = CONSOLE_ASKER;
  let shownTo = asker;
  const heard = new Set<string>();

  const answer = async (line: string): Promise<Outcome> => {
    const pick = labelPicked(line, choices) ?? pickIn(line, choices);
    if (typeof pick === 'string')
      return shownTo.memberId !== asker.memberId && OF_ONESELF.test(pick) ? offeredTo(shownTo) : answer(pick);
    if (pick !== null) return pick;
    const name = speakerNamed(line, heard);
    if (name !== null) {
      asker = askerNamed(name);
      heard.add(asker.displayName.toLowerCase());
      // What was offered stays: the other may answer it, but for what is kept of oneself.
      return reply({
        pointsAt: NOWHERE,
        title: 'Who speaks',
        summary:
          asker === CONSOLE_ASKER
            ? 'You speak from now on.'
            : `${asker.displayName} speaks from now on; "as me" gives the word back.`,
        audience: 'asker',
      });
    }
    const outcome = await runConsoleLine(deps, line, asker, now(), onError);
    // A mistyped line keeps the choices on the screen good; any answer replaces them.
    if (!isProblem(outcome) || outcome.choices !== undefined) {
      choices = splitForms(outcome.choices).picks;
      shownTo = asker;
    }
    return outcome;
  };

  const complete = async (line: string): Promise<[string[], string]> => {
    const typed = line.replace(/^\s*\/?/u, '');
    const commandWord = /^(\S+)\s/u.exec(typed)?.[1]?.toLowerCase();
    if (commandWord === undefined)
      return [
        deps.commands.map(({ name }) => `${name} `).filter((name) => name.startsWith(typed.toLowerCase())),
        typed,
      ];
    const command = deps.commands.find(({ name }) => name === commandWord);
    return command === undefined ? [[], ''] : completeRest(command, typed.slice(commandWord.length + 1));
  };

  /** What may stand where the line behind the command's name ends: a value of the option that is open, or another option's name. */
  const completeRest = async (command: Command, rest: string): Promise<[string[], string]> => {
    const { optionName, isNamed, partial } = openOption(command, rest);
    const bare = partial.replace(/^"/u, '');
    const lastWord = /\S*$/u.exec(rest)?.[0] ?? '';
    const optionNames = Object.keys(command.options)
      .map((name) => `${name}:`)
      .filter((name) => lastWord !== '' && name.startsWith(lastWord.toLowerCase()) && name !== `${optionName}:`);
    const found = optionName === undefined ? [] : await completeOption(deps, command, optionName, bare, asker);
    const values = found.map(({ value }) => value);
    // A new option's name may follow the value: "up NGC 7331 si" means site:, unless a target goes on like that.
    const goesOn = values.some((value) => value.toLowerCase().startsWith(bare.toLowerCase()));
    if (partial !== '' && values.length > 0 && (goesOn || optionNames.length === 0))
      return [values.map((value) => (isNamed && value.includes(' ') ? `"${value}" ` : `${value} `)), partial];
    return [optionNames, lastWord];
  };

  const kindOf = (line: string): LineKind => {
    if (/^\s*\d{1,2}\s*$/u.test(line) || speakerNamed(line, heard) !== null) return 'own';
    const parsed = parseLine(line, deps.commands);
    if (isProblem(parsed)) return parsed.problem === 'unknown-command' ? wordsOf(line) : 'own';
    return parsed.command.freeText === true && parsed.raw.size <= 1 ? 'opens' : 'own';
  };

  return { speaker: () => asker.displayName, answer, complete, kindOf };
};
