/**
 * Measures every target of the design's last table and prints it beside its figure: `npm run bench`, or
 * `npm run -s bench -- --json` for an array of `{name, unit, median, p99, target, met}` alone. What cannot be measured here
 * is named on standard error. `--only WORD` keeps the parts whose name holds the word; `--cpu` counts processor time, not
 * elapsed time, wherever one process does the work: for a machine that others use at the same time.
 */
import { execFileSync } from 'node:child_process';
import path from 'node:path';
import { openDeps } from '../../bot/app/compose.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import { loadSettings } from '../../bot/app/settings.js';
import { openStore } from '../../bot/store/open-store.js';
import { accuracyRows } from './accuracy.js';
import { answerRows } from './answers.js';
import { consoleRows } from './console-process.js';
import { discordRows } from './discord.js';
import { growthRows } from './growth.js';
import { machineLines } from './machine.js';
import { countProcessorTime, type BenchRow } from './measure.js';
import { findPython, sideBySideRows } from './side-by-side.js';
import { shardRows } from './shards.js';
import { simulationRows, stepRows } from './triage.js';

const wantsJson = process.argv.includes('--json');
const only = process.argv[process.argv.indexOf('--only') + 1];
const wanted = (part: string): boolean =>
  !process.argv.includes('--only') || (only !== undefined && part.includes(only));

const figure = (value: number): string => {
  if (!Number.isFinite(value)) return String(value);
  if (value === 0) return '0';
  if (Math.abs(value) >= 1000) return value.toFixed(0);
  return Math.abs(value) < 1e-6 ? value.toExponential(1) : String(Number(value.toPrecision(3)));
};

const verdict = (met: boolean | null): string => {
  if (met === null) return '';
  return met ? 'met' : 'NOT MET';
};

const printTable = (rows: readonly BenchRow[]): void => {
  const lines = rows.map(
    ({ name, unit, median, p99, target, met }) =>
      [name, figure(median), figure(p99), target === null ? '' : `${figure(target)}`, unit, verdict(met)] as const,
  );
  const head = ['what', 'median', 'p99 or worst', 'target', 'unit', ''] as const;
  const widths = head.map((_, column) =>
    Math.max(...[head, ...lines].map((line) => Array.from(line[column] ?? '').length)),
  );
  for (const line of [head, ...lines]) {
    process.stdout.write(
      `${line
        .map((cell, column) =>
          column === 0 || column > 3 ? cell.padEnd(widths[column] ?? 0) : cell.padStart(widths[column] ?? 0),
        )
        .join('  ')
        .trimEnd()}\n`,
    );
  }
};

const main = async (): Promise<void> => {
  if (process.argv.includes('--cpu')) countProcessorTime();
  const rows: BenchRow[] = [];
  const missing: string[] = [];
  const began = performance.now();
  const part = async (
    name: string,
    measure: () => Promise<readonly BenchRow[]> | readonly BenchRow[],
  ): Promise<void> => {
    if (!wanted(name)) return;
    process.stderr.write(`${((performance.now() - began) / 1000).toFixed(0).padStart(4)} s  ${name}\n`);
    try {
      rows.push(...(await measure()));
    } catch (error) {
      missing.push(`${name}: ${error instanceof Error ? error.message : String(error)}`);
      process.exitCode = 1;
    }
  };

  for (const line of machineLines()) process.stderr.write(`${line}\n`);
  execFileSync(process.execPath, [path.join(projectRoot(), 'build.mjs')], {
    cwd: projectRoot(),
    stdio: ['ignore', 'ignore', 'inherit'],
  });
  const opened = await openDeps({ ...loadSettings({}), dataFolder: path.join(projectRoot(), '.cache/bench') });
  const deps = { ...opened.deps, store: await openStore({ memory: true }) };
  await part('answers', () => answerRows(deps, (why) => missing.push(why)));
  await part('triage', () => stepRows(deps));
  await part('console', consoleRows);
  // After what is timed in this process: the double and the reference cases leave a large heap behind.
  await part('discord', discordRows);
  await part('shards', shardRows);
  await part('accuracy', accuracyRows);
  await part('simulation', simulationRows);
  await part('growth', () => growthRows(deps, path.join(projectRoot(), 'knowledge/catalogue')));
  const python = findPython();
  if (python === null)
    missing.push(
      'side by side with skyfield and astropy: no Python that has them (set PIERHAND_PYTHON, or see test/reference/requirements.txt)',
    );
  else await part('side by side', () => sideBySideRows(deps.catalogue, python));
  await deps.store.close();
  await opened.close();

  if (wantsJson)
    process.stdout.write(
      `${JSON.stringify(rows.map(({ name, unit, median, p99, target, met }) => ({ name, unit, median, p99, target, met })))}\n`,
    );
  else printTable(rows);
  const targets = rows.filter(({ met }) => met !== null);
  process.stderr.write(
    `${targets.filter(({ met }) => met === true).length} of ${targets.length} targets met; ${((performance.now() - began) / 1000).toFixed(0)} s\n`,
  );
  for (const line of missing) process.stderr.write(`not measured: ${line}\n`);
};

await main();
