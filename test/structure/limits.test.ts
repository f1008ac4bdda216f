/** The limits on a function and a file are errors wherever we write code; each is seen to fail on a planted breach. */
import { join } from 'node:path';
import { ESLint } from 'eslint';
import tseslint from 'typescript-eslint';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { readSources } from './borders.js';

const root = projectRoot();
// A planted file is in no project of the compiler, so the rules that need types are put aside here.
const eslint = new ESLint({ cwd: root, overrideConfig: [tseslint.configs.disableTypeChecked] });

const brokenBy = async (file: string, code: string): Promise<readonly (string | null)[]> => {
  const [result] = await eslint.lintText(code, { filePath: join(root, file) });
  return result?.messages.map((message) => message.ruleId) ?? [];
};
const many = (count: number, line: (index: number) => string, between = '\n') =>
  Array.from({ length: count }, (_, i) => line(i)).join(between);

describe('a planted breach', () => {
  it.each([
    ['complexity', `export const f = (n: number) => {\n${many(15, (i) => `if (n === ${i}) return;`)}\n};\n`],
    [
      'max-params',
      `export const f = (${many(6, (i) => `a${i}: number`, ', ')}) => [${many(6, (i) => `a${i}`, ', ')}];\n`,
    ],
    ['max-lines', many(301, (i) => `export const a${i} = ${i};\n`, '')],
    ['max-depth', `export const f = (n: number) => {\n${'while (n) {'.repeat(5)}n--;${'}'.repeat(5)}\n};\n`],
    ['no-nested-ternary', 'export const f = (n: number) => (n > 1 ? 2 : n > 0 ? 1 : 0);\n'],
  ])('of %s is found in every room', async (rule, code) => {
    for (const file of ['bot/ground/planted.ts', 'scripts/planted.ts', 'test/planted.test.ts']) {
      expect(await brokenBy(file, code), file).toEqual([rule]);
    }
  });

  it('is no breach at the limit', async () => {
    const calm = [
      `export const f = (n: number) => {\n${many(14, (i) => `if (n === ${i}) return;`)}\n};\n`,
      `export const f = (${many(5, (i) => `a${i}: number`, ', ')}) => [${many(5, (i) => `a${i}`, ', ')}];\n`,
      many(300, (i) => `export const a${i} = ${i};\n`, ''),
    ];
    for (const code of calm) expect(await brokenBy('bot/ground/planted.ts', code)).toEqual([]);
  });
});

describe('the store unmarked', () => {
  it('is for the rooms that mark who asked alone', async () => {
    const code = 'export const f = (request) => request.privacy.unmarked.sites.list([]);\n';
    expect(await brokenBy('bot/commands/planted.ts', code)).toEqual(['no-restricted-syntax']);
    expect(await brokenBy('bot/commands/asking/planted.ts', code)).toEqual([]);
  });
});

describe('a table looked up by words', () => {
  it('is no record, which would answer "constructor" too', async () => {
    for (const code of [
      'const TABLE: Readonly<Record<string, number>> = { moon: 1 };\nexport const f = (word: string) => TABLE[word];\n',
      'export const TABLE: Partial<Record<string, number>> = { moon: 1 };\n',
    ])
      for (const room of ['ground', 'sky', 'commands', 'commands/asking'])
        expect(await brokenBy(`bot/${room}/planted.ts`, code), room).toEqual(['no-restricted-syntax']);
    expect(await brokenBy('bot/ground/planted.ts', "export const TABLE = new Map([['moon', 1]]);\n")).toEqual([]);
  });
});

describe('a failure', () => {
  it('has one shape, asked for in one way', async () => {
    for (const code of [
      'export type Found = { readonly ok: true; readonly utcMs: number } | { readonly ok: false };\n',
      "export type Misread = { readonly fault: 'empty' | 'unreadable' };\n",
      "export const f = (found: object) => 'fault' in found;\n",
      "export const f = (found: object) => 'problem' in found;\n",
    ])
      for (const room of ['bot/ground', 'bot/sky', 'bot/commands', 'bot/commands/asking', 'scripts'])
        expect(new Set(await brokenBy(`${room}/planted.ts`, code)), `${room}: ${code}`).toEqual(
          new Set(['no-restricted-syntax']),
        );
  });

  it('is not what a state or a fact is called', async () => {
    const calm = 'export interface Health {\n  readonly ok: boolean;\n  readonly fault: string;\n}\n';
    expect(await brokenBy('bot/ground/planted.ts', calm)).toEqual([]);
  });
});

describe('a function', () => {
  it('is an arrow in every room', async () => {
    expect(await brokenBy('bot/ground/planted.ts', 'export function f(): void {}\n')).toContain('func-style');
  });
});

describe('a lifted rule', () => {
  const unexplained = (sources: ReadonlyMap<string, string>) =>
    [...sources].filter(([, text]) => /eslint-disable(?!.* -- \S+ \S+)/u.test(text)).map(([file]) => file);

  it('says why', () => {
    for (const folder of ['bot', 'scripts']) expect(unexplained(readSources(root, folder))).toEqual([]);
  });

  it('without words is found', () => {
    expect(unexplained(new Map([['planted.ts', '/* eslint-' + 'disable max-lines */']]))).toEqual(['planted.ts']);
  });
});
