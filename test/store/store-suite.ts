/* eslint-disable max-lines -- what every store must do is one suite, run over each database */
/** What a store must do, over whichever database stands behind it. */
import { afterEach, beforeEach, expect, it } from 'vitest';
import {
  type Gear,
  StoreError,
  type NewReminder,
  type Owner,
  type Store,
  type StoredSite,
  type StoredWalk,
} from '../../bot/store/store.js';

export interface Bench {
  /** Another store over the same database, as another process would have it. */
  readonly another: () => Promise<Store>;
  /** Every table's every row, as text. */
  readonly dump: () => Promise<string>;
  readonly done: () => Promise<void>;
}

export const TAMSIN = 'matrix:@tamsin:fenwold.example';
export const RAVI = 'discord:200000000000000002';
const CLUB = 'discord:900000000000000001';
const tamsin: Owner = { kind: 'member', id: TAMSIN };
const NOW = Date.UTC(2026, 10, 25, 18);
const club: Owner = { kind: 'club', id: CLUB };

const GEAR: Gear = {
  mount: 'german',
  connection: null,
  system: 'macos',
  speeds: { primaryDegPerS: 4, secondaryDegPerS: 2.5 },
  limits: { eastDeg: 0, westDeg: 12.5 },
  apertureMm: 127,
};
const quarryField: StoredSite = {
  name: 'Quarry Field',
  latitudeDeg: 52.7,
  longitudeDeg: 0.12,
  elevationM: 31.5,
  zone: 'Europe/London',
  horizon: [
    { azimuthDeg: 90, altitudeDeg: 20.5 },
    { azimuthDeg: 120, altitudeDeg: -1 },
  ],
  sky: 'suburb',
  isDefault: false,
};
const walk = (id: string, more: Partial<StoredWalk> = {}): StoredWalk => ({
  id,
  clubId: CLUB,
  memberId: TAMSIN,
  helperId: null,
  platform: 'discord',
  channelId: 'c1',
  state: { step: 'ask', answers: [1, null, 'ja'] },
  updatedUtcMs: 1000,
  endedUtcMs: null,
  ...more,
});
const reminder = (more: Partial<NewReminder> = {}): NewReminder => ({
  memberId: TAMSIN,
  clubId: CLUB,
  platform: 'matrix',
  channelId: '!room:fenwold.example',
  to: 'member',
  kind: 'altitude',
  dueUtcMs: 1_000_000,
  staleUtcMs: 2_000_000,
  repeat: null,
  text: 'NGC 7331 is 30° high.',
  ...more,
});

export const storeSuite = (open: () => Promise<{ readonly store: Store; readonly bench: Bench }>): void => {
  let store: Store;
  let bench: Bench;
  const opened: Store[] = [];
  const another = async (): Promise<Store> => {
    const made = await bench.another();
    opened.push(made);
    return made;
  };
  beforeEach(async () => {
    ({ store, bench } = await open());
  });
  afterEach(async () => {
    await Promise.all([store, ...opened.splice(0)].map((each) => each.close()));
    await bench.done();
  });
  const codeOf = async (work: Promise<unknown>): Promise<string> => {
    try {
      await work;
      return 'resolved';
    } catch (error) {
      expect(error).toBeInstanceOf(StoreError);
      return (error as StoreError).code;
    }
  };

  it('keeps a site as it was given, and replaces it under any spelling of its name', async () => {
    await store.sites.put(tamsin, quarryField);
    expect(await store.sites.list(tamsin)).toEqual([quarryField]);
    const changed = { ...quarryField, name: 'quarry  FIELD', horizon: null, elevationM: -4.25 };
    await (await another()).sites.put(tamsin, changed);
    expect(await store.sites.list(tamsin)).toEqual([changed]);
    expect(await store.sites.list(club)).toEqual([]);
  });

  it('has at most one usual site an owner, however it is set', async () => {
    await store.sites.put(tamsin, { ...quarryField, isDefault: true });
    await store.sites.put(tamsin, { ...quarryField, name: 'Cold Ridge', isDefault: true });
    await store.sites.put(club, { ...quarryField, name: 'Fenwold Common', isDefault: true });
    const usual = async (owner: Owner) =>
      (await store.sites.list(owner)).filter(({ isDefault }) => isDefault).map(({ name }) => name);
    expect(await usual(tamsin)).toEqual(['Cold Ridge']);
    expect(await store.sites.setDefault(tamsin, 'QUARRY field')).toBe(true);
    expect(await usual(tamsin)).toEqual(['Quarry Field']);
    expect(await store.sites.setDefault(tamsin, 'Nowhere')).toBe(false);
    expect(await usual(tamsin)).toEqual(['Quarry Field']);
    expect(await usual(club)).toEqual(['Fenwold Common']);
    const stores = [store, await another()];
    await Promise.all(
      Array.from({ length: 20 }, (_, i) =>
        stores[i % 2]!.sites.setDefault(tamsin, i % 3 === 0 ? 'Cold Ridge' : 'Quarry Field'),
      ),
    );
    expect(await usual(tamsin)).toHaveLength(1);
  });

  it('renames without overwriting another site, and removes', async () => {
    await store.sites.put(tamsin, quarryField);
    await store.sites.put(tamsin, { ...quarryField, name: 'Cold Ridge' });
    expect(await store.sites.rename(tamsin, 'Quarry Field', 'cold ridge')).toBe(false);
    expect(await store.sites.rename(tamsin, 'Quarry Field', 'QUARRY FIELD')).toBe(true);
    expect(await store.sites.rename(tamsin, 'nowhere', 'somewhere')).toBe(false);
    expect((await store.sites.list(tamsin)).map(({ name }) => name)).toEqual(['Cold Ridge', 'QUARRY FIELD']);
    expect(await store.sites.remove(tamsin, 'cold ridge')).toBe(true);
    expect(await store.sites.remove(tamsin, 'cold ridge')).toBe(false);
    expect(await store.sites.list(tamsin)).toHaveLength(1);
  });

  it('keeps 20 sites an owner and no more, even when two processes add at once', async () => {
    const stores = [store, await another()];
    const results = await Promise.all(
      Array.from({ length: 30 }, (_, i) =>
        codeOf(stores[i % 2]!.sites.put(tamsin, { ...quarryField, name: `Site ${i}` })),
      ),
    );
    expect(results.filter((code) => code === 'resolved')).toHaveLength(20);
    expect(results.filter((code) => code === 'store-limit')).toHaveLength(10);
    expect(await store.sites.list(tamsin)).toHaveLength(20);
    const [first] = await store.sites.list(tamsin);
    expect(await codeOf(store.sites.put(tamsin, { ...first!, elevationM: 1 }))).toBe('resolved');
    expect(await codeOf(store.sites.put(club, quarryField))).toBe('resolved');
  });

  it('keeps any text whole, but for characters no database takes', async () => {
    for (const name of [`O'Hara "x"; drop table sites; --`, '100% \\_ ünï 🌌', '日本', '${1}', '{{x}}']) {
      await store.sites.put(tamsin, { ...quarryField, name });
      expect((await store.sites.list(tamsin)).map((site) => site.name)).toEqual([name]);
      expect(await store.sites.remove(tamsin, name)).toBe(true);
    }
    await store.sites.put(tamsin, { ...quarryField, name: 'a\u0000b\ud800c' });
    expect((await store.sites.list(tamsin)).map((site) => site.name)).toEqual(['ab\ufffdc']);
    await store.notes.set('k\u0000', 'v\u0000\udc00');
    expect(await store.notes.get('k\u0000')).toBe('v\ufffd');
  });

  it('keeps one set of gear a member', async () => {
    expect(await store.gear.get(TAMSIN)).toBeNull();
    const speeds = { primaryDegPerS: 4, secondaryDegPerS: 2.5 };
    const limits = { eastDeg: 0, westDeg: 12.5 };
    await store.gear.put(TAMSIN, {
      mount: 'german',
      connection: 'hand-serial',
      system: null,
      speeds: null,
      limits,
      apertureMm: 203.2,
    });
    expect(await store.gear.get(TAMSIN)).toMatchObject({ speeds: null, limits, apertureMm: 203.2 });
    const now = { mount: 'fork', connection: null, system: 'linux', speeds, limits: null, apertureMm: null } as const;
    await store.gear.put(TAMSIN, now);
    expect(await store.gear.get(TAMSIN)).toEqual(now);
    expect(await store.gear.get(RAVI)).toBeNull();
  });

  it('finds the newest walk under way about a member, or helped by them, in that club alone', async () => {
    await store.walks.put(walk('old', { updatedUtcMs: 1000 }));
    await store.walks.put(walk('new', { updatedUtcMs: 3000, helperId: RAVI }));
    await store.walks.put(walk('ended', { updatedUtcMs: 9000, endedUtcMs: 9000 }));
    await store.walks.put(walk('elsewhere', { updatedUtcMs: 9000, clubId: 'other' }));
    expect((await store.walks.active(CLUB, TAMSIN))?.id).toBe('new');
    expect((await store.walks.active(CLUB, RAVI))?.id).toBe('new');
    expect(await store.walks.active(CLUB, 'discord:3')).toBeNull();
    expect(await (await another()).walks.get('new')).toEqual(walk('new', { updatedUtcMs: 3000, helperId: RAVI }));
    await store.walks.put(walk('new', { updatedUtcMs: 4000, endedUtcMs: 4000, state: [] }));
    expect((await store.walks.active(CLUB, TAMSIN))?.id).toBe('old');
    expect(await store.walks.purge(3500)).toBe(1);
    expect(await store.walks.get('old')).toBeNull();
    expect(await store.walks.get('new')).not.toBeNull();
  });

  it('takes the walk put last for the newest, within one millisecond and with the clock set back', async () => {
    await store.walks.put(walk('a', { updatedUtcMs: 1000 }));
    await store.walks.put(walk('b', { updatedUtcMs: 1000 }));
    expect((await store.walks.active(CLUB, TAMSIN))?.id).toBe('b');
    await store.walks.put(walk('a', { updatedUtcMs: 1000, helperId: RAVI }));
    expect((await store.walks.active(CLUB, TAMSIN))?.id).toBe('a');
    await store.walks.put(walk('b', { updatedUtcMs: 900, helperId: RAVI }));
    expect((await store.walks.active(CLUB, RAVI))?.id).toBe('b');
    await store.walks.put(walk('c', { updatedUtcMs: 900, clubId: 'other' }));
    expect((await store.walks.get('c'))?.updatedUtcMs).toBe(900);
  });

  it('finds the newest walk that another began for a member and that waits for them, in that club alone', async () => {
    const pushed = { helperId: RAVI, awaitsMember: true } as const;
    expect(await store.walks.waiting(CLUB, TAMSIN)).toBeNull();
    await store.walks.put(walk('own', { updatedUtcMs: 9000 }));
    await store.walks.put(walk('pushed', { ...pushed, updatedUtcMs: 1000 }));
    await store.walks.put(walk('newer', { ...pushed, updatedUtcMs: 2000, helperId: 'discord:3' }));
    await store.walks.put(walk('ended', { ...pushed, updatedUtcMs: 3000, endedUtcMs: 3000 }));
    await store.walks.put(walk('elsewhere', { ...pushed, updatedUtcMs: 4000, clubId: 'other' }));
    expect((await store.walks.waiting(CLUB, TAMSIN))?.id).toBe('newer');
    expect(await store.walks.waiting(CLUB, RAVI)).toBeNull();
    await store.walks.put(walk('newer', { updatedUtcMs: 5000, helperId: 'discord:3' }));
    expect((await store.walks.waiting(CLUB, TAMSIN))?.id).toBe('pushed');
  });

  it('counts every outcome, from several processes at once', async () => {
    const stores = [store, await another(), await another()];
    await Promise.all(
      Array.from({ length: 60 }, (_, i) =>
        stores[i % 3]!.outcomes.add(CLUB, i % 2 === 0 ? 'cable' : 'port', `console:${i}`, NOW),
      ),
    );
    expect(await store.outcomes.counts(CLUB)).toEqual({ cable: 30, port: 30 });
    expect(await store.outcomes.counts('other')).toEqual({});
  });

  it('counts a member once for a cause and month, lets a club begin afresh, and forgets who was counted', async () => {
    const december = Date.UTC(2026, 11, 1);
    expect(await store.outcomes.add(CLUB, 'cable', TAMSIN, NOW)).toBe(true);
    for (let i = 0; i < 20; i++) expect(await store.outcomes.add(CLUB, 'cable', TAMSIN, NOW)).toBe(false);
    expect(await store.outcomes.counts(CLUB)).toEqual({ cable: 1 });
    expect(await store.outcomes.add(CLUB, 'cable', RAVI, NOW)).toBe(true);
    expect(await store.outcomes.add(CLUB, 'cable', TAMSIN, december)).toBe(true);
    expect(await store.outcomes.counts(CLUB)).toEqual({ cable: 3 });
    expect(await store.outcomes.purgeMarks(december)).toBe(2);
    expect(await store.exportMember(TAMSIN)).toMatchObject({
      causesCounted: [{ clubId: CLUB, faultId: 'cable', month: '2026-12' }],
    });
    expect(await store.outcomes.reset(CLUB)).toBe(1);
    expect(await store.outcomes.counts(CLUB)).toEqual({});
    expect(await store.outcomes.add(CLUB, 'cable', TAMSIN, december)).toBe(false);
  });

  it('keeps the newest 20 walks of a member, whatever others begin for them, and of a helper the newest 20 unanswered', async () => {
    for (let i = 0; i < 30; i++) {
      await store.walks.put(walk(`own ${i}`, { updatedUtcMs: 1000 + i }));
      await store.walks.put(
        walk(`pushed ${i}`, { updatedUtcMs: 5000 + i, helperId: RAVI, memberId: TAMSIN, awaitsMember: true }),
      );
    }
    const { walks } = (await store.exportMember(TAMSIN)) as unknown as { walks: StoredWalk[] };
    expect(walks.filter(({ awaitsMember }) => awaitsMember !== true).map(({ id }) => id)).toEqual(
      Array.from({ length: 20 }, (_, i) => `own ${29 - i}`),
    );
    expect(walks).toHaveLength(40);
    expect((await store.walks.active(CLUB, TAMSIN))?.id).toBe('own 29');
    expect((await store.walks.active(CLUB, TAMSIN, RAVI))?.id).toBe('pushed 29');
    expect((await store.walks.active(CLUB, RAVI))?.id).toBe('pushed 29');
    await store.forgetMember(RAVI);
    expect(((await store.exportMember(TAMSIN)) as unknown as { walks: unknown[] }).walks).toHaveLength(20);
  });

  it("moves a standing reminder only while it is due as thought and in nobody's hands", async () => {
    const { id } = await store.reminders.add(
      reminder({ dueUtcMs: 5000, kind: 'sunrise', staleUtcMs: null, repeat: { every: 'sunrise' } }),
    );
    await store.reminders.add(reminder({ dueUtcMs: 5000 }));
    expect((await store.reminders.listStanding(['matrix', 'discord'])).map((each) => each.id)).toEqual([id]);
    expect(await store.reminders.listStanding([])).toEqual([]);
    expect(await store.reminders.reschedule(id, 4000, 1000)).toBe(false);
    expect(await store.reminders.reschedule(id, 5000, 1000)).toBe(true);
    expect((await store.reminders.listStanding(['matrix', 'discord']))[0]?.dueUtcMs).toBe(1000);
  });

  it("lists a member's reminders by time and cancels only their own", async () => {
    const later = await store.reminders.add(reminder({ dueUtcMs: 5000.4, repeat: { every: 'night', n: [1] } }));
    const sooner = await store.reminders.add(reminder({ dueUtcMs: 4000, staleUtcMs: null }));
    expect(await store.reminders.list(TAMSIN)).toEqual([
      { ...reminder({ dueUtcMs: 4000, staleUtcMs: null }), id: sooner.id },
      { ...reminder({ dueUtcMs: 5000, repeat: { every: 'night', n: [1] } }), id: later.id },
    ]);
    expect(await store.reminders.cancel(RAVI, sooner.id)).toBe(false);
    expect(await store.reminders.cancel(TAMSIN, sooner.id)).toBe(true);
    expect((await store.reminders.list(TAMSIN)).map(({ id }) => id)).toEqual([later.id]);
    expect(later.id).toMatch(/^[a-z2-9]{7}$/u);
  });

  it("lets a channel's reminders be listed and cancelled there, whoever set them", async () => {
    const set = await store.reminders.add(reminder({ to: 'channel', kind: 'sunrise', staleUtcMs: null }));
    await store.reminders.add(reminder());
    expect((await store.reminders.listChannel('matrix', '!room:fenwold.example')).map(({ id }) => id)).toEqual([
      set.id,
    ]);
    expect(await store.reminders.listChannel('discord', '!room:fenwold.example')).toEqual([]);
    expect(await store.reminders.cancelChannel('matrix', '!else:fenwold.example', set.id)).toBe(false);
    expect(await store.reminders.cancelChannel('matrix', '!room:fenwold.example', set.id)).toBe(true);
    expect(await store.reminders.listChannel('matrix', '!room:fenwold.example')).toEqual([]);
  });

  it('keeps 20 reminders a member and no more, even when two processes add at once', async () => {
    const stores = [store, await another()];
    const results = await Promise.all(
      Array.from({ length: 30 }, (_, i) => codeOf(stores[i % 2]!.reminders.add(reminder({ dueUtcMs: i })))),
    );
    expect(results.filter((code) => code === 'resolved')).toHaveLength(20);
    expect(results.filter((code) => code === 'store-limit')).toHaveLength(10);
  });

  it('gives each due reminder to one claimant, until the lease runs out', async () => {
    for (const dueUtcMs of [3000, 1000, 2000, 9000]) await store.reminders.add(reminder({ dueUtcMs }));
    // Two seconds past the last: a busy database's clock is read less surely.
    const first = await store.reminders.claimDue(5000, 63_000, 'one', 2);
    expect(first.map(({ dueUtcMs }) => dueUtcMs)).toEqual([1000, 2000]);
    const second = await (await another()).reminders.claimDue(5000, 63_000, 'two', 10);
    expect(second.map(({ dueUtcMs }) => dueUtcMs)).toEqual([3000]);
    expect(await store.reminders.claimDue(5000, 63_000, 'three', 10)).toEqual([]);
    expect(await store.reminders.settle(first[0]!.id, 'two', null)).toBe(false);
    expect(await store.reminders.settle(first[0]!.id, 'one', null)).toBe(true);
    expect(await store.reminders.settle(first[0]!.id, 'one', null)).toBe(false);
    expect(await store.reminders.settle(second[0]!.id, 'two', 50_000)).toBe(true);
    // Half a minute past the leases: the one never settled goes to another.
    const again = await store.reminders.claimDue(93_000, 153_000, 'three', 10);
    expect(again.map(({ dueUtcMs }) => dueUtcMs)).toEqual([2000, 9000, 50_000]);
    expect(await store.reminders.settle(first[1]!.id, 'one', null)).toBe(false);
  });

  it('claims only for the platforms a process runs', async () => {
    await store.reminders.add(reminder({ platform: 'matrix' }));
    await store.reminders.add(reminder({ platform: 'discord' }));
    expect(await store.reminders.claimDue(2e6, 2.1e6, 'one', 10, [])).toEqual([]);
    expect(
      (await store.reminders.claimDue(2e6, 2.1e6, 'one', 10, ['discord', 'console'])).map(({ platform }) => platform),
    ).toEqual(['discord']);
    expect((await store.reminders.claimDue(2e6, 2.1e6, 'one', 10)).map(({ platform }) => platform)).toEqual(['matrix']);
  });

  it('tries again later, counting the tries', async () => {
    const { id } = await store.reminders.add(reminder({ dueUtcMs: 1000 }));
    const claim = (nowUtcMs: number) => store.reminders.claimDue(nowUtcMs, nowUtcMs + 60_000, 'one', 10);
    expect(await claim(2000)).toMatchObject([{ id, attempts: 1 }]);
    expect(await store.reminders.retryLater(id, 'two', 40_000)).toBe(false);
    expect(await store.reminders.retryLater(id, 'one', 40_000)).toBe(true);
    expect(await claim(20_000)).toEqual([]);
    expect(await claim(41_000)).toMatchObject([{ id, attempts: 2, dueUtcMs: 1000 }]);
    expect(await store.reminders.settle(id, 'one', 90_000)).toBe(true);
    expect(await claim(91_000)).toMatchObject([{ id, attempts: 1, dueUtcMs: 90_000 }]);
    // A pause written before the clock was set back does not hold for hours.
    expect(await store.reminders.retryLater(id, 'one', 50_000_000)).toBe(true);
    expect(await claim(92_000)).toMatchObject([{ id }]);
  });

  it('is not held up by a lease written before the clock was set back', async () => {
    await store.reminders.add(reminder({ dueUtcMs: 1000 }));
    const [claimed] = await store.reminders.claimDue(50_000_000, 50_060_000, 'gone', 10);
    expect(claimed).toBeDefined();
    expect(await store.reminders.claimDue(2000, 62_000, 'here', 10)).toHaveLength(1);
  });

  it('hands 200 due reminders to three claimants without giving one twice', async () => {
    for (let i = 0; i < 200; i++) await store.reminders.add(reminder({ memberId: `discord:${i}`, dueUtcMs: i }));
    const stores = [store, await another(), await another()];
    const got = await Promise.all(
      stores.map(async (each, n) => {
        const ids: string[] = [];
        for (
          let claimed = await each.reminders.claimDue(5000, 65_000, `p${n}`, 7);
          claimed.length > 0;
          claimed = await each.reminders.claimDue(5000, 65_000, `p${n}`, 7)
        ) {
          for (const { id } of claimed) {
            expect(await each.reminders.settle(id, `p${n}`, null)).toBe(true);
            ids.push(id);
          }
        }
        return ids;
      }),
    );
    expect(got.flat()).toHaveLength(200);
    expect(new Set(got.flat()).size).toBe(200);
  });

  it('lets an event be claimed once, over processes and restarts', async () => {
    const stores = [store, await another(), await another()];
    const wins = await Promise.all(
      Array.from({ length: 60 }, (_, i) => stores[i % 3]!.events.claim(`matrix:$event${i % 4}`, 5000)),
    );
    expect(wins.filter(Boolean)).toHaveLength(4);
    await store.events.answered('matrix:$event0');
    await store.events.claim('matrix_$event9', 9000);
    expect(await store.events.unanswered('matrix:', 5000)).toEqual([
      'matrix:$event1',
      'matrix:$event2',
      'matrix:$event3',
    ]);
    expect(await store.events.unanswered('matrix:', 5001)).toEqual([]);
    // An underscore and a percent sign are letters here, not wild cards.
    expect(await store.events.unanswered('matrix_', 0)).toEqual(['matrix_$event9']);
    expect(await store.events.unanswered('%', 0)).toEqual([]);
    expect(await store.events.purge(9000)).toBe(4);
    expect(await store.events.claim('matrix_$event9', 9001)).toBe(false);
  });

  it('keeps notes', async () => {
    expect(await store.notes.get('sync')).toBeNull();
    await store.notes.set('sync', 'a');
    await store.notes.set('sync', 'b');
    expect(await (await another()).notes.get('sync')).toBe('b');
  });

  it('shows and forgets all of a member, and nothing of anybody else', async () => {
    const fill = async (memberId: string, other: string): Promise<void> => {
      const own: Owner = { kind: 'member', id: memberId };
      await store.sites.put(own, { ...quarryField, isDefault: true });
      await store.sites.put({ kind: 'club', id: memberId }, { ...quarryField, name: 'In a direct message' });
      await store.gear.put(memberId, GEAR);
      await store.walks.put(
        walk(`about ${memberId.slice(0, 6)}`, {
          memberId,
          helperId: other,
          state: { version: 1, names: { member: `Name of ${memberId}`, helper: `Name of ${other}` }, events: [] },
        }),
      );
      await store.walks.put(walk(`direct ${memberId.slice(0, 6)}`, { memberId, clubId: memberId }));
      await store.reminders.add(reminder({ memberId }));
      await store.reminders.add(reminder({ memberId, to: 'channel', kind: 'sunrise', repeat: { every: 'sunrise' } }));
      await store.reminders.add(reminder({ memberId, to: 'channel' }));
      await store.outcomes.add(memberId, 'cable', memberId, NOW);
      await store.notes.set(`direct-room:${memberId.slice(memberId.indexOf(':') + 1)}`, '!r');
      await store.notes.set(`seen:${memberId}`, '1');
    };
    await fill(TAMSIN, RAVI);
    await fill(RAVI, TAMSIN);
    const shown = (await store.exportMember(TAMSIN)) as Record<string, unknown[]>;
    expect(shown).toMatchObject({
      memberId: TAMSIN,
      gear: GEAR,
      sites: [
        { name: 'In a direct message' },
        { name: 'Quarry Field', latitudeDeg: 52.7, horizon: quarryField.horizon },
      ],
      walksHelpedWith: [{ id: 'about discor' }],
    });
    expect(shown.walks).toHaveLength(2);
    expect(shown.reminders).toHaveLength(3);
    expect(shown.notes).toHaveLength(2);
    const ofRavi = (await store.exportMember(RAVI)) as Record<string, unknown>;

    expect(await store.forgetMember(TAMSIN)).toBe(11);
    const left = await bench.dump();
    expect(left).not.toContain('tamsin');
    expect(left).toContain(RAVI);
    expect(await store.exportMember(TAMSIN)).toEqual({
      memberId: TAMSIN,
      sites: [],
      gear: null,
      reminders: [],
      walks: [],
      walksHelpedWith: [],
      causesCounted: [],
      notes: [],
    });
    // Ravi keeps everything but the name of the one who helped.
    const after = (await store.exportMember(RAVI)) as Record<string, unknown>;
    expect(after).toEqual({
      ...ofRavi,
      walksHelpedWith: [],
      walks: (ofRavi.walks as StoredWalk[]).map((each) => ({
        ...each,
        helperId: null,
        ...(each.id.startsWith('about')
          ? { state: { version: 1, names: { member: `Name of ${RAVI}`, helper: null }, events: [] } }
          : {}),
      })),
    });
    // The channel's standing warning stays, without the name.
    expect(
      (await store.reminders.listChannel('matrix', '!room:fenwold.example')).map(({ memberId }) => memberId).sort(),
    ).toEqual(['', RAVI, RAVI]);
    expect(await store.forgetMember(TAMSIN)).toBe(0);
  });

  it('rejects with StoreError and nothing else once it is closed', async () => {
    const closed = await another();
    await closed.ping();
    await closed.close();
    for (const work of [
      closed.ping(),
      closed.sites.list(tamsin),
      closed.sites.put(tamsin, quarryField),
      closed.gear.get(TAMSIN),
      closed.walks.get('x'),
      closed.outcomes.counts(CLUB),
      closed.reminders.list(TAMSIN),
      closed.reminders.claimDue(1, 2, 'x', 1),
      closed.notes.get('x'),
      closed.events.claim('x', 1),
      closed.exportMember(TAMSIN),
      closed.forgetMember(TAMSIN),
    ])
      expect(await codeOf(work)).toBe('store-unavailable');
    await closed.close();
  });
};
