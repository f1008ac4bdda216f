/** The borders between the rooms of bot/ hold, and each check is seen to fail on a planted breach. */
import { describe, expect, it } from 'vitest';
import { projectRoot } from '../../bot/ground/project-root.js';
import { allowedTo, knotsIn, forbiddenImports, readSources, roomOf, sideDoors } from './borders.js';

const sources = readSources(projectRoot(), 'bot');

const plantedIn = (found: readonly string[], file: string) => found.filter((line) => line.startsWith(file));
const planted = (file: string, source: string) => new Map([...sources, [file, source]]);

describe('the rooms of bot/', () => {
  it('import only what each may', () => {
    expect(forbiddenImports(sources)).toEqual([]);
    expect([...sources.keys()].map(roomOf).filter((room) => allowedTo(room) === null)).toEqual([]);
  });

  it('have no cycle of files, types included', () => {
    expect(knotsIn(sources)).toEqual([]);
  });

  it('are entered by their door where they have one', () => {
    expect(sideDoors(sources)).toEqual([]);
  });
});

describe('a planted breach', () => {
  it('is found: the sky that reads the store, even for a type', () => {
    const file = 'bot/sky/planted.ts';
    const breach = planted(file, "import type { Store } from '../store/store.js';");
    expect(plantedIn(forbiddenImports(breach), file)).toEqual([
      `${file} (sky) may not import bot/store/store.ts (store)`,
    ]);
  });

  it('is found: a platform that runs a command by itself, and one that leans on another', () => {
    const breach = planted(
      'bot/platforms/console/planted.ts',
      "import { up } from '../../commands/up.js';\nconst late = await import('../discord/index.js');",
    );
    expect(plantedIn(forbiddenImports(breach), 'bot/platforms/console/planted.ts')).toHaveLength(2);
  });

  it('is found: a room that the table does not know', () => {
    const breach = planted('bot/attic/planted.ts', "import { problem } from '../ground/problem.js';");
    expect(plantedIn(forbiddenImports(breach), 'bot/attic/planted.ts')).toHaveLength(1);
  });

  it('is found: a cycle through a type', () => {
    const breach = planted('bot/ground/ids.ts', "import type { A } from './planted.js';");
    const both = new Map([...breach, ['bot/ground/planted.ts', "import type { B } from './ids.js';"]]);
    expect(knotsIn(both)).toContainEqual(['bot/ground/ids.ts', 'bot/ground/planted.ts']);
  });

  it('is found: a window used as a door', () => {
    expect(
      sideDoors(planted('bot/reply/planted.ts', "import '../x.js';\nexport { a } from '../places/site.js';")),
    ).toEqual(['bot/reply/planted.ts goes round the door to bot/places/site.ts']);
  });

  it('is found: a new door that others go round', () => {
    const breach = planted('bot/sky/index.ts', "export { wrapDeg360 } from './angles.js';");
    expect(sideDoors(breach)).toContain('bot/places/site.ts goes round the door to bot/sky/types.ts');
  });
});
