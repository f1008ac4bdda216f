import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { afterEach, describe, expect, it } from 'vitest';
import { StartError } from '../../bot/ground/start-error.js';
import { startDiscordDouble, type DiscordDouble, type DoubleOptions } from '../doubles/discord/discord-double.js';
import { shardOf } from '../doubles/discord/snowflake.js';
import { sampleCommands } from './sample-commands.js';
import { runProgram, type Ended } from '../whole-program.js';
import { startBot } from './start-bot.js';

let double: DiscordDouble | undefined;
const begin = async (options: DoubleOptions = {}): Promise<DiscordDouble> =>
  (double = await startDiscordDouble(options));
afterEach(async () => {
  await double?.close();
  double = undefined;
});

/** The whole program in a folder of its own. */
const runMain = async (env: Readonly<Record<string, string>>): Promise<Ended> => {
  const folder = await mkdtemp(path.join(tmpdir(), 'pierhand-'));
  try {
    return await runProgram('main', [], folder, { env });
  } finally {
    await rm(folder, { recursive: true, force: true });
  }
};

describe('a wrong token or setting at the start', { timeout: 60_000 }, () => {
  it('a refused token is one clear line and exit code 2, and is not repeated in it', async () => {
    const { apiUrl } = await begin();
    const { code, stderr } = await runMain({
      DISCORD_TOKEN: 'not-the-right.token.at-all',
      DISCORD_API_URL: apiUrl,
      LOG_LEVEL: 'silent',
    });
    expect(stderr).toBe(
      "DISCORD_TOKEN was refused by Discord; copy the token again from the application's Bot page.\n",
    );
    expect(code).toBe(2);
  });

  it('a wrong setting is one clear line and exit code 2', async () => {
    const { code, stderr } = await runMain({ DISCORD_TOKEN: 'a.b.c', DISCORD_GUILD_ID: 'our club' });
    expect(stderr).toBe('DISCORD_GUILD_ID must be the id of a server, 15 to 20 digits (it is "our club").\n');
    expect(code).toBe(2);
  });

  it.each([
    [4004, 'DISCORD_TOKEN was refused'],
    [4010, 'DISCORD_SHARD_RANGE'],
    [4014, 'refused the intents'],
  ])('closed by the gateway with %i: says what to change', async (closeCode, says) => {
    const server = await begin();
    server.misbehave.closeIdentify = closeCode;
    await expect(startBot(server, { commands: sampleCommands })).rejects.toThrow(says);
    await expect(startBot(server, { commands: sampleCommands })).rejects.toBeInstanceOf(StartError);
  });
});

describe('shards', () => {
  it('asks for servers alone: no message content, no members', async () => {
    const server = await begin();
    const one = await startBot(server, { commands: sampleCommands });
    await server.ready();
    // Bit 0, GUILDS: developer documentation, "Gateway Intents".
    expect(server.gateway.log.identifies).toEqual([{ intents: 1, shard: [0, 1] }]);
    await one.bot.stop();
  });

  it('runs as many in one process as Discord recommends, and every server is answered', async () => {
    const server = await begin({ recommendedShards: 3 });
    const channels = Array.from({ length: 3 }, (_, i) => server.addGuild(`Club ${i}`).channel);
    const one = await startBot(server, { commands: sampleCommands });
    await server.ready(3);
    expect(server.gateway.log.identifies.map(({ shard }) => shard).sort()).toEqual([
      [0, 3],
      [1, 3],
      [2, 3],
    ]);
    for (const channel of channels) {
      expect(
        (await server.member('Odalys').slash('echo', { words: channel.id }, { in: channel })).message.embeds[0]?.title,
      ).toBe(channel.id);
    }
    expect(one.bot.health()).toMatchObject({ ok: true, detail: '4 servers, 3 shards' });
    await one.bot.stop();
  });

  it('shares them between processes by range; one registers, each answers its own', async () => {
    const server = await begin();
    const first = await startBot(server, {
      commands: sampleCommands,
      env: { DISCORD_SHARD_COUNT: '4', DISCORD_SHARD_RANGE: '0-1' },
    });
    const second = await startBot(server, {
      commands: sampleCommands,
      store: first.store,
      env: { DISCORD_SHARD_COUNT: '4', DISCORD_SHARD_RANGE: '2-3' },
    });
    await server.ready(4);
    expect(server.rest.requests.filter(({ method }) => method === 'PUT')).toHaveLength(1);
    const answersOf = async ({ metrics }: typeof first): Promise<number> =>
      Number(/pierhand_answers_total\{[^}]*\} (\d+)/u.exec((await metrics.expose()).body)?.[1] ?? 0);
    const expected = { first: 0, second: 0 };
    // Ids count milliseconds above bit 22, so servers made at different times spread over the shards.
    for (let i = 0; i < 40 && (expected.first === 0 || expected.second === 0); i++) {
      const { guild, channel } = server.addGuild(`Club ${i}`);
      expect(
        (await server.member(`Member ${i}`).slash('echo', { words: guild.id }, { in: channel })).messages,
      ).toHaveLength(1);
      expected[shardOf(guild.id, 4) < 2 ? 'first' : 'second']++;
      await new Promise((resolve) => setTimeout(resolve, 1 + (i % 3)));
    }
    expect({ first: await answersOf(first), second: await answersOf(second) }).toEqual(expected);
    expect(Math.min(expected.first, expected.second)).toBeGreaterThan(0);
    await first.bot.stop();
    await second.bot.stop();
  });
});

describe('the log', () => {
  it("holds no token: neither the bot's nor those of interactions, even when requests fail", async () => {
    const server = await begin();
    const one = await startBot(server, { commands: sampleCommands });
    await server.ready();
    server.misbehave.rest({ status: 404, code: 10062, on: /\/callback$/u });
    await server
      .member('Odalys')
      .slash('echo', { words: 'very private words' }, { timeoutMs: 300 })
      .catch(() => undefined);
    server.misbehave.rest({ status: 500, times: 5, on: /\/callback$/u });
    await server
      .member('Odalys')
      .slash('echo', { words: 'very private words' }, { timeoutMs: 2500 })
      .catch(() => undefined);
    await server.waitFor(() => one.logged().includes('could not be answered'), 'the log');
    const tokens = [server.token, ...[...server.world.interactions.values()].map(({ token }) => token)];
    expect(tokens.filter((token) => one.logged().includes(token))).toEqual([]);
    expect(one.logged()).not.toContain('private words');
    await one.bot.stop();
  });
});
