/** The two whole stories on the console: two members at one machine, and a bot started anew on the same store. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { consoleSession, type ConsoleSession } from '../../bot/platforms/console/session.js';
import { consoleLines } from '../../bot/platforms/console/write-reply.js';
import type { RunningPlatform } from '../../bot/app/platform.js';
import { openStore } from '../../bot/store/open-store.js';
import type { Store } from '../../bot/store/store.js';
import { realDeps } from '../commands/real-deps.js';
import { connectionWalk } from '../stories/connection-walk.js';
import { memberLife } from '../stories/member-life.js';
import { lookThrough } from '../stories/look-through.js';
import { EVENING, numberOf, type Actor, type Shown, type Stage } from '../stories/stage.js';

let dataFolder: string;
let store: Store;
let session: ConsoleSession;
let clockUtcMs = EVENING;
const printed: string[] = [];
const errors: unknown[] = [];

const start = async (): Promise<void> => {
  store = await openStore({ dataFolder });
  session = consoleSession(
    await realDeps({ store }),
    () => clockUtcMs,
    (error) => errors.push(error),
  );
};
beforeEach(async () => {
  dataFolder = mkdtempSync(path.join(tmpdir(), 'pierhand-console-'));
  clockUtcMs = EVENING;
  printed.length = 0;
  errors.length = 0;
  await start();
});
afterEach(async () => {
  await store.close();
  rmSync(dataFolder, { recursive: true, force: true });
  expect(errors).toEqual([]);
});

const platform: RunningPlatform = {
  name: 'console',
  health: () => ({ ok: true, detail: '' }),
  stop: async () => undefined,
  deliver: async (_reminder, text) => {
    printed.push(text);
    return 'sent';
  },
};

const says = async (line: string): Promise<Shown> => {
  const outcome = await session.answer(line);
  const lines = consoleLines(outcome, null, { colour: false, width: 1000 });
  // Nobody else reads a terminal.
  return {
    text: lines.join('\n'),
    labels: (outcome.choices ?? []).map(({ label }) => label),
    isPrivate: 'audience' in outcome && outcome.audience === 'asker',
  };
};

const at = (name: string): Actor => {
  const speaks = async (): Promise<void> => {
    await session.answer(`as ${name}`);
  };
  return {
    name,
    memberId: `console:${name.toLowerCase()}`,
    asks: async (line) => {
      await speaks();
      return says(line);
    },
    picks: async (shown, label) => {
      await speaks();
      return says(String(numberOf(shown, label)));
    },
    wasTold: async () => [...printed],
  };
};

const stage: Stage = {
  helper: at('Odalys'),
  member: at('Tamsin'),
  clubId: 'console:club',
  store: () => store,
  get dataFolder() {
    return dataFolder;
  },
  restart: async () => {
    await store.close();
    await start();
  },
  clockTo: async (utcMs) => {
    clockUtcMs = utcMs;
    await lookThrough(store, platform, () => clockUtcMs);
  },
};

it('a connection walk, by a helper for another member, from the first message to the verified cure, across a restart', () =>
  connectionWalk(stage));

it('a member adds a site by place name, sets a horizon, is reminded, exports and forgets', () => memberLife(stage));
