import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  chownSync,
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { StartError } from '../../bot/ground/start-error.js';
import { backUp } from '../../bot/store/back-up.js';
import { openStore, SQLITE_FILE, type StorePlace } from '../../bot/store/open-store.js';
import { postgresMissing, startCluster, type Cluster } from './postgres-cluster.js';
import { chatServer, enter, ledger, losses, startWorker } from './worker-bench.js';
import { CLUB_OF_WORKERS, remindedMember } from './worker-task.js';

let folder: string;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'pierhand-backup-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const startError = async (work: Promise<unknown>): Promise<string> => {
  const error = await work.then(
    () => null,
    (reason: unknown) => reason,
  );
  expect(error).toBeInstanceOf(StartError);
  expect((error as Error).message).not.toContain('\n');
  return (error as Error).message;
};

/** Backs up while another process writes, restores, and holds the copy to what was acknowledged before the backup began. */
const backUpWhileWriting = async (
  place: Exclude<StorePlace, { memory: true }>,
  restore: (file: string) => Promise<StorePlace>,
): Promise<void> => {
  const book = ledger();
  const worker = await startWorker(
    { place, firstNumber: 0, writes: true, delivers: false, leaseMs: 1000, serverMs: 0 },
    chatServer(),
    (told) => enter(book, told),
  );
  await worker.open;
  while (book.done.size < 40) await sleep(5);
  const doneBefore = new Map(book.done);
  const file = join(folder, 'copy');
  writeFileSync(file, 'an older backup');
  const { bytes } = await backUp(place, file);
  while (book.done.size < doneBefore.size + 20) await sleep(5);
  worker.child.kill('SIGKILL');
  await worker.gone;
  expect(bytes).toBe(readFileSync(file).length);
  expect(statSync(file).mode & 0o077).toBe(0);
  expect(readdirSync(folder).filter((name) => name.startsWith('copy'))).toEqual(['copy']);

  const restored = await restore(file);
  expect(await losses(restored, { begun: book.begun, done: doneBefore })).toEqual([]);
  const store = await openStore(restored);
  const reminders = [...doneBefore.values()].filter(({ kind }) => kind === 'reminder');
  for (const { number } of reminders) expect(await store.reminders.list(remindedMember(number))).toHaveLength(1);
  // What was written long after is not in a copy as of one instant, and it can be written.
  expect((await store.outcomes.counts(CLUB_OF_WORKERS))['cable']).toBeLessThanOrEqual(
    [...book.begun.values()].filter(({ kind }) => kind === 'outcome').length,
  );
  await store.outcomes.add(CLUB_OF_WORKERS, 'port', 'console:last', Date.UTC(2026, 10, 25));
  await store.close();
};

describe('a backup of SQLite', () => {
  it('made while the bot writes is whole, for the operator alone, and restores by being put in place of the file', async () => {
    await backUpWhileWriting({ dataFolder: join(folder, 'data') }, async (file) => {
      const dataFolder = join(folder, 'restored');
      mkdirSync(dataFolder);
      copyFileSync(file, join(dataFolder, SQLITE_FILE));
      return { dataFolder };
    });
  });

  it('that cannot be made says why, leaves the older one, and nothing else behind', async () => {
    expect(await startError(backUp({ dataFolder: join(folder, 'nowhere') }, join(folder, 'copy')))).toContain(
      'does not exist',
    );
    const dataFolder = join(folder, 'data');
    await (await openStore({ dataFolder })).close();
    expect(await startError(backUp({ dataFolder }, join(folder, 'no', 'such', 'folder')))).toContain(
      'left nothing behind',
    );
    const older = join(folder, 'older');
    writeFileSync(older, 'an older backup');
    const whole = readFileSync(join(dataFolder, SQLITE_FILE));
    whole.fill(0xa5, 4096);
    writeFileSync(join(dataFolder, SQLITE_FILE), whole);
    await startError(backUp({ dataFolder }, older));
    expect(readFileSync(older, 'utf8')).toBe('an older backup');
    expect(readdirSync(folder).sort()).toEqual(['data', 'older']);
  });
});

const missing = postgresMissing();

describe.skipIf(missing !== null)(`a backup of PostgreSQL${missing === null ? '' : ` (skipped: ${missing})`}`, () => {
  let cluster: Cluster;
  beforeAll(async () => {
    cluster = await startCluster();
  }, 60_000);
  afterAll(() => cluster.stop(), 60_000);

  it('made while the bot writes is whole, and restores into an empty database', async () => {
    const databaseUrl = await cluster.database('original');
    await backUpWhileWriting({ databaseUrl }, async (file) => {
      const restoredUrl = await cluster.database('restored');
      execFileSync('pg_restore', ['--no-owner', '--exit-on-error', `--dbname=${restoredUrl}`, file], { stdio: 'pipe' });
      return { databaseUrl: restoredUrl };
    });
  });

  it('is made with the bot’s own address from a server whose certificate nobody signed', async () => {
    const [{ data_directory: data } = {}] = await cluster.query('show data_directory');
    const [certificate, key] = ['server.crt', 'server.key'].map((name) => join(String(data), name));
    execFileSync(
      'openssl',
      ['req', '-x509', '-newkey', 'rsa:2048', '-nodes', '-days', '2', '-subj', '/CN=localhost'].concat([
        '-addext',
        'subjectAltName=DNS:localhost',
        '-out',
        certificate ?? '',
        '-keyout',
        key ?? '',
      ]),
      { stdio: 'pipe' },
    );
    const owner = statSync(String(data));
    for (const file of [certificate, key]) {
      chmodSync(file ?? '', 0o600);
      chownSync(file ?? '', owner.uid, owner.gid);
    }
    await cluster.query('alter system set ssl = on');
    await cluster.query('select pg_reload_conf()');
    const ca = join(folder, 'ca.pem');
    copyFileSync(certificate ?? '', ca);
    const plain = await cluster.database('encrypted');
    const named = plain.replace('127.0.0.1', 'localhost');
    for (const databaseUrl of [
      `${plain}?sslmode=require`,
      `${plain}?sslmode=verify-ca&sslrootcert=${ca}`,
      `${named}?sslmode=verify-full&sslrootcert=${ca}`,
    ]) {
      const unopened: string[] = [];
      const store = await openStore({ databaseUrl }, { onUnopened: (line) => void unopened.push(line) });
      expect(unopened).toEqual([]);
      // pg_stat_ssl: PostgreSQL's documentation, "The Statistics Collector".
      expect(
        await cluster.query(
          "select distinct ssl from pg_stat_ssl join pg_stat_activity using (pid) where datname = 'encrypted'",
        ),
      ).toEqual([{ ssl: true }]);
      await store.close();
      expect((await backUp({ databaseUrl }, join(folder, 'copy'))).bytes).toBeGreaterThan(0);
    }
  });

  it('that cannot be made says why without the password, and says what to do where pg_dump is missing', async () => {
    const databaseUrl = await cluster.database('wrong');
    const wrong = new URL(databaseUrl);
    wrong.password = 'not-the-password';
    const message = await startError(backUp({ databaseUrl: wrong.href }, join(folder, 'copy')));
    expect(message).not.toContain('not-the-password');
    expect(existsSync(join(folder, 'copy'))).toBe(false);
    const path = process.env.PATH;
    process.env.PATH = folder;
    try {
      expect(await startError(backUp({ databaseUrl }, join(folder, 'copy')))).toContain(
        'pg_dump is not installed here',
      );
    } finally {
      process.env.PATH = path;
    }
    expect(readdirSync(folder)).toEqual([]);
  });
});
