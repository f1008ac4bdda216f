/** The console as its user starts it: time to the first answer through a pipe, and what the process holds in memory. */
import { spawn } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { projectRoot } from '../../bot/ground/project-root.js';
import { single, spread, type BenchRow } from './measure.js';

const STARTS = 12;
const MB = 1e6;

/** Megabytes the kernel counts as resident; NaN where there is no /proc. */
const residentMb = (pid: number): number => {
  try {
    return (
      (Number(/^VmRSS:\s+(\d+) kB$/mu.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? Number.NaN) * 1024) / MB
    );
  } catch {
    return Number.NaN;
  }
};

interface Talk {
  readonly firstAnswerMs: number;
  readonly residentMb: readonly number[];
}

/** Starts the console in an empty folder, asks each line once the one before is answered, and looks at the memory after each. */
const talk = async (lines: readonly string[]): Promise<Talk> => {
  const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-bench-'));
  const began = performance.now();
  const { PATH = '', HOME = '' } = process.env;
  const child = spawn(process.execPath, [path.join(projectRoot(), 'dist/bot/main.js')], {
    cwd: folder,
    env: { PATH, HOME, PIERHAND_DATA: folder },
    stdio: ['pipe', 'pipe', 'pipe'],
  });
  let output = '';
  let trouble = '';
  let wake = (): void => undefined;
  child.stdout.on('data', (chunk: Buffer) => {
    output += chunk.toString();
    wake();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    trouble += chunk.toString();
    wake();
  });
  const ended = new Promise<void>((resolve) =>
    child.once('exit', () => {
      resolve();
      wake();
    }),
  );
  const resident: number[] = [];
  let firstAnswerMs = Number.NaN;
  try {
    for (const line of lines) {
      output = '';
      child.stdin.write(`${line}\n`);
      // An answer through a pipe ends with an empty line.
      while (!output.endsWith('\n\n')) {
        if (child.exitCode !== null) throw new Error(`the console ended at "${line}": ${trouble}`);
        await new Promise<void>((resolve) => {
          wake = resolve;
        });
      }
      if (Number.isNaN(firstAnswerMs)) firstAnswerMs = performance.now() - began;
      resident.push(residentMb(child.pid ?? 0));
    }
  } finally {
    child.stdin.end();
    await ended;
    rmSync(folder, { recursive: true, force: true });
  }
  return { firstAnswerMs, residentMb: resident };
};

/** A session that touches everything: pictures, the gazetteer, the fault model, a sweep of the whole catalogue. */
const EVENING = [
  'sidereal site:52.71,0.12',
  'altitude Aldebaran site:52.71,0.12',
  'up M 97 site:52.71,0.12',
  'tonight site:"Ely, England"',
  'up Saturn site:"Hobart, Tasmania"',
  'triage the serial port is missing',
  'dark site:52.71,0.12',
  'altitude Andromida site:Springfield',
  ...Array.from({ length: 20 }, (_, i) => `up NGC ${100 + 37 * i} site:${i},10`),
];

export const consoleRows = async (): Promise<BenchRow[]> => {
  const starts: Talk[] = [];
  await talk(['help']);
  for (let i = 0; i < STARTS; i++) starts.push(await talk(['sidereal site:52.71,0.12']));
  const evening = await talk(EVENING);
  return [
    spread(
      'console: start to first answer',
      's',
      starts.map(({ firstAnswerMs }) => firstAnswerMs / 1000),
      1,
    ),
    spread(
      'console: resident after the first answer',
      'MB',
      starts.flatMap(({ residentMb: seen }) => seen),
      100,
    ),
    single(
      'console: resident after the first picture',
      'MB',
      evening.residentMb[EVENING.findIndex((line) => line.startsWith('up '))] ?? Number.NaN,
      150,
    ),
    single(
      `console: most resident over ${EVENING.length} questions that touch everything, 22 pictures among them`,
      'MB',
      Math.max(...evening.residentMb),
      null,
    ),
  ];
};
