import { isProblem } from '../../bot/ground/problem.js';
import { createServer, type Server } from 'node:http';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, it, vi } from 'vitest';
import { completeTargets, resolveTarget, targetProblemMessage } from '../../bot/catalogue/index.js';
import { keepElements, type ElementsKeeper } from '../../bot/small-bodies/index.js';
import { catalogue } from '../catalogue/loaded.js';

const LIST = readFileSync('test/small-bodies/elements.txt', 'utf8');
const NOW = Date.UTC(2026, 10, 25, 20);
const opened: { readonly keepers: ElementsKeeper[]; readonly folders: string[]; readonly servers: Server[] } = {
  keepers: [],
  folders: [],
  servers: [],
};
const folder = (): string => {
  const made = mkdtempSync(path.join(tmpdir(), 'elements-'));
  opened.folders.push(made);
  return made;
};
const kept = (source: string | null, problems: string[] = [], dataFolder = folder()): ElementsKeeper => {
  const keeper = keepElements({ source, dataFolder, now: () => NOW, onProblem: (m) => problems.push(m) });
  opened.keepers.push(keeper);
  return keeper;
};
const served = async (answer: () => { readonly status: number; readonly body: string }): Promise<string> => {
  const server = createServer((_, response) => {
    const { status, body } = answer();
    response.writeHead(status).end(body);
  });
  opened.servers.push(server);
  await new Promise<void>((done) => server.listen(0, '127.0.0.1', done));
  const address = server.address();
  return `http://127.0.0.1:${typeof address === 'object' && address !== null ? address.port : 0}/list`;
};
const withList = () => {
  const file = path.join(folder(), 'list.txt');
  writeFileSync(file, LIST);
  return { ...catalogue, moving: kept(file).moving };
};

afterEach(() => {
  for (const keeper of opened.keepers.splice(0)) keeper.close();
  for (const server of opened.servers.splice(0)) server.close();
  for (const made of opened.folders.splice(0)) rmSync(made, { recursive: true });
});

describe('a comet by its name', () => {
  it.each([
    ['C/2023 A3', 'C/2023 A3 (Tsuchinshan-ATLAS)'],
    ['comet tsuchinshan', 'C/2023 A3 (Tsuchinshan-ATLAS)'],
    ['tsuchinshan-atlas', 'C/2023 A3 (Tsuchinshan-ATLAS)'],
    ['12P', '12P/Pons-Brooks'],
    ['pons brooks', '12P/Pons-Brooks'],
    ['halley', '1P/Halley'],
    ['asteroid vesta', 'Vesta'],
    ['(1) Ceres', 'Ceres'],
    ['1 Ceres', 'Ceres'],
  ])('“%s” is %s', (typed, name) => {
    const found = resolveTarget(withList(), typed);
    expect(!isProblem(found) && found.target.name).toBe(name);
    expect(!isProblem(found) && found.note).toMatch(/orbital elements.* Magnitude predicted/);
  });

  it('says that comets surprise, and when elements are old', () => {
    const found = resolveTarget(withList(), 'C/2023 A3');
    expect(!isProblem(found) && found.note).toMatch(/for 2024-10-17.*old.*comets surprise/);
  });

  it('asks which of two of the same discoverer', () => {
    const found = resolveTarget(withList(), 'comet fenwold');
    expect(!isProblem(found) || (found.problem === 'ambiguous-target' && found.candidates.length)).toBe(2);
  });

  it('completes, after what is fixed among the stars', () => {
    expect(completeTargets(withList(), 'tsuch').map((c) => c.value)).toContain('C/2023 A3 (Tsuchinshan-ATLAS)');
    expect(completeTargets(withList(), 'vest').map((c) => c.value)).toContain('Vesta');
  });

  it('leaves the Iris Nebula to those who type iris', () => {
    const found = resolveTarget(withList(), 'iris');
    expect(!isProblem(found) && found.target.id).toBe('ngc7023');
  });

  it('without a list, tells kindly how there would be one; a satellite is another matter', () => {
    const said = (text: string): string => {
      const found = resolveTarget({ ...catalogue, moving: kept(null).moving }, text);
      return !isProblem(found) ? '' : targetProblemMessage(found);
    };
    expect(said('comet halley')).toContain('whoever runs this bot');
    expect(said('C/2023 A3')).toContain('whoever runs this bot');
    expect(said('the ISS')).toMatch(/Satellites are not followed/);
  });
});

describe('keeping the list', () => {
  it('fetches it, keeps a copy, and starts from the copy when the fetch fails', async () => {
    let up = true;
    const address = await served(() => (up ? { status: 200, body: LIST } : { status: 503, body: '' }));
    const data = folder();
    const first = kept(address, [], data);
    await vi.waitFor(() => expect(first.moving.state()).toBe('read'), 10_000);
    up = false;
    const problems: string[] = [];
    const second = kept(address, problems, data);
    expect(second.moving.state()).toBe('read');
    await vi.waitFor(() => expect(problems.join()).toMatch(/503; the last good list is kept/));
    expect(second.moving.find('Ceres')).toHaveLength(1);
  });

  it('says in words that the file is not there, or is a folder', async () => {
    const problems: string[] = [];
    const nowhere = path.join(folder(), 'nowhere.txt');
    kept(nowhere, problems);
    kept(path.dirname(nowhere), problems);
    await vi.waitFor(() => expect(problems).toHaveLength(2));
    expect(problems).toEqual([
      `PIERHAND_ELEMENTS: the file ${nowhere} is not there.`,
      `PIERHAND_ELEMENTS: the file ${path.dirname(nowhere)} is a folder.`,
    ]);
  });

  it('says what is wrong with a list that is none, and goes on without', () => {
    const file = path.join(folder(), 'list.txt');
    writeFileSync(file, 'hello\n');
    const problems: string[] = [];
    expect(kept(file, problems).moving.state()).toBe('not-read');
    return vi.waitFor(() => expect(problems.join()).toMatch(/PIERHAND_ELEMENTS: no line/));
  });
});
