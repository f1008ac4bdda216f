/** The fault model that the build leaves is the one the YAML says, and counts only while the YAML is what it was. */
import { cpSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { compileEntries, readCompiled } from '../../bot/triage/model/compiled-entries.js';
import { loadTriage } from '../../bot/triage/index.js';
import { readEntries } from '../../bot/triage/model/read-entries.js';

const SHIPPED = path.join(projectRoot(), 'knowledge/connection');

const ownCopy = (): { readonly folder: string; readonly file: string } => {
  const top = mkdtempSync(path.join(tmpdir(), 'compiled-'));
  const folder = path.join(top, 'connection');
  cpSync(SHIPPED, folder, { recursive: true });
  return { folder, file: path.join(top, 'dist/connection.json') };
};

describe('the compiled fault model', () => {
  it('holds what the YAML holds', () => {
    const { folder, file } = ownCopy();
    expect(compileEntries(folder, file)).toBe(true);
    expect(readCompiled(folder, file)).toEqual(readEntries(SHIPPED).entries);
  });

  it('counts no more once a file has changed, is new or gone, nor where it is broken', () => {
    const { folder, file } = ownCopy();
    compileEntries(folder, file);
    const links = path.join(folder, 'links.yaml');
    const before = readFileSync(links, 'utf8');
    writeFileSync(links, `${before}# another word\n`);
    expect(readCompiled(folder, file)).toBeNull();
    writeFileSync(links, before);
    expect(readCompiled(folder, file)).not.toBeNull();
    writeFileSync(path.join(folder, 'checks/own.yaml'), '[]\n');
    expect(readCompiled(folder, file)).toBeNull();
    writeFileSync(file, '{"stamp":');
    expect(readCompiled(folder, file)).toBeNull();
    expect(readCompiled(folder, `${file}.none`)).toBeNull();
  });

  it('is not made of a folder with a mistake, which loading then tells', () => {
    const { folder, file } = ownCopy();
    writeFileSync(path.join(folder, 'links.yaml'), '- id: lone\n');
    expect(compileEntries(folder, file)).toBe(false);
    expect(() => loadTriage(folder, undefined, file)).toThrow('lone');
  });
});
