/** The requests that answer an interaction, and what Discord's refusals of them mean. */
import { setTimeout as sleep } from 'node:timers/promises';
import {
  InteractionResponseType,
  Routes,
  type APIInteraction,
  type APIMessage,
  type APIModalInteractionResponseCallbackData,
  type RESTPostAPIInteractionCallbackWithResponseResult,
} from 'discord-api-types/v10';
import { DiscordAPIError, HTTPError, type RawFile, type REST } from 'discord.js';
import type { DiscordMessage } from '../write/write-reply.js';

type Target = Pick<APIInteraction, 'id' | 'token' | 'application_id'>;

const EXPIRED = new Set<number | string>([10062, 10015, 50027]);
const ALREADY_ACKNOWLEDGED = 40060;

/** The interaction's time has run out; nothing can be said to it any more. */
export const isExpired = (error: unknown): boolean => error instanceof DiscordAPIError && EXPIRED.has(error.code);
const isAcknowledged = (error: unknown): boolean =>
  error instanceof DiscordAPIError && error.code === ALREADY_ACKNOWLEDGED;
/** Worth trying again: the server's fault, or the line's. */
export const isPassing = (error: unknown): boolean => error instanceof HTTPError || !(error instanceof DiscordAPIError);

/** Runs `send` again after each delay while it fails in passing; it is told how many attempts went before. */
export const persist = async <T>(send: (before: number) => Promise<T>, delaysMs: readonly number[]): Promise<T> => {
  for (const [before, delayMs] of delaysMs.entries()) {
    try {
      return await send(before);
    } catch (error) {
      if (!isPassing(error)) throw error;
      await sleep(delayMs);
    }
  }
  return await send(delaysMs.length);
};

/** A first response has three seconds in all. */
const FIRST_DELAYS_MS = [50, 200, 500, 800];
/** What may come later, or matters less. */
export const LATER_DELAYS_MS = [200, 1000, 3000, 8000];

const rawFiles = (message: DiscordMessage): RawFile[] =>
  message.files.map(({ name, data, contentType }) => ({ name, data, contentType }));
const withFiles = (message: DiscordMessage): { files?: RawFile[] } =>
  message.files.length === 0 ? {} : { files: rawFiles(message) };

/** The first response. `accepted: false`: another process had answered before. */
const callback = async (
  rest: REST,
  { id, token }: Target,
  body: unknown,
  options: { files?: RawFile[]; withResponse?: boolean } = {},
): Promise<{ readonly accepted: boolean; readonly messageId: string | null }> => {
  const withResponse = options.withResponse === true;
  return await persist(async (before) => {
    try {
      const result = await rest.post(Routes.interactionCallback(id, token), {
        body,
        auth: false,
        ...(options.files === undefined ? {} : { files: options.files }),
        query: new URLSearchParams({ with_response: String(withResponse) }),
      });
      const message = withResponse
        ? (result as RESTPostAPIInteractionCallbackWithResponseResult).resource?.message
        : undefined;
      return { accepted: true, messageId: message?.id ?? null };
    } catch (error) {
      // After a lost response, "already acknowledged" is what came of our own attempt.
      if (isAcknowledged(error)) return { accepted: before > 0, messageId: null };
      throw error;
    }
  }, FIRST_DELAYS_MS);
};

/** Answers at once. With `wantId` Discord tells which message came of it. */
export const answerNow = (rest: REST, target: Target, message: DiscordMessage, wantId = false) =>
  callback(
    rest,
    target,
    { type: InteractionResponseType.ChannelMessageWithSource, data: message.body },
    { ...withFiles(message), withResponse: wantId },
  );

/** Opens a form; it must be the first response. */
export const openForm = (rest: REST, target: Target, form: APIModalInteractionResponseCallbackData) =>
  callback(rest, target, { type: InteractionResponseType.Modal, data: form });

/** Says that an answer is coming, for all to see; what is private is then sent beside it, never in it. */
export const acknowledge = (rest: REST, target: Target) =>
  callback(rest, target, { type: InteractionResponseType.DeferredChannelMessageWithSource, data: {} });

export const suggest = (
  rest: REST,
  target: Target,
  choices: readonly { readonly name: string; readonly value: string | number }[],
) => callback(rest, target, { type: InteractionResponseType.ApplicationCommandAutocompleteResult, data: { choices } });

/** Puts the answer where the acknowledgement stands; harmless to repeat. */
export const editAnswer = async (
  rest: REST,
  { application_id, token }: Target,
  message: DiscordMessage,
): Promise<string> => {
  const { flags: _fixedByTheFirstResponse, ...body } = message.body;
  const edited = await persist(
    () =>
      rest.patch(Routes.webhookMessage(application_id, token, '@original'), {
        // What a former edit left must not stay beside the new text.
        body: { content: null, embeds: [], components: [], attachments: [], ...body },
        auth: false,
        ...withFiles(message),
      }),
    LATER_DELAYS_MS,
  );
  return (edited as APIMessage).id;
};

export const followUp = async (
  rest: REST,
  { application_id, token }: Target,
  message: DiscordMessage,
): Promise<void> => {
  await persist(
    () => rest.post(Routes.webhook(application_id, token), { body: message.body, auth: false, ...withFiles(message) }),
    LATER_DELAYS_MS,
  );
};

export const removeAnswer = async (rest: REST, { application_id, token }: Target): Promise<void> => {
  await persist(
    () => rest.delete(Routes.webhookMessage(application_id, token, '@original'), { auth: false }),
    LATER_DELAYS_MS,
  );
};
