/**
 * A local server that speaks enough of Discord's gateway (version 10) and REST interface for the real discord.js client to
 * run against it. Every body the bot sends is checked against Discord's published schemas, unknown keys refused.
 */
import type { AddressInfo } from 'node:net';
import { attachGateway, type GatewayServer } from './gateway-server.js';
import { createMember, newPerson, type Member } from './members.js';
import { createMisbehaviour, type Misbehaviour } from './misbehaviour.js';
import { createRestServer, type RestLog } from './rest-server.js';
import { snowflake } from './snowflake.js';
import { addChannel, createWorld, type Channel, type Guild, type Person, type World } from './world.js';

export interface DoubleOptions {
  readonly token?: string;
  readonly port?: number;
  readonly heartbeatMs?: number;
  /** After this a first response comes too late (Discord: 3000). */
  readonly firstResponseMs?: number;
  readonly recommendedShards?: number;
  /** Of so many requests one is held against the published schemas (each, where it is left out): checking costs more than answering. */
  readonly checkEvery?: number;
}

export interface DiscordDouble {
  readonly token: string;
  /** For DISCORD_API_URL. */
  readonly apiUrl: string;
  readonly world: World;
  readonly gateway: GatewayServer;
  readonly misbehave: Misbehaviour;
  readonly rest: RestLog;
  /** The club's server, and its text channel `observing`. */
  readonly guild: Guild;
  readonly channel: Channel;
  /** The member of that name, made when new. */
  readonly member: (name: string, parts?: Partial<Person>) => Member;
  readonly addChannel: (name: string, parts?: Partial<Channel>) => Channel;
  /** `hasBot: false`: a server where the bot is only on members' own accounts. */
  readonly addGuild: (name: string, hasBot?: boolean) => { readonly guild: Guild; readonly channel: Channel };
  /** Resolves when the commands have been registered and all wanted sessions are live. */
  readonly ready: (sessions?: number) => Promise<void>;
  readonly waitFor: (done: () => boolean, what: string, timeoutMs?: number) => Promise<void>;
  readonly close: () => Promise<void>;
}

export const startDiscordDouble = async (options: DoubleOptions = {}): Promise<DiscordDouble> => {
  const token = options.token ?? 'made-up.token.for-tests-alone';
  const world = createWorld(token);
  const misbehave = createMisbehaviour();
  let port = 0;
  const gatewayUrl = (): string => `ws://127.0.0.1:${port}`;
  const { server, log } = createRestServer(world, misbehave, {
    firstResponseMs: options.firstResponseMs ?? 3000,
    gatewayUrl,
    recommendedShards: options.recommendedShards ?? 1,
    checkEvery: options.checkEvery ?? 1,
  });
  const gateway = attachGateway(server, world, misbehave, { heartbeatMs: options.heartbeatMs ?? 41_250, gatewayUrl });
  const addGuild = (name: string, hasBot = true): { guild: Guild; channel: Channel } => {
    const guild: Guild = { id: snowflake(), name, ownerId: snowflake(), hasBot };
    world.guilds.set(guild.id, guild);
    return { guild, channel: addChannel(world, { name: 'observing', type: 0, guildId: guild.id }) };
  };
  const { guild, channel } = addGuild('Fenwold Astronomical Society');
  const members = new Map<string, Member>();
  await new Promise<void>((resolve, reject) => {
    server.once('error', reject);
    server.listen(options.port ?? 0, '127.0.0.1', resolve);
  });
  port = (server.address() as AddressInfo).port;
  world.mediaUrl = `http://127.0.0.1:${port}/attachments`;

  const waitFor = async (done: () => boolean, what: string, timeoutMs = 60_000): Promise<void> => {
    const end = Date.now() + timeoutMs;
    while (!done()) {
      if (Date.now() > end) throw new Error(`waited ${timeoutMs} ms in vain for ${what}`);
      await new Promise((resolve) => setTimeout(resolve, 10));
    }
  };

  return {
    token,
    apiUrl: `http://127.0.0.1:${port}/api`,
    world,
    gateway,
    misbehave,
    rest: log,
    guild,
    channel,
    member: (name, parts) => {
      const known = members.get(name);
      if (known !== undefined) return known;
      const made = createMember(world, gateway, log, newPerson(world, name, parts), channel);
      members.set(name, made);
      return made;
    },
    addChannel: (name, parts = {}) => addChannel(world, { name, type: 0, guildId: guild.id, ...parts }),
    addGuild,
    ready: (sessions = 1) =>
      waitFor(() => world.commands.size > 0 && gateway.liveSessions() >= sessions, 'the bot to connect and register'),
    waitFor,
    close: async () => {
      gateway.close();
      await new Promise<void>((resolve) => {
        server.close(() => resolve());
        server.closeAllConnections();
      });
    },
  };
};
