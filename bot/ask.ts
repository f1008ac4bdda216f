/** One-shot use: `ask 'up M31 site:…'` prints an answer; `ask --json -` answers lines from standard input, a JSON object each. */
import { once } from 'node:events';
import path from 'node:path';
import { createInterface } from 'node:readline';
import { StartError } from './ground/start-error.js';
import { isProblem } from './ground/problem.js';
import { openDeps } from './app/compose.js';
import { leaveWithReader } from './app/leave-with-reader.js';
import { consoleStyle, isComment, oneShotRun, printOutcome } from './platforms/console/index.js';
import { type Outcome } from './reply/reply.js';
import { loadSettings } from './app/settings.js';

const USAGE = `Ask one question and leave:
  npm run -s ask -- 'up NGC 7331 site:52.71,0.12'
Ask many, one a line (what begins with # is not asked), and get one JSON object a line:
  npm run -s ask -- --json - < questions.txt
It ends with 0 whenever it answered, a refusal too ("ok": false tells); 2: wrongly called or set; 1: a fault of its own.
`;

/** The contract of `--json`: one line an answer, whatever happened. */
export const jsonLine = (line: string, outcome: Outcome): string =>
  JSON.stringify(
    isProblem(outcome)
      ? { command: line, ok: false, error: { code: outcome.problem, message: outcome.message } }
      : {
          command: line,
          ok: true,
          level: outcome.level,
          title: outcome.title,
          summary: outcome.summary,
          data: outcome.data,
        },
  );

/** What stands where options do, first or last, and is none; in between a member may have been told of any program's options. */
const optionThatIsNot = (words: readonly string[]): string | undefined =>
  [words[0], words.at(-1)].find((word) => word !== '--help' && /^--?[a-z]\S*(?: |$)/iu.test(word ?? ''))?.split(' ')[0];

const main = async (args: readonly string[]): Promise<number> => {
  const json = args.includes('--json');
  const words = args.filter((arg) => arg !== '--json');
  const unknown = optionThatIsNot(words);
  if (unknown !== undefined)
    throw new StartError(`There is no option ${unknown}: --json, --help, or a question in quotes.`);
  if (words.length === 0 || words.includes('--help')) {
    process.stdout.write(USAGE);
    return words.length === 0 ? 2 : 0;
  }
  const { deps, close } = await openDeps(loadSettings(process.env));
  const onError = (error: unknown): void => {
    process.stderr.write(`pierhand: ${error instanceof Error ? error.message : String(error)}\n`);
  };
  const run = oneShotRun(deps, () => Date.now(), onError);
  const style = { ...consoleStyle(process.stdout, process.env), oneShot: true };
  const write = async (text: string): Promise<void> => {
    if (!process.stdout.write(text)) await once(process.stdout, 'drain');
  };
  const answer = async (line: string): Promise<void> => {
    const { outcome, hint } = await run.answer(line);
    if (json) return write(`${jsonLine(line, outcome)}\n`);
    await printOutcome(outcome, process.stdout, style, path.resolve('charts'));
    if (hint !== null) await write(`  ${hint}\n`);
  };
  const isAsked = (line: string): boolean => json || !(line.trim() === '' || isComment(line));
  try {
    if (words.length === 1 && words[0] === '-') {
      for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
        if (!isAsked(line)) continue;
        await answer(line);
        if (!json) await write('\n');
      }
    } else {
      await answer(words.join(' '));
    }
  } finally {
    await close();
  }
  return 0;
};

leaveWithReader();
process.exitCode = await main(process.argv.slice(2)).catch((error: unknown) => {
  process.stderr.write(`${error instanceof Error ? error.message : String(error)}\n`);
  return error instanceof StartError ? 2 : 1;
});
