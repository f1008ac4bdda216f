/** Keeps the gateway connected: logs in, tells a refused credential from a passing fault, and says how things stand. */
import { setTimeout as sleep } from 'node:timers/promises';
import { GatewayDispatchEvents, type APIInteraction } from 'discord-api-types/v10';
import { Events, Status, type Client } from 'discord.js';
import { StartError } from '../../../ground/start-error.js';
import type { DiscordSettings } from '../../../app/settings.js';
import { type PlatformContext } from '../../../app/platform.js';
import type { Tuning } from './bot.js';
import { createClient } from './client.js';

export interface Connection {
  readonly health: () => { readonly ok: boolean; readonly detail: string };
  readonly close: () => Promise<void>;
}

interface Listeners {
  readonly onInteraction: (interaction: APIInteraction) => void;
  /** Once, when first connected. */
  readonly onReady: (applicationId: string) => void;
}

/** Close codes after which trying again is of no use, and what the operator is to change. */
const HOPELESS: Readonly<Record<number, string>> = {
  4004: "DISCORD_TOKEN was refused by Discord; copy the token again from the application's Bot page.",
  4010: 'DISCORD_SHARD_RANGE or DISCORD_SHARD_COUNT was refused by Discord; check both.',
  4011: 'DISCORD_SHARD_COUNT is too small for this many servers; set it to auto.',
  4012: "Discord no longer speaks this version's protocol; a newer version of the bot is needed.",
  4013: 'Discord refused the intents this version asks for; a newer version of the bot is needed.',
  4014: 'Discord refused the intents this version asks for; a newer version of the bot is needed.',
};

const counted = (count: number, what: string): string => `${count} ${what}${count === 1 ? '' : 's'}`;

const isRefusedToken = (error: unknown): boolean =>
  error instanceof Error && 'code' in error && error.code === 'TokenInvalid';

interface State {
  client: Client | null;
  /** Why it is not well; null while it is. */
  trouble: string | null;
  /** Set when Discord closed a shard for good. */
  hopeless: string | null;
  /** The bot is stopping: what ends now was ended by it. */
  isClosing: boolean;
}

/**
 * Connects, or keeps trying behind the scenes while Discord cannot be reached, so that other platforms may run meanwhile.
 * @throws StartError when the first attempt is refused for the token or the shard settings
 */
export const openConnection = async (
  context: PlatformContext,
  settings: DiscordSettings,
  { connectDelaysMs: delaysMs, connectPatienceMs }: Pick<Tuning, 'connectDelaysMs' | 'connectPatienceMs'>,
  listeners: Listeners,
): Promise<Connection> => {
  const { log, metrics } = context;
  const state: State = { client: null, trouble: 'not yet connected', hopeless: null, isClosing: false };
  const closing = new AbortController();
  let wasReady = false;

  const attempt = async (): Promise<boolean> => {
    // A client whose login failed is spent; each attempt has its own.
    const client = createClient(settings);
    state.client = client;
    const refused = new Promise<never>((_, reject) => watch(client, context, state, reject));
    refused.catch(() => undefined);
    client.ws.on(GatewayDispatchEvents.InteractionCreate, listeners.onInteraction);
    client.once(Events.ClientReady, ({ application }) => {
      if (!wasReady) listeners.onReady(application.id);
      wasReady = true;
    });
    try {
      await Promise.race([client.login(settings.token), refused]);
      state.trouble = null;
      return true;
    } catch (error) {
      await client.destroy();
      if (isRefusedToken(error)) state.hopeless = HOPELESS[4004] ?? '';
      if (state.hopeless !== null) throw new StartError(state.hopeless);
      log.warn({ err: error }, 'Discord cannot be reached; trying again');
      metrics.failed('discord', 'connect');
      state.trouble = 'Discord cannot be reached';
      return false;
    }
  };

  const keepTrying = async (): Promise<void> => {
    for (let i = 0; !closing.signal.aborted; i++) {
      await sleep(delaysMs[Math.min(i, delaysMs.length - 1)], undefined, { signal: closing.signal }).catch(
        () => undefined,
      );
      if (closing.signal.aborted || (await attempt())) return;
    }
  };

  const giveUp = (error: unknown): void => {
    state.trouble = error instanceof Error ? error.message : 'given up';
    log.fatal({ err: error }, 'Discord is given up');
  };
  const first = attempt();
  const patience = new AbortController();
  const outcome = await Promise.race([first, sleep(connectPatienceMs, 'slow' as const, { signal: patience.signal })]);
  patience.abort();
  if (outcome === 'slow') {
    log.warn('Discord is slow to let the bot in; the rest goes on meanwhile');
    void first.then(async (isConnected) => (isConnected ? undefined : keepTrying())).catch(giveUp);
  } else if (!outcome) {
    void keepTrying().catch(giveUp);
  }

  return {
    health: () => {
      const { client, trouble } = state;
      const ok =
        client !== null &&
        trouble === null &&
        client.isReady() &&
        [...client.ws.shards.values()].every(({ status }) => status === Status.Ready);
      return {
        ok,
        detail: ok
          ? `${counted(client.guilds.cache.size, 'server')}, ${counted(client.ws.shards.size, 'shard')}`
          : (trouble ?? 'reconnecting'),
      };
    },
    close: async () => {
      state.isClosing = true;
      closing.abort();
      await state.client?.destroy();
    },
  };
};

const watch = (
  client: Client,
  { log, metrics }: PlatformContext,
  state: State,
  onHopeless: (error: Error) => void,
): void => {
  // Reconnecting is tried every half second; only the first of a row is news.
  const lost = new Set<number>();
  client.on(Events.Error, (error) => log.error({ err: error }, 'Discord client error'));
  client.on(Events.Warn, (message) => log.warn({ detail: message }, 'Discord client warning'));
  client.on(Events.ShardReady, (shard) => {
    lost.delete(shard);
    metrics.connection('discord', 'ready');
    log.info({ shard }, 'connected');
  });
  client.on(Events.ShardResume, (shard, replayed) => {
    lost.delete(shard);
    metrics.connection('discord', 'resumed');
    log.info({ shard, replayed }, 'connection resumed');
  });
  client.on(Events.ShardReconnecting, (shard) => {
    if (lost.has(shard) || state.isClosing) return;
    lost.add(shard);
    metrics.connection('discord', 'lost');
    log.warn({ shard }, 'connection lost; reconnecting');
  });
  client.on(Events.ShardError, (error, shard) =>
    log[lost.has(shard) ? 'debug' : 'warn']({ err: error, shard }, 'connection error'),
  );
  client.on(Events.ShardDisconnect, ({ code }, shard) => {
    const reason = HOPELESS[code] ?? `Discord closed the connection for good (${code}).`;
    state.hopeless = reason;
    state.trouble = reason;
    metrics.connection('discord', 'closed');
    log.error({ shard, code }, reason);
    onHopeless(new Error(reason));
  });
};
