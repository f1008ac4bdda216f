/** What the guides name is there, and what is there they name: packages, rooms, commands to type, files. */
import { existsSync, readFileSync, readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { EXAMPLES, PROMPT } from '../../scripts/docs/examples.js';

const GUIDES = [
  'DEVELOPERS.md',
  'README.md',
  'deploy/README.md',
  'knowledge/README.md',
  'knowledge/connection/README.md',
];

const read = (file: string): string => readFileSync(path.join(projectRoot(), file), 'utf8');
const manifest = JSON.parse(read('package.json')) as Readonly<Record<string, Readonly<Record<string, string>>>>;
const developers = read('DEVELOPERS.md');

const section = (title: string): string => {
  const [, after = ''] = developers.split(`\n## ${title}\n`);
  return after.split('\n## ')[0] ?? '';
};
const inBackticks = (text: string): string[] => [...text.matchAll(/`([^`\n]+)`/gu)].map(([, found = '']) => found);

describe('the guides name what is there', () => {
  it('each package with its reason, and no other', () => {
    const installed = ['dependencies', 'optionalDependencies', 'devDependencies'].flatMap((kind) =>
      Object.keys(manifest[kind] ?? {}),
    );
    const reasons = section('Why each dependency').split('\n### ')[0] ?? '';
    expect(installed.filter((name) => !inBackticks(reasons).includes(name))).toEqual([]);
    const table = reasons.split('\n').filter((line) => line.startsWith('| `'));
    const named = table.flatMap((line) => inBackticks(line.split('|')[1] ?? ''));
    expect(named.filter((name) => !installed.includes(name))).toEqual([]);
  });

  it('each room and program of bot/', () => {
    const tree = section('How it hangs together').split('```')[1] ?? '';
    const there = readdirSync(path.join(projectRoot(), 'bot'), { withFileTypes: true });
    const missing = there.filter((one) => !tree.includes(one.isDirectory() ? `${one.name}/` : one.name));
    expect(missing.map(({ name }) => name)).toEqual([]);
  });

  it("README's conversations hold all that is asked for them, in their order, so that who types it is answered the same", () => {
    const readme = read('README.md');
    const made = [...readme.matchAll(/<!-- made: example ([a-z]+) -->([\s\S]*?)<!-- end -->/gu)];
    const shown = made.map(([, name, text = '']) => ({
      name,
      lines: text.split('\n').flatMap((line) => (line.startsWith(PROMPT) ? [line.slice(PROMPT.length)] : [])),
    }));
    expect(shown).toEqual(EXAMPLES);
  });

  it.each(GUIDES)('%s: commands to type, and paths', (guide) => {
    const text = read(guide);
    const scripts = [...text.matchAll(/npm run (?:-s )?([a-z:]+)/gu)].map(([, name = '']) => name);
    expect(scripts.filter((name) => !Object.hasOwn(manifest['scripts'] ?? {}, name))).toEqual([]);
    const paths = inBackticks(text).filter((one) => /^(?:bot|test|scripts|knowledge|deploy)\/[\w./-]+$/u.test(one));
    // A platform as the guide's example would have it.
    const missing = paths.filter((one) => !one.includes('/letters/') && !existsSync(path.join(projectRoot(), one)));
    expect(missing).toEqual([]);
  });
});
