/** The guide's platform is built and run: what DEVELOPERS.md shows is the file that answers here. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, expect, describe, it } from 'vitest';
import { createLog } from '../../bot/app/log.js';
import { createMetrics } from '../../bot/app/metrics.js';
import { loadSettings } from '../../bot/app/settings.js';
import type { Deps } from '../../bot/commands/core/command.js';
import { projectRoot } from '../../bot/ground/project-root.js';
import type { Reminder } from '../../bot/store/store.js';
import { realDeps } from '../commands/real-deps.js';
import { forbiddenImports } from '../structure/borders.js';
import { startLetters } from './letters/index.js';

const NOW = Date.UTC(2026, 10, 25, 20);
const FILE = path.join(projectRoot(), 'test/platforms/letters/index.ts');
/** As it stands in a folder of bot/platforms. */
const source = readFileSync(FILE, 'utf8')
  .replaceAll("'../../../bot/platforms/", "'../")
  .replaceAll("'../../../bot/", "'../../");
let deps: Deps;
beforeAll(async () => {
  deps = await realDeps();
});

const opened = async () => {
  const posted: { readonly to: string; readonly words: string }[] = [];
  let take: ((from: string, words: string) => void) | undefined;
  const metrics = createMetrics();
  const platform = await startLetters(
    { deps, settings: loadSettings({}), log: createLog('silent', []), metrics, now: () => NOW },
    {
      open: (taken) => {
        take = taken;
        return () => (take = undefined);
      },
      post: async (to, words) => void posted.push({ to, words }),
    },
  );
  return { platform, posted, metrics, write: (from: string, words: string) => take?.(from, words) };
};

describe('the platform of the guide', () => {
  it('is the one that the guide shows', () => {
    const guide = readFileSync(path.join(projectRoot(), 'DEVELOPERS.md'), 'utf8');
    expect(guide).toContain(`\`\`\`ts\n${source}\`\`\``);
  });

  it('may import what it imports, in its own folder, with no line in the table of borders', () => {
    expect(forbiddenImports(new Map([['bot/platforms/letters/index.ts', source]]))).toEqual([]);
  });

  it('answers on the board, and what is a member’s own to that member alone', async () => {
    const { platform, posted, metrics, write } = await opened();
    write('tamsin', 'altitude Aldebaran site:52.71,0.12');
    write('ravi', 'mydata');
    write('ravi', 'wibble');
    // It closes the box first and lets what came be answered.
    await platform.stop();
    write('ravi', 'help');
    expect(posted).toHaveLength(3);
    const to = (who: string) => posted.filter((letter) => letter.to === who).map(({ words }) => words);
    expect(to('ravi').join('\n')).toMatch(/^What I keep about you\n/u);
    expect(to('board')).toHaveLength(2);
    expect(to('board').join('\n')).toMatch(/Aldebaran[^]*Highest: /u);
    expect(to('board').join('\n')).toContain('wibble');
    const { body } = await metrics.expose();
    expect(body).toMatch(/platform="letters",[^}]*outcome="problem"/u);
  });

  it('tells everyone what is dangerous', async () => {
    const { platform, posted, write } = await opened();
    write('tamsin', 'altitude Sun site:52.71,0.12 at:2026-06-21T12:00Z');
    await platform.stop();
    expect(posted[0]?.words).toMatch(/filter/iu);
  });

  it('brings a reminder to its member or to the board', async () => {
    const { platform, posted } = await opened();
    const reminder = { memberId: 'letters:tamsin', to: 'member' } as Reminder;
    expect(await platform.deliver(reminder, 'Look up.')).toBe('sent');
    await platform.deliver({ ...reminder, to: 'channel' }, 'Look up.');
    expect(posted.map(({ to }) => to)).toEqual(['tamsin', 'board']);
  });
});
