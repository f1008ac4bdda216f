import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { loadCatalogue } from '../../bot/catalogue/index.js';

const folders: string[] = [];

const folderWith = (deepSky: string, stars: string): string => {
  const folder = mkdtempSync(join(tmpdir(), 'catalogue-'));
  folders.push(folder);
  writeFileSync(join(folder, 'deep-sky.csv'), deepSky);
  writeFileSync(join(folder, 'stars.csv'), stars);
  return folder;
};

afterEach(() => folders.splice(0).forEach((folder) => rmSync(folder, { recursive: true })));

const STAR = '91262,279.234735,38.783689,200.94,286.23,130.23,0.03,Lyr,alp,3,Lyr,Vega,\n';
const GALAXY = 'NGC 1,galaxy,spiral galaxy,,1.81600,27.70808,Peg,12.93,1.57,1.07,,,,\n';

describe('reading the catalogue', () => {
  it('reads a file of one line', () => {
    const catalogue = loadCatalogue(folderWith(`# head\n${GALAXY}`, STAR));
    expect(catalogue.sweep.length).toBe(2);
    expect(catalogue.targetById('ngc1')?.kindText).toBe('spiral galaxy');
  });

  it.each([
    ['NGC 1,galaxy,spiral galaxy,1.8\n', STAR, /deep-sky.csv line 1: 4 columns where 14/],
    [`# head\n${GALAXY}`, `# head\n${STAR}91263,1\n`, /stars.csv line 3: 2 columns where 13/],
    [GALAXY.replace('1.81600', '361'), STAR, /ngc1 .*impossible position/],
    [GALAXY.replace('galaxy,spiral', 'gallaxy,spiral'), STAR, /unknown kind "gallaxy"/],
    [GALAXY + GALAXY, STAR, /ngc1 is twice/],
  ])('names what is wrong with a bad file (%#)', (deepSky, stars, message) => {
    expect(() => loadCatalogue(folderWith(deepSky, stars))).toThrow(message);
  });

  it('names a file that is not there', () => {
    expect(() => loadCatalogue('/nowhere')).toThrow(/deep-sky.csv/);
  });

  it.each(['deep-sky.csv', 'stars.csv'])('%s says its source, licence and generator at its head', (file) => {
    const head = readFileSync(join('knowledge/catalogue', file), 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('#'))
      .join('\n');
    expect(head).toMatch(/Source: \S+/);
    expect(head).toMatch(/licen[cs]e|public domain/i);
    expect(head).toMatch(/Generator: python scripts\/catalogue\/make-/);
  });
});
