/** The club's folder as an operator may lay it out, and how the start and the check tell what is in force. */
import { cpSync, mkdirSync, mkdtempSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { problemLine } from '../../bot/triage/model/knowledge-problem.js';
import { countEntries, readEntries } from '../../bot/triage/model/read-entries.js';
import { runProgram } from '../whole-program.js';

vi.setConfig({ testTimeout: 120_000 });
const GEAR = path.resolve('deploy/club-knowledge');
const root = mkdtempSync(path.join(tmpdir(), 'pierhand-club-folder-'));
afterAll(() => rmSync(root, { recursive: true, force: true }));

const laidOut = (name: string, lay: (folder: string) => void): string => {
  const folder = path.join(root, name);
  mkdirSync(folder);
  lay(folder);
  return folder;
};
const linesOf = (folder: string): readonly string[] =>
  readEntries('knowledge/connection', folder).problems.map(problemLine);

const deeper = laidOut('deeper', (folder) => cpSync(GEAR, path.join(folder, 'our-gear'), { recursive: true }));
const bare = laidOut('bare', (folder) => cpSync(path.join(GEAR, 'faults'), folder, { recursive: true }));
const empty = laidOut('empty', () => undefined);
const misspelt = laidOut('misspelt', (folder) => {
  cpSync(GEAR, folder, { recursive: true });
  renameSync(path.join(folder, 'faults'), path.join(folder, 'fualts'));
});

describe('a club’s folder laid out wrongly', () => {
  it.each([
    [
      deeper,
      `${deeper}: nothing in this folder is read: it has no faults/ and no checks/; is ${deeper}/our-gear meant?`,
    ],
    [bare, `${bare}/our-pier.yaml:1: nothing is read from this file: faults go into faults/`],
    [empty, `${empty}: nothing in this folder is read: it has no faults/ and no checks/`],
    [misspelt, `${misspelt}/fualts/our-pier.yaml:1: nothing is read from this file: did you mean faults/?`],
    [`${root}/nowhere`, `${root}/nowhere: there is no such folder`],
  ])('%s is told first', (folder, line) => {
    expect(linesOf(folder)[0]).toContain(line);
  });

  it('ends the start with a question that keeps its own mark', async () => {
    const folder = laidOut('misnamed-stage', (there) => {
      mkdirSync(path.join(there, 'faults'));
      writeFileSync(path.join(there, 'faults/our-pier.yaml'), '- { id: mount-switched-off, stage: powr }\n');
    });
    const { stderr } = await runProgram('main', ['help'], root, { env: { PIERHAND_KNOWLEDGE: folder } });
    expect(stderr).toContain('did you mean "power"? Nothing of the folder is taken');
  });

  it('ends the start with that line', async () => {
    const { code, stderr } = await runProgram('main', ['help'], root, { env: { PIERHAND_KNOWLEDGE: deeper } });
    expect(code).toBe(2);
    expect(stderr).toContain(`PIERHAND_KNOWLEDGE: ${deeper}: nothing in this folder is read`);
    expect(stderr.trim()).not.toContain('\n');
  });
});

describe('a club’s folder that fits', () => {
  it('stands in the first line of the log with what it has', async () => {
    const { code, stderr } = await runProgram('main', ['help'], root, {
      env: { PIERHAND_KNOWLEDGE: GEAR, PIERHAND_SITE: '52.71,0.12', LOG_LEVEL: 'info' },
    });
    expect(code).toBe(0);
    const [first = ''] = stderr.split('\n');
    expect(JSON.parse(first)).toMatchObject({
      msg: 'Pierhand starts',
      knowledge: { folder: GEAR, ...countEntries(GEAR) },
      site: 'set',
    });
    expect(countEntries(GEAR)['faults']).toBeGreaterThan(0);
    expect(first).not.toContain('52.71');
  });
});
