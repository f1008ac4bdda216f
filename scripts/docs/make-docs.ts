/**
 * Fills the made parts of README.md (between `<!-- made: NAME -->` and `<!-- end -->`) from the program itself: the command
 * table, real answers, the table of worst errors, and pictures. `--check` compares instead and fails on a difference.
 */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { format, resolveConfig } from 'prettier';
import { isProblem } from '../../bot/ground/problem.js';
import { openDeps } from '../../bot/app/compose.js';
import { bareOption } from '../../bot/commands/core/grammar.js';
import { KEPT_PERIODS } from '../../bot/commands/kept/privacy-text.js';
import { chartFileName } from '../../bot/platforms/console/save-chart.js';
import { consoleSession } from '../../bot/platforms/console/session.js';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import { chartSvg, renderChart } from '../../bot/reply/render-chart.js';
import { loadSettings } from '../../bot/app/settings.js';
import { worstErrorsTable } from './worst-errors-table.js';
import { EXAMPLE_NOW_UTC_MS, EXAMPLES, PROMPT } from './examples.js';

const PICTURE_FOLDER = 'deploy/pictures';
const STYLE = { colour: false, width: 80 } as const;

const check = process.argv.includes('--check');
const differences: string[] = [];

const keep = (file: string, made: string | Buffer, same: (before: Buffer) => boolean): void => {
  if (!check) return writeFileSync(file, made);
  let before: Buffer | null;
  try {
    before = readFileSync(file);
  } catch {
    before = null;
  }
  if (before === null || !same(before)) differences.push(file);
};

const dataFolder = mkdtempSync(path.join(tmpdir(), 'pierhand-docs-'));
const { deps, close } = await openDeps(loadSettings({ PIERHAND_DATA: dataFolder }));
const onError = (error: unknown): never => {
  throw error instanceof Error ? error : new Error(String(error));
};

const made = new Map<string, string>();

made.set(
  'commands',
  [
    '| command | what it answers | options |',
    '|---|---|---|',
    ...deps.commands.map((command) => {
      const options = Object.entries(command.options).map(
        ([name, { required }]) => `${name === bareOption(command) ? `**${name}**` : name}${required ? '' : '?'}`,
      );
      return `| \`${command.name}\` | ${command.summary} | ${options.join(', ')} |`;
    }),
  ].join('\n'),
);

// One sitting at a fresh console, in the README's order: whoever types the lines there is answered the same.
const session = consoleSession(deps, () => EXAMPLE_NOW_UTC_MS, onError);
for (const { name, lines } of EXAMPLES) {
  const shown: string[] = [];
  for (const line of lines) {
    const outcome = await session.answer(line);
    const chart = isProblem(outcome) ? undefined : outcome.chart;
    const chartFile = chart === undefined ? null : `charts/${chartFileName(chart)}`;
    shown.push(`${PROMPT}${line}`, ...consoleLines(outcome, chartFile, STYLE), '');
    if (!isProblem(outcome) && outcome.chart !== undefined) {
      // The drawing is compared as text: PNG bytes may differ between builds of the encoder.
      const svgFile = path.join(PICTURE_FOLDER, `${name}.svg`);
      const { png } = await renderChart(outcome.chart);
      const svg = chartSvg(outcome.chart);
      keep(svgFile, svg, (before) => before.toString('utf8') === svg);
      if (!check) writeFileSync(path.join(PICTURE_FOLDER, `${name}.png`), png);
    }
  }
  made.set(`example ${name}`, ['```text', ...shown.slice(0, -1).map((line) => line.trimEnd()), '```'].join('\n'));
}
made.set('kept', KEPT_PERIODS.map((line) => `- ${line}`).join('\n'));
made.set('worst errors', worstErrorsTable());
await close();
rmSync(dataFolder, { recursive: true, force: true });

const readme = readFileSync('README.md', 'utf8');
const PART = /<!-- made: ([a-z ]+) -->[\s\S]*?<!-- end -->/gu;
const partsOf = (text: string): ReadonlyMap<string, string> =>
  new Map([...text.matchAll(PART)].map(([part, name = '']) => [name, part]));

const seen = new Set<string>();
const filled = readme.replace(PART, (_, name: string) => {
  seen.add(name);
  const text = made.get(name);
  if (text === undefined) throw new Error(`README.md asks for "${name}", which nothing makes.`);
  return `<!-- made: ${name} -->\n${text}\n<!-- end -->`;
});
for (const name of made.keys()) if (!seen.has(name)) differences.push(`README.md has no place for "${name}"`);
const laidOut = await format(filled, { ...(await resolveConfig('README.md')), filepath: 'README.md' });
if (!check) writeFileSync('README.md', laidOut);
else if (readme !== laidOut) {
  const [before, after] = [partsOf(readme), partsOf(laidOut)];
  const unlike = [...after.keys()].filter((name) => before.get(name) !== after.get(name));
  differences.push(
    unlike.length === 0 ? "README.md's layout" : unlike.map((name) => `README.md, "${name}"`).join('\nand '),
  );
}

for (const file of differences) process.stderr.write(`not as npm run docs makes it: ${file}\n`);
process.stdout.write(`${made.size} made parts, ${differences.length} differences\n`);
process.exitCode = differences.length > 0 ? 1 : 0;
