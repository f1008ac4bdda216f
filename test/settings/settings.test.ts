import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { StartError } from '../../bot/ground/start-error.js';
import { loadSettings, secretsOf, settingNames, type Environment } from '../../bot/app/settings.js';

const load = (env: Environment, files: Readonly<Record<string, string>> = {}) =>
  loadSettings(env, (path) => {
    const text = files[path];
    if (text === undefined) throw Object.assign(new Error('no such file'), { code: 'ENOENT' });
    return text;
  });
const lineFor = (env: Environment, files?: Readonly<Record<string, string>>): string => {
  try {
    load(env, files);
  } catch (error) {
    expect(error).toBeInstanceOf(StartError);
    return (error as Error).message;
  }
  throw new Error('was taken');
};

describe('settings', () => {
  it('with nothing set: the console, SQLite, no port, usual limits', () => {
    expect(load({})).toEqual({
      discord: null,
      matrix: null,
      dataFolder: './data',
      databaseUrl: null,
      knowledgeFolder: null,
      elements: null,
      clubSiteText: null,
      prefix: '!pier',
      http: null,
      logLevel: 'info',
      sunLimits: { dangerDeg: 15, cautionDeg: 45 },
    });
  });

  it('reads everything when everything is set', () => {
    expect(
      load({
        DISCORD_TOKEN: 'a.b.c',
        DISCORD_API_URL: 'http://127.0.0.1:9000/api/',
        DISCORD_GUILD_ID: '123456789012345678',
        DISCORD_SHARD_COUNT: '8',
        DISCORD_SHARD_RANGE: '2-4',
        MATRIX_HOMESERVER_URL: 'https://matrix.example.org',
        MATRIX_USER: 'pierhand',
        MATRIX_PASSWORD: 'secret words',
        MATRIX_ALLOWED: '@tamsin:example.org, example.org:8448',
        PIERHAND_DATA: '/var/lib/pierhand',
        DATABASE_URL: 'postgres://pierhand:secret@db/pierhand',
        PIERHAND_KNOWLEDGE: '/etc/pierhand',
        PIERHAND_ELEMENTS: '/etc/pierhand/comets.txt',
        PIERHAND_SITE: '52.71,0.12',
        PIERHAND_PREFIX: '!sky',
        PIERHAND_HTTP_PORT: '9464',
        PIERHAND_HTTP_HOST: '0.0.0.0',
        LOG_LEVEL: 'WARN',
        SUN_DANGER_DEG: '20',
        SUN_CAUTION_DEG: '60.5',
      }),
    ).toEqual({
      discord: {
        token: 'a.b.c',
        apiUrl: 'http://127.0.0.1:9000/api',
        guildId: '123456789012345678',
        shardCount: 8,
        shardIds: [2, 3, 4],
      },
      matrix: {
        homeserverUrl: 'https://matrix.example.org',
        login: { user: 'pierhand', password: 'secret words' },
        allowed: ['@tamsin:example.org', 'example.org:8448'],
      },
      dataFolder: '/var/lib/pierhand',
      databaseUrl: 'postgres://pierhand:secret@db/pierhand',
      knowledgeFolder: '/etc/pierhand',
      elements: '/etc/pierhand/comets.txt',
      clubSiteText: '52.71,0.12',
      prefix: '!sky',
      http: { host: '0.0.0.0', port: 9464 },
      logLevel: 'warn',
      sunLimits: { dangerDeg: 20, cautionDeg: 60.5 },
    });
  });

  it('an empty variable counts as not set', () => {
    expect(load({ DISCORD_TOKEN: '', MATRIX_HOMESERVER_URL: ' ', LOG_LEVEL: '' })).toEqual(load({}));
  });

  it('takes each secret from a mounted file, its final line break dropped', () => {
    expect(load({ DISCORD_TOKEN_FILE: '/run/secrets/token' }, { '/run/secrets/token': 'a.b.c\n' }).discord?.token).toBe(
      'a.b.c',
    );
    expect(settingNames.filter((name) => name.endsWith('_FILE'))).toEqual([
      'DISCORD_TOKEN_FILE',
      'MATRIX_ACCESS_TOKEN_FILE',
      'MATRIX_PASSWORD_FILE',
      'DATABASE_URL_FILE',
    ]);
  });

  it.each<[Environment, RegExp]>([
    [{ DISCORD_TOKEN: 'Bot a.b.c' }, /^DISCORD_TOKEN must be the bot token alone/u],
    [{ DISCORD_API_URL: 'discord.com' }, /^DISCORD_API_URL must be a web address.*"discord\.com"/u],
    [{ DISCORD_GUILD_ID: '123456789012345678' }, /^DISCORD_TOKEN must be set as well/u],
    [{ DISCORD_SHARD_COUNT: '0' }, /^DISCORD_SHARD_COUNT must be auto, or/u],
    [{ DISCORD_SHARD_RANGE: '0-1' }, /^DISCORD_SHARD_RANGE needs DISCORD_SHARD_COUNT/u],
    [{ DISCORD_SHARD_COUNT: '2', DISCORD_SHARD_RANGE: '1-2' }, /^DISCORD_SHARD_RANGE must end below/u],
    [{ DISCORD_SHARD_COUNT: '9', DISCORD_SHARD_RANGE: '3-1' }, /^DISCORD_SHARD_RANGE must be one shard/u],
    [{ MATRIX_HOMESERVER_URL: 'ftp://example.org' }, /^MATRIX_HOMESERVER_URL must be/u],
    [
      { MATRIX_HOMESERVER_URL: 'https://example.org', MATRIX_USER: 'pierhand' },
      /^MATRIX_ACCESS_TOKEN must be set, or both/u,
    ],
    [
      {
        MATRIX_HOMESERVER_URL: 'https://example.org',
        MATRIX_ACCESS_TOKEN: 'abc',
        MATRIX_USER: 'pierhand',
        MATRIX_PASSWORD: 'def',
      },
      /^MATRIX_ACCESS_TOKEN and MATRIX_PASSWORD are both set/u,
    ],
    [{ MATRIX_ACCESS_TOKEN: 'abc' }, /^MATRIX_HOMESERVER_URL must be set as well/u],
    [{ MATRIX_ALLOWED: 'tamsin@example' }, /^MATRIX_ALLOWED must be/u],
    [{ DATABASE_URL: 'mysql://a' }, /^DATABASE_URL must be an address such as postgres/u],
    [{ PIERHAND_PREFIX: 'hey bot' }, /^PIERHAND_PREFIX must be one word/u],
    [{ PIERHAND_HTTP_PORT: '70000' }, /^PIERHAND_HTTP_PORT must be a port/u],
    [{ LOG_LEVEL: 'loud' }, /^LOG_LEVEL must be one of fatal/u],
    [{ SUN_DANGER_DEG: '10' }, /^SUN_DANGER_DEG must be degrees from 15.*never narrowed/u],
    [{ SUN_CAUTION_DEG: '44.9' }, /^SUN_CAUTION_DEG must be degrees from 45/u],
    [{ SUN_DANGER_DEG: '80', SUN_CAUTION_DEG: '50' }, /^SUN_CAUTION_DEG must not be less than SUN_DANGER_DEG/u],
  ])('a wrong value is one line that names it: %o', (env, line) => {
    const said = lineFor(env);
    expect(said).toMatch(line);
    expect(said).not.toContain('\n');
  });

  it('never repeats a secret, and says what is wrong with a secret file', () => {
    expect(lineFor({ DISCORD_TOKEN: 'hush hush' })).not.toContain('hush');
    expect(lineFor({ DATABASE_URL: 'mysql://me:hush@db' })).not.toContain('hush');
    expect(lineFor({ DISCORD_TOKEN_FILE: '/nowhere' })).toBe(
      'DISCORD_TOKEN_FILE names /nowhere, which cannot be read (ENOENT).',
    );
    expect(lineFor({ DISCORD_TOKEN_FILE: '/empty' }, { '/empty': '\n' })).toBe(
      'DISCORD_TOKEN_FILE names /empty, which is empty.',
    );
    expect(lineFor({ DISCORD_TOKEN: 'a', DISCORD_TOKEN_FILE: '/t' }, { '/t': 'b' })).toMatch(
      /^DISCORD_TOKEN and DISCORD_TOKEN_FILE are both set/u,
    );
  });

  it('knows its secrets, so that the log can leave them out', () => {
    expect(
      secretsOf(
        load({
          DISCORD_TOKEN: 'a.b.c',
          MATRIX_HOMESERVER_URL: 'https://example.org',
          MATRIX_ACCESS_TOKEN: 'syt',
          DATABASE_URL: 'postgres://a:b@c/d',
        }),
      ),
    ).toEqual(['a.b.c', 'syt', 'postgres://a:b@c/d']);
  });

  it('deploy/.env.example names every setting, and no other', () => {
    const named = [...readFileSync('deploy/.env.example', 'utf8').matchAll(/^#?\s?([A-Z][A-Z0-9_]+)=/gmu)].map(
      ([, name]) => name ?? '',
    );
    // Read where the image is built, not by the bot.
    expect(named.sort()).toEqual([...settingNames, 'MATRIX_ENCRYPTION'].sort());
  });
});
