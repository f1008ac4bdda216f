import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import * as z from 'zod';
import { runProgram } from '../whole-program.js';

let folder: string;
beforeAll(() => {
  folder = mkdtempSync(path.join(tmpdir(), 'pierhand-ask-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const answered = z.strictObject({
  command: z.string(),
  ok: z.literal(true),
  level: z.enum(['info', 'good', 'caution', 'danger']),
  title: z.string(),
  summary: z.string(),
  data: z.record(z.string(), z.unknown()),
});
const refused = z.strictObject({
  command: z.string(),
  ok: z.literal(false),
  error: z.strictObject({ code: z.string(), message: z.string().max(400) }),
});

describe('ask --json -', () => {
  it('answers a thousand lines in order, good and bad mixed, each as the contract says, none lost', async () => {
    const nasty = [
      '__proto__',
      'up "M 31',
      'x'.repeat(10_000),
      '\u202eup M 31\u0007 site:52,0',
      'altitude M 31 site:95,0',
      '',
      'constructor',
      'up toString site:52,0',
      'tonight kind:__proto__ site:52,0',
    ];
    const lines = Array.from({ length: 1000 }, (_, i) =>
      i % 10 === 9
        ? nasty[Math.floor(i / 10) % nasty.length]!
        : `altitude NGC ${i + 1} site:52.71,0.12 at:2026-12-13T2${i % 4}:00Z`,
    );
    const { code, stdout } = await runProgram('ask', ['--json', '-'], folder, { input: `${lines.join('\n')}\n` });
    expect(code).toBe(0);
    const objects = stdout
      .trimEnd()
      .split('\n')
      .map((line) => z.union([answered, refused]).parse(JSON.parse(line)));
    expect(objects.map(({ command }) => command)).toEqual(lines);
    expect(objects.filter(({ ok }) => ok).length).toBeGreaterThan(880);
    expect(stdout).not.toMatch(/\bat .*\.ts:\d+/u);
  }, 60_000);

  it('exits 0 when the one question was a bad one, 2 when a setting is', async () => {
    expect((await runProgram('ask', ['--json', 'up Qwzrt site:52,0'], folder)).code).toBe(0);
    const wrong = await runProgram('ask', ['help'], folder, { env: { PIERHAND_HTTP_PORT: 'many' } });
    expect(wrong.code).toBe(2);
    expect(wrong.stderr.trim().split('\n')).toHaveLength(1);
    expect(wrong.stderr).toContain('PIERHAND_HTTP_PORT');
  });
});

describe('ask', () => {
  it.each([[['--jsno', '-']], [['--jsno -']], [['--bogus', 'moon']], [['moon', '--jsno']]])(
    'ends with 2 where %j has an option that there is not, naming those that are',
    async (args) => {
      const { code, stdout, stderr } = await runProgram('ask', args, folder);
      expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
      expect(stderr).toMatch(/^There is no option --(?:jsno|bogus): --json, --help, or a question in quotes\.\n$/u);
    },
  );

  it('takes a question that begins with a sign, and a program’s option told within one, as words', async () => {
    for (const line of [['-5° altitude'], ['triage', 'I', 'ran', 'ls', '--all', 'and', 'see', 'nothing']])
      expect((await runProgram('ask', line, folder)).code).toBe(0);
  });
});

describe('the console on a pipe', () => {
  it('answers line by line without a prompt or colours, writes the picture it names, and ends with the input', async () => {
    const { code, stdout } = await runProgram('main', ['up', 'M', '46', 'site:52.71,0.12'], folder, {
      input: 'up M 102 site:52.71,0.12\n1\nquit\n',
    });
    expect(code).toBe(0);
    // eslint-disable-next-line no-control-regex
    expect(stdout).not.toMatch(/\u001b|pierhand>/u);
    expect(stdout.indexOf('M 46, night of')).toBeGreaterThanOrEqual(0);
    expect(stdout.indexOf('could be')).toBeGreaterThan(stdout.indexOf('M 46, night of'));
    expect(stdout.indexOf('M 101 (Pinwheel Galaxy), night of')).toBeGreaterThan(stdout.indexOf('could be'));
    const picture = /Picture: (\S+\.png)/u.exec(stdout)?.[1];
    expect(readFileSync(path.join(folder, picture!)).subarray(1, 4).toString()).toBe('PNG');
  }, 60_000);
});
