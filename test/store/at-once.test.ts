/** A statement that is run at once, beside what waits for its turn on SQLite's one connection. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { Engine } from '../../bot/store/engines/engine.js';
import { openSqliteEngine } from '../../bot/store/engines/sqlite-engine.js';
import { eventRows } from '../../bot/store/rows/event-rows.js';

let folder = '';
let engine: Engine;

beforeEach(async () => {
  folder = mkdtempSync(path.join(tmpdir(), 'pierhand-at-once-'));
  engine = await openSqliteEngine(path.join(folder, 'store.sqlite'));
});
afterEach(async () => {
  await engine.close();
  rmSync(folder, { recursive: true, force: true });
});

/** A transaction that has written, and is undone when told. */
const heldTransaction = async (key: string): Promise<{ readonly undone: () => Promise<void> }> => {
  let undo = (): void => undefined;
  const held = new Promise<void>((resolve) => (undo = resolve));
  let began = (): void => undefined;
  const underWay = new Promise<void>((resolve) => (began = resolve));
  const transaction = engine.transact('any', async (trx) => {
    await trx.insertInto('events').values({ key, claimed_utc_ms: 1, answered: 0 }).execute();
    began();
    await held;
    throw new Error('undone');
  });
  const refused = expect(transaction).rejects.toThrow();
  await underWay;
  return {
    undone: () => {
      undo();
      return refused;
    },
  };
};

describe('a statement that is run at once', () => {
  it("is no part of another's transaction, which may be undone", async () => {
    const events = eventRows(engine);
    await events.claim('before', 1);
    const { undone } = await heldTransaction('theirs');
    const claimed = events.claim('meanwhile', 2);
    await undone();
    expect(await claimed).toBe(true);
    expect(await events.claim('meanwhile', 3)).toBe(false);
  });

  it('does not see what a transaction has not yet settled', async () => {
    const events = eventRows(engine);
    await events.claim('before', 1);
    const { undone } = await heldTransaction('theirs');
    const claimed = events.claim('theirs', 2);
    await undone();
    expect(await claimed).toBe(true);
  });
});
