/** The discord.js client as this bot uses it: fewest intents, small caches, no pings, shards as set. */
import { Client, GatewayIntentBits, Options, REST } from 'discord.js';
import type { DiscordSettings } from '../../../app/settings.js';
import { NO_MENTIONS } from '../write/write-reply.js';
import { sendRequest } from './send-request.js';

/** Interactions come without any intent; servers alone are asked for, so that the bot knows how many it serves. No message content. */
export const INTENTS = [GatewayIntentBits.Guilds];

const restOptions = (apiUrl: string) => ({ api: apiUrl, version: '10', timeout: 10_000, makeRequest: sendRequest });

/**
 * The bot's own requests, whichever client is connected. Rate limits are obeyed; other repetition is left to `persist`,
 * which knows what may be repeated.
 */
export const createRest = ({ apiUrl, token }: DiscordSettings): REST =>
  new REST({ ...restOptions(apiUrl), retries: 0 }).setToken(token);

/** Answers to interactions are not bound to the limit of 50 requests a second (developer documentation, "Interaction Response Endpoints"; value from memory). */
export const createAnswersRest = ({ apiUrl }: DiscordSettings): REST =>
  new REST({ ...restOptions(apiUrl), retries: 0, globalRequestsPerSecond: Number.POSITIVE_INFINITY });

/**
 * Interactions are answered from what came (connection.ts listens to the gateway itself): discord.js need not make objects of them,
 * nor remember the channel of each. Its part for that is not public; where a later version has none, all works as before.
 */
const leaveInteractionsAlone = (client: Client): Client => {
  const { actions } = client as unknown as { actions?: { InteractionCreate?: { handle: () => void } } };
  if (actions?.InteractionCreate !== undefined) actions.InteractionCreate.handle = () => undefined;
  return client;
};

export const createClient = ({ apiUrl, shardCount, shardIds }: DiscordSettings): Client =>
  leaveInteractionsAlone(
    new Client({
      intents: INTENTS,
      allowedMentions: { parse: NO_MENTIONS.parse ?? [] },
      ...(shardCount === 'auto'
        ? { shards: 'auto' as const }
        : { shardCount, shards: shardIds ?? Array.from({ length: shardCount }, (_, i) => i) }),
      rest: restOptions(apiUrl),
      // Answers are made from what each interaction brings; what passes by is not kept.
      makeCache: Options.cacheWithLimits({
        ...Options.DefaultMakeCacheSettings,
        ApplicationEmojiManager: 0,
        AutoModerationRuleManager: 0,
        BaseGuildEmojiManager: 0,
        DMMessageManager: 0,
        EntitlementManager: 0,
        GuildBanManager: 0,
        GuildEmojiManager: 0,
        GuildForumThreadManager: 0,
        GuildInviteManager: 0,
        GuildMemberManager: { maxSize: 0, keepOverLimit: (member) => member.id === member.client.user.id },
        GuildMessageManager: 0,
        GuildScheduledEventManager: 0,
        GuildStickerManager: 0,
        GuildTextThreadManager: 0,
        MessageManager: 0,
        PresenceManager: 0,
        ReactionManager: 0,
        ReactionUserManager: 0,
        StageInstanceManager: 0,
        ThreadManager: 0,
        ThreadMemberManager: 0,
        UserManager: { maxSize: 0, keepOverLimit: (user) => user.id === user.client.user.id },
        VoiceStateManager: 0,
      }),
    }),
  );
