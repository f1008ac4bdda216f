/** A real homeserver for tests: Dendrite on loopback, SQLite, accounts by shared secret; it can be killed and started again. */
import { execFileSync, spawn, type ChildProcess } from 'node:child_process';
import { createHmac } from 'node:crypto';
import { existsSync, mkdtempSync, openSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';

/** More than the events of any test before it. */
const WATCH_MESSAGES = 2000;
const SECRET = 'loopback tests only';
export const SERVER_NAME = 'fenwold.test';

const goBin = (): string | null => {
  try {
    return path.join(
      execFileSync('go', ['env', 'GOPATH'], { encoding: 'utf8', stdio: ['ignore', 'pipe', 'ignore'] }).trim(),
      'bin',
    );
  } catch {
    return null;
  }
};

/** The folder that holds `dendrite` and `generate-keys`, or null where there is none. */
export const dendriteFolder = (): string | null => {
  const given = process.env['DENDRITE_BIN'];
  const folders = given !== undefined && given !== '' ? [given] : ['.cache/dendrite', '/opt/dendrite/bin', goBin()];
  return (
    folders
      .map((folder) => (folder === null ? null : path.resolve(folder)))
      .find(
        (folder) =>
          folder !== null && ['dendrite', 'generate-keys'].every((name) => existsSync(path.join(folder, name))),
      ) ?? null
  );
};

export const freePort = (): Promise<number> =>
  new Promise((resolve, reject) => {
    const server = createServer();
    server.on('error', reject);
    server.listen(0, '127.0.0.1', () => {
      const address = server.address();
      server.close(() => {
        resolve(typeof address === 'object' && address !== null ? address.port : 0);
      });
    });
  });

const config = (folder: string, serverName: string, exempt: readonly string[]): unknown => {
  const database = (name: string): unknown => ({
    database: { connection_string: `file:${path.join(folder, `${name}.db`)}` },
  });
  return {
    version: 2,
    global: {
      server_name: serverName,
      private_key: path.join(folder, 'key.pem'),
      disable_federation: serverName === SERVER_NAME,
      trusted_third_party_id_servers: [],
      cache: { max_size_estimated: '64mb' },
      jetstream: { storage_path: folder },
      presence: { enable_inbound: false, enable_outbound: false },
      report_stats: { enabled: false },
    },
    client_api: {
      registration_disabled: true,
      guests_disabled: true,
      registration_shared_secret: SECRET,
      // Kept on, as on a real server: the bot has to live with it; the members' test client need not.
      rate_limiting: { enabled: true, threshold: 20, cooloff_ms: 500, exempt_user_ids: exempt },
    },
    federation_api: {
      ...(database('federation') as object),
      key_perspectives: [],
      // Other servers are on loopback as well, with certificates of their own making.
      disable_tls_validation: true,
      allow_network_cidrs: ['127.0.0.0/8'],
      deny_network_cidrs: [],
    },
    key_server: database('keys'),
    media_api: {
      ...(database('media') as object),
      base_path: path.join(folder, 'media'),
      max_file_size_bytes: 10_485_760,
      dynamic_thumbnails: false,
    },
    mscs: { ...(database('mscs') as object), mscs: [] },
    relay_api: database('relay'),
    room_server: database('rooms'),
    sync_api: { ...(database('sync') as object), search: { enabled: false } },
    user_api: { account_database: { connection_string: `file:${path.join(folder, 'users.db')}` }, bcrypt_cost: 4 },
    logging: [{ type: 'std', level: 'warn' }],
  };
};

export interface Account {
  readonly userId: string;
  readonly accessToken: string;
  readonly name: string;
  readonly password: string;
}

export interface Dendrite {
  readonly url: string;
  /** What stands after the colon in its users' ids. */
  readonly serverName: string;
  readonly folder: string;
  readonly start: () => Promise<void>;
  /** At once, as a power cut would. */
  readonly kill: () => Promise<void>;
  readonly register: (name: string) => Promise<Account>;
  readonly remove: () => Promise<void>;
}

export const ended = async (child: ChildProcess | null): Promise<void> => {
  if (child === null || child.exitCode !== null || child.signalCode !== null) return;
  await new Promise((resolve) => child.once('exit', resolve));
};

/**
 * @param members local parts whose requests are not limited
 * @param federates whether it talks to other servers on this machine; its name is then its own address
 */
export const createDendrite = async (
  binFolder: string,
  members: readonly string[],
  federates = false,
): Promise<Dendrite> => {
  const folder = mkdtempSync(path.join(tmpdir(), 'pierhand-dendrite-'));
  const port = await freePort();
  const url = `http://127.0.0.1:${port}`;
  const federationAddress = federates ? `127.0.0.1:${await freePort()}` : '';
  const serverName = federates ? federationAddress : SERVER_NAME;
  const [certificate, certificateKey] = [path.join(folder, 'server.crt'), path.join(folder, 'server.key')];
  const tls = ['--tls-cert', certificate, '--tls-key', certificateKey];
  execFileSync(path.join(binFolder, 'generate-keys'), [
    '--private-key',
    path.join(folder, 'key.pem'),
    ...(federates ? [...tls, '--server', '127.0.0.1'] : []),
  ]);
  // JSON is YAML.
  writeFileSync(
    path.join(folder, 'dendrite.yaml'),
    JSON.stringify(
      config(
        folder,
        serverName,
        [...members, 'watcher'].map((name) => `@${name}:${serverName}`),
      ),
    ),
  );
  let child: ChildProcess | null = null;

  const start = async (): Promise<void> => {
    const log = openSync(path.join(folder, 'log'), 'a');
    child = spawn(
      path.join(binFolder, 'dendrite'),
      [
        '--config',
        path.join(folder, 'dendrite.yaml'),
        '--http-bind-address',
        `127.0.0.1:${port}`,
        '--https-bind-address',
        federationAddress,
        ...(federates ? tls : []),
      ],
      { cwd: folder, stdio: ['ignore', log, log] },
    );
    for (let i = 0; ; i++) {
      if (child.exitCode !== null) throw new Error(`Dendrite ended at once; see ${folder}/log`);
      if (
        await fetch(`${url}/_matrix/client/versions`).then(
          (response) => response.ok,
          () => false,
        )
      )
        break;
      if (i === 300) throw new Error(`Dendrite did not start; see ${folder}/log`);
      await sleep(100);
    }
    await delivers();
  };

  let watcher: { readonly accessToken: string; readonly room: string } | null = null;
  /**
   * Sends until what is sent comes out again in a sync. Killed at a bad moment Dendrite keeps how far its readers had come in
   * the stream of events, but not the stream: it then delivers nothing to anybody until as many events have passed again. No
   * fault of the bot's.
   */
  const delivers = async (): Promise<void> => {
    const call = async (
      token: string,
      method: string,
      where: string,
      body?: object,
    ): Promise<Record<string, unknown>> => {
      const response = await fetch(`${url}/_matrix/client/v3${where}`, {
        method,
        headers: { Authorization: `Bearer ${token}` },
        ...(body === undefined ? {} : { body: JSON.stringify(body) }),
      });
      if (!response.ok) throw new Error(`${method} ${where}: ${response.status}`);
      return (await response.json()) as Record<string, unknown>;
    };
    if (watcher === null) {
      const { accessToken } = await register('watcher');
      watcher = { accessToken, room: (await call(accessToken, 'POST', '/createRoom', {}))['room_id'] as string };
    }
    const { accessToken, room } = watcher;
    for (let i = 0; i < WATCH_MESSAGES; i++) {
      const marker = await call(
        accessToken,
        'PUT',
        `/rooms/${encodeURIComponent(room)}/send/m.room.message/watch-${Date.now()}-${i}`,
        { msgtype: 'm.text', body: 'still there?' },
      );
      await sleep(20);
      const seen = JSON.stringify(await call(accessToken, 'GET', '/sync?timeout=0'));
      if (seen.includes(marker['event_id'] as string)) return;
    }
    throw new Error(`Dendrite takes events and does not deliver them; see ${folder}/log`);
  };
  const kill = async (): Promise<void> => {
    child?.kill('SIGKILL');
    await ended(child);
  };
  const register = async (name: string): Promise<Account> => {
    const endpoint = `${url}/_synapse/admin/v1/register`;
    const { nonce } = (await (await fetch(endpoint)).json()) as { nonce: string };
    const password = `a password for ${name}`;
    const mac = createHmac('sha1', SECRET).update([nonce, name, password, 'notadmin'].join('\0')).digest('hex');
    const response = await fetch(endpoint, {
      method: 'POST',
      body: JSON.stringify({ nonce, username: name, password, admin: false, mac }),
    });
    const body = (await response.json()) as { user_id: string; access_token: string };
    if (!response.ok) throw new Error(`no account for ${name}: ${JSON.stringify(body)}`);
    return { userId: body.user_id, accessToken: body.access_token, name, password };
  };
  return {
    url,
    serverName,
    folder,
    start,
    kill,
    register,
    remove: async () => {
      await kill();
      rmSync(folder, { recursive: true, force: true });
    },
  };
};
