/** `triage` as members use it: typed lines and buttons, a helper for another member, a restart, a store that is down, consent. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isProblem, type Problem } from '../../bot/ground/problem.js';
import type { Asker, Deps } from '../../bot/commands/core/command.js';
import { runLine } from '../../bot/commands/core/dispatch.js';
import { forget } from '../../bot/commands/kept/forget.js';
import { triage as triageCommand } from '../../bot/commands/triage/triage.js';
import { type Outcome, type Reply } from '../../bot/reply/reply.js';
import { purgeOld } from '../../bot/reminders/purge-old.js';
import { openStore } from '../../bot/store/open-store.js';
import { StoreError, type Store } from '../../bot/store/store.js';
import { shippedModel } from '../shipped.js';

const NOW = Date.UTC(2026, 10, 25, 21, 0);
const model = shippedModel();

// The club, its members and its places are invented.
const person = (name: string): Asker => ({
  platform: 'matrix',
  memberId: `matrix:@${name.toLowerCase()}:fenwold.example`,
  displayName: name,
  clubId: 'matrix:!club:fenwold.example',
  channelId: 'matrix:!club:fenwold.example',
  isManager: false,
  isPrivate: false,
});
const [tamsin, ravi, ingo] = [person('Tamsin'), person('Ravi'), person('Ingo')];

// `triage` uses the store and the fault model alone; the rest would only cost the test time.
const depsWith = (store: Store): Deps =>
  ({ store, triage: () => model, commands: [triageCommand, forget] }) as unknown as Deps;
const errors: unknown[] = [];
const ask = (store: Store, line: string, asker: Asker, nowUtcMs = NOW): Promise<Outcome> =>
  runLine(depsWith(store), line, { asker, nowUtcMs, onError: (error) => errors.push(error) });
const answered = async (store: Store, line: string, asker: Asker, nowUtcMs = NOW): Promise<Reply> => {
  const outcome = await ask(store, line, asker, nowUtcMs);
  if (isProblem(outcome)) throw new Error(`${line}: ${outcome.message}`);
  return outcome;
};
const refused = async (store: Store, line: string, asker: Asker): Promise<Problem> => {
  const outcome = await ask(store, line, asker);
  if (!isProblem(outcome)) throw new Error(`${line} was answered: ${outcome.summary}`);
  return outcome;
};
const stepOf = (reply: Reply): { readonly kind: string; readonly id: string } => {
  const { kind, id } = reply.data['step'] as { kind: string; id: string };
  return { kind, id };
};
const idOf = (reply: Reply): string => reply.data['walkId'] as string;
const runOf = (reply: Reply, label: RegExp): string => {
  const found = reply.choices?.find((choice) => label.test(choice.label));
  if (found === undefined)
    throw new Error(
      `no choice ${String(label)} among ${reply.choices?.map((choice) => choice.label).join(' | ') ?? ''}`,
    );
  return found.run;
};

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'pierhand-triage-'));
});
afterAll(() => {
  rmSync(folder, { recursive: true, force: true });
  expect(errors).toEqual([]);
});

describe('a helper and a member, across a restart', () => {
  it('walk from the first message to the verified cure, and the summary says who said what', async () => {
    let store = await openStore({ dataFolder: folder });
    let reply = await answered(store, `triage for:${tamsin.memberId}`, ravi);
    const walkId = idOf(reply);
    expect(stepOf(reply)).toEqual({ kind: 'ask', id: 'path' });
    reply = await answered(store, runOf(reply, /USB-serial adapter/u), ravi);
    // A permission error as the system words it: strerror(EACCES), POSIX "Permission denied".
    reply = await answered(
      store,
      `triage walk:${walkId} could not open port /dev/ttyUSB0: [Errno 13] Permission denied: '/dev/ttyUSB0'`,
      tamsin,
    );
    expect(idOf(reply)).toBe(walkId);
    expect(reply.notes.some((note) => note.startsWith('I take it:'))).toBe(true);
    expect(reply.choices?.filter(({ label }) => /^Not so|^(?:Read|All|That is).*right/u.test(label))).toEqual([]);
    const doubted = await answered(store, runOf(reply, /^Something of this is wrong/u), tamsin);
    expect(doubted.choices?.some(({ label }) => label.startsWith('Not so:'))).toBe(true);
    await store.close();

    store = await openStore({ dataFolder: folder });
    const resumed = await answered(store, 'triage', ravi);
    expect(stepOf(resumed)).toEqual(stepOf(reply));
    expect(idOf(resumed)).toBe(walkId);
    for (let turn = 0; turn < 8 && stepOf(reply).kind !== 'try'; turn++) {
      const { id } = stepOf(reply);
      const known: Readonly<Record<string, RegExp>> = {
        system: /^Linux/u,
        client: /opens the port itself/u,
        'port-group': /in neither/u,
      };
      reply = await answered(store, runOf(reply, known[id] ?? /^Not sure|^Cannot/u), ravi);
    }
    expect(stepOf(reply)).toEqual({ kind: 'try', id: 'no-permission' });
    expect(reply.notes.join('\n')).toMatch(/a\) /u);
    reply = await answered(store, runOf(reply, /works now/u), tamsin);
    expect(reply).toMatchObject({ level: 'good', data: { step: { kind: 'done', id: 'no-permission' } } });

    const summary = await answered(store, `triage walk:${walkId} do:summary`, ravi);
    const told = summary.facts.map(({ label, value }) => `${label}: ${value}`).join('\n');
    expect(told).toMatch(/Tamsin pasted: “could not open port \/dev\/ttyUSB0/u);
    expect(told).toMatch(/it works/u);

    // Only the member may let it be counted.
    expect((await refused(store, runOf(reply, /count it/u), ravi)).problem).toBe('consent');
    expect(await store.outcomes.counts(tamsin.clubId)).toEqual({});
    await answered(store, runOf(reply, /count it/u), tamsin);
    expect(await store.outcomes.counts(tamsin.clubId)).toEqual({ 'no-permission': 1 });
    expect((await refused(store, runOf(reply, /count it/u), tamsin)).problem).toBe('walk-ended');
    expect(await store.outcomes.counts(tamsin.clubId)).toEqual({ 'no-permission': 1 });
    await store.close();
  });

  it('lets nobody else answer, and lets one helper join', async () => {
    const store = await openStore({ memory: true });
    const walkId = idOf(await answered(store, 'triage', tamsin));
    expect((await refused(store, `triage walk:${walkId} answer:path.bluetooth`, ingo)).problem).toBe('not-your-walk');
    const asked = await answered(store, `triage for:${tamsin.memberId}`, ravi);
    await answered(store, runOf(asked, /let .* help/u), tamsin);
    expect((await refused(store, `triage for:${tamsin.memberId}`, ingo)).problem).toBe('has-a-helper');
    expect(stepOf(await answered(store, `triage walk:${walkId} answer:path.bluetooth`, ravi)).id).toBe('how-far');
    await store.close();
  });
});

describe('one member alone', () => {
  const begin = async (store: Store): Promise<Reply> => {
    await answered(store, 'triage do:new', tamsin);
    return answered(store, 'triage answer:path.controller-usb', tamsin);
  };

  it('may go back, ask why, answer in words, and end', async () => {
    const store = await openStore({ memory: true });
    const first = await begin(store);
    expect(stepOf(first).kind).toBe('ask');
    const why = await answered(store, 'triage why', tamsin);
    expect(why.facts.length).toBeGreaterThan(1);
    expect(why.notes.some((note) => note.includes('would point to'))).toBe(true);
    const second = await answered(store, 'triage not sure', tamsin);
    expect(stepOf(second)).not.toEqual(stepOf(first));
    expect(stepOf(await answered(store, 'triage back', tamsin))).toEqual(stepOf(first));
    expect((await answered(store, 'triage end', tamsin)).summary).toContain('ended');
    expect(stepOf(await answered(store, 'triage', tamsin)).id).toBe('path');
    await store.close();
  });

  it('is offered no line that a platform cannot carry', async () => {
    const store = await openStore({ memory: true });
    const seen: Reply[] = [];
    for (const path of model.paths) {
      let reply = await answered(store, 'triage do:new', ingo);
      for (let turn = 0; turn < 12 && ['ask', 'try'].includes(stepOf(reply).kind); turn++) {
        seen.push(reply);
        const { id, kind } = stepOf(reply);
        const setUp = new Map([
          ['path', path.id],
          ['system', 'linux'],
          ['client', 'platform'],
        ]);
        const told = kind === 'try' ? 'same' : model.check(id)?.answers[turn % 2]?.id;
        reply = await answered(store, `triage walk:${idOf(reply)} answer:${id}.${setUp.get(id) ?? told}`, ingo);
      }
      seen.push(reply);
    }
    for (const { choices = [] } of seen) expect(choices.length).toBeLessThanOrEqual(25);
    for (const { run, label } of seen.flatMap(({ choices = [] }) => choices)) {
      expect(run.length, run).toBeLessThanOrEqual(90);
      expect(label.length, label).toBeLessThanOrEqual(80);
    }
    // The model's longest ids must fit as well, walked or not.
    for (const { id, answers } of model.checks)
      for (const answer of answers)
        expect(`triage walk:abcdef answer:${id}.${answer.id}`.length).toBeLessThanOrEqual(90);
    for (const { id } of model.faults)
      expect(`triage walk:abcdef answer:${id}.could-not`.length).toBeLessThanOrEqual(90);
    await store.close();
  });

  it('sees the level caution before anything else when a cable goes straight to the motor board', async () => {
    const store = await openStore({ memory: true });
    await answered(store, 'triage do:new', tamsin);
    const reply = await answered(store, 'triage answer:path.board-cable', tamsin);
    expect(reply.level).toBe('caution');
    expect(reply.cautions.join(' ')).toMatch(/RS-232/u);
    await store.close();
  });

  it('is told what is wrong with a line', async () => {
    const store = await openStore({ memory: true });
    expect((await refused(store, 'triage walk:zzzzzz answer:path.bluetooth', tamsin)).problem).toBe('unknown-walk');
    await answered(store, 'triage do:new', tamsin);
    expect((await refused(store, 'triage answer:path.teleport', tamsin)).message).toContain('controller-serial');
    expect((await refused(store, 'triage answer:count.yes', tamsin)).problem).toBe('nothing-to-count');
    expect((await refused(store, 'triage do:back', tamsin)).problem).toBe('nothing-to-take-back');
    await store.close();
  });

  it('may paste text full of colons, quotes and brackets', async () => {
    const store = await openStore({ memory: true });
    const reply = await answered(
      store,
      'triage [  12.3] kernel: usb 1-1: device descriptor read/64, error -71 "unfinished',
      ingo,
    );
    expect(reply.notes.join(' ')).toContain('I take it:');
    await store.close();
  });

  it('is asked no more for what the saved gear tells', async () => {
    const store = await openStore({ memory: true });
    await store.gear.put(ingo.memberId, {
      mount: 'fork',
      connection: 'bluetooth',
      system: 'macos',
      speeds: null,
      limits: null,
      apertureMm: null,
    });
    expect(stepOf(await answered(store, 'triage', ingo))).toEqual({ kind: 'ask', id: 'how-far' });
    await store.close();
  });
});

describe('what is kept', () => {
  it('goes after 30 days untouched', async () => {
    const store = await openStore({ memory: true });
    const walkId = idOf(await answered(store, 'triage', tamsin));
    const day = 86_400_000;
    await purgeOld(store, NOW + 29 * day);
    expect(await store.walks.get(walkId)).not.toBeNull();
    await purgeOld(store, NOW + 31 * day);
    expect(await store.walks.get(walkId)).toBeNull();
    await store.close();
  });

  it("is the member's own words, bounded, until they are forgotten", async () => {
    const store = await openStore({ memory: true });
    const walkId = idOf(await answered(store, `triage Access is denied. ${'Really, denied. '.repeat(200)}`, tamsin));
    const kept = JSON.stringify(await store.walks.get(walkId));
    expect(kept).toContain('Access is denied.');
    expect(kept.length).toBeLessThan(3000);
    await answered(store, 'forget confirm:yes', tamsin);
    expect(await store.walks.get(walkId)).toBeNull();
    await store.close();
  });

  it('lives in memory, and says so, while the store is down', async () => {
    const down = (): Promise<never> =>
      Promise.reject(new StoreError('store-unavailable', 'The store does not answer.'));
    const broken = {
      walks: { put: down, get: down, active: down, waiting: down, purge: down },
      outcomes: { add: down, counts: down },
      gear: { get: down, put: down },
      forgetMember: () => Promise.resolve(0),
    } as unknown as Store;
    const first = await answered(broken, 'triage', tamsin);
    expect(first.notes.join(' ')).toContain('until I restart');
    const second = await answered(broken, runOf(first, /Bluetooth/u), tamsin);
    expect(idOf(second)).toBe(idOf(first));
    expect(stepOf(second).id).toBe('how-far');
    expect(stepOf(await answered(broken, 'triage', tamsin)).id).toBe('how-far');
    expect((await answered(broken, 'forget confirm:yes', tamsin)).data['removed']).toBe(1);
    expect(stepOf(await answered(broken, 'triage', tamsin)).id).toBe('path');
  });
});
