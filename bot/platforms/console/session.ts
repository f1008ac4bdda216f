/** One person's conversation on a terminal: remembers only the last numbered choices. */
import { completeOption } from '../../commands/complete.js';
import type { Asker } from '../../commands/command.js';
import type { Deps } from '../../commands/deps.js';
import { runLine, type ErrorSink } from '../../commands/dispatch.js';
import { bareOption } from '../../commands/grammar.js';
import type { Choice, Outcome } from '../../reply/reply.js';
import { isProblem, problem } from '../../reply/reply.js';
import type { UtcMs } from '../../sky/types.js';

/** The console's one asker: whoever sits at the machine, with every right over its own store. */
export const CONSOLE_ASKER: Asker = {
  platform: 'console', memberId: 'console:local', displayName: 'you', clubId: 'console:club', channelId: 'console', isManager: true, isPrivate: true,
};

export interface ConsoleSession {
  /** Answers one line; a bare number picks from the choices last shown. Never rejects. */
  readonly answer: (line: string) => Promise<Outcome>;
  /** Readline's completer: suggestions and the part of the line they replace. */
  readonly complete: (line: string) => Promise<[string[], string]>;
}

export const consoleSession = (deps: Deps, now: () => UtcMs, onError: ErrorSink): ConsoleSession => {
  let choices: readonly Choice[] = [];

  const answer = async (line: string): Promise<Outcome> => {
    const number = /^\s*(\d{1,2})\s*$/u.exec(line)?.[1];
    if (number !== undefined) {
      const picked = choices[Number(number) - 1];
      if (picked === undefined) {
        return problem('no-such-choice', choices.length === 0
          ? 'There is nothing to choose from just now. Type a question, or help.'
          : `Choose a number from 1 to ${choices.length}, or type another question.`);
      }
      return answer(picked.run);
    }
    const outcome = await runLine(deps, line, CONSOLE_ASKER, now(), onError);
    // A mistyped line keeps the choices on the screen good; any answer replaces them.
    if (!isProblem(outcome) || outcome.choices !== undefined) choices = outcome.choices ?? [];
    return outcome;
  };

  const complete = async (line: string): Promise<[string[], string]> => {
    const typed = line.replace(/^\s*\/?/u, '');
    const commandWord = /^(\S+)\s/u.exec(typed)?.[1]?.toLowerCase();
    if (commandWord === undefined) return [deps.commands.map(({ name }) => `${name} `).filter((name) => name.startsWith(typed.toLowerCase())), typed];
    const command = deps.commands.find(({ name }) => name === commandWord);
    if (command === undefined) return [[], ''];
    const rest = typed.slice(commandWord.length + 1);
    const opened = [...rest.matchAll(/(?:^|\s)([a-z-]+):/giu)].filter(([, name]) => Object.hasOwn(command.options, name?.toLowerCase() ?? '')).at(-1);
    const optionName = opened?.[1]?.toLowerCase() ?? bareOption(command);
    const partial = (opened === undefined ? rest : rest.slice(opened.index + opened[0].length)).trimStart();
    const lastWord = /\S*$/u.exec(rest)?.[0] ?? '';
    const optionNames = Object.keys(command.options).map((name) => `${name}:`).filter((name) => lastWord !== '' && name.startsWith(lastWord.toLowerCase()) && name !== `${optionName}:`);
    const values = optionName === undefined ? [] : (await completeOption(deps, command, optionName, partial.replace(/^"/u, ''), CONSOLE_ASKER)).map(({ value }) => value);
    // A new option's name may follow the value: "up NGC 7331 si" means site:, unless a target goes on like that.
    const goesOn = values.some((value) => value.toLowerCase().startsWith(partial.toLowerCase().replace(/^"/u, '')));
    if (partial !== '' && values.length > 0 && (goesOn || optionNames.length === 0)) {
      return [values.map((value) => (opened !== undefined && value.includes(' ') ? `"${value}" ` : `${value} `)), partial];
    }
    return [optionNames, lastWord];
  };

  return { answer, complete };
};
