/** From joining to leaving, over a store on disk, with restarts in between: a site by place name, a horizon, a reminder, the export, forgetting. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, it } from 'vitest';
import { createRounds, startReminders } from '../../bot/reminders/start-reminders.js';
import { openStore, SQLITE_FILE } from '../../bot/store/open-store.js';
import type { Store } from '../../bot/store/store.js';
import { contextOver, fakePlatform } from '../reminders/fake-platform.js';
import { inPrivate, MBALI, openClub, RAVI, TAMSIN, type Club } from './club-bench.js';

const MINUTE = 60_000;
let dataFolder: string;
let store: Store;
let club: Club;
/** As after a restart of the bot. */
const restarted = async (): Promise<void> => {
  await store.close();
  store = await openStore({ dataFolder });
  club = await openClub({ store });
};
beforeEach(async () => {
  dataFolder = mkdtempSync(join(tmpdir(), 'pierhand-life-'));
  store = await openStore({ dataFolder });
  club = await openClub({ store });
});
afterEach(async () => {
  await store.close();
  rmSync(dataFolder, { recursive: true, force: true });
});

const filesHolding = (words: string): readonly string[] =>
  readdirSync(dataFolder).filter((name) => readFileSync(join(dataFolder, name)).includes(words));

/** Runs the reminders until nothing is due at that instant; gives what was said. */
const saidAt = async (utcMs: number): Promise<readonly { readonly memberId: string; readonly text: string }[]> => {
  const platform = fakePlatform('discord');
  const { context } = contextOver(store, () => utcMs);
  const running = startReminders(context, [platform], { lookEveryMs: 5, purgeEveryMs: 3_600_000 });
  await new Promise((resolve) => setTimeout(resolve, 60));
  await running.stop();
  return platform.sends.map(({ reminder, text }) => ({ memberId: reminder.memberId, text }));
};

it('a member adds a site by place name, sets a horizon, is reminded, exports and forgets', async () => {
  const asker = inPrivate(TAMSIN);
  const evening = Date.UTC(2026, 10, 25, 8, 30);

  // Alice Springs keeps UTC+9:30; 18:00 there is 08:30 UTC.
  expect(
    (await club.says('site add name:"Red Ridge" position:"Alice Springs"', asker, evening)).data['site'],
  ).toMatchObject({ zone: 'Australia/Darwin' });
  await club.says('site horizon name:"Red Ridge" horizon:"0:5, 60:12, 90:25, 120:10, 270:5"', asker, evening);
  await club.says('gear mount:german system:linux', asker, evening);
  await restarted();

  const set = await club.says('remind Aldebaran when:horizon before:15', asker, evening);
  expect(set.summary).toContain('ACST');
  const dueUtcMs = Date.parse(set.data['dueUtc'] as string);
  expect(dueUtcMs).toBeGreaterThan(evening);
  await restarted();

  expect(await saidAt(dueUtcMs - MINUTE)).toEqual([]);
  await restarted();
  // The bot was down for a quarter of an hour.
  const said = await saidAt(dueUtcMs + 15 * MINUTE);
  expect(said).toEqual([
    {
      memberId: TAMSIN.memberId,
      text: `${set.data['text'] as string} (This comes 15 min late and was true then: see where the Sun is now before you point.)`,
    },
  ]);
  expect(said[0]?.text).toMatch(
    /^Aldebaran clears the horizon of Red Ridge at \d\d:\d\d ACST, \d+° high in the (north|east)/u,
  );
  expect(await saidAt(dueUtcMs + 16 * MINUTE)).toEqual([]);

  await club.says('remind when:sunrise', asker, evening);
  const shown = await club.says('mydata', asker, evening);
  expect(shown.audience).toBe('asker');
  expect(shown.data['kept']).toMatchObject({
    memberId: TAMSIN.memberId,
    gear: { mount: 'german', connection: null, system: 'linux' },
    walks: [],
    walksHelpedWith: [],
    sites: [
      {
        name: 'Red Ridge',
        horizon: [
          { azimuthDeg: 0, altitudeDeg: 5 },
          { azimuthDeg: 60, altitudeDeg: 12 },
          { azimuthDeg: 90, altitudeDeg: 25 },
          { azimuthDeg: 120, altitudeDeg: 10 },
          { azimuthDeg: 270, altitudeDeg: 5 },
        ],
      },
    ],
    reminders: [{ kind: 'sunrise' }],
  });
  const sites = await club.says('mydata part:sites', asker, evening);
  expect(sites.facts).toEqual([
    { label: 'Red Ridge', value: expect.stringContaining('horizon 0:5, 60:12, 90:25, 120:10, 270:5') as string },
  ]);

  // Asking is not yet forgetting.
  const asked = await club.says('forget', asker, evening);
  expect((await club.says('mydata part:sites', asker, evening)).facts).toHaveLength(1);
  const forgotten = await club.says(
    asked.choices!.find(({ label }) => label === 'Yes, forget me')!.run,
    asker,
    evening,
  );
  expect(forgotten.data).toEqual({ removed: 3 });
  expect((await club.says('mydata', asker, evening)).summary).toBe('Nothing.');
  expect((await club.refused('dark', asker, evening)).problem).toBe('no-site');
  expect(await saidAt(evening + 48 * 60 * MINUTE)).toEqual([]);
  await restarted();
  expect((await club.says('mydata', asker, evening)).summary).toBe('Nothing.');
});

it("forgetting leaves no trace in any file, while the store is open, and what is the club's in place", async () => {
  await club.says('site add name:"Fenwold Common" position:52.71,0.12 for:club', MBALI);
  await club.says('remind when:sunrise to:channel nights:every', MBALI);
  await club.says('site add name:"Mbalis Secret Garden" position:52.34,0.56', MBALI);
  await club.says('remind Aldebaran above:30', MBALI);
  expect(filesHolding('Secret Garden')).not.toEqual([]);
  const forgotten = await club.says('forget confirm:yes', MBALI);
  expect(forgotten.data).toEqual({ removed: 2 });
  expect((await club.says('dark', RAVI)).notes).toContain("Site: Fenwold Common (the club's site).");
  expect((await club.says('remind list', { ...RAVI, isManager: true })).data['reminders']).toHaveLength(1);
  expect(filesHolding(MBALI.memberId)).toEqual([]);
  expect(filesHolding('Secret Garden')).toEqual([]);
  expect(filesHolding('Fenwold Common')).toEqual([SQLITE_FILE]);
});

it('old walks and answered events go by themselves, new ones stay', async () => {
  const now = Date.UTC(2026, 10, 25, 18);
  const day = 24 * 60 * MINUTE;
  const walk = (id: string, updatedUtcMs: number) => ({
    id,
    clubId: 'c',
    memberId: TAMSIN.memberId,
    helperId: null,
    platform: 'discord',
    channelId: 'c',
    state: {},
    updatedUtcMs,
    endedUtcMs: null,
  });
  await store.walks.put(walk('old', now - 31 * day));
  await store.walks.put(walk('new', now - 29 * day));
  await store.events.claim('old', now - 4 * day);
  await store.events.claim('new', now - 2 * day);
  // Nothing goes before the clock has run an hour without a jump.
  let elapsedMs = 0;
  const { context } = contextOver(store, () => now + elapsedMs);
  const { look } = createRounds(context, [], { elapsedMs: () => elapsedMs });
  await look();
  expect(await store.walks.get('old')).not.toBeNull();
  elapsedMs = 60 * MINUTE;
  await look();
  expect(await store.walks.get('old')).toBeNull();
  expect(await store.walks.get('new')).not.toBeNull();
  expect(await store.events.claim('old', now)).toBe(true);
  expect(await store.events.claim('new', now)).toBe(false);
});
