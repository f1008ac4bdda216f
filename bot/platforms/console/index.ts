/** The local console: a prompt for a person, a plain line reader for a pipe. Needs no account and no network. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { within } from '../../ground/within.js';
import type { Outcome } from '../../reply/reply.js';
import type { PlatformContext, RunningPlatform } from '../../app/platform.js';
import { chartOrWords } from '../shared/chart-or-words.js';
import { commandFaults } from '../shared/faults.js';
import { gatherPastes } from './gather-pastes.js';
import { saveChart } from './save-chart.js';
import { consoleSession } from './session.js';
import { consoleLines, type ConsoleStyle } from './write-reply.js';

export { isComment, oneShotRun } from './one-shot.js';

const HISTORY_LINES = 200;
const SAYS_SO_AFTER_MS = 1000;
const LATE: unique symbol = Symbol('late');

export interface ConsoleStreams {
  readonly stdin: NodeJS.ReadStream;
  readonly stdout: NodeJS.WriteStream;
}

export const consoleStyle = (output: NodeJS.WriteStream, env: NodeJS.ProcessEnv): ConsoleStyle => ({
  colour: output.isTTY && (env['NO_COLOR'] ?? '') === '' && env['TERM'] !== 'dumb',
  width: Math.max(40, Math.min(output.columns ?? 80, 100)),
});

/** Prints an outcome, writing its picture beside; a picture that cannot be written costs the picture alone. */
export const printOutcome = async (
  outcome: Outcome,
  output: NodeJS.WritableStream,
  style: ConsoleStyle,
  chartFolder: string,
): Promise<void> => {
  const chartFile = await chartOrWords(
    outcome,
    (chart) => saveChart(chart, chartFolder),
    (error) => `(not written: ${(error as NodeJS.ErrnoException).code ?? 'drawing failed'})`,
  );
  output.write(`${consoleLines(outcome, chartFile, style).join('\n')}\n`);
};

const readHistory = (file: string): string[] => {
  try {
    return readFileSync(file, 'utf8')
      .split('\n')
      .filter((line) => line !== '')
      .slice(0, HISTORY_LINES);
  } catch {
    return [];
  }
};

/**
 * Runs until the input ends or the person types "quit". `firstLine` is asked before the prompt appears.
 * Lines are answered one after the other, in order, also when a pipe brings many at once.
 */
export const startConsole = (
  context: PlatformContext,
  streams: ConsoleStreams,
  firstLine: string | null,
): { readonly platform: RunningPlatform; readonly ended: Promise<{ readonly asked: number }> } => {
  const { deps, settings, now, log } = context;
  const { stdin: input, stdout: output } = streams;
  const interactive = input.isTTY && output.isTTY;
  const style = consoleStyle(output, process.env);
  const historyFile = path.join(settings.dataFolder, 'console-history');
  const chartFolder = path.resolve('charts');
  const session = consoleSession(deps, now, commandFaults(context, 'console'));

  const lines = createInterface({
    input,
    output,
    terminal: interactive,
    prompt: 'pierhand> ',
    historySize: HISTORY_LINES,
    removeHistoryDuplicates: true,
    ...(interactive ? { history: readHistory(historyFile) } : {}),
    completer: (line: string, done: (error: null, result: [string[], string]) => void) => {
      session.complete(line).then(
        (result) => done(null, result),
        () => done(null, [[], line]),
      );
    },
  });
  lines.on('history', (history: string[]) => {
    try {
      mkdirSync(settings.dataFolder, { recursive: true });
      writeFileSync(historyFile, history.slice(0, HISTORY_LINES).join('\n'), { mode: 0o600 });
    } catch {
      // History is a comfort; a folder that cannot be written costs nothing else.
    }
  });

  const print = async (outcome: Outcome): Promise<void> => {
    await printOutcome(outcome, output, style, chartFolder);
    if (!interactive) output.write('\n');
  };
  /** At a terminal a picture that takes its time keeps nobody from asking on; on a pipe answers stay in order. */
  const mayBeSlow = (line: string): boolean => interactive && /(?:^|\s)file:\S/iu.test(line);
  let isClosed = false;
  const answerLater = (answering: Promise<Outcome>, asker: string): void => {
    output.write('Reading the file … You can ask on meanwhile.\n');
    answering
      .then(async (outcome) => {
        if (isClosed) return;
        output.write(session.speaker() === asker ? '\n' : `\nFor ${asker}:\n`);
        await print(outcome);
        lines.prompt(true);
      })
      .catch((error: unknown) => log.error({ err: error }, 'console failed to print'));
  };

  let queue = Promise.resolve();
  let asked = 0;
  const ask = (line: string): void => {
    queue = queue
      .then(async () => {
        if (line.trim() !== '') {
          asked++;
          const asker = session.speaker();
          const answering = session.answer(line);
          const outcome = mayBeSlow(line) ? await within(answering, SAYS_SO_AFTER_MS, LATE) : await answering;
          if (outcome === LATE) answerLater(answering, asker);
          else await print(outcome);
        }
        if (interactive) lines.prompt();
      })
      .catch((error: unknown) => log.error({ err: error }, 'console failed to print'));
  };

  const pastes = gatherPastes({ say: ask, kindOf: session.kindOf, isTerminal: interactive });
  const ended = new Promise<{ asked: number }>((resolve) => {
    lines.on('close', () => {
      isClosed = true;
      pastes.flush();
      void queue.then(() => resolve({ asked }));
    });
  });
  if (interactive)
    output.write(
      'Pierhand is here. Ask "up NGC 7331 site:52.71,0.12" (an example\'s site: put in yours, or a town), or type help.\nTwo at one machine: "as Tamsin" says who speaks. Leave with quit.\n',
    );
  if (firstLine !== null) ask(firstLine);
  else if (interactive) lines.prompt();
  lines.on('line', (line) => {
    if (/^\s*\/?(?:quit|exit|bye)\s*$/iu.test(line)) lines.close();
    else pastes.push(line);
  });
  lines.on('SIGINT', () => lines.close());

  return {
    ended,
    platform: {
      name: 'console',
      deliver: async (_reminder, text) => {
        output.write(`\n${text}\n`);
        if (interactive) lines.prompt(true);
        return 'sent';
      },
      health: () => ({ ok: true, detail: 'console' }),
      stop: async () => {
        lines.close();
        await ended;
      },
    },
  };
};
